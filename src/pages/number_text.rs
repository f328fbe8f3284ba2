//! Numbers, distances, ranges and chances as text.

use super::wording::number_text as words;

/// A number to about three significant figures, without trailing zeros: `0.045`, `8.4`, `126`. Never "NaN".
pub(super) fn figures(x: f64) -> String {
    if !x.is_finite() {
        return words::NOT_KNOWN.to_owned();
    }
    let size = x.abs();
    let text = if size >= 99.95 {
        format!("{x:.0}")
    } else if size >= 9.995 {
        format!("{x:.1}")
    } else if size >= 0.995 {
        format!("{x:.2}")
    } else {
        format!("{x:.3}")
    };
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// A distance in whole millimetres, or "less than 1 mm".
pub(super) fn mm(x: f64) -> String {
    if !x.is_finite() {
        words::NOT_KNOWN.to_owned()
    } else if x <= 0.0 {
        words::NO_MM.to_owned()
    } else if x < 1.0 {
        words::LESS_THAN_A_MM.to_owned()
    } else {
        format!("{x:.0} mm")
    }
}

/// A range, or one number if both ends read the same.
pub(super) fn range(low: &str, high: &str) -> String {
    if low == high {
        low.to_owned()
    } else {
        words::range(low, high)
    }
}

/// A probability in words, and out of 100.
pub(super) fn chance(p: f64) -> String {
    let words = if p < 0.01 {
        return words::HARDLY_ANY.to_owned();
    } else if p > 0.99 {
        return words::ALL_BUT_CERTAIN.to_owned();
    } else if p < 0.2 {
        words::SMALL
    } else if p < 0.5 {
        words::REAL
    } else if p < 0.8 {
        words::MORE_LIKELY_THAN_NOT
    } else {
        words::GREAT
    };
    words::chance(words, 100.0 * p)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_three_figures_and_no_trailing_zeros() {
        for (x, said) in [
            (0.045, "0.045"),
            (8.4, "8.4"),
            (126.4, "126"),
            (5.0, "5"),
            (0.0, "0"),
            (100.0, "100"),
            (f64::NAN, "not known"),
        ] {
            assert_eq!(figures(x), said);
        }
        assert_eq!(mm(0.4), "less than 1 mm");
        assert_eq!(mm(0.0), "0 mm");
        assert_eq!(range("3 mm", "3 mm"), "3 mm");
        assert_eq!(chance(0.304), "real: about 30 in 100");
        assert_eq!(chance(0.0), "hardly any: less than 1 in 100");
    }
}
