//! What can be done to a piece, and the hard rules about it.
//!
//! `rules` is the rule book: [`check`] gives every caller the verdict of each rule on a treatment. `limits`
//! holds the measured limits behind the rules, `situation` their inputs, `lead` what is known about lead, and
//! `touched` the parts that a treatment works on.

mod answers;
mod fault;
mod lead;
pub mod limits;
mod list;
mod mercury;
mod rules;
mod situation;
#[cfg(test)]
mod testing;
mod touched;
mod verdict;

pub use crate::terms::Fault;
pub use crate::terms::Outcome;
pub use crate::terms::{Reversibility, Treatment};
pub use answers::{answer_to, answers_to};
pub use fault::{Faults, Found, Size};
pub use lead::{LeadStatus, Release, lead_anywhere, lead_for, release, release_of};
pub use list::{
    Dose, FaultState, MishapRisk, Price, Show, Trade, Value, Work, as_found, factors_in_play, work,
};
pub use mercury::{Mercury, mercury};
pub use rules::check;
pub(crate) use rules::first;
pub use situation::Situation;
pub use touched::touched;
pub use verdict::{Verdict, worst};
