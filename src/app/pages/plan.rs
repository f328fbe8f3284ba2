//! The plan: which pieces on the shelf to work on. `www/plan.js` requests it; this screen shows it.

use leavewell_pages::Block;
use yew::prelude::*;

use crate::app::parts::blocks::without_fields;
use crate::app::parts::element::el;
use crate::app::parts::screen::shelf_head;
use crate::app::wording::plan as text;

/// The screen of the newest plan.
pub fn plan_page(planned: &[Block]) -> Html {
    el("div", "screen is-wide plan-page")
        .el(shelf_head(text::TITLE, text::PURPOSE))
        .el(el("shelf-plan", ""))
        .el(without_fields(planned))
        .html()
}
