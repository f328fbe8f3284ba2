//! What a rule, or all rules together, say of a treatment.

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
    /// Every outcome, mildest first.
    pub const ALL: [Self; 5] = [
        Self::Allowed,
        Self::Conditional,
        Self::NeedsCheck,
        Self::NeedsOpinion,
        Self::Barred,
    ];

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

    /// The outcome with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|outcome| outcome.id() == id)
    }

    /// Whether a course that contains such a step can be advised.
    #[must_use]
    pub fn can_be_advised(self) -> bool {
        self <= Self::Conditional
    }
}
