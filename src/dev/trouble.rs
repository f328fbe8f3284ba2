//! The error type of the commands. Every error says what went wrong and what to do about it.

use std::fmt;

/// A result whose error says what to do next.
pub(crate) type Fallible<T> = Result<T, Trouble>;

/// An error, printed for the person at the terminal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Trouble {
    what: String,
    cure: String,
}

impl Trouble {
    /// An error from `what` went wrong (no full stop at the end) and its `cure` (a full sentence).
    pub(crate) fn new(what: impl Into<String>, cure: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            cure: cure.into(),
        }
    }

    /// The same error with a better cure, for a caller that knows one.
    pub(crate) fn cured_by(self, cure: impl Into<String>) -> Self {
        Self::new(self.what, cure)
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Stopped: {}.\n  What to do: {}", self.what, self.cure)
    }
}
