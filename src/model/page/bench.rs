//! The bench: small instruments, each with its fields, its result first, a drawing and its sources.
//!
//! An instrument is a function in [`SECTIONS`]; another is added there and nowhere else.

use std::borrow::Cow;

use super::block::{Block, Tone};
use super::{bleed, caution_blocks, food, heat, measures, plating};
use crate::case::{Case, Draft};
use crate::facts::{Ledger, ledger_of};

/// What an instrument looks at.
pub(super) struct Bench<'a> {
    /// The record as typed: the fields stand in it.
    pub(super) draft: &'a Draft,
    /// What of it can be used: stand-ins come from it.
    pub(super) case: Case,
    /// The figures, with the case's own.
    pub(super) ledger: Cow<'static, Ledger>,
}

/// The instruments, in the order shown. Those that read the metal itself stand on Look and Condition as
/// well: what is put in at one place is there at the other.
const SECTIONS: [fn(&Bench<'_>) -> Block; 5] = [
    heat::section,
    plating::section,
    food::section,
    readings,
    counted,
];

fn readings(bench: &Bench<'_>) -> Block {
    Block::fold(
        "bench.readings",
        "Density, conductivity and X-ray readings",
        measures::page(bench.draft),
    )
}

fn counted(bench: &Bench<'_>) -> Block {
    Block::fold(
        "bench.count",
        "Counting points on bare metal",
        bleed::count(bench.draft),
    )
}

/// The page.
pub(super) fn page(draft: &Draft) -> Vec<Block> {
    let (case, _) = draft.read();
    let ledger = ledger_of(&case);
    let bench = Bench {
        draft,
        case,
        ledger,
    };
    let mut blocks = vec![Block::said(
        Tone::Quiet,
        "For talking to whoever would do the work. A field left empty takes what stands in it, from the piece where \
         it can.",
    )];
    blocks.extend(SECTIONS.iter().map(|section| section(&bench)));
    blocks.extend(caution_blocks::foot("bench"));
    blocks
}
