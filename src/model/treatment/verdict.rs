//! The verdict of a rule on a treatment.

use crate::ledger::Ground;
use crate::terms::Outcome;

/// The verdict of one rule on a treatment in a situation.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// What it rests on.
    pub ground: Ground,
    /// The outcome.
    pub outcome: Outcome,
    /// Why, as a whole sentence.
    pub reason: String,
    /// What would lift it, as a whole sentence.
    pub lifted_by: String,
}

/// The most serious outcome in a list of verdicts; `Allowed` for an empty list.
#[must_use]
pub fn worst(verdicts: &[Verdict]) -> Outcome {
    verdicts
        .iter()
        .map(|v| v.outcome)
        .max()
        .unwrap_or(Outcome::Allowed)
}
