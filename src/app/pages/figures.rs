//! Every figure the answer rests on, which a person can replace.

use leavewell_pages::PageName;
use yew::prelude::*;

use super::Page;
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::chosen_file::chosen_file;
use crate::app::parts::element::{button, el};
use crate::app::parts::marks::press;
use crate::app::parts::screen::head;
use crate::app::state::{Action, Effect};
use crate::app::wording::figures as say;

/// The screen of the ledger.
pub fn figures_page(page: Page, effect: &Callback<Effect>) -> Html {
    let own = page.open.draft.own_figures().is_some();
    let read = effect.reform(Effect::ReadFigures);
    let back = el("details", "confirm")
        .el(el("summary", "").text(say::GO_BACK))
        .p("", say::GO_BACK_MEANS)
        .el(button("stop")
            .pressed(press(
                page.act,
                Action::Put("overrides".to_owned(), String::new()),
            ))
            .text(say::GO_BACK_NOW));
    let buttons = el("div", "buttons")
        .el(button("")
            .attr("disabled", if own { "" } else { "disabled" })
            .pressed(press(effect, Effect::SaveFigures))
            .text(say::SAVE))
        .el(el("div", "").hidden(!own).el(back));
    let begins = page.state.begins_with_own;
    let new_pieces = el("div", "buttons")
        .el(button("")
            .attr("disabled", if own { "" } else { "disabled" })
            .pressed(press(effect, Effect::BeginWithOwn(true)))
            .text(say::BEGIN_WITH_MINE))
        .el(el("span", "").hidden(!begins).el(button("quiet")
            .pressed(press(effect, Effect::BeginWithOwn(false)))
            .text(say::BEGIN_AS_SHIPPED)));
    let said = el("p", "hint").text(if begins {
        say::BEGINS_WITH_MINE
    } else {
        say::BEGINS_AS_SHIPPED
    });
    let file = chosen_file("figures-file", say::FILE, read);
    el("div", "screen is-wide")
        .put(head(page, say::TITLE, say::PURPOSE))
        .el(buttons)
        .el(new_pieces)
        .el(said)
        .el(file)
        .put(loaded_page(page, PageName::Ledger))
        .html()
}
