//! The words of the openings of the counsel: for the owner, the restorer and the dealer.

use crate::app::parts::words::joined;
use crate::app::reader::Reader;

/// The question who is reading.
pub const WHO: &str = "Who is reading?";
/// What the choice does.
pub const WHO_HINT: &str =
    "The answer is the same for all. What you need first comes first; nothing is left out.";

/// A reader, as a choice.
#[must_use]
pub fn label(reader: Reader) -> &'static str {
    match reader {
        Reader::Owner => "The owner",
        Reader::Restorer => "A restorer",
        Reader::Dealer => "A dealer",
    }
}

/// The heading of a reader's opening.
#[must_use]
pub fn title(reader: Reader) -> &'static str {
    match reader {
        Reader::Owner => "In short, for the owner",
        Reader::Restorer => "In short, for the restorer",
        Reader::Dealer => "In short, for the dealer",
    }
}

/// What is to be done, for an owner.
pub const DO: &str = "What to do";
/// Behind work of which an owner does not do all.
pub const NOT_AT_HOME: &str = " Not all of this is for the owner to do: below stands who does it, and the cautions, which are read first.";
/// What it costs.
pub const COST: &str = "What it costs";
/// What does not come back.
pub const LOST: &str = "Gone for good";
/// What to ask.
pub const ASK: &str = "What to ask";
/// The steps with their classes, for a restorer.
pub const STEPS: &str = "The work, by its class";
/// What the rules want first.
pub const BEFORE: &str = "Before work begins";
/// What a client has to be told.
pub const TELL_CLIENT: &str = "Tell the client";
/// Where that is written down.
pub const CLIENT_SHEET: &str = "The client's sheet, to read and sign";
/// What is left of a sale, for a dealer.
pub const NET: &str = "Net now, and after";
/// The price from which the work does not pay.
pub const MOST: &str = "Most to pay for the work";
/// How long it cannot be sold.
pub const AWAY: &str = "Time off the shelf";
/// What may not be kept from a buyer.
pub const TELL_BUYER: &str = "Tell a buyer";
/// Where that is written down.
pub const BUYER_SHEET: &str = "The buyer's sheet, worded for a ticket";
/// Where prices and break-evens are.
pub const TO_MONEY: &str = "By who buys: on Money";
/// Nothing at all, of a cost or a loss.
pub const NOTHING: &str = "Nothing";
/// The money stays as it is.
pub const NO_CHANGE: &str = "no change";
/// No rule sets a condition.
pub const NO_CONDITION: &str = "No rule sets a condition. The cautions below hold all the same.";
/// Beside a cost nobody has been asked for.
pub const ESTIMATED: &str = " (our estimate, not a quote)";
/// It is not for sale, so there is no net after.
pub const NOT_FOR_SALE: &str = "The record says it is not to be sold, so the answer is not weighed for a sale; \
    set that on Piece.";
/// Most to pay, while it is looked for.
pub const LOOKED_FOR: &str = "Being worked out\u{2026}";
/// Most to pay, when there is no telling.
pub const NOT_FOUND: &str = "It could not be worked out. Reload the page to try again.";
/// It need not go away.
pub const NOT_AWAY: &str = "None: nothing in the answer sends it away.";
/// Nothing done, so nothing new to tell.
pub const NOTHING_DONE: &str = "Nothing new comes of this answer. What the piece is, its wear and its old repairs still have to be told.";

/// The class of a treatment as conservators name it.
#[must_use]
pub fn class(class: &str) -> &'static str {
    match class {
        "preventive" => "preventive conservation",
        "remedial" => "remedial conservation",
        "restoration" => "restoration",
        "investigation" => "investigation",
        "remedial and restoration" => "remedial conservation and restoration",
        "preventive and restoration" => "preventive conservation and restoration",
        _ => "of no class; not advised",
    }
}

/// A cost against the rest of the money.
#[must_use]
pub fn cost(cost: &str, gain: &str) -> String {
    joined(&[cost, ". In money, against leaving it as it is: ", gain, "."])
}

/// The steps of a restorer and what they are reckoned to cost.
#[must_use]
pub fn steps(named: &str, cost: &str) -> String {
    joined(&[named, ". Reckoned cost: ", cost, "."])
}

/// What a restorer tells a client.
#[must_use]
pub fn tell_client(lost: &str, undone: &str) -> String {
    joined(&["Gone for good: ", lost, ". ", undone, "."])
}

/// What is left of a sale now.
#[must_use]
pub fn net_now(now: &str) -> String {
    joined(&["Now, as it is: ", now, ". "])
}

/// What is left of a sale after the work.
#[must_use]
pub fn net_after(name: &str, after: &str, gain: &str) -> String {
    joined(&[
        "With the answer (",
        name,
        "): ",
        after,
        "; the difference: ",
        gain,
        ".",
    ])
}

/// Leaving it changes nothing of the money.
#[must_use]
pub fn net_same(name: &str) -> String {
    joined(&[
        "With the answer (",
        name,
        "): the same, for no work is done.",
    ])
}

/// What the course costs, for a dealer; no cost where it is free.
#[must_use]
pub fn reckoned(name: &str, cost: &str) -> String {
    if cost.is_empty() {
        return joined(&[name, " costs nothing. "]);
    }
    joined(&[name, ", reckoned cost: ", cost, ". "])
}

/// How long it is away, in months, and whose figure that is.
#[must_use]
pub fn away(months: &str, yours: bool) -> String {
    let whose = if yours {
        " months away for the work: your figure."
    } else {
        " months away for the work: our figure; put in your own on Money."
    };
    let whose = if months == "1" {
        whose.replacen(" months", " month", 1)
    } else {
        whose.to_owned()
    };
    joined(&["About ", months, &whose])
}

/// What a buyer has to be told once the work is done.
#[must_use]
pub fn tell_buyer(name: &str, lost: &str) -> String {
    joined(&[
        "That this was done, when and by whom: ",
        name,
        ". What it took away: ",
        lost,
        ".",
    ])
}
