//! What leaves the screen: the sheet for a client, a buyer or the file, and the record of what was
//! done.

use yew::prelude::*;

use super::Page;
use crate::app::parts::blocks::leaf;
use crate::app::parts::element::{button, el};
use crate::app::parts::marks::press;
use crate::app::parts::screen::head;
use crate::app::route::{Route, Whom};
use crate::app::state::Wish;
use crate::app::wording::sheet as say;

/// The sheet for somebody.
pub fn sheet_page(page: Page, whom: Whom, wish: &Callback<Wish>) -> Html {
    let kinds = el("ul", "sheet-kinds").each(Whom::ALL, |kind| {
        let link = el("a", "")
            .attr("href", Route::Sheet(kind).href())
            .attr("aria-current", if kind == whom { "page" } else { "" })
            .text(kind.words()[0]);
        el("li", "").el(link)
    });
    let [letter, whole] = whom.files();
    let buttons = el("p", "buttons")
        .el(button("main")
            .pressed(press(wish, Wish::Print))
            .text(say::PRINT))
        .el(button("")
            .pressed(press(wish, Wish::SaveSheet(letter)))
            .text(say::SAVE_TEXT))
        .el(button("")
            .pressed(press(wish, Wish::SaveSheet(whole)))
            .text(say::SAVE_PAGE));
    el("div", "screen is-wide")
        .put(head(page, say::TITLE, say::PURPOSE))
        .el(el("nav", "sheet-choice")
            .attr("aria-label", say::WHOM)
            .el(kinds)
            .p("hint", whom.words()[1]))
        .el(buttons)
        .el(el("div", "paper").put(leaf(page, Route::Sheet(whom).leaves()[0])))
        .html()
}

/// What was done to the piece.
pub fn done_page(page: Page) -> Html {
    el("div", "screen is-wide")
        .put(head(page, say::DONE, say::DONE_PURPOSE))
        .put(leaf(page, "done"))
        .html()
}
