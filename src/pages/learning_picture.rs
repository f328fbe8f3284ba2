//! Pictures of how well the program has said: bands on the diagonal, ten bars, the running score.

use super::block::{Block, Table};
use super::number_text::figures;
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::learning as words;
use leavewell_model::learn::TopicRecord;
use leavewell_model::terms::whole_percent;

const WIDTH: f64 = 320.0;
const LEFT: f64 = 46.0;
const RIGHT: f64 = 306.0;
const TOP: f64 = 14.0;
const BOTTOM: f64 = 190.0;

fn x(share: f64) -> f64 {
    LEFT + (RIGHT - LEFT) * share
}

fn y(share: f64) -> f64 {
    BOTTOM - (BOTTOM - TOP) * share
}

fn axes() -> Vec<Mark> {
    vec![Mark::path(
        Ink::Axis,
        format!("M{LEFT} {TOP}V{BOTTOM}H{RIGHT}"),
    )]
}

/// What the bands held, with exact intervals, beside what they should hold.
pub(super) fn coverage(id: &str, topic: &str, record: &TopicRecord) -> Block {
    let mut marks = axes();
    for share in [0.0, 0.5, 1.0] {
        marks.push(Mark::text(
            Ink::Axis,
            Anchor::End,
            (LEFT - 5.0, y(share) + 4.0),
            whole_percent(share),
        ));
    }
    marks.push(Mark::path(
        Ink::OtherMiddle,
        format!("M{LEFT} {BOTTOM}L{RIGHT} {TOP}"),
    ));
    for one in record.coverage {
        let [low, held, high] = one.share;
        let at = x(one.band);
        marks.push(Mark::path(
            Ink::Middle,
            format!("M{at:.1} {:.1}V{:.1}", y(low), y(high)),
        ));
        marks.push(Mark::path(
            Ink::Outline,
            format!(
                "M{:.1} {:.1}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0Z",
                at - 4.0,
                y(held)
            ),
        ));
        marks.push(Mark::text(
            Ink::Axis,
            Anchor::Middle,
            (at, BOTTOM + 15.0),
            figures(100.0 * one.band),
        ));
    }
    marks.push(Mark::text(
        Ink::Quiet,
        Anchor::Middle,
        (x(0.22), BOTTOM + 15.0),
        words::SHOULD,
    ));
    marks.push(Mark::text(
        Ink::Quiet,
        Anchor::Start,
        (LEFT + 6.0, TOP + 8.0),
        words::HELD,
    ));
    let rows = record.coverage.map(|one| {
        let [low, held, high] = one.share.map(whole_percent);
        vec![
            whole_percent(one.band),
            whole_percent(one.band),
            held,
            words::middle_and_ends(&one.hits.to_string(), &low, &high),
        ]
    });
    Block::Picture(Picture {
        id: format!("{id}.coverage"),
        title: words::coverage_title(topic),
        description: words::coverage_description(topic),
        width: WIDTH,
        height: BOTTOM + 22.0,
        marks,
        table: Table {
            caption: words::COVERAGE.to_owned(),
            columns: words::COVERAGE_COLUMNS.map(str::to_owned).to_vec(),
            rows: rows.to_vec(),
        },
    })
}

/// How many lay in each tenth of what was said, with the range luck allows.
pub(super) fn bars(id: &str, topic: &str, record: &TopicRecord) -> Block {
    let (low, high) = record.bar_band;
    let most = record
        .bars
        .iter()
        .copied()
        .max()
        .unwrap_or(0)
        .max(high)
        .max(1) as f64;
    let up = |count: usize| y(0.92 * count as f64 / most);
    let mut marks = vec![Mark::path(
        Ink::Band,
        format!("M{LEFT} {:.1}H{RIGHT}V{:.1}H{LEFT}Z", up(high), up(low)),
    )];
    let step = (RIGHT - LEFT) / 10.0;
    for (place, count) in record.bars.iter().enumerate() {
        let from = LEFT + step * place as f64;
        marks.push(Mark::path(
            Ink::Silver,
            format!(
                "M{:.1} {BOTTOM}V{:.1}H{:.1}V{BOTTOM}Z",
                from + 3.0,
                up(*count),
                from + step - 3.0
            ),
        ));
        marks.push(Mark::text(
            Ink::Axis,
            Anchor::Middle,
            (from + 0.5 * step, up(*count) - 3.0),
            count.to_string(),
        ));
    }
    marks.push(Mark::path(Ink::Axis, format!("M{LEFT} {BOTTOM}H{RIGHT}")));
    for (anchor, at, text) in [
        (Anchor::Start, LEFT, words::LOWEST),
        (Anchor::End, RIGHT, words::HIGHEST),
    ] {
        marks.push(Mark::text(Ink::Axis, anchor, (at, BOTTOM + 15.0), text));
    }
    let rows = record
        .bars
        .iter()
        .enumerate()
        .map(|(place, count)| vec![words::tenth(place + 1), count.to_string()]);
    Block::Picture(Picture {
        id: format!("{id}.tenths"),
        title: words::bars_title(low, high),
        description: words::bars_description(topic),
        width: WIDTH,
        height: BOTTOM + 22.0,
        marks,
        table: Table {
            caption: words::BARS.to_owned(),
            columns: words::BARS_COLUMNS.map(str::to_owned).to_vec(),
            rows: rows.collect(),
        },
    })
}

/// The running mean of how much nearer the taught figures came. `gain` has two numbers at least.
pub(super) fn running(id: &str, gain: &[f64]) -> Block {
    let most = gain.iter().fold(1e-6_f64, |most, g| most.max(g.abs()));
    let up = |g: f64| y(0.5 + 0.46 * g / most);
    let last = (gain.len() - 1).max(1) as f64;
    let at = |place: usize| x(place as f64 / last);
    let points = gain.iter().enumerate().map(|(place, g)| {
        format!(
            "{} {:.1} {:.1}",
            if place == 0 { "M" } else { "L" },
            at(place),
            up(*g)
        )
    });
    let line = points.collect::<Vec<String>>().concat();
    let marks = vec![
        Mark::path(Ink::OtherMiddle, format!("M{LEFT} {:.1}H{RIGHT}", up(0.0))),
        Mark::text(
            Ink::Quiet,
            Anchor::Start,
            (LEFT + 4.0, up(0.0) - 5.0),
            words::NO_GAIN,
        ),
        Mark::path(Ink::Middle, line),
        Mark::path(Ink::Axis, format!("M{LEFT} {TOP}V{BOTTOM}H{RIGHT}")),
        Mark::text(Ink::Axis, Anchor::Start, (LEFT, BOTTOM + 15.0), "1"),
        Mark::text(
            Ink::Axis,
            Anchor::End,
            (RIGHT, BOTTOM + 15.0),
            gain.len().to_string(),
        ),
    ];
    let every = gain.len().div_ceil(10);
    let rows = gain
        .iter()
        .enumerate()
        .filter(|(place, _)| (place + 1) % every == 0 || place + 1 == gain.len())
        .map(|(place, g)| vec![(place + 1).to_string(), format!("{g:+.3}")]);
    Block::Picture(Picture {
        id: format!("{id}.running"),
        title: words::running_title(gain.last().is_some_and(|g| *g > 0.0)).to_owned(),
        description: words::RUNNING_DESCRIPTION.to_owned(),
        width: WIDTH,
        height: BOTTOM + 22.0,
        marks,
        table: Table {
            caption: words::RUNNING.to_owned(),
            columns: words::RUNNING_COLUMNS.map(str::to_owned).to_vec(),
            rows: rows.collect(),
        },
    })
}
