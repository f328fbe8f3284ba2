//! What closed pieces teach, and how close we came.

use crate::app::parts::words::joined;

pub const TITLE: &str = "What your pieces teach";
pub const PURPOSE: &str = "Most of our figures are judgement, because nobody publishes what work on old plate costs and what it adds. What happened to your pieces can adjust them to your trade.";

/// The link to the page, and its hint.
pub const LINK: &str = "What your pieces teach";
pub const LINK_HINT: &str = "How close we came, and figures adjusted to your trade.";

// What is turned on.

pub const USE: &str = "Use what they teach";
pub const USE_MEANS: &str = "Nothing is used until you turn it on. The setting is for this browser and changes no record. Your own figures come first, and the safety rules ignore it.";
pub const FOR_PRICES: [&str; 2] = [
    "For prices",
    "How much of a price poor condition or replating leaves, and how close your estimates come.",
];
pub const FOR_WORKS: [&str; 2] = [
    "For bills and hours",
    "What work costs and how long it takes.",
];
pub const AS_SHIPPED: &str = "Go back to our figures as shipped";
pub const HOLDS: &str = "Answers now use what your pieces teach.";
pub const HOLDS_NOT: &str = "Answers use our figures as shipped.";

// The invented pieces.

pub const SHOW_INVENTED: &str = "Show it with forty invented pieces";
pub const SHOW_OWN: &str = "Show my own pieces";

// The pieces.

pub const TEACH: &str = "What they say";
pub const PULLS: &str = "The pieces that count most";
pub const PULLS_MEANS: &str = "Check these first. Leave one out if it is not like the others, or was entered \
     wrongly; it stays on your shelf.";
pub const LEAVE_OUT: &str = "Leave it out";
pub const LEFT_OUT: &str = "Left out";
pub const TAKE_IN: &str = "Take it in again";

pub fn leave_out(name: &str) -> String {
    joined(&["Leave out ", name])
}

pub fn take_in(name: &str) -> String {
    joined(&["Take in again ", name])
}

pub const HOW_WELL: &str = "How close we came";
pub const WAITING: &str = "We are working it out.";

// Own sales as prices of like pieces.

pub const OWN_SALES: &str = "Pieces like it that you sold";
pub const OWN_SALES_HINT: &str = "Each counts as the sale of a similar piece in the condition it was in. A sale you use here is not counted twice.";
pub const USE_SALE: &str = "Use this sale";

pub fn use_sale_of(name: &str) -> String {
    joined(&["Use the sale of ", name])
}
