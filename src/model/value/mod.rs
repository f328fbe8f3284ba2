//! What it is worth: undamaged value, what condition takes off it, and what fees leave.

mod break_even;
mod class;
mod comparable;
mod condition;
pub mod factor_rows;
mod fees;
mod posterior;
mod selling;
mod shop;

pub use break_even::{PaysAbove, most_to_pay, pays_above};
pub use class::{ByGroup, Class};
pub use comparable::{Adjusted, Comparison, channel, guess};
pub use condition::{
    BUYERS, ConditionTable, Factor, REPLATED_GROUPS, WEAR_ANCHORS, ln_sd, replated_figure,
    wear_figure,
};
pub use fees::Fees;
pub use posterior::PriceLaw;
pub use selling::{Bid, Selling};
pub use shop::Shop;
