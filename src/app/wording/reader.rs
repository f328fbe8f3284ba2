//! The opening of the counsel for each reader: the owner, the restorer and the dealer.

use crate::app::parts::words::joined;
use crate::app::reader::Reader;

/// The question about who is reading.
pub const WHO: &str = "Who is reading?";
/// The effect of the choice.
pub const WHO_HINT: &str =
    "The answer is the same for everyone. What you need first comes first; nothing is left out.";

/// The label of a reader.
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

/// What an owner should do.
pub const DO: &str = "What to do";
/// Follows work that an owner should not do alone.
pub const NOT_AT_HOME: &str =
    " Some of this is not for you to do; see below who should, and read the cautions first.";
/// What it costs.
pub const COST: &str = "What it costs";
/// What is lost for good.
pub const LOST: &str = "Gone for good";
/// What to ask.
pub const ASK: &str = "What to ask";
/// The steps with their classes, for a restorer.
pub const STEPS: &str = "The work, by class";
/// What the rules require first.
pub const BEFORE: &str = "Before work begins";
/// What a client must hear.
pub const TELL_CLIENT: &str = "Tell the client";
/// The link to the client's sheet.
pub const CLIENT_SHEET: &str = "The client's sheet, to read and sign";
/// What is left of a sale, for a dealer.
pub const NET: &str = "Net now, and after";
/// The price from which the work does not pay.
pub const MOST: &str = "Most to pay for the work";
/// How long it cannot be sold.
pub const AWAY: &str = "Time off the shelf";
/// What a buyer must hear.
pub const TELL_BUYER: &str = "Tell a buyer";
/// The link to the buyer's sheet.
pub const BUYER_SHEET: &str = "The buyer's sheet, worded for a ticket";
/// The link to prices and break-evens.
pub const TO_MONEY: &str = "Each way of selling: on Money";
/// No cost or no loss at all.
pub const NOTHING: &str = "Nothing";
/// The money stays the same.
pub const NO_CHANGE: &str = "no change";
/// No rule sets a condition.
pub const NO_CONDITION: &str = "No rule sets a condition. The cautions below still apply.";
/// Follows a cost without a quote.
pub const ESTIMATED: &str = " (our estimate, not a quote)";
/// The piece is not for sale, so there is no net after the work.
pub const NOT_FOR_SALE: &str = "The record says it is not for sale, so the answer does not weigh a sale. \
    You can change that on Piece.";
/// The most to pay, while it is being worked out.
pub const LOOKED_FOR: &str = "Being worked out\u{2026}";
/// The most to pay, when it could not be worked out.
pub const NOT_FOUND: &str = "We could not work this out. Reload the page to try again.";
/// The piece stays where it is.
pub const NOT_AWAY: &str = "None: nothing in the answer sends it away.";
/// Nothing is done, so there is nothing new to tell a buyer.
pub const NOTHING_DONE: &str = "This answer adds nothing. You still have to tell a buyer what the piece is, how it has worn and what old repairs it has.";

/// The class of a treatment, in the words of conservators.
#[must_use]
pub fn class(class: &str) -> &'static str {
    match class {
        "preventive" => "preventive conservation",
        "remedial" => "remedial conservation",
        "restoration" => "restoration",
        "investigation" => "investigation",
        "remedial and restoration" => "remedial conservation and restoration",
        "preventive and restoration" => "preventive conservation and restoration",
        _ => "in no class; not advised",
    }
}

/// The cost, and the gain or loss in money compared with leaving the piece alone.
#[must_use]
pub fn cost(cost: &str, gain: &str) -> String {
    joined(&[
        cost,
        ". In money, compared with leaving it as it is: ",
        gain,
        ".",
    ])
}

/// A restorer's steps and their estimated cost.
#[must_use]
pub fn steps(named: &str, cost: &str) -> String {
    joined(&[named, ". Estimated cost: ", cost, "."])
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
        "With our advice (",
        name,
        "): ",
        after,
        "; the difference: ",
        gain,
        ".",
    ])
}

/// The net of an answer that leaves the piece alone.
#[must_use]
pub fn net_same(name: &str) -> String {
    joined(&[
        "With our advice (",
        name,
        "): the same, because no work is done.",
    ])
}

/// The cost of the plan, for a dealer. An empty cost means that it is free.
#[must_use]
pub fn estimated(name: &str, cost: &str) -> String {
    if cost.is_empty() {
        return joined(&[name, " costs nothing. "]);
    }
    joined(&[name, ", estimated cost: ", cost, ". "])
}

/// How long it is away, in months, and whose figure that is.
#[must_use]
pub fn away(months: &str, yours: bool) -> String {
    let whose = if yours {
        " months away for the work: your figure."
    } else {
        " months away for the work: our figure; enter your own on Money."
    };
    let whose = if months == "1" {
        whose.replacen(" months", " month", 1)
    } else {
        whose.to_owned()
    };
    joined(&["About ", months, &whose])
}

/// What a buyer must hear once the work is done.
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
