//! T09: a solder repair.

use super::{Dose, MishapRisk, Price, REPAIRED, Trade, Work, mishaps};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const SOLDER: Work = Work {
    treatment: Treatment::Solder,
    answers: &[Fault::Split, Fault::OpenJoint, Fault::LoosePart],
    idle: Some("No open joint or split is recorded."),
    trade: Trade::Repair,
    risk: MishapRisk::Figures(mishaps("hazard.T09.")),
    price: Price::Joint(FigureId::COST_T09),
    dose: Dose::Joint(FigureId::ATTRIBUTE_DOSE_T09),
    after: REPAIRED,
};
