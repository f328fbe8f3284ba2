//! What is gone for good: with the plan advised, and with the one the answer holds against it.

use leavewell_model::Report;
use leavewell_model::report::OptionReport;
use leavewell_model::terms::small;
use yew::prelude::*;

use crate::app::parts::element::{el, group};
use crate::app::parts::marks::{bullets, folded_section, named};
use crate::app::parts::words::joined;
use crate::app::wording::counsel as text;

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
                .filter(|l| **l != text::NO_LOSS)
                .map(|l| l.get().into())
                .collect()
        })
        .unwrap_or_default();
    if lost.is_empty() {
        lost.push(text::NOTHING_LOST.into());
    }
    let name = advised.map_or("", |c| &c.name);
    let against: Vec<&OptionReport> = report
        .counsel
        .contrast
        .iter()
        .flat_map(|contrast| &contrast.steps)
        .filter(|step| !report.counsel.steps.contains(step))
        .filter_map(|step| report.options.iter().find(|o| o.treatment == *step))
        .collect();
    let questions: Vec<_> = report
        .counsel
        .steps
        .iter()
        .map(|step| step.text())
        .filter(|t| !t.ask.is_empty())
        .collect();
    let with_advised = el("div", "")
        .el(el("dt", "").words(text::with_advised(&small(name))))
        .el(el("dd", "").put(bullets(lost)));
    let with_others = against.into_iter().map(|option| {
        el("div", "")
            .el(el("dt", "").words(text::with_contrast(&small(option.name.get()))))
            .el(el("dd", "").said("", joined(&[option.lost.get(), "."])))
    });
    let body = group()
        .el(el("dl", "")
            .el(with_advised)
            .each(with_others, |other| other))
        .el(el("h3", "").text(text::QUESTION))
        .el(el("ul", "").each(questions, |text| {
            el("li", "")
                .key(text.id)
                .put(named(text.name, joined(&[": ", text.ask])))
        }))
        .html();
    folded_section("lost", "lost-title", text::LOST, body)
}
