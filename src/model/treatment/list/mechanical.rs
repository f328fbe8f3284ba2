//! T12: a pin, screw or glued fix.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Value, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const MECHANICAL: Work = Work {
    treatment: Treatment::Mechanical,
    answers: &[
        Fault::LoosePart,
        Fault::CrackedMaterial,
        Fault::FailingFilling,
    ],
    idle: Some("No loose part or failing filling is recorded."),
    trade: Trade::Repair,
    risk: MishapRisk::ByClass,
    price: Price::Figure(FigureId::COST_T12),
    dose: Dose::Figure(FigureId::ATTRIBUTE_DOSE_T12),
    after: &[
        (
            Fault::LoosePart,
            FaultState {
                value: Value::One(FigureId::VALUE_AFTER_FIX),
                serves: Some(FigureId::ATTRIBUTE_USE_FIXED),
                keeps: FigureId::ATTRIBUTE_STABILITY_FIXED,
                ..FaultState::SOUND
            },
        ),
        (
            Fault::CrackedMaterial,
            FaultState {
                value: Value::One(FigureId::VALUE_AFTER_FIX),
                serves: Some(FigureId::ATTRIBUTE_USE_FIXED),
                keeps: FigureId::ATTRIBUTE_STABILITY_FIXED,
                ..FaultState::SOUND
            },
        ),
        (
            Fault::FailingFilling,
            FaultState {
                value: Value::One(FigureId::VALUE_AFTER_FILL_FIX),
                serves: Some(FigureId::ATTRIBUTE_USE_FIXED),
                keeps: FigureId::ATTRIBUTE_STABILITY_FILL_FIXED,
                ..FaultState::SOUND
            },
        ),
    ],
};
