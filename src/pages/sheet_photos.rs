//! Photographs on sheets. The record lists them; only the browser they are kept in can show them.

use super::block::{Block, Photos};
use super::sheet::Paper;
use super::sheet_done::RecordedWork;
use super::wording::sheet_photos as words;
use leavewell_model::terms::{PartName, ShortSort, small, the_pieces};

/// The photographs of the whole piece, from one of them on.
pub(super) fn of_piece(paper: &Paper, id: &str, range: std::ops::Range<usize>) -> Vec<Block> {
    let numbers = &paper.case.piece.photos;
    let from = range.start.min(numbers.len());
    let numbers = &numbers[from..range.end.clamp(from, numbers.len())];
    let mut keys = Vec::new();
    add_keys(&mut keys, "piece", numbers);
    by_piece(paper, id, keys, words::THE_PIECE)
}

/// The photographs of a part, in whatever states it is on several pieces.
pub(super) fn of_part(paper: &Paper, id: &str, part: PartName) -> Vec<Block> {
    let mut keys = Vec::new();
    for state in paper.case.parts_named(part) {
        add_keys(&mut keys, part.id(), &state.photos);
    }
    by_piece(paper, &[id, ".", part.id()].concat(), keys, part.label())
}

/// The photographs of every part that has some.
pub(super) fn of_parts(paper: &Paper, id: &str) -> Vec<Block> {
    let mut names = Vec::new();
    for part in &paper.case.parts {
        if !names.contains(&part.name) {
            names.push(part.name);
        }
    }
    let blocks = names.into_iter().map(|name| of_part(paper, id, name));
    blocks.flatten().collect()
}

/// Photographs under a caption, those that show one of several pieces by themselves: "Foot, the second".
fn by_piece(paper: &Paper, id: &str, keys: Vec<String>, caption: &str) -> Vec<Block> {
    let groups = grouped(paper, keys).into_iter().enumerate();
    let block = |(place, (on, keys)): (usize, (Vec<u16>, Vec<String>))| {
        let caption = words::of_pieces(caption, &the_pieces(&on));
        shown(&numbered(id, place), keys, &caption)
    };
    groups.map(block).collect()
}

/// The photographs from before a work beside those from after it, those that show one of several pieces by themselves;
/// `None` where there is none of both.
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
            return vec![Block::para(none)];
        }
        by_piece(paper, &[id, ".", end].concat(), keys, caption)
    };
    let mut blocks = side("before", keys, words::BEFORE, words::NONE_BEFORE);
    blocks.extend(side("after", after, words::AFTER, words::NONE_AFTER));
    Some(Block::Row { blocks })
}

/// The keys of photographs by the pieces they show, those of all pieces first.
fn grouped(paper: &Paper, keys: Vec<String>) -> Vec<(Vec<u16>, Vec<String>)> {
    let mut groups: Vec<(Vec<u16>, Vec<String>)> = Vec::new();
    for key in keys {
        let on = paper.case.pieces.shown_on(&key);
        match groups.iter_mut().find(|(of, _)| *of == on) {
            Some((_, keys)) => keys.push(key),
            None => groups.push((on, vec![key])),
        }
    }
    groups.order_by(|a, b| a.0.cmp(&b.0));
    groups
}

/// The id of the block at this place: that of the first stands alone.
fn numbered(id: &str, place: usize) -> String {
    match place {
        0 => id.to_owned(),
        _ => format!("{id}.{place}"),
    }
}

/// The keys of photographs that are not there yet.
fn add_keys(keys: &mut Vec<String>, of: &str, numbers: &[String]) {
    for number in numbers {
        let key = [of, "/", number].concat();
        if !keys.contains(&key) {
            keys.push(key);
        }
    }
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

#[cfg(test)]
mod tests {
    use super::super::Subject;
    use super::*;

    #[test]
    fn photos_from_before_a_work_say_which_piece_they_show_beside_those_from_after_it() {
        let subject = Subject::parse(
            r#"{"format":"leavewell-case","version":2,"piece":{"form":"candlestick"},
            "parts":[{"part":"foot","photos":"k1 k2 k3"}],
            "done":[{"id":"d1","what":"T12","parts":"foot","photos":"a1"}],
            "pieces":{"relation":"pair","each":[
                {"no":1,"photos":"foot/k1"},
                {"no":2,"photos":"foot/k2"}]}}"#,
        )
        .unwrap();
        let paper = Paper::new(&subject);
        let Some(Block::Row { blocks }) = before_and_after(&paper, "x", &paper.done[0]) else {
            panic!("no photographs");
        };
        let said = blocks.iter().map(|block| match block {
            Block::Photos(photos) => format!("{}: {}", photos.caption, photos.keys.join(" ")),
            other => panic!("{other:?}"),
        });
        assert_eq!(
            said.collect::<Vec<String>>(),
            [
                "Before: foot/k3",
                "Before, the first: foot/k1",
                "Before, the second: foot/k2",
                "After: done-d1/a1",
            ]
        );
    }

    #[test]
    fn photos_of_several_pieces_stand_under_the_piece_they_show_and_each_stands_once() {
        let subject = Subject::parse(
            r#"{"format":"leavewell-case","version":2,"piece":{"form":"candlestick","photos":"p1 p2"},
            "parts":[{"part":"foot","photos":"k1 k2 k3"},{"part":"body","photos":"b1"}],
            "pieces":{"relation":"pair","each":[
                {"no":1,"photos":"foot/k3"},
                {"no":2,"photos":"foot/k1 piece/p2","parts":[{"part":"body","dents":"minor"}]}]}}"#,
        )
        .unwrap();
        let paper = Paper::new(&subject);
        let mut blocks = of_piece(&paper, "x", 0..usize::MAX);
        blocks.extend(of_parts(&paper, "x"));
        let shown: Vec<(String, String)> = blocks
            .iter()
            .map(|block| match block {
                Block::Photos(photos) => (photos.caption.clone(), photos.keys.join(" ")),
                other => panic!("{other:?}"),
            })
            .collect();
        let expected = [
            ("The whole piece", "piece/p1"),
            ("The whole piece, the second", "piece/p2"),
            ("Foot", "foot/k2"),
            ("Foot, the first", "foot/k3"),
            ("Foot, the second", "foot/k1"),
            ("Body", "body/b1"),
        ];
        let expected = expected.map(|(caption, keys)| (caption.to_owned(), keys.to_owned()));
        let sorted = |mut all: Vec<(String, String)>| {
            all.sort();
            all
        };
        assert_eq!(sorted(shown), sorted(expected.to_vec()));
        let ids: Vec<&str> = blocks
            .iter()
            .filter_map(|block| match block {
                Block::Photos(photos) => Some(photos.id.as_str()),
                _ => None,
            })
            .collect();
        assert!(
            ids.iter()
                .all(|id| ids.iter().filter(|other| *other == id).count() == 1)
        );
    }
}
