//! Counsel: the answer first, then the choices side by side, then everything it rests on.

mod answer;
mod courses;
mod lost;
mod options;
mod side;

use leavewell_model::report::{CourseReport, Report};
use yew::prelude::*;

use super::PageProps;
use crate::app::charts::{Bridge, Outcomes, Plane, has_bridge};
use crate::app::parts::cautions::Cautions;
use answer::Answer;
use courses::Courses;
use lost::Lost;
use options::Options;
use side::{LookNext, WouldChange};

/// Most plans drawn in one picture: more than these nobody compares.
const DRAWN: usize = 7;

/// The advice on one piece.
#[component]
pub fn CounselPage(props: &PageProps) -> Html {
    let open = &props.open;
    let report = &open.report;
    let currency = open.currency();
    let drawn = drawn(report);
    let advised = report.counsel.steps.clone();
    let no_bridge = !has_bridge(&report.counsel.reasons);
    html! {
        <div class="screen counsel">
            <header class="screen-head">
                <p class="case-name">{ open.name() }</p>
                <h1 tabindex="-1">{ "Counsel" }</h1>
                <p class="purpose">{ "What we would do, how sure that is, and why. You decide." }</p>
            </header>
            <div class="counsel-main">
                <Answer {report} />
                <Options {report} {currency} />
            </div>
            <aside class="counsel-side" aria-label="What could change the answer, what to look at next, and what is gone for good">
                <WouldChange changes={report.counsel.would_change.clone()} {currency} />
                <LookNext {report} {currency} />
                <Lost {report} />
            </aside>
            <div class="counsel-more">
                <section class="counsel-pictures" aria-labelledby="pictures-title">
                    <h2 id="pictures-title">{ "The plans in pictures" }</h2>
                    <p>
                        { "A plan is one step or a few, in order. " }
                        { report.value.label }
                    </p>
                    <div class="picture-grid">
                        <Outcomes courses={drawn.clone()} advised={advised.clone()} {currency} />
                        <Plane courses={drawn} {advised} {currency} />
                        <div hidden={no_bridge}>
                            <Bridge reasons={report.counsel.reasons.clone()} {currency} />
                        </div>
                    </div>
                </section>
                <Courses {report} {currency} />
                <Cautions cautions={report.cautions.clone()} />
            </div>
        </div>
    }
}

/// The plans worth drawing: the best that can be advised, with leaving it and the advised one among
/// them, and replating, which most people ask about, even when it is barred.
fn drawn(report: &Report) -> Vec<CourseReport> {
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
        .cloned()
        .collect()
}
