//! The plan: which pieces of the shelf to work on, within money and hours.

pub const TITLE: &str = "Which pieces are worth the work?";
pub const PURPOSE: &str = "Say how much money and how many hours there are. Leavewell chooses for every piece \
     on the shelf what to do, or to leave it, so that all of it together brings most.";
pub const BACK: &str = "Back to the shelf";

/// The link to it, and what it leads to.
pub const LINK: &str = "Plan the work on all of them";
pub const LINK_HINT: &str = "Which pieces to work on, with so much money and so many hours.";
