//! Figures: every figure the answer rests on, with room for one's own.

pub const TITLE: &str = "The figures behind the answer";
pub const PURPOSE: &str = "Every number somebody could dispute, with its range and its source. Put in your own where you know better.";

// One's own figures.

pub const SAVE: &str = "Save my figures as a file";
pub const GO_BACK: &str = "Go back to the figures as shipped";
pub const GO_BACK_MEANS: &str = "Every figure of your own goes from this piece. Save them as a file first if you may want them again.";
pub const GO_BACK_NOW: &str = "Take them all back";

// What new pieces begin with.

pub const BEGIN_WITH_MINE: &str = "Begin new pieces with mine";
pub const BEGIN_AS_SHIPPED: &str = "Begin them with the figures as shipped again";
pub const BEGINS_WITH_MINE: &str =
    "New pieces on this device begin with figures of yours, terms of selling among them.";
pub const BEGINS_AS_SHIPPED: &str = "New pieces on this device begin with the figures as shipped.";

/// The file to choose, and what comes of it.
pub const FILE: [&str; 2] = [
    "A file of figures",
    "It is laid over the figures of this piece; the file stays as it is.",
];
