//! A reading of an instrument, compared with what each kind would give.

use crate::ledger::FindingId;
use crate::ledger::ReadingOf;
use crate::terms::ByLadderKind;

/// One reading, compared with the expected value for each kind.
#[derive(Clone, Debug, PartialEq)]
pub struct JudgedReading {
    /// What was read.
    pub of: ReadingOf,
    /// What it is, in a few words.
    pub title: &'static str,
    /// What was read and what it means, in words.
    pub text: String,
    /// How much worse each kind explains it than the best explanation that any kind could give, natural
    /// logarithm; >= 0, in the order of [`Kind::LADDER`](crate::terms::Kind::LADDER).
    pub(super) penalty: ByLadderKind,
    /// Findings of the ladder that the same reading would answer; they are not counted in addition.
    pub replaces: &'static [FindingId],
    /// Whether it is counted: some kind explains it, and the kinds differ.
    pub counts: bool,
}
