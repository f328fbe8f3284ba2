//! A file that is opened: one case, or a whole shelf with its photographs; and what can be saved of
//! one that is damaged.
//!
//! A shelf file is one JSON object: `"format": "leavewell-shelf"`, `"version": 1`, `"checksum"`,
//! `"cases": [{"id", "revision", "case"}]`, `"photos": [{"case", "key", "on", "width", "height",
//! "data"}]`. Whoever writes it starts each entry on a line of its own, so that a file with a hole in
//! it can still be read on either side of the hole.

use serde::Serialize;
use serde_json::{Map, Value};

use super::draft::{self, Draft};
use super::open_error::{CASE_VERSION, MAX_BYTES, MAX_DEPTH, OpenError};
use super::schema;
use super::{Problem, Refused};

/// What `format` says of a whole shelf.
pub const SHELF_FORMAT: &str = "leavewell-shelf";
/// The newest version of a shelf file that this program writes and reads.
pub const SHELF_VERSION: u64 = 1;
/// Largest shelf file, photographs and all, in bytes.
pub const MAX_SHELF_BYTES: usize = 400 * 1024 * 1024;
/// Longest key of a record in a file.
const MAX_ID: usize = 64;
/// How a line of a case and of a photograph begins.
const MARKS: [&str; 2] = ["\n{\"id\":", "\n{\"case\":"];

/// What a file holds.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Opened {
    /// Whether it is a whole shelf.
    pub shelf: bool,
    /// The checksum the file names.
    pub checksum: Option<String>,
    /// What is wrong with the file as a whole, when it is damaged.
    pub damage: Option<Problem>,
    /// Number of unreadable entries.
    pub lost: usize,
    /// The cases.
    pub cases: Vec<OpenedCase>,
    /// The photographs.
    pub photos: Vec<OpenedPhoto>,
}

/// A case in a file.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OpenedCase {
    /// The key it is kept under; empty when the file names none.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// Its text as Leavewell writes it; of a record that cannot be read, as it stands.
    pub text: String,
    /// Why it cannot be read, when it cannot.
    pub problem: Option<Problem>,
    /// What in it cannot be used, each with the field's name: it is kept as written and counts as not said.
    pub unused: Vec<String>,
}

impl OpenedCase {
    fn of_draft(id: String, draft: &Draft) -> Self {
        let unused = draft.read().1.into_iter().map(|problem| {
            let label = schema::field(&problem.field).map_or("", |field| field.label);
            [label, ": ", &problem.message, " ", &problem.remedy].concat()
        });
        Self {
            id,
            name: draft.text("piece.name"),
            text: draft.to_json(),
            problem: None,
            unused: unused.collect(),
        }
    }
}

/// A photograph in a file.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct OpenedPhoto {
    /// The key of its case.
    pub case: String,
    /// Its key there.
    pub key: String,
    /// The day it was taken in.
    pub on: String,
    /// Pixels across.
    pub width: u64,
    /// Pixels down.
    pub height: u64,
    /// The picture as a data address.
    pub data: String,
}

/// What a file's text holds. A damaged file gives what can still be read, and says so.
///
/// # Errors
/// When nothing in it can be used, or it was written by a newer program.
pub fn open(text: &str) -> Result<Opened, Problem> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let (root, damage, lost) = match whole(text) {
        Ok(root) => (root, None, 0),
        Err(fault) => match salvaged(text, &fault) {
            Some((root, lost)) => (root, Some(fault.problem()), lost),
            None => return Err(fault.problem()),
        },
    };
    // Of a torn record nothing may be left but what kind of file it was.
    let blank = root
        .iter()
        .all(|(name, value)| value.is_number() || value.is_string() || name == "kept");
    // The tear is what is wrong with a file whose beginning was torn off.
    if let Some(tear) = damage.as_ref().filter(|_| !root.contains_key("format")) {
        return Err(tear.clone());
    }
    let mut opened = if root.get("format").and_then(Value::as_str) == Some(SHELF_FORMAT) {
        shelf(root)?
    } else {
        one_case(root)?
    };
    let nothing = opened.cases.is_empty() && opened.photos.is_empty();
    match damage {
        Some(fault) if blank || nothing => return Err(fault),
        damage => opened.damage = damage,
    }
    opened.lost += lost;
    Ok(opened)
}

