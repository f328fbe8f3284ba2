//! The places of a case: their names, for the navigation and the page title, and how complete each is.

use crate::app::parts::words::{count, joined};

pub const SHELF: &str = "Shelf";
pub const PLAN: &str = "Plan";
pub const LEARNING: &str = "What your pieces teach";
pub const GUIDE: &str = "How it works";
pub const BACK: &str = "Back to your pieces";
pub const PIECE: &str = "Piece";
pub const LOOK: &str = "Look";
pub const CONDITION: &str = "Condition";
pub const MONEY: &str = "Money";
pub const COUNSEL: &str = "Our advice";
pub const TREATMENTS: &str = "Treatments";
pub const CLOSER: &str = "Check the sums";
pub const BENCH: &str = "Workshop sums";
pub const SHEET: &str = "Sheet";
pub const DONE: &str = "Work done";
pub const FIGURES: &str = "Figures";

// The places that hold several screens.

pub const ADVICE: &str = "Advice";
pub const PAPERS: &str = "Papers";

// The navigation.

pub const PLACES: &str = "Places of this piece";
pub const WITHIN: &str = "Screens of this place";

// How complete each place is.

pub const NOT_BEGUN: &str = "not begun";
pub const NO_AIM: &str = "aim not said";
pub const NO_FORM: &str = "form not said";
pub const FORM_AND_AIM: &str = "form and aim said";
/// Beside the advice while too little is recorded to give any.
pub const NOT_YET: &str = "not yet";
pub const NOTHING_LOOKED_AT: &str = "nothing looked at";

pub fn answers(n: usize) -> String {
    count(n, "answer", "answers")
}

pub const NOTHING_DESCRIBED: &str = "nothing described";

pub fn parts_described(n: usize) -> String {
    count(n, "part described", "parts described")
}

pub const VALUE_GIVEN: &str = "value given";
pub const NO_VALUE_GIVEN: &str = "no value given";

pub fn with_quotes(value: &str, n: usize) -> String {
    joined(&[value, ", ", &count(n, "quote", "quotes")])
}
