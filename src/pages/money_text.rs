//! Amounts of money in the currency of a page, bands of them, and factors.

use super::wording::money_text as words;
use leavewell_model::maths::deciles;
use leavewell_model::terms::{Currency, money, to_the_penny};

/// Formats amounts in the currency of the page. The currency is only a label: nothing is converted.
#[derive(Clone, Copy)]
pub(super) struct MoneyFormat {
    currency: Currency,
}

impl MoneyFormat {
    pub(super) fn of(currency: Option<Currency>) -> Self {
        Self {
            currency: currency.unwrap_or(Currency::Other),
        }
    }

    /// The unit of a money field.
    pub(super) fn unit(self) -> &'static str {
        self.currency.sign()
    }

    /// An estimated amount, to two significant figures.
    pub(super) fn amount(self, value: f64) -> String {
        if value.is_finite() {
            money(self.currency, value)
        } else {
            words::NOT_KNOWN.to_owned()
        }
    }

    /// An amount that was typed or paid, to the penny.
    pub(super) fn exact(self, value: f64) -> String {
        to_the_penny(self.currency, value)
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

/// A factor with two decimals.
pub(super) fn times(factor: f64) -> String {
    format!("× {factor:.2}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn estimates_have_two_figures_and_typed_amounts_all_of_theirs() {
        let pounds = MoneyFormat::of(Some(Currency::Pound));
        for (value, words) in [
            (23.65, "£24"),
            (99.4, "£99"),
            (203.0, "£200"),
            (3451.17, "£3,500"),
            (25_200.0, "£25,000"),
            (-12.75, "−£13"),
            (-0.2, "£0"),
            (f64::NAN, "not known"),
        ] {
            assert_eq!(pounds.amount(value), words);
        }
        assert_eq!(MoneyFormat::of(None).amount(40.0), "40");
        assert_eq!(pounds.exact(1_203.5), "£1,203.5");
        assert_eq!(pounds.change(12.0), "+£12");
        assert_eq!(pounds.change(-12.0), "−£12");
    }
}
