//! The links beside the answers to what owners ask. The pages word the answers.

pub const KEEPING: &str = "How to keep it";
pub const FOOD: &str = "Food and tests";
pub const CHOICE: &str = "The choice in full";
pub const SIDE_BY_SIDE: &str = "Side by side";
pub const WORTH: &str = "How we get there";
pub const SAFETY: &str = "What to avoid";
pub const ASK: &str = "What to ask";

// With too little recorded.

pub const TOO_LITTLE: &str = "Too little is recorded to advise.";
pub const LOOK_FIRST: &str = "Look at these first";
pub const QUESTIONS: &str = "Answer a few short questions";
