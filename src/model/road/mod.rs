//! The owner's road: one question at a time, each answered with one press, for an owner who has a piece in
//! hand and knows none of the trade's words.
//!
//! [`next()`] chooses the question, [`write()`] puts an answer into the record. The road itself keeps only the
//! questions asked so far ([`RoadWalk`]); every answer is in the record, in the fields of the long screens.
//! Invariants: a question that the record answers is never asked; no walk is longer than [`MOST_QUESTIONS`];
//! every walk reaches the questions about the aim and the work offered.

mod answer;
mod next;
mod question;
mod wording;

pub use answer::write;
pub use next::{
    FIRST_ANSWER_AFTER, MOST_QUESTIONS, RoadWalk, answer_in, left, next, says_how_bare,
};
pub use question::{BARE_METAL, Damage, LETTERS, OFFERS, RoadQuestion};

/// The answer of a user who cannot say.
pub const UNSURE: &str = "unsure";
/// The answer that there is nothing of the kind.
pub const NONE: &str = "none";
/// The answer that bare metal shows evenly all over.
pub const ALL_OVER: &str = "all_over";
