//! How firmly advice stands.

/// How firmly the advice stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Firmness {
    /// Too much is open for the advice to be more than a guess.
    Open,
    /// It leans one way.
    Leaning,
    /// Nothing that may still come out is likely to change it.
    Clear,
}

impl Firmness {
    const ALL: [Self; 3] = [Self::Open, Self::Leaning, Self::Clear];

    /// The id, which is also its word on screens.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Leaning => "leaning",
            Self::Clear => "clear",
        }
    }

    /// The firmness with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|firmness| firmness.id() == id)
    }
}
