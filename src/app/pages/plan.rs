//! The plan: which pieces on the shelf to work on. `www/plan.js` requests it; this screen shows it.

use leavewell_pages::Block;
use yew::prelude::*;

use crate::app::parts::blocks::without_fields;
use crate::app::parts::element::el;
use crate::app::route::Route;
use crate::app::wording::plan as text;

/// The screen of the newest plan.
pub fn plan_page(planned: &[Block]) -> Html {
    let title = el("h1", "").attr("tabindex", "-1").text(text::TITLE);
    let back = el("a", "")
        .attr("href", Route::Shelf.href())
        .text(text::BACK);
    let head = el("header", "screen-head")
        .el(title)
        .p("purpose", text::PURPOSE)
        .el(el("p", "").el(back));
    el("div", "screen is-wide plan-page")
        .el(head)
        .el(el("shelf-plan", ""))
        .el(without_fields(planned))
        .html()
}
