//! What the piece is: from findings to a posterior over kinds, a date window, contradictions, and
//! what to look at next.

mod build;
mod contradiction;
mod dates;
mod identified;
mod judged_reading;
mod measure;
mod next_look;
mod parting;
mod posterior;
mod suggest;
mod surety;
mod turn;

pub use crate::terms::{ByKind, ByLadderKind, Cluster, Family, Kind, Letter};
pub use build::{Build, Skin, likeliest};
pub use contradiction::{Contradiction, ReadingClash, contradictions, readings_that_clash};
pub use dates::{DateSpan, Dating};
pub(crate) use identified::Identified;
pub use identified::identify;
pub use judged_reading::JudgedReading;
pub use measure::readings;
pub use next_look::{ASKED_FIRST, InformationGain, information_gain};
pub use parting::{Parting, PartingLook, open_in_words, parting};
pub use posterior::{
    Edge, Evidence, FUSED_BODY, Interval, Ladder, Posterior, Push, interval_with, pushes,
};
pub use suggest::{Suggestion, suggested_findings};
pub use surety::{Carried, Surety};
pub use turn::Turn;
