//! How much of the original silver is left on each part.

use leavewell_model::report::PartReport;
use leavewell_model::terms::small;
use leavewell_pages::wrapped;
use yew::prelude::*;

use super::figure::{Frame, LINE, bar, figure, whisker, word, words};
use super::scale::{Scale, count};
use crate::app::parts::element::{el, group};
use crate::app::parts::words::number_band;
use crate::app::wording::charts as text;
use leavewell_model::terms::percent;

/// One bar for each part, compared with the silver it was made with.
pub fn silver_left(parts: &[PartReport]) -> Html {
    let mut rows = Vec::new();
    let mut top = 0.0;
    for part in parts.iter().filter(|p| p.left_fraction.is_some()) {
        let said = wrapped(&words_beside(part), 44);
        let height = LINE * (count(said.len()) + 1.0) + 40.0;
        rows.push((part, said, top));
        top += height;
    }
    let thinnest = rows.iter().map(|(p, _, _)| *p).min_by(|a, b| {
        a.left_fraction
            .unwrap_or(1.0)
            .total_cmp(&b.left_fraction.unwrap_or(1.0))
    });
    let title = thinnest.map_or_else(
        || text::NO_LAYER.to_owned(),
        |part| text::thinnest(&small(&part.name), &left_words(part)),
    );
    let frame = Frame {
        id: "silver-left",
        title,
        desc: text::SILVER_LEFT_READ,
        height: top.max(LINE),
        head: &text::SILVER_LEFT_HEAD,
        rows: parts.iter().map(table_row).collect(),
    };
    let drawing = group().each(&rows, |(part, said, top)| {
        el("g", "").key(part.part.id()).put(row(part, said, *top))
    });
    figure(frame, drawing.html())
}

fn row(part: &PartReport, said: &[String], top: f64) -> Html {
    let scale = Scale::holding(&[0.0, 1.0]);
    let left = part.left_fraction.unwrap_or_default();
    // The band is in micrometres; the bar is a share of the original layer.
    let (low, high) = part
        .left_um
        .filter(|band| band.p50 > 0.0)
        .map_or((left, left), |band| {
            (left * band.p10 / band.p50, left * band.p90 / band.p50)
        });
    group()
        .put(word(&part.name, 2.0, top + 14.0, "chart-name", "start"))
        .put(bar("chart-track", (2.0, top + 19.0), 96.0, 12.0))
        .put(bar(
            "chart-silver",
            (2.0, top + 19.0),
            scale.stretch(0.0, left),
            12.0,
        ))
        .put(whisker(scale.place(low), scale.place(high), top + 37.0))
        .put(words(said, 2.0, top + 56.0, "chart-quiet", "start"))
        .html()
}

fn left_words(part: &PartReport) -> String {
    part.left_fraction
        .map_or_else(|| text::NOT_A_LAYER.to_owned(), percent)
}

fn words_beside(part: &PartReport) -> String {
    let left = left_words(part);
    if part.bleed > 0.0 {
        text::left_where_bare(&left, &percent(part.bleed))
    } else {
        text::left_nowhere_bare(&left)
    }
}

fn table_row(part: &PartReport) -> Vec<String> {
    vec![
        part.name.clone(),
        left_words(part),
        part.left_um
            .map_or_else(|| text::SOLID.to_owned(), number_band),
        percent(part.bleed),
    ]
}
