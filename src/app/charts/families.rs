//! What the piece is: one bar for each family, with how far the figures may be out.

use leavewell_model::report::FamilyReport;
use yew::prelude::*;

use super::figure::{Figure, words};
use super::scale::{Scale, count, odds};
use crate::app::parts::words::{capital, percent};

/// What the bars need.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct FamiliesProps {
    /// The families, most likely first.
    pub bars: Vec<FamilyReport>,
}

/// Families as bars.
#[component]
pub fn Families(props: &FamiliesProps) -> Html {
    const ROW: f64 = 54.0;
    let scale = Scale::holding([0.0, 1.0]);
    let bars = &props.bars;
    let title = bars.first().map_or_else(
        || "Nothing is known yet of what it is".to_owned(),
        |first| format!("Most likely {}: {}", first.name, odds(first.p)),
    );
    let rows = bars
        .iter()
        .map(|b| {
            vec![
                capital(b.name),
                odds(b.p),
                format!("{} to {}", percent(b.low), percent(b.high)),
            ]
        })
        .collect::<Vec<_>>();
    html! {
        <Figure
            id="families"
            {title}
            desc="One bar for each family of plate: the longer, the more likely. The thin line below it shows how far the figure \
                  may be out."
            height={ROW * count(bars.len())}
            head={vec![AttrValue::from("Family"), "How likely".into(), "Between".into()]}
            {rows}
        >
            for (i, bar) in bars.iter().enumerate() {
                <g key={bar.family}>
                    { row(bar, scale, ROW * count(i)) }
                </g>
            }
        </Figure>
    }
}

fn row(bar: &FamilyReport, scale: Scale, top: f64) -> Html {
    let middle = format!("{:.1}", top + 40.0);
    html! {
        <>
            { words(&[capital(bar.name)], "2%", top + 16.0, "chart-name", "start") }
            { words(&[odds(bar.p)], "98%", top + 16.0, "chart-quiet", "end") }
            <rect class="chart-track" x="2%" width="96%" y={format!("{:.1}", top + 22.0)} height="12" />
            <rect
                class="chart-silver"
                x="2%"
                width={scale.stretch(0.0, bar.p)}
                y={format!("{:.1}", top + 22.0)}
                height="12"
            />
            <line class="chart-whisker" x1={scale.at(bar.low)} x2={scale.at(bar.high)} y1={middle.clone()} y2={middle} />
            for end in [bar.low, bar.high] {
                <line
                    class="chart-whisker"
                    x1={scale.at(end)}
                    x2={scale.at(end)}
                    y1={format!("{:.1}", top + 37.0)}
                    y2={format!("{:.1}", top + 43.0)}
                />
            }
        </>
    }
}
