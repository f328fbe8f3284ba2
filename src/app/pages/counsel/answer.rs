//! The answer in one sentence, how firm it is, and the reasons.

use std::rc::Rc;

use leavewell_model::Report;
use yew::prelude::*;

use crate::app::route::Route;

/// What the answer is made from.
#[derive(Clone, Debug, Properties)]
pub(super) struct ReportProps {
    /// What the model says.
    pub report: Rc<Report>,
}

impl PartialEq for ReportProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.report, &other.report)
    }
}

/// The answer.
#[component]
pub(super) fn Answer(props: &ReportProps) -> Html {
    const SHOWN: usize = 3;
    let report = &props.report;
    let counsel = &report.counsel;
    let more = counsel.reasons.iter().skip(SHOWN).collect::<Vec<_>>();
    html! {
        <section class="answer" aria-labelledby="answer-title">
            <h2 id="answer-title" class="answer-sentence">{ counsel.sentence.clone() }</h2>
            <p class="answer-firmness">{ counsel.firmness_words.clone() }</p>
            <div class="answer-notes">
                if report.display_only.yes {
                    <div class="display-only">
                        <p><strong>{ report.display_only.label }</strong></p>
                        <details>
                            <summary>{ "Why it is not for food or drink" }</summary>
                            <ul>
                                for why in report.display_only.why.iter() {
                                    <li>{ why.clone() }</li>
                                }
                            </ul>
                        </details>
                    </div>
                }
                if counsel.refer {
                    <div class="refer">
                        <p><strong>{ "Let a specialist see it before anything is done." }</strong></p>
                        <ul>
                            for why in counsel.refer_why.iter() {
                                <li>{ why.clone() }</li>
                            }
                        </ul>
                    </div>
                }
            </div>
            <h3>{ "Why" }</h3>
            <ul class="answer-reasons">
                for reason in counsel.reasons.iter().take(SHOWN) {
                    <li>{ reason.text.clone() }</li>
                }
            </ul>
            <details hidden={more.is_empty()}>
                <summary>{ "More reasons" }</summary>
                <ul>
                    for reason in more {
                        <li>{ reason.text.clone() }</li>
                    }
                </ul>
            </details>
            <div class="answer-doubts" hidden={counsel.doubts.is_empty()}>
                <h3>{ "What keeps it from being firmer" }</h3>
                <ul>
                    for doubt in counsel.doubts.iter() {
                        <li>{ doubt.clone() }</li>
                    }
                </ul>
            </div>
            <div class="answer-problems" hidden={report.problems.is_empty()}>
                <h3>{ "Not used, because it could not be read" }</h3>
                <ul>
                    for problem in report.problems.iter() {
                        <li>
                            { problem.message.clone() }{ " " }{ problem.remedy.clone() }
                        </li>
                    }
                </ul>
                <p><a href={Route::Piece.href()}>{ "Go back to the record" }</a></p>
            </div>
        </section>
    }
}
