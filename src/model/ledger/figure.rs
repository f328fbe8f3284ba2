//! A figure: one number the model rests on, with its range, unit, source and tag.

use serde::Serialize;

/// How a figure is known. Every display of the figure shows this too.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Tag {
    /// Seen in the named source.
    Read,
    /// Seen quoted in a weaker source.
    Secondary,
    /// Recalled and still to be verified: never shown as a limit to rely on.
    Memory,
    /// Derived here from named inputs.
    Computed,
    /// Our own elicited value; no source.
    Judgement,
    /// Common practice of the trade; no source.
    Practice,
}

impl Tag {
    /// Reads a tag as written in the data files.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        Some(match text {
            "read" => Self::Read,
            "secondary" => Self::Secondary,
            "memory" => Self::Memory,
            "computed" => Self::Computed,
            "judgement" => Self::Judgement,
            "practice" => Self::Practice,
            _ => return None,
        })
    }

    /// The tag in a few plain words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Read => "a source says",
            Self::Secondary => "quoted in a weaker source",
            Self::Memory => "recalled, not yet checked",
            Self::Computed => "computed from other figures",
            Self::Judgement => "our judgement",
            Self::Practice => "common practice",
        }
    }
}

/// What low, value and high mean, which determines how a draw is made from them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// One number; low and high only show how sources differ.
    Point,
    /// Least, most likely, greatest: a PERT distribution.
    PertEnds,
    /// 5th, 50th and 95th percentile.
    P5P50P95,
    /// 10th, 50th and 90th percentile, as users enter them.
    P10P50P90,
}

impl Shape {
    /// Reads a shape as written in the data files.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        Some(match text {
            "point" => Self::Point,
            "pert_ends" => Self::PertEnds,
            "p5_p50_p95" => Self::P5P50P95,
            "p10_p50_p90" => Self::P10P50P90,
            _ => return None,
        })
    }
}

/// One entry of the ledger.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Figure {
    /// Stable id, used in files and on screens.
    pub id: &'static str,
    /// The figure: its mode or median, depending on its shape.
    pub value: f64,
    /// Lower end.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// Unit; `1` for a pure number.
    pub unit: &'static str,
    /// What the three numbers mean.
    pub shape: Shape,
    /// How it is known.
    pub tag: Tag,
    /// Id of its source.
    pub source: &'static str,
    /// The user's reason for an override, if there is one.
    pub own_reason: Option<String>,
}
