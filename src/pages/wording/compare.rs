//! Wording of the comparison of two records.

// Places of the record

pub(crate) fn look(id: &str) -> String {
    format!("Look {id}")
}

pub(crate) fn price_asked(what: &str) -> String {
    format!("Quote: {what}")
}

pub(crate) fn of_part(part: &str, field: &str) -> String {
    format!("{part}: {field}")
}

pub(crate) fn of_entry(list: &str, id: &str, field: &str) -> String {
    format!("{list} ({id}): {field}")
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
