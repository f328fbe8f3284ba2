//! The bench: three calculators, each with its fields, its result, a drawing and its sources.
//!
//! A calculator is a function in [`SECTIONS`]. To add one, list it there.

use super::Subject;
use super::block::{Block, Tone};
use super::wording::bench as words;
use super::{caution_blocks, food, heat, plating};
use leavewell_model::counsel::Solved;
use leavewell_model::ledger::Ledger;
use leavewell_model::record::{Case, Draft, Problem};

/// The inputs of a calculator.
pub(super) struct Bench<'a> {
    /// The record as typed, which holds the text of the fields.
    pub(super) draft: &'a Draft,
    /// The usable part of the record, which supplies defaults.
    pub(super) case: &'a Case,
    /// What the record's reader found wrong.
    pub(super) problems: &'a [Problem],
    /// The case solved.
    pub(super) solved: &'a Solved,
    /// The figures, with the user's own.
    pub(super) ledger: &'a Ledger,
}

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
