//! The screens Sheet and Work done, and the people a sheet is for.

use leavewell_pages::sheet_text::Recipient;

// The sheet.

pub const TITLE: &str = "The sheet";
pub const PURPOSE: &str = "A summary to hand on. It changes whenever the record changes.";
pub const WHOM: &str = "Who the sheet is for";
pub const PRINT: &str = "Print";
pub const SAVE_TEXT: &str = "Save as plain text";
pub const SAVE_PAGE: &str = "Save as a page";

// Who each sheet is for, and what it contains.

pub fn recipient(recipient: Recipient) -> [&'static str; 2] {
    match recipient {
        Recipient::Client => CLIENT,
        Recipient::Buyer => BUYER,
        Recipient::File => FILE,
        Recipient::Conservation => CONSERVATION,
    }
}

pub const CLIENT: [&str; 2] = [
    "For the client",
    "What could be done, what it costs, what is lost for good, and what to ask; with room to choose and sign.",
];
pub const BUYER: [&str; 2] = [
    "For a buyer",
    "What it is, what was found and what was done, stated honestly: a few words for a ticket, and a long description.",
];
pub const FILE: [&str; 2] = [
    "For the file",
    "Everything: looks, parts, measures, figures, and how the answer was made.",
];

pub const CONSERVATION: [&str; 2] = [
    "Condition and treatment",
    "As conservators keep it: condition by part with every fault where it is, consent step by step, the treatment as it was done, and when to look again.",
];

// What was done.

pub const DONE: &str = "Work done";
pub const DONE_PURPOSE: &str =
    "What was done, by whom and when. It goes onto the sheet for a later buyer.";
