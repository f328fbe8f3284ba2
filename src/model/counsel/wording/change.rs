//! The inputs that are varied, worded for the middle of a sentence.

pub(crate) const VALUE: &str = "what an undamaged one fetches";
pub(crate) const COST: &str = "what the work costs";
pub(crate) const BLEED: &str = "how much base metal shows";
pub(crate) const FUSED: &str = "the chance that it is fused plate with its own silver";
