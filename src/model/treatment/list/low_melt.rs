//! T09b: a low-melt or glued repair.

use super::{Dose, Price, Risk, Show, State, Trade, Value, Work};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const LOW_MELT: Work = Work {
    treatment: Treatment::LowMelt,
    answers: &[Fault::Split, Fault::OpenJoint, Fault::LoosePart],
    idle: Some("No open joint or split is recorded."),
    trade: Trade::Repair,
    risk: Risk::Figures("T09"),
    price: Price::Joint("cost.T09b"),
    dose: Dose::Joint("attribute.dose.T09b"),
    after: &[
        (
            Fault::OpenJoint,
            State {
                value: Value::One("value.after_repair"),
                keeps: "neat",
                ..State::SOUND
            },
        ),
        (
            Fault::LoosePart,
            State {
                value: Value::One("value.after_repair"),
                keeps: "neat",
                ..State::SOUND
            },
        ),
        (
            Fault::Split,
            State {
                value: Value::One("value.after_split"),
                show: Show::Figure("attribute.show.split_mended"),
                serves: "attribute.use.split_mended",
                keeps: "split_mended",
            },
        ),
    ],
};
