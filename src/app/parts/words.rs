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
    fn counts_read_naturally() {
        assert_eq!(count(1, "part", "parts"), "1 part");
        assert_eq!(count(0, "part", "parts"), "0 parts");
    }
}
