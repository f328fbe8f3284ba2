//! Formats numbers, ranges and lists for the screens. Money uses the format of [`terms::money`].

use leavewell_model::report::{Band, BandMean};
use leavewell_model::terms::{self, Currency};

/// An amount to two significant figures, with its sign: "£340", "−€1,200".
#[must_use]
pub fn money(amount: f64, currency: Currency) -> String {
    terms::money(currency, amount)
}

/// A band of money: "about £40 to £90", or one amount when both ends read the same.
#[must_use]
pub fn money_band(band: Band, currency: Currency) -> String {
    range(&money(band.p10, currency), &money(band.p90, currency))
}

/// A gain or a loss as a band of money.
#[must_use]
pub fn gain_band(gain: BandMean, currency: Currency) -> String {
    range(&money(gain.p10, currency), &money(gain.p90, currency))
}

/// A band of plain numbers to two significant figures: "about 40 to 90".
#[must_use]
pub fn number_band(band: Band) -> String {
    range(&number(band.p10), &number(band.p90))
}

/// A plain number to two significant figures.
#[must_use]
pub fn number(value: f64) -> String {
    terms::sum("", terms::two_figures(value))
}

/// A share of 1 as a whole percentage: "about 12 %", "less than 1 %", "nearly all".
#[must_use]
pub fn percent(share: f64) -> String {
    let hundredths = share * 100.0;
    if hundredths <= 0.0 {
        "0 %".to_owned()
    } else if hundredths < 1.0 {
        "less than 1 %".to_owned()
    } else if hundredths >= 99.5 {
        if share >= 1.0 {
            "100 %".to_owned()
        } else {
            "more than 99 %".to_owned()
        }
    } else {
        joined(&["about ", &whole(hundredths), " %"])
    }
}

/// A chance as "91 in 100", never 0 or 100 unless it is.
#[must_use]
pub fn in_hundred(share: f64) -> String {
    let hundredths = share * 100.0;
    if hundredths > 0.0 && hundredths < 1.0 {
        "fewer than 1 in 100".to_owned()
    } else if hundredths > 99.0 && hundredths < 100.0 {
        "more than 99 in 100".to_owned()
    } else {
        whole(hundredths) + " in 100"
    }
}

/// "a", "a and b", "a, b and c".
#[must_use]
pub fn list(items: &[&str]) -> String {
    match items {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [most @ .., last] => joined(&[&most.join(", "), " and ", last]),
    }
}

/// Joins texts into one.
#[must_use]
pub fn joined(parts: &[&str]) -> String {
    parts.concat()
}

/// "1 part", "3 parts".
#[must_use]
pub fn count(n: usize, one: &str, many: &str) -> String {
    joined(&[&n.to_string(), " ", if n == 1 { one } else { many }])
}

fn range(low: &str, high: &str) -> String {
    if low == high {
        joined(&["about ", low])
    } else {
        joined(&["about ", low, " to ", high])
    }
}

/// The nearest whole number; halves round to even.
fn whole(value: f64) -> String {
    value.round_ties_even().to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_collapse_when_both_ends_read_the_same() {
        let band = |p10, p90| Band { p10, p50: p10, p90 };
        assert_eq!(
            money_band(band(41.0, 88.0), Currency::Euro),
            "about €41 to €88"
        );
        assert_eq!(money_band(band(100.0, 101.0), Currency::Euro), "about €100");
        assert_eq!(number_band(band(1.26, 9.96)), "about 1.3 to 10");
    }

    #[test]
    fn shares_read_0_or_100_only_when_exact() {
        assert_eq!(percent(0.0), "0 %");
        assert_eq!(percent(0.004), "less than 1 %");
        assert_eq!(percent(0.123), "about 12 %");
        assert_eq!(percent(0.997), "more than 99 %");
        assert_eq!(percent(1.0), "100 %");
        assert_eq!(in_hundred(0.003), "fewer than 1 in 100");
        assert_eq!(in_hundred(0.91), "91 in 100");
        assert_eq!(in_hundred(0.999), "more than 99 in 100");
    }

    #[test]
    fn lists_and_counts_read_naturally() {
        assert_eq!(list(&[]), "");
        assert_eq!(list(&["a"]), "a");
        assert_eq!(list(&["a", "b"]), "a and b");
        assert_eq!(list(&["a", "b", "c"]), "a, b and c");
        assert_eq!(count(1, "part", "parts"), "1 part");
        assert_eq!(count(0, "part", "parts"), "0 parts");
    }
}
