//! What could be done to a piece, and the hard rules about it.
//!
//! `rules` is the rule book: [`check`] says what every rule says of a treatment, for every caller.
//! `limits` holds the measured limits the rules rest on, `situation` what they look at.

mod fault;
pub mod limits;
mod list;
mod rules;
mod situation;
#[cfg(test)]
mod testing;
mod verdict;

pub use crate::terms::{Reversibility, Treatment};
pub use fault::{Fault, Faults, Found, Size};
pub use list::{Dose, Price, Risk, Show, State, Trade, Value, Work, as_found, work};
pub use rules::check;
pub use situation::{LeadStatus, Situation};
pub use verdict::{Outcome, Verdict, worst};
