//! The condition record: who looked, when and how; what the piece is; each part; and what has changed since
//! an earlier record. The content follows EN 16095 for condition reports: identification, description,
//! condition by part, date and examiner.

use super::Subject;
use super::ask::choice;
use super::block::{Block, Table, Tone};
use super::happened::problem_at;
use super::part_words::{named, parts, text_field};
use super::record_fields::{FIELDS, PartFieldKind, Record};
use super::wording::record as words;
use leavewell_model::record::{Case, Draft, Problem};
use leavewell_model::terms::PartName;

/// Builds the page.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let (draft, case) = (subject.draft(), subject.case());
    let now = Record::new(draft);
    vec![
        Block::section(
            "record.looked",
            words::LOOKED,
            looked(draft, subject.problems()),
        ),
        Block::section("record.piece", words::PIECE, piece(draft, case)),
        Block::section("record.parts", words::PARTS, by_part(&now, case)),
        Block::section("record.more", words::MORE, more(&now, case)),
        Block::section("record.earlier", words::EARLIER, earlier(draft, &now)),
    ]
}

fn looked(draft: &Draft, problems: &[Problem]) -> Vec<Block> {
    let not_a_day = |path: &str| problem_at(problems, path);
    let ask = |path: &str, words: [&str; 2]| {
        text_field(draft, path, [words[0], "", words[1]], String::new())
    };
    vec![
        Block::Row {
            blocks: vec![
                text_field(
                    draft,
                    "looked.on",
                    [words::DATE, "", words::DATE_HINT],
                    not_a_day("looked.on"),
                ),
                ask("looked.by", [words::WHO, ""]),
            ],
        },
        Block::Row {
            blocks: vec![
                ask("looked.light", [words::LIGHT, words::LIGHT_HINT]),
                ask("looked.aids", [words::AIDS, words::AIDS_HINT]),
            ],
        },
        Block::Row {
            blocks: vec![
                ask("looked.why", [words::WHY, words::WHY_HINT]),
                ask("looked.where", [words::KEPT_AT, ""]),
            ],
        },
        Block::Row {
            blocks: vec![
                ask("looked.for", [words::FOR_WHOM, words::FOR_WHOM_HINT]),
                text_field(
                    draft,
                    "looked.next",
                    [words::NEXT, "", words::DATE_HINT],
                    not_a_day("looked.next"),
                ),
            ],
        },
        ask("looked.watch", [words::WATCH, words::WATCH_HINT]),
    ]
}

fn piece(draft: &Draft, case: &Case) -> Vec<Block> {
    let said = |text: String| {
        if text.trim().is_empty() {
            words::NOT_RECORDED.to_owned()
        } else {
            text
        }
    };
    let years = match (case.piece.from_year, case.piece.to_year) {
        (None, None) => String::new(),
        (Some(from), None) => words::not_before(from),
        (None, Some(to)) => words::not_after(to),
        (Some(from), Some(to)) => words::between(from, to),
    };
    let height = case.piece.height_mm.map_or_else(String::new, words::mm);
    let seen = leavewell_model::ledger::findings()
        .iter()
        .filter(|f| case.has_seen(f.id))
        .map(|f| f.title)
        .collect::<Vec<_>>();
    let mut blocks = vec![
        Block::Facts {
            rows: vec![
                (words::CALLED.to_owned(), said(case.piece.name.clone())),
                (
                    words::KIND.to_owned(),
                    said(case.piece.form.map_or("", |f| f.label()).to_owned()),
                ),
                (words::MADE.to_owned(), said(years)),
                (words::HEIGHT.to_owned(), said(height)),
            ],
        },
        Block::Row {
            blocks: vec![
                text_field(
                    draft,
                    "looked.number",
                    [words::NUMBER, "", ""],
                    String::new(),
                ),
                text_field(
                    draft,
                    "looked.described",
                    [words::DESCRIPTION, "", words::DESCRIPTION_HINT],
                    String::new(),
                ),
            ],
        },
    ];
    if !seen.is_empty() {
        blocks.push(Block::fold(
            "record.seen",
            words::SEEN,
            vec![Block::List {
                items: seen.into_iter().map(str::to_owned).collect(),
            }],
        ));
    }
    blocks
}

