//! Condition by part, from the file to the answer: point counts, thickness readings, and a let-in shield.
//! Values that cannot be used are explained and kept.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use leavewell_model::counsel::weigh_at_once;
use leavewell_model::ledger::FindingId;
use leavewell_model::record::{Bleed, Draft};
use leavewell_model::report::PartReport;
use leavewell_model::report::Report;
use leavewell_model::terms::{Method, PartName};
use leavewell_model::weigh_json;
use leavewell_pages::{Block, PageName, Picture, Subject};

const TRAY: &str = include_str!("cases/worn_tray.json");

fn tray() -> Draft {
    Draft::parse(TRAY).unwrap()
}

fn with(fields: &[(&str, &str)]) -> Draft {
    let mut draft = tray();
    for (path, typed) in fields {
        draft.set(path, typed);
    }
    draft
}

fn weighed(draft: &Draft) -> Report {
    let (case, problems) = draft.read();
    weigh_at_once(&case, problems)
}

fn part(draft: &Draft, name: PartName) -> PartReport {
    let report = weighed(draft);
    report
        .silver
        .parts
        .into_iter()
        .find(|p| p.part == name)
        .unwrap()
}

#[test]
fn notes_in_the_record_do_not_change_the_answer() {
    let plain = weigh_json(TRAY);
    let draft = with(&[
        ("parts[part=body].note", "Thin by the handle."),
        ("parts[part=body].photos", "a b c"),
        ("parts[part=body].xrf_um", ""),
        ("parts[part=body].xrf_error_um", "2"),
        ("parts[part=body].count_points", "100"),
        ("looked.on", "2026-05-31"),
        ("care.a.how", "paste"),
    ]);
    assert_eq!(weigh_json(&draft.to_json()), plain);
}

#[test]
fn a_point_count_replaces_the_estimate() {
    let draft = with(&[
        ("parts[part=body].count_points", "100"),
        ("parts[part=body].count_bare", "6 4 9 5 6 8 3 7"),
    ]);
    let (case, problems) = draft.read();
    assert_eq!(problems, []);
    let Some(Bleed::Counted { low, likely, high }) = case.part(PartName::Body).unwrap().bleed
    else {
        panic!("a count is a counted bleed")
    };
    assert!((likely - 0.06).abs() < 1e-12 && low < likely && likely < high);
    // The estimate was 20 %.
    let (judged, counted) = (part(&tray(), PartName::Body), part(&draft, PartName::Body));
    assert!((counted.bleed - 0.06).abs() < 0.005 && judged.bleed > 0.15);
    assert!(counted.left_fraction > judged.left_fraction);
}

#[test]
fn a_reading_changes_the_silver_left_and_not_the_bare_share() {
    let before = part(&tray(), PartName::Body);
    let band = before.left_um.unwrap();
    for (um, higher) in [("25", true), ("3", false)] {
        let after = part(&with(&[("parts[part=body].xrf_um", um)]), PartName::Body);
        let now = after.left_um.unwrap();
        assert_eq!(now.p50 > band.p50, higher, "{um}: {now:?} after {band:?}");
        // The range is narrower, and the bare share is unchanged.
        assert!(now.p90 - now.p10 < band.p90 - band.p10);
        assert!((after.bleed - before.bleed).abs() < 1e-12);
    }
    // Nine consistent readings almost settle it: 12 um where there is silver, on four fifths of the area.
    let nine = part(
        &with(&[("parts[part=body].xrf_um", "12 12 12; 12 12 12; 12 12 12")]),
        PartName::Body,
    );
    let now = nine.left_um.unwrap().p50;
    assert!((now - 12.0 * (1.0 - nine.bleed)).abs() < 1.0, "{now}");
}

#[test]
fn readings_are_read_with_their_method_and_error() {
    let draft = with(&[
        ("parts[part=body].xrf_um", "14,5 15"),
        ("parts[part=body].xrf_error_um", "1.5"),
        ("parts[part=body].section_um", "13"),
    ]);
    let (case, problems) = draft.read();
    assert_eq!(problems, []);
    let readings: Vec<_> = case
        .part(PartName::Body)
        .unwrap()
        .readings
        .iter()
        .map(|r| (r.method, r.um, r.error_um))
        .collect();
    assert_eq!(
        readings,
        [
            (Method::Xrf, 14.5, Some(1.5)),
            (Method::Xrf, 15.0, Some(1.5)),
            (Method::Section, 13.0, None)
        ]
    );
}

#[test]
fn a_let_in_shield_has_no_number_until_it_is_measured() {
    let shield = part(&tray(), PartName::Shield);
    assert!(shield.words.contains("its thickness is unknown"));
    assert!(shield.left_um.is_none() && shield.left_fraction.is_none());
    assert!(shield.cleanings_to_double.is_none());
    let measured = part(
        &with(&[("parts[part=shield].coulometric_um", "150")]),
        PartName::Shield,
    );
    assert!(measured.left_um.unwrap().p50 > 30.0);
    // Without that finding, the shield is plated like the rest.
    let mut plain = tray();
    plain.set_answer(FindingId::C13, "", "");
    assert!(part(&plain, PartName::Shield).left_um.is_some());
}

