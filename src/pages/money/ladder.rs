//! A picture of bands of money, one below the other on one scale.

use super::super::block::Table;
use super::super::picture::{Anchor, Ink, Mark, Picture};

const WIDTH: f64 = 320.0;
const LEFT: f64 = 8.0;
const RIGHT: f64 = 312.0;
const ROW: f64 = 16.0;

/// One entry on the scale.
pub(super) enum Rung {
    /// A label above the entries that follow.
    Name(String),
    /// 10th, 50th and 90th percentile.
    Band([f64; 3]),
    /// A second kind of band.
    Other([f64; 3]),
    /// A single value with its label.
    Point(f64, String),
}

/// The texts and options of the picture.
pub(super) struct LadderText<'a> {
    pub(super) id: &'a str,
    pub(super) title: String,
    pub(super) description: String,
    /// Whether equal steps are equal ratios, for prices far apart.
    pub(super) ratios: bool,
    /// Formats a value on the scale.
    pub(super) label: &'a dyn Fn(f64) -> String,
    pub(super) table: Table,
}

/// Draws the picture.
pub(super) fn ladder(text: LadderText<'_>, rungs: &[Rung]) -> Picture {
    let on = |v: f64| {
        if text.ratios {
            libm::log(v.max(1e-9))
        } else {
            v
        }
    };
    let values: Vec<f64> = rungs
        .iter()
        .flat_map(|r| match r {
            Rung::Name(_) => vec![],
            Rung::Band(b) | Rung::Other(b) => b.to_vec(),
            Rung::Point(v, _) => vec![*v],
        })
        .filter(|v| v.is_finite())
        .collect();
    let mut low = values.iter().copied().fold(f64::INFINITY, f64::min);
    let mut high = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if !text.ratios {
        low = low.min(0.0);
    }
    if !(low.is_finite() && high.is_finite()) {
        (low, high) = (1.0, 10.0);
    }
    let (from, span) = (on(low), (on(high) - on(low)).max(1e-9));
    let x = |v: f64| (LEFT + (on(v) - from) / span * (RIGHT - LEFT)).clamp(LEFT, RIGHT);
    let mut marks = Vec::new();
    let mut y = 4.0;
    for rung in rungs {
        match rung {
            Rung::Name(words) => {
                y += ROW;
                let at = (LEFT, y - 3.0);
                marks.push(Mark::text(Ink::Outline, Anchor::Start, at, words.clone()));
            }
            Rung::Band(b) => y = band(&mut marks, (Ink::Band, Ink::Middle), b.map(x), y),
            Rung::Other(b) => y = band(&mut marks, (Ink::OtherBand, Ink::OtherMiddle), b.map(x), y),
            Rung::Point(v, words) => {
                let (at, mid) = (x(*v), y + 0.5 * ROW);
                let d = format!(
                    "M{:.1} {:.1}L{:.1} {:.1}L{:.1} {:.1}L{:.1} {:.1}Z",
                    at - 4.0,
                    mid,
                    at,
                    mid - 4.0,
                    at + 4.0,
                    mid,
                    at,
                    mid + 4.0
                );
                marks.push(Mark::path(Ink::Silver, d));
                let (anchor, tx) = if at > 0.5 * WIDTH {
                    (Anchor::End, at - 7.0)
                } else {
                    (Anchor::Start, at + 7.0)
                };
                marks.push(Mark::text(
                    Ink::Quiet,
                    anchor,
                    (tx, mid + 4.0),
                    words.clone(),
                ));
                y += ROW;
            }
        }
    }
    axis(&mut marks, &text, (low, high), &x, y + 4.0);
    Picture {
        id: text.id.to_owned(),
        title: text.title,
        description: text.description,
        width: WIDTH,
        height: y + 26.0,
        marks,
        table: text.table,
    }
}

fn band(marks: &mut Vec<Mark>, (area, line): (Ink, Ink), [a, m, b]: [f64; 3], y: f64) -> f64 {
    let (top, bottom) = (y + 1.0, y + ROW - 4.0);
    // At least one unit wide, so that it stays visible.
    let b = b.max(a + 1.0);
    marks.push(Mark::path(
        area,
        format!("M{a:.1} {top:.1}L{b:.1} {top:.1}L{b:.1} {bottom:.1}L{a:.1} {bottom:.1}Z"),
    ));
    marks.push(Mark::path(
        line,
        format!("M{m:.1} {top:.1}L{m:.1} {bottom:.1}"),
    ));
    y + ROW
}

fn axis(
    marks: &mut Vec<Mark>,
    text: &LadderText<'_>,
    (low, high): (f64, f64),
    x: &dyn Fn(f64) -> f64,
    y: f64,
) {
    marks.push(Mark::path(
        Ink::Axis,
        format!("M{LEFT:.1} {y:.1}L{RIGHT:.1} {y:.1}"),
    ));
    let words = |v: f64| (text.label)(v);
    let at = y + 16.0;
    marks.push(Mark::text(
        Ink::Quiet,
        Anchor::Start,
        (LEFT, at),
        words(low),
    ));
    marks.push(Mark::text(
        Ink::Quiet,
        Anchor::End,
        (RIGHT, at),
        words(high),
    ));
    if low < 0.0 && high > 0.0 {
        let zero = x(0.0);
        marks.push(Mark::path(
            Ink::Rule,
            format!("M{zero:.1} 4L{zero:.1} {y:.1}"),
        ));
        if zero > 70.0 && zero < 250.0 {
            marks.push(Mark::text(
                Ink::Quiet,
                Anchor::Middle,
                (zero, at),
                words(0.0),
            ));
        }
    }
}
