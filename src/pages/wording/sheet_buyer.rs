//! Wording of the sheet for a buyer.

// Headings

pub(crate) const FOR_A_BUYER: &str = "For a buyer";
pub(crate) const TICKET: &str = "For a ticket";
pub(crate) const CATALOGUE: &str = "For a catalogue";
pub(crate) const DISCLOSED: &str = "What is disclosed";
pub(crate) const KEEP_EACH: &str = "Keep every one of these in your own description.";
pub(crate) const LAW_OF_THE_PLACE: &str = "A sale description must be true under the law of the \
    place of sale: check it there. This one says only what the record says and what follows from \
    it; check it against the piece.";

// What it is, and its years

pub(crate) const NO_FORM: &str = "A piece whose form is not recorded";

pub(crate) fn stated_from(from: u16) -> String {
    format!("said to be from {from} or later")
}

pub(crate) fn stated_until(to: u16) -> String {
    format!("said to be from {to} or earlier")
}

pub(crate) fn stated_between(from: u16, to: u16) -> String {
    format!("said to be from {from} to {to}")
}

pub(crate) fn probably(years: &str) -> String {
    format!("probably {years}")
}

/// The years by the evidence, beside years stated that do not fit them.
pub(crate) fn found_and_stated(found: &str, stated: &str) -> String {
    format!("{found} by the evidence, {stated}")
}

/// The years to which the evidence and the years stated lead together.
pub(crate) fn stated_and_found(stated: &str, found: &str) -> String {
    format!("{stated}; from that and the evidence, {found}")
}

pub(crate) fn form_and_years(form: &str, years: &str) -> String {
    format!("{form}, {years}")
}

pub(crate) const UNKNOWN_METAL: &str = "What it is made of is not known";

// The ticket

pub(crate) const NOT_EXAMINED: &str =
    "Not examined: what it is made of, repairs and re-plating not known";

// The catalogue, sentence by sentence

pub(crate) fn called(name: &str) -> String {
    format!("Called \"{name}\" by its owner.")
}

pub(crate) fn height(mm: f64) -> String {
    format!("Height {mm} mm.")
}

pub(crate) const NOT_EXAMINED_SENTENCE: &str = "It has not been examined: what it is made of, and \
    whether it was repaired, re-plated or has replaced parts, is not known.";

pub(crate) fn as_found(likely: &str) -> String {
    format!("From the findings: {likely}.")
}

pub(crate) const NO_EARLIER_WORK: &str =
    "No document or date of earlier work is on record; there may still have been some.";

pub(crate) fn on_record(work: &str) -> String {
    format!("On record: {work}.")
}

pub(crate) const DOCUMENTED: &str = "Its history is documented.";

pub(crate) fn not_looked_at(parts: &str) -> String {
    format!("Not looked at: {parts}.")
}

// Marks

/// A mark as read, and the part that carries it.
pub(crate) fn quoted(mark: &str, part: Option<&str>) -> String {
    match part {
        Some(part) => format!("“{mark}” ({part})"),
        None => format!("“{mark}”"),
    }
}

pub(crate) fn marked(marks: &str) -> String {
    format!("Marked: {marks}.")
}

pub(crate) const NO_MARK: &str = "It has no mark.";
pub(crate) const MARKS_NOT_RECORDED: &str = "Marks are not recorded.";
