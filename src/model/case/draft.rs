//! A draft: the case file as typed, right or wrong.
//!
//! The draft *is* the JSON document. Fields this version does not know stay in it and are saved
//! again; a number that is not one stays as the text that was typed. Invariant: nothing typed is
//! lost by opening, editing one field, or saving.

use serde_json::{Map, Number, Value};

use super::{Case, Problem, reading};

/// What `format` must say.
pub const CASE_FORMAT: &str = "leavewell-case";
/// The newest version this program writes and reads.
pub const CASE_VERSION: u64 = 1;
/// Largest file for one case without photographs, in bytes.
pub const MAX_BYTES: usize = 8 * 1024 * 1024;
/// Deepest nesting of a case file.
pub const MAX_DEPTH: usize = 64;
/// Most findings in a case file.
pub const MAX_FINDINGS: usize = 5_000;

/// Why a file could not be opened. The file itself is left as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenError {
    /// Larger than [`MAX_BYTES`].
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// Nested deeper than [`MAX_DEPTH`].
    TooDeep,
    /// Not JSON, or cut short.
    NotJson {
        /// Line of the fault.
        line: usize,
        /// Column of the fault.
        column: usize,
        /// The text ends in the middle.
        cut_short: bool,
    },
    /// JSON, but not a case.
    NotACase,
    /// Written by a newer program.
    Newer {
        /// Its version.
        version: u64,
    },
    /// The version is not a whole number from 1.
    BadVersion,
    /// More than [`MAX_FINDINGS`].
    TooManyFindings {
        /// How many.
        count: usize,
    },
}

impl OpenError {
    /// The fault as a problem a person can act on.
    #[must_use]
    pub fn problem(&self) -> Problem {
        let (field, message, remedy) = match self {
            Self::TooLarge { bytes } => (
                "file",
                format!(
                    "The file is {} MB; a case without photographs is at most {} MB.",
                    bytes / 1_048_576,
                    MAX_BYTES / 1_048_576
                ),
                "Choose a Leavewell case file. The file was not changed.",
            ),
            Self::TooDeep => (
                "file",
                format!("The file is nested more than {MAX_DEPTH} levels deep, which no case is."),
                "Choose a Leavewell case file. The file was not changed.",
            ),
            Self::NotJson {
                line,
                column,
                cut_short: true,
            } => (
                "file",
                format!("The file breaks off at line {line}, column {column}."),
                "It was probably not copied whole. Copy it again from where it was saved.",
            ),
            Self::NotJson {
                line,
                column,
                cut_short: false,
            } => (
                "file",
                format!("The file is not readable at line {line}, column {column}."),
                "Open it in a text editor at that place, or use another copy.",
            ),
            Self::NotACase => (
                "format",
                format!("This is not a case file: \"format\" should say \"{CASE_FORMAT}\"."),
                "Choose a file that Leavewell saved.",
            ),
            Self::Newer { version } => (
                "version",
                format!("The file has version {version}; this program reads up to {CASE_VERSION}."),
                "Update Leavewell, then open it again. The file was not changed.",
            ),
            Self::BadVersion => (
                "version",
                "\"version\" should be a whole number from 1.".to_owned(),
                "Choose a file that Leavewell saved, or set \"version\" to 1.",
            ),
            Self::TooManyFindings { count } => (
                "findings",
                format!("The file has {count} findings; a case has at most {MAX_FINDINGS}."),
                "Remove what repeats, then open it again.",
            ),
        };
        Problem {
            field: field.to_owned(),
            message,
            remedy: remedy.to_owned(),
        }
    }
}

/// The case file as typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    root: Map<String, Value>,
}

impl Default for Draft {
    fn default() -> Self {
        let mut root = Map::new();
        root.insert("format".to_owned(), CASE_FORMAT.into());
        root.insert("version".to_owned(), CASE_VERSION.into());
        Self { root }
    }
}

impl Draft {
    /// Opens a file's text. Limits are checked before anything is parsed.
    ///
    /// # Errors
    /// See [`OpenError`]. Single fields that cannot be used are no error here: they stay in the
    /// draft and [`Draft::read`] reports them.
    pub fn parse(text: &str) -> Result<Self, OpenError> {
        if text.len() > MAX_BYTES {
            return Err(OpenError::TooLarge { bytes: text.len() });
        }
        if depth(text) > MAX_DEPTH {
            return Err(OpenError::TooDeep);
        }
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let value: Value = serde_json::from_str(text).map_err(|e| OpenError::NotJson {
            line: e.line(),
            column: e.column(),
            cut_short: e.is_eof(),
        })?;
        let Value::Object(root) = value else {
            return Err(OpenError::NotACase);
        };
        Self::from_root(root)
    }

