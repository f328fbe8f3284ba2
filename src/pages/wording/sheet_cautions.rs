//! Headings of the cautions on a sheet. The cautions themselves are data.

pub(crate) const CHILDREN: &str = "Children and pregnancy";
pub(crate) const CAUTIONS: &str = "Safety";
