//! The frame of every screen of a piece: title, purpose, next step and live answer.

use yew::prelude::*;

use super::element::{El, el};
use super::live::live;
use crate::app::pages::{Page, line};
use crate::app::route::Route;
use crate::app::wording::places;

/// A screen of a piece: head, live answer, work, next step. The words are its only first-level heading, its
/// purpose in one line, and the label of the next step, which leads to `next`.
pub fn screen(
    page: Page,
    (here, next): (Route, Route),
    [title, purpose, step]: [&'static str; 3],
    answer: Html,
    work: Html,
) -> Html {
    let next = el("a", "button").attr("href", next.href()).text(step);
    let work = el("div", "work")
        .put(work)
        .el(el("p", "next-step").el(next));
    el("div", "screen")
        .put(head(page, title, purpose))
        .put(live(page, line(here, page.open), answer))
        .el(work)
        .html()
}

/// The head of a screen of the whole shelf, with the way back to it.
pub fn shelf_head(title: &'static str, purpose: &'static str) -> El {
    let back = el("a", "link-alone")
        .attr("href", Route::Shelf.href())
        .text(places::BACK);
    el("header", "screen-head")
        .el(el("h1", "").attr("tabindex", "-1").text(title))
        .p("purpose", purpose)
        .el(el("p", "").el(back))
}

/// The head of a screen of a piece.
pub fn head(page: Page, title: &'static str, purpose: &'static str) -> Html {
    el("header", "screen-head")
        .said("case-name", page.open.name())
        .el(el("h1", "").attr("tabindex", "-1").text(title))
        .p("purpose", purpose)
        .html()
}
