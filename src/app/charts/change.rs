//! What would change the answer: for each input, its value now and the value at which the answer changes.

use leavewell_model::report::ChangeReport;
use leavewell_model::terms::capital;
use leavewell_model::terms::{Currency, Input};
use leavewell_pages::wrapped;
use yew::prelude::*;

use super::figure::{Frame, LINE, dot, figure, stroke, word, words};
use super::scale::{Scale, anchor, count, log_place};
use crate::app::parts::element::{el, group};
use crate::app::parts::words::money;
use crate::app::wording::charts as text;
use leavewell_model::terms::{chance, percent};

/// The chart, with one track for each input.
pub fn change(changes: &[ChangeReport], currency: Currency) -> Html {
    let flips = changes.iter().filter(|c| c.flips_at.is_some()).count();
    let title = match flips {
        0 => text::NOTHING_CHANGES,
        1 => text::ONE_THING_CHANGES,
        _ => text::WHAT_CHANGES,
    };
    let (mut placed, mut top) = (Vec::new(), 14.0);
    for change in changes {
        let name = wrapped(&capital(&change.name), 40);
        let height = LINE * count(name.len()) + 62.0;
        placed.push((change, name, top));
        top += height;
    }
    let frame = Frame {
        id: "change",
        title: title.to_owned(),
        desc: text::CHANGE_READ,
        height: top,
        head: &text::CHANGE_HEAD,
        rows: changes.iter().map(|c| table_row(c, currency)).collect(),
    };
    let drawing = group().each(placed.iter(), |(change, name, top)| {
        el("g", "")
            .key(change.input.id())
            .put(words(name, 2.0, *top, "chart-name", "start"))
            .put(row(
                change,
                top + LINE * (count(name.len()) - 1.0),
                currency,
            ))
    });
    figure(frame, drawing.html())
}

/// The track below its name, whose last line is at `top`.
fn row(change: &ChangeReport, top: f64, currency: Currency) -> Html {
    let flip = change.flips_at.filter(|f| f.is_finite());
    // A track spans at least a doubling each way, so that distances compare across tracks.
    let ends = [
        change.now / 2.0,
        change.now
            * if change.input.is_money() {
                2.0
            } else {
                (1.0 / change.now.max(0.001)).min(2.0)
            },
        flip.unwrap_or(change.now),
    ];
    let scale = Scale::holding(&ends.map(|v| log_place(v.max(0.001))));
    let now = scale.place(log_place(change.now.max(0.001)));
    let said = text::now(&amount(change, change.now, currency));
    group()
        .put(stroke("chart-axis", (2.0, top + 32.0), (98.0, top + 32.0)))
        .put(dot("chart-point", (now, top + 32.0)))
        .put(word(&said, now, top + 20.0, "chart-quiet", anchor(now)))
        .put(flip_mark(change, flip, scale, top, currency))
        .html()
}

fn flip_mark(
    change: &ChangeReport,
    flip: Option<f64>,
    scale: Scale,
    top: f64,
    currency: Currency,
) -> Html {
    let Some(flip) = flip else {
        return word(
            text::NO_CHANGE_ALONG_HERE,
            2.0,
            top + 53.0,
            "chart-quiet",
            "start",
        );
    };
    let place = scale.place(log_place(flip.max(0.001)));
    let said = text::another_answer_at(&amount(change, flip, currency));
    group()
        .put(dot("chart-open", (place, top + 32.0)))
        .put(word(&said, place, top + 54.0, "chart-quiet", anchor(place)))
        .html()
}

/// The value of an input as text: an amount or a share.
#[must_use]
pub fn amount(change: &ChangeReport, value: f64, currency: Currency) -> String {
    match change.input {
        Input::Value | Input::Cost => money(value, currency),
        Input::Fused => chance(value),
        Input::Bleed => percent(value),
    }
}

fn table_row(change: &ChangeReport, currency: Currency) -> Vec<String> {
    vec![
        capital(&change.name),
        amount(change, change.now, currency),
        change.flips_at.map_or_else(
            || text::NOT_ALONG_HERE.to_owned(),
            |f| amount(change, f, currency),
        ),
        change.text.clone(),
    ]
}
