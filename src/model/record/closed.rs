//! What happened in the end: sold or not, at what price, to whom.

use super::{BuyerSort, Currency, Date, Ending, SoldAs, UnsoldAt};

/// How a case ended. Everything may be unknown.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Closed {
    /// When; the middle of the month or year where only that is known.
    pub on: Option<Date>,
    /// The ending; `None` while the case is open.
    pub outcome: Option<Ending>,
    /// The sale, as far as it is told.
    pub sale: OwnSale,
    /// The offer that found no buyer, as far as it is told.
    pub unsold: UnsoldPrice,
    /// Nothing is to be learnt from it.
    pub left_out: bool,
    /// Why, or how it came about, as written.
    pub why: String,
}

/// The sale of the piece itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OwnSale {
    /// The price.
    pub price: Option<f64>,
    /// What sort of price that is; `None` when not said.
    pub sold_as: Option<SoldAs>,
    /// When; the middle of the month or year where only that is known.
    pub on: Option<Date>,
    /// Where, as written.
    pub place: String,
    /// Who bought it.
    pub buyer: Option<BuyerSort>,
    /// The reserve it was sold under.
    pub reserve: Option<f64>,
    /// The currency of the price; that of the case when not said.
    pub currency: Option<Currency>,
    /// What the house took.
    pub statement: Statement,
}

/// The house's terms, off its statement of account.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Statement {
    /// Commission, as a share of the hammer price.
    pub commission: Option<f64>,
    /// Fee for each lot, in the case's currency.
    pub lot: Option<f64>,
    /// Tax on the fees, as a share of them.
    pub vat: Option<f64>,
    /// Insurance, as a share of the hammer price.
    pub insurance: Option<f64>,
}

/// An offer that found no buyer.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct UnsoldPrice {
    /// The price at which it did not sell.
    pub price: Option<f64>,
    /// What sort of price that is.
    pub at: Option<UnsoldAt>,
    /// Months on offer.
    pub months: Option<f64>,
}
