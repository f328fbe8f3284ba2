//! Our line drawings of pieces: one style, flat fills, a separate shape for every part.

mod forms;
mod found;
mod hatch;
mod heat;
mod heat_labels;
mod outline;
mod piece;
mod shape;
mod small;

pub use found::{FoundMark, Shown, found_drawing};
pub use heat::HeatDrawing;
pub use piece::{numbered_drawing, piece_drawing};
pub use small::{bare_patch, piece_to_tap, small_piece};
