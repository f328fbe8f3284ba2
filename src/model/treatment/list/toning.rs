//! T13c: removable toning.

use super::{Dose, MishapRisk, Price, Trade, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const TONING: Work = Work {
    treatment: Treatment::Toning,
    answers: &[Fault::BareMetal],
    idle: Some("No bare metal is recorded for a tint to hide."),
    trade: Trade::Care,
    risk: MishapRisk::ByClass,
    price: Price::Large(FigureId::COST_T13C),
    dose: Dose::Figure(FigureId::ATTRIBUTE_DOSE_T13C),
    after: &[],
};
