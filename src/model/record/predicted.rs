//! What the program expected, frozen by the program when work was agreed or the piece was offered.
//!
//! Invariant: an entry is written once and never again, so that what happened can be held against what
//! was said before it happened.

use super::{Date, PredictedWhen, PriceBasis};
use crate::terms::{Kind, Treatment};

/// One frozen prediction.
#[derive(Clone, Debug, PartialEq)]
pub struct Predicted {
    /// Why it was frozen.
    pub event: PredictedWhen,
    /// The day; `None` when the file does not say.
    pub on: Option<Date>,
    /// Version of the shipped figures.
    pub ledger: String,
    /// What tells apart the taught figures that held; empty when none did.
    pub taught: String,
    /// What the price rested on.
    pub basis: Option<PriceBasis>,
    /// ln of the price of an undamaged piece like it, in the case's currency.
    pub ln_level: Option<f64>,
    /// Standard deviation of that level, in ln.
    pub sd: Option<f64>,
    /// The kind held most likely.
    pub kind: Option<Kind>,
    /// Its chance, 0 to 1.
    pub p: Option<f64>,
    /// The condition that the price rested on, as the program wrote it.
    pub state: String,
    /// What the shipped figures expected.
    pub shipped: PredictedFigures,
    /// What the taught figures expected; nothing where none were taught.
    pub taught_values: PredictedFigures,
}

/// What one set of figures expected.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PredictedFigures {
    /// The hammer price: 1 in 10 below, the middle, 1 in 10 above.
    pub price: Option<[f64; 3]>,
    /// What each work costs, in the case's currency: low, likely, high.
    pub bills: Vec<PredictedOf<[f64; 3]>>,
    /// Hours of each work: low, likely, high.
    pub hours: Vec<PredictedOf<[f64; 3]>>,
    /// The chance that each work goes wrong.
    pub chances: Vec<PredictedOf<f64>>,
}

/// What was expected of one work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PredictedOf<T> {
    /// The work.
    pub work: Treatment,
    /// What was expected.
    pub value: T,
}
