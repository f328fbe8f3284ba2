//! Counsel: the answer and everything it rests on. The words of each reader's opening are in `reader`.

use crate::app::parts::words::joined;

/// The accessible name of the picture.
pub const FOUND: &str = "What it is and what was found";

// The answer.

pub const REFER: &str = "Have a specialist see it before anything is done.";
pub const WHY: &str = "Why";
pub const DOUBTS: &str = "Why we are not surer";
pub const NOT_USED: &str = "Not used, because we could not read it";
pub const TO_THE_RECORD: &str = "Go back to the record";

// What could be done, side by side.

pub const OPTIONS: &str = "What could be done, side by side";
pub const OPTIONS_CAPTION: &str = "Each step by itself. Money is compared with leaving the piece as it is; 8 outcomes in 10 fall inside \
     each range. As good as any: in how many of 100 cases it does as well as any other option.";
pub const BY_ITSELF: &str = "Each step by itself.";
pub const IDLE: &str = "It would do nothing here";
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

/// Who may do it, from the catalogue's letter.
pub fn person(letter: &str) -> &str {
    match letter {
        "O" => "you",
        "S" => "a silversmith",
        "C" => "a conservator",
        "P" => "a plating works with a permit",
        "L" => "a laboratory",
        "-" => "nobody",
        other => other,
    }
}

// What would change the answer.

pub const CHANGES: &str = "What would change this";
pub const CHANGES_FAILED: &str = "We could not work out what would change this. Reload the page to try again; your record is safe.";
pub const CHANGES_WAIT: &str = "Looking for what would change this\u{2026}";
pub const CHANGES_NONE: &str =
    "We moved each of these far up and far down, one at a time. The answer stayed the same.";
pub const MOVE: &str = "Move one and see";
pub const MOVE_HINT: &str =
    "Each slider starts at the value now. Moving one changes nothing in the record.";
/// The spoken value of a slider that has not been moved.
pub const UNMOVED: &str = "as it is";

/// The value a slider starts at.
pub fn starts_at(at: &str) -> String {
    joined(&["Now ", at])
}

/// What the answer would be at a slider's value.
pub fn moved_to(at: &str, answer: &str) -> String {
    joined(&["At ", at, ": ", answer])
}

// What to look at next.

pub const LOOK_NEXT: &str = "What to look at next";
pub const NOTHING_LEFT: &str = "Nothing else you could look at would change what we say.";

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

/// The catalogue's word for no loss at all.
pub const NO_LOSS: &str = "Nothing";
pub const NOTHING_LOST: &str = "Nothing.";

pub fn with_advised(name: &str) -> String {
    joined(&["With the plan we advise: ", name])
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

/// Where another plan is as good as any more often than the one advised.
pub const MORE_OFTEN: &str = "Another plan is as good as any in more cases than the one we advise. Ours does \
     better on average, or nearly as well while it leaves you more choices later.";

// Every plan.

pub const PLANS: &str = "Every plan we weighed";
pub const PLANS_LABEL: &str = "Plans, best first";
pub const PLANS_CAPTION: &str = "Money is compared with leaving the piece as it is.";

pub fn plans_open(count: usize) -> String {
    count.to_string() + " we could advise, best first"
}

pub fn plans_closed(count: usize) -> String {
    count.to_string() + " we could not advise, and why"
}

pub const PLANS_HEAD: [&str; 7] = [
    "Plan",
    "Money",
    "As good as any in",
    "Leaves less money",
    "Originality kept",
    "Can it be undone",
    "Cost",
];

// The heading of a section that opens.

pub const TRACE: &str = "How we worked out these numbers, and from what";
