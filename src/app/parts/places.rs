//! Navigation between the places of a case, which says in words how complete each is.

use leavewell_model::Case;
use leavewell_model::record::is_enough_to_advise;
use yew::prelude::*;

use super::element::el;
use crate::app::route::Route;
use crate::app::state::Open;
use crate::app::wording::places as text;

/// Links to the places of a piece, and to the screens of the place that is open.
pub fn places(open: &Open, here: Route) -> Html {
    let case = &open.case;
    let is_here = |route: &Route| route.name() == here.name();
    let links = el("ul", "").each(Route::PLACES, |(name, screens)| {
        let first = screens.first().copied().unwrap_or_default();
        let current = match screens.iter().position(is_here) {
            Some(0) => "page",
            Some(_) => "true",
            None => "",
        };
        let link = el("a", "")
            .attr("href", first.href())
            .attr("aria-current", current)
            .el(el("span", "place-name").text(name))
            .text(" ")
            .el(el("span", "place-state").words(state_of(first, case, open)));
        el("li", "").key(name).el(link)
    });
    let within = Route::PLACES
        .iter()
        .find(|(_, all)| all.iter().any(is_here));
    let within = within.map_or(&[][..], |(_, screens)| screens);
    let more = el("ul", "places-within")
        .attr("aria-label", text::WITHIN)
        .hidden(within.len() < 2)
        .each(within, |place| {
            let link = el("a", "")
                .attr("href", place.href())
                .attr("aria-current", if is_here(place) { "page" } else { "" })
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
        Route::Counsel if !is_enough_to_advise(case) => text::NOT_YET.to_owned(),
        Route::Counsel => open
            .report()
            .map(|report| report.counsel.firmness.id().to_owned())
            .unwrap_or_default(),
        _ => String::new(),
    }
}
