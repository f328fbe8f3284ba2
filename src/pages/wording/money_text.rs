//! Wording of amounts.

pub(crate) const NOT_KNOWN: &str = "not known";

pub(crate) fn band(middle: &str, low: &str, high: &str) -> String {
    format!("{middle} ({low} to {high})")
}
