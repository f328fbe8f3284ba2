//! T08: dents taken out.

use super::{Dose, Price, Risk, Show, State, Trade, Value, Work};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const DENTS: Work = Work {
    treatment: Treatment::Dents,
    answers: &[Fault::Dents],
    idle: Some("No dents are recorded."),
    trade: Trade::Repair,
    risk: Risk::ByClass,
    price: Price::Large2("cost.T08.minor", "cost.T08.moderate"),
    dose: Dose::BySize("attribute.dose.T08.minor", "attribute.dose.T08.moderate"),
    after: &[(
        Fault::Dents,
        State {
            value: Value::Eased("value.after_dents"),
            show: Show::Eased("value.after_dents"),
            ..State::SOUND
        },
    )],
};
