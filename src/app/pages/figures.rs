//! Every figure the answer rests on, with room for one's own.

use yew::prelude::*;

use super::Page;
use crate::app::parts::blocks::leaf;
use crate::app::parts::chosen_file::chosen_file;
use crate::app::parts::element::{button, el};
use crate::app::parts::marks::press;
use crate::app::parts::screen::head;
use crate::app::state::{Action, Wish};

/// The ledger.
pub fn figures_page(page: Page, wish: &Callback<Wish>) -> Html {
    let own = page.open.draft.own_figures().is_some();
    let read = wish.reform(Wish::ReadFigures);
    let back = el("details", "confirm")
        .el(el("summary", "").text("Go back to the figures as shipped"))
        .p("", "Every figure of your own goes from this piece. Save them as a file first if you may want them again.")
        .el(button("stop")
            .pressed(press(page.act, Action::Put("overrides".to_owned(), String::new())))
            .text("Take them all back"));
    let buttons = el("div", "buttons")
        .el(button("")
            .attr("disabled", if own { "" } else { "disabled" })
            .pressed(press(wish, Wish::SaveFigures))
            .text("Save my figures as a file"))
        .el(el("div", "").hidden(!own).el(back));
    let begins = page.state.begins_with_own;
    let new_pieces = el("div", "buttons")
        .el(button("")
            .attr("disabled", if own { "" } else { "disabled" })
            .pressed(press(wish, Wish::BeginWithOwn(true)))
            .text("Begin new pieces with mine"))
        .el(el("span", "").hidden(!begins).el(button("quiet")
            .pressed(press(wish, Wish::BeginWithOwn(false)))
            .text("Begin them with the figures as shipped again")));
    let said = el("p", "hint").text(if begins {
        "New pieces on this device begin with figures of yours, terms of selling among them."
    } else {
        "New pieces on this device begin with the figures as shipped."
    });
    let file = chosen_file(
        "figures-file",
        [
            "A file of figures",
            "It is laid over the figures of this piece; the file stays as it is.",
        ],
        read,
    );
    el("div", "screen is-wide")
        .put(head(
            page,
            "The figures behind the answer",
            "Every number somebody could dispute, with its range and its source. Put in your own where you know better.",
        ))
        .el(buttons)
        .el(new_pieces)
        .el(said)
        .el(file)
        .put(leaf(page, "ledger"))
        .html()
}
