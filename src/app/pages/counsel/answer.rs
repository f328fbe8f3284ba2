//! The answer in one sentence, its firmness, what owners ask, and the reasons.

use leavewell_model::Report;
use leavewell_model::record::is_enough_to_advise;
use leavewell_model::road::RoadQuestion;
use leavewell_model::terms::Firmness;
use yew::prelude::*;

use super::lines::lines;
use crate::app::pages::{Page, of_report};
use crate::app::parts::cautions::display_only;
use crate::app::parts::element::{El, el, group};
use crate::app::parts::marks::{bullets, fold};
use crate::app::parts::words::joined;
use crate::app::route::Route;
use crate::app::state::first_sentence;
use crate::app::wording::{answer as wait, counsel as say, owner};

/// How many looks are named before there is advice.
const SHOWN: usize = 3;

/// The answer in a sentence, and what owners ask. With too little recorded it says so, and what to look at.
pub(super) fn answer(page: Page) -> Html {
    let open = page.open;
    let enough = is_enough_to_advise(&open.case);
    let sentence = match open.report() {
        _ if !enough => owner::TOO_LITTLE.to_owned(),
        Some(report) => report.counsel.sentence.clone(),
        None => wait::ON_ITS_WAY.to_owned(),
    };
    let first = first_sentence(&sentence);
    let contrast = sentence.get(first.len()..).unwrap_or_default().to_owned();
    let is_ready = !enough || open.report().is_some();
    let class = if is_ready {
        "answer-sentence"
    } else {
        "answer-waiting"
    };
    let title = el("h1", class)
        .attr("id", "answer-title")
        .attr("tabindex", "-1")
        .words(first)
        .el(el("span", "answer-contrast").words(contrast));
    let body = of_report(open, |report| {
        if enough {
            body(page, report)
        } else {
            look_first(page, report)
        }
    });
    el("section", "answer")
        .attr("aria-labelledby", "answer-title")
        .el(title)
        .el(el("div", "").put(body))
        .html()
}

fn body(page: Page, report: &Report) -> Html {
    let counsel = &report.counsel;
    let firm = match counsel.firmness {
        Firmness::Clear => "answer-firmness is-clear",
        Firmness::Leaning => "answer-firmness is-leaning",
        Firmness::Open => "answer-firmness is-open",
    };
    let problems: Vec<AttrValue> = report
        .problems
        .iter()
        .map(|problem| joined(&[&problem.message, " ", &problem.remedy]).into())
        .collect();
    let mut notes = el("div", "answer-notes").put(display_only(report));
    if counsel.refer {
        notes = notes.el(el("div", "refer")
            .el(el("p", "").tag("strong", say::REFER))
            .put(fold("", say::WHY, bullets(texts(&counsel.refer_why)))));
    }
    let back = el("a", "link-alone")
        .attr("href", Route::Piece.href())
        .text(say::TO_THE_RECORD);
    let problems = el("div", "answer-problems")
        .hidden(problems.is_empty())
        .tag("h3", say::NOT_USED)
        .put(bullets(problems))
        .el(el("p", "").el(back));
    group()
        .said(firm, counsel.firmness_words.clone())
        .put(lines(page, report))
        .el(notes)
        .el(reasons(report))
        .el(problems)
        .html()
}

/// Why, and what keeps the answer from being firmer.
fn reasons(report: &Report) -> El {
    let counsel = &report.counsel;
    let reasons = counsel.reasons.iter().map(|r| r.text.clone().into());
    let doubts = el("div", "answer-doubts")
        .hidden(counsel.doubts.is_empty())
        .tag("h3", say::DOUBTS)
        .put(bullets(texts(&counsel.doubts)));
    let body = group()
        .el(el("div", "answer-reasons").put(bullets(reasons.collect())))
        .el(doubts);
    el("div", "").put(fold("why-fold", say::WHY, body.html()))
}

/// What to look at before there is advice, the questions that lead there, and who can help.
fn look_first(page: Page, report: &Report) -> Html {
    let looks = report.identity.next_looks.iter().take(SHOWN);
    let question = page.state.next_question().unwrap_or(RoadQuestion::Form);
    let road = el("a", "button")
        .attr("href", Route::Road(question).href())
        .text(owner::QUESTIONS);
    group()
        .tag("h2", owner::LOOK_FIRST)
        .el(el("ol", "look-first").each(looks, |look| {
            el("li", "")
                .key(look.finding.text())
                .tag("strong", look.title.get())
                .p("hint", look.how.get())
        }))
        .el(el("p", "").el(road))
        .put(lines(page, report))
        .html()
}

fn texts(items: &[String]) -> Vec<AttrValue> {
    items.iter().map(|item| item.clone().into()).collect()
}
