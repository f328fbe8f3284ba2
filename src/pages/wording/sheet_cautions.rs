//! Headings of the cautions on a sheet. The cautions themselves are data.

pub(crate) const CAUTIONS: &str = "Safety";
