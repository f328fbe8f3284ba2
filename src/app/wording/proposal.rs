//! The person's own proposal: its steps, and what they result in.

use crate::app::parts::words::joined;

pub const TITLE: &str = "Your own proposal";
pub const HINT: &str = "Put steps together as you or someone else would do them. They are weighed against leaving the piece alone, with the prices you give.";
pub const ADD: &str = "Add a step";
pub const REMOVE: &str = "Remove this step";

pub fn step(number: usize) -> String {
    joined(&["Step ", &number.to_string()])
}

pub const TREATMENT: [&str; 3] = ["What is done", "", "Not chosen"];
pub const PARTS: [&str; 2] = [
    "On which parts",
    "None ticked: wherever it has something to do.",
];

/// The line of the box to open, with the parts that are ticked.
pub fn parts(ticked: &str) -> String {
    if ticked.is_empty() {
        "Parts: all it concerns".to_owned()
    } else {
        joined(&["Parts: ", ticked])
    }
}

pub const PRICE: [&str; 2] = ["Price", "Empty: our estimate is taken."];
pub const HOURS: [&str; 3] = ["Hours", "", "h"];
pub const WHO: [&str; 3] = ["Who does it", "", "Not said"];
pub const ASKED: [&str; 2] = [
    "Hold the advice against this proposal",
    "The answer above then speaks of it first.",
];

pub const WEIGHED: &str = "The result";
pub const STEP_BY_STEP: &str = "What each step adds";
pub const NOT_SO: &str = "What rules it out";
pub const COSTS: &str = "Costs ";
pub const AGAINST_LEAVING: &str = "against leaving it as it is";
pub const ON_THE_SHEET: &str = "Show it on the client\u{2019}s sheet";
pub const NOTHING_LEFT: &str = "Nothing of it can be weighed.";

/// A step that the owner agreed to.
pub const AGREED: [&str; 2] = [
    "The owner agreed to this step",
    "It stands on the condition and treatment record.",
];
