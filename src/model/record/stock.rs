//! The entry of a piece in the stock book.

use super::{Case, Draft};
use crate::terms::{Date, Ending, StockStatus};

/// What a stock book says of one piece.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StockEntry {
    /// The stock number, as written; empty when there is none.
    pub number: String,
    /// Its status as entered: one of [`StockStatus::ENTERED`].
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
    /// Whether the buyer's sheet shows the asking price.
    pub show_price: bool,
    /// Whether the buyer's sheet shows the photographs.
    pub show_photos: bool,
    /// The seller's name for the buyer's sheet, as written; empty to leave it out.
    pub seller: String,
}

impl Case {
    /// The stock status: sold or returned if the case was closed that way, otherwise as entered.
    #[must_use]
    pub fn stock_status(&self) -> Option<StockStatus> {
        match self.closed.outcome {
            Some(Ending::Sold) => Some(StockStatus::Sold),
            Some(Ending::GivenBack) => Some(StockStatus::Returned),
            _ => self.stock.status,
        }
    }
}

/// Writes the stock status of a piece. Sold and Returned set the case's outcome; any other status clears it.
/// `None` removes the status.
pub fn put_status(draft: &mut Draft, status: Option<StockStatus>) {
    let ending = match status {
        Some(StockStatus::Sold) => Some(Ending::Sold),
        Some(StockStatus::Returned) => Some(Ending::GivenBack),
        _ => None,
    };
    if let Some(ending) = ending {
        draft.set("closed.outcome", ending.id());
        return;
    }
    let left = [Ending::Sold, Ending::GivenBack].map(Ending::id);
    if left.contains(&draft.text("closed.outcome").as_str()) {
        draft.set("closed.outcome", "");
    }
    draft.set("stock.status", status.map_or("", StockStatus::id));
}

#[cfg(test)]
mod tests {
    use super::put_status;
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
        for status in StockStatus::ALL {
            put_status(&mut draft, Some(*status));
            let (case, problems) = draft.read();
            assert_eq!((case.stock_status(), problems.len()), (Some(*status), 0));
        }
        put_status(&mut draft, None);
        assert_eq!(draft.read().0.stock_status(), None);
        draft.set("stock.status", "sold");
        let (_, problems) = draft.read();
        assert_eq!(problems[0].field, "stock.status", "it is not entered there");
    }
}
