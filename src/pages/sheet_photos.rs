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
    let parts = paper.case.parts.iter();
    let parts = parts.filter(|part| work.parts.contains(&part.name));
    let mut keys: Vec<String> = parts
        .flat_map(|part| part.photos.iter().map(|n| key(part.name.id(), n)))
        .collect();
    if keys.is_empty() {
        let whole = paper.case.piece.photos.iter();
        keys.extend(whole.map(|number| key("piece", number)));
    }
    let of = ["done-", &work.id].concat();
    let after: Vec<String> = work.photos.iter().map(|number| key(&of, number)).collect();
    if keys.is_empty() && after.is_empty() {
        return None;
    }
    let side = |end: &str, keys: Vec<String>, caption: &str, none: &str| {
        if keys.is_empty() {
            return Block::para(none);
        }
        Block::Photos(Photos {
            id: [id, ".", end].concat(),
            missing: words::missing(keys.len(), &small(caption)),
            keys,
            caption: caption.to_owned(),
            marks: Vec::new(),
        })
    };
    Some(Block::Row {
        blocks: vec![
            side("before", keys, words::BEFORE, words::NONE_BEFORE),
            side("after", after, words::AFTER, words::NONE_AFTER),
        ],
    })
}

fn key(of: &str, number: &str) -> String {
    [of, "/", number].concat()
}

fn photos(id: &str, of: &str, caption: &str, numbers: &[String]) -> Option<Block> {
    (!numbers.is_empty()).then(|| {
        Block::Photos(Photos {
            id: id.to_owned(),
            keys: numbers.iter().map(|number| key(of, number)).collect(),
            caption: caption.to_owned(),
            missing: words::missing(numbers.len(), &small(caption)),
            marks: Vec::new(),
        })
    })
}
