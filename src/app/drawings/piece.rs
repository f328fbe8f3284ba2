//! The drawing of a piece with its parts.

use leavewell_model::terms::{Form, PartName, small};
use yew::prelude::*;

use super::forms::shapes;
use super::shape::{PaintedShape, Style, number};
use crate::app::parts::element::{El, el};
use crate::app::parts::words::joined;
use crate::app::wording::drawings as text;

/// The id of the drawing. A screen has at most one.
const ID: &str = "piece-drawing";

/// A side view of the piece, part by part, or a plain covered cup if its form is unknown. The selected part is
/// drawn in full ink. Copper stripes cover the share of each part where base metal shows.
pub fn piece_drawing(form: Option<Form>, selected: PartName, bleeds: &[(PartName, f64)]) -> Html {
    let (title_id, desc_id) = ("piece-drawing-title", "piece-drawing-desc");
    let name = form
        .filter(|f| *f != Form::Other)
        .map_or(text::PIECE, Form::label);
    let title = el("title", "")
        .attr("id", title_id)
        .words(text::drawing_of(&small(name)));
    let desc = el("desc", "")
        .attr("id", desc_id)
        .words(description(selected, bleeds));
    let shown = bleeds.iter().filter(|(_, share)| *share > 0.0);
    let defs = el("defs", "").each(shown, |(part, share)| stripes(*part, *share));
    let drawn = el("g", "").each(shapes(form), |shape| drawn(shape, selected, bleeds));
    el("svg", "piece-drawing has-lit")
        .attr("id", ID)
        .attr("viewBox", "0 0 400 300")
        .attr("role", "img")
        .attr("aria-labelledby", "piece-drawing-title piece-drawing-desc")
        .el(title)
        .el(desc)
        .el(defs)
        .el(drawn)
        .html()
}

/// The piece with numbered places on it, each with per cent of the width and of the height.
pub fn numbered_drawing(form: Option<Form>, places: Vec<(u16, f64, f64)>) -> Html {
    let drawn = el("g", "").each(shapes(form), |shape| drawn(shape, PartName::Body, &[]));
    let marks = el("g", "").each(places, |(place, x, y)| {
        let [x, y] = [4.0 * x, 3.0 * y].map(number);
        el("g", "place-mark")
            .el(el("circle", "")
                .set("cx", x.clone())
                .set("cy", y.clone())
                .attr("r", "9"))
            .el(el("text", "")
                .set("x", x)
                .set("y", y)
                .attr("dy", "4")
                .attr("text-anchor", "middle")
                .words(place.to_string()))
    });
    el("svg", "piece-drawing")
        .attr("viewBox", "0 0 400 300")
        .attr("aria-hidden", "true")
        .el(drawn)
        .el(marks)
        .html()
}

/// One shape, with copper stripes over it if base metal shows.
pub(super) fn drawn(shape: PaintedShape, selected: PartName, bleeds: &[(PartName, f64)]) -> El {
    let is_selected = selected == shape.part;
    let style = match shape.style {
        Style::Area => "drawn-area",
        Style::Detail => "drawn-detail",
        Style::Hidden => "drawn-hidden",
    };
    let is_below = shape.style == Style::Hidden && shape.part == PartName::Base;
    let bled = bleeds
        .iter()
        .any(|(part, share)| *part == shape.part && *share > 0.0);
    // The inside is drawn over the body, so its copper shows only while the inside is selected.
    let shows = match shape.style {
        Style::Area => true,
        Style::Detail => false,
        Style::Hidden => is_selected || is_below,
    };
    let copper = if bled && shows {
        joined(&["url(#", &pattern_id(shape.part), ")"])
    } else {
        "none".to_owned()
    };
    let selected = if is_selected { " is-lit" } else { "" };
    let below = if is_below { " is-below" } else { "" };
    el("g", "")
        .set("class", joined(&[style, selected, below]))
        .el(el("path", "").set("d", shape.path.clone()))
        .el(el("path", "drawn-copper")
            .set("d", shape.path)
            .set("fill", copper))
}

/// The copper stripes of one part.
fn stripes(part: PartName, share: f64) -> El {
    const LEAST: f64 = 1.2;
    // A trace must stay visible, so the stripes move apart before they get too thin.
    let tile = (LEAST / share).clamp(9.0, 26.0);
    let width = (tile * share).clamp(LEAST, tile - LEAST);
    let [tile, width] = [tile, width].map(number);
    let copper = el("rect", "copper")
        .attr("x", "0")
        .attr("y", "0")
        .set("width", width.clone())
        .set("height", tile.clone());
    let edge = el("line", "copper-edge")
        .set("x1", width.clone())
        .attr("y1", "0")
        .set("x2", width)
        .set("y2", tile.clone());
    el("pattern", "")
        .set("id", pattern_id(part))
        .attr("patternUnits", "userSpaceOnUse")
        .set("width", tile.clone())
        .set("height", tile)
        .attr("patternTransform", "rotate(45)")
        .el(copper)
        .el(edge)
}

fn pattern_id(part: PartName) -> String {
    joined(&[ID, "-copper-", part.id()])
}

fn description(selected: PartName, bleeds: &[(PartName, f64)]) -> String {
    let shown: Vec<String> = bleeds
        .iter()
        .filter(|(_, share)| *share > 0.0)
        .map(|(part, _)| small(part.label()))
        .collect();
    let selected = text::selected(&small(selected.label()));
    if shown.is_empty() {
        selected + text::NO_BASE_METAL
    } else {
        selected + &text::striped(&shown.join(", "))
    }
}
