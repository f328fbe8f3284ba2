//! Where a piece stands in somebody's stock.

use crate::terms::{Date, StockStatus};

/// What a stock book says of one piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stock {
    /// The stock number, as written; empty when there is none.
    pub number: String,
    /// Where it stands, as entered: one of [`StockStatus::ENTERED`].
    pub status: Option<StockStatus>,
    /// Where it is kept, as written; empty when not recorded.
    pub place: String,
    /// The day it was bought.
    pub bought_on: Option<Date>,
    /// What was paid for it, in the case's currency.
    pub paid: Option<f64>,
    /// The price asked for it.
    pub asking: Option<f64>,
    /// The least it may go for at a sale.
    pub reserve: Option<f64>,
    /// The asking price stands on the buyer's sheet.
    pub show_price: bool,
    /// The seller's name for the buyer's sheet, as written; empty when it is not to stand there.
    pub seller: String,
}
