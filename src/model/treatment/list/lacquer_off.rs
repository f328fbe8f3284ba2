//! T02b: old lacquer taken off.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const LACQUER_OFF: Work = Work {
    treatment: Treatment::LacquerOff,
    answers: &[Fault::BrokenLacquer],
    idle: Some("No broken lacquer is recorded."),
    trade: Trade::Care,
    risk: MishapRisk::ByClass,
    price: Price::Figure(FigureId::COST_T02_LACQUER),
    dose: Dose::Figure(FigureId::ATTRIBUTE_DOSE_T02_LACQUER),
    after: &[(Fault::BrokenLacquer, FaultState::SOUND)],
};
