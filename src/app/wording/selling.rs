//! Where to sell it, and the most to pay.

use crate::app::parts::words::{joined, number};

pub const TITLE: &str = "Where to sell it, and the most to pay";
pub const CAPTION: &str = "What you would keep, with what we advise done and before its cost; 8 outcomes in 10 fall inside each range";
pub const COLUMNS: [&str; 3] = ["Way", "You keep", "Until the money is there"];
pub const NOT_KNOWN: &str = "not known";
pub const AT_ONCE: &str = "at once";
pub const TERMS: &str = "Terms of each way, and your own";

pub fn months(months: f64) -> String {
    joined(&["about ", &number(months), " months"])
}

pub fn best(way: &str) -> String {
    joined(&[way, " (best)"])
}

pub fn reserve(sum: &str) -> String {
    joined(&[
        "Agree a reserve of about ",
        sum,
        " with the auction house: below that a dealer's offer is better.",
    ])
}

pub fn ticket(sum: &str) -> String {
    joined(&[
        "On the ticket: about ",
        sum,
        ", which leaves room to bargain.",
    ])
}

pub fn most_to_pay(now: &str) -> String {
    joined(&[
        "If you are buying it to sell on, pay no more than ",
        now,
        " in all.",
    ])
}

pub fn most_to_pay_with(now: &str, then: &str) -> String {
    joined(&[
        "If you are buying it to sell on, pay no more than ",
        now,
        " in all to sell it as it is, or ",
        then,
        " to do first what we advise.",
    ])
}
