//! A draft: the case file as typed, right or wrong.
//!
//! The draft *is* the JSON document. Fields this version does not know stay in it and are saved
//! again; a number that is not one stays as the text that was typed. Invariant: nothing typed is
//! lost by opening, editing one field, or saving.

use crate::ledger::FindingId;
use serde_json::{Map, Number, Value};

use super::number::has_two_readings;
use super::open_error::{CASE_FORMAT, CASE_VERSION, MAX_BYTES, MAX_DEPTH, MAX_FINDINGS, OpenError};
use super::schema::version_needed;
use super::{Case, Form, Problem, Word, reading};

/// The case file as typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    pub(super) root: Map<String, Value>,
}

impl Default for Draft {
    fn default() -> Self {
        let mut root = Map::new();
        root.insert("format".to_owned(), CASE_FORMAT.into());
        root.insert("version".to_owned(), 1.into());
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

    pub(super) fn from_root(root: Map<String, Value>) -> Result<Self, OpenError> {
        if root.get("format").and_then(Value::as_str) != Some(CASE_FORMAT) {
            return Err(OpenError::NotACase);
        }
        match root.get("version").and_then(Value::as_u64) {
            None | Some(0) => return Err(OpenError::BadVersion),
            Some(version) if version > CASE_VERSION => {
                return Err(OpenError::Newer {
                    version,
                    newest: CASE_VERSION,
                });
            }
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

    /// Sets the version to what the record needs: 2 once anything in it is since 2. A record that was
    /// opened as 2 stays so, since it may hold what this program does not know.
    pub(super) fn raise_version(&mut self) {
        let held = self.root.get("version").and_then(Value::as_u64);
        let needed = version_needed(&self.root);
        if held.is_some_and(|held| held < needed) {
            self.root.insert("version".to_owned(), needed.into());
        }
    }

    /// Takes off what a saved file says of where it was kept, and gives the key it was kept under;
    /// empty when it says none. Records on a device do not hold it: there the key is outside.
    pub fn take_kept(&mut self) -> String {
        let id = self.text("kept.id");
        self.root.remove("kept");
        id
    }

    /// The whole file as text, ready to save.
    #[must_use]
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(&self.root).unwrap_or_default()
    }

    /// The parts of the file that can be used, and a problem for each part that cannot.
    #[must_use]
    pub fn read(&self) -> (Case, Vec<Problem>) {
        reading::read(&self.root)
    }

    /// The text of a field such as `piece.form`, `comparables[0].price`, `parts[part=foot].note` or
    /// `overrides.{fee.lot}.value`, as typed; empty when there is none.
    #[must_use]
    pub fn text(&self, path: &str) -> String {
        self.value(path).map(typed_text).unwrap_or_default()
    }

    /// How many entries a list such as `comparables` or `proposal.steps` has.
    #[must_use]
    pub fn count(&self, list: &str) -> usize {
        self.value(list)
            .and_then(Value::as_array)
            .map_or(0, Vec::len)
    }

    /// Adds an entry to the end of a list such as `proposal.steps`, under an id no other entry has.
    pub fn add_entry(&mut self, list: &str) {
        let count = self.count(list);
        let taken: Vec<String> = (0..count)
            .map(|place| self.text(&format!("{list}[{place}].id")))
            .collect();
        let id = (1..=count + 1)
            .map(|number| format!("e{number}"))
            .find(|id| !taken.contains(id))
            .unwrap_or_default();
        self.set(&format!("{list}[{count}].id"), &id);
    }

    /// Removes the entry at this place of a list, the list with its last entry, and the section that held
    /// only the list.
    pub fn remove_at(&mut self, list: &str, place: usize) {
        remove_from(&mut self.root, list, place);
    }

    /// Removes the mark at this place. What was confirmed from it stays answered and no longer names it.
    pub fn remove_mark(&mut self, place: usize) {
        let id = self.text(&format!("marks[{place}].id"));
        self.remove_at("marks", place);
        for at in 0..self.count("findings") {
            let from = format!("findings[{at}].from");
            if !id.is_empty() && self.text(&from) == id {
                self.set(&from, "");
            }
        }
    }

    /// Writes a field such as `market.likely`; empty text removes it. A field of a list's entry has
    /// its place in the path, `comparables[0].price`; a place past the end makes a new last entry, and
    /// entries at the end with nothing left in them go, so that those before keep their places.
    ///
    /// A whole entry, `parts[part=foot].spots[id=e1]`, takes several fields at once, as lines of `field=text`;
    /// empty text removes the entry.
    pub fn set(&mut self, path: &str, typed: &str) {
        let last = path.rsplit_once("].").map_or(path, |(_, last)| last);
        if let (_, Some(Entry::With(..))) = in_list(last)
            && !typed.is_empty()
        {
            for (field, text) in typed.lines().filter_map(|line| line.split_once('=')) {
                self.put_at(&[path, ".", field].concat(), typed_value(text));
            }
            return;
        }
        self.put_at(path, typed_value(typed));
    }

    /// A yes-or-no field, as a tick or as a word; `None` when not answered.
    #[must_use]
    pub fn flag(&self, path: &str) -> Option<bool> {
        self.value(path).and_then(yes_or_no)
    }

    /// The form of the piece, if it is one of those known.
    #[must_use]
    pub fn form(&self) -> Option<Form> {
        self.word("piece.form")
    }

    /// Writes a yes-or-no field; `None` removes it.
    pub fn set_flag(&mut self, path: &str, yes: Option<bool>) {
        self.put_at(path, yes.map(Value::Bool));
    }

    /// The answer to a finding as written, and its part; empty when not looked.
    #[must_use]
    pub fn answer(&self, finding: FindingId) -> (String, String) {
        self.entry("findings", "id", finding.text())
            .map(|m| {
                (
                    m.get("answer").map(typed_text).unwrap_or_default(),
                    m.get("part").map(typed_text).unwrap_or_default(),
                )
            })
            .unwrap_or_default()
    }

    /// Answers a finding; an empty answer takes it off the list.
    pub fn set_answer(&mut self, finding: FindingId, answer: &str, part: &str) {
        let finding = finding.text();
        if answer.is_empty() {
            self.remove_entry("findings", "id", finding);
            return;
        }
        let entry = self.entry_mut("findings", "id", finding);
        put(entry, "answer", typed_value(answer));
        put(entry, "part", typed_value(part));
        self.raise_version();
    }

    /// A field of a part as typed; empty when there is none.
    #[must_use]
    pub fn part_text(&self, part: &str, field: &str) -> String {
        self.text(&in_entry("parts", "part", part, field))
    }

    /// Writes a field of a part; empty text removes it, and the part once nothing is left of it.
    pub fn set_part(&mut self, part: &str, field: &str, typed: &str) {
        self.set(&in_entry("parts", "part", part, field), typed);
    }

    /// A field of a quote as typed; empty when there is none.
    #[must_use]
    pub fn quote_text(&self, treatment: &str, field: &str) -> String {
        self.text(&in_entry("quotes", "treatment", treatment, field))
    }

    /// Writes a field of a quote; empty text removes it, and the quote once nothing is left of it.
    pub fn set_quote(&mut self, treatment: &str, field: &str, typed: &str) {
        self.set(&in_entry("quotes", "treatment", treatment, field), typed);
    }

    /// The place of a part in the file's list, as problems name it; `None` when it has none.
    #[must_use]
    pub fn part_place(&self, part: &str) -> Option<usize> {
        self.place_of("parts", "part", part)
    }

    /// The place of the first entry of a list whose field `key` holds this id; `None` when none does.
    #[must_use]
    pub fn place_of(&self, list: &str, key: &str, id: &str) -> Option<usize> {
        let entries = self.root.get(list)?.as_array()?;
        let is_it = |v: &Value| v.as_object().is_some_and(|m| is(m, key, id));
        entries.iter().position(is_it)
    }

    /// The record of condition alone (`looked` and `parts`), as [`Draft::keep_as_earlier`] keeps it.
    #[must_use]
    pub fn condition_only(&self) -> Self {
        let mut only = Self::default();
        for field in ["looked", "parts"] {
            if let Some(value) = self.root.get(field) {
                only.root.insert(field.to_owned(), value.clone());
            }
        }
        only
    }

    /// Keeps a copy of the present record of condition (`looked` and `parts`) among the earlier ones,
    /// with a note. Nothing else changes.
    pub fn keep_as_earlier(&mut self, note: &str) {
        let mut copy = Map::new();
        for field in ["looked", "parts"] {
            if let Some(value) = self.root.get(field) {
                copy.insert(field.to_owned(), value.clone());
            }
        }
        put(&mut copy, "note", typed_value(note));
        list_in(&mut self.root, "earlier").push(Value::Object(copy));
    }

    /// Earlier records of condition of the same piece, each as a draft of its own: `earlier[]`, with
    /// `parts`, `note`, and either `looked` or the bare date `on`. Entries that are no objects are
    /// passed over.
    #[must_use]
    pub fn earlier(&self) -> Vec<Self> {
        let entries = self.root.get("earlier").and_then(Value::as_array);
        entries
            .into_iter()
            .flatten()
            .filter_map(Value::as_object)
            .map(|entry| {
                let mut draft = Self::default();
                for (field, value) in entry {
                    if !matches!(field.as_str(), "format" | "version") {
                        draft.root.insert(field.clone(), value.clone());
                    }
                }
                let on = draft.text("on");
                if draft.text("looked.on").is_empty() && !on.is_empty() {
                    draft.set("looked.on", &on);
                }
                draft
            })
            .collect()
    }

    /// Every field of the file as it stands there, those that this version does not know among them.
    #[must_use]
    pub fn fields(&self) -> &Map<String, Value> {
        &self.root
    }

    /// The word in a field; `None` while it is empty, or holds "not sure" or no word of this list.
    #[must_use]
    pub fn word<W: Word>(&self, path: &str) -> Option<W> {
        W::from_id(self.value(path)?.as_str()?)
    }

    /// A section that is an object.
    pub(super) fn section(&self, name: &str) -> Option<&Map<String, Value>> {
        self.root.get(name)?.as_object()
    }

    /// What stands at a path: names joined by dots, the entry of a list in brackets, by its place or
    /// by a field that tells it from the others.
    pub(super) fn value(&self, path: &str) -> Option<&Value> {
        let (mut holder, mut rest) = (&self.root, path);
        while let Some((first, after)) = step(rest) {
            let (name, entry) = in_list(first);
            let held = holder.get(name)?;
            holder = match entry {
                Some(entry) => held
                    .as_array()?
                    .iter()
                    .enumerate()
                    .find_map(|(at, value)| value.as_object().filter(|held| entry.is(at, held)))?,
                None => held.as_object()?,
            };
            rest = after;
        }
        match in_list(bare(rest)) {
            (list, Some(Entry::With(key, id))) => {
                let mut entries = holder.get(list)?.as_array()?.iter();
                entries.find(|value| value.as_object().is_some_and(|m| is(m, key, id)))
            }
            _ => holder.get(bare(rest)),
        }
    }

    /// Writes or removes the value at a path. A value of the wrong type in the way is moved to another key.
    /// Removing a value that does not exist changes nothing.
    pub(super) fn put_at(&mut self, path: &str, value: Option<Value>) {
        if value.is_none() && self.value(path).is_none() {
            return;
        }
        let removes = value.is_none();
        let (mut holder, mut rest) = (&mut self.root, path);
        while let Some((first, after)) = step(rest) {
            let (name, entry) = in_list(first);
            holder = match entry {
                Some(entry) => object_in_list(holder, name, entry),
                None => object_in(holder, name),
            };
            rest = after;
        }
        match in_list(bare(rest)) {
            (list, Some(entry @ Entry::With(..))) if value.is_none() => {
                take_entry(holder, list, entry);
            }
            _ => put(holder, bare(rest), value),
        }
        // An entry of which only its name is left goes with its last field.
        let first = path.split_once('.').map_or("", |(first, _)| first);
        if let (list, Some(Entry::With(key, id))) = in_list(first)
            && self
                .entry(list, key, id)
                .is_some_and(|held| held.len() == 1)
        {
            self.remove_entry(list, key, id);
        }
        if removes && first == "pieces" {
            self.drop_empty_pieces();
        }
        // Empty entries at the end of a list go; those before keep their places.
        if let (list, Some(Entry::At(_))) = in_list(first)
            && let Some(Value::Array(entries)) = self.root.get_mut(list)
        {
            let empty = |v: &Value| v.as_object().is_some_and(Map::is_empty);
            while entries.last().is_some_and(empty) {
                entries.pop();
            }
        }
        self.raise_version();
    }

    /// Takes off parts of single pieces, and pieces, of which only the name is left.
    fn drop_empty_pieces(&mut self) {
        let Some(Value::Object(pieces)) = self.root.get_mut("pieces") else {
            return;
        };
        if let Some(Value::Array(each)) = pieces.get_mut("each") {
            for piece in each.iter_mut().filter_map(Value::as_object_mut) {
                if let Some(Value::Array(parts)) = piece.get_mut("parts") {
                    parts.retain(|part| !has_only(part, "part"));
                    if parts.is_empty() {
                        piece.remove("parts");
                    }
                }
            }
            each.retain(|piece| !has_only(piece, NUMBERED));
            if each.is_empty() {
                pieces.remove("each");
            }
        }
        if pieces.is_empty() {
            self.root.remove("pieces");
        }
    }

    fn entry(&self, list: &str, key: &str, id: &str) -> Option<&Map<String, Value>> {
        self.root
            .get(list)?
            .as_array()?
            .iter()
            .filter_map(Value::as_object)
            .find(|m| is(m, key, id))
    }

    fn entry_mut(&mut self, list: &str, key: &str, id: &str) -> &mut Map<String, Value> {
        object_in_list(&mut self.root, list, Entry::With(key, id))
    }

    fn remove_entry(&mut self, list: &str, key: &str, id: &str) {
        if let Some(Value::Array(entries)) = self.root.get_mut(list) {
            entries.retain(|v| !v.as_object().is_some_and(|m| is(m, key, id)));
        }
    }
}

/// The first step of a path and the rest. A name containing dots is written in braces, as in
/// `overrides.{fee.lot}.value`.
fn step(path: &str) -> Option<(&str, &str)> {
    match path.strip_prefix('{') {
        Some(name) => name.split_once("}."),
        None => path.split_once('.'),
    }
}

/// The last name of a path, out of its braces.
fn bare(name: &str) -> &str {
    let inner = name.strip_prefix('{').and_then(|n| n.strip_suffix('}'));
    inner.unwrap_or(name)
}

/// The path of a field in the list entry that a key identifies.
fn in_entry(list: &str, key: &str, id: &str, field: &str) -> String {
    [list, "[", key, "=", id, "].", field].concat()
}

/// Which entry of a list is meant.
#[derive(Clone, Copy)]
enum Entry<'a> {
    At(usize),
    With(&'a str, &'a str),
}

impl Entry<'_> {
    fn is(self, at: usize, held: &Map<String, Value>) -> bool {
        match self {
            Self::At(place) => at == place,
            Self::With(key, id) => is(held, key, id),
        }
    }
}

