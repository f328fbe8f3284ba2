//! Shares and chances as text. Every screen, sheet and sentence formats them here.

/// A share in words: "3 in 100", "about half".
#[must_use]
pub fn share(p: f64) -> String {
    let hundred = 100.0 * p;
    if hundred < 1.0 {
        "less than 1 in 100".to_owned()
    } else if hundred > 99.0 {
        "more than 99 in 100".to_owned()
    } else {
        whole(hundred) + " in 100"
    }
}

/// A share of the cases tried: "93 of 100 cases".
#[must_use]
pub fn share_of_cases(p: f64) -> String {
    share(p).replace(" in 100", " of 100 cases")
}

/// From this share on, a part of a whole is nearly all of it.
const NEARLY_ALL: f64 = 0.985;

/// The most that a share of a whole may be: "up to 91 %", "nearly all".
#[must_use]
pub fn at_most(f: f64) -> String {
    if f >= NEARLY_ALL {
        "nearly all".to_owned()
    } else {
        ["up to ", &whole_percent(f)].concat()
    }
}

/// A share of an area or of a whole: "about 3 %", "nearly all".
#[must_use]
pub fn percent(f: f64) -> String {
    if f < 0.005 {
        "less than 1 %".to_owned()
    } else if f >= NEARLY_ALL {
        "nearly all".to_owned()
    } else {
        ["about ", &whole_percent(f)].concat()
    }
}

/// A chance as a percentage, never 0 or 100 %: "about 12 %", "less than 1 %", "more than 99 %".
#[must_use]
pub fn chance(p: f64) -> String {
    if p < 0.01 {
        "less than 1 %".to_owned()
    } else if p >= 0.995 {
        "more than 99 %".to_owned()
    } else {
        ["about ", &whole_percent(p)].concat()
    }
}

/// A share that was set or counted, as a whole percentage: "12 %".
#[must_use]
pub fn whole_percent(f: f64) -> String {
    whole(100.0 * f) + " %"
}

/// The nearest whole number; halves round to even.
fn whole(value: f64) -> String {
    value.round_ties_even().to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_are_expressed_in_hundredths() {
        assert_eq!(share(0.914), "91 in 100");
        assert_eq!(share(0.001), "less than 1 in 100");
        assert_eq!(share(1.0), "more than 99 in 100");
        assert_eq!(share(0.3), "30 in 100");
        assert_eq!(share_of_cases(0.914), "91 of 100 cases");
        assert_eq!(share_of_cases(1.0), "more than 99 of 100 cases");
        assert_eq!(percent(0.03), "about 3 %");
        assert_eq!(percent(0.999), "nearly all");
        assert_eq!(percent(0.004), "less than 1 %");
        assert_eq!(whole_percent(0.125), "12 %");
        assert_eq!(at_most(0.91), "up to 91 %");
        assert_eq!(at_most(0.999), "nearly all");
    }

    #[test]
    fn a_chance_is_never_0_or_100() {
        assert_eq!(chance(0.0), "less than 1 %");
        assert_eq!(chance(0.123), "about 12 %");
        assert_eq!(chance(0.997), "more than 99 %");
        assert_eq!(chance(1.0), "more than 99 %");
    }
}
