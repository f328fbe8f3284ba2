//! Wording of the record of work done, and of the page where it is entered.

// What was done

pub(crate) const UNNAMED: &str = "Something not named";
pub(crate) const UNNAMED_IN_SENTENCE: &str = "something not named";

/// The label while no material is chosen.
pub(crate) const NOT_SAID: &str = "Not said";

pub(crate) fn by(whom: &str) -> String {
    format!("by {whom}")
}

pub(crate) fn on_by(when: &str, whom: &str) -> String {
    format!("{when}, by {whom}")
}

pub(crate) fn in_brackets(when: &str) -> String {
    format!(" ({when})")
}

// As a record

pub(crate) const NOT_RECORDED: &str = "not recorded";
pub(crate) const DONE: &str = "Done";
pub(crate) const BY: &str = "By";
pub(crate) const ON: &str = "When";
pub(crate) const MATERIAL: &str = "Material, by class";
pub(crate) const ON_PARTS: &str = "On which parts";
pub(crate) const METHOD: &str = "Method, in the words of the person who did it";
pub(crate) const DEVIATIONS: &str = "Done differently from what was proposed";
pub(crate) const PARTS_KEPT: &str = "Parts taken off and kept";

/// Words of a person, shown as theirs.
pub(crate) fn quoted(text: &str) -> String {
    format!("“{text}”")
}

pub(crate) const BEFORE: &str = "Before";
pub(crate) const AFTER: &str = "After";

// The page

pub(crate) const WHAT_IT_IS: &str = "What was done, by whom, when, with which class of material, and how the piece was before and after. It stays in the record and appears on every sheet, so that a buyer learns of it.";
pub(crate) const EARLIER_WORK: &str = "Record what you know of earlier work too. The answer rests on what you see on the piece, so after work is recorded here, answer Look and Condition again.";

pub(crate) fn work(number: usize) -> String {
    format!("Work {number}")
}

pub(crate) const ADD_ANOTHER: &str = "Add another";

pub(crate) fn first_shown(most: usize) -> String {
    format!("Only the first {most} entries are shown; the rest stay in the record.")
}

pub(crate) const CAUTIONS: &str = "Safety for all work listed here";

// Its fields

pub(crate) const CHOOSE: &str = "Choose";
pub(crate) const WHAT: &str = "What was done";
pub(crate) const MATERIAL_FIELD: &str = "Material, by class";
pub(crate) const MATERIAL_HINT: &str = "Of what stays on the piece.";

pub(crate) fn none_of_the_choices(written: &str) -> String {
    format!(
        "The record says \"{written}\", which is not one of the choices. It is kept until you choose one."
    )
}

pub(crate) const BY_WHOM: &str = "By whom";
pub(crate) const WHEN: &str = "When";
pub(crate) const WHEN_HINT: &str = "Year-month-day, or as much of it as you know.";
pub(crate) const BEFORE_FIELD: &str = "How it was before";
pub(crate) const BEFORE_HINT: &str = "Where, how much, what was found.";
pub(crate) const AFTER_FIELD: &str = "How it is now";
pub(crate) const AFTER_HINT: &str = "What changed, what is gone, what to watch.";

// How it was done

pub(crate) const METHOD_FIELD: &str = "How it was done";
pub(crate) const METHOD_HINT: &str =
    "In the words of the person who did it. The sheets quote it word for word.";
pub(crate) const DEVIATIONS_HINT: &str = "What was left out or added, and why.";
pub(crate) const PARTS_KEPT_HINT: &str = "What was taken off, and where it is now.";

/// A work, for the middle of a sentence.
pub(crate) fn work_named(number: usize) -> String {
    format!("piece after work {number}")
}

// What it took

pub(crate) const BILL: &str = "The bill";
pub(crate) const HOURS: &str = "Hours of work";
pub(crate) const HOURS_UNIT: &str = "h";
pub(crate) const RESULT: &str = "How it went";
pub(crate) const RESULT_HINT: &str = "If you say nothing, it does not count as gone well.";
pub(crate) const WENT_WELL: &str = "It went well";
pub(crate) const WENT_WRONG: &str = "It went wrong";
pub(crate) const NOT_SURE: &str = "Not sure";
pub(crate) const BILL_NUMBER: &str = "Number of the bill";
pub(crate) const BILL_NUMBER_HINT: &str =
    "If one bill covers several jobs, give the same number and amount for each.";
