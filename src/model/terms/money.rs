//! Sums of money as text. Every screen, sheet and sentence formats its sums here.

use super::Currency;

impl Currency {
    /// The sign before an amount; empty for a currency without a sign here.
    #[must_use]
    pub fn sign(self) -> &'static str {
        match self {
            Self::Pound => "£",
            Self::Euro => "€",
            Self::Dollar => "$",
            Self::Other => "",
        }
    }
}

/// An amount rounded to two significant figures and whole units: "£340", "−€1,200". An amount that is not a
/// number prints as 0.
#[must_use]
pub fn money(currency: Currency, amount: f64) -> String {
    let rounded = if amount.abs() < 10.0 {
        amount.round()
    } else {
        two_figures(amount)
    };
    sum(currency.sign(), rounded)
}

/// An unrounded amount with commas between thousands: "£25,123", "12.5". `sign` comes before the digits and
/// after the minus.
#[must_use]
pub fn sum(sign: &str, amount: f64) -> String {
    let minus = if amount < 0.0 { "\u{2212}" } else { "" };
    let digits = amount.abs().to_string();
    let (whole, fraction) = digits.split_at(digits.find('.').unwrap_or(digits.len()));
    let mut text = [minus, sign].concat();
    for (i, digit) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text + fraction
}

/// A sum that was typed, quoted or paid, to the penny: "£180", "£12.5".
#[must_use]
pub fn to_the_penny(currency: Currency, amount: f64) -> String {
    sum(currency.sign(), (amount * 100.0).round() / 100.0)
}

/// Rounds to two significant figures, never finer than a tenth; 0 for NaN or infinity. Powers of ten are
/// computed by multiplication, because the standard functions differ in the last bit from machine to machine.
#[must_use]
pub fn two_figures(value: f64) -> f64 {
    if !value.is_finite() {
        return 0.0;
    }
    let mut unit = 1.0;
    while value.abs() >= unit * 99.5 {
        unit *= 10.0;
    }
    if value.abs() < 9.95 && unit <= 1.0 {
        (value * 10.0).round() / 10.0
    } else {
        (value / unit).round() * unit
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_is_printed_with_two_significant_figures_in_one_format() {
        for (amount, text) in [
            (0.0, "£0"),
            (4.46, "£4"),
            (0.8, "£1"),
            (43.7, "£44"),
            (99.6, "£100"),
            (347.0, "£350"),
            (12_345.0, "£12,000"),
            (99_960.0, "£100,000"),
            (-86.2, "\u{2212}£86"),
            (-0.01, "£0"),
            (f64::NAN, "£0"),
        ] {
            assert_eq!(money(Currency::Pound, amount), text, "{amount}");
        }
        assert_eq!(money(Currency::Other, 1_250_000.0), "1,300,000");
    }

    #[test]
    fn an_unrounded_sum_keeps_every_digit() {
        assert_eq!(sum("£", 25_123.0), "£25,123");
        assert_eq!(sum("", 999.0), "999");
        assert_eq!(to_the_penny(Currency::Pound, 1_180.004), "£1,180");
        assert_eq!(sum("€", -1_234_567.5), "\u{2212}€1,234,567.5");
    }
}