/// A field, the typed text, and words of the message.
const WRONG: [(&str, &str, &str); 14] = [
    ("bleed", "101 %", "not possible"),
    ("bleed", "-1 %", "not possible"),
    ("bleed", "1.2", "out of range"),
    ("xrf_um", "-0.1", "cannot be used"),
    ("xrf_um", "12 thick", "cannot be used"),
    ("coulometric_um", "1e9", "cannot be used"),
    ("section_error_um", "-2", "out of range"),
    ("count_bare", "101", "does not fit"),
    ("count_bare", "2.5", "does not fit"),
    ("count_bare", "-1", "cannot be used"),
    ("count_bare", "many", "cannot be used"),
    ("count_points", "0", "out of range"),
    ("count_points", "-25", "out of range"),
    ("count_points", "10.5", "does not fit"),
];

#[test]
fn unusable_values_are_explained_and_kept() {
    for (field, typed, words) in WRONG {
        let mut draft = tray();
        draft.set("parts[part=body].count_points", "100");
        draft.set("parts[part=body].count_bare", "5");
        draft.set(&format!("parts[part=body].{field}"), typed);
        let (_, problems) = draft.read();
        assert!(
            problems.iter().any(|p| {
                p.field.starts_with("parts[0].")
                    && p.message.contains(words)
                    && !p.remedy.is_empty()
            }),
            "{field} {typed}: {problems:?}"
        );
        let again = Draft::parse(&draft.to_json()).unwrap();
        assert_eq!(again.part_text("body", field), typed);
        // The rest is still weighed, and every page is still made.
        assert!(!weighed(&draft).courses.is_empty());
        for name in ON_CONDITION {
            assert!(!page(name, &draft).is_empty());
        }
    }
    // The limits of each range are valid.
    for (field, typed) in [
        ("bleed", "0 %"),
        ("bleed", "100 %"),
        ("xrf_um", "0"),
        ("count_bare", "0"),
        ("count_bare", "100"),
        ("count_points", "1"),
    ] {
        let mut draft = tray();
        draft.set("parts[part=body].count_points", "100");
        draft.set(&format!("parts[part=body].{field}"), typed);
        assert_eq!(draft.read().1, [], "{field} {typed}");
    }
}

/// The pages of the Look and Condition screens.
const ON_CONDITION: [PageName; 5] = [
    PageName::Bleed,
    PageName::Care,
    PageName::Measures,
    PageName::Record,
    PageName::Why,
];

fn page(name: PageName, draft: &Draft) -> Vec<Block> {
    name.blocks(&Subject::new(draft.clone()))
}

/// Every block of a page, including nested ones.
fn all(blocks: &[Block]) -> Vec<&Block> {
    blocks
        .iter()
        .flat_map(|b| {
            let inside = match b {
                Block::Section { blocks, .. }
                | Block::Fold { blocks, .. }
                | Block::Row { blocks } => all(blocks),
                _ => Vec::new(),
            };
            [vec![b], inside].concat()
        })
        .collect()
}

#[test]
fn pages_are_well_made() {
    let empty = Draft::default();
    let full = with(&[
        ("parts[part=body].count_points", "50"),
        ("parts[part=body].count_bare", "5 6"),
        ("parts[part=body].xrf_um", "12"),
    ]);
    for (name, start) in [
        (PageName::Bleed, "bleed"),
        (PageName::Care, "care"),
        (PageName::Record, "record"),
    ] {
        for draft in [&empty, &full] {
            let blocks = page(name, draft);
            let mut ids = Vec::new();
            for block in all(&blocks) {
                match block {
                    Block::Section { id, .. } | Block::Fold { id, .. } => {
                        assert!(id.starts_with(start), "{id}");
                        ids.push(id.clone());
                    }
                    Block::Picture(picture) => {
                        ids.push(picture.id.clone());
                        well_drawn(picture);
                    }
                    Block::Table(table) => {
                        assert!(table.rows.iter().all(|r| r.len() == table.columns.len()));
                    }
                    Block::Field(field) => ids.push(field.path.clone()),
                    Block::Choice(choice) => {
                        ids.push(choice.path.clone());
                        assert!(choice.options.iter().any(|(id, _)| *id == choice.chosen));
                    }
                    _ => {}
                }
            }
            let count = ids.len();
            ids.sort_unstable();
            ids.dedup();
            assert_eq!(ids.len(), count, "{start} repeats an id");
        }
    }
}

fn well_drawn(picture: &Picture) {
    assert!((picture.width - 320.0).abs() < 1e-9 && picture.height > 0.0);
    assert!(!picture.title.is_empty() && !picture.description.is_empty());
    assert!(!picture.table.rows.is_empty());
    let drawn = serde_json::to_string(&picture.marks).unwrap();
    assert!(!drawn.contains("NaN") && !drawn.contains("inf"), "{drawn}");
    for mark in &picture.marks {
        if let leavewell_pages::Mark::Text { x, y, .. } = mark {
            assert!((0.0..=320.0).contains(x) && (0.0..=picture.height).contains(y));
        }
    }
}

#[test]
fn the_same_case_gives_the_same_pages() {
    for name in ON_CONDITION {
        assert_eq!(page(name, &tray()), page(name, &tray()));
    }
}
