//! The person's own proposal: its steps, and what they result in.

use crate::app::parts::words::joined;

pub const TITLE: &str = "Your own proposal";
pub const HINT: &str = "Put steps together as you or someone else would do them. We compare them with leaving the piece alone, at the prices you give.";
pub const ADD: &str = "Add a step";
pub const REMOVE: &str = "Remove this step";

pub fn step(number: usize) -> String {
    joined(&["Step ", &number.to_string()])
}

pub const TREATMENT: [&str; 3] = ["What is done", "", "Not chosen"];
pub const PARTS: [&str; 2] = [
    "On which parts",
    "If you tick none, it applies wherever there is something to do.",
];

/// The line of the box to open, with the parts that are ticked.
pub fn parts(ticked: &str) -> String {
    if ticked.is_empty() {
        "Parts: wherever it applies".to_owned()
    } else {
        joined(&["Parts: ", ticked])
    }
}

pub const PRICE: [&str; 2] = ["Price", "Leave it empty to use our estimate."];
pub const HOURS: [&str; 3] = ["Hours", "", "h"];
pub const WHO: [&str; 3] = ["Who does it", "", "Not said"];
pub const ASKED: [&str; 2] = [
    "Compare our advice with this proposal",
    "The answer above then deals with it first.",
];

pub const WEIGHED: &str = "The result";
pub const STEP_BY_STEP: &str = "What each step adds";
pub const NOT_SO: &str = "What rules it out";

/// What the proposal gains and costs.
pub fn result(name: &str, gain: &str, cost: &str) -> String {
    joined(&[
        name,
        ". ",
        gain,
        " compared with leaving it as it is. It costs ",
        cost,
        ".",
    ])
}

pub const ON_THE_SHEET: &str = "Show it on the client\u{2019}s sheet";
pub const NOTHING_LEFT: &str = "We cannot weigh any of it.";

/// A step that the owner agreed to.
pub const AGREED: [&str; 2] = [
    "The owner agreed to this step",
    "It appears on the condition and treatment record.",
];
