//! The verdict of a rule on a treatment.

/// The outcome of a rule, mildest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// No objection.
    Allowed,
    /// It can be advised, with conditions.
    Conditional,
    /// A named check comes first.
    NeedsCheck,
    /// A conservator's written opinion comes first.
    NeedsOpinion,
    /// It is ruled out.
    Barred,
}

impl Outcome {
    /// The id used in files.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Allowed => "allowed",
            Self::Conditional => "conditional",
            Self::NeedsCheck => "needs_check",
            Self::NeedsOpinion => "needs_opinion",
            Self::Barred => "barred",
        }
    }

    /// Whether a course that contains such a step can be advised.
    #[must_use]
    pub fn can_be_advised(self) -> bool {
        self <= Self::Conditional
    }
}

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
