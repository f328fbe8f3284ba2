//! T01: better keeping.

use super::{Dose, Price, Risk, Trade, Work};
use crate::treatment::Treatment;

/// What it answers, costs, takes and leaves.
pub(super) const KEEPING: Work = Work {
    treatment: Treatment::Keeping,
    answers: &[],
    idle: None,
    trade: Trade::Care,
    risk: Risk::None,
    price: Price::Figure("cost.T01"),
    dose: Dose::None,
    after: &[],
};
