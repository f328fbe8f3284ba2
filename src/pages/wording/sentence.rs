//! Wording of lists in a sentence.

pub(crate) fn and(all_but_last: &str, last: &str) -> String {
    format!("{all_but_last} and {last}")
}