/// The same as JSON text: what [`Opened`] holds, or `{"refused": {field, message, remedy}}`.
#[must_use]
pub fn open_json(text: &str) -> String {
    match open(text) {
        Ok(opened) => serde_json::to_string(&opened),
        Err(refused) => serde_json::to_string(&Refused { refused }),
    }
    .unwrap_or_default()
}

/// Checks limits, then reads the whole text as one object.
fn whole(text: &str) -> Result<Map<String, Value>, OpenError> {
    if text.len() > MAX_SHELF_BYTES {
        return Err(OpenError::TooLarge { bytes: text.len() });
    }
    // A shelf lays two levels round its cases.
    if draft::depth(text) > MAX_DEPTH + 3 {
        return Err(OpenError::TooDeep);
    }
    match serde_json::from_str(text) {
        Ok(Value::Object(root)) => {
            let shelf = root.get("format").and_then(Value::as_str) == Some(SHELF_FORMAT);
            if !shelf && text.len() > MAX_BYTES {
                return Err(OpenError::TooLarge { bytes: text.len() });
            }
            Ok(root)
        }
        Ok(_) => Err(OpenError::NotACase),
        Err(e) => Err(OpenError::NotJson {
            line: e.line(),
            column: e.column(),
            cut_short: e.is_eof(),
        }),
    }
}

fn one_case(root: Map<String, Value>) -> Result<Opened, Problem> {
    let mut draft = Draft::from_root(root).map_err(|fault| fault.problem())?;
    let id = key_of(draft.take_kept());
    Ok(Opened {
        cases: vec![OpenedCase::of_draft(id, &draft)],
        ..Opened::default()
    })
}

fn shelf(mut root: Map<String, Value>) -> Result<Opened, Problem> {
    match root.get("version").and_then(Value::as_u64) {
        None | Some(0) => return Err(OpenError::BadVersion.problem()),
        Some(version) if version > SHELF_VERSION => {
            return Err(OpenError::Newer {
                version,
                newest: SHELF_VERSION,
            }
            .problem());
        }
        Some(_) => {}
    }
    let mut opened = Opened {
        shelf: true,
        checksum: root
            .get("checksum")
            .and_then(Value::as_str)
            .map(str::to_owned),
        ..Opened::default()
    };
    for entry in list(&mut root, "cases") {
        match kept_case(entry) {
            Some(case) => opened.cases.push(case),
            None => opened.lost += 1,
        }
    }
    for entry in list(&mut root, "photos") {
        match photo(&entry) {
            Some(photo) => opened.photos.push(photo),
            None => opened.lost += 1,
        }
    }
    Ok(opened)
}

fn list(root: &mut Map<String, Value>, name: &str) -> Vec<Value> {
    match root.remove(name) {
        Some(Value::Array(entries)) => entries,
        _ => Vec::new(),
    }
}

/// An entry of a shelf file; `None` when it holds no case.
fn kept_case(entry: Value) -> Option<OpenedCase> {
    let Value::Object(mut entry) = entry else {
        return None;
    };
    let id = key_of(
        entry
            .get("id")
            .and_then(Value::as_str)
            .map(str::to_owned)
            .unwrap_or_default(),
    );
    if let Some(text) = entry.get("unread").and_then(Value::as_str) {
        let problem = Draft::parse(text).err().map(|fault| fault.problem());
        return Some(OpenedCase {
            id,
            name: String::new(),
            text: text.to_owned(),
            problem,
            unused: Vec::new(),
        });
    }
    let case = entry.remove("case")?;
    let as_written = case.to_string();
    let read = match case {
        Value::Object(root) => Draft::from_root(root),
        _ => Err(OpenError::NotACase),
    };
    Some(match read {
        Ok(mut draft) => {
            draft.take_kept();
            OpenedCase::of_draft(id, &draft)
        }
        Err(fault) => OpenedCase {
            id,
            name: String::new(),
            text: as_written,
            problem: Some(fault.problem()),
            unused: Vec::new(),
        },
    })
}

