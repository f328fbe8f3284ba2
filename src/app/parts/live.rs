//! The live answer: one line that opens on a phone, or a column beside the work on a wide screen.

use yew::prelude::*;

use super::element::el;
use super::marks::press;
use crate::app::pages::Page;
use crate::app::state::Action;
use crate::app::wording::controls as text;

/// The live answer in one line and in full. It opens with a button and not with `details`, because the column
/// is always open on wide screens, whatever was chosen on a narrow one. The frame of the screens announces the
/// line once it has stopped changing.
pub fn live(page: Page, line: String, answer: Html) -> Html {
    let open = page.state.live_open;
    let (expanded, more, body) = if open {
        ("true", text::SHOW_LESS, "live-body is-open")
    } else {
        ("false", text::SHOW_MORE, "live-body")
    };
    let button = el("button", "live-more")
        .attr("type", "button")
        .attr("aria-expanded", expanded)
        .attr("aria-controls", "live-body")
        .pressed(press(page.act, Action::ToggleLive))
        .text(more);
    el("aside", "live")
        .attr("aria-label", text::SO_FAR)
        .said("live-line", line)
        .el(button)
        .el(el("div", body).attr("id", "live-body").put(answer))
        .html()
}
