//! Names of tones in Markdown.

pub(crate) const STOP: &str = "**Stop.** ";
pub(crate) const CARE: &str = "**Take care.** ";
pub(crate) const NOTE: &str = "**Note.** ";
