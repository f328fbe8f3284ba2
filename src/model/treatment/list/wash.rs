//! T02: dust and wash.

use super::{Dose, MishapRisk, Price, Trade, Work};
use crate::ledger::FigureId;
use crate::treatment::Treatment;

/// What it answers, costs, takes and leaves.
pub(super) const WASH: Work = Work {
    treatment: Treatment::Wash,
    answers: &[],
    idle: None,
    trade: Trade::Care,
    risk: MishapRisk::None,
    price: Price::Figure(FigureId::COST_T02),
    dose: Dose::None,
    after: &[],
};
