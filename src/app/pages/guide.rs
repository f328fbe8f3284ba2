//! The guide: what the program does, with one invented piece taken from start to finish.

use leavewell_pages::Block;
use yew::prelude::*;

use crate::app::parts::blocks::without_fields;
use crate::app::parts::element::el;
use crate::app::parts::screen::shelf_head;
use crate::app::wording::guide as text;

/// The screen of the guide; the blocks come from the worker.
pub fn guide_page(guide: &[Block]) -> Html {
    el("div", "screen is-wide guide-page")
        .el(shelf_head(text::TITLE, text::PURPOSE))
        .el(without_fields(guide))
        .html()
}
