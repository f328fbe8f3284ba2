//! T15: tinning inside.

use super::{Dose, Price, Risk, State, Trade, Value, Work};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const TINNING: Work = Work {
    treatment: Treatment::Tinning,
    answers: &[Fault::LiningGone],
    idle: Some("No lining is recorded as gone."),
    trade: Trade::Repair,
    risk: Risk::ByClass,
    price: Price::Figure("cost.T15"),
    dose: Dose::Figure("attribute.dose.T15"),
    after: &[(
        Fault::LiningGone,
        State {
            value: Value::One("value.after_tin"),
            ..State::SOUND
        },
    )],
};
