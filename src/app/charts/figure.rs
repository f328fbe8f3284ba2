//! The frame of every chart: title, description, drawing, and the same figures as a table.

use yew::prelude::*;

use super::scale::{count, percent, px};
use crate::app::parts::element::{el, group};
use crate::app::parts::marks::{fold, table};
use crate::app::parts::words::joined;
use crate::app::wording::charts as text;

/// The text around a drawing.
pub(super) struct Frame {
    /// Id, unique on the screen.
    pub(super) id: &'static str,
    /// The title, which states what the chart shows.
    pub(super) title: String,
    /// How to read the chart.
    pub(super) desc: &'static str,
    /// Height of the drawing in pixels.
    pub(super) height: f64,
    /// The column heads of the table.
    pub(super) head: &'static [&'static str],
    /// The rows of the table; the first cell is the row's header.
    pub(super) rows: Vec<Vec<String>>,
}

/// A chart with its table.
pub(super) fn figure(frame: Frame, drawing: Html) -> Html {
    let Frame {
        id,
        title,
        desc,
        height,
        head,
        rows,
    } = frame;
    let (title_id, desc_id) = (joined(&[id, "-title"]), joined(&[id, "-desc"]));
    let label = text::table_of(&title);
    let caption = el("figcaption", "").words(title.clone());
    let svg = el("svg", "chart-drawing")
        .attr("width", "100%")
        .set("height", px(height))
        .attr("role", "img")
        .set("aria-labelledby", joined(&[&title_id, " ", &desc_id]))
        .el(el("title", "").set("id", title_id).words(title))
        .el(el("desc", "").set("id", desc_id).text(desc))
        .put(drawing);
    let table = table(label, desc.into(), head, rows);
    el("figure", "chart")
        .el(caption)
        .el(svg)
        .put(fold("chart-table", text::AS_A_TABLE, table))
        .html()
}

/// A straight line between two points: x in per cent of the width, y in pixels.
pub(super) fn stroke(class: &'static str, from: (f64, f64), to: (f64, f64)) -> Html {
    el("line", class)
        .set("x1", percent(from.0))
        .set("y1", px(from.1))
        .set("x2", percent(to.0))
        .set("y2", px(to.1))
        .html()
}

/// A bar, from its top left corner.
pub(super) fn bar(class: &'static str, from: (f64, f64), width: f64, height: f64) -> Html {
    el("rect", class)
        .set("x", percent(from.0))
        .set("y", px(from.1))
        .set("width", percent(width.max(0.0)))
        .set("height", px(height))
        .html()
}

/// A dot.
pub(super) fn dot(class: &'static str, at: (f64, f64)) -> Html {
    el("circle", class)
        .set("cx", percent(at.0))
        .set("cy", px(at.1))
        .attr("r", "6")
        .html()
}

/// A range with a cap at each end.
pub(super) fn whisker(low: f64, high: f64, down: f64) -> Html {
    const HALF: f64 = 3.0;
    group()
        .put(stroke("chart-whisker", (low, down), (high, down)))
        .put(stroke(
            "chart-whisker",
            (low, down - HALF),
            (low, down + HALF),
        ))
        .put(stroke(
            "chart-whisker",
            (high, down - HALF),
            (high, down + HALF),
        ))
        .html()
}

/// One line of text in a chart.
pub(super) fn word(text: &str, x: f64, y: f64, class: &'static str, anchor: &'static str) -> Html {
    words(&[text.to_owned()], x, y, class, anchor)
}

/// Lines of text in a chart, starting at `y`.
pub(super) fn words(
    lines: &[String],
    x: f64,
    y: f64,
    class: &'static str,
    anchor: &'static str,
) -> Html {
    el("text", class)
        .attr("text-anchor", anchor)
        .each(lines.iter().enumerate(), |(i, line)| {
            el("tspan", "")
                .set("x", percent(x))
                .set("y", px(y + LINE * count(i)))
                .words(line.clone())
        })
        .html()
}

/// The height of one line of text in a chart, in pixels.
pub(super) const LINE: f64 = 17.0;
