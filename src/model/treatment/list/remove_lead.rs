//! T10a: old lead solder taken out.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Value, Work, mishaps};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REMOVE_LEAD: Work = Work {
    treatment: Treatment::RemoveLead,
    answers: &[Fault::GreyRepair],
    idle: Some("No old grey repair is recorded."),
    trade: Trade::Remove,
    risk: MishapRisk::Figures(mishaps("hazard.T10a.")),
    price: Price::Figure(FigureId::COST_T10A),
    dose: Dose::Figure(FigureId::ATTRIBUTE_DOSE_T10A),
    after: &[(
        Fault::GreyRepair,
        FaultState {
            value: Value::One(FigureId::VALUE_AFTER_REPAIR),
            keeps: FigureId::ATTRIBUTE_STABILITY_NEAT,
            ..FaultState::SOUND
        },
    )],
};
