//! Wording on the outcome of each possible treatment.

pub(crate) const BEFORE_AND_AFTER: &str = "What it is worth before and after";

pub(crate) fn not_advised(name: &str) -> String {
    format!("{name} (not advised)")
}

use leavewell_model::terms::Route;

// The answer

pub(crate) fn as_it_is(hammer: &str, kept_words: &str, kept: &str) -> String {
    format!(
        "As it is, it would fetch a hammer price of about {hammer}. {kept_words} you would keep about \
         {kept}."
    )
}

/// How it is sold, before what is kept of the price.
pub(crate) fn sold_by(route: Route) -> &'static str {
    match route {
        Route::Auction => "After the seller's fees",
        Route::Private => "Sold privately",
        Route::Shop => "Sold from a shop that takes its share",
        Route::Trade => "Sold to the trade at once",
        Route::Fair => "Sold at fairs, pitch and journey paid,",
    }
}

pub(crate) const NONE_MAY_BE_ADVISED: &str = "As things stand, we cannot advise any of the work below; the figures only show what it would cost and bring.";

pub(crate) fn best(plan: &str, gain: &str) -> String {
    format!(
        "In money alone, \"{plan}\" does best of the work allowed: on average you would end up with {gain} \
         more than by leaving it alone."
    )
}

pub(crate) fn nothing_beats_leaving(plan: &str, loss: &str) -> String {
    format!(
        "In money alone, no work allowed here beats leaving it alone; \"{plan}\" comes closest and on \
         average leaves you {loss} worse off."
    )
}

pub(crate) fn undamaged(hammer: &str) -> String {
    format!("Undamaged, one like it would fetch a hammer price of about {hammer}.")
}

pub(crate) const NOTHING_GIVEN: &str = "You have given no value and no sales, so this rests on \
    what such pieces usually fetch: our judgement, with a wide range.";

pub(crate) fn barred(plan: &str, why: &str) -> String {
    format!("{plan} is not advised: {why}")
}

pub(crate) const INDICATIVE: &str = "Indicative, not an appraisal. Each pair of numbers in \
    brackets covers 8 cases in 10. Money is only one side: the advice says what is lost for good.";

// The picture

pub(crate) const PICTURE_TITLE: &str =
    "The hammer price, and below it what is left after fees and the work";
pub(crate) const PICTURE: &str = "For each thing that could be done, a band of hammer prices and, \
    below it, a lined band of what is left after the seller's fees and the cost of the work; a \
    stroke marks each middle.";
pub(crate) const CAPTION: &str = "Before and after: the middle, and the range that covers 8 in 10";
pub(crate) const COLUMNS: [&str; 5] = [
    "What is done",
    "Hammer price",
    "Cost of the work",
    "Left after fees and work",
    "Compared with leaving it, on average",
];

// What the work costs

pub(crate) const COSTS: &str = "What the work costs";
pub(crate) const WHERE_COSTS_COME_FROM: &str = "This uses the prices entered above. Without a \
    price, a usual one is used and the range is wide. We assume that a price given as one number is sometimes exceeded, as happens with jobs.";

pub(crate) fn quote_with(treatment: &str, post: &str) -> String {
    format!("{treatment}: who quoted, deposit; post and insurance {post}")
}

pub(crate) fn quote(treatment: &str) -> String {
    format!("{treatment}: who quoted, post, deposit")
}

pub(crate) const WHO_GAVE_IT: &str = "Who quoted";
pub(crate) const POST: &str = "Post and insurance";
pub(crate) const POST_HINT: &str = "There and back, on top of the price.";
pub(crate) const DEPOSIT: &str = "Deposit";
pub(crate) const DEPOSIT_HINT: &str = "Paid before the work; part of the price.";
pub(crate) const USUAL_PRICE: &str = "Usual price for such work";
pub(crate) const YOUR_QUOTE: &str = "Your quote";

pub(crate) fn quote_from(by: &str) -> String {
    format!("Quote from {by}")
}

pub(crate) const COSTS_CAPTION: &str = "Estimated cost of the work, post and insurance included";
pub(crate) const COSTS_COLUMNS: [&str; 4] =
    ["Work", "Basis", "Cost", "Of which due before the work"];
