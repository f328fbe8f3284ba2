//! What the piece is: one bar for each family, with its uncertainty.

use leavewell_model::report::FamilyReport;
use leavewell_model::terms::capital;
use yew::prelude::*;

use super::figure::{Frame, LINE, bar, figure, whisker, word};
use super::scale::{Scale, count};
use crate::app::parts::element::{el, group};
use crate::app::wording::charts::{self as text, odds};
use leavewell_model::terms::chance;

/// Height of one family's row, in pixels.
const ROW: f64 = 54.0 + LINE;

/// The families as bars, most likely first.
pub fn families(bars: &[FamilyReport]) -> Html {
    let title = match bars.first() {
        None => text::NO_FAMILY_YET.to_owned(),
        Some(first) => text::likeliest_family(&first.name, &odds(first.p)),
    };
    let rows = bars
        .iter()
        .map(|b| {
            let between = text::between(&chance(b.low), &chance(b.high));
            vec![capital(&b.name), odds(b.p), between]
        })
        .collect();
    let frame = Frame {
        id: "families",
        title,
        desc: text::FAMILIES_READ,
        height: ROW * count(bars.len()),
        head: &text::FAMILIES_HEAD,
        rows,
    };
    let drawing = group().each(bars.iter().enumerate(), |(i, bar)| {
        el("g", "")
            .key(bar.family.id())
            .put(row(bar, ROW * count(i)))
    });
    figure(frame, drawing.html())
}

fn row(family: &FamilyReport, top: f64) -> Html {
    let scale = Scale::holding(&[0.0, 1.0]);
    let down = top + 22.0 + LINE;
    group()
        .put(word(
            &capital(&family.name),
            2.0,
            top + 16.0,
            "chart-name",
            "start",
        ))
        .put(word(
            &odds(family.p),
            2.0,
            top + 16.0 + LINE,
            "chart-quiet",
            "start",
        ))
        .put(bar("chart-track", (2.0, down), 96.0, 12.0))
        .put(bar(
            "chart-silver",
            (2.0, down),
            scale.stretch(0.0, family.p),
            12.0,
        ))
        .put(whisker(
            scale.place(family.low),
            scale.place(family.high),
            down + 18.0,
        ))
        .html()
}
