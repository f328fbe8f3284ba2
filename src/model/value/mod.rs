//! What it is worth: undamaged value, what condition takes off it, and what fees leave.

mod break_even;
mod class;
mod comparable;
mod condition;
mod fees;
mod posterior;
mod shop;

pub use break_even::{PaysAbove, most_to_pay, pays_above, pays_above_flat};
pub use class::Class;
pub use comparable::{Adjusted, Comparison, channel, guess};
pub use condition::{BUYERS, ConditionTable, Factor, damped_product, hazard_factor, plain_product};
pub use fees::{Band, Fees, banded, net_share};
pub use posterior::PriceLaw;
pub use shop::Shop;
