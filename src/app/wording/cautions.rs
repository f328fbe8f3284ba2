//! Round the cautions, which are the model's.

pub const CAUTIONS: &str = "Cautions for what is named here";
pub const FOR_THE_REST: &str = "Cautions for what is never done here or not needed";
pub const WHY_DISPLAY_ONLY: &str = "Why it is not for food or drink";

// How serious a caution is.

pub const STOP: &str = "Stop and read";
pub const CARE: &str = "Take care";
pub const NOTE: &str = "Know this";
