//! Words of the controls that every screen uses: answers to choose, the live answer, default values.

use crate::app::parts::words::joined;

// A yes-or-no question.

pub const YES: &str = "Yes";
pub const NO: &str = "No";
pub const NOT_SURE: &str = "Not sure";

// The live answer.

pub const SO_FAR: &str = "The answer so far";
pub const SHOW_MORE: &str = "Show more";
pub const SHOW_LESS: &str = "Show less";

// A field with a default value.

pub fn unit_with_default(unit: &str, default: &str) -> String {
    joined(&[unit, " (", default, " if left empty)"])
}
