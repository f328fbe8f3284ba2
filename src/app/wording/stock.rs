//! The stock book: its columns and controls, the row for quick entry, the table for a spreadsheet, and what is
//! printed of the stock.

use crate::app::parts::words::{count, joined};
use crate::app::stock_book::{BookColumn, ToDo};

// The book.

pub const LINK_TABLE: &str = "Take in a table from a spreadsheet";
pub const LINK_LABELS: &str = "Labels to print";
pub const LINK_LIST: &str = "Stock list to print";
pub const SEARCH: &str = "Search your pieces";
pub const STATUS: &str = "Show";
pub const EVERY_STATUS: &str = "Every status";
pub const WITHOUT_STATUS: &str = "Without a status";
pub const SORT: &str = "Sort by";
pub const LAYOUT: &str = "Show them as";
pub const CARDS: &str = "Cards";
pub const TABLE: &str = "Table";
pub const BOOK: &str = "Your pieces";

pub fn column(column: BookColumn) -> &'static str {
    match column {
        BookColumn::Newest => "Newest first",
        BookColumn::Number => "No.",
        BookColumn::Name => "Name",
        BookColumn::Kind => "What it is",
        BookColumn::Place => "Where",
        BookColumn::Lot => "Lot",
        BookColumn::Paid => "Paid",
        BookColumn::Spent => "Spent",
        BookColumn::Asking => "Asking",
        BookColumn::Most => "Most to pay",
        BookColumn::Advised => "Advised",
        BookColumn::Status => "Status",
    }
}

/// The heading of the pieces to which the same is to be done.
pub fn to_do(what: ToDo) -> &'static str {
    match what {
        ToDo::Work => "Work on these",
        ToDo::Offered => "Offered to you",
        ToDo::Leave => "Leave as they are",
        ToDo::Look => "Look at these first",
        ToDo::Gone => "Sold or returned",
    }
}

/// What is said once several pieces are changed.
pub fn changed(n: usize) -> String {
    joined(&[&count(n, "piece is", "pieces are"), " changed."])
}

pub const TAKE_BACK: &str = "Undo";

/// The most to pay for a piece that is not bought.
pub fn most_to_pay(sum: &str) -> String {
    joined(&["Most to pay: ", sum])
}

/// How many of the pieces are shown.
pub fn found(found: usize, all: usize) -> String {
    if found == all {
        count(all, "piece", "pieces")
    } else {
        joined(&[&found.to_string(), " of ", &count(all, "piece", "pieces")])
    }
}

pub const NOTHING_FOUND: &str =
    "No piece has all of these words. Search for fewer, or show every status.";

/// Where one is among the pages.
pub fn pages(page: usize, of: usize) -> String {
    joined(&["Page ", &page.to_string(), " of ", &of.to_string()])
}

pub const PAGES: &str = "Pages of the stock";
pub const BEFORE: &str = "Previous";
pub const AFTER: &str = "Next";

// Several at once.

pub const CHOOSE: &str = "Choose";

pub fn choose(name: &str) -> String {
    joined(&["Choose: ", name])
}

pub fn chosen(n: usize) -> String {
    joined(&[&count(n, "piece", "pieces"), " chosen"])
}

pub const CHOOSE_FOUND: &str = "Choose every piece found";
pub const CHOOSE_NONE: &str = "Choose none";
pub const SET_STATUS: &str = "Set their status";
pub const LEAVE_STATUS: &str = "Choose a status";
pub const NO_STATUS: &str = "No status";
pub const SAVE_TOGETHER: &str = "Save as one file";
pub const SAVE_TABLE: &str = "Save as a table (CSV)";
pub const SAVE_ALL_AS_TABLE: &str = "Save your pieces as a table (CSV)";
pub const REMOVE: &str = "Remove";
pub const REMOVE_MEANS: &str =
    "They go into the bin at the foot of this page, and stay there for 30 days.";

pub fn remove_now(n: usize) -> String {
    joined(&["Move ", &count(n, "piece", "pieces"), " to the bin"])
}

