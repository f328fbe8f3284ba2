//! What the trade's words on a sheet mean, for print where nothing can be pointed at.

use super::block::Block;
use super::scale_words::scale;
use super::sheet_cautions::words_of;
use crate::facts::Ledger;

/// Word, the pieces of it that tell it is used (parted by `|`), and what it means.
const WORDS: [(&str, &str, &str); 26] = [
    (
        "auction commission",
        "commission",
        "The seller's fee to an auction house, a share of the hammer price.",
    ),
    (
        "base metal",
        "base metal",
        "The copper, brass, nickel silver, Britannia metal or steel under the silver.",
    ),
    (
        "bleed",
        "bleed",
        "Base metal showing where the silver has worn through.",
    ),
    (
        "Britannia metal",
        "britannia",
        "A soft alloy, mostly tin, that melts low.",
    ),
    (
        "close plate",
        "close plate",
        "Silver foil held by tin on iron or steel.",
    ),
    (
        "display only",
        "display",
        "Not to be used for food or drink.",
    ),
    (
        "electroplate",
        "electroplat",
        "Base metal covered with silver by an electric current, from about 1840.",
    ),
    (
        "filled mount",
        "filled",
        "A thin stamped border or foot, backed with soft grey metal or pitch to hold its shape.",
    ),
    (
        "flat chasing",
        "chas",
        "A pattern pressed into the surface with blunt tools; no metal is cut away.",
    ),
    (
        "French plate",
        "french plate",
        "Silver leaf rubbed onto brass, bronze or copper with heat.",
    ),
    (
        "fused plate",
        "fused plate",
        "Copper with a sheet of silver fused to it by heat, then rolled and worked; the trade's old Sheffield plate.",
    ),
    (
        "hammer",
        "hammer",
        "The price a lot is knocked down for, before fees.",
    ),
    (
        "lacquer",
        "lacquer",
        "A clear coat that keeps tarnish away.",
    ),
    (
        "let-in shield",
        "let in",
        "A piece of thicker silver set into fused plate where arms were to be engraved.",
    ),
    (
        "nickel silver",
        "nickel silver",
        "A white alloy of copper, nickel and zinc; there is no silver in it.",
    ),
    (
        "originality",
        "original",
        "How much of what left the maker's hands is still there, from 0 to 1.",
    ),
    (
        "Part",
        "condition by part",
        "A named piece of the whole, such as foot or spout, with a condition of its own.",
    ),
    (
        "preventive conservation",
        "preventive",
        "Looking after the surroundings and use of a piece; the piece itself is not touched.",
    ),
    (
        "remedial conservation",
        "remedial",
        "Work on a piece to stop damage going on, or to strengthen it.",
    ),
    (
        "re-plated",
        "re-plat|replat",
        "Covered with new silver by electricity after it left the maker.",
    ),
    (
        "reserve",
        "reserve",
        "The least a seller will take at auction.",
    ),
    (
        "restoration",
        "restoration",
        "Work on a sound piece so that it can be better enjoyed, understood or used.",
    ),
    (
        "reversibility",
        "undone",
        "How far a thing done can be undone without harm.",
    ),
    (
        "soft solder",
        "solder",
        "A low-melting metal that joins parts; old solder usually holds lead.",
    ),
    (
        "tarnish",
        "tarnish",
        "The dark layer that sulphur in the air makes of silver.",
    ),
    ("tinning", "tinned", "A lining of tin over copper."),
];

/// The words used on these blocks with their meanings, and the words for how likely a thing is.
pub(super) fn word_list(blocks: &[Block], ledger: &Ledger) -> Block {
    let said = words_of(blocks).to_lowercase();
    let rows: Vec<(String, String)> = WORDS
        .iter()
        .filter(|(_, signs, _)| signs.split('|').any(|sign| said.contains(sign)))
        .map(|(word, _, meaning)| ((*word).to_owned(), (*meaning).to_owned()))
        .collect();
    let mut inner = Vec::new();
    if !rows.is_empty() {
        inner.push(Block::Facts { rows });
    }
    inner.push(Block::para(
        "How likely a thing is, is said in these words (Mastrandrea et al. 2010). Where two ranges meet, the narrower one is meant.",
    ));
    inner.push(Block::Facts {
        rows: scale(ledger),
    });
    inner.push(Block::para(
        "Clear, leaning and open say how firm an answer is. A range such as \"200 to 400\" leaves out the lowest and the \
         highest tenth of the ways things may be; the middle value has as many above it as below.",
    ));
    Block::section("sheet.words", "Words used here", inner)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_words_that_are_used_are_explained() {
        let list = word_list(
            &[Block::para("Fused plate with a bleed.")],
            Ledger::standard(),
        );
        let words = words_of(&[list]);
        assert!(words.contains("Copper with a sheet of silver fused"));
        assert!(words.contains("worn through"));
        assert!(!words.contains("knocked down"));
    }

    #[test]
    fn words_stand_in_order_and_no_meaning_needs_another_list() {
        let names = WORDS.map(|(w, _, _)| w.to_lowercase().replace('-', ""));
        assert!(names.is_sorted(), "{names:?}");
        for (word, sign, meaning) in WORDS {
            assert!(
                meaning.ends_with('.') && sign == sign.to_lowercase(),
                "{word}"
            );
        }
    }
}
