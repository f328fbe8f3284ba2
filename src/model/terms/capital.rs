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

#[cfg(test)]
mod tests {
    use super::capital;

    #[test]
    fn only_the_first_letter_changes_and_only_where_it_can() {
        assert_eq!(capital("leave it alone"), "Leave it alone");
        assert_eq!(capital("€ 5"), "€ 5");
        assert_eq!(capital(""), "");
    }
}
