//! Amounts of money, shares and factors in words.

use super::wording::money_text as words;
use leavewell_model::maths::deciles;
use leavewell_model::terms::{Currency, sum};

/// Formats amounts in the currency of the page. The currency is only a label: nothing is converted.
#[derive(Clone, Copy)]
pub(super) struct MoneyFormat {
    sign: &'static str,
}

impl MoneyFormat {
    pub(super) fn of(currency: Option<Currency>) -> Self {
        Self {
            sign: currency.unwrap_or(Currency::Other).sign(),
        }
    }

    /// The unit of a money field.
    pub(super) fn unit(self) -> &'static str {
        self.sign
    }

    /// An amount to about two figures, since nothing here is known more exactly.
    pub(super) fn amount(self, value: f64) -> String {
        if !value.is_finite() {
            return words::NOT_KNOWN.to_owned();
        }
        let size = value.abs();
        let step = match size {
            s if s < 100.0 => 1.0,
            s if s < 1000.0 => 5.0,
            s if s < 10_000.0 => 50.0,
            s if s < 100_000.0 => 500.0,
            _ => 5000.0,
        };
        let round = (size / step).round() * step;
        sum(self.sign, if value < 0.0 { -round } else { round })
    }

    /// An amount that somebody typed, to the whole unit.
    pub(super) fn exact(self, value: f64) -> String {
        sum(self.sign, value.round())
    }

    /// A gain or loss, with its sign.
    pub(super) fn change(self, value: f64) -> String {
        let plus = if value > 0.0 { "+" } else { "" };
        format!("{plus}{}", self.amount(value))
    }

    /// The median, with the band that covers 8 draws in 10.
    pub(super) fn band(self, [low, middle, high]: [f64; 3]) -> String {
        let [low, middle, high] = [low, middle, high].map(|v| self.amount(v));
        if low == high {
            middle
        } else {
            words::band(&middle, &low, &high)
        }
    }

    /// The median and band of a sample.
    pub(super) fn band_of(self, sample: &[f64]) -> String {
        self.band(deciles(sample))
    }
}

/// A share as a percentage in whole steps.
pub(super) fn percent(share: f64) -> String {
    format!("{:.0} %", 100.0 * share)
}

/// A factor with two decimals.
pub(super) fn times(factor: f64) -> String {
    format!("× {factor:.2}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_carry_no_more_figures_than_are_known() {
        let pounds = MoneyFormat::of(Some(Currency::Pound));
        for (value, words) in [
            (23.65, "£24"),
            (99.4, "£99"),
            (203.0, "£205"),
            (3451.17, "£3,450"),
            (25_200.0, "£25,000"),
            (-12.75, "−£13"),
            (-0.2, "£0"),
            (f64::NAN, "not known"),
        ] {
            assert_eq!(pounds.amount(value), words);
        }
        assert_eq!(MoneyFormat::of(None).amount(40.0), "40");
        assert_eq!(pounds.change(12.0), "+£12");
        assert_eq!(pounds.change(-12.0), "−£12");
    }
}
