//! The frame of every screen: page title, header, undo and footer.

use crate::app::parts::words::joined;

pub const NAME: &str = "Leavewell";

// The title of the page.

pub fn title(screen: &str) -> String {
    joined(&[screen, " · ", NAME])
}

pub fn title_with(screen: &str, piece: &str) -> String {
    joined(&[screen, " · ", piece, " · ", NAME])
}

// The head.

pub const SKIP: &str = "Skip to the content";
pub const APPEARANCE: &str = "Appearance";
pub const AS_THE_SYSTEM: &str = "Same as the system";
pub const LIGHT: &str = "Light";
pub const DARK: &str = "Dark";

// Undo and redo.

pub const UNDO: &str = "Undo";
pub const REDO: &str = "Redo";
/// Before the field that an undo or a redo changed.
pub const UNDONE: &str = "Undone";
pub const REDONE: &str = "Done again";
pub const CHANGES: &str = "What has changed";

// When no piece is open.

pub const NOTHING_OPEN: &str = "No piece is open";
pub const NOTHING_OPEN_NEXT: &str =
    "Choose a piece from the shelf, start one, or open a worked example.";
pub const GO_TO_SHELF: &str = "Go to the shelf";

// The footer of every screen, below the model's line that defers to local codes and practitioners.

/// Where what is entered stays, and the day of the figures.
pub fn private(day: &str) -> String {
    joined(&[
        "What you enter stays on this device: nothing is sent anywhere. Save a piece as a file to keep it \
         safe or to hand it on. Figures of ",
        day,
        ".",
    ])
}