    fn from_root(root: Map<String, Value>) -> Result<Self, OpenError> {
        if root.get("format").and_then(Value::as_str) != Some(CASE_FORMAT) {
            return Err(OpenError::NotACase);
        }
        match root.get("version").and_then(Value::as_u64) {
            None | Some(0) => return Err(OpenError::BadVersion),
            Some(version) if version > CASE_VERSION => return Err(OpenError::Newer { version }),
            Some(_) => {}
        }
        let count = root
            .get("findings")
            .and_then(Value::as_array)
            .map_or(0, Vec::len);
        if count > MAX_FINDINGS {
            return Err(OpenError::TooManyFindings { count });
        }
        Ok(Self { root })
    }

    /// The whole file as text, ready to save.
    #[must_use]
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(&self.root).unwrap_or_default()
    }

    /// What the file says, as far as it can be used, and what could not.
    #[must_use]
    pub fn read(&self) -> (Case, Vec<Problem>) {
        reading::read(&self.root)
    }

    /// The text of a field such as `piece.form`, as typed; empty when there is none.
    #[must_use]
    pub fn text(&self, path: &str) -> String {
        let (section, field) = split(path);
        self.holder(section)
            .and_then(|m| m.get(field))
            .map(typed_text)
            .unwrap_or_default()
    }

    /// The object a section names: `market`, an entry by its place such as `comparables[0]`, or a
    /// quote or part by its id such as `quotes[T14a]`.
    fn holder(&self, section: &str) -> Option<&Map<String, Value>> {
        if section.is_empty() {
            return Some(&self.root);
        }
        let Some((list, at)) = listed(section) else {
            return self.root.get(section)?.as_object();
        };
        match at.parse::<usize>() {
            Ok(place) => self.root.get(list)?.as_array()?.get(place)?.as_object(),
            Err(_) => self.entry(list, key_of(list), at),
        }
    }

    /// How many entries a list such as `comparables` has.
    #[must_use]
    pub fn count(&self, list: &str) -> usize {
        self.root
            .get(list)
            .and_then(Value::as_array)
            .map_or(0, Vec::len)
    }

    /// Writes a field such as `market.likely`; empty text removes it. A field of a list's entry has
    /// its place in the path, `comparables[0].price`; a place past the end makes a new last entry, and
    /// entries at the end with nothing left in them go, so that those before keep their places.
    pub fn set(&mut self, path: &str, typed: &str) {
        let (section, field) = split(path);
        if let Some((list, at)) = listed(section) {
            match at.parse::<usize>() {
                Ok(place) => self.set_at(list, place, field, typed),
                Err(_) => self.set_in(list, key_of(list), at, field, typed),
            }
            return;
        }
        put(self.section(section), field, typed_value(typed));
    }

    /// A yes-or-no field; `None` when not answered.
    #[must_use]
    pub fn flag(&self, path: &str) -> Option<bool> {
        let (section, field) = split(path);
        self.holder(section)?.get(field)?.as_bool()
    }

    /// Writes a yes-or-no field; `None` removes it.
    pub fn set_flag(&mut self, path: &str, yes: Option<bool>) {
        let (section, field) = split(path);
        put(self.section(section), field, yes.map(Value::Bool));
    }

    /// The answer to a finding as written, and its part; empty when not looked.
    #[must_use]
    pub fn answer(&self, finding: &str) -> (String, String) {
        self.entry("findings", "id", finding)
            .map(|m| {
                (
                    m.get("answer").map(typed_text).unwrap_or_default(),
                    m.get("part").map(typed_text).unwrap_or_default(),
                )
            })
            .unwrap_or_default()
    }

    /// Answers a finding; an empty answer takes it off the list.
    pub fn set_answer(&mut self, finding: &str, answer: &str, part: &str) {
        if answer.is_empty() {
            self.remove_entry("findings", "id", finding);
            return;
        }
        let entry = self.entry_mut("findings", "id", finding);
        put(entry, "answer", typed_value(answer));
        put(entry, "part", typed_value(part));
    }

    /// A field of a part as typed; empty when there is none.
    #[must_use]
    pub fn part_text(&self, part: &str, field: &str) -> String {
        self.entry("parts", "part", part)
            .and_then(|m| m.get(field))
            .map(typed_text)
            .unwrap_or_default()
    }

    /// Writes a field of a part; empty text removes it, and the part once nothing is left of it.
    pub fn set_part(&mut self, part: &str, field: &str, typed: &str) {
        self.set_in("parts", "part", part, field, typed);
    }

    /// A field of a quote as typed; empty when there is none.
    #[must_use]
    pub fn quote_text(&self, treatment: &str, field: &str) -> String {
        self.entry("quotes", "treatment", treatment)
            .and_then(|m| m.get(field))
            .map(typed_text)
            .unwrap_or_default()
    }

    /// Writes a field of a quote; empty text removes it, and the quote once nothing is left of it.
    pub fn set_quote(&mut self, treatment: &str, field: &str, typed: &str) {
        self.set_in("quotes", "treatment", treatment, field, typed);
    }

    fn set_in(&mut self, list: &str, key: &str, id: &str, field: &str, typed: &str) {
        if typed.is_empty() && self.entry(list, key, id).is_none() {
            return;
        }
        let entry = self.entry_mut(list, key, id);
        put(entry, field, typed_value(typed));
        if entry.len() == 1 {
            self.remove_entry(list, key, id);
        }
    }

    /// The object at a section of the file; a section that is not one is kept aside and replaced.
    fn section(&mut self, section: &str) -> &mut Map<String, Value> {
        if section.is_empty() {
            return &mut self.root;
        }
        object_in(&mut self.root, section)
    }

    fn entry(&self, list: &str, key: &str, id: &str) -> Option<&Map<String, Value>> {
        self.root
            .get(list)?
            .as_array()?
            .iter()
            .filter_map(Value::as_object)
            .find(|m| is(m, key, id))
    }

    fn set_at(&mut self, list: &str, place: usize, field: &str, typed: &str) {
        let entries = self.entries_mut(list);
        let place = place.min(entries.len());
        if !entries.get(place).is_some_and(Value::is_object) {
            // What stands there and is no entry moves on; nothing is written over.
            entries.insert(place, Value::Object(Map::new()));
        }
        if let Some(Value::Object(entry)) = entries.get_mut(place) {
            put(entry, field, typed_value(typed));
        }
        let empty = |v: &Value| v.as_object().is_some_and(Map::is_empty);
        while entries.last().is_some_and(empty) {
            entries.pop();
        }
    }

    /// The entries of a list; what is no list is kept aside and replaced.
    fn entries_mut(&mut self, list: &str) -> &mut Vec<Value> {
        if !self.root.get(list).is_some_and(Value::is_array) {
            set_aside(&mut self.root, list);
            self.root.insert(list.to_owned(), Value::Array(Vec::new()));
        }
        match self.root.get_mut(list) {
            Some(Value::Array(entries)) => entries,
            _ => unreachable!("just made an array"),
        }
    }

    fn entry_mut(&mut self, list: &str, key: &str, id: &str) -> &mut Map<String, Value> {
        let entries = self.entries_mut(list);
        let at = entries
            .iter()
            .position(|v| v.as_object().is_some_and(|m| is(m, key, id)));
        let at = at.unwrap_or_else(|| {
            let mut fresh = Map::new();
            fresh.insert(key.to_owned(), id.into());
            entries.push(Value::Object(fresh));
            entries.len() - 1
        });
        match &mut entries[at] {
            Value::Object(entry) => entry,
            _ => unreachable!("found or made as an object"),
        }
    }

    fn remove_entry(&mut self, list: &str, key: &str, id: &str) {
        if let Some(Value::Array(entries)) = self.root.get_mut(list) {
            entries.retain(|v| !v.as_object().is_some_and(|m| is(m, key, id)));
        }
    }
}

