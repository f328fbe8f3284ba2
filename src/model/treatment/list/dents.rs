//! T08: dents taken out.

use super::{Dose, FaultState, MishapRisk, Price, Show, Trade, Value, Work};
use crate::ledger::FigureId;
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const DENTS: Work = Work {
    treatment: Treatment::Dents,
    answers: &[Fault::Dents],
    idle: Some("No dents are recorded."),
    trade: Trade::Repair,
    risk: MishapRisk::ByClass,
    price: Price::Large2(FigureId::COST_T08_MINOR, FigureId::COST_T08_MODERATE),
    dose: Dose::BySize(
        FigureId::ATTRIBUTE_DOSE_T08_MINOR,
        FigureId::ATTRIBUTE_DOSE_T08_MODERATE,
    ),
    after: &[(
        Fault::Dents,
        FaultState {
            value: Value::Eased(FigureId::VALUE_AFTER_DENTS),
            show: Show::Eased(FigureId::VALUE_AFTER_DENTS),
            ..FaultState::SOUND
        },
    )],
};
