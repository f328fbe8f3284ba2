//! What is gone for good: for the plan advised, and for replating, which most people ask about.

use leavewell_model::facts::treatment_text;
use yew::prelude::*;

use super::answer::ReportProps;

/// Losses in words.
#[component]
pub(super) fn Lost(props: &ReportProps) -> Html {
    let report = &props.report;
    let advised = report
        .courses
        .iter()
        .find(|c| c.steps == report.counsel.steps);
    let lost: Vec<&str> = advised
        .map(|c| c.lost.iter().copied().filter(|l| *l != "Nothing").collect())
        .unwrap_or_default();
    let name = advised.map_or_else(String::new, |c| c.name.clone());
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
    html! {
        <section class="lost" aria-labelledby="lost-title">
            <h2 id="lost-title">{ "What is gone for good" }</h2>
            <dl>
                <div>
                    <dt>{ format!("With the plan advised: {}", name.to_lowercase()) }</dt>
                    <dd>
                        if lost.is_empty() {
                            <p>{ "Nothing." }</p>
                        } else {
                            <ul>
                                for what in lost {
                                    <li>{ what }</li>
                                }
                            </ul>
                        }
                    </dd>
                </div>
                <div hidden={replating.is_empty()}>
                    <dt>{ "With full replating" }</dt>
                    <dd><p>{ replating }{ "." }</p></dd>
                </div>
            </dl>
            <h3>{ "A question to ask whoever would do it" }</h3>
            <ul>
                for text in questions {
                    <li key={text.id}><strong>{ text.name }</strong>{ ": " }{ text.ask }</li>
                }
            </ul>
        </section>
    }
}
