//! What the app asks of the program in its workers, and what that answers.
//!
//! [`ask`] holds the questions and the answers as types, shared by both sides and carried as postcard's bytes.
//! `keeper`, which the app leaves out, answers them and keeps what it has solved.

pub mod ask;
#[cfg(feature = "keeper")]
pub mod keeper;
