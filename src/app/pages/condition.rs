//! Condition: the drawn piece, its parts, and what is seen on each.

mod fields;
mod summary;

use leavewell_model::case::{Form, PartName};
use leavewell_model::facts::caution;
use leavewell_model::report::CautionReport;
use yew::prelude::*;

use super::PageProps;
use crate::app::charts::SilverLeft;
use crate::app::drawings::PieceDrawing;
use crate::app::parts::cautions::Cautions;
use crate::app::parts::screen::Screen;
use crate::app::parts::words::percent;
use crate::app::route::Route;
use crate::app::state::Open;
use fields::PartFields;

/// The condition of the piece, part by part.
#[component]
pub fn ConditionPage(props: &PageProps) -> Html {
    let PageProps { open, act } = props;
    let chosen = use_state(|| PartName::Body);
    let parts = parts(open);
    let lit = if parts.contains(&chosen) {
        *chosen
    } else {
        PartName::Body
    };
    let form_known = open.form().is_some();
    html! {
        <Screen
            open={open.clone()}
            title="Condition, part by part"
            purpose="Say what you see on each part. Leave out what you have not looked at: it widens the range, no more."
            next={(Route::Money, AttrValue::from("Next: what it might fetch"))}
            line={line(open)}
            answer={answer(open)}
        >
            <div class="condition">
                <div class="condition-piece">
                    <PieceDrawing form={open.form()} lit={Some(lit)} bleeds={bleeds(open, &parts)} />
                    <p class="hint" hidden={form_known}>
                        { "No form is given yet, so a plain covered cup stands in. " }
                        <a href={Route::Piece.href()}>{ "Say what it is" }</a>
                    </p>
                    <p class="hint">{ "Copper stripes: where base metal shows, as far as you have said." }</p>
                </div>
                <ul class="part-list" aria-label="Parts of the piece">
                    for part in parts.iter().copied() {
                        <li key={part.id()}>
                            <button
                                type="button"
                                class="part-button"
                                aria-pressed={if part == lit { "true" } else { "false" }}
                                onclick={choose(&chosen, part)}
                            >
                                <span class="part-name">{ part.label() }</span>
                                <span class="part-summary">{ summary::of(open, part) }</span>
                            </button>
                        </li>
                    }
                </ul>
                <PartFields key={lit.id()} open={open.clone()} act={act.clone()} part={lit} />
            </div>
            <Cautions cautions={cautions(open, &parts)} />
        </Screen>
    }
}

fn choose(chosen: &UseStateHandle<PartName>, part: PartName) -> Callback<MouseEvent> {
    let chosen = chosen.clone();
    Callback::from(move |_| chosen.set(part))
}

/// The parts such a piece usually has, and any other that the record speaks of.
fn parts(open: &Open) -> Vec<PartName> {
    let usual = open.form().unwrap_or(Form::Other).parts();
    let others = PartName::ALL
        .iter()
        .filter(|p| !usual.contains(p) && summary::is_recorded(open, **p));
    usual.iter().chain(others).copied().collect()
}

/// Where base metal shows, for the parts somebody has looked at.
fn bleeds(open: &Open, parts: &[PartName]) -> Vec<(PartName, f64)> {
    let recorded = |part: PartName| {
        !open.draft.part_text(part.id(), "bleed").is_empty()
            && open.part_problem(part.id(), "bleed").is_none()
    };
    let known = &open.report.silver.parts;
    parts
        .iter()
        .filter(|part| recorded(**part))
        .filter(|part| open.draft.part_text(part.id(), "bleed") != "none")
        .filter_map(|part| {
            known
                .iter()
                .find(|p| p.part == part.id())
                .map(|p| (*part, p.bleed))
        })
        .collect()
}

fn line(open: &Open) -> String {
    format!(
        "Silver still covers {} of it.",
        percent(open.report.silver.covered_area)
    )
}

fn answer(open: &Open) -> Html {
    let parts = &open.report.silver.parts;
    html! {
        <>
            <h2>{ "Silver left" }</h2>
            <p>{ "This is worked out from how much base metal you say shows, and from how thick such silver was when new." }</p>
            <ul class="silver-words">
                for part in parts.iter() {
                    <li key={part.part}><strong>{ part.name }</strong>{ ": " }{ part.words.clone() }</li>
                }
            </ul>
            <SilverLeft parts={parts.clone()} />
        </>
    }
}

/// Cautions for what is recorded here: lead, closed hollows, things that eat the metal.
fn cautions(open: &Open, parts: &[PartName]) -> Vec<CautionReport> {
    let any = |field: &str, words: &[&str]| {
        parts
            .iter()
            .any(|part| words.contains(&open.draft.part_text(part.id(), field).as_str()))
    };
    let lead =
        any("joint", &["grey_repair"]) || any("lead", &["present"]) || any("fill", &["lead"]);
    let hollow = any("fill", &["sealed", "pitch"]);
    let eaten = any("corrosion", &["green", "white_powder", "rust"]);
    // Testing for lead is named on every part, so its caution always stands here.
    [
        (lead, "caution.lead", "Lead"),
        (eaten, "caution.corrosion", "Corrosion"),
        (hollow, "caution.sealed", "Closed hollow parts"),
        (true, "caution.T17", "Test for lead"),
    ]
    .into_iter()
    .filter(|(named, ..)| *named)
    .filter_map(|(_, id, about)| {
        let text = caution(id)?;
        Some(CautionReport {
            id: id.to_owned(),
            level: text.level,
            about: about.to_owned(),
            text: text.text.to_owned(),
        })
    })
    .collect()
}
