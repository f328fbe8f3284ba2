//! What it is worth: undamaged value, what condition takes off it, and what fees leave.

mod break_even;
mod class;
mod comparable;
mod condition;
pub mod factor_rows;
mod fees;
mod pieces;
mod posterior;
mod selling;
mod shop;

pub use crate::terms::BUYERS;
pub use break_even::{PaysAbove, most_to_pay, pays_above};
pub use class::{ByGroup, Class};
pub use comparable::{Adjusted, Comparison, channel, guess};
pub use condition::{
    ConditionTable, Factor, REPLATED_GROUPS, WEAR_ANCHORS, ln_sd, replated_figure, wear_figure,
};
pub use fees::Fees;
pub use pieces::{
    Belonging, LEFT_OF_PAIR, MOST_UNITS, Unit, less_saved, premium_of_pair, shared_out,
};
pub use posterior::PriceLaw;
pub use selling::{Bid, Selling};
pub use shop::Shop;
