//! What could be done to a piece, and the hard rules about it.

mod catalogue;
mod guards;
mod situation;

pub use catalogue::{Reversibility, Treatment};
pub use guards::{Outcome, Verdict, check, worst};
pub use situation::{LeadStatus, Situation};
