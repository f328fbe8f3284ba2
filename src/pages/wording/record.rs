//! Wording of the condition record.

// Headings

pub(crate) const LOOKED: &str = "Who looked, and how";
pub(crate) const PIECE: &str = "The piece";
pub(crate) const PARTS: &str = "Part by part";
pub(crate) const MORE: &str = "Add details";
pub(crate) const EARLIER: &str = "Since an earlier record";

// Who looked, and how

pub(crate) const DATE: &str = "Date";
pub(crate) const DATE_HINT: &str = "Year-month-day.";
pub(crate) const WHO: &str = "Who looked";
pub(crate) const LIGHT: &str = "Light";
pub(crate) const LIGHT_HINT: &str = "For example daylight from a north window, or a torch held \
    low.";
pub(crate) const AIDS: &str = "Aids";
pub(crate) const AIDS_HINT: &str = "For example loupe, scale, grid, gloves.";
pub(crate) const WHY: &str = "Why";
pub(crate) const WHY_HINT: &str = "For example before a loan, after a fall, yearly check.";
pub(crate) const KEPT_AT: &str = "Where it was kept";
pub(crate) const FOR_WHOM: &str = "For whom it is written";
pub(crate) const FOR_WHOM_HINT: &str = "For example the owner, a client, an insurer.";
pub(crate) const NEXT: &str = "Look again on";
pub(crate) const WATCH: &str = "What to look at then";
pub(crate) const WATCH_HINT: &str =
    "In your words. What the record itself asks for stands beside it on the sheet.";

// The piece

pub(crate) const NOT_RECORDED: &str = "not recorded";
pub(crate) const CALLED: &str = "Called";
pub(crate) const KIND: &str = "Kind of piece";
pub(crate) const MADE: &str = "Date made, as stated";

pub(crate) fn not_before(year: u16) -> String {
    format!("not before {year}")
}

pub(crate) fn not_after(year: u16) -> String {
    format!("not after {year}")
}

pub(crate) fn between(from: u16, to: u16) -> String {
    format!("{from} to {to}")
}

pub(crate) const HEIGHT: &str = "Height";

pub(crate) fn mm(height: f64) -> String {
    format!("{height} mm")
}

pub(crate) const NUMBER: &str = "Number or mark it is known by";
pub(crate) const DESCRIPTION: &str = "Description";
pub(crate) const DESCRIPTION_HINT: &str = "What a stranger needs to recognise it.";
pub(crate) const SEEN: &str = "Signs seen of how it was made";

// Part by part

pub(crate) const NO_PART: &str = "No part is recorded yet. Start on Condition, or below.";

pub(crate) fn not_looked_at(parts: &str) -> String {
    format!("Not looked at: {parts}.")
}

// Details

pub(crate) const PART: &str = "Part";
pub(crate) const NOT_LOOKED: &str = "Not looked";

// Since an earlier record

pub(crate) const NO_EARLIER: &str = "No earlier record is kept. Keep a copy of this one before \
    anything is done to the piece, so that you can compare the next look with it.";
pub(crate) const NO_DAY: &str = "a day not noted";

pub(crate) fn by(whom: &str) -> String {
    format!(", by {whom}")
}

pub(crate) fn compared(on: &str, by: &str) -> String {
    format!("Compared with the record of {on}{by}:")
}

pub(crate) const NOTHING_DIFFERS: &str = "Nothing differs.";

pub(crate) fn differs(on: &str) -> String {
    format!("What differs from {on}")
}

pub(crate) const DIFFERENCE_COLUMNS: [&str; 4] = ["Part", "What", "Then", "Now"];
