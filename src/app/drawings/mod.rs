//! Our own line drawings of pieces: one hand, flat fills, every part its own shape.

mod forms;
mod heat;
mod heat_labels;
mod outline;
mod piece;
mod shape;

pub use heat::HeatDrawing;
pub use piece::piece_drawing;
