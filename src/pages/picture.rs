//! A picture as data: outlines and words in a box, told apart by what they stand for.

use serde::{Deserialize, Serialize};

use super::block::Table;

/// A picture, what it shows in words, and the numbers behind it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Picture {
    /// Stays the same from one answer to the next.
    pub id: String,
    /// The finding it shows, as a sentence.
    pub title: String,
    /// What is to be seen, for somebody who cannot see it.
    pub description: String,
    /// Width of the box; 320 fits a phone.
    pub width: f64,
    /// Height of the box.
    pub height: f64,
    /// What is drawn, the first below the rest.
    pub marks: Vec<Mark>,
    /// The same in numbers.
    pub table: Table,
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Mark {
    /// Lines and areas.
    Path {
        /// Path data of the SVG standard.
        d: String,
        /// What it stands for.
        ink: Ink,
    },
    /// Words.
    Text {
        /// Where, from the left.
        x: f64,
        /// Where the words stand, from the top.
        y: f64,
        /// Which end of the words is there.
        anchor: Anchor,
        /// The words.
        text: String,
        /// What they are about.
        ink: Ink,
    },
}

/// Which end of the words stands at the given place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Anchor {
    /// Their start.
    Start,
    /// Their middle.
    Middle,
    /// Their end.
    End,
}

/// What a line, an area or a word stands for; the style sheet says how that looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Ink {
    /// An outline, or words that matter.
    Outline,
    /// A fine line.
    Detail,
    /// What is not in question; words that stand back.
    Quiet,
    /// An axis or a tick.
    Axis,
    /// A hairline that carries no meaning.
    Rule,
    /// An area of silver.
    Silver,
    /// An area of copper.
    Copper,
    /// Bare metal on a chart of shares: no outline, which would add to the share.
    Bare,
    /// A line or a word about copper.
    CopperLine,
    /// A band of uncertainty.
    Band,
    /// A second band, told from the first by its pattern of lines.
    OtherBand,
    /// The line of a middle value.
    Middle,
    /// A second such line, dashed.
    OtherMiddle,
}

impl Mark {
    /// Lines or an area.
    #[must_use]
    pub fn path(ink: Ink, d: impl Into<String>) -> Self {
        Self::Path { d: d.into(), ink }
    }

    /// Words.
    #[must_use]
    pub fn text(ink: Ink, anchor: Anchor, (x, y): (f64, f64), text: impl Into<String>) -> Self {
        Self::Text {
            x,
            y,
            anchor,
            text: text.into(),
            ink,
        }
    }
}
