//! Beside the answer: what would change it, and what to look at next.

use leavewell_model::case::Currency;
use leavewell_model::report::{ChangeReport, NextLook};
use yew::prelude::*;

use super::options::MoneyReportProps;
use crate::app::charts::Change;
use crate::app::parts::words::money;
use crate::app::route::Route;

/// What the changes need.
#[derive(Clone, Debug, PartialEq, Properties)]
pub(super) struct WouldChangeProps {
    /// The inputs and where the answer flips.
    pub changes: Vec<ChangeReport>,
    /// What amounts are in.
    pub currency: Currency,
}

/// What would change the answer.
#[component]
pub(super) fn WouldChange(props: &WouldChangeProps) -> Html {
    let flips = props.changes.iter().any(|c| c.flips_at.is_some());
    html! {
        <section class="would-change" aria-labelledby="would-change-title">
            <h2 id="would-change-title">{ "What would change this" }</h2>
            <ul hidden={!flips}>
                for change in props.changes.iter().filter(|c| c.flips_at.is_some()) {
                    <li key={change.input}>{ change.text.clone() }</li>
                }
            </ul>
            <p hidden={flips}>
                { "Each of these was moved far up and far down by itself. The answer stayed the same." }
            </p>
            <div hidden={props.changes.is_empty()}>
                <Change changes={props.changes.clone()} currency={props.currency} />
            </div>
        </section>
    }
}

/// What to look at next.
#[component]
pub(super) fn LookNext(props: &MoneyReportProps) -> Html {
    const SHOWN: usize = 3;
    let looks = &props.report.identity.next_looks;
    html! {
        <section class="look-next" aria-labelledby="look-next-title">
            <h2 id="look-next-title">{ "What to look at next" }</h2>
            <p hidden={!looks.is_empty()}>{ "Nothing left to look at that you can see by eye." }</p>
            <ol>
                for look in looks.iter().take(SHOWN) {
                    <li key={look.finding}>
                        <strong>{ look.title }</strong>
                        <p>{ look.how }</p>
                        <p class="quiet">{ format!("You need: {}. ", look.needs) }{ worth(look, props.currency) }</p>
                    </li>
                }
            </ol>
            <p><a href={Route::Look.href()}>{ "Go to Look" }</a></p>
        </section>
    }
}

fn worth(look: &NextLook, currency: Currency) -> String {
    if look.worth >= 1.0 {
        format!(
            "Knowing it is worth about {} to this decision.",
            money(look.worth, currency)
        )
    } else {
        "It tells you more about the piece than it changes the answer.".to_owned()
    }
}
