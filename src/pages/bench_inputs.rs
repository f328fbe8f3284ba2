//! What the calculators of the bench share.

use leavewell_model::counsel::Solved;
use leavewell_model::ledger::Ledger;
use leavewell_model::record::{Case, Draft, Problem};

/// The inputs of a calculator.
pub(super) struct Bench<'a> {
    /// The record as typed, which holds the text of the fields.
    pub(super) draft: &'a Draft,
    /// The usable part of the record, which supplies defaults.
    pub(super) case: &'a Case,
    /// What the record's reader found wrong.
    pub(super) problems: &'a [Problem],
    /// The case solved.
    pub(super) solved: &'a Solved,
    /// The figures, with the user's own.
    pub(super) ledger: &'a Ledger,
}
