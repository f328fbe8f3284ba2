//! The words of what several pieces count for.

pub(crate) const SHARES: &str = "What each piece counts for";
pub(crate) const SHARES_HINT: &str = "Each one's share of the whole value when undamaged, such as 60 and 40. Leave them blank if all count the same.";
