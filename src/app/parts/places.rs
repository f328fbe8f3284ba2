//! The places in a case, each with how complete it is, in words.

use leavewell_model::Case;
use yew::prelude::*;

use super::element::el;
use super::words::{count, joined};
use crate::app::route::Route;
use crate::app::state::Open;

/// Links to the places in a case.
pub fn places(open: &Open, here: Route) -> Html {
    let case = &open.case;
    let links = el("ol", "").each(Route::PLACES, |place| {
        let link = el("a", "")
            .attr("href", place.href())
            .attr("aria-current", if place == here { "page" } else { "" })
            .el(el("span", "place-name").text(place.name()))
            .text(" ")
            .el(el("span", "place-state").words(state_of(place, case, open)));
        el("li", "").key(place.href()).el(link)
    });
    let more = el("ul", "more-places").each(Route::MORE, |place| {
        let on = here.name() == place.name();
        let link = el("a", "")
            .attr("href", place.href())
            .attr("aria-current", if on { "page" } else { "" })
            .text(place.name());
        el("li", "").key(place.href()).el(link)
    });
    el("nav", "places")
        .attr("aria-label", "Places in this case")
        .el(links)
        .el(more)
        .html()
}

fn state_of(place: Route, case: &Case, open: &Open) -> String {
    match place {
        Route::Piece => match (case.piece.form.is_some(), case.aim.goal.is_some()) {
            (false, false) => "not begun".to_owned(),
            (true, false) => "aim not said".to_owned(),
            (false, true) => "form not said".to_owned(),
            (true, true) => "form and aim said".to_owned(),
        },
        Route::Look => match case.findings.len() {
            0 => "nothing looked at".to_owned(),
            n => count(n, "answer", "answers"),
        },
        Route::Condition => match case.parts.len() {
            0 => "nothing described".to_owned(),
            n => count(n, "part described", "parts described"),
        },
        Route::Money => {
            let value = if case.market.likely.is_some() {
                "value given"
            } else {
                "no value given"
            };
            match case.quotes.len() {
                0 => value.to_owned(),
                n => joined(&[value, ", ", &count(n, "quote", "quotes")]),
            }
        }
        Route::Counsel => open
            .report()
            .map(|report| report.counsel.firmness.to_string())
            .unwrap_or_default(),
        _ => String::new(),
    }
}
