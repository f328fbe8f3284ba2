//! Messages about files and about what this device stores: what happened, and what to do.

use crate::app::parts::words::{count, joined};

// A file to open.

pub const FILE_NOT_READ: [&str; 2] = [
    "The file could not be read.",
    "Check that it is still where it was, then choose it again.",
];

/// How many figures a file added to the piece.
pub fn figures_added(figures: usize) -> String {
    joined(&[
        &count(figures, "figure was", "figures were"),
        " added to this piece.",
    ])
}

pub const FIGURES_ADDED_NEXT: &str =
    "Each is listed below with its reason; you can change or remove it there.";

// A file to save.

pub const FILE_NOT_SAVED: [&str; 2] = [
    "The browser did not allow the file to be saved.",
    "Allow downloads for this page, then try again.",
];
pub const SHEET_NOT_WRITTEN: &str = "The sheet could not be made.";

pub fn sheet_not_written_next(why: &str) -> String {
    joined(&["Try again, or print it. To report this, quote: ", why])
}

// What this device stores.

pub const GONE: [&str; 2] = [
    "This piece is no longer on this device.",
    "It may have been removed in another tab. If you saved it as a file, open that.",
];
pub const FIGURES_NOT_KEPT: [&str; 2] = [
    "This browser stores nothing for this page.",
    "Save the figures as a file instead.",
];

pub fn change_not_kept(name: &str, why: &str) -> String {
    joined(&["The last change to \"", name, "\" was not saved. ", why])
}

pub const CHANGE_NOT_KEPT_NEXT: &str = "Save it as a file now, so that nothing is lost.";

// The buttons of the messages.

pub const SAVE_RECORD: &str = "Save the record as a file";
pub const READ: &str = "I have read this";

// When the program has stopped.

pub fn stopped(why: &str) -> String {
    joined(&[
        "Something went wrong and Leavewell has stopped. What you typed is kept on this device. Reload the page to go \
         on. To report this, quote: ",
        why,
    ])
}

pub const OTHER_ANSWER: &str = "the answer was to another question";
