//! The sheet and the record of what was done: the screens, and whom a sheet is for.

use leavewell_pages::sheet_text::Recipient;

// The sheet.

pub const TITLE: &str = "The sheet";
pub const PURPOSE: &str = "What to hand on. It is made anew whenever the record changes.";
pub const WHOM: &str = "Whom the sheet is for";
pub const PRINT: &str = "Print";
pub const SAVE_TEXT: &str = "Save as plain text";
pub const SAVE_PAGE: &str = "Save as a page";

// Whom a sheet is for, and what such a sheet is.

pub fn recipient(recipient: Recipient) -> [&'static str; 2] {
    match recipient {
        Recipient::Client => CLIENT,
        Recipient::Buyer => BUYER,
        Recipient::File => FILE,
    }
}

pub const CLIENT: [&str; 2] = [
    "For the client",
    "What could be done, what it costs, what is lost for good, and what to ask; with room to choose and sign.",
];
pub const BUYER: [&str; 2] = [
    "For a buyer",
    "What it is and what was found and done, told honestly: a few words for a ticket, and a long description.",
];
pub const FILE: [&str; 2] = [
    "For the file",
    "Everything: looks, parts, measures, figures, and how the answer was made.",
];

// What was done.

pub const DONE: &str = "Work done";
pub const DONE_PURPOSE: &str = "What was done, by whom and when. A later buyer is told from this.";
