//! T17: a test for lead.

use super::{Dose, MishapRisk, Price, Trade, Work};
use crate::ledger::FigureId;
use crate::treatment::Treatment;

/// What it answers, costs, takes and leaves.
pub(super) const TEST_LEAD: Work = Work {
    treatment: Treatment::TestLead,
    answers: &[],
    idle: Some("It has already been tested."),
    trade: Trade::Remove,
    risk: MishapRisk::None,
    price: Price::Figure(FigureId::COST_T17),
    dose: Dose::None,
    after: &[],
};
