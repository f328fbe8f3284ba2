//! A piece drawn small, as a picture on a button, and the same large to choose a part on.

use leavewell_model::terms::{Form, PartName};
use yew::prelude::*;

use super::forms::shapes;
use super::hatch::copper_hatch;
use super::shape::Style;
use crate::app::parts::element::{El, el};
use crate::app::parts::words::joined;

/// The piece as a small picture without detail. The text beside it names it.
pub fn small_piece(form: Form) -> El {
    let areas = shapes(Some(form))
        .into_iter()
        .filter(|shape| shape.style == Style::Area);
    el("svg", "small-piece")
        .attr("viewBox", "0 0 400 300")
        .attr("aria-hidden", "true")
        .each(areas, |shape| {
            let class = if shape.part == PartName::Shield {
                "drawn-detail"
            } else {
                "drawn-area"
            };
            el("g", class).el(el("path", "").set("d", shape.path))
        })
}

/// The piece with these parts to tap. The list of buttons beside it does the same for the keyboard.
pub fn piece_to_tap(
    form: Option<Form>,
    parts: &[PartName],
    pressed: impl Fn(PartName) -> Callback<MouseEvent>,
) -> El {
    el("svg", "piece-drawing to-tap")
        .attr("viewBox", "0 0 400 300")
        .attr("aria-hidden", "true")
        .each(shapes(form), |shape| {
            let style = match shape.style {
                Style::Area => "drawn-area",
                Style::Detail => "drawn-detail",
                Style::Hidden => "drawn-hidden",
            };
            let can = parts.contains(&shape.part);
            // Dashed lines lie over the metal in front of them, so they are not tapped.
            let taps = can && shape.style == Style::Area;
            let part = shape.part;
            let state = if can { " can-be" } else { "" };
            let drawn = el("g", "")
                .set("class", style.to_owned() + state)
                .el(el("path", "").set("d", shape.path));
            if taps {
                drawn.pressed(pressed(part))
            } else {
                drawn
            }
        })
}

/// A patch of silver with its bare part hatched by the pattern with this id: the bare share as the width and
/// height of an ellipse.
pub fn bare_patch(hatch: &'static str, (across, up): (&'static str, &'static str)) -> El {
    let metal = el("rect", "patch-silver")
        .attr("x", "2")
        .attr("y", "2")
        .attr("width", "116")
        .attr("height", "66")
        .attr("rx", "4");
    let bare = el("ellipse", "patch-bare")
        .attr("cx", "60")
        .attr("cy", "35")
        .attr("rx", across)
        .attr("ry", up);
    el("svg", "reply-drawing")
        .attr("viewBox", "0 0 120 70")
        .attr("aria-hidden", "true")
        .el(el("defs", "").el(copper_hatch(hatch.to_owned())))
        .el(metal)
        .el(bare.set("fill", joined(&["url(#", hatch, ")"])))
}
