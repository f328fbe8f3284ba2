//! How much of the first silver is left, part by part.

use leavewell_model::report::PartReport;
use yew::prelude::*;

use super::figure::{Figure, LINE, words};
use super::scale::{Scale, count, lines};
use crate::app::parts::words::{number_band, percent};

/// What the picture needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct SilverLeftProps {
    /// The parts.
    pub parts: Vec<PartReport>,
}

/// A bar for each part, against the silver it was made with.
#[component]
pub fn SilverLeft(props: &SilverLeftProps) -> Html {
    let scale = Scale::holding([0.0, 1.0]);
    let mut rows = Vec::new();
    let mut top = 0.0;
    for part in props.parts.iter().filter(|p| p.left_fraction.is_some()) {
        let said = lines(&words_beside(part), 44);
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
        || "No layer of silver to run out".to_owned(),
        |part| {
            format!(
                "Thinnest: {}, {} of its first silver",
                part.name.to_lowercase(),
                left_words(part)
            )
        },
    );
    html! {
        <Figure
            id="silver-left"
            {title}
            desc="The long outline is the silver a part was made with; the filled bar is what is left, and the thin line below \
                  it shows how far that may be out."
            height={top.max(LINE)}
            head={["Part", "Silver left", "Thickness in thousandths of a millimetre", "Base metal shows on"]
                .map(AttrValue::from)
                .to_vec()}
            rows={props.parts.iter().map(table_row).collect::<Vec<_>>()}
        >
            for (part, said, top) in &rows {
                <g key={part.part}>
                    { row(part, said, *top, scale) }
                </g>
            }
        </Figure>
    }
}

fn row(part: &PartReport, said: &[String], top: f64, scale: Scale) -> Html {
    let left = part.left_fraction.unwrap_or_default();
    // The band is known in micrometres; the bar is drawn in shares of the first layer.
    let (low, high) = part
        .left_um
        .filter(|band| band.p50 > 0.0)
        .map_or((left, left), |band| {
            (left * band.p10 / band.p50, left * band.p90 / band.p50)
        });
    let at = |dy: f64| format!("{:.1}", top + dy);
    html! {
        <>
            { words(&[part.name.to_owned()], "2%", top + 14.0, "chart-name", "start") }
            <rect class="chart-track" x="2%" width="96%" y={at(19.0)} height="12" />
            <rect class="chart-silver" x="2%" width={scale.stretch(0.0, left)} y={at(19.0)} height="12" />
            <line class="chart-whisker" x1={scale.at(low)} x2={scale.at(high)} y1={at(37.0)} y2={at(37.0)} />
            for end in [low, high] {
                <line class="chart-whisker" x1={scale.at(end)} x2={scale.at(end)} y1={at(34.0)} y2={at(40.0)} />
            }
            { words(said, "2%", top + 56.0, "chart-quiet", "start") }
        </>
    }
}

fn left_words(part: &PartReport) -> String {
    part.left_fraction
        .map_or_else(|| "not a layer".to_owned(), percent)
}

fn words_beside(part: &PartReport) -> String {
    if part.bleed > 0.0 {
        format!(
            "{} left; base metal shows on {}",
            left_words(part),
            percent(part.bleed)
        )
    } else {
        format!("{} left; no base metal shows", left_words(part))
    }
}

fn table_row(part: &PartReport) -> Vec<String> {
    vec![
        part.name.to_owned(),
        left_words(part),
        part.left_um.map_or_else(|| "solid".to_owned(), number_band),
        percent(part.bleed),
    ]
}
