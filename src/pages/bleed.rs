//! Measuring how much base metal shows: charts of known shares to judge by eye, and a point count.

use std::sync::OnceLock;

use super::Subject;
use super::ask::{NumberField, number};
use super::block::{Block, Table, Tone};
use super::part_words::{named, part_choice, part_problem, text_field};
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::bleed as words;
use leavewell_model::record::Bleed;
use leavewell_model::silver::{CHART_COLUMNS, CHART_PERCENTS, CHART_ROWS, Grain, chart_cells};
use leavewell_model::terms::{PartName, percent, whole_percent};

/// Side of one chart cell, in picture units.
const CELL: f64 = 3.75;
/// Horizontal and vertical distance from one chart to the next, in picture units.
const PITCH: (f64, f64) = (170.0, 118.0);

/// Builds the page: a point count for one part, and the charts.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    vec![
        Block::section("bleed.count", words::COUNT, count(subject)),
        Block::section("bleed.charts", words::CHARTS, charts()),
    ]
}

fn count(subject: &Subject) -> Vec<Block> {
    let (draft, case, problems) = (subject.draft(), subject.case(), subject.problems());
    let (which, part) = part_choice(draft, case, "bleed.part");
    let field = |name: &str| format!("parts[part={}].{name}", part.id());
    let (points, _) = number(
        draft,
        NumberField {
            path: &field("count_points"),
            label: words::POINTS,
            unit: "",
            hint: words::POINTS_HINT,
            stand_in: None,
        },
    );
    let bare = text_field(
        draft,
        &field("count_bare"),
        [words::BARE, "", words::BARE_HINT],
        ["count_bare", "count_points"]
            .into_iter()
            .map(|f| part_problem(draft, problems, part, f))
            .find(|p| !p.is_empty())
            .unwrap_or_default(),
    );
    let mut blocks = vec![
        Block::para(words::HOW_TO_COUNT),
        which,
        Block::Row {
            blocks: vec![points, bare],
        },
    ];
    let known = case.part(part);
    let fields = known.map_or(0, |p| p.counted_fields);
    let counted = known.and_then(|p| p.bleed).filter(|_| fields > 0);
    blocks.extend(answer(part, counted, fields));
    blocks.push(Block::fold(
        "bleed.how",
        words::METHOD,
        vec![
            Block::said(Tone::Quiet, words::FORMULAS),
            Block::said(Tone::Quiet, words::EDGE),
        ],
    ));
    blocks
}

fn answer(part: PartName, counted: Option<Bleed>, fields: usize) -> Vec<Block> {
    let Some(Bleed::Counted { low, likely, high }) = counted else {
        return vec![Block::para(words::NOTHING_COUNTED)];
    };
    let mut blocks = vec![Block::said(
        Tone::Answer,
        words::answer(
            &percent(likely),
            &named(part),
            &hundredths(low),
            &hundredths(high),
        ),
    )];
    blocks.push(Block::para(words::TAKES_THE_PLACE));
    if fields < 5 {
        blocks.push(Block::said(Tone::Quiet, words::MORE_FIELDS));
    }
    if low > 0.0 && fields > 1 {
        blocks.push(Block::said(
            Tone::Quiet,
            words::half_range(100.0 * (high - low) / 2.0 / likely),
        ));
    }
    blocks
}

fn hundredths(f: f64) -> String {
    let h = 100.0 * f;
    if h <= 0.0 {
        words::NONE.to_owned()
    } else if h < 1.0 {
        words::UNDER_1_PERCENT.to_owned()
    } else {
        whole_percent(f)
    }
}

/// Builds the charts once: they are the same for every record and take longest to draw.
fn charts() -> Vec<Block> {
    static CHARTS: OnceLock<[Picture; 3]> = OnceLock::new();
    let charts = CHARTS.get_or_init(|| Grain::ALL.map(chart));
    let mut blocks = vec![Block::para(words::THE_EYE)];
    blocks.extend(charts.iter().cloned().map(Block::Picture));
    blocks
}

