//! Parts, thicknesses and years in words.

use super::ask::choice;
use super::block::{Block, EntryField, Tone};
use super::wording::part_words as words;
use leavewell_model::ledger::{Level, caution};
use leavewell_model::record::{Case, Draft, Problem};
use leavewell_model::terms::{Form, PartName};

/// A thickness to two figures, without its unit: "18", "2.4", "0.07".
pub(super) fn um(x: f64) -> String {
    if x >= 9.95 {
        format!("{x:.0}")
    } else if x >= 0.995 {
        format!("{x:.1}")
    } else if x >= 0.0995 {
        format!("{x:.2}")
    } else {
        format!("{x:.3}")
    }
}

/// A number of years, rounded to the precision of a forecast.
pub(super) fn years(x: f64) -> String {
    if x < 0.75 {
        words::SOME_MONTHS.to_owned()
    } else if x < 1.5 {
        words::A_YEAR.to_owned()
    } else if x < 10.0 {
        words::years(x)
    } else if x < 95.0 {
        words::years((x / 5.0).round() * 5.0)
    } else if x < 500.0 {
        words::years((x / 50.0).round() * 50.0)
    } else {
        words::CENTURIES.to_owned()
    }
}

/// The name of a part for the middle of a sentence.
pub(super) fn named(part: PartName) -> String {
    let label = part.label();
    let mut chars = label.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_ascii_lowercase().to_string() + chars.as_str()
    })
}

/// The parts to ask about: those that such a piece usually has, and any others on record.
pub(super) fn parts(case: &Case) -> Vec<PartName> {
    let usual = case.piece.form.unwrap_or(Form::Other).parts();
    let others = PartName::ALL
        .iter()
        .filter(|p| !usual.contains(p) && case.part(**p).is_some());
    usual.iter().chain(others).copied().collect()
}

/// The choice of the part that a page is about, and the part chosen.
pub(super) fn part_choice(draft: &Draft, case: &Case, path: &str) -> (Block, PartName) {
    let parts = parts(case);
    let options: Vec<(&str, &str)> = parts.iter().map(|p| (p.id(), p.label())).collect();
    let (block, chosen) = choice(draft, path, words::PART, "", &options);
    (block, PartName::parse(chosen).unwrap_or(PartName::Body))
}

/// A plain text field with its problem.
pub(super) fn text_field(
    draft: &Draft,
    path: &str,
    [label, unit, hint]: [&str; 3],
    problem: String,
) -> Block {
    Block::Field(EntryField {
        path: path.to_owned(),
        label: label.to_owned(),
        unit: unit.to_owned(),
        hint: hint.to_owned(),
        text: draft.text(path),
        stand_in: String::new(),
        problem,
        number: false,
    })
}

/// Everything wrong with one field of a part, as one text; empty if nothing is.
pub(super) fn part_problem(
    draft: &Draft,
    problems: &[Problem],
    part: PartName,
    field: &str,
) -> String {
    let Some(place) = draft.part_place(part.id()) else {
        return String::new();
    };
    let path = format!("parts[{place}].{field}");
    let inside = format!("{path}.");
    problems
        .iter()
        .find(|p| p.field == path || p.field.starts_with(&inside))
        .map(|p| format!("{} {}", p.message, p.remedy))
        .unwrap_or_default()
}

/// The caution with this id as a paragraph.
pub(super) fn caution_block(id: &str) -> Option<Block> {
    let row = caution(id)?;
    let tone = match row.level {
        Level::Note => Tone::Note,
        Level::Care => Tone::Care,
        Level::Stop => Tone::Stop,
    };
    Some(Block::said(tone, row.text))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_show_only_meaningful_digits() {
        assert_eq!(
            [18.4, 2.43, 0.123, 0.0712].map(um),
            ["18", "2.4", "0.12", "0.071"].map(str::to_owned)
        );
        assert_eq!(
            [0.2, 0.75, 1.5, 33.0, 260.0, 900.0].map(years),
            [
                "some months",
                "a year",
                "2 years",
                "35 years",
                "250 years",
                "centuries"
            ]
            .map(str::to_owned)
        );
    }
}