/// A name, and the entry of a list when it carries one: `comparables[2]`, `parts[part=foot]`.
fn in_list(name: &str) -> (&str, Option<Entry<'_>>) {
    let Some((list, inside)) = name.strip_suffix(']').and_then(|open| open.split_once('[')) else {
        return (name, None);
    };
    match (inside.split_once('='), inside.parse()) {
        (Some((key, id)), _) => (list, Some(Entry::With(key, id))),
        (None, Ok(place)) => (list, Some(Entry::At(place))),
        (None, Err(_)) => (name, None),
    }
}

/// Whether nothing but its name is left of an entry.
fn has_only(entry: &Value, key: &str) -> bool {
    entry
        .as_object()
        .is_some_and(|held| held.keys().all(|name| name == key))
}

/// The key of entries that go by a number.
const NUMBERED: &str = "no";

fn is(entry: &Map<String, Value>, key: &str, id: &str) -> bool {
    match entry.get(key) {
        Some(Value::String(text)) => text == id,
        Some(Value::Number(number)) => key == NUMBERED && number.to_string() == id,
        _ => false,
    }
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

/// Takes an entry out of a list, and the list with its last entry.
fn take_entry(holder: &mut Map<String, Value>, list: &str, entry: Entry<'_>) {
    let Some(Value::Array(entries)) = holder.get_mut(list) else {
        return;
    };
    let is_it = |(at, value): (usize, &Value)| value.as_object().is_some_and(|m| entry.is(at, m));
    if let Some(at) = entries.iter().enumerate().position(is_it) {
        entries.remove(at);
    }
    if entries.is_empty() {
        holder.remove(list);
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

/// The object meant in a list, made when it is not there; a place beyond the end is the next free
/// one, so that no path can make a list longer than what was written to it.
fn object_in_list<'a>(
    holder: &'a mut Map<String, Value>,
    name: &str,
    entry: Entry<'_>,
) -> &'a mut Map<String, Value> {
    let entries = list_in(holder, name);
    let found = entries
        .iter()
        .enumerate()
        .position(|(at, value)| value.as_object().is_some_and(|held| entry.is(at, held)));
    let at = found.unwrap_or_else(|| {
        let mut fresh = Map::new();
        let at = match entry {
            Entry::At(place) => place.min(entries.len()),
            Entry::With(key, id) => {
                // Pieces are counted; everything else goes by a name.
                let number = (key == NUMBERED).then(|| id.parse::<u16>().ok()).flatten();
                let id = number.map_or_else(|| id.into(), Value::from);
                fresh.insert(key.to_owned(), id);
                entries.len()
            }
        };
        entries.insert(at, Value::Object(fresh));
        at
    });
    match &mut entries[at] {
        Value::Object(held) => held,
        _ => unreachable!("found or made as an object"),
    }
}

fn list_in<'a>(holder: &'a mut Map<String, Value>, name: &str) -> &'a mut Vec<Value> {
    if !holder.get(name).is_some_and(Value::is_array) {
        set_aside(holder, name);
        holder.insert(name.to_owned(), Value::Array(Vec::new()));
    }
    match holder.get_mut(name) {
        Some(Value::Array(entries)) => entries,
        _ => unreachable!("just made an array"),
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

/// Yes or no, as a tick or as a word.
pub(super) fn yes_or_no(value: &Value) -> Option<bool> {
    match value {
        Value::Bool(yes) => Some(*yes),
        Value::String(word) if word == "yes" => Some(true),
        Value::String(word) if word == "no" => Some(false),
        _ => None,
    }
}

/// A field's value as the text a person would have typed.
#[must_use]
pub fn typed_text(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Null => String::new(),
        other => other.to_string(),
    }
}

