//! Wording of the comparison of two records.

// Places of the record

/// Labels of fields outside parts. A field not listed here shows its own name, made readable.
pub(crate) const NAMES: [(&str, &str); 26] = [
    ("asked_on", "Day the question was asked"),
    ("aim.doer", "Who would do the work"),
    ("aim.food", "Food or drink"),
    ("aim.goal", "What you want from it"),
    (
        "aim.household_child_or_pregnant",
        "Children or pregnancy in the household",
    ),
    ("comparables", "Prices of similar pieces"),
    ("earlier", "Earlier records of condition"),
    ("looked", "How it was looked at"),
    ("looked.on", "Day it was looked at"),
    ("market.currency", "Currency"),
    ("market.high", "High price"),
    ("market.likely", "Likely price"),
    ("market.low", "Low price"),
    ("market.route", "How it would be sold"),
    ("overrides", "Your own figure"),
    ("piece.came_from", "How it came to you"),
    ("piece.documented", "Its history is documented"),
    ("piece.form", "What it is"),
    ("piece.from_year", "Not before"),
    ("piece.height_mm", "Height (mm)"),
    ("piece.name", "What you call it"),
    ("piece.rare", "Rare"),
    ("piece.soldered_vessel", "Held together with solder"),
    ("piece.to_year", "Not after"),
    ("findings", "Looks"),
    ("quotes", "Quotes"),
];

pub(crate) fn look(id: &str) -> String {
    format!("Look {id}")
}

pub(crate) fn price_asked(what: &str) -> String {
    format!("Quote: {what}")
}

pub(crate) fn of_part(part: &str, field: &str) -> String {
    format!("{part}: {field}")
}

pub(crate) fn own_figure(id: &str) -> String {
    format!("Your own figure: {id}")
}

pub(crate) const UNNAMED_FIELD: &str = "A field without a name";

// Earlier records

pub(crate) const NO_LONGER_THERE: &str = "That earlier record is no longer kept in this one.";
pub(crate) const UNDATED: &str = "Without a date";

// Values

pub(crate) const TO: &str = " to ";
pub(crate) const ONE_ENTRY: &str = "1 entry";

pub(crate) fn entries(count: usize) -> String {
    format!("{count} entries")
}

pub(crate) const YES: &str = "Yes";
pub(crate) const NO: &str = "No";
pub(crate) const NOTHING: &str = "Nothing";
