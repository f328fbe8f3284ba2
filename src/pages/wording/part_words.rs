//! Wording of parts, shares and years.

pub(crate) const PART: &str = "Part";

// Shares

pub(crate) const LESS_THAN_1_PERCENT: &str = "less than 1 %";
pub(crate) const ALL: &str = "all";

pub(crate) fn about_percent(hundredths: f64) -> String {
    format!("about {hundredths:.0} %")
}

// Years

pub(crate) const SOME_MONTHS: &str = "some months";
pub(crate) const A_YEAR: &str = "a year";

pub(crate) fn years(count: f64) -> String {
    format!("{count:.0} years")
}

pub(crate) const CENTURIES: &str = "centuries";
