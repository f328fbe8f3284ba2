//! The owner's road: one question a screen, answered with one press.

use leavewell_model::ledger::FindingId;
use leavewell_model::record::is_enough_to_advise;
use leavewell_model::road::{
    self, FIRST_ANSWER_AFTER, NONE, OFFERS, RoadQuestion, UNSURE, answer_in, left,
};
use leavewell_model::terms::{Currency, Form, PartName, Treatment};
use yew::prelude::*;

use super::{Page, line};
use crate::app::drawings::{bare_patch, piece_to_tap, small_piece};
use crate::app::parts::cautions::folded_cautions;
use crate::app::parts::choice::{choices, pick};
use crate::app::parts::element::{El, button, el, group};
use crate::app::parts::field::number_field;
use crate::app::parts::marks::{fold, press};
use crate::app::parts::words::joined;
use crate::app::platform::page::looks;
use crate::app::route::Route;
use crate::app::state::{Action, Target, first_sentence};
use crate::app::wording::road as text;

/// The forms drawn at once; the rest are behind a fold.
const COMMON: [Form; 11] = [
    Form::Teapot,
    Form::CoffeePot,
    Form::Sauceboat,
    Form::Tray,
    Form::Basket,
    Form::Candlestick,
    Form::Tureen,
    Form::Tankard,
    Form::Cruet,
    Form::Cutlery,
    Form::Other,
];

/// A question of the road.
pub fn road_page(page: Page, question: RoadQuestion) -> Html {
    let [title, how, why] = text::question(question);
    let reason = el("p", "hint why")
        .el(el("strong", "").text(text::WHY))
        .text(" ")
        .text(why);
    el("div", "screen road")
        .el(progress(page))
        .el(el("h1", "ask").attr("tabindex", "-1").text(title))
        .p("how", how)
        .el(the_piece(page, question))
        .el(answers(page, question))
        .el(reason)
        .el(so_far(page))
        .el(safety(page, question))
        .html()
}

/// The piece that is asked about, where the answers have no drawings of their own.
fn the_piece(page: Page, question: RoadQuestion) -> El {
    let in_words = matches!(
        question,
        RoadQuestion::Trouble
            | RoadQuestion::More
            | RoadQuestion::Use
            | RoadQuestion::Offer
            | RoadQuestion::Sum
    );
    let form = page.open.case.piece.form.unwrap_or(Form::Other);
    el("div", "road-piece")
        .hidden(!in_words)
        .el(small_piece(form))
}

/// A tally stroke for each question put, a dot for each to come, and the same in words.
fn progress(page: Page) -> El {
    let walk = &page.state.walk;
    let (put, to_go) = (walk.len(), left(walk, &page.open.case));
    let until = FIRST_ANSWER_AFTER.saturating_sub(put);
    let strokes = el("span", "tally")
        .attr("aria-hidden", "true")
        .each(0..put, |_| el("i", "stroke"))
        .each(0..to_go, |_| el("i", "dot"));
    el("div", "road-progress")
        .el(strokes)
        .said("hint", text::progress(put, to_go, until))
}

fn answers(page: Page, question: RoadQuestion) -> El {
    let form = page.open.case.piece.form;
    let ids = question.answers(form);
    match question {
        RoadQuestion::Form => forms(page),
        RoadQuestion::BareWhere | RoadQuestion::TroubleWhere(_) => {
            let parts: Vec<PartName> = ids.iter().filter_map(|id| PartName::parse(id)).collect();
            let taken = |part: PartName| press(page.act, Action::Answered(question, part.id()));
            el("div", "")
                .el(piece_to_tap(form, &parts, taken))
                .el(buttons(page, question, &ids))
        }
        RoadQuestion::Sum => el("div", "")
            .el(el("div", "side-by-side")
                .put(number_field(page, sum_of(page), [text::PRICE, "", ""]))
                .put(pick(
                    page,
                    Target::Field("market.currency"),
                    [text::CURRENCY, "", text::NO_CURRENCY],
                    choices!(Currency),
                )))
            .el(buttons(page, question, &ids)),
        _ => buttons(page, question, &ids),
    }
}

/// The price of the work asked about.
fn sum_of(page: Page) -> Target {
    let asked = answer_in(RoadQuestion::Offer, &page.state.walk, &page.open.case);
    let offers = OFFERS.into_iter().map(Treatment::id);
    let asked = offers.into_iter().find(|id| Some(*id) == asked);
    Target::Quote(asked.unwrap_or_else(|| OFFERS[0].id()), "likely")
}

