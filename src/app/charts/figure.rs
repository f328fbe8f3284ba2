//! The frame of every picture: title, description, the drawing, and the same as a table.

use yew::prelude::*;

use super::scale::{count, percent, px};
use crate::app::parts::marks::{all, fold, table};
use crate::app::parts::words::joined;

/// What the frame says round a drawing.
pub(super) struct Frame {
    /// Id, unique on the screen.
    pub(super) id: &'static str,
    /// What the picture shows, as a finding.
    pub(super) title: String,
    /// How to read it.
    pub(super) desc: &'static str,
    /// Height of the drawing in pixels.
    pub(super) height: f64,
    /// Heads of the table's columns.
    pub(super) head: &'static [&'static str],
    /// Rows of the table; the first cell names the row.
    pub(super) rows: Vec<Vec<String>>,
}

/// A picture with its table twin.
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
    let label = joined(&["Table: ", &title]);
    html! {
        <figure class="chart">
            <figcaption>{ title.clone() }</figcaption>
            <svg
                class="chart-drawing"
                width="100%"
                height={px(height)}
                role="img"
                aria-labelledby={joined(&[&title_id, " ", &desc_id])}
            >
                <title id={title_id}>{ title }</title>
                <desc id={desc_id}>{ desc }</desc>
                { drawing }
            </svg>
            { fold("chart-table", "The same as a table", table(label, desc.into(), head, rows)) }
        </figure>
    }
}

/// A straight line, from one place to another: across in hundredths, down in pixels.
pub(super) fn stroke(class: &'static str, from: (f64, f64), to: (f64, f64)) -> Html {
    html! { <line {class} x1={percent(from.0)} y1={px(from.1)} x2={percent(to.0)} y2={px(to.1)} /> }
}

/// A bar, from its left upper corner.
pub(super) fn bar(class: &'static str, from: (f64, f64), width: f64, height: f64) -> Html {
    html! {
        <rect {class} x={percent(from.0)} y={px(from.1)} width={percent(width.max(0.0))} height={px(height)} />
    }
}

/// A point.
pub(super) fn dot(class: &'static str, at: (f64, f64)) -> Html {
    html! { <circle {class} cx={percent(at.0)} cy={px(at.1)} r="6" /> }
}

/// A range with a stroke across each end.
pub(super) fn whisker(low: f64, high: f64, down: f64) -> Html {
    const HALF: f64 = 3.0;
    all(vec![
        stroke("chart-whisker", (low, down), (high, down)),
        stroke("chart-whisker", (low, down - HALF), (low, down + HALF)),
        stroke("chart-whisker", (high, down - HALF), (high, down + HALF)),
    ])
}

/// One line of words in a picture.
pub(super) fn word(text: &str, x: f64, y: f64, class: &'static str, anchor: &'static str) -> Html {
    words(&[text.to_owned()], x, y, class, anchor)
}

/// Words in a picture, one line under another from `y`.
pub(super) fn words(
    lines: &[String],
    x: f64,
    y: f64,
    class: &'static str,
    anchor: &'static str,
) -> Html {
    html! {
        <text class={class} text-anchor={anchor}>
            for (i, line) in lines.iter().enumerate() {
                <tspan x={percent(x)} y={px(y + LINE * count(i))}>{ line.clone() }</tspan>
            }
        </text>
    }
}

/// Height of a line of words in a picture.
pub(super) const LINE: f64 = 17.0;
