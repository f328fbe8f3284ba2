//! Titles of the sheets.

pub(crate) const FOR_THE_CLIENT: &str = "For the client";
pub(crate) const FOR_A_BUYER: &str = "For a buyer";
pub(crate) const FOR_THE_FILE: &str = "For the file";
pub(crate) const CONSERVATION: &str = "Condition and treatment record";

pub(crate) fn titled(piece: &str, title: &str) -> String {
    format!("{piece}: {title}")
}
