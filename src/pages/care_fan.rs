//! A fan chart of two forecasts of bare metal.

use super::block::Table;
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::care_fan as words;
use leavewell_model::terms::whole_percent;

/// The content of the chart.
pub(super) struct Fan<'a> {
    pub(super) id: &'a str,
    pub(super) title: String,
    /// Labels at the right end of the bands.
    pub(super) names: [&'a str; 2],
    /// Years from now to the last point; > 0.
    pub(super) horizon: f64,
    /// 10th, 50th and 90th percentile of each habit, at evenly spaced times from now to the horizon.
    pub(super) bands: [&'a [[f64; 3]]; 2],
}

const LEFT: f64 = 46.0;
const RIGHT: f64 = 266.0;
const TOP: f64 = 14.0;
const BOTTOM: f64 = 184.0;
/// Least vertical distance between two labels, in picture units.
const LINE: f64 = 14.0;

/// Draws the chart: bare share of the part against years.
pub(super) fn fan(chart: &Fan<'_>) -> Picture {
    let most = chart
        .bands
        .iter()
        .flat_map(|b| b.iter())
        .map(|p| p[2])
        .fold(0.0, f64::max);
    let ends = [0.02, 0.05, 0.1, 0.2, 0.5, 1.0];
    let top = ends.into_iter().find(|t| most <= *t).unwrap_or(1.0);
    let y = |share: f64| BOTTOM - (BOTTOM - TOP) * share / top;
    let mut marks = Vec::new();
    for share in [0.0, top / 2.0, top] {
        let at = y(share);
        marks.push(Mark::path(Ink::Rule, format!("M{LEFT} {at:.1}H{RIGHT}")));
        let said = if share * 100.0 < 10.0 && (share * 100.0).fract() > 0.0 {
            format!("{:.1} %", share * 100.0)
        } else {
            whole_percent(share)
        };
        marks.push(Mark::text(
            Ink::Axis,
            Anchor::End,
            (LEFT - 5.0, at + 4.0),
            said,
        ));
    }
    let inks = [(Ink::Band, Ink::Middle), (Ink::OtherBand, Ink::OtherMiddle)];
    let mut words = Vec::new();
    for ((band, (area, line)), name) in chart.bands.iter().zip(inks).zip(chart.names) {
        let steps = band.len().saturating_sub(1).max(1) as f64;
        let x = |i: usize| LEFT + (RIGHT - LEFT) * i as f64 / steps;
        let point = |i: usize, share: f64| format!("{:.1} {:.1}", x(i), y(share));
        let along = |which: usize| {
            band.iter()
                .enumerate()
                .map(move |(i, p)| point(i, p.get(which).copied().unwrap_or(0.0)))
        };
        let upper: Vec<String> = along(2).collect();
        let mut lower: Vec<String> = along(0).collect();
        lower.reverse();
        let middle: Vec<String> = along(1).collect();
        marks.push(Mark::path(
            area,
            format!("M{}L{}z", upper.join("L"), lower.join("L")),
        ));
        marks.push(Mark::path(line, format!("M{}", middle.join("L"))));
        words.push((y(band.last().map_or(0.0, |p| p[1])) + 4.0, name));
    }
    // Labels that would overlap move apart, around their midpoint.
    if let [a, b] = words.as_mut_slice()
        && (a.0 - b.0).abs() < LINE
    {
        let middle = f64::midpoint(a.0, b.0).min(BOTTOM - LINE / 2.0);
        let up = if a.0 <= b.0 { LINE / 2.0 } else { -LINE / 2.0 };
        a.0 = middle - up;
        b.0 = middle + up;
    }
    for (at, name) in words {
        marks.push(Mark::text(
            Ink::Outline,
            Anchor::Start,
            (RIGHT + 5.0, at),
            name,
        ));
    }
    marks.push(Mark::path(Ink::Axis, format!("M{LEFT} {BOTTOM}H{RIGHT}")));
    for (x, anchor, said) in [
        (LEFT, Anchor::Start, words::NOW.to_owned()),
        (RIGHT, Anchor::End, words::in_years(chart.horizon)),
    ] {
        marks.push(Mark::text(Ink::Axis, anchor, (x, BOTTOM + 16.0), said));
    }
    Picture {
        id: chart.id.to_owned(),
        title: chart.title.clone(),
        description: words::description(chart.horizon),
        width: 320.0,
        height: BOTTOM + 26.0,
        marks,
        table: table(chart),
    }
}

fn table(chart: &Fan<'_>) -> Table {
    let [first, second] = chart.bands;
    let steps = first.len().saturating_sub(1).max(1) as f64;
    let said = |p: &[f64; 3]| {
        let [low, middle, high] = p.map(|f| (100.0 * f).round());
        words::middle_and_range(middle, low, high)
    };
    Table {
        caption: words::CAPTION.to_owned(),
        columns: [words::YEARS, words::FIRST, words::SECOND]
            .map(str::to_owned)
            .to_vec(),
        rows: first
            .iter()
            .zip(second)
            .enumerate()
            .map(|(i, (a, b))| {
                let years = (chart.horizon * i as f64 / steps).round();
                vec![years.to_string(), said(a), said(b)]
            })
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_stay_in_the_box_and_labels_do_not_overlap() {
        let flat = [[0.01, 0.02, 0.03]; 3];
        let steep = [[0.01, 0.02, 0.03], [0.02, 0.1, 0.4], [0.01, 0.02, 0.99]];
        let picture = fan(&Fan {
            id: "x",
            title: String::new(),
            names: ["first", "second"],
            horizon: 50.0,
            bands: [&flat, &steep],
        });
        let mut ends = Vec::new();
        for mark in &picture.marks {
            match mark {
                Mark::Path { d, .. } => {
                    let numbers: Vec<f64> = d
                        .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
                        .filter_map(|t| t.parse().ok())
                        .collect();
                    assert!(numbers.iter().all(|n| (0.0..=320.0).contains(n)), "{d}");
                }
                Mark::Text { y, text, .. } if ["first", "second"].contains(&text.as_str()) => {
                    ends.push(*y);
                }
                Mark::Text { .. } => {}
            }
        }
        assert_eq!(ends.len(), 2);
        assert!((ends[0] - ends[1]).abs() >= LINE - 1e-9, "{ends:?}");
        assert_eq!(picture.table.rows.len(), 3);
        assert_eq!(picture.table.rows[1][2], "10; 2 to 40");
    }
}
