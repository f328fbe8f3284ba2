//! What pieces fetch at auction.

/// What pieces fetch in every draw, together or lot by lot.
pub(super) struct Hammer {
    /// All lots together.
    pub(super) all: Vec<f64>,
    /// How many lots of each sort there are, and what one fetches; empty where all is one lot.
    pub(super) lots: Vec<(f64, Vec<f64>)>,
}