pub const DUPLICATE: &str = "Duplicate";
pub const NEXT_LIKE: &str = "Start the next one like it";

// Stored all at once.

pub const NOT_STORED: [&str; 2] = [
    "There is no room to keep this.",
    "Nothing was changed. Free some space on this device, then try again.",
];

pub fn added(n: usize) -> String {
    joined(&[
        &count(n, "piece was", "pieces were"),
        " added to your shelf.",
    ])
}

pub const ADDED_NEXT: &str = "They come first among your pieces. Open one to get advice on it.";

// The row for quick entry.

pub const QUICK: &str = "Enter pieces one after the other";
pub const QUICK_HINT: &str = "Fill in what you know and press Enter. What one piece usually shares with the next stays in the row; you can add everything else later.";
pub const ADD: &str = "Add this piece";
pub const NAME: &str = "Name";
pub const FORM: &str = "Form";
pub const NUMBER: &str = "Stock number";
pub const FROM: &str = "Not before";
pub const TO: &str = "Not after";
pub const HEIGHT: &str = "Height (mm)";
pub const HEIGHT_IN_INCHES: &str = "Height (in)";
pub const LOOKS: &str = "What you saw";
pub const BARE: &str = "Base metal on the body";
pub const PLACE: &str = "Where";
pub const STANDS: &str = "Status";
pub const PAID: &str = "Paid";
pub const LIKELY: &str = "Worth undamaged";
pub const ASKING: &str = "Asking";
pub const GOAL: &str = "What for";
pub const CURRENCY: &str = "Currency";
pub const NOT_SAID: &str = "Not said";
pub const LOOKS_KEY: &str = "Letters for what you saw";
pub const LOOKS_KEY_HINT: &str = "Type them with spaces between. A minus before one means that you looked and it is not there, a question mark that you are not sure. “S06@foot” says where.";
pub const NOTHING_TYPED: &str = "Nothing is filled in yet.";

pub fn quick_added(name: &str) -> String {
    joined(&[name, " is on your shelf. The row is ready for the next."])
}

pub fn not_looks(words: &str) -> String {
    joined(&["We do not know these letters: ", words, "."])
}

pub const NOT_LOOKS_NEXT: &str = "Correct or remove them, then press Enter again.";

// The table from a spreadsheet.

pub const TABLE_TITLE: &str = "Take in a table";
pub const TABLE_PURPOSE: &str = "A stock list from a spreadsheet, saved as CSV. You see what would be added before \
     anything is.";
pub const FILE: [&str; 2] = [
    "Choose a table",
    "Headings in the first row, one piece in each row below. It is read on this device; the file stays as it is.",
];
pub const READING: &str = "Reading the table…";
pub const COLUMNS_TITLE: &str = "What each column is";
pub const HEADING: &str = "Heading in the file";
pub const FIRST_ROWS: &str = "First rows";
pub const BECOMES: &str = "Becomes";
pub const LEFT_OUT: &str = "Left out";

pub fn becomes(heading: &str) -> String {
    joined(&["What the column ", heading, " becomes"])
}

pub const NO_HEADING: &str = "without a heading";
pub const PREVIEW_TITLE: &str = "What would be added";
pub const UNNAMED: &str = "Unnamed piece";

pub fn preview(pieces: usize, with_notes: usize) -> String {
    let all = count(pieces, "piece", "pieces");
    match with_notes {
        0 => joined(&[&all, ". Every cell can be used."]),
        n => joined(&[&all, "; something in ", &n.to_string(), " cannot be used:"]),
    }
}

pub fn on_the_shelf(number: &str, name: &str) -> String {
    joined(&[
        "The stock number ",
        number,
        " is taken already, by ",
        name,
        ". Both are kept.",
    ])
}

pub fn more_notes(n: usize) -> String {
    joined(&["and ", &count(n, "more note", "more notes")])
}

pub fn more_pieces(n: usize) -> String {
    joined(&["and ", &count(n, "more piece", "more pieces")])
}

