//! T14b: plating over the old silver.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Work, by_origin};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const OVERPLATE: Work = Work {
    treatment: Treatment::Overplate,
    answers: &[Fault::BareMetal],
    idle: Some("Hardly any base metal shows."),
    trade: Trade::Plate,
    risk: MishapRisk::ByClass,
    price: Price::Plating(FigureId::COST_T14B),
    dose: Dose::ByKind(by_origin("attribute.dose.T14b.")),
    after: &[(Fault::Tarnish, FaultState::SOUND)],
};
