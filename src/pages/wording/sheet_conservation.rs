//! Wording of the condition and treatment record.

// Headings

pub(crate) const TITLE: &str = "Condition and treatment record";
pub(crate) const IDENTIFICATION: &str = "Identification";
pub(crate) const CONDITION: &str = "Condition, part by part";
pub(crate) const CONSENT: &str = "Consent, step by step";
pub(crate) const TREATMENT: &str = "Treatment as it was done";
pub(crate) const NEXT_LOOK: &str = "The next look";
pub(crate) const WRITTEN: &str = "Written by, for whom, when";

// Identification

pub(crate) const NOT_RECORDED: &str = "not recorded";
pub(crate) const FORM: &str = "Object";
pub(crate) const NUMBER: &str = "Number or mark it is known by";
pub(crate) const WHAT_IT_IS: &str = "What it is";
pub(crate) const SIZE: &str = "Size and weight";
pub(crate) const HEIGHT: &str = "height";
pub(crate) const LENGTH: &str = "length";
pub(crate) const WIDTH: &str = "width";
pub(crate) const WEIGHT: &str = "weight";

pub(crate) fn not_measured(measured: &str, rest: &str) -> String {
    [measured, " Not measured: ", rest, "."]
        .concat()
        .trim_start()
        .to_owned()
}

pub(crate) const MARKS: &str = "Marks as transcribed";
pub(crate) const NO_MARKS: &str = "none transcribed";
pub(crate) const DESCRIPTION: &str = "Description";
pub(crate) const KEPT_AT: &str = "Kept at";
pub(crate) const LOOKED_ON: &str = "Looked at on";
pub(crate) const REASON: &str = "Reason";
pub(crate) const HOW: &str = "Light and aids";

// Condition

pub(crate) const NO_PART: &str = "The condition of no part is recorded.";
pub(crate) const PLACED: &str = "Shown at a place:";
pub(crate) const SEVERAL: &str = "A number in brackets says how many there are at that place. Several of a \
    kind add to the cost of the work; what they take off the value is counted once, at the worst.";

pub(crate) fn not_looked_at(parts: &str) -> String {
    ["Not looked at: ", parts, "."].concat()
}

// Consent

pub(crate) const CONSENT_MEANS: &str = "Tick one box beside each step and sign it. A step that is not \
    ticked is not agreed to. Anyone who works on it asks again before going beyond these steps.";
pub(crate) const EACH_STEP: &str = "Each step";
pub(crate) const CONSENT_COLUMNS: [&str; 4] =
    ["Step", "Agreed", "Not agreed", "Signature and date"];
/// A box to tick with a pen.
pub(crate) const BOX: &str = "□";
pub(crate) const ON_RECORD: &str = "□ (recorded as agreed)";
pub(crate) const OWNER: &str = "Owner or the owner's agent, name and date";
pub(crate) const WHO_TREATS: &str = "Who does the work, name and date";

pub(crate) fn step(name: &str, parts: &str, note: &str) -> String {
    let parts = if parts.is_empty() {
        String::new()
    } else {
        [": ", parts].concat()
    };
    let note = if note.is_empty() {
        String::new()
    } else {
        [" (", note, ")"].concat()
    };
    [name, &parts, &note].concat()
}

pub(crate) fn numbered(number: usize, step: &str) -> String {
    [&number.to_string(), ". ", step].concat()
}

// Treatment

pub(crate) const NOTHING_DONE: &str = "No work is recorded yet.";

// The next look

pub(crate) const NO_NEXT_LOOK: &str = "No day is set for the next look.";

pub(crate) fn next_on(day: &str) -> String {
    ["To be looked at again on ", day, "."].concat()
}

pub(crate) const LOOK_AT: &str = "What to look at then:";

pub(crate) fn corrosion(parts: &str) -> String {
    ["Whether the corrosion goes on: ", parts, "."].concat()
}

pub(crate) fn opens(parts: &str) -> String {
    ["Whether joints and splits open further: ", parts, "."].concat()
}

pub(crate) fn filling(parts: &str) -> String {
    ["Whether the filling moves or swells further: ", parts, "."].concat()
}

pub(crate) fn unseen(parts: &str) -> String {
    ["The parts not looked at so far: ", parts, "."].concat()
}

pub(crate) fn to_be_surer(look: &str) -> String {
    ["To be surer of what it is: ", look, "."].concat()
}

// Written by

pub(crate) const WRITTEN_BY: &str = "Written by";
pub(crate) const WRITTEN_FOR: &str = "For";
pub(crate) const SIGNED: &str = "Signature and date";
