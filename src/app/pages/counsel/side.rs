//! Beside the answer: what would change it, and what to look at next.

use leavewell_model::Report;
use leavewell_model::counsel::Input;
use leavewell_model::report::{ChangeReport, MOST_MOVED, NextLook};
use leavewell_model::terms::{Currency, capital};
use yew::prelude::*;

use crate::app::charts::{amount, change};
use crate::app::pages::Page;
use crate::app::pages::look::after_look;
use crate::app::parts::element::{El, el, group};
use crate::app::parts::field::slider_value;
use crate::app::parts::marks::folded_section;
use crate::app::parts::words::{joined, money};
use crate::app::route::Route;
use crate::app::state::Action;
use crate::app::wording::counsel as say;

/// What would change the answer. It arrives a little after the answer.
pub(super) fn would_change(page: Page) -> Html {
    let open = page.open;
    let changes = open.known_changes();
    let flips = changes.iter().any(|c| c.flips_at.is_some());
    let words = match open.changes.as_deref() {
        Some(Err(_)) => say::CHANGES_FAILED,
        None => say::CHANGES_WAIT,
        Some(Ok(_)) if flips => "",
        Some(Ok(_)) => say::CHANGES_NONE,
    };
    let body = group()
        .el(el("ul", "").hidden(!flips).each(
            changes.iter().filter(|c| c.flips_at.is_some()),
            |change| {
                el("li", "")
                    .key(change.input.id())
                    .words(change.text.clone())
            },
        ))
        .el(el("p", "").hidden(flips).text(words))
        .el(el("div", "")
            .hidden(changes.is_empty())
            .put(change(changes, open.currency()))
            .put(movers(page, changes)))
        .html();
    folded_section("would-change", "would-change-title", say::CHANGES, body)
}

/// A slider for each input, and below the moved one the answer it would give.
fn movers(page: Page, changes: &[ChangeReport]) -> Html {
    let inputs = changes.iter().filter(|change| change.now > 0.0);
    let inputs = inputs.map(|change| (change.input, change));
    let sliders = el("div", "movers").each(inputs, |(input, change)| mover(page, input, change));
    group()
        .tag("h3", say::MOVE)
        .p("hint", say::MOVE_HINT)
        .el(sliders)
        .html()
}

fn mover(page: Page, input: Input, change: &ChangeReport) -> El {
    let id = joined(&["move-", input.id()]);
    let step = match page.open.moving {
        Some((moved, step)) if moved == input => step,
        _ => 0,
    };
    let act = page.act.clone();
    let moved = Callback::from(move |event: InputEvent| {
        let step = slider_value(&event);
        let most = f64::from(MOST_MOVED);
        #[allow(clippy::cast_possible_truncation)]
        // clamped
        act.emit(Action::Move(input, step.clamp(-most, most) as i8));
    });
    let known = page.open.moved.as_deref();
    let shown = known.filter(|known| known.input == input && step != 0);
    let said = shown.map(|report| {
        let at = amount(change, report.at, page.open.currency());
        say::moved_to(&at, &report.sentence)
    });
    let slider = el("input", "mover")
        .attr("type", "range")
        .set("id", id.clone())
        .set("min", (-MOST_MOVED).to_string())
        .set("max", MOST_MOVED.to_string())
        .set("value", step.to_string())
        .set(
            "aria-valuetext",
            said.clone().unwrap_or_else(|| say::UNMOVED.to_owned()),
        )
        .typed(moved);
    el("div", "field")
        .key(input.id())
        .el(el("label", "").set("for", id).words(capital(&change.name)))
        .el(slider)
        .said(
            "mover-said",
            said.unwrap_or_else(|| {
                say::starts_at(&amount(change, change.now, page.open.currency()))
            }),
        )
}

/// What to look at next.
pub(super) fn look_next(report: &Report, currency: Currency) -> Html {
    const SHOWN: usize = 3;
    let looks = &report.identity.next_looks;
    let body = group()
        .el(el("p", "")
            .hidden(!looks.is_empty())
            .text(say::NOTHING_LEFT))
        .el(el("ol", "").each(looks.iter().take(SHOWN), |look| {
            let needs = say::needs(&look.needs, &worth(look, currency));
            el("li", "")
                .key(look.finding.text())
                .tag("strong", look.title.get())
                .p("", look.how.get())
                .said("quiet", after_look([&look.if_seen, &look.if_absent]))
                .said("quiet", needs)
        }))
        .el(el("p", "").el(el("a", "link-alone")
            .attr("href", Route::Look.href())
            .text(say::TO_LOOK)))
        .html();
    folded_section("look-next", "look-next-title", say::LOOK_NEXT, body)
}

fn worth(look: &NextLook, currency: Currency) -> String {
    if look.worth >= 1.0 {
        say::worth_knowing(&money(look.worth, currency))
    } else {
        say::TELLS_MORE.to_owned()
    }
}
