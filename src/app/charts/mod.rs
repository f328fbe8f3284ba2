//! Pictures of numbers. Each says its finding in its title, and the same again as a table.
//!
//! Across, places are percentages, so that a picture fits any width while its words keep their size;
//! down, they are pixels.

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
