//! A picture as data: outlines and labels in a box, distinguished by what they stand for.

use serde::{Deserialize, Serialize};

use super::table::Table;

/// A picture, its description, and the numbers behind it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Picture {
    /// Stable from one answer to the next.
    pub id: String,
    /// The finding it shows, as a sentence.
    pub title: String,
    /// A description for people who cannot see the picture.
    pub description: String,
    /// Width of the box in picture units; 320 fits a phone.
    pub width: f64,
    /// Height of the box in picture units.
    pub height: f64,
    /// What is drawn, from back to front.
    pub marks: Vec<Mark>,
    /// The same numbers as a table.
    pub table: Table,
}

/// One element of the drawing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Mark {
    /// Lines and areas.
    Path {
        /// Path data as in the SVG standard.
        d: String,
        /// What it stands for.
        ink: Ink,
    },
    /// A label.
    Text {
        /// Distance from the left.
        x: f64,
        /// Distance of the baseline from the top.
        y: f64,
        /// Which end of the text is at `x`.
        anchor: Anchor,
        /// The text.
        text: String,
        /// What the text is about.
        ink: Ink,
    },
}

/// Which end of a label is at the given position.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Anchor {
    /// Its start.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// What a line, area or label stands for. The style sheet decides how it looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Ink {
    /// An outline, or an important label.
    Outline,
    /// A fine line.
    Detail,
    /// Anything not in question; a secondary label.
    Quiet,
    /// An axis or a tick.
    Axis,
    /// A hairline that carries no meaning.
    Rule,
    /// An area of silver.
    Silver,
    /// An area of copper.
    Copper,
    /// Bare metal in a chart of shares. Drawn without an outline, which would enlarge the share.
    Bare,
    /// A line or label about copper.
    CopperLine,
    /// A band of uncertainty.
    Band,
    /// A second band, with a different pattern of lines.
    OtherBand,
    /// The line of a middle value.
    Middle,
    /// A second middle line, dashed.
    OtherMiddle,
}

impl Mark {
    /// Lines or an area.
    #[must_use]
    pub fn path(ink: Ink, d: impl Into<String>) -> Self {
        Self::Path { d: d.into(), ink }
    }

    /// A label.
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

/// Breaks text into lines of at most `letters` characters. A longer word gets its own line.
#[must_use]
pub fn wrapped(text: &str, letters: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= letters => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wrapping_loses_no_word() {
        assert_eq!(wrapped("one two three", 7), ["one two", "three"]);
        assert_eq!(wrapped("unbreakable it", 4), ["unbreakable", "it"]);
        assert!(wrapped("", 4).is_empty());
    }
}
