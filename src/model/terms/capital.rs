//! Changes the case of the first letter of a text.

/// The same words with an initial capital. Our own texts start with ASCII letters, so this needs no Unicode
/// case tables.
#[must_use]
pub fn capital(words: &str) -> String {
    let mut words = words.to_owned();
    if let Some(first) = words.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    words
}

/// The text with a lower-case first letter, for the middle of a sentence. Abbreviations and names stay as they
/// are.
#[must_use]
pub fn small(text: &str) -> String {
    let mut small = text.to_owned();
    let goes_on = |second: &u8| second.is_ascii_lowercase() || *second == b' ';
    if text.as_bytes().get(1).is_some_and(goes_on)
        && !text.starts_with("Britannia")
        && let Some(first) = small.get_mut(..1)
    {
        first.make_ascii_lowercase();
    }
    small
}

#[cfg(test)]
mod tests {
    use super::{capital, small};

    #[test]
    fn only_the_first_letter_changes_and_only_where_it_can() {
        assert_eq!(capital("leave it alone"), "Leave it alone");
        assert_eq!(capital("€ 5"), "€ 5");
        assert_eq!(capital(""), "");
    }

    #[test]
    fn the_first_letter_becomes_lower_case_except_in_abbreviations() {
        assert_eq!(small("Gentle cleaning"), "gentle cleaning");
        assert_eq!(small("A style"), "a style");
        assert_eq!(small("Britannia metal"), "Britannia metal");
        assert_eq!(small("X-ray reading"), "X-ray reading");
        assert_eq!(small(""), "");
    }
}
