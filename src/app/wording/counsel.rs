//! Counsel: the answer and everything it rests on. What stands in the openings is in `reader`.

use crate::app::parts::words::joined;

pub const TITLE: &str = "Counsel";
pub const PURPOSE: &str = "What we would do, how sure that is, and why. You decide.";
/// The column beside the answer, as it is read out.
pub const BESIDE: &str =
    "What could change the answer, what to look at next, and what is gone for good";

/// Over the ways to what stands further down, where the screen is narrow.
pub const FURTHER_DOWN: &str = "Further down";

// The answer.

pub const REFER: &str = "Let a specialist see it before anything is done.";
pub const WHY: &str = "Why";
pub const MORE_REASONS: &str = "More reasons";
pub const DOUBTS: &str = "What keeps it from being firmer";
pub const NOT_USED: &str = "Not used, because it could not be read";
pub const TO_THE_RECORD: &str = "Go back to the record";

// What could be done, side by side.

pub const OPTIONS: &str = "What could be done, side by side";
pub const OPTIONS_CAPTION: &str = "Each step by itself. Money is against leaving the piece as it is; 8 outcomes in 10 fall inside a \
     range. Unbeaten: of 100 ways things may be, so many in which nothing else does noticeably better.";
pub const BY_ITSELF: &str = "Each step by itself.";
pub const IDLE: &str = "Nothing for it to do here";
pub const NEVER: &str = "Never, for pieces of this sort";
pub const OPTIONS_HEAD: [&str; 5] = [
    "Option",
    "What we say",
    "Money",
    "Kept and undone",
    "Cost, and who",
];
pub const LIFTS: &str = "What would lift this: ";

pub const NO_MONEY: &str = "not weighed by itself";
pub const NO_CHANGE: &str = "No change";
pub const KEEPS_ALL: &str = "Keeps all that is original";
pub const KEEPS_NOTHING: &str = "Keeps nothing original";

pub fn keeps(share: &str) -> String {
    joined(&["Keeps ", share, " of what is original"])
}

pub const COSTS_NOTHING: &str = "Costs nothing";
pub const QUOTED: &str = " (your quote)";
pub const ESTIMATED: &str = " (our estimate)";

/// Who may do it, by the letter of the catalogue.
pub fn person(letter: &str) -> &str {
    match letter {
        "O" => "you yourself",
        "S" => "a silversmith",
        "C" => "a conservator",
        "P" => "a plating works with a permit",
        "L" => "a laboratory",
        "-" => "nobody",
        other => other,
    }
}

pub fn or(others: &str, last: &str) -> String {
    joined(&[others, " or ", last])
}

// What would change the answer.

pub const CHANGES: &str = "What would change this";
pub const CHANGES_FAILED: &str = "What would change this could not be worked out. Reload the page to try again; the record is safe.";
pub const CHANGES_WAIT: &str = "Looking for what would change this\u{2026}";
pub const CHANGES_NONE: &str =
    "Each of these was moved far up and far down by itself. The answer stayed the same.";
pub const MOVE: &str = "Move one and see";
pub const MOVE_HINT: &str =
    "Each stands where it is now. What you move here changes nothing in the record.";
/// A slider nobody has moved, as it is read out.
pub const UNMOVED: &str = "as it is";

/// What the answer would be where a slider stands.
pub fn moved_to(at: &str, answer: &str) -> String {
    joined(&["At ", at, ": ", answer])
}

// What to look at next.

pub const LOOK_NEXT: &str = "What to look at next";
pub const NOTHING_LEFT: &str = "Nothing left to look at that you can see by eye.";

pub fn needs(needs: &str, worth: &str) -> String {
    joined(&["You need: ", needs, ". ", worth])
}

pub fn worth_knowing(worth: &str) -> String {
    joined(&["Knowing it is worth about ", worth, " to this decision."])
}

pub const TELLS_MORE: &str = "It tells you more about the piece than it changes the answer.";
pub const TO_LOOK: &str = "Go to Look";

// What is gone for good.

pub const LOST: &str = "What is gone for good";

/// Nothing at all, as the catalogue says it.
pub const NO_LOSS: &str = "Nothing";
pub const NOTHING_LOST: &str = "Nothing.";

pub fn with_advised(name: &str) -> String {
    joined(&["With the plan advised: ", name])
}

pub fn with_contrast(name: &str) -> String {
    joined(&["With ", name])
}

pub const QUESTION: &str = "A question to ask whoever would do it";

// The plans in pictures.

pub const PICTURES: &str = "The plans in pictures";

pub fn what_a_plan_is(value: &str) -> String {
    joined(&["A plan is one step or a few, in order. ", value])
}

// Every plan.

pub const PLANS: &str = "Every plan we weighed";
pub const PLANS_LABEL: &str = "Plans, best first";
pub const PLANS_CAPTION: &str = "Money is against leaving the piece as it is.";

pub fn plans_open(count: usize) -> String {
    count.to_string() + " that could be advised, best first"
}

pub fn plans_closed(count: usize) -> String {
    count.to_string() + " that cannot, and why"
}

pub const PLANS_HEAD: [&str; 7] = [
    "Plan",
    "Money",
    "How often unbeaten",
    "Leaves less money",
    "Originality kept",
    "Can it be undone",
    "Cost",
];

// Behind a line that opens.

pub const TRACE: &str = "How these numbers are made, and from what";