/// Text as a JSON value: a number when JSON would write it just so and it can only be one number,
/// otherwise as typed. Numbers keep the text they were written with.
fn typed_value(typed: &str) -> Option<Value> {
    if typed.is_empty() {
        return None;
    }
    let number = serde_json::from_str::<Number>(typed)
        .ok()
        .filter(|n| n.as_str() == typed && !has_two_readings(typed));
    Some(number.map_or_else(|| Value::String(typed.to_owned()), Value::Number))
}

/// How deep brackets nest in a JSON text, ignoring those inside strings.
pub(super) fn depth(text: &str) -> usize {
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

fn remove_from(holder: &mut Map<String, Value>, list: &str, place: usize) {
    if let Some((section, rest)) = list.split_once('.') {
        if let Some(Value::Object(held)) = holder.get_mut(section) {
            remove_from(held, rest, place);
            if held.is_empty() {
                holder.remove(section);
            }
        }
        return;
    }
    let Some(Value::Array(entries)) = holder.get_mut(list) else {
        return;
    };
    if place < entries.len() {
        entries.remove(place);
    }
    if entries.is_empty() {
        holder.remove(list);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(body: &str) -> String {
        format!("{{\"format\":\"leavewell-case\",\"version\":1{body}}}")
    }

    #[test]
    fn a_mark_taken_away_leaves_what_was_confirmed_from_it() {
        let mut draft = Draft::default();
        draft.set("marks[id=1].text", "EPNS");
        draft.add_entry("marks");
        draft.set_answer(FindingId::M01, "seen", "base");
        draft.set("findings[id=M01].from", "1");
        draft.remove_mark(0);
        assert_eq!(draft.count("marks"), 1);
        assert_eq!(
            draft.answer(FindingId::M01),
            ("seen".to_owned(), "base".to_owned())
        );
        assert_eq!(draft.text("findings[id=M01].from"), "");
    }

    #[test]
    fn an_entry_within_an_entry_is_written_at_once_and_taken_out_at_once() {
        let mut draft = Draft::default();
        let path = "parts[part=foot].spots[id=e1]";
        draft.set(path, "fault=split\nx=20\nnote=near a = b");
        draft.set("parts[part=foot].spots[id=e2].fault", "scratch");
        assert_eq!(draft.text("parts[0].spots[0].note"), "near a = b");
        assert_eq!(draft.text("parts[part=foot].spots[id=e1].x"), "20");
        draft.set(path, "");
        assert_eq!(draft.count("parts[0].spots"), 1);
        draft.set("parts[part=foot].spots[id=e2]", "");
        assert_eq!(draft.count("parts"), 0, "{}", draft.to_json());
        draft.set("parts[part=foot].spots[id=e2]", "");
        assert_eq!(draft.count("parts"), 0);
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
    fn paths_go_as_deep_as_they_say() {
        let mut draft = Draft::default();
        draft.set("bench.heat.thickness_mm", "0.8");
        draft.set("comparables[0].price", "120");
        draft.set("comparables[7].price", "90");
        assert_eq!(draft.text("bench.heat.thickness_mm"), "0.8");
        assert_eq!(
            draft.text("comparables[1].price"),
            "90",
            "the next free place"
        );
        assert!(draft.to_json().contains("\"heat\": {"));
        draft.set("comparables[0].price", "");
        assert_eq!(draft.text("comparables[0].price"), "");
        assert_eq!(
            draft.text("comparables[1].price"),
            "90",
            "the rest stays where it is"
        );
        draft.set("parts[part=foot].note", "soft");
        draft.set("parts[part=body].note", "firm");
        draft.set("parts[part=foot].note", "thin");
        assert_eq!(draft.part_text("foot", "note"), "thin");
        assert_eq!(draft.text("parts[part=body].note"), "firm");
        draft.set("parts[part=body].note", "");
        assert!(!draft.to_json().contains("body"), "nothing is left of it");
        let before = draft.clone();
        draft.set("nothing.here[3].at_all", "");
        draft.set("parts[part=rim].note", "");
        assert_eq!(draft, before);
    }

    #[test]
    fn a_part_of_one_piece_comes_and_goes() {
        let mut draft = Draft::default();
        draft.set("pieces.count", "3");
        draft.set("pieces.each[no=2].parts[part=body].dents", "minor");
        draft.set("pieces.each[no=2].share", "40");
        draft.set("pieces.each[no=3].parts[part=foot].joint", "open");
        let text = draft.to_json();
        assert!(text.contains("\"no\": 2"), "{text}");
        assert_eq!(
            draft.text("pieces.each[no=2].parts[part=body].dents"),
            "minor"
        );
        assert_eq!(Draft::parse(&text).unwrap(), draft);
        draft.set("pieces.each[no=2].parts[part=body].dents", "");
        assert_eq!(draft.text("pieces.each[no=2].share"), "40");
        draft.set("pieces.each[no=2].share", "");
        assert_eq!(
            draft.text("pieces.each[no=3].parts[part=foot].joint"),
            "open"
        );
        draft.set("pieces.each[no=3].parts[part=foot].joint", "");
        assert_eq!(draft.value("pieces.each"), None);
        draft.set("pieces.count", "");
        assert_eq!(draft.value("pieces"), None);
    }

    #[test]
    fn what_stands_in_the_way_of_a_path_is_kept() {
        let mut draft =
            Draft::parse(&file(r#","bench":{"heat":"hot"},"comparables":[7]"#)).unwrap();
        draft.set("bench.heat.thickness_mm", "0.8");
        draft.set("comparables[0].price", "120");
        assert_eq!(draft.text("bench.unread_heat"), "hot");
        assert_eq!(draft.text("comparables[0].price"), "120");
        assert!(draft.to_json().contains('7'));
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
    fn a_record_is_saved_as_2_once_anything_in_it_is_new() {
        let version = |path: &str, typed: &str| {
            let mut draft = Draft::default();
            draft.set(path, typed);
            draft.text("version")
        };
        for (path, typed) in [
            ("piece.form", "tray"),
            ("parts[part=foot].split", "through"),
            ("parts[part=foot].lead", "present"),
            ("quotes[treatment=T08].likely", "60"),
            ("done[0].what", "T08"),
            ("aim.asked", "T08"),
            ("later.than.all", "7"),
        ] {
            assert_eq!(version(path, typed), "1", "{path}");
        }
        for (path, typed) in [
            ("piece.form", "urn"),
            ("parts[part=nozzle].bleed", "slight"),
            ("parts[part=foot].material", "wood"),
            ("parts[part=foot].lead", "not_found"),
            ("quotes[treatment=T02b].likely", "60"),
            ("quotes[treatment=T08].hours", "2"),
            ("tests[id=a].kind", "release"),
            ("proposal.steps[id=a].treatment", "T08"),
            ("aim.asked", "T08 T12"),
            ("aim.asked", "proposal"),
            ("aim.until", "2027-01-01"),
        ] {
            assert_eq!(version(path, typed), "2", "{path}");
        }
        let mut draft = Draft::default();
        draft.set("piece.form", "urn");
        draft.set("piece.form", "tray");
        let opened = Draft::parse(&draft.to_json()).unwrap();
        assert_eq!(opened, draft);
    }

    #[test]
    fn a_path_reaches_a_field_of_a_part() {
        let mut draft = Draft::default();
        draft.set("parts[part=foot].note", "Thin at the ridge.");
        assert_eq!(draft.part_text("foot", "note"), "Thin at the ridge.");
        assert_eq!(draft.text("parts[part=foot].note"), "Thin at the ridge.");
        assert_eq!(draft.part_place("foot"), Some(0));
        draft.set("parts[part=foot].note", "");
        assert_eq!(draft.part_place("foot"), None);
    }

    #[test]
    fn a_kept_record_is_a_copy() {
        let mut draft = Draft::parse(&file(r#","earlier":"lost","mystery":1"#)).unwrap();
        draft.set("looked.on", "2026-05-31");
        draft.set_part("foot", "bleed", "slight");
        draft.keep_as_earlier("Before cleaning");
        draft.set_part("foot", "bleed", "much");
        assert_eq!(draft.text("unread_earlier"), "lost");
        let earlier = draft.earlier();
        assert_eq!(earlier.len(), 1);
        assert_eq!(earlier[0].part_text("foot", "bleed"), "slight");
        assert_eq!(earlier[0].text("looked.on"), "2026-05-31");
        assert_eq!(earlier[0].text("note"), "Before cleaning");
        assert_eq!(draft.part_text("foot", "bleed"), "much");
    }

    #[test]
    fn an_earlier_record_may_bring_its_date_alone() {
        let text = file(r#","earlier":[7,{"on":"2020-01-02","parts":[],"version":9}]"#);
        let earlier = Draft::parse(&text).unwrap().earlier();
        assert_eq!(earlier.len(), 1);
        assert_eq!(earlier[0].text("looked.on"), "2020-01-02");
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
        draft.set("quotes[treatment=T14a].likely", "240");
        assert_eq!(draft.quote_text("T14a", "likely"), "240");
        assert_eq!(draft.text("quotes[treatment=T14a].likely"), "240");
        draft.set("quotes[treatment=T14a].likely", "");
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
        assert!(version("2").is_ok());
        assert_eq!(
            version("3"),
            Err(OpenError::Newer {
                version: 3,
                newest: 2
            })
        );
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
    fn a_name_with_dots_stands_in_braces() {
        let mut draft = Draft::default();
        draft.set("overrides.{fee.lot}.value", "12.50");
        draft.set("overrides.{fee.lot}.reason", "Their terms, 2026.");
        assert_eq!(draft.text("overrides.{fee.lot}.value"), "12.50");
        let (case, problems) = draft.read();
        assert!(problems.is_empty(), "{problems:?}");
        assert_eq!(case.overrides.len(), 1);
        assert_eq!(case.overrides[0].figure, "fee.lot");
        assert_eq!(case.overrides[0].value.to_bits(), 12.5_f64.to_bits());
        assert_eq!(case.overrides[0].reason, "Their terms, 2026.");
        draft.set("overrides.{fee.lot}.value", "");
        draft.set("overrides.{fee.lot}.reason", "");
        assert!(draft.read().0.overrides.is_empty());
        // A bare number is reached as the last name of the path.
        draft.set("overrides.{fee.vat}", "0.1");
        assert_eq!(draft.text("overrides.{fee.vat}"), "0.1");
        assert_eq!(draft.read().0.overrides.len(), 1);
        // A brace that is not closed is a name like any other.
        draft.set("overrides.{fee.lot.value", "1");
        assert_eq!(draft.text("overrides.{fee.lot.value"), "1");
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
            OpenError::Newer {
                version: 9,
                newest: 2,
            },
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

    #[test]
    fn entries_are_added_under_new_ids_and_removed_by_place() {
        let mut draft = Draft::default();
        for _ in 0..3 {
            draft.add_entry("proposal.steps");
        }
        draft.set("proposal.steps[0].treatment", "T08");
        draft.set("proposal.steps[2].treatment", "T12");
        assert_eq!(draft.count("proposal.steps"), 3);
        draft.remove_at("proposal.steps", 1);
        assert_eq!(draft.text("proposal.steps[1].treatment"), "T12");
        draft.add_entry("proposal.steps");
        assert_eq!(
            draft.text("proposal.steps[2].id"),
            "e2",
            "an id that is free"
        );
        for _ in 0..4 {
            draft.remove_at("proposal.steps", 0);
        }
        assert_eq!(draft.count("proposal.steps"), 0);
        assert_eq!(draft.value("proposal"), None, "nothing empty is left");
        draft.remove_at("nowhere.at.all", 0);
    }
}
