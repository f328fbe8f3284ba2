//! Small things used everywhere: stand-ins for library parts too big for a program with a size
//! budget, each saying what it gives up, and shares in words.
//!
//! Invariant: none of them holds a figure or decides anything.

mod ordered;

pub use crate::terms::{capital, decimal, percent, share};
pub use ordered::sort_short;