fn split(path: &str) -> (&str, &str) {
    path.split_once('.').unwrap_or(("", path))
}

/// The list and what stands in its brackets, for a section such as `comparables[0]`.
fn listed(section: &str) -> Option<(&str, &str)> {
    section.strip_suffix(']')?.split_once('[')
}

/// The field by which the entries of a list are told apart.
fn key_of(list: &str) -> &'static str {
    match list {
        "quotes" => "treatment",
        "parts" => "part",
        _ => "id",
    }
}

fn is(entry: &Map<String, Value>, key: &str, id: &str) -> bool {
    entry.get(key).and_then(Value::as_str) == Some(id)
}

fn put(holder: &mut Map<String, Value>, field: &str, value: Option<Value>) {
    match value {
        Some(value) => {
            holder.insert(field.to_owned(), value);
        }
        None => {
            holder.remove(field);
        }
    }
}

fn object_in<'a>(root: &'a mut Map<String, Value>, section: &str) -> &'a mut Map<String, Value> {
    if !root.get(section).is_some_and(Value::is_object) {
        set_aside(root, section);
        root.insert(section.to_owned(), Value::Object(Map::new()));
    }
    match root.get_mut(section) {
        Some(Value::Object(map)) => map,
        _ => unreachable!("just made an object"),
    }
}

