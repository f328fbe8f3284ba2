//! The drawing of a piece with its parts.

use leavewell_model::case::{Form, PartName};
use yew::prelude::*;

use super::forms::shapes;
use super::shape::{Shape, Style, number};
use crate::app::parts::words::{joined, small};

/// Id of the drawing; a screen has one.
const ID: &str = "piece-drawing";

/// A piece seen from the side, drawn by part: a plain covered cup when its form is not known. The lit
/// part is drawn in full ink. Copper stripes are as wide, beside the silver between them, as the
/// share of the part where base metal shows.
pub fn piece_drawing(form: Option<Form>, lit: PartName, bleeds: &[(PartName, f64)]) -> Html {
    let (title_id, desc_id) = ("piece-drawing-title", "piece-drawing-desc");
    let name = form
        .filter(|f| *f != Form::Other)
        .map_or("piece", Form::label);
    html! {
        <svg
            id={ID}
            class="piece-drawing has-lit"
            viewBox="0 0 400 300"
            role="img"
            aria-labelledby="piece-drawing-title piece-drawing-desc"
        >
            <title id={title_id}>{ joined(&["Drawing of a ", &small(name), " from the side"]) }</title>
            <desc id={desc_id}>{ description(lit, bleeds) }</desc>
            <defs>
                for (part, share) in bleeds.iter().filter(|(_, share)| *share > 0.0) {
                    { stripes(*part, *share) }
                }
            </defs>
            <g>
                for shape in shapes(form) {
                    { drawn(shape, lit, bleeds) }
                }
            </g>
        </svg>
    }
}

/// One shape, and the copper over it where base metal shows.
fn drawn(shape: Shape, lit: PartName, bleeds: &[(PartName, f64)]) -> Html {
    let is_lit = lit == shape.part;
    let style = match shape.style {
        Style::Area => "drawn-area",
        Style::Detail => "drawn-detail",
        Style::Hidden => "drawn-hidden",
    };
    let is_below = shape.style == Style::Hidden && shape.part == PartName::Base;
    let bled = bleeds
        .iter()
        .any(|(part, share)| *part == shape.part && *share > 0.0);
    // The inside is drawn over the body: its copper shows only when the inside is what is asked about.
    let shows = match shape.style {
        Style::Area => true,
        Style::Detail => false,
        Style::Hidden => is_lit || is_below,
    };
    let copper = if bled && shows {
        joined(&["url(#", &pattern_id(shape.part), ")"])
    } else {
        "none".to_owned()
    };
    html! {
        <g class={joined(&[style, if is_lit { " is-lit" } else { "" }, if is_below { " is-below" } else { "" }])}>
            <path d={shape.path.clone()} />
            <path class="drawn-copper" d={shape.path} fill={copper} />
        </g>
    }
}

/// The copper stripes of one part.
fn stripes(part: PartName, share: f64) -> Html {
    const LEAST: f64 = 1.2;
    // A trace must still be seen: thin stripes stand further apart rather than grow thinner.
    let tile = (LEAST / share).clamp(9.0, 26.0);
    let width = (tile * share).clamp(LEAST, tile - LEAST);
    let [tile, width] = [tile, width].map(number);
    html! {
        <pattern
            id={pattern_id(part)}
            patternUnits="userSpaceOnUse"
            width={tile.clone()}
            height={tile.clone()}
            patternTransform="rotate(45)"
        >
            <rect class="copper" x="0" y="0" width={width.clone()} height={tile.clone()} />
            <line class="copper-edge" x1={width.clone()} y1="0" x2={width} y2={tile} />
        </pattern>
    }
}

fn pattern_id(part: PartName) -> String {
    joined(&[ID, "-copper-", part.id()])
}

fn description(lit: PartName, bleeds: &[(PartName, f64)]) -> String {
    let shown: Vec<String> = bleeds
        .iter()
        .filter(|(_, share)| *share > 0.0)
        .map(|(part, _)| small(part.label()))
        .collect();
    let lit = joined(&["In full ink: ", &small(lit.label()), ". "]);
    if shown.is_empty() {
        lit + "No base metal is recorded as showing."
    } else {
        lit + "Striped with copper where base metal shows: " + &shown.join(", ") + "."
    }
}
