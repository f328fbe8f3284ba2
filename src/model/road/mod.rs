//! The owner's road: one question at a time, each answered with one press, for a person who has a piece in
//! hand and knows none of the trade's words.
//!
//! [`next`] chooses the question, [`write()`] puts an answer into the record. The road keeps nothing but
//! which questions it has put ([`RoadWalk`]): every answer stands in the record, in the fields of the long
//! screens. Invariants: a question that the record answers is never put; no walk is longer than
//! [`MOST_QUESTIONS`]; what the piece is for and what was offered are always reached.

mod answer;
mod next;
mod question;

pub use answer::write;
pub use next::{FIRST_ANSWER_AFTER, MOST_QUESTIONS, RoadWalk, answer_in, left, next};
pub use question::{BARE_METAL, Damage, LETTERS, OFFERS, RoadQuestion, SHADES};

/// The answer of a person who cannot say.
pub const UNSURE: &str = "unsure";
/// The answer that nothing of the kind is there.
pub const NONE: &str = "none";
/// The answer that bare metal shows everywhere alike.
pub const ALL_OVER: &str = "all_over";
