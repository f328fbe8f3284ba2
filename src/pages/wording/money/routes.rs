//! Wording on ways to sell, who buys, and what to call the figure.

use leavewell_model::terms::Route;

// The seller's terms

pub(crate) const COMMISSION: &str = "Commission";
pub(crate) const OF_HAMMER: &str = "Of the hammer price.";
pub(crate) const SECOND_RATE_FROM: &str = "Second rate from";
pub(crate) const SECOND_RATE_FROM_HINT: &str = "If the rate changes at a price.";
pub(crate) const SECOND_RATE: &str = "Second rate";
pub(crate) const SECOND_RATE_HINT: &str = "On the part above that price.";
pub(crate) const LEAST_COMMISSION: &str = "Minimum commission";
pub(crate) const TAX: &str = "Tax on the commission";
pub(crate) const LOT_FEE: &str = "Lot fee";
pub(crate) const LOT_FEE_HINT: &str = "Pictures and catalogue, tax included.";
pub(crate) const INSURANCE: &str = "Insurance";
pub(crate) const CARRIAGE: &str = "Carriage to the sale";
pub(crate) const SOLD_AT_FIRST: &str = "Sells at the first sale";
pub(crate) const SOLD_AT_FIRST_HINT: &str = "Out of 100 times.";
pub(crate) const UNSOLD: &str = "Charge if unsold";
pub(crate) const UNSOLD_HINT: &str = "On top of the lot fee.";
pub(crate) const SECOND_SALE: &str = "Price at a second sale";
pub(crate) const SECOND_SALE_HINT: &str = "Of the first price.";
pub(crate) const PREMIUM: &str = "Buyer's premium";
pub(crate) const PREMIUM_HINT: &str = "What a buyer pays on top, before tax.";
pub(crate) const NONE: &str = "none";

// A dealer's terms

pub(crate) const SHOP_PRICE: &str = "Shop price over hammer price";
pub(crate) const TIMES: &str = "times";
pub(crate) const UNTIL_SOLD: &str = "Months until it sells";
pub(crate) const MONTHS: &str = "months";
pub(crate) const AWAY: &str = "Months away for the work";
pub(crate) const AWAY_HINT: &str = "Off the shelf, earning nothing.";
pub(crate) const UNTIL_PAID: &str = "Months until an auction pays";
pub(crate) const ELSEWHERE: &str = "What money could earn elsewhere";
pub(crate) const PERCENT_A_YEAR: &str = "% a year";
pub(crate) const HOLDING: &str = "Insurance and storage";
pub(crate) const MARGIN_TAX: &str = "Tax on the margin";
pub(crate) const MARGIN_TAX_HINT: &str = "Information, not tax advice: under the UK margin scheme \
    one sixth of sale less purchase; work on the piece does not count as part of the purchase.";
pub(crate) const LEAVE_IT_OUT: &str = "Leave it out";
pub(crate) const TAKE_IT_OFF: &str = "Take it off";

// Who would buy it

pub(crate) const WHO_BUYS: &str = "Collectors, people who want it for display, and people who want \
    to use it see wear and work differently. Give each a share out of 100; if you give one, those \
    left empty count as none.";
pub(crate) const USUAL_SHARES: &str =
    "The usual shares depend on what the piece is, and are our judgement.";
pub(crate) const IN_100: &str = "in 100";
pub(crate) const COLLECTORS: &str = "Collectors";
pub(crate) const TO_SHOW: &str = "To show it";
pub(crate) const TO_USE: &str = "To use it";

pub(crate) fn share_of(section: &str, buyer: &str) -> String {
    format!("{section}: {buyer}")
}

pub(crate) const AS_ABOVE: &str = "as above";

/// The name of a sort of buyer.
pub(crate) fn buyer_words(buyer: &str) -> &'static str {
    match buyer {
        "collector" => "collectors",
        "decorator" => "to show it",
        _ => "to use it",
    }
}

// The ways

