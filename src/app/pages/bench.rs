//! Screens worked out by the second program: treatments, and the bench.

use yew::prelude::*;

use super::Page;
use crate::app::parts::blocks::leaf;
use crate::app::parts::element::el;
use crate::app::parts::marks::fold;
use crate::app::parts::screen::head;
use crate::app::wording::bench as say;

/// All treatments, with what the rules say of each.
pub fn treatments_page(page: Page) -> Html {
    screen(page, say::TREATMENTS, "catalogue")
}

/// Heat, plating, food, measuring: small sums.
pub fn bench_page(page: Page) -> Html {
    let [title, purpose] = say::BENCH;
    let instruments = [(say::MEASURES, "measures"), (say::BLEED, "bleed")];
    el("div", "screen is-wide")
        .put(head(page, title, purpose))
        .el(el("div", "").each(instruments, |(what, name)| {
            el("div", "").put(fold("more", what, leaf(page, name)))
        }))
        .put(leaf(page, "bench"))
        .html()
}

/// The weighing looked at closer.
pub fn closer_page(page: Page) -> Html {
    screen(page, say::CLOSER, "deeper")
}

fn screen(page: Page, [title, purpose]: [&'static str; 2], name: &'static str) -> Html {
    el("div", "screen is-wide")
        .put(head(page, title, purpose))
        .put(leaf(page, name))
        .html()
}
