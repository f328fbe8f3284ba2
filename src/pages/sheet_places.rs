//! Faults shown at a place, on sheets: numbered on the drawing and on photographs, and described in words.

use super::as_typed::as_typed;
use super::block::{Block, NumberedPlace, Photos, PlacesOnPiece};
use super::sheet::Paper;
use super::wording::sheet_photos::missing;
use super::wording::sheet_places as words;
use leavewell_model::record::{Case, FaultSpot};
use leavewell_model::terms::{PartName, SpotFault, small};

/// A fault at a place, with its number on the sheet.
pub(super) struct PlacedFault<'a> {
    number: u16,
    pub(super) part: PartName,
    pub(super) spot: &'a FaultSpot,
}

/// Every placed fault, in the order of the parts.
pub(super) fn placed(case: &Case) -> Vec<PlacedFault<'_>> {
    let mut placed: Vec<PlacedFault<'_>> = Vec::new();
    let mut number = 0;
    for part in &case.parts {
        for spot in &part.spots {
            // A part stands once for each state it is in on several pieces, with the places of all.
            let is_same = |known: &PlacedFault| known.part == part.name && known.spot == spot;
            if placed.iter().any(is_same) {
                continue;
            }
            number += 1;
            placed.push(PlacedFault {
                number,
                part: part.name,
                spot,
            });
        }
    }
    placed
}

/// The lines of one part, in words.
pub(super) fn lines_of(placed: &[PlacedFault], part: Option<PartName>) -> Vec<String> {
    let mut lines = Vec::new();
    for fault in placed {
        if Some(fault.part) == part {
            lines.push(fault.in_words());
        }
    }
    lines
}

impl PlacedFault<'_> {
    /// The fault with how many, where, and the note.
    fn in_words(&self) -> String {
        let FaultSpot {
            fault, count, note, ..
        } = self.spot;
        let where_it_is = match (self.spot.at, &self.spot.photo) {
            (None, _) => String::new(),
            (Some(at), None) => words::on_drawing(words::place(at)),
            (Some(at), Some(_)) => words::on_photo(words::place(at)),
        };
        words::placed(
            self.number,
            &words::several(fault.label(), *count),
            &where_it_is,
            &as_typed(note),
        )
    }

    fn mark(&self) -> Option<NumberedPlace> {
        let (x, y) = self.spot.at?;
        Some(NumberedPlace {
            number: self.number,
            x,
            y,
        })
    }
}

/// The drawing and the photographs with the numbered places on them; empty where nothing is placed.
pub(super) fn pictures(paper: &Paper, placed: &[PlacedFault]) -> Vec<Block> {
    let mut blocks = Vec::new();
    let on_drawing = placed.iter().filter(|p| p.spot.photo.is_none());
    let marks: Vec<NumberedPlace> = on_drawing.filter_map(PlacedFault::mark).collect();
    if !marks.is_empty() {
        blocks.push(Block::PlacesOnPiece(PlacesOnPiece {
            id: "places.drawing".to_owned(),
            title: words::ON_THE_DRAWING.to_owned(),
            form: paper
                .case
                .piece
                .form
                .map_or("", |form| form.id())
                .to_owned(),
            marks,
        }));
    }
    let mut keys: Vec<&String> = Vec::new();
    for key in placed.iter().filter_map(|p| p.spot.photo.as_ref()) {
        if !keys.contains(&key) {
            keys.push(key);
        }
    }
    for (at, key) in keys.into_iter().enumerate() {
        let on_it = placed.iter().filter(|p| p.spot.photo.as_ref() == Some(key));
        blocks.push(Block::Photos(Photos {
            id: format!("places.photo.{at}"),
            keys: vec![key.clone()],
            caption: words::ON_A_PHOTO.to_owned(),
            missing: missing(1, &small(words::ON_A_PHOTO)),
            marks: on_it.filter_map(PlacedFault::mark).collect(),
        }));
    }
    blocks
}

/// The placed faults of one kind and part together, in few words: "small dent (3), body".
pub(super) fn summed(placed: &[PlacedFault]) -> Vec<String> {
    let mut sums: Vec<(SpotFault, PartName, u32)> = Vec::new();
    for fault in placed {
        let (kind, part) = (fault.spot.fault, fault.part);
        let known = sums.iter_mut().find(|(k, p, _)| *k == kind && *p == part);
        match known {
            Some((.., count)) => *count = count.saturating_add(fault.spot.count),
            None => sums.push((kind, part, fault.spot.count)),
        }
    }
    sums.into_iter()
        .map(|(kind, part, count)| {
            words::summed(&words::several(kind.label(), count), &small(part.label()))
        })
        .collect()
}
