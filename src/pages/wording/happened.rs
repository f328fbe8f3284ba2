//! Wording of what happened to a piece in the end.

pub(crate) const TITLE: &str = "What happened";
pub(crate) const PURPOSE: &str = "Two taps and a number record how it ended. You then see how close we came, and you can let our figures learn from it under What your pieces teach.";

// Before it is closed

pub(crate) const STATUS: &str = "Where it stands now";
pub(crate) const STATUS_HINT: &str = "When you choose For sale, we note what we expect it to fetch, to be \
    compared with what it does fetch.";
pub(crate) const NOT_CHOSEN: &str = "Not chosen";

pub(crate) fn noted(price: &str, on: &str) -> String {
    format!("We noted on {on} what we expect it to fetch as it is: {price}.")
}

pub(crate) fn noted_undated(price: &str) -> String {
    format!("We noted what we expect it to fetch as it is: {price}.")
}

// How it ended

pub(crate) const ENDED: &str = "How it ended";
pub(crate) const STILL_OPEN: &str = "It has not ended";
pub(crate) const SOLD_FOR: &str = "Sold for";
pub(crate) const SORT_OF_PRICE: &str = "What that price is";
pub(crate) const SORT_HINT: &str = "The price the hammer fell at, if nothing else is chosen.";
pub(crate) const UNSOLD_AT: &str = "It did not sell at";
pub(crate) const UNSOLD_WHAT: &str = "What that price was";
pub(crate) const UNSOLD_WHAT_HINT: &str =
    "A piece that did not sell tells as much as one that did: the price was too high.";
pub(crate) const MONTHS: &str = "Months on offer";
pub(crate) const MONTHS_HINT: &str =
    "Only for a price on a label: after half a year it tells us something.";
pub(crate) const MONTHS_UNIT: &str = "months";

pub(crate) const MORE: &str = "More about it, if you know";
pub(crate) const WHEN: &str = "When";
pub(crate) const WHEN_HINT: &str = "A year, a month such as 2026-05, or a day.";
pub(crate) const WHERE: &str = "Where";
pub(crate) const BUYER: &str = "Who bought it";
pub(crate) const NOT_SAID: &str = "Not said";
pub(crate) const RESERVE: &str = "The reserve it had";
pub(crate) const CURRENCY: &str = "Currency of the price";
pub(crate) const SAME_CURRENCY: &str = "That of the piece";
pub(crate) const STATEMENT: &str = "What the house took, from its statement";
pub(crate) const COMMISSION: &str = "Commission";
pub(crate) const LOT_FEE: &str = "Fee for the lot";
pub(crate) const TAX: &str = "Tax on the fees";
pub(crate) const INSURANCE: &str = "Insurance";
pub(crate) const PERCENT: &str = "%";
pub(crate) const LEFT_OUT: &str = "May our figures learn from it?";
pub(crate) const TEACHES: &str = "Yes";
pub(crate) const TEACHES_NOT: &str = "No, leave it out";
pub(crate) const WHY: &str = "Why, or how it came about";

// What was said, and what came of it

pub(crate) fn price_said(said: &str, low: &str, high: &str, fetched: &str) -> String {
    format!("We said {said} ({low} to {high}). It fetched {fetched}.")
}

pub(crate) fn bill_said(work: &str, said: &str, low: &str, high: &str, bill: &str) -> String {
    format!("{work}: we said {said} ({low} to {high}). The bill was {bill}.")
}

pub(crate) fn hours_said(work: &str, said: &str, low: &str, high: &str, hours: &str) -> String {
    format!("{work}: we said {said} hours ({low} to {high}). It took {hours}.")
}

pub(crate) const AS_HAMMER: &str = "Compared as hammer prices.";
pub(crate) const NOTHING_NOTED: &str = "We had noted nothing before the sale, so there is nothing to compare it with. Next time, choose For sale before the piece goes.";

// Why it teaches nothing

pub(crate) const TEACHES_NOTHING: &str = "The figures learn nothing from it";
