//! T10b: an old filling taken out.

use super::{Dose, Price, Risk, State, Trade, Value, Work};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REMOVE_FILL: Work = Work {
    treatment: Treatment::RemoveFill,
    answers: &[Fault::FailingFilling],
    idle: Some("No filling is recorded that fails."),
    trade: Trade::Remove,
    risk: Risk::ByClass,
    price: Price::Figure("cost.T10b"),
    dose: Dose::Figure("attribute.dose.T10b"),
    after: &[(
        Fault::FailingFilling,
        State {
            value: Value::One("value.after_fill_out"),
            keeps: "fill_out",
            ..State::SOUND
        },
    )],
};