pub const TAKE: &str = "Add these pieces";
pub const LEAVE: &str = "Leave it";
pub const TOO_LARGE: [&str; 2] = [
    "The file is larger than 64 MB, which no stock list is.",
    "Choose a smaller file, or cut it into several. Nothing is changed.",
];
pub const NO_TEXT: [&str; 2] = [
    "This file holds no text that can be read.",
    "Choose a CSV file as a spreadsheet saves it. Nothing is changed.",
];
pub const NOT_WRITTEN: &str = "The table could not be written.";

// On paper.

pub const LABELS_TITLE: &str = "Labels";
pub const LIST_TITLE: &str = "Stock list";
pub const PRINT: &str = "Print";
pub const PAPER_HINT: &str =
    "The pieces you chose on your shelf, or all that it shows if you chose none.";
pub const NOTHING_TO_PRINT: &str = "There is no piece to print yet.";
pub const ASK_FOR_SHEET: &str =
    "For display unless its sheet says otherwise. Please ask for the sheet.";
pub const TOTAL: &str = "Together";

// In a piece.

pub const IN_STOCK: &str = "In your stock";
pub const IN_STOCK_HINT: &str =
    "For a dealer's or workshop's own book. Only what you tick below goes onto a sheet.";
pub const STOCK_NUMBER: [&str; 3] = ["Stock number", "", ""];
pub const STOCK_STATUS: [&str; 3] = [
    "Where does it stand?",
    "Record a sale or a return under Work done.",
    "Not said",
];
pub const STOCK_PLACE: [&str; 3] = ["Where is it?", "", ""];
pub const BOUGHT_ON: [&str; 3] = ["Bought on", "A day such as 2026-11-28.", ""];
pub const PAID_FOR_IT: [&str; 2] = ["What you paid", ""];
pub const LOT: &str = "Bought with others at one price";
pub const LOT_HINT: &str = "Give every piece that you bought together the same name of the lot, and enter the price in one of them. Sharing it out records what each piece cost.";
pub const LOT_NAME: [&str; 3] = ["Name of the lot", "", ""];
pub const LOT_PRICE: [&str; 2] = ["Price of the whole lot", ""];
pub const LOT_RULE: [&str; 3] = ["Share it out", "", "By what each might fetch"];
pub const LOT_SHARE: [&str; 2] = ["My share for this one", "Only for your own shares."];
pub const SHARE_LOT: &str = "Share the price out";

pub fn lot_shared(pieces: usize) -> String {
    joined(&[
        "The price of the lot is shared out over ",
        &count(pieces, "piece", "pieces"),
        ". Do it again when a price or a piece changes.",
    ])
}

pub const ASKING_PRICE: [&str; 2] = ["Asking price", ""];
pub const RESERVE: [&str; 2] = ["Reserve", "The least it may go for."];
pub const SHOW_PRICE: [&str; 2] = ["Print the asking price on the buyer's sheet", ""];
pub const SHOW_PHOTOS: [&str; 2] = ["Print the photos on the buyer's sheet", ""];
pub const SELLER: [&str; 3] = [
    "Seller's name for the buyer's sheet",
    "Left out while this is empty.",
    "",
];

// Shortcuts.

pub const SHORTCUTS: &str = "Keyboard shortcuts";
pub const SHORTCUTS_HINT: &str =
    "They work while you are not typing in a field. “?” opens this list.";
pub const SHORTCUTS_ON: [&str; 2] = ["Use these shortcuts", ""];
pub const SHORTCUT_LIST: [(&str, &str); 8] = [
    ("?", "This list"),
    ("/", "Search your pieces"),
    ("n", "Enter a piece in the quick row"),
    ("t", "Cards or table"),
    ("s", "Your pieces"),
    (
        "1 to 5",
        "The places of the open piece: Piece, Look, Advice, Money, Papers",
    ),
    ("Ctrl+Z", "Undo"),
    ("Ctrl+Shift+Z", "Redo"),
];
