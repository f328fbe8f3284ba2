//! Screens that show a page of the worker: treatments, workshop sums and a closer look at the answer.

use leavewell_pages::PageName;
use yew::prelude::*;

use super::Page;
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::element::el;
use crate::app::parts::marks::fold;
use crate::app::parts::screen::head;
use crate::app::wording::bench as text;

/// All treatments, with the rules' verdict on each.
pub fn treatments_page(page: Page) -> Html {
    screen(page, text::TREATMENTS, PageName::Catalogue)
}

/// Workshop sums: heat, plating, food, measuring.
pub fn bench_page(page: Page) -> Html {
    let [title, purpose] = text::BENCH;
    let instruments = [
        (text::MEASURES, PageName::Measures),
        (text::BLEED, PageName::Bleed),
    ];
    el("div", "screen is-wide")
        .put(head(page, title, purpose))
        .el(el("div", "").each(instruments, |(what, name)| {
            el("div", "").put(fold("more", what, loaded_page(page, name)))
        }))
        .put(loaded_page(page, PageName::Bench))
        .html()
}

/// A closer look at the answer.
pub fn closer_page(page: Page) -> Html {
    screen(page, text::CLOSER, PageName::Closer)
}

fn screen(page: Page, [title, purpose]: [&'static str; 2], name: PageName) -> Html {
    el("div", "screen is-wide")
        .put(head(page, title, purpose))
        .put(loaded_page(page, name))
        .html()
}
