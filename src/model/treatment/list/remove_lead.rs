//! T10a: old lead solder taken out.

use super::{Dose, Price, Risk, State, Trade, Value, Work};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REMOVE_LEAD: Work = Work {
    treatment: Treatment::RemoveLead,
    answers: &[Fault::GreyRepair],
    idle: Some("No old grey repair is recorded."),
    trade: Trade::Remove,
    risk: Risk::Figures("T10a"),
    price: Price::Figure("cost.T10a"),
    dose: Dose::Figure("attribute.dose.T10a"),
    after: &[(
        Fault::GreyRepair,
        State {
            value: Value::One("value.after_repair"),
            keeps: "neat",
            ..State::SOUND
        },
    )],
};
