//! The answer in one sentence, its firmness, what it means for the reader, and the reasons.

use leavewell_model::Report;
use yew::prelude::*;

use super::opening::opening;
use crate::app::pages::Page;
use crate::app::parts::cautions::display_only;
use crate::app::parts::element::el;
use crate::app::parts::marks::{bullets, fold};
use crate::app::parts::words::joined;
use crate::app::route::Route;
use crate::app::wording::counsel as say;

/// How many reasons are shown before the fold.
const SHOWN: usize = 3;

/// The answer.
pub(super) fn answer(page: Page, report: &Report) -> Html {
    let counsel = &report.counsel;
    let mut reasons: Vec<AttrValue> = counsel
        .reasons
        .iter()
        .map(|r| r.text.clone().into())
        .collect();
    let more = reasons.split_off(reasons.len().min(SHOWN));
    let problems: Vec<AttrValue> = report
        .problems
        .iter()
        .map(|problem| joined(&[&problem.message, " ", &problem.remedy]).into())
        .collect();
    let mut notes = el("div", "answer-notes").put(display_only(report));
    if counsel.refer {
        notes = notes.el(el("div", "refer")
            .el(el("p", "").tag("strong", say::REFER))
            .put(bullets(texts(&counsel.refer_why))));
    }
    let more =
        el("div", "")
            .hidden(more.is_empty())
            .put(fold("", say::MORE_REASONS, bullets(more)));
    let doubts = el("div", "answer-doubts")
        .hidden(counsel.doubts.is_empty())
        .tag("h3", say::DOUBTS)
        .put(bullets(texts(&counsel.doubts)));
    let back = el("a", "")
        .attr("href", Route::Piece.href())
        .text(say::TO_THE_RECORD);
    let problems = el("div", "answer-problems")
        .hidden(problems.is_empty())
        .tag("h3", say::NOT_USED)
        .put(bullets(problems))
        .el(el("p", "").el(back));
    let sentence = el("h2", "answer-sentence")
        .attr("id", "answer-title")
        .words(counsel.sentence.clone());
    el("section", "answer")
        .attr("aria-labelledby", "answer-title")
        .el(sentence)
        .said("answer-firmness", counsel.firmness_words.clone())
        .el(notes)
        .el(el("div", "").put(opening(page, report)))
        .tag("h3", say::WHY)
        .el(el("div", "answer-reasons").put(bullets(reasons)))
        .el(more)
        .el(doubts)
        .el(problems)
        .html()
}

fn texts(items: &[String]) -> Vec<AttrValue> {
    items.iter().map(|item| item.clone().into()).collect()
}
