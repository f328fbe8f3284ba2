//! Wording of parts and years.

pub(crate) const PART: &str = "Part";

// Years

pub(crate) const SOME_MONTHS: &str = "some months";
pub(crate) const A_YEAR: &str = "a year";

pub(crate) fn years(count: f64) -> String {
    format!("{count:.0} years")
}

pub(crate) const CENTURIES: &str = "centuries";
