//! The gain of each plan and its uncertainty: one line a plan, all on one scale.

use leavewell_model::report::CourseReport;
use leavewell_model::terms::Currency;
use leavewell_model::terms::Treatment;
use leavewell_pages::wrapped;
use yew::prelude::*;

use super::figure::{Frame, LINE, figure, stroke, word, words};
use super::scale::{Scale, anchor, count};
use crate::app::parts::element::{el, group};
use crate::app::parts::words::{gain_band, money};
use crate::app::wording::charts as text;
use leavewell_model::terms::share;

/// The name of a plan, with "advised" or "barred" if it is.
pub(super) fn named(course: &CourseReport, advised: bool) -> String {
    if advised {
        text::advised(&course.name)
    } else if course.barred.is_empty() {
        course.name.clone()
    } else {
        text::barred(&course.name)
    }
}

/// The CSS class of a plan.
pub(super) fn class_of(course: &CourseReport, advised: bool) -> &'static str {
    match (advised, course.barred.is_empty()) {
        (true, true) => "is-advised",
        (true, false) => "is-advised is-barred",
        (false, true) => "is-plain",
        (false, false) => "is-barred",
    }
}

/// The scale that covers the outcomes of every plan, and zero.
pub(super) fn scale_of(courses: &[&CourseReport]) -> Scale {
    let mut held = vec![0.0];
    for course in courses {
        held.extend([course.net_gain.p10, course.net_gain.p90]);
    }
    Scale::holding(&held)
}

struct OutcomeRow<'a> {
    course: &'a CourseReport,
    name: Vec<String>,
    said: Vec<String>,
    top: f64,
    advised: bool,
}

/// The money each plan brings compared with leaving the piece alone, in display order.
pub fn outcomes(courses: &[&CourseReport], advised: &[Treatment], currency: Currency) -> Html {
    let scale = scale_of(courses);
    let mut rows = Vec::new();
    let mut top = 30.0;
    for course in courses {
        let is_advised = course.steps == advised;
        let text = named(course, is_advised);
        // Bold text is wider.
        let name = wrapped(&text, if is_advised { 33 } else { 38 });
        let said = wrapped(&said(course, currency), 37);
        let height = LINE * count(name.len() + said.len()) + 30.0;
        rows.push(OutcomeRow {
            course,
            name,
            said,
            top,
            advised: is_advised,
        });
        top += height;
    }
    let frame = Frame {
        id: "outcomes",
        title: title(courses, advised).to_owned(),
        desc: text::PLANS_READ,
        height: top + 22.0,
        head: &text::PLANS_HEAD,
        rows: table(courses, currency),
    };
    let zero = scale.place(0.0);
    let (low, high) = scale.ends();
    let drawing = group()
        .put(stroke("chart-zero", (zero, 20.0), (zero, top)))
        .put(word(
            text::AS_IT_IS,
            zero,
            14.0,
            "chart-quiet",
            anchor(zero),
        ))
        .el(group().each(&rows, |row| {
            el("g", class_of(row.course, row.advised))
                .key(&row.course.ids())
                .put(line(row, scale))
        }))
        .put(word(
            &money(low, currency),
            2.0,
            top + 16.0,
            "chart-quiet",
            "start",
        ))
        .put(word(
            &money(high, currency),
            98.0,
            top + 16.0,
            "chart-quiet",
            "end",
        ))
        .html();
    figure(frame, drawing)
}

fn line(row: &OutcomeRow, scale: Scale) -> Html {
    let gain = row.course.net_gain;
    let y = row.top + LINE * count(row.name.len()) + 12.0;
    let middle = scale.place(gain.p50);
    group()
        .put(words(
            &row.name,
            2.0,
            row.top + 14.0,
            "chart-name chart-over",
            "start",
        ))
        .put(stroke(
            "chart-range",
            (scale.place(gain.p10), y),
            (scale.place(gain.p90), y),
        ))
        .put(stroke("chart-median", (middle, y - 7.0), (middle, y + 7.0)))
        .put(words(
            &row.said,
            2.0,
            y + 20.0,
            "chart-quiet chart-over",
            "start",
        ))
        .html()
}

fn said(course: &CourseReport, currency: Currency) -> String {
    let gain = course.net_gain;
    let money = if gain.p10 == 0.0 && gain.p90 == 0.0 {
        text::NO_CHANGE.to_owned()
    } else {
        text::range_alone(&gain_band(gain, currency)).to_owned()
    };
    text::gain_and_unbeaten(&money, &text::unbeaten(course.p_best))
}

fn title(courses: &[&CourseReport], advised: &[Treatment]) -> &'static str {
    let Some(best) = courses.iter().find(|c| c.steps == advised) else {
        return text::PLANS;
    };
    let others = || {
        courses
            .iter()
            .filter(|c| c.steps != best.steps && c.barred.is_empty())
    };
    if others().all(|c| c.net_gain.p50 <= best.net_gain.p50) {
        text::ADVISED_IS_BEST
    } else if others().all(|c| c.net_gain.p10 <= best.net_gain.p50) {
        text::PLANS_OVERLAP
    } else {
        text::ANOTHER_IS_BETTER
    }
}

fn table(courses: &[&CourseReport], currency: Currency) -> Vec<Vec<String>> {
    courses
        .iter()
        .map(|c| {
            vec![
                c.name.clone(),
                gain_band(c.net_gain, currency),
                money(c.net_gain.p50, currency),
                share(c.p_best),
            ]
        })
        .collect()
}
