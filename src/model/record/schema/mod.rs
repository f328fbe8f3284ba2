//! What a record may hold: one entry a field.
//!
//! An entry says the field's path, its label, how its text is read, its range and unit, and since which
//! version of the file it exists. Reading, forms, problems and the version a record is saved as all go
//! by it. Invariant: a number has one range and one message, here.

mod fields;
mod version;

use serde_json::Value;

use super::number::{NumberFault, NumberKind, typed_number};
use super::reading::{shorten, wording as words};
use super::{Draft, Problem};
use crate::terms::decimal;

pub(super) use fields::{BARE_SHARE, SIMILAR};
pub use fields::{FIELDS, SECTIONS};
pub(super) use version::version_needed;

/// One field of a record.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Its path in the file, with empty brackets for the entries of a list: `parts[].bleed`.
    pub path: &'static str,
    /// What it is called on a form.
    pub label: &'static str,
    /// How it is read.
    pub kind: FieldKind,
    /// The version of the file that first had it.
    pub since: u64,
}

/// How a field is read.
#[derive(Clone, Copy, Debug)]
pub enum FieldKind {
    /// A number with its range.
    Number(NumberRange),
    /// One of a closed list of words, or a word with other forms such as a share.
    Word,
    /// Yes or no.
    Flag,
    /// Text as written.
    Text,
    /// A day of the calendar, or a month or year.
    Day,
    /// Several ids or numbers with spaces between.
    Several,
}

/// A number a field can hold.
#[derive(Clone, Copy, Debug)]
pub struct NumberRange {
    /// How its separators are read.
    pub kind: NumberKind,
    /// The least, included.
    pub least: f64,
    /// The greatest, included.
    pub most: f64,
    /// Its unit; may be empty.
    pub unit: &'static str,
    /// What it is, in the middle of a sentence: "a height in millimetres".
    pub what: &'static str,
    /// A number that could stand there, as one would type it.
    pub example: &'static str,
}

/// The entry of a field; `None` when no field of a record has this path.
#[must_use]
pub fn field(path: &str) -> Option<&'static Field> {
    let pattern = pattern(path);
    // A part of one piece has the fields of any part.
    let pattern = pattern
        .strip_prefix("pieces.each[].parts")
        .map_or_else(|| pattern.clone(), |rest| ["parts", rest].concat());
    FIELDS.iter().find(|field| field.path == pattern)
}

/// What a section or a list of the record is called; `None` for a path that is none.
#[must_use]
pub fn section_label(path: &str) -> Option<&'static str> {
    let (_, label) = SECTIONS.iter().find(|(section, _)| *section == path)?;
    Some(label)
}

/// The range of a number; any number where the schema has none.
pub(super) fn number_range(path: &str) -> &'static NumberRange {
    match field(path).map(|field| &field.kind) {
        Some(FieldKind::Number(range)) => range,
        _ => &fields::ANY_NUMBER,
    }
}

/// Whether a field holds a percentage, which stands for a share.
#[must_use]
pub fn is_percentage(path: &str) -> bool {
    number_range(path).kind == NumberKind::Percent
}

/// A path as the schema writes it: the entry of a list without what tells it from the others.
pub(super) fn pattern(path: &str) -> String {
    if path.starts_with("overrides.") {
        for own in ["overrides.*.value", "overrides.*.reason"] {
            if path.ends_with(&own["overrides.*".len()..]) {
                return own.to_owned();
            }
        }
    }
    let mut pattern = String::with_capacity(path.len());
    let mut inside = false;
    for c in path.chars() {
        match c {
            '[' => {
                inside = true;
                pattern.push(c);
            }
            ']' => {
                inside = false;
                pattern.push(c);
            }
            _ if inside => {}
            _ => pattern.push(c),
        }
    }
    pattern
}

