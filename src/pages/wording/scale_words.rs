//! Wording of the published scale of likelihood and its ranges.

pub(crate) const VIRTUALLY_CERTAIN: &str = "virtually certain";
pub(crate) const VERY_LIKELY: &str = "very likely";
pub(crate) const LIKELY: &str = "likely";
pub(crate) const ABOUT_EVEN: &str = "about as likely as not";
pub(crate) const UNLIKELY: &str = "unlikely";
pub(crate) const VERY_UNLIKELY: &str = "very unlikely";
pub(crate) const EXCEPTIONALLY_UNLIKELY: &str = "exceptionally unlikely";

// Chances

pub(crate) fn or_more(hundredths: f64) -> String {
    format!("{hundredths} in 100 or more")
}

pub(crate) fn from_to(low: f64, high: f64) -> String {
    format!("{low} to {high} in 100")
}

pub(crate) fn or_less(hundredths: f64) -> String {
    format!("{hundredths} in 100 or less")
}
