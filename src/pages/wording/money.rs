//! Wording on money, one file per section.

pub(crate) mod break_evens;
pub(crate) mod factors;
pub(crate) mod pieces;
pub(crate) mod plans;
pub(crate) mod routes;
pub(crate) mod sales;

pub(crate) const CAUTIONS: &str = "Safety for the treatments named here";
pub(crate) const NOT_SAID: &str = "Not said";
