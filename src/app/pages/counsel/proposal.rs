//! The person's own proposal: steps put together, weighed against leaving the piece alone.

use leavewell_model::Report;
use leavewell_model::ledger::treatment_texts;
use leavewell_model::report::ProposalReport;
use leavewell_model::terms::{Doer, Form, PartName, Treatment, small};
use leavewell_model::terms::{all_of, capital};
use leavewell_pages::sheet_text::Recipient;
use yew::prelude::*;

use super::faults::without;
use super::options::unbroken;
use crate::app::pages::Page;
use crate::app::parts::choice::{choices, pick, several, tick_as, tick_at};
use crate::app::parts::element::{El, button, el, group};
use crate::app::parts::field::{number_field, typed};
use crate::app::parts::marks::{bullets, fold, press, section_fold};
use crate::app::parts::words::{gain_band, joined, money_band};
use crate::app::platform::page::focus_on;
use crate::app::reader::Reader;
use crate::app::route::Route;
use crate::app::state::{Action, Target};
use crate::app::wording::proposal as text;

/// Where the steps stand in the record.
const STEPS: &str = "proposal.steps";

/// What is asked about when it is the proposal.
const PROPOSAL: &str = "proposal";

/// The steps, and what comes of them.
pub(super) fn proposal(page: Page, report: &Report) -> Html {
    let count = page.open.draft.count(STEPS);
    let body = group()
        .p("hint", text::HINT)
        .el(group().each(0..count, |place| step(page, place)))
        .el(el("p", "").el(button("")
            .pressed(press(page.act, Action::Add(STEPS)))
            .text(text::ADD)))
        .el(el("div", "")
            .hidden(count == 0)
            .put(held_against(page))
            .put(weighed(page, report))
            .el(el("p", "").el(el("a", "button")
                .attr("href", Route::Sheet(Recipient::Client).href())
                .text(text::ON_THE_SHEET))))
        .html();
    let is_open = page.state.reader == Reader::Restorer;
    section_fold("proposal", "proposal-title", text::TITLE, body, is_open)
}

fn step(page: Page, place: usize) -> El {
    let at = |field: &'static str| Target::Entry(STEPS, place, field);
    let act = page.act.clone();
    let remove = Callback::from(move |_: MouseEvent| {
        act.emit(Action::Remove(STEPS, place));
        focus_on("proposal-title");
    });
    let named = treatment_texts()
        .iter()
        .filter(|text| text.id != "T00")
        .map(|text| (text.id, text.name))
        .collect();
    let [label, hint] = text::PRICE;
    let price = number_field(
        page,
        at("likely"),
        [label, hint, page.open.currency().sign()],
    );
    el("fieldset", "choice quote")
        .key(&joined(&["step-", &place.to_string()]))
        .el(el("legend", "").words(text::step(place + 1)))
        .put(pick(page, at("treatment"), text::TREATMENT, named))
        .el(el("div", "side-by-side")
            .put(price)
            .put(number_field(page, at("hours"), text::HOURS))
            .put(pick(page, at("who"), text::WHO, choices!(Doer))))
        .put(parts(page, at("parts")))
        .put(tick_at(page, at("agreed"), text::AGREED))
        .el(button("").pressed(remove).text(text::REMOVE))
}

fn parts(page: Page, target: Target) -> Html {
    let usual = page.open.form().unwrap_or(Form::Other).parts();
    let offered: Vec<PartName> = PartName::ALL
        .iter()
        .copied()
        .filter(|part| usual.contains(part) || target.lists(page.open, part.id()))
        .collect();
    let ticked: Vec<String> = offered
        .iter()
        .filter(|part| target.lists(page.open, part.id()))
        .map(|part| small(part.label()))
        .collect();
    let ticked: Vec<&str> = ticked.iter().map(String::as_str).collect();
    let choices = offered.iter().map(|p| (p.id(), p.label())).collect();
    fold(
        "",
        text::parts(&all_of(&ticked)),
        several(page, target, text::PARTS, choices),
    )
}

/// Whether the answer speaks of the proposal first.
fn held_against(page: Page) -> Html {
    let asked = Target::Field("aim.asked");
    let ticked = asked.text(page.open) == PROPOSAL;
    let heard = page.act.reform(move |event: Event| {
        let asks = !typed(&event).is_empty();
        Action::Typed(asked, if asks { PROPOSAL } else { "" }.to_owned())
    });
    tick_as("asked-proposal", ticked, heard, text::ASKED)
}

/// The proposal as a whole and step by step, and what keeps a step out of it.
fn weighed(page: Page, report: &Report) -> Html {
    let Some(ProposalReport { course, problems }) = &report.proposal else {
        return group().html();
    };
    let currency = page.open.currency();
    let gain = text::result(
        &course.name,
        &capital(&unbroken(&gain_band(course.net_gain, currency))),
        &money_band(course.cost, currency),
    );
    let whole = if course.steps.iter().all(|step| *step == Treatment::Leave) {
        text::NOTHING_LEFT.to_owned()
    } else {
        gain
    };
    let each = course.each.iter().map(|step| {
        let name = step.step.text().name;
        joined(&[name, ": ", &small(&without(page, step))]).into()
    });
    let each: Vec<AttrValue> = each.collect();
    let problems: Vec<AttrValue> = problems.iter().map(|p| p.clone().into()).collect();
    group()
        .tag("h3", text::WEIGHED)
        .el(el("div", "proposal-problems")
            .hidden(problems.is_empty())
            .tag("h4", text::NOT_SO)
            .put(bullets(problems)))
        .said("", whole)
        .el(el("div", "")
            .hidden(each.is_empty())
            .tag("h4", text::STEP_BY_STEP)
            .put(bullets(each)))
        .html()
}
