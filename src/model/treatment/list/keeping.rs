//! T01: better keeping.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const KEEPING: Work = Work {
    treatment: Treatment::Keeping,
    answers: &[Fault::Corrosion],
    idle: None,
    trade: Trade::Care,
    risk: MishapRisk::None,
    price: Price::Keeping(FigureId::COST_T01, FigureId::COST_T01_CORROSION),
    dose: Dose::None,
    after: &[(
        Fault::Corrosion,
        FaultState {
            keeps: FigureId::ATTRIBUTE_STABILITY_CORROSION_DRY,
            ..FaultState::SOUND
        },
    )],
};
