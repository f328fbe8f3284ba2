//! The meanings of trade words on a sheet, for print, where nothing can be tapped.

use super::block::Block;
use super::scale_words::scale;
use super::sheet_cautions::words_of;
use super::wording::sheet_glossary as words;
use leavewell_model::ledger::{Ledger, WORDS, words_in};

/// The trade words in these blocks with their meanings, and the scale of likelihood.
pub(super) fn word_list(blocks: &[Block], ledger: &Ledger) -> Block {
    let used = words_in(&words_of(blocks));
    let rows: Vec<(String, String)> = WORDS
        .iter()
        .enumerate()
        .filter(|(at, _)| used >> at & 1 == 1)
        .map(|(_, known)| (known.word.to_owned(), known.meaning.to_owned()))
        .collect();
    let mut inner = Vec::new();
    if !rows.is_empty() {
        inner.push(Block::Facts { rows });
    }
    inner.push(Block::para(words::LIKELIHOOD));
    inner.push(Block::Facts {
        rows: scale(ledger),
    });
    inner.push(Block::para(words::FIRMNESS_AND_RANGES));
    Block::section("sheet.words", words::WORDS_USED, inner)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_words_used_are_explained() {
        let list = word_list(
            &[Block::para("Fused plate with a bleed.")],
            Ledger::standard(),
        );
        let words = words_of(&[list]);
        assert!(words.contains("silver and copper joined by heat"));
        assert!(words.contains("worn through"));
        assert!(!words.contains("knocked down"));
    }
}
