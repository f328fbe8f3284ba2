//! Headings for the cautions. The model words the cautions themselves.

pub const CAUTIONS: &str = "Safety";
pub const FOR_THE_POSSIBLE: &str =
    "Safety: the work that could be done here, and what the piece may contain";
pub const FOR_THE_REST: &str = "Safety: treatments ruled out or not needed here";
pub const WHY_DISPLAY_ONLY: &str = "Why it is not for food or drink";

// How serious a caution is.

pub const STOP: &str = "Stop and read";
pub const CARE: &str = "Take care";
pub const NOTE: &str = "Note";
