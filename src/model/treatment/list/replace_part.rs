//! T16: a new part for a lost one.

use super::{Dose, Price, Risk, Show, State, Trade, Value, Work};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REPLACE_PART: Work = Work {
    treatment: Treatment::ReplacePart,
    answers: &[Fault::PartLost],
    idle: Some("No part is recorded as lost."),
    trade: Trade::Repair,
    risk: Risk::ByClass,
    price: Price::BySize("cost.T16.minor", "cost.T16.major"),
    dose: Dose::BySize("attribute.dose.T16.minor", "attribute.dose.T16.major"),
    after: &[(
        Fault::PartLost,
        State {
            value: Value::NewPart,
            show: Show::Figure("attribute.show.part_new"),
            ..State::SOUND
        },
    )],
};
