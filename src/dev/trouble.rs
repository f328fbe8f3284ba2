//! What went wrong and what to do about it: every failure here carries both.

use std::fmt;

/// A result whose failure says what to do next.
pub(crate) type Fallible<T> = Result<T, Trouble>;

/// A failure, as told to the person at the terminal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Trouble {
    what: String,
    cure: String,
}

impl Trouble {
    /// `what` happened, and the `cure` for it: a sentence each, without a full stop at the end of `what`.
    pub(crate) fn new(what: impl Into<String>, cure: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            cure: cure.into(),
        }
    }

    /// The same failure with a better cure, from a caller who knows one.
    pub(crate) fn cured_by(self, cure: impl Into<String>) -> Self {
        Self::new(self.what, cure)
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Stopped: {}.\n  What to do: {}", self.what, self.cure)
    }
}
