//! Lists within a sentence. Every sentence puts its lists together here, so that another language replaces three
//! functions and no sentence.

/// "a", "a or b", "a, b or c".
#[must_use]
pub fn any_of<T: AsRef<str>>(items: &[T]) -> String {
    ended(items, " or ")
}

/// "a", "a and b", "a, b and c".
#[must_use]
pub fn all_of<T: AsRef<str>>(items: &[T]) -> String {
    ended(items, " and ")
}

/// What comes one after the other: "a", "a, then b", "a, then b, then c".
#[must_use]
pub fn in_turn<T: AsRef<str>>(items: &[T]) -> String {
    let items: Vec<&str> = items.iter().map(T::as_ref).collect();
    items.join(", then ")
}

fn ended<T: AsRef<str>>(items: &[T], last: &str) -> String {
    let items: Vec<&str> = items.iter().map(T::as_ref).collect();
    match &items[..] {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [most @ .., end] => [&most.join(", "), last, end].concat(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_last_of_a_list_has_a_word_before_it() {
        assert_eq!(any_of::<&str>(&[]), "");
        assert_eq!(any_of(&["a"]), "a");
        assert_eq!(any_of(&["a", "b"]), "a or b");
        assert_eq!(all_of(&["a", "b", "c"]), "a, b and c");
        assert_eq!(in_turn(&["a", "b", "c"]), "a, then b, then c");
    }
}
