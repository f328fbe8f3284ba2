//! What is gone for good: for the plan advised, and for replating, which most people ask about.

use leavewell_model::Report;
use leavewell_model::facts::treatment_text;
use yew::prelude::*;

use crate::app::parts::marks::{all, bullets, named, p, section};
use crate::app::parts::words::{joined, small};

/// Losses in words.
pub(super) fn lost(report: &Report) -> Html {
    let advised = report
        .courses
        .iter()
        .find(|c| c.steps == report.counsel.steps);
    let mut lost: Vec<AttrValue> = advised
        .map(|c| {
            c.lost
                .iter()
                .filter(|l| **l != "Nothing")
                .map(|l| (*l).into())
                .collect()
        })
        .unwrap_or_default();
    if lost.is_empty() {
        lost.push("Nothing.".into());
    }
    let name = advised.map_or("", |c| &c.name);
    let replating = report
        .options
        .iter()
        .find(|o| o.treatment == "T14a")
        .map_or("", |o| o.lost);
    let questions: Vec<_> = report
        .counsel
        .steps
        .iter()
        .filter_map(|id| treatment_text(id))
        .filter(|t| !t.ask.is_empty())
        .collect();
    let body = all(vec![
        html! { <dl>
            <div>
                <dt>{ joined(&["With the plan advised: ", &small(name)]) }</dt>
                <dd>{ bullets(lost) }</dd>
            </div>
            <div hidden={replating.is_empty()}>
                <dt>{ "With full replating" }</dt>
                <dd>{ p("", joined(&[replating, "."])) }</dd>
            </div>
        </dl> },
        html! { <h3>{ "A question to ask whoever would do it" }</h3> },
        html! { <ul>
            for text in questions {
                <li key={text.id}>{ named(text.name, joined(&[": ", text.ask])) }</li>
            }
        </ul> },
    ]);
    section("lost", "lost-title", "What is gone for good", body)
}
