//! T01: better keeping.

use super::{Dose, Price, Risk, Trade, Work};
use crate::ledger::FigureId;
use crate::treatment::Treatment;

/// What it answers, costs, takes and leaves.
pub(super) const KEEPING: Work = Work {
    treatment: Treatment::Keeping,
    answers: &[],
    idle: None,
    trade: Trade::Care,
    risk: Risk::None,
    price: Price::Figure(FigureId::COST_T01),
    dose: Dose::None,
    after: &[],
};
