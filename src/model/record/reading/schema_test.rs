//! The reader and the schema name the same fields.

use std::cell::RefCell;
use std::collections::BTreeSet;

use crate::record::Draft;
use crate::record::schema::{FIELDS, FieldKind, field, pattern};

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

/// The paths the reader asks for when every field is filled, but for those left out.
fn asked_without(left_out: &str) -> BTreeSet<String> {
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
        let path = field.path.replace("[]", "[0]").replace('*', "{fee.lot}");
        draft.set(&path, typed);
    }
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

/// Fields outside the sections of single pages that no rule needs: pages and sheets show them as typed.
const SHOWN_AS_TYPED: [&str; 9] = [
    "piece.height_typed",
    "piece.length_typed",
    "piece.width_typed",
    "piece.weight_typed",
    "parts[].note",
    "aim.even_bet",
    "quotes[].deposit",
    "quotes[].by",
    "looked.on",
];
/// Fields of version 2 that are kept and compared, and that no screen asks for yet.
const KEPT: [&str; 2] = ["comparables[].of", "tests[].note"];
/// Sections in which a page keeps its own fields.
const OF_PAGES: [&str; 3] = ["bench.", "care.", "worth."];

#[test]
fn every_field_of_the_schema_is_read_into_the_case_or_kept_for_a_page() {
    let asked = asked();
    let unread: Vec<&str> = FIELDS
        .iter()
        .map(|field| field.path)
        .filter(|path| !asked.contains(*path))
        .filter(|path| !OF_PAGES.iter().any(|section| path.starts_with(section)))
        .collect();
    let mut known = [&SHOWN_AS_TYPED[..], &KEPT[..]].concat();
    known.sort_by_key(|known| FIELDS.iter().position(|field| field.path == *known));
    assert_eq!(unread, known);
}
