//! The plan: which pieces on the shelf to work on, within a budget of money and hours.

pub const TITLE: &str = "Which pieces are worth the work?";
pub const PURPOSE: &str = "Say how much money and how many hours you have. For every piece on the shelf, Leavewell chooses the work, or none, so that all of them together bring the most.";

/// The link to the plan, and its hint.
pub const LINK: &str = "Plan the work on all of them";
pub const LINK_HINT: &str = "Which pieces to work on with the money and the hours you have.";
