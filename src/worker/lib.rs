//! What the app asks of the program in its workers, and what that answers.
//!
//! The doors of the crate:
//! - [`ask`] holds the questions and the answers as types, shared by both sides and carried as postcard's bytes;
//! - [`keeper::Keeper`], which the app leaves out, answers them and keeps what it has solved, so that a record is
//!   solved once for its advice, its pages and its sheets.
//!
//! One question and its answer:
//!
//! ```
//! use leavewell_worker::ask::{Ask, Question, Reply, from_bytes, to_bytes};
//! use leavewell_worker::keeper::Keeper;
//!
//! let record = r#"{ "format": "leavewell-case", "version": 1, "piece": { "form": "teapot" } }"#;
//! let asked: Question = from_bytes(&to_bytes(&Question::from(Ask::Report)))?;
//! let reply = Keeper::default().answer(asked, record);
//! assert!(matches!(reply, Reply::Report(report) if report.problems.is_empty()));
//! # Ok::<(), String>(())
//! ```

pub mod ask;
#[cfg(feature = "keeper")]
pub mod keeper;
