//! Wording of the proposal on a sheet.

pub(crate) const PROPOSED: &str = "The work proposed";
pub(crate) const COLUMNS: [&str; 5] = ["Step", "On", "Price", "Hours", "Who does it"];
pub(crate) const STEPS: &str = "Steps as proposed";
pub(crate) const EVERY_PART: &str = "every part it concerns";
pub(crate) const OUR_ESTIMATE: &str = "no price given";
pub(crate) const NOT_SAID: &str = "not said";
pub(crate) const THE_OWNER: &str = "the owner";
pub(crate) const A_WORKSHOP: &str = "a workshop";

pub(crate) fn fixed(price: &str) -> String {
    format!("{price}, fixed")
}

pub(crate) fn range(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

pub(crate) fn with_note(name: &str, note: &str) -> String {
    format!("{name} ({note})")
}

pub(crate) fn agreed(name: &str) -> String {
    format!("{name}, agreed")
}

// What it comes to

pub(crate) const NOTHING_LEFT: &str =
    "No step of this proposal can be done as it is; the reasons follow.";
pub(crate) const WEIGHED: &str = "Weighed together";
pub(crate) const COST: &str = "Cost";
pub(crate) const COMPARED: &str = "Money, compared with leaving it as it is";
pub(crate) const KEPT: &str = "Original material kept";
pub(crate) const LOST: &str = "Lost for good";

pub(crate) fn on_average(sum: &str) -> String {
    format!("{sum} on average")
}

pub(crate) const PROBLEMS: &str = "What stops a step, or has to come first:";