pub(crate) const WAYS: &str = "Ways to sell it, or not";
pub(crate) const PAID: &str = "What you paid for it";
pub(crate) const PAID_HINT: &str = "For the shop's gain; empty means not yet bought.";
pub(crate) const IN_A_SHOP: &str = "In a shop";
pub(crate) const PRIVATELY: &str = "Privately";
pub(crate) const EMPTY_FIELDS: &str = "Empty fields use the usual terms. Yours are kept with this \
    piece; on Figures you can keep them for new pieces too.";
pub(crate) const SELLERS_TERMS: &str = "The seller's terms at auction: enter your own";
pub(crate) const BUYERS_SECTION: &str = "Who would buy it";
pub(crate) const DEALERS_TERMS: &str = "A dealer's terms";

// The ways compared

pub(crate) const CAPTION: &str = "As it is: what each way of selling would bring";
pub(crate) const COLUMNS: [&str; 4] = ["Way", "Money", "When", "What that is"];

pub(crate) fn about_months(months: f64) -> String {
    format!("about {months} months")
}

pub(crate) const NOT_KNOWN: &str = "not known";
pub(crate) const AT_ONCE: &str = "at once";

/// What the money of a way to sell is.
pub(crate) fn means(route: Route) -> &'static str {
    match route {
        Route::Auction => {
            "After commission, the tax on it, lot fee, insurance, and the chance that it must be \
             offered again"
        }
        Route::Private => "No fees; at the hammer price, if you find the buyer",
        Route::Shop => "The shop price, less what the place takes of it",
        Route::Trade => {
            "A dealer can pay about two thirds of what a shop will ask: a very broad rule, and never \
             more than the hammer price"
        }
        Route::Fair => "A fair's price, less pitch, journey and the day",
    }
}

pub(crate) const OWN_SHOP: &str = "Your gain from a shop";
pub(crate) const OWN_SHOP_GAIN: &str =
    "Gain after what you paid, holding and waiting, in today's money";
pub(crate) const INSURE: &str = "Insure it for";
pub(crate) const INSURE_MEANS: &str = "What replacing it would cost; not money you would receive";
pub(crate) const KEEP: &str = "Keep it";
pub(crate) const KEEP_MEANS: &str = "What you still own, at the hammer price; no money changes \
    hands";

// What the figure is called

pub(crate) const BASES: &str = "What the figure is called";
pub(crate) const WHICH_ONE: &str =
    "Which figure is right depends on what it is for. When you pass one on, say which it is.";
pub(crate) const BASES_CAPTION: &str = "As it is, by what the figure is for";
pub(crate) const BASES_COLUMNS: [&str; 3] = ["Name", "Meaning", "Figure"];
pub(crate) const AUCTION_VALUE: &str = "Auction value";
pub(crate) const AUCTION_VALUE_MEANS: &str = "The hammer price it would reach.";
pub(crate) const FAIR_MARKET: &str = "Fair market value (US tax)";
pub(crate) const FAIR_MARKET_MEANS: &str = "What a willing buyer would pay a willing seller, neither \
    forced and both knowing the facts, where such things are most often sold to the public. Here: at \
    auction, the buyer's premium included; ask whether your purpose wants it in.";
pub(crate) const MARKET_VALUE: &str = "Market value (valuation standards)";
pub(crate) const MARKET_VALUE_MEANS: &str = "What it should change hands for on the day, between \
    willing parties at arm's length, after proper marketing, each acting with knowledge, prudence \
    and without pressure. Here: the hammer price.";
pub(crate) const REPLACEMENT: &str = "Replacement value, comparable";
pub(crate) const REPLACEMENT_MEANS: &str = "What it would cost to find one of similar age, \
    quality, origin and condition within a reasonable time. Used for insurance. The cost of a new \
    one, or of a copy, is a different figure and is not worked out here.";
pub(crate) const INDICATIVE: &str =
    "Indicative, not an appraisal. For tax, court or insurance ask a qualified valuer.";
