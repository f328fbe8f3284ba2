//! What could be done to a piece, and the hard rules about it.
//!
//! `guards` holds the rules the weighing asks; `beyond` those that only the page of all treatments
//! asks; `limits` the measured limits both rest on.

mod beyond;
mod circumstances;
mod fault;
mod guards;
pub mod limits;
mod list;
mod situation;
#[cfg(test)]
mod testing;

pub use crate::terms::{Reversibility, Treatment};
pub use beyond::{check_fully, process_c};
pub use fault::{Fault, Faults, Found, Size};
pub use list::{Dose, Price, Risk, Show, State, Trade, Value, Work, as_found, work};
pub use circumstances::{Circumstances, QUESTIONS};
pub use guards::{Outcome, Verdict, check, worst};
pub use situation::{LeadStatus, Situation};
