//! Counsel: the answer first, then the choices side by side, then everything it rests on.

mod answer;
mod courses;
mod lost;
mod options;
mod side;

use leavewell_model::report::{CourseReport, Report};
use yew::prelude::*;

use super::Page;
use crate::app::charts::{bridge, has_bridge, outcomes, plane};
use crate::app::parts::cautions::cautions_of;
use crate::app::parts::marks::{all, div, p, section};
use crate::app::parts::screen::head;
use crate::app::parts::words::joined;
use crate::app::state::Open;

/// Most plans drawn in one picture: more than these nobody compares.
const DRAWN: usize = 7;

/// The advice on one piece.
pub fn counsel_page(page: Page) -> Html {
    let open = page.open;
    let report = &*open.report;
    let currency = open.currency();
    div(
        "screen counsel",
        vec![
            head(
                page,
                "Counsel",
                "What we would do, how sure that is, and why. You decide.",
            ),
            div(
                "counsel-main",
                vec![answer::answer(report), options::options(report, currency)],
            ),
            html! { <aside
                class="counsel-side"
                aria-label="What could change the answer, what to look at next, and what is gone for good"
            >
                { side::would_change(open) }
                { side::look_next(report, currency) }
                { lost::lost(report) }
            </aside> },
            div(
                "counsel-more",
                vec![
                    section(
                        "counsel-pictures",
                        "pictures-title",
                        "The plans in pictures",
                        pictures(open),
                    ),
                    courses::courses(report, currency),
                    cautions_of(report),
                ],
            ),
        ],
    )
}

fn pictures(open: &Open) -> Html {
    let report = &*open.report;
    let (drawn, currency) = (drawn(report), open.currency());
    let (advised, reasons) = (&report.counsel.steps, &report.counsel.reasons);
    all(vec![
        p(
            "",
            joined(&[
                "A plan is one step or a few, in order. ",
                report.value.label,
            ]),
        ),
        div(
            "picture-grid",
            vec![
                outcomes(&drawn, advised, currency),
                plane(&drawn, advised, currency),
                html! { <div hidden={!has_bridge(reasons)}>{ bridge(reasons, currency) }</div> },
            ],
        ),
    ])
}

/// The plans worth drawing: the best that can be advised, with leaving it and the advised one among
/// them, and replating, which most people ask about, even when it is barred.
fn drawn(report: &Report) -> Vec<&CourseReport> {
    let must = |c: &CourseReport| {
        c.steps == report.counsel.steps || c.steps == ["T00"] || c.steps == ["T14a"]
    };
    let can = |c: &&CourseReport| c.barred.is_empty() || must(c);
    let room = DRAWN.saturating_sub(
        report
            .courses
            .iter()
            .filter(can)
            .filter(|c| must(c))
            .count(),
    );
    let mut others = 0;
    report
        .courses
        .iter()
        .filter(can)
        .filter(|c| {
            if must(c) {
                return true;
            }
            others += 1;
            others <= room
        })
        .collect()
}