fn buttons(page: Page, question: RoadQuestion, ids: &[&'static str]) -> El {
    let given = answer_in(question, &page.state.walk, &page.open.case);
    el("div", "replies").each(ids, |id| {
        let id: &'static str = id;
        let drawn = drawing(question, id);
        let plain = drawn.is_none();
        let class = if plain { "reply is-word" } else { "reply" };
        answer(page, question, id, class, given == Some(id))
            .el(drawn.unwrap_or_else(|| el("span", "").hidden(true)))
            .el(el("span", "reply-word").text(text::answer(question, id)))
    })
}

/// The button of an answer. It is pressed when that is the answer now.
fn answer(
    page: Page,
    question: RoadQuestion,
    id: &'static str,
    class: &'static str,
    given: bool,
) -> El {
    button(class)
        .key(id)
        .attr("aria-pressed", if given { "true" } else { "false" })
        .pressed(press(page.act, Action::Answered(question, id)))
}

/// The drawing of an answer, if it has one: of a finding, the half that shows it or the half that does not.
fn drawing(question: RoadQuestion, id: &'static str) -> Option<El> {
    let is_drawn = !text::is_plain(id);
    match question {
        RoadQuestion::Letters | RoadQuestion::Metal if is_drawn => {
            FindingId::parse(id).map(|finding| look(finding, "seen"))
        }
        RoadQuestion::Metal if id == NONE => Some(look(FindingId::S03, "absent")),
        RoadQuestion::Magnet if is_drawn => Some(look(FindingId::P01, id)),
        RoadQuestion::Look(look_id) if is_drawn => Some(look(look_id, id)),
        RoadQuestion::BareAmount => match id {
            "slight" => Some(bare_patch("patch-slight", ("6", "4"))),
            "some" => Some(bare_patch("patch-some", ("14", "9"))),
            "much" => Some(bare_patch("patch-much", ("30", "16"))),
            "most" => Some(bare_patch("patch-most", ("46", "26"))),
            _ => None,
        },
        _ => None,
    }
}

/// One half of the drawing of a finding.
pub fn look(finding: FindingId, answer: &str) -> El {
    let half = if answer == "seen" { "0" } else { "-120" };
    let drawn = el("use", "")
        .set("href", joined(&[looks(), finding.text()]))
        .attr("x", half)
        .attr("width", "240")
        .attr("height", "90");
    el("svg", "look-drawing reply-drawing")
        .attr("viewBox", "1 0 118 90")
        .attr("aria-hidden", "true")
        .el(drawn)
}

fn forms(page: Page) -> El {
    let question = RoadQuestion::Form;
    let given = answer_in(question, &page.state.walk, &page.open.case);
    let one = |form: Form| {
        let id = form.id();
        piece_button(
            form,
            answer(page, question, id, "piece-button", given == Some(id)),
        )
    };
    let others = Form::ALL.iter().filter(|form| !COMMON.contains(form));
    let more = el("div", "bench").each(others, |form| one(*form));
    let not_sure = answer(page, question, UNSURE, "reply is-word", false).text(text::NOT_SURE);
    el("div", "")
        .el(el("div", "bench").each(COMMON, one))
        .put(fold("", text::MORE_FORMS, more.html()))
        .el(el("div", "replies").el(not_sure))
}

/// A button with a small drawing of a piece that stands on a line, and its name.
pub fn piece_button(form: Form, button: El) -> El {
    button
        .el(el("span", "stand").el(small_piece(form)))
        .el(el("span", "piece-name").text(form.label()))
}

/// The answer so far, once there is one. The frame of the screens announces it when it changes.
fn so_far(page: Page) -> El {
    let open = page.open;
    let stands = page.state.walk.len() >= FIRST_ANSWER_AFTER
        || road::next(&page.state.walk, &open.case).is_none();
    let advice = match open.report() {
        Some(report) if is_enough_to_advise(&open.case) => first_sentence(&report.counsel.sentence),
        _ => text::TOO_LITTLE.to_owned(),
    };
    let link = el("a", "").attr("href", Route::Counsel.href());
    let shown = el("div", "")
        .hidden(!stands)
        .el(el("p", "")
            .el(el("strong", "").text(text::SO_FAR))
            .text(": ")
            .words(line(Route::Look, open))
            .text(" ")
            .words(advice))
        .el(el("p", "").el(link.text(text::WHOLE_ANSWER)));
    el("aside", "so-far")
        .attr("aria-label", text::SO_FAR)
        .el(shown)
}

/// The cautions for the work that a question names, and for what is advised so far.
fn safety(page: Page, question: RoadQuestion) -> El {
    let mut ids: Vec<&str> = Vec::new();
    if question == RoadQuestion::Offer {
        ids.extend(OFFERS.into_iter().map(Treatment::id));
    }
    let advised = page.open.report().map_or(&[][..], |r| &r.counsel.steps);
    if page.state.walk.len() >= FIRST_ANSWER_AFTER {
        ids.extend(advised.iter().map(|step| step.id()));
    }
    folded_cautions(ids)
}

/// The forms that the first screen offers to tap.
pub const TO_TAP: [Form; 6] = [
    Form::Teapot,
    Form::CoffeePot,
    Form::Basket,
    Form::Candlestick,
    Form::Tray,
    Form::Tureen,
];

/// The three ways in, on the first screen: that of an owner with a piece, and below it the restorer's and the dealer's.
pub fn begin(
    pressed: impl Fn(Option<Form>) -> Callback<MouseEvent>,
    others: [(&'static str, Callback<MouseEvent>); 2],
) -> Html {
    let pieces = el("div", "bench").each(TO_TAP, |form| {
        piece_button(
            form,
            button("piece-button")
                .key(form.id())
                .pressed(pressed(Some(form))),
        )
    });
    group()
        .el(pieces)
        .el(el("p", "start-road").el(button("main").pressed(pressed(None)).text(text::START)))
        .el(el("p", "other-roads").each(others, |(words, way)| {
            button("quiet").key(words).pressed(way).text(words)
        }))
        .html()
}
