//! What it is worth: undamaged value, what condition takes off it, and what fees leave.

mod class;
mod condition;
mod fees;

pub use class::Class;
pub use condition::{BUYERS, ConditionTable, Factor, damped_product, hazard_factor, plain_product};
pub use fees::{Band, Fees, banded, net_share};