fn photo(entry: &Value) -> Option<OpenedPhoto> {
    let text = |field: &str| entry.get(field)?.as_str().map(str::to_owned);
    let side = |field: &str| {
        entry
            .get(field)?
            .as_u64()
            .filter(|n| (1..=65_535).contains(n))
    };
    let (case, key, data) = (text("case")?, text("key")?, text("data")?);
    let picture = [
        "data:image/jpeg;base64,",
        "data:image/png;base64,",
        "data:image/webp;base64,",
    ];
    let plain = key_of(case.clone()) == case && !case.is_empty() && key.len() <= 2 * MAX_ID;
    (plain && picture.iter().any(|kind| data.starts_with(kind))).then_some(OpenedPhoto {
        case,
        key,
        on: text("on").unwrap_or_default().chars().take(10).collect(),
        width: side("width")?,
        height: side("height")?,
        data,
    })
}

/// A key that is one: short, of plain letters, digits and hyphens. Anything else counts as none.
fn key_of(id: String) -> String {
    let plain = id.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-');
    if plain && id.len() <= MAX_ID {
        id
    } else {
        String::new()
    }
}

/// What can be read of a text that is not whole, and how many entries were lost.
fn salvaged(text: &str, fault: &OpenError) -> Option<(Map<String, Value>, usize)> {
    let OpenError::NotJson { line, column, .. } = fault else {
        return None;
    };
    if text[..floor(text, 400)].contains(SHELF_FORMAT) {
        return Some(by_lines(text));
    }
    if text.len() > MAX_BYTES {
        return None;
    }
    let mut root = mended(text, offset(text, *line, *column))?;
    // Leavewell writes it last, so that it is the first to be torn off.
    root.entry("version").or_insert(CASE_VERSION.into());
    Some((root, 1))
}

/// A shelf read entry by entry, from one line that begins one to the next.
fn by_lines(text: &str) -> (Map<String, Value>, usize) {
    let starts: Vec<(usize, usize)> = text
        .match_indices("\n{\"")
        .filter_map(|(at, _)| {
            let kind = MARKS.iter().position(|mark| text[at..].starts_with(mark))?;
            Some((at + 1, kind))
        })
        .collect();
    let (mut lists, mut lost) = ([Vec::new(), Vec::new()], 0);
    for (n, (start, kind)) in starts.iter().enumerate() {
        let end = starts.get(n + 1).map_or(text.len(), |(next, _)| *next);
        let entry = &text[*start..end];
        let first = || {
            serde_json::Deserializer::from_str(entry)
                .into_iter::<Value>()
                .next()?
                .ok()
        };
        match first() {
            Some(value) => lists[*kind].push(value),
            None => lost += 1,
        }
    }
    let [cases, photos] = lists;
    let mut root = Map::new();
    root.insert("format".to_owned(), SHELF_FORMAT.into());
    root.insert("version".to_owned(), version_in(text).into());
    root.insert("cases".to_owned(), Value::Array(cases));
    root.insert("photos".to_owned(), Value::Array(photos));
    (root, lost)
}

/// The version a broken shelf file names near its beginning; 1 when it names none.
fn version_in(text: &str) -> u64 {
    let head = &text[..floor(text, 400)];
    let digits = head
        .split_once("\"version\"")
        .map(|(_, after)| after.trim_start_matches([':', ' ']))
        .unwrap_or_default();
    let end = digits
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(digits.len());
    digits[..end].parse().unwrap_or(1)
}

