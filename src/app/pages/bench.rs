//! Screens worked out by the second program: treatments, and the bench.

use yew::prelude::*;

use super::Page;
use crate::app::parts::blocks::leaf;
use crate::app::parts::element::el;
use crate::app::parts::marks::fold;
use crate::app::parts::screen::head;

/// All treatments, with what the rules say of each.
pub fn treatments_page(page: Page) -> Html {
    let title = "What could be done, and what it takes away";
    let purpose = "Every treatment, what the rules say of it for this piece, what is lost for good, and what to ask \
                   whoever would do it.";
    screen(page, title, purpose, "catalogue")
}

/// Heat, plating, food, measuring: small sums.
pub fn bench_page(page: Page) -> Html {
    let title = "Small sums for the bench";
    let purpose = "How far heat goes, what a coat of silver weighs, what is safe with food. Figures to talk about \
                   with a restorer, not instructions for work.";
    let instruments = [
        ("Density, conductivity and X-ray readings", "measures"),
        (
            "Counting points on bare metal, and charts to hold beside it",
            "bleed",
        ),
    ];
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
    let title = "The weighing, looked at closer";
    let purpose = "What knowing more is worth, which step hangs on which, how the answer takes risk, and what moves it. \
                   For whoever wants to check the counsel.";
    screen(page, title, purpose, "deeper")
}

fn screen(page: Page, title: &'static str, purpose: &'static str, name: &'static str) -> Html {
    el("div", "screen is-wide")
        .put(head(page, title, purpose))
        .put(leaf(page, name))
        .html()
}