/// Every part with something on record.
fn by_part(now: &Record, case: &Case) -> Vec<Block> {
    let mut blocks = Vec::new();
    let mut unseen = Vec::new();
    for part in parts(case) {
        let rows = now.rows(part);
        if rows.is_empty() {
            unseen.push(named(part));
            continue;
        }
        blocks.push(Block::section(
            &format!("record.part.{}", part.id()),
            part.label(),
            vec![Block::Facts { rows }],
        ));
        blocks.extend(
            now.faults(part)
                .into_iter()
                .map(|fault| Block::said(Tone::Note, fault)),
        );
    }
    if blocks.is_empty() {
        blocks.push(Block::para(words::NO_PART));
    } else if !unseen.is_empty() {
        blocks.push(Block::said(
            Tone::Quiet,
            words::not_looked_at(&unseen.join(", ")),
        ));
    }
    blocks
}

/// The fields that Condition does not ask and that only go into the record.
fn more(now: &Record, case: &Case) -> Vec<Block> {
    let all = parts(case);
    let options: Vec<(&str, &str)> = all.iter().map(|p| (p.id(), p.label())).collect();
    let (which, id) = choice(now.draft, "record.part", words::PART, "", &options);
    let part = PartName::parse(id).unwrap_or(PartName::Body);
    let mut blocks = vec![which];
    let mut row = Vec::new();
    for field in FIELDS.iter().filter(|f| f.only_here) {
        let path = format!("parts[part={}].{}", part.id(), field.id);
        match field.kind {
            PartFieldKind::Words(words) => {
                let mut options = vec![("", words::NOT_LOOKED)];
                options.extend(words());
                row.push(choice(now.draft, &path, field.label(), field.hint, &options).0);
            }
            _ => row.push(text_field(
                now.draft,
                &path,
                [field.label(), "", field.hint],
                now.fault(part, field).unwrap_or_default(),
            )),
        }
        if row.len() == 2 {
            blocks.push(Block::Row {
                blocks: std::mem::take(&mut row),
            });
        }
    }
    if !row.is_empty() {
        blocks.push(Block::Row { blocks: row });
    }
    blocks
}

/// One difference between two records.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The part.
    pub part: PartName,
    /// The field, in words.
    pub what: &'static str,
    /// The earlier value; empty if it was not recorded.
    pub was: String,
    /// The present value; empty if it is not recorded.
    pub is: String,
}

/// Lists the differences between two records of one piece, in the order of the parts.
#[must_use]
pub fn changes(earlier: &Draft, now: &Draft) -> Vec<Change> {
    between(&Record::new(earlier), &Record::new(now))
}

fn between(earlier: &Record, now: &Record) -> Vec<Change> {
    let mut found = Vec::new();
    for part in PartName::ALL {
        for field in &FIELDS {
            let [was, is] = [earlier, now].map(|r| r.said(*part, field).unwrap_or_default());
            if was != is {
                found.push(Change {
                    part: *part,
                    what: field.label(),
                    was,
                    is,
                });
            }
        }
    }
    found
}

