//! One input moved and everything else unchanged: the basis of the search for break-evens.

/// Factors on the main inputs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct WhatIf {
    /// On the undamaged value.
    pub(super) value: f64,
    /// On every cost.
    pub(super) cost: f64,
    /// On the bare share of every part.
    pub(super) bleed: f64,
    /// On the odds of fused plate with its original surface.
    pub(super) fused_odds: f64,
}

impl WhatIf {
    /// Nothing moved.
    pub(super) const NOTHING: Self = Self {
        value: 1.0,
        cost: 1.0,
        bleed: 1.0,
        fused_odds: 1.0,
    };
}
