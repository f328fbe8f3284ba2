//! Counsel: the answer first, then the options side by side, then everything the answer rests on.

mod answer;
mod asked;
mod courses;
mod lost;
mod opening;
mod options;
mod side;

use leavewell_model::report::{CourseReport, Report};
use leavewell_model::terms::Currency;
use leavewell_pages::PageName;
use yew::prelude::*;

use super::{Page, of_report};
use crate::app::charts::{bridge, has_bridge, outcomes, plane};
use crate::app::parts::blocks::loaded_page;
use crate::app::parts::cautions::cautions_of;
use crate::app::parts::element::{El, el, group};
use crate::app::parts::marks::{fold, section};
use crate::app::parts::screen::head;
use crate::app::platform::page;
use crate::app::route::Route;
use crate::app::wording::cautions::CAUTIONS;
use crate::app::wording::counsel as say;

/// The largest number of plans in one chart; nobody compares more.
const DRAWN: usize = 7;

/// The advice on one piece.
pub fn counsel_page(page: Page) -> Html {
    let head = head(page, say::TITLE, say::PURPOSE);
    let counsel = of_report(page.open, |report| counsel(page, report));
    el("div", "screen counsel")
        .el(el("div", "counsel-head").put(head).put(opening::who(page)))
        .put(counsel)
        .html()
}

fn counsel(page: Page, report: &Report) -> Html {
    let open = page.open;
    let currency = open.currency();
    let [main, beside, more] = page.state.reader.order();
    let section = |name: &str| match name {
        "asked" => asked::asked(page, report),
        "options" => options::options(report, currency),
        "would-change" => side::would_change(page),
        "look-next" => side::look_next(report, currency),
        "lost" => lost::lost(report),
        "pictures" => section(
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
    let column = |holder: El, names: &[&str]| {
        holder.each(names, |name| el("div", "").key(name).put(section(name)))
    };
    let start = el("div", "counsel-main")
        .el(el("div", "")
            .key("answer")
            .put(answer::answer(page, report)))
        .el(further_down([main, beside, more].concat()).key("further-down"));
    let main = column(start, main);
    let side = el("aside", "counsel-side").attr("aria-label", say::BESIDE);
    let side = column(side, beside);
    let more = column(el("div", "counsel-more"), more);
    group().el(main).el(side).el(more).html()
}

/// Links to the sections in display order, because on a narrow screen they are far apart.
fn further_down(names: Vec<&str>) -> El {
    let sections = names.into_iter().filter_map(|name| {
        Some(match name {
            "options" => ("options-title", say::OPTIONS),
            "would-change" => ("would-change-title", say::CHANGES),
            "look-next" => ("look-next-title", say::LOOK_NEXT),
            "lost" => ("lost-title", say::LOST),
            "pictures" => ("pictures-title", say::PICTURES),
            "courses" => ("courses-title", say::PLANS),
            "cautions" => ("cautions-title", CAUTIONS),
            _ => return None,
        })
    });
    let way = |(id, title): (&'static str, &'static str)| {
        let go = Callback::from(move |event: MouseEvent| {
            event.prevent_default();
            page::focus_on(id);
        });
        let link = el("a", "").attr("href", Route::Counsel.href());
        el("li", "").key(id).el(link.pressed(go).text(title))
    };
    el("nav", "further-down")
        .attr("aria-labelledby", "further-down-title")
        .el(el("p", "")
            .attr("id", "further-down-title")
            .text(say::FURTHER_DOWN))
        .el(el("ul", "").each(sections, way))
}

fn pictures(report: &Report, currency: Currency) -> Html {
    let drawn = drawn(report);
    let (advised, reasons) = (&report.counsel.steps, &report.counsel.reasons);
    group()
        .said("", say::what_a_plan_is(&report.value.label))
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
