//! The words of what several pieces count for.

pub(crate) const SHARES: &str = "What each piece counts for";
pub(crate) const SHARES_HINT: &str = "What each is worth of the whole when undamaged, such as 60 and 40. Leave blank what counts the same.";
