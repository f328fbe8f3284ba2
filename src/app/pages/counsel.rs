//! Counsel: the answer first, then the choices side by side, then everything it rests on.

mod answer;
mod asked;
mod courses;
mod lost;
mod options;
mod side;

use leavewell_model::case::Currency;
use leavewell_model::report::{CourseReport, Report};
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::charts::{bridge, has_bridge, outcomes, plane};
use crate::app::parts::blocks::leaf;
use crate::app::parts::cautions::cautions_of;
use crate::app::parts::element::{el, group};
use crate::app::parts::marks::{fold, section};
use crate::app::parts::screen::head;
use crate::app::parts::words::joined;

/// Most plans drawn in one picture: more than these nobody compares.
const DRAWN: usize = 7;

/// The advice on one piece.
pub fn counsel_page(page: Page) -> Html {
    let head = head(
        page,
        "Counsel",
        "What we would do, how sure that is, and why. You decide.",
    );
    let counsel = of_report(page.open, |report| counsel(page, report));
    el("div", "screen counsel").put(head).put(counsel).html()
}

fn counsel(page: Page, report: &Report) -> Html {
    let open = page.open;
    let currency = open.currency();
    let main = el("div", "counsel-main")
        .put(answer::answer(report))
        .put(asked::asked(page, report))
        .put(options::options(report, currency));
    let side = el("aside", "counsel-side")
        .attr(
            "aria-label",
            "What could change the answer, what to look at next, and what is gone for good",
        )
        .put(side::would_change(page))
        .put(side::look_next(report, currency))
        .put(lost::lost(report));
    let more = el("div", "counsel-more")
        .put(section(
            "counsel-pictures",
            "pictures-title",
            "The plans in pictures",
            pictures(report, currency),
        ))
        .put(courses::courses(report, currency))
        .put(fold(
            "more",
            "How these numbers are made, and from what",
            leaf(page, "trace"),
        ))
        .put(cautions_of(report));
    group().el(main).el(side).el(more).html()
}

fn pictures(report: &Report, currency: Currency) -> Html {
    let drawn = drawn(report);
    let (advised, reasons) = (&report.counsel.steps, &report.counsel.reasons);
    group()
        .said(
            "",
            joined(&[
                "A plan is one step or a few, in order. ",
                &report.value.label,
            ]),
        )
        .el(el("div", "picture-grid")
            .put(outcomes(&drawn, advised, currency))
            .put(plane(&drawn, advised, currency))
            .el(el("div", "")
                .hidden(!has_bridge(reasons))
                .put(bridge(reasons, currency))))
        .html()
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
