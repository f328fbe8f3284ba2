//! Lengths and weights in the unit a person measures in.
//!
//! A record holds millimetres and grams. A number typed in inches or troy ounces is turned into them where it
//! is written, and the text as typed stands beside it, so that the field shows what was typed.

use super::Draft;
use super::number::{NumberFault, NumberKind, typed_number};
use super::schema::number_range;
use crate::terms::{LengthUnit, WeightUnit, decimal};

/// Millimetres in an inch, by definition.
const MM_IN_AN_INCH: f64 = 25.4;
/// Grams in a troy ounce, by definition.
const G_IN_A_TROY_OUNCE: f64 = 31.103_476_8;

/// How many millimetres or grams one of the chosen units is; `None` where the record's own unit is chosen.
fn unit(draft: &Draft, path: &str) -> Option<f64> {
    if path == "piece.weight_g" {
        let chosen = WeightUnit::parse(&draft.text("piece.weight_unit"));
        return (chosen == Some(WeightUnit::TroyOunces)).then_some(G_IN_A_TROY_OUNCE);
    }
    let chosen = LengthUnit::parse(&draft.text("piece.length_unit"));
    (chosen == Some(LengthUnit::Inches)).then_some(MM_IN_AN_INCH)
}

/// The path of the text as typed, for a size such as `piece.height_mm`; `None` for any other field.
fn typed_path(path: &str) -> Option<&'static str> {
    Some(match path {
        "piece.height_mm" => "piece.height_typed",
        "piece.length_mm" => "piece.length_typed",
        "piece.width_mm" => "piece.width_typed",
        "piece.weight_g" => "piece.weight_typed",
        _ => return None,
    })
}

/// Writes a size that was typed in the person's unit. Returns false, and changes nothing, for a field that is
/// not a size. Unreadable text is stored as typed.
pub fn put_size(draft: &mut Draft, path: &str, typed: &str) -> bool {
    let Some(beside) = typed_path(path) else {
        return false;
    };
    let Some(times) = unit(draft, path) else {
        draft.set(beside, "");
        draft.set(path, typed);
        return true;
    };
    let most = number_range(path).most / times;
    match in_unit(typed, most) {
        Some(number) => draft.set(path, &super::hundredths(number * times)),
        None => draft.set(path, typed),
    }
    draft.set(beside, typed);
    true
}

/// The text of a size in the person's unit: as typed where it was typed in it. `None` for a field that is no size.
#[must_use]
pub fn size_text(draft: &Draft, path: &str) -> Option<String> {
    let beside = typed_path(path)?;
    let stored = draft.text(path);
    let Some(times) = unit(draft, path) else {
        return Some(stored);
    };
    let typed = draft.text(beside);
    let most = number_range(path).most / times;
    let number = draft.number(path).ok().flatten();
    // What another program wrote into the field since holds.
    let is_current = match (in_unit(&typed, most), number) {
        (Some(typed), Some(number)) => {
            super::hundredths(typed * times) == super::hundredths(number)
        }
        _ => typed == stored,
    };
    if is_current {
        return Some(typed);
    }
    Some(number.map_or(stored, |number| super::hundredths(number / times)))
}

/// A number as typed in inches or ounces: "5.5", "5½", "5 7/8". A number above `most` with a separator before
/// three digits is the decimal one.
fn in_unit(text: &str, most: f64) -> Option<f64> {
    let text = text.trim();
    if let Some((before, below)) = text.split_once('/') {
        let (whole, above) = before
            .trim()
            .rsplit_once(' ')
            .unwrap_or(("0", before.trim()));
        let [whole, above, below] = [whole, above, below].map(|part| decimal(part.trim()));
        let (whole, above, below) = (whole?, above?, below?);
        return (below > 0.0).then(|| whole + above / below);
    }
    match typed_number(text, NumberKind::Measure) {
        Ok(number) => Some(number),
        Err(NumberFault::TwoWays { decimal, grouped }) if grouped > most => Some(decimal),
        Err(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn in_inches() -> Draft {
        let mut draft = Draft::default();
        draft.set("piece.length_unit", "in");
        draft.set("piece.weight_unit", "ozt");
        draft
    }

    #[test]
    fn inches_are_kept_as_typed_and_counted_in_millimetres() {
        for (typed, mm) in [
            ("6", 152.4),
            ("5½", 139.7),
            ("5 7/8", 149.23),
            ("5.875", 149.23),
            ("3/4", 19.05),
        ] {
            let mut draft = in_inches();
            assert!(put_size(&mut draft, "piece.height_mm", typed));
            assert_eq!(draft.number("piece.height_mm"), Ok(Some(mm)), "{typed}");
            assert_eq!(size_text(&draft, "piece.height_mm").as_deref(), Some(typed));
        }
        let mut draft = in_inches();
        assert!(put_size(&mut draft, "piece.weight_g", "10"));
        assert_eq!(draft.read().0.piece.weight_g, Some(311.03));
        assert!(!put_size(&mut draft, "piece.name", "10"));
        assert_eq!(size_text(&draft, "piece.name"), None);
    }

    #[test]
    fn another_unit_shows_the_same_size() {
        let mut draft = in_inches();
        put_size(&mut draft, "piece.height_mm", "6");
        draft.set("piece.length_unit", "mm");
        assert_eq!(
            size_text(&draft, "piece.height_mm").as_deref(),
            Some("152.4")
        );
        put_size(&mut draft, "piece.height_mm", "254");
        assert_eq!(draft.text("piece.height_typed"), "");
        draft.set("piece.length_unit", "in");
        assert_eq!(size_text(&draft, "piece.height_mm").as_deref(), Some("10"));
        // Written by a program that knows no inches, beside what was typed before.
        draft.set("piece.height_typed", "6");
        assert_eq!(size_text(&draft, "piece.height_mm").as_deref(), Some("10"));
    }

    #[test]
    fn what_cannot_be_read_stays_as_typed_with_its_problem() {
        for typed in ["tall", "1/0", "1.2.3"] {
            let mut draft = in_inches();
            put_size(&mut draft, "piece.height_mm", typed);
            assert_eq!(size_text(&draft, "piece.height_mm").as_deref(), Some(typed));
            assert!(draft.number("piece.height_mm").is_err(), "{typed}");
        }
    }
}
