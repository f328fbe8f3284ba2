//! Where a piece stands in somebody's stock.

use super::Case;
use crate::terms::{Date, Ending, StockStatus};

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

impl Case {
    /// Where the piece stands: sold or returned if its case was closed so, else as entered.
    #[must_use]
    pub fn stock_status(&self) -> Option<StockStatus> {
        match self.closed.outcome {
            Some(Ending::Sold) => Some(StockStatus::Sold),
            Some(Ending::GivenBack) => Some(StockStatus::Returned),
            _ => self.stock.status,
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::record::Draft;
    use crate::terms::StockStatus;

    #[test]
    fn sold_and_returned_come_from_how_the_case_was_closed() {
        let mut draft = Draft::default();
        draft.set("stock.status", "for_sale");
        for (outcome, status) in [
            ("", StockStatus::ForSale),
            ("unsold", StockStatus::ForSale),
            ("sold", StockStatus::Sold),
            ("given_back", StockStatus::Returned),
        ] {
            draft.set("closed.outcome", outcome);
            assert_eq!(draft.read().0.stock_status(), Some(status), "{outcome}");
        }
        draft.set("stock.status", "sold");
        let (_, problems) = draft.read();
        assert_eq!(problems[0].field, "stock.status", "it is not entered there");
    }
}
