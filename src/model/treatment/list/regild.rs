//! T15b: gilding renewed.

use super::{Dose, Price, Risk, State, Trade, Value, Work};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REGILD: Work = Work {
    treatment: Treatment::Regild,
    answers: &[Fault::GildingGone],
    idle: Some("No gilding inside is recorded as worn or gone."),
    trade: Trade::Plate,
    risk: Risk::ByClass,
    price: Price::Figure("cost.T15b"),
    dose: Dose::Figure("attribute.dose.T15b"),
    after: &[(
        Fault::GildingGone,
        State {
            value: Value::One("value.after_gilding"),
            ..State::SOUND
        },
    )],
};
