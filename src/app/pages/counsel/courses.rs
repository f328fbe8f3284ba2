//! Every plan weighed, best first.

use leavewell_model::case::Currency;
use leavewell_model::report::{Band, CourseReport};
use yew::prelude::*;

use super::options::{MoneyReportProps, unbroken};
use crate::app::charts::unbeaten;
use crate::app::parts::words::{in_hundred, money_band, percent};

/// All plans as a table.
#[component]
pub(super) fn Courses(props: &MoneyReportProps) -> Html {
    let report = &props.report;
    let (open, closed): (Vec<_>, Vec<_>) = report.courses.iter().partition(|c| c.barred.is_empty());
    html! {
        <section class="courses" aria-labelledby="courses-title">
            <h2 id="courses-title">{ "Every plan we weighed" }</h2>
            <details>
                <summary>{ format!("{} that could be advised, best first", open.len()) }</summary>
                <div class="table-scroll" role="region" aria-label="Plans, best first" tabindex="0">
                    <table>
                        <caption>{ "Money is against leaving the piece as it is." }</caption>
                        <thead>
                            <tr>
                                for head in HEADS {
                                    <th scope="col">{ head }</th>
                                }
                            </tr>
                        </thead>
                        <tbody>
                            for course in open {
                                { row(course, props.currency) }
                            }
                        </tbody>
                    </table>
                </div>
            </details>
            <details hidden={closed.is_empty()}>
                <summary>{ format!("{} that cannot, and why", closed.len()) }</summary>
                <ul class="closed-courses">
                    for course in closed {
                        <li key={course.steps.join("+")}>
                            <strong>{ course.name.clone() }</strong>
                            { ": " }
                            { course.barred.iter().map(|v| v.reason.as_str()).collect::<Vec<_>>().join(" ") }
                        </li>
                    }
                </ul>
            </details>
        </section>
    }
}

const HEADS: [&str; 7] = [
    "Plan",
    "Money",
    "How often unbeaten",
    "Leaves less money",
    "Originality kept",
    "Can it be undone",
    "Cost",
];

fn row(course: &CourseReport, currency: Currency) -> Html {
    let gain = course.net_gain;
    let band = Band {
        p10: gain.p10,
        p50: gain.p50,
        p90: gain.p90,
    };
    html! {
        <tr key={course.steps.join("+")}>
            <th scope="row">{ course.name.clone() }</th>
            <td>{ unbroken(&money_band(band, currency)) }</td>
            <td>{ unbeaten(course.p_best) }</td>
            <td>{ in_hundred(course.p_loss) }</td>
            <td>{ percent(course.originality) }</td>
            <td>{ course.reversibility_words }</td>
            <td>{ money_band(course.cost, currency) }</td>
        </tr>
    }
}
