//! The shelf: start a piece, continue one, try a worked example or open a file.

use crate::app::parts::words::joined;

pub const TITLE: &str = "Old silver plate: work on it, or leave it well alone?";
pub const PURPOSE: &str = "Say what you see. You get an answer, how sure it is, and what each choice would do to the piece and its value.";

// Start a piece.

pub const START: &str = "Start a piece";
pub const NAME: &str = "What do you call it?";
pub const NAME_HINT: &str = "Any name you will recognise. You can leave it blank.";
pub const FORM: &str = "What is it?";

/// The hint, and the choice for no answer.
pub const FORM_CHOICE: [&str; 2] = [
    "The form decides which parts there are to look at.",
    "Not said yet",
];
pub const START_NOW: &str = "Start this piece";

// Your pieces.

pub const YOURS: &str = "Your pieces";
pub const NONE_YET: &str = "None yet. Pieces you start or open are kept here, on this device only.";
pub const UNNAMED: &str = "Unnamed piece";
pub const UNREADABLE: &str = "A record that cannot be read";
pub const NO_ANSWER: &str = "No answer yet.";

pub fn kept_as_it_is(why: &str) -> String {
    joined(&[why, " It is kept as it is; you can save it as a file."])
}

pub const OPEN: &str = "Open";
pub const SAVE: &str = "Save as a file";
pub const REMOVE: &str = "Remove";
pub const REMOVE_MEANS: &str =
    "It goes into the bin at the foot of this page, and stays there for 30 days.";
pub const REMOVE_NOW: &str = "Move to the bin";

/// The accessible name of a button: what it does, and to which piece.
pub fn button_for(words: &str, name: &str) -> String {
    joined(&[words, ": ", name])
}

// Worked examples.

pub const EXAMPLES: &str = "Worked examples";
pub const EXAMPLES_HINT: &str = "These pieces are invented. Opening one puts a copy on your shelf, which you can change as you like.";
pub const OPEN_COPY: &str = "Open a copy";

pub fn open_copy_of(title: &str) -> String {
    joined(&[OPEN_COPY, " of: ", title])
}

// Files.

pub const KEEPING: &str = "Files and safe keeping";
