//! The frame of every screen of a piece: what it is, what it is for, the next step, the answer.

use yew::prelude::*;

use super::live::live;
use super::marks::{div, p};
use crate::app::pages::{Page, line};
use crate::app::route::Route;

/// A screen of a piece: head, live answer, work, next step. The words are its one heading of the
/// first level, what it is for in one line, and the one next step, which leads to `next`.
pub fn screen(
    page: Page,
    (here, next): (Route, Route),
    [title, purpose, step]: [&'static str; 3],
    answer: Html,
    work: Html,
) -> Html {
    div(
        "screen",
        vec![
            head(page, title, purpose),
            live(page, line(here, page.open), answer),
            div(
                "work",
                vec![
                    work,
                    html! { <p class="next-step"><a class="button" href={next.href()}>{ step }</a></p> },
                ],
            ),
        ],
    )
}

/// The head of a screen of a piece.
pub fn head(page: Page, title: &'static str, purpose: &'static str) -> Html {
    html! {
        <header class="screen-head">
            { p("case-name", page.open.name()) }
            <h1 tabindex="-1">{ title }</h1>
            { p("purpose", purpose) }
        </header>
    }
}
