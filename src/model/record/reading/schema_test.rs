//! The reader and the schema name the same fields.

use std::cell::RefCell;
use std::collections::BTreeSet;

use crate::record::Draft;
use crate::record::schema::{FIELDS, Field, FieldKind, field, pattern};

thread_local! {
    static ASKED: RefCell<BTreeSet<String>> = const { RefCell::new(BTreeSet::new()) };
}

/// Notes that the reader asked for a path.
pub(super) fn note(path: &str) {
    ASKED.with_borrow_mut(|asked| asked.insert(pattern(path)));
}

/// Words without which an entry or a section is not read any further.
const NEEDED: [(&str, &str); 13] = [
    ("findings[].id", "C01"),
    ("findings[].answer", "seen"),
    ("parts[].part", "foot"),
    ("parts[].spots[].fault", "split"),
    ("quotes[].treatment", "T08"),
    ("quotes[].treatments", "T08 T12"),
    ("tests[].kind", "release"),
    ("proposal.steps[].treatment", "T08"),
    ("done[].what", "T08"),
    ("predicted[].event", "agreed"),
    ("aim.asked", "T08"),
    ("measures.xrf.spot", "worn"),
    ("looked.instruments", "scales"),
];

/// The path of a field in the first entry of its list.
fn path_of_first(path: &str) -> String {
    path.replace("[]", "[0]").replace('*', "{fee.lot}")
}

/// A draft with every field filled, but for those left out.
fn filled_without(left_out: &str) -> Draft {
    let mut draft = Draft::default();
    for field in FIELDS.iter().filter(|field| field.path != left_out) {
        let needed = NEEDED.iter().find(|(path, _)| *path == field.path);
        let typed = match field.kind {
            _ if needed.is_some() => needed.map_or("", |(_, word)| word),
            FieldKind::Number(range) => range.example,
            FieldKind::Flag => "no",
            FieldKind::Day => "2026-05-31",
            FieldKind::Word | FieldKind::Text | FieldKind::Several => "1",
        };
        draft.set(&path_of_first(field.path), typed);
    }
    draft
}

/// The paths the reader asks for when every field is filled, but for those left out.
fn asked_without(left_out: &str) -> BTreeSet<String> {
    let draft = filled_without(left_out);
    ASKED.take();
    let _ = draft.read();
    ASKED.take()
}

fn asked() -> BTreeSet<String> {
    let mut asked = asked_without("");
    // Several treatments are asked for only where there is not one.
    asked.extend(asked_without("quotes[].treatment"));
    asked
}

#[test]
fn every_path_the_reader_asks_for_is_in_the_schema() {
    // A section is asked for before the fields in it.
    let is_section = |path: &str| {
        let inside = [path, "."].concat();
        FIELDS.iter().any(|field| field.path.starts_with(&inside))
    };
    let mut unknown: Vec<String> = asked().into_iter().collect();
    unknown.retain(|path| field(path).is_none() && !is_section(path));
    assert_eq!(unknown, Vec::<String>::new());
}

/// Text that pages and sheets show as typed, and that no rule needs.
const SHOWN_AS_TYPED: [&str; 5] = [
    "piece.height_typed",
    "piece.length_typed",
    "piece.width_typed",
    "piece.weight_typed",
    "parts[].note",
];

#[test]
fn every_field_of_the_schema_is_read_but_for_text_shown_as_typed() {
    let asked = asked();
    let unread: Vec<&str> = FIELDS
        .iter()
        .map(|field| field.path)
        .filter(|path| !asked.contains(*path))
        .collect();
    assert_eq!(unread, SHOWN_AS_TYPED);
    for path in SHOWN_AS_TYPED {
        let kind = field(path).map(|field| field.kind);
        assert!(matches!(kind, Some(FieldKind::Text)), "{path}");
    }
}

/// Fields that take any words: names of works and of photographs.
fn takes_any_words(field: &Field) -> bool {
    matches!(field.kind, FieldKind::Text)
        || ["done[].what", "done[].materials"].contains(&field.path)
        || field.path.ends_with("photos")
}

#[test]
fn a_value_that_cannot_be_read_is_a_problem_that_says_what_to_do() {
    let mut silent = Vec::new();
    for bad in FIELDS.iter().filter(|field| !takes_any_words(field)) {
        let left_out = match bad.path {
            "quotes[].treatments" => "quotes[].treatment",
            _ => "",
        };
        let mut draft = filled_without(left_out);
        let path = path_of_first(bad.path);
        draft.set(&path, "?unreadable?");
        let (_, problems) = draft.read();
        let start = path.replace(['{', '}'], "");
        match problems.iter().find(|p| p.field.starts_with(&start)) {
            Some(found) => {
                let ends = [&found.message, &found.remedy].map(|text| text.ends_with(['.', '?']));
                assert_eq!(ends, [true, true], "{found:?}");
            }
            None => silent.push(bad.path),
        }
        assert_eq!(draft.text(&path), "?unreadable?");
    }
    assert_eq!(silent, Vec::<&str>::new());
}
