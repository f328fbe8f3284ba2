//! T14a: full replating.

use super::{Dose, Price, Risk, State, Trade, Work};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const REPLATE: Work = Work {
    treatment: Treatment::Replate,
    answers: &[Fault::BareMetal],
    idle: Some("Hardly any base metal shows."),
    trade: Trade::Plate,
    risk: Risk::Figures("T14a"),
    price: Price::Plating("cost.T14a"),
    dose: Dose::ByKind("T14a"),
    after: &[(Fault::Tarnish, State::SOUND)],
};
