//! Charts. Each states its finding in its title and repeats its figures in a table.
//!
//! Horizontal positions are percentages, so that a chart fits any width while its text keeps its size.
//! Vertical positions are pixels.

mod bridge;
mod change;
mod families;
mod figure;
mod outcomes;
mod placing;
mod plane;
mod scale;
mod silver_left;

pub use bridge::{bridge, has_bridge};
pub use change::{amount, change};
pub use families::families;
pub use outcomes::outcomes;
pub use plane::plane;
pub use silver_left::silver_left;

pub(crate) use super::wording::charts::unbeaten;
