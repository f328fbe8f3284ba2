//! Figures: every figure the answer rests on, which a person can replace.

pub const TITLE: &str = "The figures behind the answer";
pub const PURPOSE: &str = "Every number that is open to dispute, with its range and its source. Enter your own where you know better.";

// The person's figures.

pub const SAVE: &str = "Save my figures as a file";
pub const GO_BACK: &str = "Go back to Leavewell's figures";
pub const GO_BACK_MEANS: &str = "This removes every figure of yours from this piece. Save them as a file first if you may want them again.";
pub const GO_BACK_NOW: &str = "Remove all of mine";

// The figures of new pieces.

pub const BEGIN_WITH_MINE: &str = "Use my figures for new pieces";
pub const BEGIN_AS_SHIPPED: &str = "Use Leavewell's figures for new pieces again";
pub const BEGINS_WITH_MINE: &str =
    "New pieces on this device begin with your figures, including your terms of selling.";
pub const BEGINS_AS_SHIPPED: &str = "New pieces on this device begin with Leavewell's figures.";

/// The label and the hint of the file to choose.
pub const FILE: [&str; 2] = [
    "A file of figures",
    "Its figures replace those of this piece; the file itself does not change.",
];
