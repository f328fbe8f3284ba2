//! T12: a pin, screw or glued fix.

use super::{Dose, Price, Risk, State, Trade, Value, Work};
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
    risk: Risk::ByClass,
    price: Price::Figure("cost.T12"),
    dose: Dose::Figure("attribute.dose.T12"),
    after: &[
        (
            Fault::LoosePart,
            State {
                value: Value::One("value.after_fix"),
                serves: "attribute.use.fixed",
                keeps: "fixed",
                ..State::SOUND
            },
        ),
        (
            Fault::CrackedMaterial,
            State {
                value: Value::One("value.after_fix"),
                serves: "attribute.use.fixed",
                keeps: "fixed",
                ..State::SOUND
            },
        ),
        (
            Fault::FailingFilling,
            State {
                value: Value::One("value.after_fill_fix"),
                serves: "attribute.use.fixed",
                keeps: "fill_fixed",
                ..State::SOUND
            },
        ),
    ],
};
