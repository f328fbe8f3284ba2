//! Our line drawings of pieces: one style, flat fills, a separate shape for every part.

mod forms;
mod heat;
mod heat_labels;
mod outline;
mod piece;
mod shape;

pub use heat::HeatDrawing;
pub use piece::piece_drawing;
