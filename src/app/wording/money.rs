//! Money: what an undamaged piece fetches, the prices asked for work, and what the owner agrees to.

use crate::app::parts::words::joined;

pub const TITLE: &str = "What it might fetch, and what work would cost";
pub const PURPOSE: &str =
    "A rough value and one price are enough to weigh money. Leave blank what you do not know.";
pub const NEXT: &str = "Next: our advice";

// What it is worth, in three bands.

pub const MIGHT_FETCH: &str = "What it might fetch";
pub const UNDAMAGED: &str = "Undamaged";
pub const AS_IT_IS: &str = "As it is";
pub const SELLER_KEEPS: &str = "What a seller keeps of that";
pub const BANDS: &str = "In 8 cases out of 10 it would fall within these limits.";
pub const ASSUMED: &str = "You have given no value, so these rest on what such pieces usually fetch. Your own likely value would \
     narrow them.";

// What an undamaged one fetches.

pub const VALUE: &str = "What an undamaged one fetches";
pub const VALUE_HINT: &str = "Think of the same piece with its silver whole and nothing broken. Results of past sales are the best \
     guide; a guess is good enough to begin with.";

/// Label and hint; the unit is the currency.
pub const LOW: [&str; 2] = ["Low", "1 in 10 would fetch less."];
pub const LIKELY: [&str; 2] = ["Likely", "Your best guess."];
pub const HIGH: [&str; 2] = ["High", "1 in 10 would fetch more."];

pub const CURRENCY: [&str; 3] = [
    "Currency",
    "Only a label: we convert nothing, so use one currency throughout.",
    "Not said",
];
pub const ROUTE: [&str; 3] = [
    "How would it be sold?",
    "At auction, fees come off what the buyer bids.",
    "Not said",
];

pub const OF_ALL: &str =
    "There are several pieces: give what all of them fetch together when undamaged.";
pub const SELL_AS: [&str; 3] = [
    "Sold together or apart?",
    "Our advice says which would leave more.",
    "Not said: together",
];

// Prices asked for work.

pub const QUOTES: &str = "Prices you were asked";
pub const QUOTES_HINT: &str = "Enter only prices you were quoted. Without a price we use a usual one, and the range is wide. A field for a price does not mean that the work is wise.";
pub const PRICE_ASKED: [&str; 2] = ["Price asked", ""];

pub const ADD_QUOTE: &str = "Add a price for other work";
pub const ADD_QUOTE_HINT: &str = "Or one price that covers several things together.";
pub const REMOVE_QUOTE: &str = "Remove this price";
pub const NEW_QUOTE: &str = "A price for other work";
pub const WHAT_FOR: [&str; 2] = [
    "What is the price for?",
    "Tick all that it covers together.",
];

/// The line of the box with the treatments a price is for.
pub fn what_for(ticked: usize) -> String {
    match ticked {
        0 => "Choose what it is for".to_owned(),
        ticked => joined(&["What it is for (", &ticked.to_string(), " ticked)"]),
    }
}

const PRICE_BOX: &str = "A range, hours, postage and terms";

/// The line of the box to open: what of the range and the hours has been put in.
pub fn price_range(from: &str, to: &str, hours: &str) -> String {
    let range = match (from, to) {
        ("", "") => String::new(),
        (from, "") => joined(&["from ", from]),
        ("", to) => joined(&["up to ", to]),
        (from, to) => joined(&["from ", from, " to ", to]),
    };
    match (range.as_str(), hours) {
        ("", "") => PRICE_BOX.to_owned(),
        (range, "") => joined(&[PRICE_BOX, ": ", range]),
        ("", hours) => joined(&[PRICE_BOX, ": ", hours, " h"]),
        (range, hours) => joined(&[PRICE_BOX, ": ", range, ", ", hours, " h"]),
    }
}

pub const HOURS: [&str; 3] = ["Hours of work", "", "h"];
pub const POST: [&str; 2] = ["Postage", ""];
pub const POST_INCLUDED: [&str; 2] = ["Postage is in the price", ""];
pub const FIXED: [&str; 2] = [
    "It is a fixed price",
    "It stays the same, whatever comes to light.",
];
pub const COVERS: [&str; 3] = ["What the price covers", "", "Not said: this work alone"];

pub const FROM: [&str; 2] = ["From", ""];
pub const TO: [&str; 2] = ["To", ""];

// What the owner agrees to.

pub const CONSENTS: &str = "If it were replated";
pub const CONSENTS_HINT: &str = "Replating takes away what nobody can put back, so for some pieces we consider it only if these are true. Tick what is true; it commits you to nothing.";
pub const LOSS: [&str; 2] = ["I accept that the original silver is lost for good", ""];
pub const PHOTO: [&str; 2] = ["It will be photographed well before anything is done", ""];
pub const DISCLOSE: [&str; 2] = [
    "A later buyer will be informed",
    "The law may require it; honesty does.",
];
pub const CONSERVATOR: [&str; 2] = [
    "I have a conservator's opinion in writing",
    "From one who has seen the piece and does not sell the work.",
];

// More, to open.

pub const MORE: &str = "More: past sales, fees and routes, before and after, the most to pay";

// What the law may ask.

pub const LAW: &str = "The law of its sale";
