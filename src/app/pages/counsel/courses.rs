//! Every plan weighed, best first.

use leavewell_model::Report;
use leavewell_model::report::CourseReport;
use leavewell_model::terms::Currency;
use yew::prelude::*;

use super::options::{more_often, unbroken};
use crate::app::charts::unbeaten;
use crate::app::parts::element::{el, group};
use crate::app::parts::marks::{fold, folded_section, named, table};
use crate::app::parts::words::{gain_band, money_band};
use crate::app::wording::counsel as say;
use leavewell_model::terms::{percent, share};

/// The table of all plans.
pub(super) fn courses(report: &Report, currency: Currency) -> Html {
    let (open, closed): (Vec<&CourseReport>, Vec<&CourseReport>) =
        report.courses.iter().partition(|c| c.barred.is_empty());
    let title = say::plans_open(open.len());
    let why_not = say::plans_closed(closed.len());
    let all_open = closed.is_empty();
    let plans = table(
        say::PLANS_LABEL.to_owned(),
        say::PLANS_CAPTION.into(),
        &say::PLANS_HEAD,
        open.into_iter().map(|c| row(c, currency)).collect(),
    );
    let list = el("ul", "closed-courses")
        .each(closed, |course| {
            el("li", "")
                .key(&course.ids())
                .put(named(course.name.clone(), why(course)))
        })
        .html();
    let body = group()
        .el(more_often(report))
        .put(fold("", title, plans))
        .el(el("div", "").hidden(all_open).put(fold("", why_not, list)))
        .html();
    folded_section("courses", "courses-title", say::PLANS, body)
}

fn why(course: &CourseReport) -> String {
    let mut why = ":".to_owned();
    for verdict in &course.barred {
        why.push(' ');
        why.push_str(&verdict.reason);
    }
    why
}

fn row(course: &CourseReport, currency: Currency) -> Vec<String> {
    vec![
        course.name.clone(),
        unbroken(&gain_band(course.net_gain, currency)),
        unbeaten(course.p_best),
        share(course.p_loss),
        percent(course.originality),
        course.reversibility_words.to_string(),
        money_band(course.cost, currency),
    ]
}
