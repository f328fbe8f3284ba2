//! The plan: which pieces of the shelf to work on. `www/plan.js` asks for it; here it is shown.

use serde_json::Value;
use yew::prelude::*;

use crate::app::parts::blocks::laid;
use crate::app::parts::element::el;
use crate::app::route::Route;
use crate::app::wording::plan as say;

/// The plan as it was worked out last.
pub fn plan_page(planned: Option<&Value>) -> Html {
    let title = el("h1", "").attr("tabindex", "-1").text(say::TITLE);
    let back = el("a", "")
        .attr("href", Route::Shelf.href())
        .text(say::BACK);
    let head = el("header", "screen-head")
        .el(title)
        .p("purpose", say::PURPOSE)
        .el(el("p", "").el(back));
    el("div", "screen is-wide plan-page")
        .el(head)
        .el(el("shelf-plan", ""))
        .el(laid(planned))
        .html()
}
