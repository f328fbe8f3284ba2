//! What is lost for good with the advised plan, and with replating, which most people ask about.

use leavewell_model::Report;
use leavewell_model::ledger::treatment_text;
use yew::prelude::*;

use crate::app::parts::element::{el, group};
use crate::app::parts::marks::{bullets, named, section};
use crate::app::parts::words::{joined, small};
use crate::app::wording::counsel as say;

/// The losses in words.
pub(super) fn lost(report: &Report) -> Html {
    let advised = report
        .courses
        .iter()
        .find(|c| c.steps == report.counsel.steps);
    let mut lost: Vec<AttrValue> = advised
        .map(|c| {
            c.lost
                .iter()
                .filter(|l| **l != say::NO_LOSS)
                .map(|l| l.get().into())
                .collect()
        })
        .unwrap_or_default();
    if lost.is_empty() {
        lost.push(say::NOTHING_LOST.into());
    }
    let name = advised.map_or("", |c| &c.name);
    let replating = report
        .options
        .iter()
        .find(|o| o.treatment == "T14a")
        .map_or("", |o| o.lost.get());
    let questions: Vec<_> = report
        .counsel
        .steps
        .iter()
        .filter_map(|id| treatment_text(id))
        .filter(|t| !t.ask.is_empty())
        .collect();
    let with_advised = el("div", "")
        .el(el("dt", "").words(say::with_advised(&small(name))))
        .el(el("dd", "").put(bullets(lost)));
    let with_replating = el("div", "")
        .hidden(replating.is_empty())
        .tag("dt", say::WITH_REPLATING)
        .el(el("dd", "").said("", joined(&[replating, "."])));
    let body = group()
        .el(el("dl", "").el(with_advised).el(with_replating))
        .el(el("h3", "").text(say::QUESTION))
        .el(el("ul", "").each(questions, |text| {
            el("li", "")
                .key(text.id)
                .put(named(text.name, joined(&[": ", text.ask])))
        }))
        .html();
    section("lost", "lost-title", say::LOST, body)
}
