//! Wording of numbers.

pub(crate) const NOT_KNOWN: &str = "not known";
pub(crate) const NO_MM: &str = "0 mm";
pub(crate) const LESS_THAN_A_MM: &str = "less than 1 mm";

pub(crate) fn range(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

// Chances

pub(crate) const HARDLY_ANY: &str = "hardly any: less than 1 in 100";
pub(crate) const ALL_BUT_CERTAIN: &str = "all but certain: more than 99 in 100";
pub(crate) const SMALL: &str = "small";
pub(crate) const REAL: &str = "real";
pub(crate) const MORE_LIKELY_THAN_NOT: &str = "more likely than not";
pub(crate) const GREAT: &str = "great";

pub(crate) fn chance(words: &str, hundredths: f64) -> String {
    format!("{words}: about {hundredths:.0} in 100")
}
