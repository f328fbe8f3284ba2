//! T15b: gilding renewed.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Value, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REGILD: Work = Work {
    treatment: Treatment::Regild,
    answers: &[Fault::GildingGone],
    idle: Some("No gilding inside is recorded as worn or gone."),
    trade: Trade::Plate,
    risk: MishapRisk::ByClass,
    price: Price::Figure(FigureId::COST_T15B),
    dose: Dose::Figure(FigureId::ATTRIBUTE_DOSE_T15B),
    after: &[(
        Fault::GildingGone,
        FaultState {
            value: Value::One(FigureId::VALUE_AFTER_GILDING),
            ..FaultState::SOUND
        },
    )],
};
