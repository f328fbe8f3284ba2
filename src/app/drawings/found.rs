//! The piece with what was found on it. Only what is recorded is drawn.

use leavewell_model::terms::ShortSort;
use leavewell_model::terms::{Form, PartName};
use yew::prelude::*;

use super::forms::{joint, shapes};
use super::hatch::copper_hatch;
use super::outline::{Silhouette, along};
use super::shape::{AXIS, PaintedShape, Style, number};
use crate::app::parts::element::{El, el};
use crate::app::parts::words::joined;

/// The size of the drawing.
const HEIGHT: f64 = 300.0;
/// How far from its edge the leaders run.
const MARGIN: f64 = 8.0;
/// The id of the hatch.
const HATCH: &str = "found-hatch";

/// One thing found.
#[derive(Clone, Debug, PartialEq)]
pub struct FoundMark {
    /// The part it is on.
    pub part: PartName,
    /// How it is drawn.
    pub shown: Shown,
    /// Where the person placed it, in per cent of the width and of the height; `None` for its usual place on the part.
    pub at: Option<(f64, f64)>,
    /// Its name, in a word or two; empty for one that goes with a named one.
    pub label: &'static str,
    /// Where it is and how much.
    pub note: String,
}

/// How something found is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shown {
    /// Bare metal on this share of the part.
    Bare(f64),
    /// A dent.
    Dent,
    /// The part is not there.
    Lost,
    /// Grey solder at the joint.
    Grey,
    /// A ring round the joint.
    Ring,
}

/// A mark with its place in the drawing.
type Placed<'a> = (&'a FoundMark, (f64, f64));

/// The drawing, with the labels of up to four marks above and below it, each led to its place. Further marks
/// are drawn without a label.
pub fn found_drawing(form: Option<Form>, marks: &[FoundMark]) -> Html {
    let placed: Vec<Placed<'_>> = marks.iter().map(|mark| (mark, place(form, mark))).collect();
    let is_named = |(mark, _): &Placed<'_>| !mark.label.is_empty();
    let mut named: Vec<Placed<'_>> = placed.iter().copied().filter(is_named).take(4).collect();
    named.order_by(|a, b| a.1.1.total_cmp(&b.1.1));
    let below = named.split_off(named.len().div_ceil(2));
    let [above, below] = [named, below].map(|mut row| {
        row.order_by(|a, b| a.1.0.total_cmp(&b.1.0));
        row
    });
    let lost = |part: PartName| {
        let is = |mark: &FoundMark| mark.part == part && mark.shown == Shown::Lost;
        marks.iter().any(is)
    };
    let metal = shapes(form)
        .into_iter()
        .filter(|shape| shape.style != Style::Hidden);
    let piece = el("g", "").each(metal, |shape| {
        let class = match shape.style {
            _ if lost(shape.part) => "drawn-lost",
            Style::Area => "drawn-area",
            _ => "drawn-detail",
        };
        el("g", class).el(el("path", "").set("d", shape.path))
    });
    let clips = el("defs", "")
        .el(copper_hatch(HATCH.to_owned()))
        .each(marks, |mark| {
            let areas = areas(form, mark.part);
            el("clipPath", "")
                .set("id", clip_id(mark.part))
                .each(areas, |shape| el("path", "").set("d", shape.path))
        });
    let leaders = [(&above, 0.0), (&below, HEIGHT)].map(|(row, edge)| {
        el("g", "").each(sides(row), |((mark, at), is_left)| {
            leader(mark, at, is_left, edge)
        })
    });
    let [up, down] = leaders;
    let drawing = el("svg", "piece-drawing")
        .attr("viewBox", "0 0 400 300")
        .attr("aria-hidden", "true")
        .el(clips)
        .el(piece)
        .el(el("g", "").each(&placed, |(mark, at)| drawn(mark, *at)))
        .el(up)
        .el(down);
    el("figure", "found")
        .el(labels(&above))
        .el(drawing)
        .el(labels(&below))
        .html()
}

/// Each mark of a row, and whether its label stands at the left.
fn sides<'a>(row: &[Placed<'a>]) -> Vec<(Placed<'a>, bool)> {
    let alone = row.len() == 1;
    row.iter()
        .enumerate()
        .map(|(i, mark)| (*mark, if alone { mark.1.0 < AXIS } else { i == 0 }))
        .collect()
}

