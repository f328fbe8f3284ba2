//! Lists as part of a sentence.

use super::wording::sentence as words;

/// A list as in a sentence: "a, b and c".
pub(super) fn and(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [rest @ .., last] => words::and(&rest.join(", "), last),
    }
}
