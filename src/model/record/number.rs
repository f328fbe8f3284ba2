//! Numbers as people type them.
//!
//! One reader for every typed number. Invariant: a text that could mean two numbers is never read as
//! one of them in silence.

use crate::terms::decimal;

/// What sort of number a field holds. It settles how a separator before three digits is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NumberKind {
    /// An amount of money: "1.150" is 1150, and a currency sign may stand before or after.
    Money,
    /// A whole number: "1.150" is 1150.
    Whole,
    /// A length, weight or other measure: "1.150" could be either and is asked about.
    Measure,
    /// A percentage: as a measure, and "%" may stand after it.
    Percent,
}

/// Why a text is not a number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum NumberFault {
    /// It is no number.
    Unreadable,
    /// It could be either of two: the separator before its last three digits may be a decimal sign
    /// or may group thousands.
    TwoWays {
        /// The number with a decimal sign.
        decimal: f64,
        /// The number with thousands grouped.
        grouped: f64,
    },
}

/// Reads a number as typed.
///
/// "1,150", "1.150" and "1 150" are 1150 in money and whole numbers, "12½" is 12.5, "12,5" is 12.5,
/// "£1,150.50" is 1150.5 in money.
///
/// # Errors
/// [`NumberFault`] when the text is no number, or could be either of two.
pub(super) fn typed_number(text: &str, kind: NumberKind) -> Result<f64, NumberFault> {
    let text = text.trim();
    let (negative, text) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text),
    };
    let text = without_sign(text, kind);
    // The minus may also stand after the currency sign.
    let (negative, text) = match text.strip_prefix(['-', '\u{2212}']).filter(|_| !negative) {
        Some(rest) => (true, rest.trim_start()),
        None => (negative, text),
    };
    if text.starts_with(['-', '+', '\u{2212}']) {
        return Err(NumberFault::Unreadable);
    }
    let signed = |x: f64| if negative { -x } else { x };
    let (text, part) = fraction(text);
    if text.is_empty() {
        return part.map(signed).ok_or(NumberFault::Unreadable);
    }
    let whole = match unsigned(text, kind) {
        Err(NumberFault::TwoWays { decimal, grouped }) if part.is_none() => {
            return Err(NumberFault::TwoWays {
                decimal: signed(decimal),
                grouped: signed(grouped),
            });
        }
        Ok(number) if part.is_none() || number.fract().abs() < f64::EPSILON => number,
        _ => return Err(NumberFault::Unreadable),
    };
    Ok(signed(whole + part.unwrap_or(0.0)))
}

/// True when a separator before three final digits makes a text two numbers at once. Such a text is
/// kept as typed, never as a JSON number, so that the field it is in can say which it is.
#[must_use]
pub(super) fn has_two_readings(text: &str) -> bool {
    matches!(
        typed_number(text, NumberKind::Measure),
        Err(NumberFault::TwoWays { .. })
    )
}

/// The text without the sign of a currency or a percentage.
fn without_sign(text: &str, kind: NumberKind) -> &str {
    const CURRENCIES: [char; 3] = ['£', '€', '$'];
    match kind {
        NumberKind::Money => text
            .strip_prefix(CURRENCIES)
            .or_else(|| text.strip_suffix(CURRENCIES))
            .unwrap_or(text)
            .trim(),
        NumberKind::Percent => text.strip_suffix('%').unwrap_or(text).trim(),
        NumberKind::Whole | NumberKind::Measure => text,
    }
}

/// Takes a vulgar fraction off the end.
fn fraction(text: &str) -> (&str, Option<f64>) {
    for (sign, part) in [('½', 0.5), ('¼', 0.25), ('¾', 0.75)] {
        if let Some(rest) = text.strip_suffix(sign) {
            return (rest.trim_end(), Some(part));
        }
    }
    (text, None)
}