fn earlier(draft: &Draft, now: &Record) -> Vec<Block> {
    let records = draft.earlier();
    if records.is_empty() {
        return vec![Block::para(words::NO_EARLIER)];
    }
    let mut blocks = Vec::new();
    for record in records.iter().rev() {
        let old = Record::new(record);
        let said = |path: &str| {
            let text = record.text(path);
            (!text.trim().is_empty()).then_some(text)
        };
        let on = said("looked.on").unwrap_or_else(|| words::NO_DAY.to_owned());
        let by = said("looked.by").map_or_else(String::new, |by| words::by(&by));
        blocks.push(Block::para(words::compared(&on, &by)));
        if let Some(note) = said("note") {
            blocks.push(Block::said(Tone::Quiet, note));
        }
        let differ = between(&old, now);
        if differ.is_empty() {
            blocks.push(Block::para(words::NOTHING_DIFFERS));
            continue;
        }
        let cell = |text: &str| {
            if text.is_empty() {
                words::NOT_RECORDED.to_owned()
            } else {
                text.to_owned()
            }
        };
        blocks.push(Block::Table(Table {
            caption: words::differs(&on),
            columns: words::DIFFERENCE_COLUMNS.map(str::to_owned).to_vec(),
            rows: differ
                .iter()
                .map(|c| {
                    vec![
                        c.part.label().to_owned(),
                        c.what.to_owned(),
                        cell(&c.was),
                        cell(&c.is),
                    ]
                })
                .collect(),
        }));
    }
    blocks
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(draft: &Draft) -> Vec<Block> {
        super::page(&Subject::new(draft.clone()))
    }

    fn text(draft: &Draft) -> String {
        serde_json::to_string(&page(draft)).unwrap()
    }

    #[test]
    fn an_empty_record_points_to_the_first_step() {
        let shown = text(&Draft::default());
        assert!(shown.contains("No part is recorded yet") && shown.contains("No earlier record"));
    }

    #[test]
    fn all_that_is_recorded_is_shown_in_words() {
        let mut draft = Draft::default();
        for (path, typed) in [
            ("piece.name", "Pot"),
            ("looked.on", "2026-05-31"),
            ("looked.by", "A. N."),
            ("looked.light", "window"),
            ("looked.aids", "loupe"),
            ("parts[part=foot].bleed", "12 %"),
            ("parts[part=foot].tarnish", "brown"),
            ("parts[part=foot].engraving", "faint"),
            ("parts[part=foot].mount", "fill_showing"),
            ("parts[part=foot].note", "Thin at the ridge."),
            ("parts[part=foot].photos", "p1 p2"),
            ("parts[part=foot].xrf_um", "14 15"),
        ] {
            draft.set(path, typed);
        }
        let shown = text(&draft);
        for words in [
            "A. N.",
            "window",
            "loupe",
            "about 12 %",
            "Brown or red-brown",
            "Faint",
            "Filling shows",
            "Thin at the ridge.",
            "2 kept on this device",
            "14, 15 µm",
            "Not looked at: body",
        ] {
            assert!(shown.contains(words), "{words}: {shown}");
        }
    }

    #[test]
    fn an_invalid_choice_date_or_number_is_kept_and_gets_a_message() {
        let mut draft = Draft::default();
        draft.set("looked.on", "31 May");
        draft.set("parts[part=foot].engraving", "crispish");
        draft.set("parts[part=foot].bleed", "120 %");
        draft.set("parts[part=foot].xrf_um", "-4");
        let shown = text(&draft);
        for words in [
            "not a date",
            "crispish",
            "120 % is not possible",
            "\\\"-4\\\" cannot be used here",
        ] {
            assert!(shown.contains(words), "{words}: {shown}");
        }
        assert_eq!(draft.text("parts[part=foot].engraving"), "crispish");
        assert_eq!(draft.text("looked.on"), "31 May");
    }

    #[test]
    fn two_records_are_compared() {
        let mut draft = Draft::default();
        draft.set("looked.on", "2025-05-31");
        draft.set("parts[part=foot].bleed", "slight");
        draft.set("parts[part=foot].dents", "minor");
        draft.set("parts[part=body].joint", "sound");
        draft.keep_as_earlier("Before cleaning");
        assert_eq!(changes(&draft.earlier()[0], &draft), []);
        assert!(text(&draft).contains("Nothing differs"));
        draft.set("looked.on", "2026-05-31");
        draft.set("parts[part=foot].bleed", "some");
        draft.set("parts[part=body].joint", "");
        draft.set("parts[part=rim].split", "through");
        let found = changes(&draft.earlier()[0], &draft);
        let short: Vec<_> = found
            .iter()
            .map(|c| (c.part, c.was.is_empty(), c.is.is_empty()))
            .collect();
        assert_eq!(
            short,
            [
                (PartName::Body, false, true),
                (PartName::Rim, true, false),
                (PartName::Foot, false, false)
            ]
        );
        let shown = text(&draft);
        assert!(
            shown.contains("Before cleaning") && shown.contains("What differs from 2025-05-31")
        );
    }
}
