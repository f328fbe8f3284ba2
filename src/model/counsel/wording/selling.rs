//! The words of where to sell.

pub(crate) const NOT_AT_AUCTION: &str = "Not at auction: the charges would be more than the price.";

pub(crate) fn charges_take(charges: &str, price: &str) -> String {
    format!("Hardly at auction: charges would take about {charges} of a likely {price}.")
}

pub(crate) fn at_auction(kept: &str, trade: &str) -> String {
    format!(
        "At auction you would keep about {kept} after charges; a dealer would give about {trade} at once."
    )
}

pub(crate) fn to_the_trade(trade: &str, auction: bool, kept: &str) -> String {
    let first = format!("A dealer would give about {trade} at once");
    if auction {
        format!("{first}, an auction about {kept} later.")
    } else {
        first + "."
    }
}

pub(crate) fn privately(kept: &str) -> String {
    format!("Sold to a buyer of your own it would bring about {kept}, with no charges.")
}

pub(crate) fn from_a_shop(kept: &str) -> String {
    format!(
        "From a shop you would keep about {kept} once the place is paid for, though it may wait."
    )
}

pub(crate) fn at_fairs(kept: &str) -> String {
    format!("At fairs you would keep about {kept} once pitch and journey are paid for.")
}

pub(crate) fn a_buyer_of_ones_own(kept: &str) -> String {
    format!("A private buyer who offers more than {kept} does better for you.")
}
