//! The treatment a person came to ask about, compared with the advice: why, or why not, in four lines.

use leavewell_model::Report;
use leavewell_model::report::{CourseReport, OptionReport};
use leavewell_model::terms::capital;
use yew::prelude::*;

use super::options::is_by_itself;
use crate::app::charts::unbeaten;
use crate::app::pages::Page;
use crate::app::parts::element::{el, group};
use crate::app::parts::words::{gain_band, joined, small};
use crate::app::wording::counsel as say;

/// The four lines, or nothing if the person asked about no treatment.
pub(super) fn asked(page: Page, report: &Report) -> Html {
    let id = page.open.draft.text("aim.asked");
    let Some(option) = report.options.iter().find(|option| option.treatment == *id) else {
        return group().html();
    };
    let course = report.courses.iter().find(|c| is_by_itself(c, &id));
    let advised = report.counsel.steps.iter().any(|step| *step == *id);
    let rule = joined(&[say::rule(&option.outcome, advised), " ", &why(option)]);
    let lines = [
        rule,
        money(course, advised, page),
        joined(&[&option.lost, "."]),
        lifts(option, course, advised),
    ];
    let lines = say::ASKED.into_iter().zip(lines);
    let title = say::asked_about(&small(&option.name));
    el("section", "asked")
        .attr("aria-labelledby", "asked-title")
        .el(el("h2", "").attr("id", "asked-title").words(title))
        .el(el("dl", "facts").each(lines, |(what, said)| {
            el("div", "").tag("dt", what).el(el("dd", "").words(said))
        }))
        .html()
}

/// The first reason, which is the most serious.
fn why(option: &OptionReport) -> String {
    match (option.verdicts.first(), &option.not_needed) {
        (Some(verdict), _) => verdict.reason.clone(),
        (None, Some(why)) => why.clone(),
        (None, None) => String::new(),
    }
}

fn money(course: Option<&CourseReport>, advised: bool, page: Page) -> String {
    let Some(course) = course else {
        return say::NOT_WEIGHED.to_owned();
    };
    let gain = capital(&gain_band(course.net_gain, page.open.currency()));
    let often = if advised {
        String::new()
    } else {
        joined(&[" ", &capital(&unbeaten(course.p_best)), "."])
    };
    say::against_leaving(&gain, &often)
}

fn lifts(option: &OptionReport, course: Option<&CourseReport>, advised: bool) -> String {
    let lifted = option.verdicts.iter().find(|v| !v.lifted_by.is_empty());
    match (lifted, course) {
        _ if advised => say::SEE_CHANGES.to_owned(),
        (Some(verdict), _) => verdict.lifted_by.clone(),
        (None, Some(course)) if course.p_loss >= 0.5 => say::LOWER_PRICE.to_owned(),
        (None, _) => say::NOTHING_AGAINST.to_owned(),
    }
}
