//! What is read out of the drawings of a piece, and the few words in them.

use crate::app::parts::words::joined;

/// A piece whose form is not known.
pub const PIECE: &str = "piece";

pub fn drawing_of(name: &str) -> String {
    joined(&["Drawing of a ", name, " from the side"])
}

/// The part that stands out, before what shows.
pub fn in_full_ink(part: &str) -> String {
    joined(&["In full ink: ", part, ". "])
}

pub const NO_BASE_METAL: &str = "No base metal is recorded as showing.";

pub fn striped(parts: &str) -> String {
    joined(&["Striped with copper where base metal shows: ", parts, "."])
}

// Heat laid over it.

pub const SIZE_ASSUMED: &str = ", size of the piece assumed";

pub fn all_over(at: &str) -> String {
    joined(&["May reach all of it: ", at])
}
