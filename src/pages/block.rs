//! What a page is made of: text, tables, pictures and fields as plain data.
//!
//! A page made of blocks is written once, here, and shown in several ways: by the app on screen, on
//! paper, as Markdown. Whoever shows it adds nothing and computes nothing.

use serde::{Deserialize, Serialize};

use super::picture::Picture;

/// One thing on a page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Block {
    /// A part of the page with a heading of its own.
    Section {
        /// Stays the same from one answer to the next; starts with the page's name.
        id: String,
        /// The heading.
        title: String,
        /// What stands under it.
        blocks: Vec<Block>,
    },
    /// A paragraph.
    Para {
        /// Its words.
        text: String,
        /// How it is said.
        tone: Tone,
    },
    /// A bulleted list.
    List {
        /// One line each.
        items: Vec<String>,
    },
    /// Names, each with what is said of it.
    Facts {
        /// Name and words.
        rows: Vec<(String, String)>,
    },
    /// A table.
    Table(Table),
    /// A drawing or a picture of numbers, with its table twin.
    Picture(Picture),
    /// How far heat gets, laid over the drawing of the piece.
    HeatOnPiece(HeatOnPiece),
    /// A field somebody types into.
    Field(Field),
    /// A choice of one from a few.
    Choice(Choice),
    /// Closed until opened.
    Fold {
        /// Stays the same from one answer to the next.
        id: String,
        /// What it holds, in a few words.
        summary: String,
        /// What it holds.
        blocks: Vec<Block>,
    },
    /// Room to write by hand, on paper.
    Lines {
        /// What is to be written there.
        label: String,
        /// How many lines.
        count: u8,
    },
    /// Fields that stand beside each other where there is room.
    Row {
        /// The fields.
        blocks: Vec<Block>,
    },
}

/// How a paragraph is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Tone {
    /// As the rest.
    Plain,
    /// Beside the point: how it was worked out, where it comes from.
    Quiet,
    /// The answer.
    Answer,
    /// A hazard to note.
    Note,
    /// A hazard that needs care.
    Care,
    /// A hazard that stops.
    Stop,
}

/// Rows under named columns; the first column names the row.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Table {
    /// What it shows.
    pub caption: String,
    /// Names of the columns.
    pub columns: Vec<String>,
    /// As many cells as there are columns.
    pub rows: Vec<Vec<String>>,
}

/// How far heat gets from a joint, for whoever can draw the piece; to all others it is its table.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HeatOnPiece {
    /// Stays the same from one answer to the next.
    pub id: String,
    /// The finding it shows, as a sentence.
    pub title: String,
    /// What is to be seen, for somebody who cannot see it.
    pub description: String,
    /// Id of the form of the piece; empty when it is not known.
    pub form: String,
    /// Id of the part with the joint.
    pub part: String,
    /// How large the drawn piece is, mm: its height, or for a tray its length.
    pub size_mm: f64,
    /// Whether that size is taken for want of a measured one.
    pub assumed: bool,
    /// Radius of the hot place itself, mm; reaches count from its edge.
    pub hot_mm: f64,
    /// What gives way, the coolest first.
    pub zones: Vec<HeatZone>,
    /// The same in numbers.
    pub table: Table,
}

/// How far one temperature gets.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HeatZone {
    /// At which temperature: "183 °C".
    pub at: String,
    /// How far it gets, in words.
    pub reach: String,
    /// Greatest distance, mm; 0 where it is never reached, none where it may be all of it.
    pub most_mm: Option<f64>,
}

/// A field somebody types into; its text is kept in the case under `path`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Field {
    /// Where in the case, such as `bench.heat.thickness_mm`.
    pub path: String,
    /// What it asks.
    pub label: String,
    /// Unit shown after it; may be empty.
    pub unit: String,
    /// A line of help; may be empty.
    pub hint: String,
    /// What stands in it, as typed.
    pub text: String,
    /// What stands for it while it is empty; may be empty.
    pub stand_in: String,
    /// What is wrong with it and what to do; empty when nothing is.
    pub problem: String,
    /// Whether it holds a number.
    pub number: bool,
}

/// A choice of one from a few; the id of the chosen one is kept in the case under `path`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Choice {
    /// Where in the case.
    pub path: String,
    /// What it asks.
    pub label: String,
    /// A line of help; may be empty.
    pub hint: String,
    /// Id and label of each.
    pub options: Vec<(String, String)>,
    /// Id of the chosen one; empty when none is.
    pub chosen: String,
}

impl Block {
    /// A paragraph like any other.
    #[must_use]
    pub fn para(text: impl Into<String>) -> Self {
        Self::said(Tone::Plain, text)
    }

    /// A paragraph in a tone.
    #[must_use]
    pub fn said(tone: Tone, text: impl Into<String>) -> Self {
        Self::Para {
            text: text.into(),
            tone,
        }
    }

    /// A part of the page.
    #[must_use]
    pub fn section(id: &str, title: &str, blocks: Vec<Self>) -> Self {
        Self::Section {
            id: id.to_owned(),
            title: title.to_owned(),
            blocks,
        }
    }

    /// Something to open.
    #[must_use]
    pub fn fold(id: &str, summary: &str, blocks: Vec<Self>) -> Self {
        Self::Fold {
            id: id.to_owned(),
            summary: summary.to_owned(),
            blocks,
        }
    }
}
