//! Learning from closed pieces: what they teach the figures, and how well the program has said.
//!
//! Data flows one way: closed cases → evidence → fit of each topic → taught figures, which a person may
//! have laid between the shipped figures and their own. Invariants: only money figures can be taught
//! ([`crate::record::TaughtFigures`] refuses the rest); without evidence nothing moves; the order of the
//! cases does not matter.

mod evidence;
mod fees;
mod freeze;
#[cfg(test)]
mod golden;
mod mishap;
mod score;
mod shift;
mod solver;
mod state;
pub mod student4;
mod taught;

pub use evidence::{
    Closing, NotCounted, Observed, PieceEvidence, Scatter, Topic, WorkResult, evidence,
};
pub use fees::taught_fees;
pub use freeze::freeze;
pub use mishap::{Cell, MishapCount, count_mishaps};
pub use score::{
    Alarm, Coverage, ScoredPrediction, TopicRecord, judge, more_went_wrong, outside_the_range,
    price, record_of,
};
pub use shift::Shift;
pub use solver::{Fit, FitSetup, Observation, Pull, ROUNDS, Tails, fit};
pub use state::{PricedPieces, PricedState};
pub use taught::{Learnt, PredictedLn, TaughtBy, Teaching, TurnedOn, in_percent, learn};
