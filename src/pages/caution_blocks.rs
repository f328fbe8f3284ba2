//! Cautions as blocks: what is named is never shown without them.

use super::block::{Block, Tone};
use super::wording::caution_blocks as words;
use leavewell_model::ledger::{CautionText, Level, caution, duties, signposts};
use leavewell_model::terms::Treatment;

/// A level as a tone.
pub(super) fn tone(level: Level) -> Tone {
    match level {
        Level::Stop => Tone::Stop,
        Level::Care => Tone::Care,
        Level::Note => Tone::Note,
    }
}

fn said(text: &CautionText) -> Block {
    Block::said(tone(text.level), text.text)
}

/// The caution of a treatment. The words on children and pregnancy stand once on every page that names
/// treatments, where they are met first: see `caution.child` there.
pub(super) fn of_treatment(treatment: Treatment) -> Option<Block> {
    named(&format!("caution.{}", treatment.id()))
}

/// A caution by its id.
pub(super) fn named(id: &str) -> Option<Block> {
    caution(id).map(said)
}

/// What stands at the foot of every page that names a treatment: law and limits, whom to call, and
/// the line that defers, word for word.
pub(super) fn foot(page: &str) -> Vec<Block> {
    let law = duties()
        .iter()
        .map(|d| (d.place.to_owned(), d.told()))
        .collect();
    let calls = signposts()
        .into_iter()
        .map(|(what, words)| (what.to_owned(), words.to_owned()))
        .collect();
    let mut blocks = vec![
        Block::fold(
            &format!("{page}.law"),
            words::LAW,
            vec![Block::Facts { rows: law }],
        ),
        Block::fold(
            &format!("{page}.help"),
            words::HELP,
            vec![
                Block::Facts { rows: calls },
                Block::said(Tone::Quiet, words::NUMBERS_ARE_RECALLED),
            ],
        ),
    ];
    blocks.extend(named("caution.deferral"));
    blocks
}
