//! How good each plan is, and how sure: a line for each, all on one scale.

use leavewell_model::case::Currency;
use leavewell_model::report::{Band, CourseReport};
use yew::prelude::*;

use super::figure::{Figure, LINE, words};
use super::scale::{Scale, anchor, count, lines, unbeaten};
use crate::app::parts::words::{in_hundred, money, money_band};

/// What the picture needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct OutcomesProps {
    /// The plans, in the order to show them.
    pub courses: Vec<CourseReport>,
    /// Steps of the plan advised.
    pub advised: Vec<&'static str>,
    /// What amounts are in.
    pub currency: Currency,
}

/// A plan's name, and what is to be known of it at once.
pub(super) fn named(course: &CourseReport, advised: bool) -> String {
    if advised {
        format!("{} (advised)", course.name)
    } else if course.barred.is_empty() {
        course.name.clone()
    } else {
        format!("{} (barred)", course.name)
    }
}

/// How a plan is drawn.
pub(super) fn class_of(course: &CourseReport, advised: bool) -> Classes {
    classes!(
        advised.then_some("is-advised"),
        (!course.barred.is_empty()).then_some("is-barred")
    )
}

struct Row<'a> {
    course: &'a CourseReport,
    name: Vec<String>,
    said: Vec<String>,
    top: f64,
    advised: bool,
}

/// Money against leaving it, for each plan.
#[component]
pub fn Outcomes(props: &OutcomesProps) -> Html {
    let OutcomesProps {
        courses,
        advised,
        currency,
    } = props;
    let scale = Scale::holding(
        courses
            .iter()
            .flat_map(|c| [c.net_gain.p10, c.net_gain.p90])
            .chain(std::iter::once(0.0)),
    );
    let mut rows = Vec::new();
    let mut top = 30.0;
    for course in courses {
        let is_advised = course.steps == *advised;
        let text = named(course, is_advised);
        // Words in bold run wider.
        let name = lines(&text, if is_advised { 33 } else { 38 });
        let said = lines(&said(course, *currency), 37);
        let height = LINE * count(name.len() + said.len()) + 30.0;
        rows.push(Row {
            course,
            name,
            said,
            top,
            advised: is_advised,
        });
        top += height;
    }
    let zero = scale.place(0.0);
    html! {
        <Figure
            id="outcomes"
            title={title(courses, advised)}
            desc="For each plan a line holds 8 outcomes in 10; the upright mark is the middle one. Right of the dashed \
                  line there is more money than by leaving it as it is, left of it less. Unbeaten: of 100 ways things may be, so many in \
                  which nothing else does noticeably better."
            height={top + 22.0}
            head={["Plan", "Against leaving it", "Middle", "Unbeaten in"].map(AttrValue::from).to_vec()}
            rows={table(courses, *currency)}
        >
            <line
                class="chart-zero"
                x1={scale.at(0.0)}
                x2={scale.at(0.0)}
                y1="20"
                y2={format!("{top:.1}")}
            />
            { words(&["as it is".to_owned()], &scale.at(0.0), 14.0, "chart-quiet", anchor(zero)) }
            for row in &rows {
                <g key={row.course.steps.join("+")} class={class_of(row.course, row.advised)}>
                    { line(row, scale) }
                </g>
            }
            { ends(scale, top + 16.0, *currency) }
        </Figure>
    }
}

fn line(row: &Row, scale: Scale) -> Html {
    let gain = row.course.net_gain;
    let y = row.top + LINE * count(row.name.len()) + 12.0;
    let at = |dy: f64| format!("{:.1}", y + dy);
    html! {
        <>
            { words(&row.name, "2%", row.top + 14.0, "chart-name chart-over", "start") }
            <line class="chart-range" x1={scale.at(gain.p10)} x2={scale.at(gain.p90)} y1={at(0.0)} y2={at(0.0)} />
            <line class="chart-median" x1={scale.at(gain.p50)} x2={scale.at(gain.p50)} y1={at(-7.0)} y2={at(7.0)} />
            { words(&row.said, "2%", y + 20.0, "chart-quiet chart-over", "start") }
        </>
    }
}

fn said(course: &CourseReport, currency: Currency) -> String {
    let gain = course.net_gain;
    let band = Band {
        p10: gain.p10,
        p50: gain.p50,
        p90: gain.p90,
    };
    let money = if gain.p10 == 0.0 && gain.p90 == 0.0 {
        "no change".to_owned()
    } else {
        money_band(band, currency)
            .trim_start_matches("about ")
            .to_owned()
    };
    format!("{money}; {}", unbeaten(course.p_best))
}

fn ends(scale: Scale, y: f64, currency: Currency) -> Html {
    let (low, high) = scale.ends();
    html! {
        <>
            { words(&[money(low, currency)], "2%", y, "chart-quiet", "start") }
            { words(&[money(high, currency)], "98%", y, "chart-quiet", "end") }
        </>
    }
}

fn title(courses: &[CourseReport], advised: &[&'static str]) -> &'static str {
    let Some(best) = courses.iter().find(|c| c.steps == advised) else {
        return "What each plan brings, against leaving it";
    };
    let others = || {
        courses
            .iter()
            .filter(|c| c.steps != best.steps && c.barred.is_empty())
    };
    if others().all(|c| c.net_gain.p50 <= best.net_gain.p50) {
        "In money, no plan does better than the one advised"
    } else if others().all(|c| c.net_gain.p10 <= best.net_gain.p50) {
        "In money the best plans overlap; other reasons decide"
    } else {
        "In money alone another plan does better; other reasons decide"
    }
}

fn table(courses: &[CourseReport], currency: Currency) -> Vec<Vec<String>> {
    courses
        .iter()
        .map(|c| {
            let band = Band {
                p10: c.net_gain.p10,
                p50: c.net_gain.p50,
                p90: c.net_gain.p90,
            };
            vec![
                c.name.clone(),
                money_band(band, currency),
                money(c.net_gain.p50, currency),
                in_hundred(c.p_best),
            ]
        })
        .collect()
}
