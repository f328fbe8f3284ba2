//! The bench: small instruments, each with its fields, its result first, a drawing and its sources.
//!
//! An instrument is a function in [`SECTIONS`]; another is added there and nowhere else.

use super::Subject;
use super::block::{Block, Tone};
use super::wording::bench as words;
use super::{caution_blocks, food, heat, plating};
use leavewell_model::counsel::Solved;
use leavewell_model::ledger::Ledger;
use leavewell_model::record::{Case, Draft};

/// What an instrument looks at.
pub(super) struct Bench<'a> {
    /// The record as typed: the fields stand in it.
    pub(super) draft: &'a Draft,
    /// What of it can be used: stand-ins come from it.
    pub(super) case: &'a Case,
    /// The case solved.
    pub(super) solved: &'a Solved,
    /// The figures, with the case's own.
    pub(super) ledger: &'a Ledger,
}

/// The instruments, in the order shown. Those that read the metal itself are pages of their own, which
/// stand on Look, on Condition and on the bench.
const SECTIONS: [fn(&Bench<'_>) -> Block; 3] = [heat::section, plating::section, food::section];

/// The page.
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let solved = subject.solved();
    let bench = Bench {
        draft: subject.draft(),
        case: subject.case(),
        solved,
        ledger: solved.ledger(),
    };
    let mut blocks = vec![Block::said(Tone::Quiet, words::WHAT_FOR)];
    blocks.extend(SECTIONS.iter().map(|section| section(&bench)));
    blocks.extend(caution_blocks::foot("bench"));
    blocks
}
