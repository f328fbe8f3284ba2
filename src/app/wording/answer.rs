//! What stands where an answer is, is on its way, or could not be had.

use crate::app::parts::words::joined;

// The live answer in one line. On the first screens it is the model's own sentence of what the piece is.

pub fn silver_covers(share: &str) -> String {
    joined(&["Silver may still cover ", share, " of it."])
}

pub fn worth_as_it_is(worth: &str) -> String {
    joined(&["As it is: ", worth, "."])
}

// In the place of an answer.

pub const HOW_FAR: &str = "How far this page is worked out";
pub const ON_ITS_WAY: &str = "Working it out\u{2026}";

pub fn not_worked_out(why: &str) -> String {
    joined(&[
        "This part could not be worked out. Reload the page to try again; the record is safe. For a report: ",
        why,
    ])
}
