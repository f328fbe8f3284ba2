//! Shares expressed in words.

/// A share in words: "3 in 100", "about half".
#[must_use]
pub fn share(p: f64) -> String {
    let hundred = 100.0 * p;
    if hundred < 1.0 {
        "less than 1 in 100".to_owned()
    } else if hundred > 99.0 {
        "more than 99 in 100".to_owned()
    } else {
        format!("{hundred:.0} in 100")
    }
}

/// A share of the cases tried: "93 of 100 cases".
#[must_use]
pub fn share_of_cases(p: f64) -> String {
    format!("{} cases", share(p).replace(" in 100", " of 100"))
}

/// From this share on, a part of a whole is nearly all of it.
const NEARLY_ALL: f64 = 0.985;

/// The most that a share of a whole may be: "up to 91 %", "nearly all".
#[must_use]
pub fn at_most(f: f64) -> String {
    if f >= NEARLY_ALL {
        "nearly all".to_owned()
    } else {
        format!("up to {:.0} %", 100.0 * f)
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
        format!("about {:.0} %", 100.0 * f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_are_expressed_in_hundredths() {
        assert_eq!(share(0.914), "91 in 100");
        assert_eq!(share(0.001), "less than 1 in 100");
        assert_eq!(share(1.0), "more than 99 in 100");
        assert_eq!(share_of_cases(0.914), "91 of 100 cases");
        assert_eq!(share_of_cases(1.0), "more than 99 of 100 cases");
        assert_eq!(percent(0.03), "about 3 %");
        assert_eq!(percent(0.999), "nearly all");
        assert_eq!(at_most(0.91), "up to 91 %");
        assert_eq!(at_most(0.999), "nearly all");
    }
}
