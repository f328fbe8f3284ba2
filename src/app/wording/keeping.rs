//! What is told of files and of what is kept on this device: what happened, and what to do.

use crate::app::parts::words::{count, joined};

// A file to open.

pub const FILE_NOT_READ: [&str; 2] = [
    "The file could not be read.",
    "Check that it is still where it was, then choose it again.",
];

/// What a file of figures brought.
pub fn figures_laid(figures: usize) -> String {
    joined(&[
        &count(figures, "figure is", "figures are"),
        " laid over those of this piece.",
    ])
}

pub const FIGURES_LAID_NEXT: &str =
    "Each stands below with its reason, where it can be changed or taken back.";

// A file to save.

pub const FILE_NOT_SAVED: [&str; 2] = [
    "The browser did not let the file be saved.",
    "Allow downloads for this page, then try again.",
];
pub const SHEET_NOT_WRITTEN: &str = "The sheet could not be written.";

pub fn sheet_not_written_next(why: &str) -> String {
    joined(&["Try again, or print it. For a report: ", why])
}

// What is kept.

pub const GONE: [&str; 2] = [
    "This piece is no longer on this device.",
    "It may have been removed in another tab. If you saved it as a file, open that.",
];
pub const FIGURES_NOT_KEPT: [&str; 2] = [
    "This browser keeps nothing for this page.",
    "Save the figures as a file instead.",
];

pub fn change_not_kept(name: &str, why: &str) -> String {
    joined(&["The last change to \"", name, "\" is not kept. ", why])
}

pub const CHANGE_NOT_KEPT_NEXT: &str = "Save it as a file now, so that nothing is lost.";

// The buttons of what is told.

pub const SAVE_RECORD: &str = "Save the record as a file";
pub const READ: &str = "I have read this";

// When nothing works any more.

pub fn stopped(why: &str) -> String {
    joined(&[
        "Something went wrong and Leavewell has stopped. What you typed is kept on this device. Reload the page to go \
         on. For a report: ",
        why,
    ])
}

pub const OTHER_ANSWER: &str = "the answer was to another question";
