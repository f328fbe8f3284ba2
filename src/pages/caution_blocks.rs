//! Cautions as blocks. Invariant: no treatment is named without its caution.

use super::block::{Block, Tone};
use super::wording::caution_blocks as words;
use leavewell_model::ledger::{CautionText, Level, caution, duties, signposts};
use leavewell_model::terms::Treatment;

/// The tone of a caution level.
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

/// The caution of a treatment. The child block appears once on every page that names treatments, at the
/// first hazard: see `caution.child` there.
pub(super) fn of_treatment(treatment: Treatment) -> Option<Block> {
    named(&format!("caution.{}", treatment.id()))
}

/// The caution with this id.
pub(super) fn named(id: &str) -> Option<Block> {
    caution(id).map(said)
}

/// The foot of every page that names a treatment: law and limits, whom to call, and the deferral line, word
/// for word.
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
