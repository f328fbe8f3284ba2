//! T16: a new part for a lost one.

use super::{Dose, FaultState, MishapRisk, Price, Show, Trade, Value, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REPLACE_PART: Work = Work {
    treatment: Treatment::ReplacePart,
    answers: &[Fault::PartLost],
    idle: Some("No part is recorded as missing."),
    trade: Trade::Repair,
    risk: MishapRisk::ByClass,
    price: Price::BySize(FigureId::COST_T16_MINOR, FigureId::COST_T16_MAJOR),
    dose: Dose::BySize(
        FigureId::ATTRIBUTE_DOSE_T16_MINOR,
        FigureId::ATTRIBUTE_DOSE_T16_MAJOR,
    ),
    after: &[(
        Fault::PartLost,
        FaultState {
            value: Value::NewPart,
            show: Show::Figure(FigureId::ATTRIBUTE_SHOW_PART_NEW),
            ..FaultState::SOUND
        },
    )],
};