impl NumberRange {
    /// Reads what stands in a field. A number of the file is always a decimal; text is read as people
    /// type it.
    ///
    /// # Errors
    /// What is wrong and what to do, each as a sentence.
    pub(super) fn read(&self, value: &Value) -> Result<f64, (String, String)> {
        let read = match value {
            Value::Number(n) => decimal(n.as_str()).ok_or(NumberFault::Unreadable),
            Value::String(text) => typed_number(text, self.kind),
            _ => Err(NumberFault::Unreadable),
        };
        let shown = || {
            let text = value
                .as_str()
                .map_or_else(|| value.to_string(), str::to_owned);
            shorten(&text)
        };
        match read {
            Ok(number) if !number.is_finite() => Err((
                words::no_number(&shown()),
                words::no_number_remedy(self.what, self.example),
            )),
            Ok(number) if number < self.least || number > self.most => Err((
                words::out_of_range(number, self.what),
                words::out_of_range_remedy(self.least, self.most),
            )),
            Ok(number) => Ok(number),
            Err(NumberFault::TwoWays { decimal, grouped }) => Err((
                words::two_ways(&shown()),
                words::two_ways_remedy(decimal, grouped),
            )),
            Err(NumberFault::Unreadable) => Err((
                words::no_number(&shown()),
                words::no_number_remedy(self.what, self.example),
            )),
        }
    }
}

impl Draft {
    /// The number in a field: `Ok(None)` while it is empty.
    ///
    /// # Errors
    /// The problem, when what stands there cannot be used.
    pub fn number(&self, path: &str) -> Result<Option<f64>, Problem> {
        self.number_of(path, number_range(path))
    }

    fn number_of(&self, path: &str, range: &NumberRange) -> Result<Option<f64>, Problem> {
        let Some(value) = self.value(path).filter(|value| match value {
            Value::Null => false,
            Value::String(text) => !text.trim().is_empty(),
            _ => true,
        }) else {
            return Ok(None);
        };
        range
            .read(value)
            .map(Some)
            .map_err(|(message, remedy)| Problem {
                field: path.to_owned(),
                message,
                remedy,
            })
    }
}

/// The number held to the range of a field, for a figure that stands in while the field is empty.
#[must_use]
pub fn within(path: &str, number: f64) -> f64 {
    let range = number_range(path);
    number.max(range.least).min(range.most)
}

/// The share of a part where base metal shows, from text that is no word of [`BleedWord`]: "0.05" is
/// 5 %. `None` when the text is no share of 1.
///
/// [`BleedWord`]: crate::terms::BleedWord
#[must_use]
pub fn bare_share(text: &str) -> Option<f64> {
    BARE_SHARE.read(&Value::String(text.to_owned())).ok()
}

/// Reads a number that is typed beside a record rather than into it, such as a limit of a plan.
///
/// # Errors
/// What is wrong and what to do, each as a sentence.
pub fn number_typed(
    text: &str,
    kind: NumberKind,
    (least, most): (f64, f64),
) -> Result<f64, (String, String)> {
    let range = NumberRange {
        kind,
        least,
        most,
        ..fields::ANY_NUMBER
    };
    range.read(&Value::String(text.to_owned()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_path_stands_once_and_every_range_holds_its_example() {
        for (place, field) in FIELDS.iter().enumerate() {
            assert!(
                FIELDS[..place].iter().all(|other| other.path != field.path),
                "{} stands twice",
                field.path
            );
            assert!(!field.label.is_empty(), "{}", field.path);
            assert_eq!(pattern(field.path), field.path);
            if let FieldKind::Number(range) = field.kind {
                let example = range.read(&Value::String(range.example.to_owned()));
                assert!(example.is_ok(), "{}: {example:?}", field.path);
            }
        }
    }

    #[test]
    fn a_path_finds_its_field_however_the_entry_is_named() {
        for path in ["parts[0].bleed", "parts[part=foot].bleed", "parts[].bleed"] {
            assert_eq!(field(path).unwrap().path, "parts[].bleed");
        }
        assert!(field("overrides.{fee.lot}.value").is_some());
        assert!(field("nothing.such").is_none());
    }

    #[test]
    fn a_draft_gives_numbers_as_typed() {
        let mut draft = Draft::default();
        assert_eq!(draft.number("market.likely"), Ok(None));
        for (typed, value) in [("£1,150", 1150.0), ("1.150", 1150.0), ("12½", 12.5)] {
            draft.set("market.likely", typed);
            assert_eq!(draft.number("market.likely"), Ok(Some(value)), "{typed}");
        }
        draft.set("piece.height_mm", "1.150");
        let problem = draft.number("piece.height_mm").unwrap_err();
        assert!(problem.remedy.contains("1150"), "{problem:?}");
        draft.set("piece.height_mm", "235,5");
        assert_eq!(draft.number("piece.height_mm"), Ok(Some(235.5)));
    }
}
