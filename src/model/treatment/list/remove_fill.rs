//! T10b: an old filling taken out.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Value, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REMOVE_FILL: Work = Work {
    treatment: Treatment::RemoveFill,
    answers: &[Fault::FailingFilling],
    idle: Some("No failing filling is recorded."),
    trade: Trade::Remove,
    risk: MishapRisk::ByClass,
    price: Price::Figure(FigureId::COST_T10B),
    dose: Dose::Figure(FigureId::ATTRIBUTE_DOSE_T10B),
    after: &[(
        Fault::FailingFilling,
        FaultState {
            value: Value::One(FigureId::VALUE_AFTER_FILL_OUT),
            keeps: FigureId::ATTRIBUTE_STABILITY_FILL_OUT,
            ..FaultState::SOUND
        },
    )],
};
