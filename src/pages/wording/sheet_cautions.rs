//! Words round the cautions of a sheet; the cautions themselves are data.

pub(crate) const CHILDREN: &str = "Children and pregnancy";
pub(crate) const CAUTIONS: &str = "Safety";
