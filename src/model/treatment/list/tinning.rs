//! T15: tinning inside.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Value, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const TINNING: Work = Work {
    treatment: Treatment::Tinning,
    answers: &[Fault::LiningGone],
    idle: Some("No worn or missing lining is recorded."),
    trade: Trade::Repair,
    risk: MishapRisk::ByClass,
    price: Price::Figure(FigureId::COST_T15),
    dose: Dose::Figure(FigureId::ATTRIBUTE_DOSE_T15),
    after: &[(
        Fault::LiningGone,
        FaultState {
            value: Value::One(FigureId::VALUE_AFTER_TIN),
            ..FaultState::SOUND
        },
    )],
};
