//! Every figure the answer rests on, which a person can replace.

use leavewell_pages::PageName;
use yew::prelude::*;

use super::Page;
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::chosen_file::chosen_file;
use crate::app::parts::element::{button, el};
use crate::app::parts::marks::press;
use crate::app::parts::screen::head;
use crate::app::route::Route;
use crate::app::state::{Action, Effect};
use crate::app::wording::{figures as text, learning};

/// The screen of the ledger.
pub fn figures_page(page: Page, effect: &Callback<Effect>) -> Html {
    let own = page.open.draft.own_figures().is_some();
    let read = effect.reform(Effect::ReadFigures);
    let back = el("details", "confirm")
        .el(el("summary", "").text(text::GO_BACK))
        .p("", text::GO_BACK_MEANS)
        .el(button("stop")
            .pressed(press(
                page.act,
                Action::Put("overrides".to_owned(), String::new()),
            ))
            .text(text::GO_BACK_NOW));
    let buttons = el("div", "buttons")
        .el(button("")
            .attr("disabled", if own { "" } else { "disabled" })
            .pressed(press(effect, Effect::SaveFigures))
            .text(text::SAVE))
        .el(el("div", "").hidden(!own).el(back));
    let begins = page.state.begins_with_own;
    let new_pieces = el("div", "buttons")
        .el(button("")
            .attr("disabled", if own { "" } else { "disabled" })
            .pressed(press(effect, Effect::BeginWithOwn(true)))
            .text(text::BEGIN_WITH_MINE))
        .el(el("span", "").hidden(!begins).el(button("quiet")
            .pressed(press(effect, Effect::BeginWithOwn(false)))
            .text(text::BEGIN_AS_SHIPPED)));
    let said = el("p", "hint").text(if begins {
        text::BEGINS_WITH_MINE
    } else {
        text::BEGINS_AS_SHIPPED
    });
    let teach = el("a", "link-alone")
        .attr("href", Route::Learning.href())
        .text(learning::LINK);
    let file = chosen_file("figures-file", text::FILE, read);
    el("div", "screen is-wide")
        .put(head(page, text::TITLE, text::PURPOSE))
        .el(buttons)
        .el(new_pieces)
        .el(said)
        .el(file)
        .el(el("p", "").el(teach))
        .put(loaded_page(page, PageName::Ledger))
        .html()
}
