//! The documents to hand on: the sheet for a client, a buyer, the file or a conservator, and the record of work done.

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
use crate::app::wording::sheet as text;

/// The screen of a sheet.
pub fn sheet_page(page: Page, recipient: Recipient, effect: &Callback<Effect>) -> Html {
    let kinds = el("ul", "sheet-kinds").each(Recipient::ALL, |kind| {
        let link = el("a", "")
            .attr("href", Route::Sheet(kind).href())
            .attr("aria-current", if kind == recipient { "page" } else { "" })
            .text(text::recipient(kind)[0]);
        el("li", "").el(link)
    });
    let save = |form| press(effect, Effect::SaveSheet(recipient, form));
    let buttons = el("p", "buttons")
        .el(button("main")
            .pressed(press(effect, Effect::Print))
            .text(text::PRINT))
        .el(button("")
            .pressed(save(Form::Markdown))
            .text(text::SAVE_TEXT))
        .el(button("").pressed(save(Form::Html)).text(text::SAVE_PAGE));
    let paper = match recipient {
        Recipient::Client => "paper is-client",
        Recipient::Buyer => "paper is-buyer",
        Recipient::File => "paper is-file",
        Recipient::Conservation => "paper is-conservation",
    };
    el("div", "screen is-wide sheet-screen")
        .put(head(page, text::TITLE, text::PURPOSE))
        .el(el("nav", "sheet-choice")
            .attr("aria-label", text::WHOM)
            .el(kinds)
            .p("hint", text::recipient(recipient)[1]))
        .el(buttons)
        .el(el("div", paper).put(loaded_page(page, recipient.page())))
        .html()
}

/// The screen Work done.
pub fn done_page(page: Page) -> Html {
    el("div", "screen is-wide")
        .put(head(page, text::DONE, text::DONE_PURPOSE))
        .put(loaded_page(page, PageName::Done))
        .html()
}