fn unsigned(text: &str, kind: NumberKind) -> Result<f64, NumberFault> {
    let read = |text: &str| decimal(text).ok_or(NumberFault::Unreadable);
    if text.contains(['e', 'E']) {
        return read(text);
    }
    if text.contains(|c: char| !c.is_ascii_digit() && !c.is_whitespace() && c != '.' && c != ',') {
        return Err(NumberFault::Unreadable);
    }
    // The last separator decides: the other groups thousands.
    let Some(at) = text.rfind(['.', ',']) else {
        return read(&ungrouped(text, None)?);
    };
    let (before, sign, after) = (&text[..at], &text[at..=at], &text[at + 1..]);
    if before.contains(sign) {
        return read(&ungrouped(text, Some(sign))?);
    }
    let other = if sign == "." { "," } else { "." };
    let grouped_before = before.contains(|c: char| !c.is_ascii_digit());
    let whole = if grouped_before {
        ungrouped(before, Some(other).filter(|c| before.contains(*c)))?
    } else {
        before.to_owned()
    };
    let with_point = read(&[&whole, ".", after].concat())?;
    let groups = !grouped_before && (1..=3).contains(&before.len()) && !before.starts_with('0');
    if !groups || after.len() != 3 || after.contains(|c: char| !c.is_ascii_digit()) {
        return Ok(with_point);
    }
    let grouped = read(&[before, after].concat())?;
    match kind {
        NumberKind::Money | NumberKind::Whole => Ok(grouped),
        NumberKind::Measure | NumberKind::Percent => Err(NumberFault::TwoWays {
            decimal: with_point,
            grouped,
        }),
    }
}

/// Digits without what groups them in threes: a separator, or spaces.
fn ungrouped(text: &str, sign: Option<&str>) -> Result<String, NumberFault> {
    let plain = |digits: &str| digits.bytes().all(|b| b.is_ascii_digit());
    if plain(text) {
        return Ok(text.to_owned());
    }
    let groups: Vec<&str> = match sign {
        Some(sign) => text.split(sign).collect(),
        None => text.split(char::is_whitespace).collect(),
    };
    let fits = groups.iter().enumerate().all(|(place, group)| {
        plain(group) && (group.len() == 3 || (place == 0 && (1..=3).contains(&group.len())))
    });
    fits.then(|| groups.concat()).ok_or(NumberFault::Unreadable)
}

#[cfg(test)]
mod tests {
    use super::*;
    use NumberKind::{Measure, Money, Percent, Whole};

    #[track_caller]
    fn reads(kind: NumberKind, pairs: &[(&str, f64)]) {
        for (text, value) in pairs {
            let read = typed_number(text, kind);
            assert!(
                read.is_ok_and(|x| (x - value).abs() < 1e-9),
                "{text}: {read:?}"
            );
        }
    }

    #[test]
    fn money_is_read_as_people_write_it() {
        reads(
            Money,
            &[
                ("1150", 1150.0),
                ("1,150", 1150.0),
                ("1.150", 1150.0),
                ("1 150", 1150.0),
                ("1\u{202f}150", 1150.0),
                ("£1,150", 1150.0),
                ("£ 1,150.50", 1150.5),
                ("1.150,50 €", 1150.5),
                ("$25", 25.0),
                ("-£5", -5.0),
                ("£-5", -5.0),
                ("12,5", 12.5),
                ("12½", 12.5),
                ("£12 ¾", 12.75),
                ("½", 0.5),
                ("1 250,50", 1250.5),
                ("1,234,567", 1_234_567.0),
                ("1,234,567.8", 1_234_567.8),
                ("0.125", 0.125),
                ("0,125", 0.125),
                ("1e3", 1000.0),
                (" 7 ", 7.0),
            ],
        );
    }

    #[test]
    fn a_measure_that_could_be_either_is_asked_about() {
        for kind in [Measure, Percent] {
            for text in ["1.150", "1,150", "12.500"] {
                assert!(
                    matches!(typed_number(text, kind), Err(NumberFault::TwoWays { .. })),
                    "{text}"
                );
            }
            reads(
                kind,
                &[
                    ("1.15", 1.15),
                    ("1.1500", 1.15),
                    ("0.125", 0.125),
                    ("1,15", 1.15),
                    ("1,234,567", 1_234_567.0),
                    ("1 150", 1150.0),
                    ("1234.567", 1234.567),
                ],
            );
        }
        reads(Percent, &[("5 %", 5.0), ("12½%", 12.5)]);
        reads(Whole, &[("1.150", 1150.0), ("1,790", 1790.0)]);
    }

    #[test]
    fn what_is_no_number_is_not_read() {
        for kind in [Money, Whole, Measure, Percent] {
            for text in [
                "", " ", "12o", "abc", "NaN", "inf", "٣", "1,23,4", "1 23", "--5", "-", "£",
                "1.2.3", ",", "½½", "1.5½", "1,150½x", "+5", "5 mm", "1e999x",
            ] {
                assert_eq!(
                    typed_number(text, kind),
                    Err(NumberFault::Unreadable),
                    "{text:?} {kind:?}"
                );
            }
        }
        assert!(typed_number("£5", Measure).is_err());
        assert!(typed_number("5 %", Money).is_err());
    }
}
