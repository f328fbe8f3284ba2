//! The live answer: one line that opens on a phone, a column beside the work on a wide screen.

use yew::prelude::*;

use super::marks::press;
use crate::app::pages::Page;
use crate::app::state::Action;

/// The live answer in one line and in full. A button, not `details`, because the column must stand
/// open on wide screens whatever was chosen on a narrow one. The status says the line once it stands
/// still; the app sees to that.
pub fn live(page: Page, line: String, answer: Html) -> Html {
    let open = page.state.live_open;
    html! {
        <aside class="live" aria-label="The answer so far">
            <p class="live-line">{ line }</p>
            <button
                type="button"
                class="live-more"
                aria-expanded={if open { "true" } else { "false" }}
                aria-controls="live-body"
                onclick={press(page.act, Action::ToggleLive)}
            >
                { if open { "Show less" } else { "Show more" } }
            </button>
            <p class="unseen" role="status">{ page.state.said.clone() }</p>
            <div id="live-body" class={if open { "live-body is-open" } else { "live-body" }}>
                { answer }
            </div>
        </aside>
    }
}
