//! The bench: three calculators, each with its fields, its result, a drawing and its sources.
//!
//! A calculator is a function in [`SECTIONS`]. To add one, list it there.

use super::Subject;
use super::bench_inputs::Bench;
use super::block::{Block, Tone};
use super::wording::bench as words;
use super::{caution_blocks, food, heat, plating};

/// The calculators in display order. Readings of the metal itself are separate pages, shown on Look,
/// Condition and the bench.
const SECTIONS: [fn(&Bench<'_>) -> Block; 3] = [heat::section, plating::section, food::section];

/// Builds the page.
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let solved = subject.solved();
    let bench = Bench {
        draft: subject.draft(),
        case: subject.case(),
        problems: subject.problems(),
        solved,
        ledger: solved.ledger(),
    };
    let mut blocks = vec![Block::said(Tone::Quiet, words::WHAT_FOR)];
    blocks.extend(SECTIONS.iter().map(|section| section(&bench)));
    blocks.extend(caution_blocks::foot("bench"));
    blocks
}
