//! Names of tones in HTML.

pub(crate) const NOTE: &str = "Note. ";
pub(crate) const CARE: &str = "Take care. ";
pub(crate) const STOP: &str = "Stop. ";
