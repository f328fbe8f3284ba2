//! Small things used everywhere: stand-ins for library parts too big for a program with a size
//! budget, each saying what it gives up, and shares in words.
//!
//! Invariant: none of them holds a figure or decides anything.

mod capital;
mod decimal;
mod ordered;
mod shares;

pub use capital::capital;
pub use decimal::decimal;
pub use ordered::sort_short;
pub use shares::{percent, share};
