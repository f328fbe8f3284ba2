//! Our own line drawings of pieces: one hand, flat fills, every part its own shape.

mod forms;
mod piece;
mod shape;

pub use piece::piece_drawing;
