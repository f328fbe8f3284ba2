//! The verdict of a rule on a treatment.

use crate::terms::Outcome;

/// The verdict of one rule on a treatment in a situation.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// Rule id: `H01` to `H31`, or `needs` for a plain prerequisite.
    pub guard: &'static str,
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
