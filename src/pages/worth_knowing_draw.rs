//! Bar charts with names and numbers, for a narrow screen.

use super::picture::wrapped;
use super::{Anchor, Block, Ink, Mark, Picture, Table};

/// One bar.
pub(super) struct NamedBar {
    pub(super) label: String,
    /// Length; at least 0.
    pub(super) value: f64,
    /// The number beside the bar.
    pub(super) text: String,
    pub(super) ink: Ink,
}

/// A width that fits a phone, in picture units.
pub(super) const WIDTH: f64 = 320.0;
const LINE: f64 = 16.0;
const BAR: f64 = 10.0;
const LONGEST: f64 = 190.0;

/// Draws each bar under its name, with its number at the end.
pub(super) fn bars(id: &str, title: &str, rows: &[NamedBar], table: Table) -> Block {
    let most = rows.iter().map(|r| r.value).fold(0.0, f64::max);
    let mut marks = Vec::new();
    let mut y = 0.0;
    for row in rows {
        for line in wrapped(&row.label, 48) {
            y += LINE;
            marks.push(Mark::text(Ink::Outline, Anchor::Start, (0.0, y), line));
        }
        let length = if most > 0.0 {
            LONGEST * row.value / most
        } else {
            0.0
        };
        y += 6.0;
        if length >= 0.5 {
            marks.push(Mark::path(row.ink, bar(0.0, y, length)));
        }
        marks.push(Mark::text(
            row.ink_of_words(),
            Anchor::Start,
            (length + 6.0, y + BAR),
            row.text.clone(),
        ));
        y += BAR + 8.0;
    }
    let description = rows
        .iter()
        .map(|r| format!("{}: {}.", r.label, r.text))
        .collect::<Vec<_>>()
        .join(" ");
    Block::Picture(Picture {
        id: id.to_owned(),
        title: title.to_owned(),
        description,
        width: WIDTH,
        height: y.max(LINE),
        marks,
        table,
    })
}

impl NamedBar {
    fn ink_of_words(&self) -> Ink {
        if self.ink == Ink::Quiet {
            Ink::Quiet
        } else {
            Ink::Outline
        }
    }
}

/// Path of a horizontal bar.
pub(super) fn bar(x: f64, y: f64, length: f64) -> String {
    format!("M{x:.1} {y:.1}h{length:.1}v{BAR:.1}h-{length:.1}z")
}
