//! Wording of the page of figures.

use leavewell_model::ledger::SafeRange;

// Headings

pub(crate) const OWN: &str = "Your own figures";
pub(crate) const RESTS_ON: &str = "What this advice rests on";
pub(crate) const LOOKED_UP: &str = "The figures that this advice used";
pub(crate) const MADE: &str = "How the main numbers are worked out";
pub(crate) const NOT_LOOKED_UP: &str = "The figures that it did not use";

// Search

pub(crate) const FIND: &str = "Find a figure";
pub(crate) const FIND_HINT: &str = "A few letters of its subject, its source or its id.";

pub(crate) fn none_found(all: usize) -> String {
    format!(
        "None of the {all} figures contains these words. Try fewer letters, or clear the field to see all."
    )
}

pub(crate) fn found(count: usize, all: usize) -> String {
    format!("{count} of {all} figures. Clear the field to see all.")
}

pub(crate) const MORE: &str =
    "More figures contain these words. Add a word to find the one you want to change.";
pub(crate) const MORE_CAPTION: &str = "More figures found";
pub(crate) const FOUND: &str = "Found";

// The basis of the advice

pub(crate) const YOUR_OWN: &str = "Your own";

pub(crate) fn count_and_part(count: usize, part: &str) -> String {
    format!("{count}, {part}")
}

pub(crate) fn looked_up(all: usize, judged: usize) -> String {
    format!(
        "It used {all} figures; {judged} of them are judgement, practice, from memory or quoted from a \
         weaker source."
    )
}

pub(crate) const COUNTED_NOT_WEIGHED: &str = "This is a count, not a weighting: one figure may \
    matter more than fifty. In addition, how strongly each finding points to each kind is our \
    judgement throughout.";
pub(crate) const READ: &str = "A source says so";
pub(crate) const SECONDARY: &str = "Quoted in a weaker source";
pub(crate) const COMPUTED: &str = "Computed from other figures";
pub(crate) const JUDGEMENT: &str = "Our judgement";
pub(crate) const PRACTICE: &str = "Common practice";
pub(crate) const MEMORY: &str = "From memory, not yet checked";

// With and without the user's own figures

pub(crate) const WITH_ALL: &str = "With all of them";
pub(crate) const WITH_NONE: &str = "With none of them";

pub(crate) fn without(figure: &str) -> String {
    format!("Without {figure}")
}

pub(crate) const SAME: &str = "Without your figures the answer would be the same";
pub(crate) const OTHER: &str = "Without your figures the answer would be different";
pub(crate) const WITHOUT_CAPTION: &str = "The answer with and without";
pub(crate) const WITHOUT_COLUMNS: [&str; 3] = ["Figures", "Answer", "Firmness"];

// One figure with its fields

pub(crate) const AS_SHIPPED: &str = "As shipped";
pub(crate) const BAND: &str = "Band";
pub(crate) const KNOWN: &str = "How it is known";
pub(crate) const SOURCE: &str = "Source";
pub(crate) const ID: &str = "Id";
pub(crate) const SAFETY: &str = "Safety";

/// Which values are safe for a figure on which a rule of safety rests.
pub(crate) fn safe_values(safe: SafeRange) -> String {
    match (safe.least, safe.most) {
        (Some(least), Some(most)) if least < most => {
            format!(
                "A safety rule rests on this, so your value must lie between {least} and {most}."
            )
        }
        (Some(_), Some(_)) => "A safety rule rests on this, so it stays as it is.".to_owned(),
        (Some(least), None) => {
            format!("A safety limit: you may make it stricter, but never less than {least}.")
        }
        (None, most) => most.map_or_else(String::new, |most| {
            format!("A safety limit: you may make it stricter, but never more than {most}.")
        }),
    }
}

pub(crate) const OWN_VALUE: &str = "Your own value";
pub(crate) const OWN_VALUE_HINT: &str = "Clear it to go back to Leavewell's figure.";
pub(crate) const REASON: &str = "Your reason";
pub(crate) const REASON_HINT: &str = "Anyone who reads the sheet will see it.";
pub(crate) const REFUSED_HINT: &str =
    "Clear it to go back to Leavewell's figure, or give a reason with it.";

// Groups

pub(crate) const NONE: &str = "None.";

pub(crate) fn group(name: &str, count: usize) -> String {
    format!("{name}: {count}")
}

pub(crate) fn group_words(group: &str) -> String {
    match group {
        "attribute" => "What each course preserves besides money",
        "care" => "Keeping and care",
        "cost" => "Costs where no price is given",
        "counsel" => "When a difference counts, and how firmly to speak",
        "fee" => "Fees of selling",
        "food" => "Food contact",
        "guard" => "Limits of the hard rules",
        "hazard" => "How often work goes wrong, and what then",
        "heat" => "Heat",
        "identity" => "What it is",
        "lead" => "Lead",
        "look" => "The effort of each look",
        "measure" => "Measurements",
        "metal" => "Metals",
        "place" => "Parts of a piece",
        "plating" => "Plating",
        "silver" => "Silver: how thick, how worn, what a cleaning takes",
        "solder" => "Solders",
        "value" => "Value",
        "work" => "How long work takes",
        "words" => "Words for how likely a thing is",
        other => return other.replace('_', " "),
    }
    .to_owned()
}

// Tables of figures

pub(crate) const FIGURE_COLUMNS: [&str; 6] =
    ["Figure", "Value", "Band", "How it is known", "Source", "Id"];
pub(crate) const OWN_FIGURE: &str = "your own";
pub(crate) const NO_BAND: &str = "none given";

pub(crate) fn band(low: f64, high: f64) -> String {
    format!("{low} to {high}")
}

// Taught figures

pub(crate) const TAUGHT: &str = "Taught";
pub(crate) const TAUGHT_FIGURE: &str = "taught by your pieces";
