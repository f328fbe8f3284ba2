//! Why the price of a lot cannot be shared out, and what to do.

pub(crate) const NO_LOT: &str = "No piece on the shelf is in this lot. \
    Give the lot a name, and enter the same name for each piece that was bought with it.";
pub(crate) const NO_PRICE: &str = "The price of the lot is not known. \
    Enter what was paid for the whole lot, in one of its pieces.";
pub(crate) const TWO_PRICES: &str = "The pieces of this lot name different prices for it. \
    Enter the price of the whole lot in one of them, or the same in all.";
pub(crate) const TWO_RULES: &str = "The pieces of this lot are to be shared out by different rules. \
    Choose the same rule in all of them, or a rule in one alone.";
pub(crate) const TWO_CURRENCIES: &str = "The pieces of this lot are in different currencies. \
    Use one currency for the lot: nothing is converted.";
pub(crate) const NO_SHARES: &str = "There is nothing to share the price by. \
    Enter a share above nothing in at least one piece, or choose another rule.";
