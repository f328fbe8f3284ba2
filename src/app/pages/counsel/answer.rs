//! The answer in one sentence, how firm it is, and the reasons.

use leavewell_model::Report;
use yew::prelude::*;

use crate::app::parts::cautions::display_only;
use crate::app::parts::marks::{bullets, fold, p};
use crate::app::parts::words::joined;
use crate::app::route::Route;

/// How many reasons are shown at once.
const SHOWN: usize = 3;

/// The answer.
pub(super) fn answer(report: &Report) -> Html {
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
    html! {
        <section class="answer" aria-labelledby="answer-title">
            <h2 id="answer-title" class="answer-sentence">{ counsel.sentence.clone() }</h2>
            { p("answer-firmness", counsel.firmness_words.clone()) }
            <div class="answer-notes">
                { display_only(report) }
                if counsel.refer {
                    <div class="refer">
                        <p><strong>{ "Let a specialist see it before anything is done." }</strong></p>
                        { bullets(texts(&counsel.refer_why)) }
                    </div>
                }
            </div>
            <h3>{ "Why" }</h3>
            <div class="answer-reasons">{ bullets(reasons) }</div>
            <div hidden={more.is_empty()}>{ fold("", "More reasons", bullets(more)) }</div>
            <div class="answer-doubts" hidden={counsel.doubts.is_empty()}>
                <h3>{ "What keeps it from being firmer" }</h3>
                { bullets(texts(&counsel.doubts)) }
            </div>
            <div class="answer-problems" hidden={problems.is_empty()}>
                <h3>{ "Not used, because it could not be read" }</h3>
                { bullets(problems) }
                <p><a href={Route::Piece.href()}>{ "Go back to the record" }</a></p>
            </div>
        </section>
    }
}

fn texts(items: &[String]) -> Vec<AttrValue> {
    items.iter().map(|item| item.clone().into()).collect()
}
