//! Wording on which input matters.

pub(crate) const INPUTS: &str = "Which input matters";

// Inputs and the names of their ends

pub(crate) const UNDAMAGED: &str = "What an undamaged one fetches";
pub(crate) const LUCK: &str = "Luck at the sale";
pub(crate) const COST: &str = "What the work costs";
pub(crate) const BLEED: &str = "How much base metal shows";
pub(crate) const FUSED: &str = "Fused plate with its own silver";
pub(crate) const LEAD: &str = "Lead";
pub(crate) const MISHAP: &str = "Work that goes wrong";
pub(crate) const LITTLE: &str = "little";
pub(crate) const MUCH: &str = "much";
pub(crate) const BAD: &str = "bad";
pub(crate) const GOOD: &str = "good";
pub(crate) const NO: &str = "no";
pub(crate) const YES: &str = "yes";
pub(crate) const NONE: &str = "none";
pub(crate) const PRESENT: &str = "present";

// The answer

pub(crate) const ONE_COURSE: &str =
    "There is only one course to choose, so no input can change the choice.";
pub(crate) const NONE_SEEN: &str =
    "None of the uncertain inputs visibly changes the lead of the advised course.";
pub(crate) const NONE_TURNS_IT: &str =
    "No single input drops the advised course below the next best";

pub(crate) fn turns_it(inputs: &str) -> String {
    format!("This alone can put the next best ahead: {inputs}")
}

pub(crate) const HOW_TO_READ: &str = "Each bar shows how far the advised course leads the next \
    best, from where the input is low (its lowest fifth) to where it is high (its highest fifth), \
    with everything else left uncertain. A copper bar crosses the line: there the next best would \
    win. A long bar that stays on one side marks an uncertainty that does not change the choice.";

// The picture

pub(crate) const LEVEL: &str = "level with the next best";

pub(crate) fn low_end(name: &str, lead: &str) -> String {
    format!("{name} {lead}")
}

pub(crate) fn high_end(name: &str, lead: &str) -> String {
    format!("{name} {lead}")
}

pub(crate) const DESCRIPTION: &str = "Horizontal bars, longest first, on both sides of a vertical \
    line that marks the next best course.";
pub(crate) const CAPTION: &str = "Lead of the advised course over the next best";
pub(crate) const COLUMNS: [&str; 4] = [
    "Input",
    "Where it is low",
    "Where it is high",
    "Crosses the next best",
];
