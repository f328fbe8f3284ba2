//! The inputs of an answer that can be moved alone.

/// An input that can be moved alone to see the effect.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// The undamaged value.
    Value,
    /// The cost of all work.
    Cost,
    /// The bare share of every part.
    Bleed,
    /// The odds of fused plate with its original surface.
    Fused,
}

impl Input {
    /// Every input, in the order shown.
    pub const ALL: [Self; 4] = [Self::Value, Self::Cost, Self::Bleed, Self::Fused];

    /// Its id in the report.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Value => "value",
            Self::Cost => "cost",
            Self::Bleed => "bleed",
            Self::Fused => "fused",
        }
    }

    /// The input with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|input| input.id() == id)
    }

    /// Whether it is an amount of money.
    #[must_use]
    pub fn is_money(self) -> bool {
        matches!(self, Self::Value | Self::Cost)
    }
}
