//! Counsel: the answer first, then the options side by side, then everything the answer rests on.

mod answer;
mod courses;
mod faults;
mod found;
mod lines;
mod lost;
mod opening;
mod options;
mod proposal;
mod selling;
mod side;

pub use found::found;
use leavewell_model::record::is_enough_to_advise;
use leavewell_model::report::{CourseReport, Report};
use leavewell_model::terms::{Currency, Treatment};
use leavewell_pages::PageName;
use yew::prelude::*;

use super::Page;
use crate::app::charts::{bridge, has_bridge, outcomes, plane};
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::cautions::cautions_of;
use crate::app::parts::element::{el, group};
use crate::app::parts::marks::{fold, folded_section};
use crate::app::wording::counsel as say;

/// The largest number of plans in one chart; nobody compares more.
const DRAWN: usize = 7;

/// The advice on one piece: a picture of what was found, the answer, and what owners ask; the rest is folded.
pub fn counsel_page(page: Page) -> Html {
    let first = el("div", "counsel-first")
        .put(picture(page))
        .put(answer::answer(page));
    let enough = is_enough_to_advise(&page.open.case);
    let rest = match page.open.report().filter(|_| enough) {
        Some(report) => rest(page, report),
        None => el("div", "").hidden(true).html(),
    };
    el("div", "screen counsel")
        .el(first)
        .el(el("div", "counsel-rest").put(rest))
        .html()
}

/// The name of the piece, what it is, and a picture of what was found on it.
fn picture(page: Page) -> Html {
    el("section", "counsel-picture")
        .attr("aria-label", say::FOUND)
        .el(el("p", "what-it-is")
            .el(el("strong", "").words(page.open.name()))
            .text(" ")
            .el(el("span", "").words(page.open.identity.sentence.clone())))
        .put(found(page.open))
        .html()
}

fn rest(page: Page, report: &Report) -> Html {
    let currency = page.open.currency();
    let [main, beside, more] = page.state.reader.order();
    let section = |name: &str| match name {
        "faults" => faults::faults(page, report),
        "proposal" => proposal::proposal(page, report),
        "options" => options::options(report, currency),
        "would-change" => side::would_change(page),
        "look-next" => side::look_next(report, currency),
        "lost" => lost::lost(report),
        "pictures" => folded_section(
            "counsel-pictures",
            "pictures-title",
            say::PICTURES,
            pictures(report, currency),
        ),
        "courses" => courses::courses(report, currency),
        "cautions" => cautions_of(report),
        _ => fold("more", say::TRACE, loaded_page(page, PageName::Trace)),
    };
    // Each section has a key, so that a change of reader moves the sections and re-renders none.
    let sections = el("div", "counsel-folds").each([main, beside, more].concat(), |name| {
        el("div", "").key(name).put(section(name))
    });
    group()
        .el(el("div", "counsel-for")
            .put(opening::who(page))
            .put(opening::opening(page, report))
            .put(selling::selling(report, currency)))
        .el(sections)
        .html()
}

fn pictures(report: &Report, currency: Currency) -> Html {
    let drawn = drawn(report);
    let (advised, reasons) = (&report.counsel.steps, &report.counsel.reasons);
    group()
        .said("", say::what_a_plan_is(&report.value.label))
        .el(options::more_often(report))
        .el(el("div", "picture-grid")
            .put(outcomes(&drawn, advised, currency))
            .put(plane(&drawn, advised, currency))
            .el(el("div", "")
                .hidden(!has_bridge(reasons))
                .put(bridge(reasons, currency))))
        .html()
}

/// The plans worth drawing: the best that can be advised, with leaving it, the advised one and the one the
/// answer speaks of among them, even when that one is barred.
#[must_use]
pub fn drawn(report: &Report) -> Vec<&CourseReport> {
    let contrast = report.counsel.contrast.as_ref();
    let must = |c: &CourseReport| {
        c.steps == report.counsel.steps
            || c.steps == [Treatment::Leave]
            || contrast.is_some_and(|contrast| c.steps == contrast.steps)
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
