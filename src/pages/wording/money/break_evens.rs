//! Wording on when work pays, and the most to pay.

use leavewell_model::terms::Route;

// When work pays

pub(crate) const WHEN_WORK_PAYS: &str = "When work pays";
pub(crate) const NOTHING_TO_WEIGH: &str =
    "Nothing recorded for this piece calls for work, so there is nothing to weigh.";
pub(crate) const LESS_THAN_IT_ADDS: &str = "Work pays when it costs less than it adds to what you \
    keep. A cheap piece never repays expensive work, however good the work is.";

pub(crate) fn usual_buyers(undamaged: &str) -> String {
    format!("For the usual buyers; undamaged, yours is valued at about {undamaged}")
}

pub(crate) const COLUMNS: [&str; 5] = [
    "Work",
    "Most to pay for it",
    "What it adds to what you keep",
    "Its cost",
    "Pays above an undamaged value of",
];
pub(crate) const BY_BUYER: &str =
    "By type of buyer: the most to pay for it; the undamaged value above which it pays";
pub(crate) const WORK: &str = "Work";

pub(crate) fn most_and_from(most: &str, from: &str) -> String {
    format!("{most}; {from}")
}

pub(crate) const NEVER: &str = "never";
pub(crate) const AT_ANY_VALUE: &str = "at any value";
pub(crate) const AN_AVERAGE: &str = "The most to pay is an average that includes the chance of a \
    bad result. Paying does not make work right: what is ruled out stays ruled out.";

// The most to pay for the piece

pub(crate) const BID: &str = "The most to pay for the piece";
pub(crate) const IF_BUYING: &str = "If you are thinking of buying it: the most it may cost you in \
    total, and where to stop bidding at auction so that the buyer's premium and the tax on it \
    still fit.";
pub(crate) const GAIN: &str = "Gain you want on what you pay";
pub(crate) const GAIN_HINT: &str = "Preset to a dealer's usual gain; enter 0 to break even.";
pub(crate) const HOW_OFTEN_LESS: &str = "How often you would accept less";
pub(crate) const IN_100: &str = "in 100";

pub(crate) fn most_in_all(gain: &str, times: f64) -> String {
    format!(
        "The most to pay in total for a gain of {gain}, missed at most {times} times in 100; and the bid to \
         stop at"
    )
}

pub(crate) const DO_NOT_BUY: &str = "do not buy";

pub(crate) fn most_and_bid(most: &str, bid: &str) -> String {
    format!("{most}; bid {bid}")
}

/// The head of a column.
pub(crate) fn sold_by(way: Route) -> &'static str {
    match way {
        Route::Auction => "Sold on at auction",
        Route::Private => "Sold on privately",
        Route::Shop => "Sold on from a shop",
        Route::Trade => "Sold on to the trade",
        Route::Fair => "Sold on at fairs",
    }
}

pub(crate) const WHAT_YOU_WOULD_DO: &str = "What you would do with it";
pub(crate) const LEFT_AS_IT_IS: &str = "Left as it is, by who buys it from you";
pub(crate) const BUYER: &str = "Buyer";
pub(crate) const WHAT_COMES_OFF: &str = "Waiting, work and holding costs come off first; the terms \
    are under \"A dealer's terms\". Work that is ruled out is not listed.";
