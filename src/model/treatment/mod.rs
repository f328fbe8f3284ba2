//! What could be done to a piece, and the hard rules about it.
//!
//! `rules` is the rule book: [`check`] says what every rule says of a treatment, for every caller.
//! `limits` holds the measured limits the rules rest on, `situation` what they look at,
//! `lead` what is known of lead, `touched` which parts a treatment works on.

mod fault;
mod lead;
pub mod limits;
mod list;
mod rules;
mod situation;
#[cfg(test)]
mod testing;
mod touched;
mod verdict;

pub use crate::terms::{Reversibility, Treatment};
pub use fault::{Fault, Faults, Found, Size};
pub use lead::{LeadStatus, Release, lead_anywhere, lead_for, release};
pub use list::{Dose, FaultState, MishapRisk, Price, Show, Trade, Value, Work, as_found, work};
pub use rules::check;
pub use situation::Situation;
pub use touched::touched;
pub use verdict::{Outcome, Verdict, worst};
