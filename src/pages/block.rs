//! The building blocks of a page: text, tables, pictures and fields as plain data.
//!
//! A page is built once from blocks and rendered in several ways: on screen by the app, on paper as HTML,
//! and as Markdown. Invariant: a renderer adds no content and computes nothing.

use serde::{Deserialize, Serialize};

use super::picture::Picture;
pub use super::table::Table;

/// One element of a page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Block {
    /// A part of the page with its own heading.
    Section {
        /// Stable from one answer to the next. Starts with the name of the page.
        id: String,
        /// The heading.
        title: String,
        /// The content under the heading.
        blocks: Vec<Block>,
    },
    /// A paragraph.
    Para {
        /// The text.
        text: String,
        /// How it is emphasised.
        tone: Tone,
    },
    /// A bulleted list.
    List {
        /// One line per item.
        items: Vec<String>,
    },
    /// Names, each with its text.
    Facts {
        /// Name and text.
        rows: Vec<(String, String)>,
    },
    /// A table.
    Table(Table),
    /// A drawing or chart, with the same numbers as a table.
    Picture(Picture),
    /// How far heat reaches, overlaid on the drawing of the piece.
    HeatOnPiece(HeatOnPiece),
    /// A field to type into.
    Field(EntryField),
    /// A choice of one option among a few.
    Choice(Choice),
    /// A choice of several among a few; the ids chosen stand in the record with spaces between.
    Ticks(Choice),
    /// Content that stays hidden until opened.
    Fold {
        /// Stable from one answer to the next.
        id: String,
        /// A few words on the content.
        summary: String,
        /// The content.
        blocks: Vec<Block>,
    },
    /// Blank lines to fill in by hand on paper.
    Lines {
        /// What to write there.
        label: String,
        /// Number of lines.
        count: u8,
    },
    /// Blocks shown side by side where there is room.
    Row {
        /// The blocks.
        blocks: Vec<Block>,
    },
    /// Photographs, which only the browser they are kept in can show.
    Photos(Photos),
    /// Numbered places on the drawing of the piece.
    PlacesOnPiece(PlacesOnPiece),
    /// Where a photograph is taken in, and those there are.
    TakePhotos(TakePhotos),
    /// Where faults are shown on the drawing or on a photograph, for a script of the page.
    PlaceFaults {
        /// What is recorded, as JSON.
        data: String,
    },
}

/// How a paragraph is emphasised.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Tone {
    /// Body text.
    Plain,
    /// Background: the method, or where a number comes from.
    Quiet,
    /// The answer.
    Answer,
    /// A hazard to note.
    Note,
    /// A hazard that needs care.
    Care,
    /// A hazard that rules the work out.
    Stop,
}

/// How far heat reaches from a joint, for a renderer that can draw the piece. Other renderers show the
/// table.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HeatOnPiece {
    /// Stable from one answer to the next.
    pub id: String,
    /// The finding it shows, as a sentence.
    pub title: String,
    /// A description for people who cannot see the picture.
    pub description: String,
    /// Id of the form of the piece; empty if unknown.
    pub form: String,
    /// Id of the part with the joint.
    pub part: String,
    /// Size of the drawn piece in mm: its height, or the length of a tray.
    pub size_mm: f64,
    /// Whether the size is assumed because none is recorded.
    pub assumed: bool,
    /// Radius of the hot spot in mm. Reaches are measured from its edge.
    pub hot_mm: f64,
    /// What gives way, lowest temperature first.
    pub zones: Vec<HeatZone>,
    /// The same numbers as a table.
    pub table: Table,
}

/// How far one temperature reaches.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HeatZone {
    /// The temperature with its unit: "183 °C".
    pub at: String,
    /// The reach in words.
    pub reach: String,
    /// Greatest distance in mm: 0 if the temperature is never reached, `None` if it may reach the whole
    /// piece.
    pub most_mm: Option<f64>,
}

/// Photographs of one thing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Photos {
    /// Stable from one answer to the next; each stands once on a page.
    pub id: String,
    /// Their keys, such as `foot/k2` or `piece/k1`.
    pub keys: Vec<String>,
    /// What they show.
    pub caption: String,
    /// What to say instead where they are not at hand.
    pub missing: String,
    /// Places marked on them.
    pub marks: Vec<NumberedPlace>,
}

/// A numbered place on a drawing or photograph.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct NumberedPlace {
    /// The number beside which it is described.
    pub number: u16,
    /// Per cent of the width from the left, 0 to 100.
    pub x: f64,
    /// Per cent of the height from the top, 0 to 100.
    pub y: f64,
}

/// Numbered places on the drawing of the piece, for a renderer that can draw it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlacesOnPiece {
    /// Stable from one answer to the next; each stands once on a page.
    pub id: String,
    /// What it shows.
    pub title: String,
    /// Id of the form of the piece; empty if unknown.
    pub form: String,
    /// The places.
    pub marks: Vec<NumberedPlace>,
}

/// Where a photograph is taken in.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TakePhotos {
    /// What comes before the number in the key: `done-e1`.
    pub of: String,
    /// Path of the list of numbers in the record.
    pub path: String,
    /// What they show, for the middle of a sentence.
    pub name: String,
    /// A field to write before the first photograph, and its text; both empty where there is none.
    pub first: (String, String),
}

/// A field to type into. Its text is stored in the record under `path`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct EntryField {
    /// Path in the record, such as `bench.heat.thickness_mm`.
    pub path: String,
    /// The label.
    pub label: String,
    /// Unit shown after it; may be empty.
    pub unit: String,
    /// A line of help; may be empty.
    pub hint: String,
    /// The text as typed.
    pub text: String,
    /// The value used while the field is empty; may be empty.
    pub stand_in: String,
    /// What is wrong and what to do about it; empty if nothing is.
    pub problem: String,
    /// Whether it holds a number.
    pub number: bool,
}

/// A choice of one option among a few. The id of the chosen option is stored in the record under `path`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Choice {
    /// Path in the record.
    pub path: String,
    /// The label.
    pub label: String,
    /// A line of help; may be empty.
    pub hint: String,
    /// Id and label of each option.
    pub options: Vec<(String, String)>,
    /// Id of the chosen option; empty if none is.
    pub chosen: String,
}

impl Choice {
    /// The labels of the ticked options, where several may be.
    #[must_use]
    pub fn ticked(&self) -> String {
        let ticked = |(id, _): &&(String, String)| self.chosen.split_whitespace().any(|c| c == id);
        let labels = self.options.iter().filter(ticked);
        let labels: Vec<&str> = labels.map(|(_, label)| label.as_str()).collect();
        labels.join(", ")
    }
}

impl Block {
    /// A plain paragraph.
    #[must_use]
    pub fn para(text: impl Into<String>) -> Self {
        Self::said(Tone::Plain, text)
    }

    /// A paragraph with the given tone.
    #[must_use]
    pub fn said(tone: Tone, text: impl Into<String>) -> Self {
        Self::Para {
            text: text.into(),
            tone,
        }
    }

    /// A section with a heading.
    #[must_use]
    pub fn section(id: &str, title: &str, blocks: Vec<Self>) -> Self {
        Self::Section {
            id: id.to_owned(),
            title: title.to_owned(),
            blocks,
        }
    }

    /// A fold, closed until opened.
    #[must_use]
    pub fn fold(id: &str, summary: &str, blocks: Vec<Self>) -> Self {
        Self::Fold {
            id: id.to_owned(),
            summary: summary.to_owned(),
            blocks,
        }
    }
}
