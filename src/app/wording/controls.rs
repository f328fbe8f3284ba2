//! What every screen's controls say: answers to choose, the live answer, a stand-in.

use crate::app::parts::words::joined;

// A question to be answered yes or no.

pub const YES: &str = "Yes";
pub const NO: &str = "No";
pub const NOT_SURE: &str = "Not sure";

// The live answer.

pub const SO_FAR: &str = "The answer so far";
pub const SHOW_MORE: &str = "Show more";
pub const SHOW_LESS: &str = "Show less";

// A field that takes something where it is left empty.

pub fn stands_in(unit: &str, stand_in: &str) -> String {
    joined(&[unit, " (", stand_in, " if left empty)"])
}
