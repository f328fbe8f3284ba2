//! The names of the screens: in the row of places and in the title of the page.

pub const SHELF: &str = "Shelf";
pub const PIECE: &str = "Piece";
pub const LOOK: &str = "Look";
pub const CONDITION: &str = "Condition";
pub const MONEY: &str = "Money";
pub const COUNSEL: &str = "Counsel";
pub const TREATMENTS: &str = "Treatments";
pub const CLOSER: &str = "Closer";
pub const BENCH: &str = "Bench";
pub const SHEET: &str = "Sheet";
pub const DONE: &str = "Work done";
pub const FIGURES: &str = "Figures";
