//! T13a: local plating.

use super::{Dose, MishapRisk, Price, Trade, Work, by_origin};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const LOCAL_PLATE: Work = Work {
    treatment: Treatment::LocalPlate,
    answers: &[Fault::BareMetal],
    idle: Some("No bare metal is recorded on a rim, foot or other high point."),
    trade: Trade::Plate,
    risk: MishapRisk::ByClass,
    price: Price::Figure(FigureId::COST_T13A),
    dose: Dose::ByKind(by_origin("attribute.dose.T13a.")),
    after: &[],
};
