//! Reads decimal numbers.
//!
//! The standard library's parser is exact for any length but brings a 10 KB table. Numbers in the ledger and
//! numbers that users type are short; this parser is exact for those and needs no table.

/// Most significant digits that a 64-bit integer and a double both hold exactly.
const EXACT_DIGITS: usize = 15;
/// Greatest power of ten that a double holds exactly.
const EXACT_POWER: i64 = 22;

/// The number that a text such as `-12.50` or `1e3` represents; `None` if it is not a number. Exact
/// (correctly rounded) for up to 15 significant digits and powers of ten within 22; otherwise within a few
/// units in the last place. Beyond the range of a double the result is infinite or zero.
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    let (negative, digits) = signed(text.as_bytes());
    let end = digits
        .iter()
        .position(|c| matches!(c, b'e' | b'E'))
        .unwrap_or(digits.len());
    let mut power = match digits.get(end + 1..) {
        None => 0,
        Some(exponent) => integer(exponent)?,
    };
    let (mut mantissa, mut significant, mut any, mut after_point) = (0_u64, 0_usize, false, false);
    for c in &digits[..end] {
        match c {
            b'.' if !after_point => after_point = true,
            b'0'..=b'9' => {
                any = true;
                power -= i64::from(after_point);
                // Digits past the nineteenth do not fit and hardly matter: they only shift the result.
                if significant < 19 {
                    mantissa = mantissa * 10 + u64::from(c - b'0');
                    significant += usize::from(mantissa > 0);
                } else {
                    power += 1;
                }
            }
            _ => return None,
        }
    }
    if !any {
        return None;
    }
    let value = scaled(mantissa, significant, power);
    Some(if negative { -value } else { value })
}

/// Whether the text starts with a minus sign, and the text after its sign, if it has one.
fn signed(text: &[u8]) -> (bool, &[u8]) {
    match text {
        [sign @ (b'-' | b'+'), rest @ ..] => (*sign == b'-', rest),
        rest => (false, rest),
    }
}

/// A whole number with an optional sign, clamped to what any double could need.
fn integer(text: &[u8]) -> Option<i64> {
    let (negative, digits) = signed(text);
    if digits.is_empty() {
        return None;
    }
    let mut value = 0_i64;
    for c in digits {
        if !c.is_ascii_digit() {
            return None;
        }
        value = (value * 10 + i64::from(c - b'0')).min(100_000);
    }
    Some(if negative { -value } else { value })
}

fn scaled(mantissa: u64, significant: usize, power: i64) -> f64 {
    let whole = mantissa as f64;
    if mantissa == 0 || power == 0 {
        return whole;
    }
    if power.abs() <= EXACT_POWER && significant <= EXACT_DIGITS {
        return if power > 0 {
            whole * power_of_ten(power)
        } else {
            whole / power_of_ten(-power)
        };
    }
    // In steps, so that neither the power nor an intermediate result overflows before the result does.
    let (mut value, mut left) = (whole, power.clamp(-400, 400));
    while left != 0 {
        let step = left.clamp(-EXACT_POWER, EXACT_POWER);
        value = if step > 0 {
            value * power_of_ten(step)
        } else {
            value / power_of_ten(-step)
        };
        left -= step;
    }
    value
}

/// 10 to a power from 0 to 22; every intermediate product is exact.
fn power_of_ten(power: i64) -> f64 {
    (0..power).fold(1.0, |p, _| p * 10.0)
}

#[cfg(test)]
mod tests {
    use super::decimal;

    #[test]
    fn short_numbers_are_read_as_the_standard_library_reads_them() {
        for text in [
            "0",
            "-0",
            "1",
            "-12.50",
            "+3",
            "1e3",
            "1E-3",
            "0.1",
            "0.3",
            "107.8682",
            "96485.33212",
            ".5",
            "5.",
            "1.5e+2",
            "123456789012345",
            "0.000000000000001",
            "9.99e22",
            "20240511",
            "0.92",
            "779.1",
        ] {
            let expected: f64 = text.parse().unwrap();
            assert_eq!(
                decimal(text).map(f64::to_bits),
                Some(expected.to_bits()),
                "{text}"
            );
        }
    }

    #[test]
    fn long_numbers_are_close_and_huge_ones_overflow() {
        for text in [
            "3.14159265358979323846",
            "1e300",
            "2.5e-300",
            "123456789012345678901234567890",
            "6.02214076e23",
        ] {
            let expected: f64 = text.parse().unwrap();
            let found = decimal(text).unwrap();
            assert!((found / expected - 1.0).abs() < 1e-14, "{text}: {found}");
        }
        assert_eq!(decimal("1e999"), Some(f64::INFINITY));
        assert_eq!(decimal("-1e99999999999999999999"), Some(f64::NEG_INFINITY));
        assert_eq!(decimal("1e-999").map(f64::to_bits), Some(0.0_f64.to_bits()));
    }

    #[test]
    fn text_that_is_not_a_number_is_refused() {
        for text in [
            "", "-", ".", "e5", "1e", "1e+", "1.2.3", "12o", "NaN", "inf", "1 2", "0x10", "--1",
            "1e1.5",
        ] {
            assert_eq!(decimal(text), None, "{text}");
        }
    }
}
