//! Several pieces: what each counts for in the price of all.

use super::MoneyInputs;
use crate::block::{Block, Tone};
use crate::wording::money::pieces as words;
use leavewell_model::terms::{capital, the_pieces};

/// Most pieces that are given a share one by one.
const MOST_SHARES: u16 = 24;

/// The shares of several pieces; nothing for one, or for more than anybody would give shares.
pub(super) fn pieces(inputs: &MoneyInputs) -> Option<Block> {
    let pieces = &inputs.case.pieces;
    if !pieces.are_several() || pieces.count > MOST_SHARES {
        return None;
    }
    let field = |no: u16| {
        let path = format!("pieces.each[no={no}].share");
        inputs.field(&path, &capital(&the_pieces(&[no])), "%", "", "", true)
    };
    let mut blocks = vec![Block::para(words::SHARES_HINT)];
    blocks.push(Block::Row {
        blocks: (1..=pieces.count).map(field).collect(),
    });
    let wrong = inputs.problem("pieces.each");
    if !wrong.is_empty() {
        blocks.push(Block::said(Tone::Stop, wrong));
    }
    Some(Block::section("worth-pieces", words::SHARES, blocks))
}
