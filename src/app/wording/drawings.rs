//! Descriptions of the drawn piece for screen readers, and the few words in the drawing.

use crate::app::parts::words::joined;

/// The name of a piece of unknown form.
pub const PIECE: &str = "piece";

pub fn drawing_of(name: &str) -> String {
    joined(&["Drawing of a ", name, " from the side"])
}

/// The selected part. Words about base metal follow.
pub fn selected(part: &str) -> String {
    joined(&["Selected: ", part, ". "])
}

pub const NO_BASE_METAL: &str = "No base metal is recorded.";

pub fn striped(parts: &str) -> String {
    joined(&["Copper stripes show base metal on: ", parts, "."])
}

// The heat overlay.

pub const SIZE_ASSUMED: &str = ", size of the piece assumed";

pub fn all_over(at: &str) -> String {
    joined(&["All of it may reach ", at])
}
