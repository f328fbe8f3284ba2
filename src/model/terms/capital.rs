//! A capital at the start.

/// The same words with a capital at the start. Our own words start with plain letters, so the tables
/// of all the world's letters stay out.
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
    let mut letters = text.chars();
    let is_name = text.starts_with("Britannia");
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if !is_name && (second.is_lowercase() || second == ' ') => {
            first.to_lowercase().chain(letters).collect()
        }
        _ => text.to_owned(),
    }
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
