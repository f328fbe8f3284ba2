//! Wording of the table of the stock: its columns, and what is said about a table that is read.

// Columns, in the order in which they are written

pub(crate) const NUMBER: &str = "Stock number";
pub(crate) const NAME: &str = "Name";
pub(crate) const FORM: &str = "Form";
pub(crate) const STATUS: &str = "Status";
pub(crate) const PLACE: &str = "Where";
pub(crate) const BOUGHT_ON: &str = "Bought on";
pub(crate) const BOUGHT_DAY_FIRST: &str = "Bought on, day before month";
pub(crate) const BOUGHT_MONTH_FIRST: &str = "Bought on, month before day";

/// A date that could be read two ways, in a column where nothing tells which.
pub(crate) fn which_is_the_day(date: &str) -> String {
    format!(
        "Is the first number of “{date}” the day or the month? Choose “{BOUGHT_DAY_FIRST}” or \
         “{BOUGHT_MONTH_FIRST}” for this column. Until then such dates count as not said."
    )
}

pub(crate) const PAID: &str = "Paid";
pub(crate) const COUNT: &str = "Pieces";
pub(crate) const RELATION: &str = "Pair or set";
pub(crate) const LOT: &str = "Lot";
pub(crate) const LOT_PRICE: &str = "Price of the lot";
pub(crate) const LOT_RULE: &str = "Lot shared out";
pub(crate) const LOT_SHARE: &str = "Own share";
pub(crate) const ASKING: &str = "Asking";
pub(crate) const RESERVE: &str = "Reserve";
pub(crate) const CURRENCY: &str = "Currency";
pub(crate) const NOT_BEFORE: &str = "Not before";
pub(crate) const NOT_AFTER: &str = "Not after";
pub(crate) const HEIGHT: &str = "Height (mm)";
pub(crate) const LENGTH: &str = "Length (mm)";
pub(crate) const WIDTH: &str = "Width (mm)";
pub(crate) const WEIGHT: &str = "Weight (g)";
pub(crate) const LIKELY: &str = "Undamaged, likely";
pub(crate) const DESCRIPTION: &str = "Description";
pub(crate) const SPENT: &str = "Spent on work";
pub(crate) const ADVISED: &str = "Advised";

/// Other headings under which a column is known, in small letters.
pub(crate) const OTHER_HEADINGS: [(&str, &[&str]); 24] = [
    (
        NUMBER,
        &[
            "number",
            "stock no",
            "stock no.",
            "no",
            "no.",
            "nr",
            "sku",
            "ref",
            "reference",
            "item number",
        ],
    ),
    (
        NAME,
        &["what you call it", "title", "item", "piece", "object"],
    ),
    (FORM, &["what it is", "type", "kind", "category"]),
    (
        COUNT,
        &["how many", "number of pieces", "quantity", "qty", "count"],
    ),
    (RELATION, &["relation", "pair", "set", "pair/set"]),
    (STATUS, &["where it stands", "state"]),
    (
        PLACE,
        &["where it is", "location", "place", "shelf", "cabinet"],
    ),
    (
        BOUGHT_ON,
        &["bought", "date bought", "purchase date", "date", "acquired"],
    ),
    (
        PAID,
        &[
            "what was paid for it",
            "cost",
            "cost price",
            "purchase price",
            "bought for",
            "price paid",
        ],
    ),
    (
        ASKING,
        &[
            "asking price",
            "price",
            "retail",
            "ticket price",
            "ticket",
            "sale price",
        ],
    ),
    (LOT, &["lot number", "lot no", "lot no.", "bought in lot"]),
    (LOT_PRICE, &["lot price", "paid for the lot"]),
    (LOT_RULE, &["lot rule", "how it is shared out"]),
    (LOT_SHARE, &["own share of the lot", "share of the lot"]),
    (RESERVE, &["reserve price", "lowest price"]),
    (CURRENCY, &["cur"]),
    (NOT_BEFORE, &["from", "from year", "earliest"]),
    (NOT_AFTER, &["to", "to year", "latest"]),
    (HEIGHT, &["height", "height mm", "h"]),
    (LENGTH, &["length", "length mm", "l"]),
    (WIDTH, &["width", "width mm", "w"]),
    (WEIGHT, &["weight", "weight g", "grams"]),
    (LIKELY, &["value", "estimate", "undamaged"]),
    (
        DESCRIPTION,
        &["notes", "note", "details", "remarks", "comment", "comments"],
    ),
];

// What the whole file is like

pub(crate) const READ_AS_WINDOWS: &str = "The file is not UTF-8, so it was read as Windows-1252, which older \
    spreadsheets write. Check the pound signs and the letters with accents below.";
pub(crate) const READ_AS_UTF_16: &str = "The file is UTF-16 text, and was read as that.";

pub(crate) fn ragged(row: usize, cells: usize, columns: usize) -> String {
    let cells = if cells == 1 {
        "1 cell".to_owned()
    } else {
        format!("{cells} cells")
    };
    format!("Row {row} has {cells}; the first row has {columns}.")
}

pub(crate) const SHORT_ROW: &str = "What is missing is left empty.";

pub(crate) fn long_row(extra: &str) -> String {
    format!("These cells have no heading and are left out: {extra}.")
}

pub(crate) fn more_rows(count: usize) -> String {
    if count == 1 {
        "1 more row is uneven.".to_owned()
    } else {
        format!("{count} more rows are uneven.")
    }
}

pub(crate) fn twice(heading: &str, first: &str) -> String {
    format!(
        "Two columns would fill “{heading}”. The one headed “{first}” is used; choose what the other one is."
    )
}

// Files that cannot be read

pub(crate) const SPREADSHEET: [&str; 2] = [
    "This is a spreadsheet file, not a table as text.",
    "Open it in your spreadsheet, save it as CSV, and choose that file. Nothing is changed.",
];
pub(crate) const EMPTY: [&str; 2] = [
    "There is nothing in this file but its headings.",
    "A table has its headings in the first row and one piece in each row below. Nothing is changed.",
];
pub(crate) const NOT_TEXT: [&str; 2] = [
    "This file holds no text that can be read.",
    "Choose a CSV file as a spreadsheet saves it. Nothing is changed.",
];

/// A table with more rows than are taken in at once.
pub(crate) fn too_many(rows: usize, most: usize) -> [String; 2] {
    [
        format!("This table has {rows} rows. Up to {most} pieces are taken in at once."),
        "Cut the table into smaller files, and take them in one after the other. Nothing is changed.".to_owned(),
    ]
}

pub(crate) const NO_NAMED_COLUMN: [&str; 2] = [
    "No heading of this table is one we know.",
    "Say below what each column is. Nothing is added before that.",
];

// What is said about single cells

pub(crate) fn in_row(row: usize, about: &str) -> String {
    format!("Row {row}: {about}")
}

pub(crate) fn unknown_word(typed: &str, heading: &str, nearest: Option<&str>) -> String {
    let guess = nearest.map_or_else(String::new, |near| format!(" Did you mean “{near}”?"));
    format!(
        "“{typed}” under “{heading}” is no word we know.{guess} It is kept as written and counts as not said."
    )
}

pub(crate) fn formula(heading: &str) -> String {
    format!("The cell under “{heading}” is a formula. It is taken in as text and never worked out.")
}

pub(crate) fn cannot_be_used(heading: &str, message: &str, remedy: &str) -> String {
    format!("{heading}: {message} {remedy} It is kept as written and counts as not said.")
}
