//! Words for an answer, for the wait before it, and for an answer that could not be worked out.

use crate::app::parts::words::joined;

// The live answer in one line. On the first screens it is the model's sentence about what the piece is.

pub fn silver_covers(share: &str) -> String {
    joined(&["Silver may still cover ", share, " of it."])
}

pub fn worth_as_it_is(worth: &str) -> String {
    joined(&["As it is: ", worth, "."])
}

// Shown while an answer is missing.

pub const HOW_FAR: &str = "Progress of the calculation";
pub const ON_ITS_WAY: &str = "Working it out\u{2026}";

pub fn not_worked_out(why: &str) -> String {
    joined(&[
        "We could not work out this part. Reload the page to try again; your record is safe. To report this, quote: ",
        why,
    ])
}