fn labels(row: &[Placed<'_>]) -> El {
    el("ul", "found-labels").each(sides(row), |((mark, _), is_left)| {
        let copper = matches!(mark.shown, Shown::Bare(_));
        let side = if is_left { "is-left" } else { "is-right" };
        let metal = if copper { " is-copper" } else { "" };
        el("li", "")
            .set("class", joined(&[side, metal]))
            .tag("strong", mark.label)
            .el(el("span", "").words(mark.note.clone()))
    })
}

fn leader(mark: &FoundMark, (x, y): (f64, f64), is_left: bool, edge: f64) -> El {
    let side = if is_left { MARGIN } else { 2.0 * AXIS - MARGIN };
    let copper = matches!(mark.shown, Shown::Bare(_));
    let path = joined(&[
        "M",
        &number(x),
        " ",
        &number(y),
        "H",
        &number(side),
        "V",
        &number(edge),
    ]);
    el(
        "path",
        if copper {
            "found-leader is-copper"
        } else {
            "found-leader"
        },
    )
    .set("d", path)
}

fn areas(form: Option<Form>, part: PartName) -> Vec<PaintedShape> {
    shapes(form)
        .into_iter()
        .filter(|shape| shape.part == part && shape.style == Style::Area)
        .collect()
}

/// Where a mark is: where it was placed; else bare metal at the end of its part, a dent short of it, the rest at the
/// joint.
fn place(form: Option<Form>, mark: &FoundMark) -> (f64, f64) {
    if let Some((x, y)) = mark.at {
        return (x / 100.0 * 2.0 * AXIS, y / 100.0 * HEIGHT);
    }
    let at = joint(form, mark.part);
    let areas = areas(form, mark.part);
    let end = Silhouette::of(areas.iter()).far_end(at).unwrap_or(at);
    match mark.shown {
        Shown::Bare(_) => along(at, end, 0.95),
        Shown::Dent => along(at, end, 0.8),
        Shown::Lost => along(at, end, 0.5),
        Shown::Grey | Shown::Ring => at,
    }
}

fn clip_id(part: PartName) -> String {
    joined(&["found-", part.id()])
}

fn drawn(mark: &FoundMark, (x, y): (f64, f64)) -> El {
    let clip = joined(&["url(#", &clip_id(mark.part), ")"]);
    let patch = |class, radius: f64| {
        el("circle", class)
            .set("cx", number(x))
            .set("cy", number(y))
            .set("r", number(radius))
    };
    // A place shown a little beside its part is still seen.
    let clipped = |patch: El| match mark.at {
        Some(_) => patch,
        None => el("g", "").set("clip-path", clip).el(patch),
    };
    match mark.shown {
        Shown::Bare(share) => {
            let radius = match mark.at {
                Some(_) => 12.0,
                None => 12.0 + 62.0 * share.clamp(0.0, 1.0).sqrt(),
            };
            let hatch = joined(&["url(#", HATCH, ")"]);
            clipped(patch("found-bare", radius).set("fill", hatch))
        }
        Shown::Grey => clipped(patch("found-grey", 14.0)),
        Shown::Ring => patch("found-ring", 11.0),
        Shown::Lost => el("g", ""),
        Shown::Dent => {
            let path = joined(&[
                "M",
                &number(x - 6.0),
                " ",
                &number(y - 14.0),
                "q16 14 0 28m4 -22l7 -3m-5 11l8 0m-10 8l7 3",
            ]);
            el("path", "found-dent").set("d", path)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mark_stands_where_it_was_placed_else_on_its_part() {
        let mark = |at| FoundMark {
            part: PartName::Handle,
            shown: Shown::Dent,
            at,
            label: "Dent",
            note: String::new(),
        };
        let form = Some(Form::Teapot);
        assert_eq!(place(form, &mark(Some((25.0, 50.0)))), (100.0, 150.0));
        let usual = place(form, &mark(None));
        let handle = areas(form, PartName::Handle);
        let [left, top, right, bottom] = Silhouette::of(handle.iter()).bounds();
        assert!((left..=right).contains(&usual.0) && (top..=bottom).contains(&usual.1));
    }
}
