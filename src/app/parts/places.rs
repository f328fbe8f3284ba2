//! Navigation between the places of a case, which says in words how complete each is.

use leavewell_model::Case;
use yew::prelude::*;

use super::element::el;
use crate::app::route::Route;
use crate::app::state::Open;
use crate::app::wording::places as text;

/// Links to the places of a case.
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
        .attr("aria-label", text::PLACES)
        .el(links)
        .el(more)
        .html()
}

fn state_of(place: Route, case: &Case, open: &Open) -> String {
    match place {
        Route::Piece => match (case.piece.form.is_some(), case.aim.goal.is_some()) {
            (false, false) => text::NOT_BEGUN.to_owned(),
            (true, false) => text::NO_AIM.to_owned(),
            (false, true) => text::NO_FORM.to_owned(),
            (true, true) => text::FORM_AND_AIM.to_owned(),
        },
        Route::Look => match case.findings.len() {
            0 => text::NOTHING_LOOKED_AT.to_owned(),
            n => text::answers(n),
        },
        Route::Condition => match case.parts.len() {
            0 => text::NOTHING_DESCRIBED.to_owned(),
            n => text::parts_described(n),
        },
        Route::Money => {
            let value = if case.market.likely.is_some() {
                text::VALUE_GIVEN
            } else {
                text::NO_VALUE_GIVEN
            };
            match case.quotes.len() {
                0 => value.to_owned(),
                n => text::with_quotes(value, n),
            }
        }
        Route::Counsel => open
            .report()
            .map(|report| report.counsel.firmness.to_string())
            .unwrap_or_default(),
        _ => String::new(),
    }
}