/// Keeps what stands where something else must go, under a name that says so.
fn set_aside(root: &mut Map<String, Value>, field: &str) {
    if let Some(old) = root.remove(field).filter(|v| !v.is_null()) {
        let mut name = format!("unread_{field}");
        while root.contains_key(&name) {
            name.push('_');
        }
        root.insert(name, old);
    }
}

/// A field's value as the text a person would have typed.
fn typed_text(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Null => String::new(),
        other => other.to_string(),
    }
}

/// Text as a JSON value: a number when JSON would write it just so, otherwise as typed. Numbers keep
/// the text they were written with.
fn typed_value(typed: &str) -> Option<Value> {
    if typed.is_empty() {
        return None;
    }
    let number = serde_json::from_str::<Number>(typed)
        .ok()
        .filter(|n| n.as_str() == typed);
    Some(number.map_or_else(|| Value::String(typed.to_owned()), Value::Number))
}

/// How deep brackets nest in a JSON text, ignoring those inside strings.
fn depth(text: &str) -> usize {
    let (mut now, mut deepest, mut in_string, mut escaped) = (0_usize, 0, false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_string => escaped = true,
            b'"' => in_string = !in_string,
            b'[' | b'{' if !in_string => {
                now += 1;
                deepest = deepest.max(now);
            }
            b']' | b'}' if !in_string => now = now.saturating_sub(1),
            _ => {}
        }
    }
    deepest
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(body: &str) -> String {
        format!("{{\"format\":\"leavewell-case\",\"version\":1{body}}}")
    }

    #[test]
    fn opening_and_saving_keeps_everything() {
        let text = file(
            r#","piece":{"form":"tray","mystery":[1,2]},"later":{"x":1.5},"market":{"likely":"12o"}"#,
        );
        let draft = Draft::parse(&text).unwrap();
        assert_eq!(Draft::parse(&draft.to_json()).unwrap(), draft);
        assert_eq!(draft.text("market.likely"), "12o");
        assert!(draft.to_json().contains("mystery") && draft.to_json().contains("later"));
    }

    #[test]
    fn what_is_typed_comes_back_as_typed() {
        let mut draft = Draft::default();
        for typed in [
            "1", "1.", "1.50", "0.1", "1e3", "abc", " 7", "٣", "NaN", "-4", "0", "1e999",
        ] {
            draft.set("market.likely", typed);
            let again = Draft::parse(&draft.to_json()).unwrap();
            assert_eq!(again.text("market.likely"), typed);
        }
        draft.set("market.likely", "");
        assert_eq!(draft.text("market.likely"), "");
    }

    #[test]
    fn parts_and_quotes_come_and_go() {
        let mut draft = Draft::default();
        draft.set_part("foot", "bleed", "slight");
        draft.set_part("foot", "tarnish", "brown");
        draft.set_part("foot", "bleed", "");
        assert_eq!(draft.part_text("foot", "tarnish"), "brown");
        draft.set_part("foot", "tarnish", "");
        assert!(!draft.to_json().contains("foot"));
        draft.set_quote("T14a", "likely", "240");
        assert_eq!(draft.quote_text("T14a", "likely"), "240");
    }

    #[test]
    fn entries_of_a_list_are_reached_by_place_and_by_id() {
        let mut draft = Draft::default();
        draft.set("comparables[0].price", "");
        assert_eq!(draft.count("comparables"), 0);
        draft.set("comparables[0].price", "300");
        draft.set("comparables[7].price", "420");
        assert_eq!(draft.count("comparables"), 2);
        assert_eq!(draft.text("comparables[1].price"), "420");
        // Emptied in the middle it keeps its place; at the end it goes, and so does what it leaves.
        draft.set("comparables[0].price", "");
        assert_eq!(draft.text("comparables[1].price"), "420");
        draft.set("comparables[1].price", "");
        assert_eq!(draft.count("comparables"), 0);
        draft.set("quotes[T14a].likely", "240");
        assert_eq!(draft.quote_text("T14a", "likely"), "240");
        assert_eq!(draft.text("quotes[T14a].likely"), "240");
        draft.set("quotes[T14a].likely", "");
        assert_eq!(draft.count("quotes"), 0);
    }

    #[test]
    fn an_entry_that_is_none_is_not_written_over() {
        let mut draft = Draft::parse(&file(r#","comparables":[7,{"price":3}]"#)).unwrap();
        draft.set("comparables[0].price", "5");
        assert_eq!(draft.text("comparables[0].price"), "5");
        assert!(draft.to_json().contains('7'));
        assert_eq!(draft.text("comparables[2].price"), "3");
        assert_eq!(draft.text("comparables[x].price"), "");
        assert_eq!(draft.text("comparables[9].price"), "");
    }

    #[test]
    fn a_section_of_the_wrong_kind_is_kept_aside() {
        let mut draft = Draft::parse(&file(r#","piece":"teapot","parts":7"#)).unwrap();
        draft.set("piece.form", "tray");
        draft.set_part("body", "bleed", "none");
        assert_eq!(draft.text("unread_piece"), "teapot");
        assert_eq!(draft.text("unread_parts"), "7");
    }

    #[test]
    fn files_that_cannot_be_opened_say_why() {
        let deep = file(&format!(",\"x\":{}{}", "[".repeat(70), "]".repeat(70)));
        assert_eq!(Draft::parse(&deep), Err(OpenError::TooDeep));
        assert_eq!(
            Draft::parse(&" ".repeat(MAX_BYTES + 1)),
            Err(OpenError::TooLarge {
                bytes: MAX_BYTES + 1
            })
        );
        assert!(matches!(
            Draft::parse(&file(",\"x\":")[..40]),
            Err(OpenError::NotJson {
                cut_short: true,
                ..
            })
        ));
        assert!(matches!(
            Draft::parse("{oops}"),
            Err(OpenError::NotJson {
                cut_short: false,
                ..
            })
        ));
        assert_eq!(Draft::parse("[]"), Err(OpenError::NotACase));
        assert_eq!(
            Draft::parse("{\"format\":\"other\"}"),
            Err(OpenError::NotACase)
        );
        let version = |v: &str| {
            Draft::parse(&format!(
                "{{\"format\":\"leavewell-case\",\"version\":{v}}}"
            ))
        };
        assert_eq!(version("2"), Err(OpenError::Newer { version: 2 }));
        for bad in ["0", "-1", "1.5", "\"1\"", "null"] {
            assert_eq!(version(bad), Err(OpenError::BadVersion), "{bad}");
        }
        let many = file(&format!(",\"findings\":[{}0]", "0,".repeat(MAX_FINDINGS)));
        assert_eq!(
            Draft::parse(&many),
            Err(OpenError::TooManyFindings {
                count: MAX_FINDINGS + 1
            })
        );
    }

    #[test]
    fn every_refusal_says_what_to_do() {
        for e in [
            OpenError::TooLarge { bytes: 100_000_000 },
            OpenError::TooDeep,
            OpenError::NotJson {
                line: 1,
                column: 2,
                cut_short: true,
            },
            OpenError::NotJson {
                line: 1,
                column: 2,
                cut_short: false,
            },
            OpenError::NotACase,
            OpenError::Newer { version: 9 },
            OpenError::BadVersion,
            OpenError::TooManyFindings { count: 9_999 },
        ] {
            let p = e.problem();
            assert!(
                !p.field.is_empty() && p.message.ends_with('.') && p.remedy.ends_with('.'),
                "{p:?}"
            );
        }
    }
}
