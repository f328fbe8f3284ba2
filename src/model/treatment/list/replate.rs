//! T14a: full replating.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Work, by_origin, mishaps};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REPLATE: Work = Work {
    treatment: Treatment::Replate,
    answers: &[Fault::BareMetal],
    idle: Some("Hardly any base metal shows."),
    trade: Trade::Plate,
    risk: MishapRisk::Figures(mishaps("hazard.T14a.")),
    price: Price::Plating(FigureId::COST_T14A),
    dose: Dose::ByKind(by_origin("attribute.dose.T14a.")),
    after: &[(Fault::Tarnish, FaultState::SOUND)],
};
