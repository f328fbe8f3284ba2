//! Wording of the forecast chart.

pub(crate) const NOW: &str = "now";

pub(crate) fn in_years(years: f64) -> String {
    format!("in {years:.0} years")
}

pub(crate) fn description(years: f64) -> String {
    format!(
        "Two bands from now to {years:.0} years ahead: the share of the part that is bare. The line is the \
         middle case and the band covers 8 cases in 10. The second habit is dashed."
    )
}

pub(crate) fn middle_and_range(middle: f64, low: f64, high: f64) -> String {
    format!("{middle}; {low} to {high}")
}

pub(crate) const CAPTION: &str =
    "Share that is bare, in per cent: the middle case, and the range that covers 8 in 10";
pub(crate) const YEARS: &str = "Years";
pub(crate) const FIRST: &str = "First";
pub(crate) const SECOND: &str = "Second";
