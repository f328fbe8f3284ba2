//! Wording of the fold with the figures behind an instrument.

pub(crate) const SUMMARY: &str = "The figures behind this, and where they come from";
pub(crate) const CAPTION: &str = "Figures used; you can replace each with your own in the ledger";
pub(crate) const COLUMNS: [&str; 5] = ["What", "Value", "Range", "How known", "Source"];
pub(crate) const OWN: &str = "your own figure";
