//! What moves the value is disclosed, and what is disclosed as damage moves the value.

#![allow(clippy::unwrap_used)]

use leavewell_model::Draft;
use leavewell_pages::Subject;
use leavewell_pages::sheet_text::{Form, Recipient, sheet_text};

/// Every fault of a part that a person can record, with the part it is usual on.
const OF_PARTS: [(&str, &str, &str); 32] = [
    ("body", "bleed", "some"),
    ("body", "bleed", "much"),
    ("body", "bleed", "most"),
    ("body", "dents", "minor"),
    ("body", "dents", "moderate"),
    ("body", "dents", "split"),
    ("body", "split", "through"),
    ("body", "joint", "open"),
    ("body", "joint", "leaking"),
    ("body", "joint", "grey_repair"),
    ("body", "joint", "neat_repair"),
    ("handle", "joint", "open"),
    ("spout", "joint", "open"),
    ("finial", "loss", "small"),
    ("finial", "loss", "large"),
    ("body", "lacquer", "broken"),
    ("body", "lacquer", "yellowed"),
    ("body", "corrosion", "green"),
    ("body", "corrosion", "rust"),
    ("body", "engraving", "softened"),
    ("body", "engraving", "faint"),
    ("body", "engraving", "gone"),
    ("handle", "replaced", "doubtful"),
    ("handle", "replaced", "replaced"),
    ("border", "mount", "grey_wear"),
    ("border", "mount", "fill_showing"),
    ("body", "corrosion", "white_powder"),
    ("body", "split", "crease"),
    ("interior", "interior", "bare"),
    ("interior", "gilding", "worn"),
    ("interior", "gilding", "gone"),
    ("base", "fill_state", "failing"),
];

/// Every flaw of the whole piece.
const FLAWS: [&str; 10] = [
    "monogram_later",
    "inscription_later",
    "arms_erased",
    "detail_softened",
    "part_missing_minor",
    "part_missing_major",
    "part_replaced",
    "marriage",
    "single_of_pair",
    "converted",
];

/// What is disclosed and moves no value, and why.
const MOVES_NOTHING: [(&str, &str); 5] = [
    (
        "body corrosion green",
        "a hazard; on fused plate no source gives what it takes off the price",
    ),
    ("body corrosion white_powder", "the same"),
    (
        "body corrosion rust",
        "rust counts on close plate, which this piece is not",
    ),
    ("handle replaced doubtful", "a doubt, not a fault"),
    (
        "border mount grey_wear",
        "wear of a mount is valued by the bare metal recorded on it",
    ),
];

fn piece() -> Draft {
    Draft::parse(
        r#"{"format":"leavewell-case","version":2,
        "piece":{"name":"Pot","form":"teapot"},
        "findings":[{"id":"C01","answer":"seen"},{"id":"C06","answer":"seen"},{"id":"C08","answer":"seen"}],
        "parts":[{"part":"body","bleed":"none","tarnish":"bright","joint":"sound"}],
        "aim":{"goal":"sell"},
        "market":{"low":300,"likely":400,"high":500,"currency":"GBP"}}"#,
    )
    .unwrap()
}

/// What it fetches as it is, and what the buyer's sheet says.
fn said(draft: Draft) -> (f64, String) {
    let subject = Subject::new(draft);
    assert_eq!(subject.problems(), [], "the words are those of the record");
    let value = subject.report().value.as_it_is.p50;
    (
        value,
        sheet_text(&subject, Recipient::Buyer, Form::Markdown),
    )
}

/// The lines of one sheet that the other has not.
fn added(with: &str, without: &str) -> Vec<String> {
    let known: Vec<&str> = without.lines().collect();
    let new = with.lines().filter(|line| !known.contains(line));
    new.map(str::to_owned).collect()
}

#[test]
fn a_fault_that_moves_the_value_is_disclosed_and_the_reverse() {
    let (sound, plain) = said(piece());
    let mut wrong = Vec::new();
    let mut check = |what: String, draft: Draft| {
        let (value, sheet) = said(draft);
        let moved = (value / sound - 1.0).abs() > 0.004;
        let lines = added(&sheet, &plain);
        // Naming a part as looked at is no disclosure of a fault.
        let told = lines
            .iter()
            .any(|line| line.starts_with("- ") || line.contains(": "));
        if moved && !told {
            wrong.push(format!(
                "{what}: moves the value by {:.1} % and is not disclosed",
                100.0 * (value / sound - 1.0)
            ));
        }
        if told && !moved && !MOVES_NOTHING.iter().any(|(name, _)| *name == what) {
            wrong.push(format!("{what}: disclosed, and moves nothing: {lines:?}"));
        }
    };
    for (part, field, word) in OF_PARTS {
        let mut draft = piece();
        draft.set_part(part, field, word);
        check(format!("{part} {field} {word}"), draft);
    }
    for flaw in FLAWS {
        let mut draft = piece();
        draft.set_flag(&format!("flaws.{flaw}"), Some(true));
        check(format!("flaw {flaw}"), draft);
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Each fault that can be shown at a place, the part it is usual on, and what to tick instead; nothing where
/// no choice says it.
const PLACED: [(&str, &str, &str, &str); 21] = [
    ("small_dent", "body", "dents", "minor"),
    ("deep_dent", "body", "dents", "moderate"),
    ("scratch", "body", "", ""),
    ("bare", "body", "bleed", "slight"),
    ("crease", "body", "split", "crease"),
    ("split", "body", "split", "through"),
    ("small_loss", "finial", "loss", "small"),
    ("large_loss", "finial", "loss", "large"),
    ("open_joint", "handle", "joint", "open"),
    ("leak", "spout", "joint", "leaking"),
    ("grey_repair", "spout", "joint", "grey_repair"),
    ("neat_repair", "spout", "joint", "neat_repair"),
    ("worn_mount", "border", "mount", "grey_wear"),
    ("fill_showing", "border", "mount", "fill_showing"),
    ("loose_filling", "base", "fill_state", "failing"),
    ("green", "foot", "corrosion", "green"),
    ("white_powder", "foot", "corrosion", "white_powder"),
    ("rust", "foot", "corrosion", "rust"),
    ("broken_lacquer", "foot", "lacquer", "broken"),
    ("worn_gilding", "interior", "gilding", "worn"),
    ("other", "body", "", ""),
];

#[test]
fn a_fault_shown_at_a_place_is_valued_and_disclosed_as_if_it_were_ticked() {
    let (sound, plain) = said(piece());
    for (fault, part, field, word) in PLACED {
        let mut placed = piece();
        let entry = format!("parts[part={part}].spots[id=e1]");
        placed.set(&entry, &format!("fault={fault}\nx=40\ny=55\ncount=3"));
        let (value, sheet) = said(placed);
        if field.is_empty() {
            assert!((value - sound).abs() < 1e-9, "{fault} moves the value");
            assert!(
                !added(&sheet, &plain).is_empty(),
                "{fault} is not disclosed"
            );
            continue;
        }
        let mut ticked = piece();
        ticked.set_part(part, field, word);
        let (as_ticked, with_it) = said(ticked);
        assert!(
            (value - as_ticked).abs() < 1e-9,
            "{fault}: {value}, ticked {as_ticked}"
        );
        assert_eq!(added(&sheet, &plain), added(&with_it, &plain), "{fault}");
    }
}
