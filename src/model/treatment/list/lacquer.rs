//! T07: a coat of lacquer.

use super::{Dose, MishapRisk, Price, Trade, Work};
use crate::ledger::FigureId;
use crate::treatment::Treatment;

/// What it answers, costs, takes and leaves.
pub(super) const LACQUER: Work = Work {
    treatment: Treatment::Lacquer,
    answers: &[],
    idle: Some("It already has a sound coat of lacquer."),
    trade: Trade::Care,
    risk: MishapRisk::ByClass,
    price: Price::Large(FigureId::COST_T07),
    dose: Dose::Figure(FigureId::ATTRIBUTE_DOSE_T07),
    after: &[],
};
