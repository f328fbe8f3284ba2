//! T09: a solder repair.

use super::{Dose, FaultState, MishapRisk, Price, Show, Trade, Value, Work, mishaps};
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
    after: &[
        (
            Fault::OpenJoint,
            FaultState {
                value: Value::One(FigureId::VALUE_AFTER_REPAIR),
                keeps: FigureId::ATTRIBUTE_STABILITY_NEAT,
                ..FaultState::SOUND
            },
        ),
        (
            Fault::LoosePart,
            FaultState {
                value: Value::One(FigureId::VALUE_AFTER_REPAIR),
                keeps: FigureId::ATTRIBUTE_STABILITY_NEAT,
                ..FaultState::SOUND
            },
        ),
        (
            Fault::Split,
            FaultState {
                value: Value::One(FigureId::VALUE_AFTER_SPLIT),
                show: Show::Figure(FigureId::ATTRIBUTE_SHOW_SPLIT_MENDED),
                serves: Some(FigureId::ATTRIBUTE_USE_SPLIT_MENDED),
                keeps: FigureId::ATTRIBUTE_STABILITY_SPLIT_MENDED,
            },
        ),
    ],
};
