//! What owners ask, a line each, with a link to the page that says more.

use leavewell_model::Report;
use leavewell_pages::owner::{OwnerTopic, lines as owner_lines};
use leavewell_pages::sheet_text::Recipient;
use yew::prelude::*;

use crate::app::pages::Page;
use crate::app::parts::element::el;
use crate::app::platform::page::focus_on;
use crate::app::route::Route;
use crate::app::wording::owner as text;

/// Where a line leads: another screen, or a section further down this one.
enum More {
    Screen(Route),
    Section(&'static str),
}

/// The lines.
pub(super) fn lines(page: Page, report: &Report) -> Html {
    let made = owner_lines(&page.open.case, report);
    el("dl", "owner-lines")
        .each(made, |line| {
            let (to, words) = more(line.topic);
            let verdict = if line.stops {
                "verdict is-stop"
            } else {
                "verdict"
            };
            let link = match to {
                More::Screen(route) => el("a", "").attr("href", route.href()),
                More::Section(id) => {
                    let go = Callback::from(move |event: MouseEvent| {
                        event.prevent_default();
                        focus_on(id);
                    });
                    el("a", "").attr("href", Route::Counsel.href()).pressed(go)
                }
            };
            let answer = el("dd", "")
                .el(el("strong", verdict).words(line.verdict))
                .text(" ")
                .words(line.text)
                .text(" ")
                .el(link.text(words));
            el("div", "")
                .el(el("dt", "").words(line.question))
                .el(answer)
        })
        .html()
}

fn more(topic: OwnerTopic) -> (More, &'static str) {
    match topic {
        OwnerTopic::Polish => (More::Screen(Route::Condition), text::KEEPING),
        OwnerTopic::Food => (More::Screen(Route::Bench), text::FOOD),
        OwnerTopic::Fault(_) => (More::Section("faults-title"), text::CHOICE),
        OwnerTopic::Offer => (More::Section("options-title"), text::SIDE_BY_SIDE),
        OwnerTopic::Worth => (More::Screen(Route::Money), text::WORTH),
        OwnerTopic::Danger => (More::Section("cautions-title"), text::SAFETY),
        OwnerTopic::Help => (More::Screen(Route::Sheet(Recipient::Client)), text::ASK),
    }
}
