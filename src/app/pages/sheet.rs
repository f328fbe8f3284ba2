//! The documents to hand on: the sheet for a client, a buyer or the file, and the record of work done.

use leavewell_pages::PageName;
use leavewell_pages::sheet_text::{Form, Recipient};
use yew::prelude::*;

use super::Page;
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::element::{button, el};
use crate::app::parts::marks::press;
use crate::app::parts::screen::head;
use crate::app::route::Route;
use crate::app::state::Effect;
use crate::app::wording::sheet as say;

/// The screen of a sheet.
pub fn sheet_page(page: Page, recipient: Recipient, effect: &Callback<Effect>) -> Html {
    let kinds = el("ul", "sheet-kinds").each(Recipient::ALL, |kind| {
        let link = el("a", "")
            .attr("href", Route::Sheet(kind).href())
            .attr("aria-current", if kind == recipient { "page" } else { "" })
            .text(say::recipient(kind)[0]);
        el("li", "").el(link)
    });
    let save = |form| press(effect, Effect::SaveSheet(recipient, form));
    let buttons = el("p", "buttons")
        .el(button("main")
            .pressed(press(effect, Effect::Print))
            .text(say::PRINT))
        .el(button("")
            .pressed(save(Form::Markdown))
            .text(say::SAVE_TEXT))
        .el(button("").pressed(save(Form::Html)).text(say::SAVE_PAGE));
    el("div", "screen is-wide")
        .put(head(page, say::TITLE, say::PURPOSE))
        .el(el("nav", "sheet-choice")
            .attr("aria-label", say::WHOM)
            .el(kinds)
            .p("hint", say::recipient(recipient)[1]))
        .el(buttons)
        .el(el("div", "paper").put(loaded_page(page, recipient.page())))
        .html()
}

/// The screen Work done.
pub fn done_page(page: Page) -> Html {
    el("div", "screen is-wide")
        .put(head(page, say::DONE, say::DONE_PURPOSE))
        .put(loaded_page(page, PageName::Done))
        .html()
}
