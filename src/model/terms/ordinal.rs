//! Which of several pieces, in words.

/// The first ten, for the middle of a sentence.
const ORDINALS: [&str; 10] = [
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth",
];
/// Most pieces named one by one.
const NAMED: usize = 3;

/// One piece by its number from 1 up: "second", "no. 14".
#[must_use]
pub fn ordinal(no: u16) -> String {
    let word = usize::from(no)
        .checked_sub(1)
        .and_then(|at| ORDINALS.get(at));
    word.map_or_else(|| format!("no. {no}"), |word| (*word).to_owned())
}

/// Pieces by their numbers: "the second", "the first and third", "5 of them". Nothing for none.
#[must_use]
pub fn the_pieces(numbers: &[u16]) -> String {
    let words: Vec<String> = numbers.iter().map(|no| ordinal(*no)).collect();
    match &words[..] {
        [] => String::new(),
        [one] => format!("the {one}"),
        [rest @ .., last] if words.len() <= NAMED => {
            format!("the {} and {last}", rest.join(", "))
        }
        _ => format!("{} of them", words.len()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_few_pieces_are_named_and_many_counted() {
        for (numbers, words) in [
            (&[][..], ""),
            (&[2], "the second"),
            (&[1, 3], "the first and third"),
            (&[1, 2, 14], "the first, second and no. 14"),
            (&[1, 2, 3, 4], "4 of them"),
        ] {
            assert_eq!(the_pieces(numbers), words);
        }
    }
}
