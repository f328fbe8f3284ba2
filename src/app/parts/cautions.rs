//! Cautions for the treatments and hazards that a screen names. The shell shows the deferral line at the foot
//! of every screen.

use leavewell_model::Report;
use leavewell_model::counsel::caution_list::of_treatment;
use leavewell_model::ledger::Level;
use leavewell_model::report::{CautionReport, OptionOutcome};
use leavewell_model::terms::{ShortSort, Treatment};
use yew::prelude::*;

use super::element::{El, el, group};
use super::marks::{bullets, fold, named as strong, section};
use crate::app::wording::cautions as text;

/// The cautions for treatments that a screen names, such as `["T09", "T14a"]`.
///
/// A screen that shows the model's answer passes `report.cautions` instead.
#[must_use]
pub fn named(treatments: &[&str]) -> Vec<CautionReport> {
    let of = |id: &&str| of_treatment(Treatment::parse(id)?);
    treatments.iter().filter_map(of).collect()
}

/// A fold with the cautions for treatments that a screen names, each once; hidden where none is named.
pub fn folded_cautions(mut treatments: Vec<&str>) -> El {
    treatments.order_by(Ord::cmp);
    treatments.dedup();
    el("div", "").hidden(treatments.is_empty()).put(fold(
        "more",
        text::CAUTIONS,
        cautions(&named(&treatments)),
    ))
}

/// A section with these cautions, in the given order.
pub fn cautions(cautions: &[CautionReport]) -> Html {
    section("cautions", "cautions-title", text::CAUTIONS, list(cautions))
}

fn list(cautions: &[CautionReport]) -> Html {
    el("ul", "caution-list")
        .each(cautions, |caution| {
            let about = ": ".to_owned() + &caution.about;
            el("li", level_class(caution.level))
                .key(&caution.id)
                .el(el("p", "caution-head").put(strong(level_words(caution.level), about)))
                .said("", caution.text.clone())
        })
        .html()
}

/// The display-only notice and its reasons; empty if the piece is not for display only.
pub fn display_only(report: &Report) -> Html {
    let why = &report.display_only;
    let reasons = why.why.iter().map(|w| w.clone().into()).collect();
    el("div", "display-only")
        .hidden(!why.yes)
        .el(el("p", "").tag("strong", why.label.get()))
        .put(fold("", text::WHY_DISPLAY_ONLY, bullets(reasons)))
        .html()
}

/// The hazards recorded in full, and two folded lists: cautions for what is possible, and for the rest.
pub fn cautions_of(report: &Report) -> Html {
    let out: Vec<String> = report
        .options
        .iter()
        .filter(|o| matches!(o.outcome, OptionOutcome::Never | OptionOutcome::NotNeeded))
        .map(|o| "caution.".to_owned() + o.treatment.id())
        .collect();
    let (rest, near): (Vec<CautionReport>, Vec<CautionReport>) = report
        .cautions
        .iter()
        .cloned()
        .partition(|c| out.contains(&c.id));
    // What was recorded and can do harm now is shown in full; the rest is a line that opens.
    let of_a_treatment = |c: &CautionReport| {
        (report.options.iter()).any(|o| c.id.strip_prefix("caution.") == Some(o.treatment.id()))
    };
    let grave = |c: &CautionReport| c.level == Level::Stop && !of_a_treatment(c);
    let (grave, near): (Vec<CautionReport>, Vec<CautionReport>) = near.into_iter().partition(grave);
    section(
        "cautions",
        "cautions-title",
        text::CAUTIONS,
        group()
            .put(list(&grave))
            .put(fold("", text::FOR_THE_POSSIBLE, list(&near)))
            .put(fold("", text::FOR_THE_REST, list(&rest)))
            .html(),
    )
}

/// The severity of a caution, in words.
#[must_use]
pub fn level_words(level: Level) -> &'static str {
    match level {
        Level::Stop => text::STOP,
        Level::Care => text::CARE,
        Level::Note => text::NOTE,
    }
}

fn level_class(level: Level) -> &'static str {
    match level {
        Level::Stop => "caution is-stop",
        Level::Care => "caution is-care",
        Level::Note => "caution is-note",
    }
}
