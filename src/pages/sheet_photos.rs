//! Photographs on sheets. The record lists them; only the browser they are kept in can show them.

use super::block::{Block, Photos};
use super::sheet::Paper;
use super::sheet_done::RecordedWork;
use super::wording::sheet_photos as words;
use leavewell_model::record::Part;
use leavewell_model::terms::small;

/// The photographs of the whole piece, from one of them on; `None` where there are no more.
pub(super) fn of_piece(paper: &Paper, id: &str, range: std::ops::Range<usize>) -> Option<Block> {
    let numbers = &paper.case.piece.photos;
    let from = range.start.min(numbers.len());
    let numbers = &numbers[from..range.end.clamp(from, numbers.len())];
    photos(id, "piece", words::THE_PIECE, numbers)
}

/// The photographs of a part; `None` where there is none.
pub(super) fn of_part(id: &str, part: &Part) -> Option<Block> {
    let label = part.name.label();
    photos(
        &[id, ".", part.name.id()].concat(),
        part.name.id(),
        label,
        &part.photos,
    )
}

/// The photographs of every part that has some.
pub(super) fn of_parts<'a>(paper: &'a Paper, id: &'a str) -> impl Iterator<Item = Block> + 'a {
    let parts = paper.case.parts.iter();
    parts.filter_map(move |part| of_part(id, part))
}

/// The photographs from before a work beside those from after it; `None` where there is none of both.
pub(super) fn before_and_after(paper: &Paper, id: &str, work: &RecordedWork) -> Option<Block> {
    let mut keys = Vec::new();
    for part in &paper.case.parts {
        if work.parts.contains(&part.name) {
            add_keys(&mut keys, part.name.id(), &part.photos);
        }
    }
    if keys.is_empty() {
        add_keys(&mut keys, "piece", &paper.case.piece.photos);
    }
    let mut after = Vec::new();
    add_keys(&mut after, &["done-", &work.id].concat(), &work.photos);
    if keys.is_empty() && after.is_empty() {
        return None;
    }
    let side = |end: &str, keys: Vec<String>, caption: &str, none: &str| {
        if keys.is_empty() {
            return Block::para(none);
        }
        shown(&[id, ".", end].concat(), keys, caption)
    };
    Some(Block::Row {
        blocks: vec![
            side("before", keys, words::BEFORE, words::NONE_BEFORE),
            side("after", after, words::AFTER, words::NONE_AFTER),
        ],
    })
}

fn add_keys(keys: &mut Vec<String>, of: &str, numbers: &[String]) {
    for number in numbers {
        keys.push([of, "/", number].concat());
    }
}

fn photos(id: &str, of: &str, caption: &str, numbers: &[String]) -> Option<Block> {
    let mut keys = Vec::new();
    add_keys(&mut keys, of, numbers);
    (!keys.is_empty()).then(|| shown(id, keys, caption))
}

fn shown(id: &str, keys: Vec<String>, caption: &str) -> Block {
    Block::Photos(Photos {
        id: id.to_owned(),
        missing: words::missing(keys.len(), &small(caption)),
        keys,
        caption: caption.to_owned(),
        marks: Vec::new(),
    })
}