/// The largest place up to `at` where a character begins.
fn floor(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// The byte at a line and column, both counted from 1.
fn offset(text: &str, line: usize, column: usize) -> usize {
    let before: usize = text
        .split_inclusive('\n')
        .take(line.saturating_sub(1))
        .map(str::len)
        .sum();
    floor(text, before.saturating_add(column))
}

/// How many places before the fault are tried.
const TRIES: usize = 4;

/// The object a text holds up to a fault: cut after the last value that is whole, with every bracket
/// that is open closed.
fn mended(text: &str, fault: usize) -> Option<Map<String, Value>> {
    let mut cuts: Vec<usize> = Vec::new();
    scan(&text[..fault], |at, byte, _| match byte {
        b',' => cuts.push(at),
        b'}' | b']' => cuts.push(at + 1),
        _ => {}
    });
    cuts.iter().rev().take(TRIES).find_map(|&cut| {
        let mut closers = Vec::new();
        scan(&text[..cut], |_, _, open| closers.clone_from(open));
        let tail: String = closers.iter().rev().map(|&b| char::from(b)).collect();
        match serde_json::from_str(&[&text[..cut], tail.as_str()].concat()) {
            Ok(Value::Object(root)) => Some(root),
            _ => None,
        }
    })
}

/// Calls back at each bracket and comma outside strings with what is open after it, as the brackets
/// that would close it.
fn scan(text: &str, mut at_mark: impl FnMut(usize, u8, &Vec<u8>)) {
    let (mut open, mut in_string, mut escaped) = (Vec::new(), false, false);
    for (at, byte) in text.bytes().enumerate() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_string => escaped = true,
            b'"' => in_string = !in_string,
            _ if in_string => {}
            b'{' | b'[' => {
                open.push(if byte == b'{' { b'}' } else { b']' });
                at_mark(at, byte, &open);
            }
            b'}' | b']' => {
                open.pop();
                at_mark(at, byte, &open);
            }
            b',' => at_mark(at, byte, &open),
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const CASE: &str = r#"{"format":"leavewell-case","version":1,"piece":{"name":"Pot","height_mm":1.50},"later":7}"#;

    fn shelf_of(cases: &[&str], photos: &[&str]) -> String {
        format!(
            "{{\"format\":\"leavewell-shelf\",\"version\":1,\"checksum\":\"sha256:0\",\"cases\":[\n{}\n],\"photos\":[\n{}\n]}}",
            cases.join(",\n"),
            photos.join(",\n")
        )
    }

    fn kept(id: &str) -> String {
        format!("{{\"id\":\"{id}\",\"revision\":3,\"case\":{CASE}}}")
    }

    fn photo_of(case: &str) -> String {
        format!(
            "{{\"case\":\"{case}\",\"key\":\"foot/1\",\"on\":\"2020-01-02\",\"width\":4,\"height\":3,\"data\":\"data:image/jpeg;base64,AAAA\"}}"
        )
    }

    #[test]
    fn one_case_opens_with_its_key_and_its_numbers_as_written() {
        let text = CASE.replace("\"later\":7", "\"kept\":{\"id\":\"a-1\"}");
        let opened = open(&text).unwrap();
        assert!(!opened.shelf && opened.damage.is_none());
        assert_eq!(opened.cases[0].id, "a-1");
        assert_eq!(opened.cases[0].name, "Pot");
        assert!(opened.cases[0].text.contains("1.50"));
        assert!(!opened.cases[0].text.contains("kept"));
    }

    #[test]
    fn a_whole_shelf_opens() {
        let opened = open(&shelf_of(&[&kept("a"), &kept("b")], &[&photo_of("a")])).unwrap();
        assert!(opened.shelf);
        assert_eq!(opened.cases.len(), 2);
        assert_eq!(opened.photos.len(), 1);
        assert_eq!(opened.lost, 0);
        assert_eq!(opened.checksum.as_deref(), Some("sha256:0"));
        assert_eq!(opened.cases[1].text, Draft::parse(CASE).unwrap().to_json());
    }

    #[test]
    fn a_shelf_with_a_hole_keeps_both_sides_of_it() {
        let holed = kept("b").replace("Pot", "Po\"t");
        let opened = open(&shelf_of(
            &[&kept("a"), &holed, &kept("c")],
            &[&photo_of("a")],
        ))
        .unwrap();
        let ids: Vec<&str> = opened.cases.iter().map(|c| c.id.as_str()).collect();
        assert_eq!(ids, ["a", "c"]);
        assert_eq!((opened.lost, opened.photos.len()), (1, 1));
        assert!(opened.damage.is_some());
    }

    #[test]
    fn a_shelf_cut_short_keeps_what_is_whole() {
        let text = shelf_of(&[&kept("a"), &kept("b"), &kept("c")], &[]);
        let cut = text.rfind("\"later\"").unwrap();
        let opened = open(&text[..cut]).unwrap();
        assert_eq!((opened.cases.len(), opened.lost), (2, 1));
        assert!(opened.damage.unwrap().message.contains("breaks off"));
    }

    #[test]
    fn a_case_cut_short_keeps_what_is_whole() {
        let cut = CASE.find("\"later\"").unwrap();
        let opened = open(&CASE[..cut]).unwrap();
        assert_eq!(opened.cases[0].name, "Pot");
        assert!(opened.damage.unwrap().message.contains("breaks off"));
        let refused = open(r#"{"format":"leavewell-case","version":1,"pie"#).unwrap_err();
        assert!(
            refused.message.contains("breaks off"),
            "nothing is left of it"
        );
    }

    #[test]
    fn a_saved_case_that_is_torn_is_never_said_to_lack_its_version() {
        let saved = Draft::parse(CASE).unwrap().to_json();
        assert!(saved.find("\"version\"") > saved.find("\"piece\""));
        let cut = saved.find("\"version\"").unwrap();
        let opened = open(&saved[..cut]).unwrap();
        assert_eq!(opened.cases[0].name, "Pot");
        assert!(opened.damage.unwrap().message.contains("breaks off"));
        let wide = CASE.replace("height_mm", "width_mm");
        let saved = Draft::parse(&wide).unwrap().to_json();
        let opened = open(&saved.replace("1.50", "NaN")).unwrap();
        assert_eq!(opened.cases[0].name, "Pot");
        assert!(opened.damage.unwrap().message.contains("not readable"));
        for text in [
            &saved[..4],
            "{\"aim\":NaN,\"format\":\"leavewell-case\",\"version\":1}",
        ] {
            let refused = open(text).unwrap_err();
            assert!(!refused.remedy.contains("version"), "{text}: {refused:?}");
        }
    }

    #[test]
    fn newer_files_are_refused_and_say_so() {
        let newer = shelf_of(&[&kept("a")], &[]).replacen("\"version\":1", "\"version\":2", 1);
        assert!(open(&newer).unwrap_err().message.contains("version 2"));
        let torn = &newer[..newer.len() - 4];
        assert!(open(torn).unwrap_err().message.contains("version 2"));
        let inside = shelf_of(
            &[&kept("a").replace("-case\",\"version\":1", "-case\",\"version\":9")],
            &[],
        );
        let opened = open(&inside).unwrap();
        let problem = opened.cases[0].problem.as_ref().unwrap();
        assert!(problem.message.contains("version 9"));
        assert!(opened.cases[0].text.contains("Pot"), "it is kept as it is");
    }

    #[test]
    fn keys_and_pictures_that_are_none_are_let_go() {
        let opened = open(&shelf_of(
            &[&kept("<b>")],
            &[
                &photo_of("a").replace("data:image/jpeg", "data:text/html"),
                &photo_of("../x"),
                &photo_of("a").replace("\"width\":4", "\"width\":1e99"),
            ],
        ))
        .unwrap();
        assert_eq!(opened.cases[0].id, "");
        assert_eq!((opened.photos.len(), opened.lost), (0, 3));
    }

    #[test]
    fn limits_hold_on_both_sides() {
        let deep = |n: usize| {
            format!(
                "{{\"format\":\"x\",\"a\":{}{}}}",
                "[".repeat(n),
                "]".repeat(n)
            )
        };
        let said = |text: &str| open(text).unwrap_err().message;
        assert!(said(&deep(MAX_DEPTH + 3)).contains("nested"));
        assert!(said(&deep(MAX_DEPTH + 2)).contains("format"));
        let long = format!(
            "{{\"format\":\"leavewell-case\",\"version\":1,\"a\":\"{}\"}}",
            "x".repeat(MAX_BYTES)
        );
        assert!(said(&long).contains("MB"));
    }

    #[test]
    fn a_word_nobody_knows_is_said_before_the_piece_is_taken_in() {
        let text = CASE.replace("\"Pot\"", "\"Pot\",\"form\":\"teepot\"");
        let opened = open(&text).unwrap();
        let [note] = &opened.cases[0].unused[..] else {
            panic!("{:?}", opened.cases[0].unused);
        };
        assert!(note.starts_with("What it is: \"teepot\""), "{note}");
        assert!(opened.cases[0].text.contains("teepot"));
        assert_eq!(open(CASE).unwrap().cases[0].unused, Vec::<String>::new());
    }
}
