//! Cautions for the treatments and hazards a screen names. The deferral line is not here: the shell
//! shows it at the foot of every screen.

use leavewell_model::facts::{Level, caution, treatment_text};
use leavewell_model::report::CautionReport;
use yew::prelude::*;

/// The cautions of treatments a screen names by itself, such as `["T09", "T14a"]`.
///
/// A screen that shows the model's answer passes `report.cautions` instead.
#[must_use]
pub fn named(treatments: &[&str]) -> Vec<CautionReport> {
    treatments
        .iter()
        .filter_map(|id| {
            let text = caution(&format!("caution.{id}"))?;
            Some(CautionReport {
                id: text.id.to_owned(),
                level: text.level,
                about: treatment_text(id)
                    .map(|t| t.name.to_owned())
                    .unwrap_or_default(),
                text: text.text.to_owned(),
            })
        })
        .collect()
}

/// What the list of cautions needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct CautionsProps {
    /// The cautions, in the order to show them.
    pub cautions: Vec<CautionReport>,
}

/// Cautions for what is named here.
#[component]
pub fn Cautions(props: &CautionsProps) -> Html {
    html! {
        <section class="cautions" aria-labelledby="cautions-title">
            <h2 id="cautions-title">{ "Cautions for what is named here" }</h2>
            <ul class="caution-list">
                for caution in props.cautions.iter() {
                    <li key={caution.id.clone()} class={classes!("caution", level_class(caution.level))}>
                        <p class="caution-head">
                            <strong>{ level_words(caution.level) }</strong>
                            { ": " }{ caution.about.clone() }
                        </p>
                        <p>{ caution.text.clone() }</p>
                    </li>
                }
            </ul>
        </section>
    }
}

/// How serious a caution is, in words.
#[must_use]
pub fn level_words(level: Level) -> &'static str {
    match level {
        Level::Stop => "Stop and read",
        Level::Care => "Take care",
        Level::Note => "Know this",
    }
}

fn level_class(level: Level) -> &'static str {
    match level {
        Level::Stop => "is-stop",
        Level::Care => "is-care",
        Level::Note => "is-note",
    }
}