/// Draws the charts of one grain. In each, exactly the stated share of the cells is bare.
#[must_use]
pub fn chart(grain: Grain) -> Picture {
    let (width, height) = (CHART_COLUMNS as f64 * CELL, CHART_ROWS as f64 * CELL);
    let mut marks = Vec::new();
    let mut rows = Vec::new();
    for (i, percent) in CHART_PERCENTS.into_iter().enumerate() {
        let (x, y) = ((i % 2) as f64 * PITCH.0, (i / 2) as f64 * PITCH.1);
        let cells = chart_cells(grain, percent);
        marks.push(Mark::path(
            Ink::Silver,
            format!("M{x} {y}h{width}v{height}h-{width}z"),
        ));
        marks.push(Mark::path(Ink::Bare, cell_path(&cells, (x, y))));
        marks.push(Mark::text(
            Ink::Outline,
            Anchor::Middle,
            (x + width / 2.0, y + height + 15.0),
            format!("{percent} %"),
        ));
        rows.push(vec![
            format!("{percent} %"),
            cells.len().to_string(),
            (CHART_COLUMNS * CHART_ROWS).to_string(),
        ]);
    }
    Picture {
        id: format!("bleed.chart.{}", grain.id()),
        title: words::picture_title(grain.label()),
        description: words::description(grain.label()),
        width: 320.0,
        height: 4.0 * PITCH.1,
        marks,
        table: Table {
            caption: words::CAPTION.to_owned(),
            columns: words::COLUMNS.map(str::to_owned).to_vec(),
            rows,
        },
    }
}

/// Draws cells as one path. Each run of neighbouring cells in a row is one rectangle.
fn cell_path(cells: &[(usize, usize)], (x, y): (f64, f64)) -> String {
    let mut runs = Vec::new();
    let mut at = 0;
    while let Some(&(column, row)) = cells.get(at) {
        let run = cells
            .get(at..)
            .unwrap_or_default()
            .iter()
            .enumerate()
            .take_while(|(i, cell)| **cell == (column + i, row))
            .count();
        let (left, top) = (x + column as f64 * CELL, y + row as f64 * CELL);
        let wide = run as f64 * CELL;
        runs.push(format!("M{left} {top}h{wide}v{CELL}h-{wide}z"));
        at += run.max(1);
    }
    runs.concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::record::Draft;

    /// Total area of the rectangles `M x y h w v h h -w z` in a path.
    fn area(d: &str) -> f64 {
        d.split('z')
            .filter(|r| !r.is_empty())
            .map(|r| {
                let wide: f64 = r
                    .split('h')
                    .nth(1)
                    .unwrap()
                    .split('v')
                    .next()
                    .unwrap()
                    .parse()
                    .unwrap();
                let high: f64 = r
                    .split('v')
                    .nth(1)
                    .unwrap()
                    .split('h')
                    .next()
                    .unwrap()
                    .parse()
                    .unwrap();
                wide * high
            })
            .sum()
    }

    #[test]
    fn the_drawn_area_equals_the_stated_share() {
        for grain in Grain::ALL {
            let picture = chart(grain);
            let paths = |wanted: Ink| {
                picture
                    .marks
                    .iter()
                    .filter_map(|m| match m {
                        Mark::Path { d, ink } if *ink == wanted => Some(area(d)),
                        _ => None,
                    })
                    .collect::<Vec<f64>>()
            };
            let (silver, copper) = (paths(Ink::Silver), paths(Ink::Bare));
            assert_eq!(copper.len(), CHART_PERCENTS.len());
            for ((s, c), percent) in silver.iter().zip(&copper).zip(CHART_PERCENTS) {
                assert!(
                    (100.0 * c / s - percent as f64).abs() < 1e-9,
                    "{grain:?} {percent}"
                );
            }
            assert_eq!(picture.table.rows.len(), CHART_PERCENTS.len());
        }
    }

    fn page_of(points: &str, bare: &str) -> (Draft, String) {
        let mut draft = Draft::default();
        draft.set("bleed.part", "foot");
        draft.set("parts[part=foot].count_points", points);
        draft.set("parts[part=foot].count_bare", bare);
        let text = serde_json::to_string(&page(&Subject::new(draft.clone()))).unwrap();
        (draft, text)
    }

    #[test]
    fn a_count_gets_an_answer_and_an_invalid_count_gets_a_message() {
        let (_, text) = page_of("100", "6 4 9 5 6");
        assert!(
            text.contains("about 6 %") && text.contains("of the foot"),
            "{text}"
        );
        for (points, bare, word) in [
            ("25", "6 26", "does not fit the number of points"),
            ("25", "2.5", "whole numbers"),
            ("25", "two", "cannot be used"),
            ("25", "-3", "cannot be used"),
            ("", "3", "how many points a field has"),
            ("0", "3", "out of range"),
        ] {
            let (draft, text) = page_of(points, bare);
            assert!(text.contains(word), "{points} {bare}: {text}");
            assert!(text.contains("Nothing is counted yet"));
            assert_eq!(draft.text("parts[part=foot].count_bare"), bare);
        }
    }
}
