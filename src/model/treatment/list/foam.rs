//! T04: shop silver polish.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const FOAM: Work = Work {
    treatment: Treatment::Foam,
    answers: &[Fault::Tarnish],
    idle: Some("No tarnish is recorded."),
    trade: Trade::Care,
    risk: MishapRisk::ByClass,
    price: Price::Figure(FigureId::COST_T04),
    dose: Dose::Cleaning,
    after: &[(Fault::Tarnish, FaultState::SOUND)],
};
