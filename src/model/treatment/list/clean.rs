//! T03: gentle cleaning.

use super::{Dose, FaultState, MishapRisk, Price, Trade, Work, mishaps};
use crate::treatment::{Fault, Treatment};

/// What it answers, costs, takes and leaves.
pub(super) const CLEAN: Work = Work {
    treatment: Treatment::Clean,
    answers: &[Fault::Tarnish],
    idle: Some("No tarnish is recorded."),
    trade: Trade::Care,
    risk: MishapRisk::Figures(mishaps("hazard.T03.")),
    price: Price::Cleaning,
    dose: Dose::Cleaning,
    after: &[(Fault::Tarnish, FaultState::SOUND)],
};
