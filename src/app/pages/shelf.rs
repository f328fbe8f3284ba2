//! The shelf: start a piece, continue one, try a worked example or open a file.

use leavewell_model::terms::Form;
use leavewell_model::terms::ShortSort;
use yew::prelude::*;

use super::road::begin;
use super::stock;
use super::stock::quick::quick_row;
use crate::app::drawings::small_piece;
use crate::app::examples::EXAMPLES;
use crate::app::parts::cautions::{cautions, named};
use crate::app::parts::choice::{choices, list};
use crate::app::parts::element::{self, El, el, group};
use crate::app::parts::field::{hint, typed};
use crate::app::parts::marks::{press, section};
use crate::app::platform::page::typed_in;
use crate::app::platform::store;
use crate::app::route::Route;
use crate::app::state::{Action, Effect, ShelfLine, State};
use crate::app::stock_book::BookColumn;
use crate::app::wording::{guide, learning, plan, road, shelf as text, stock as stock_text};

/// The id of the field for the name of a new piece.
pub const START_NAME: &str = "start-name";
/// The id of the list of forms of a new piece.
pub const START_FORM: &str = "start-form";

/// The shelf. Requests go to `effect`.
pub fn shelf_page(state: &State, act: &Callback<Action>, effect: &Callback<Effect>) -> Html {
    let shelf = &**state.shelf;
    let mut steps: Vec<&str> = shelf
        .iter()
        .flat_map(|entry| entry.steps.iter().map(String::as_str))
        .collect();
    steps.order_by(Ord::cmp);
    steps.dedup();
    let named = named(&steps);
    let title = el("h1", "").attr("tabindex", "-1").text(text::TITLE);
    let head = el("header", "screen-head")
        .el(title)
        .p("purpose", text::PURPOSE);
    let cautions = el("div", "").hidden(named.is_empty()).put(cautions(&named));
    let begin = begin(
        |form| press(effect, Effect::Ask(form)),
        [(road::RESTORE, Effect::Restore), (road::DEAL, Effect::Deal)]
            .map(|(words, way)| (words, press(effect, way))),
    );
    let guide_link = el("a", "link-alone")
        .attr("href", Route::Guide.href())
        .text(guide::LINK);
    let work = el("div", "work")
        .put(section("", "have-title", road::HAVE, begin))
        .el(el("p", "").el(guide_link))
        .put(section("", "start-title", text::START, start(effect)))
        .put(section(
            "",
            "yours-title",
            text::YOURS,
            yours(state, act, effect),
        ))
        .put(section(
            "",
            "examples-title",
            text::EXAMPLES,
            examples(effect),
        ))
        .put(section(
            "",
            "file-title",
            text::KEEPING,
            el("shelf-keeping", "").html(),
        ))
        .el(cautions);
    el("div", "screen is-shelf").el(head).el(work).html()
}

/// The name and form of a new piece; both are optional. Nothing else depends on them, so they are read when
/// the piece is started.
fn start(effect: &Callback<Effect>) -> Html {
    let onsubmit = effect.reform(|event: SubmitEvent| {
        event.prevent_default();
        Effect::New
    });
    let control = el("input", "")
        .attr("id", START_NAME)
        .attr("type", "text")
        .value(store::starting(START_NAME))
        .typed(Callback::from(|_| {
            store::keep_starting(START_NAME, &typed_in(START_NAME));
        }))
        .attr("autocomplete", "off")
        .attr("aria-describedby", "start-name-hint");
    let name = el("div", "field")
        .el(el("label", "").attr("for", START_NAME).text(text::NAME))
        .put(hint(START_NAME, text::NAME_HINT))
        .el(el("div", "field-line").el(control));
    let form = list(
        START_FORM,
        text::FORM.into(),
        text::FORM_CHOICE,
        &store::starting(START_FORM),
        choices!(Form),
        Callback::from(|event: Event| store::keep_starting(START_FORM, &typed(&event))),
        el("span", "").hidden(true).html(),
    );
    let start = el("button", "main")
        .attr("type", "submit")
        .text(text::START_NOW);
    el("form", "start")
        .sent(onsubmit)
        .el(name)
        .put(form)
        .el(start)
        .html()
}

fn yours(state: &State, act: &Callback<Action>, effect: &Callback<Effect>) -> Html {
    let shelf = &state.shelf;
    let pieces = stock::book(state, act, effect, |entry| line(entry, effect));
    let link = el("a", "link-alone")
        .attr("href", Route::Plan.href())
        .text(plan::LINK);
    let teach = el("a", "link-alone")
        .attr("href", Route::Learning.href())
        .text(learning::LINK);
    group()
        .el(el("p", "hint")
            .hidden(!shelf.is_empty())
            .text(text::NONE_YET))
        .el(el("div", "")
            .hidden(shelf.is_empty())
            .el(el("p", "").el(link))
            .p("hint", plan::LINK_HINT))
        .put(stock::links(state, effect))
        .el(el("p", "").el(teach))
        .p("hint", learning::LINK_HINT)
        .put(quick_row(effect))
        .el(el("div", "").hidden(shelf.is_empty()).put(pieces))
        .html()
}

fn examples(effect: &Callback<Effect>) -> Html {
    group()
        .p("hint", text::EXAMPLES_HINT)
        .el(
            el("ul", "shelf").each(EXAMPLES.iter().enumerate(), |(at, example)| {
                let words = (text::OPEN_COPY, text::open_copy_of(example.title));
                let copy = button("", words, effect, Effect::Example(at));
                el("li", "shelf-line")
                    .key(example.title)
                    .el(small_piece(example.form()))
                    .tag("h3", example.title)
                    .p("", example.story)
                    .el(el("p", "buttons").el(copy))
            }),
        )
        .html()
}

fn line(entry: &ShelfLine, effect: &Callback<Effect>) -> El {
    let name = &entry.name;
    let about = if entry.form == *name { "" } else { &entry.form };
    let said = match &entry.unreadable {
        Some(why) => text::kept_as_it_is(why),
        None if entry.answer.is_empty() => text::NO_ANSWER.to_owned(),
        None => entry.answer.clone(),
    };
    let button = |class, words, make: fn(String) -> Effect| {
        let words = (words, text::button_for(words, name));
        button(class, words, effect, make(entry.id.clone()))
    };
    let remove = el("summary", "")
        .set("aria-label", text::button_for(text::REMOVE, name))
        .text(text::REMOVE);
    let confirm = el("details", "confirm")
        .el(remove)
        .p("", text::REMOVE_MEANS)
        .el(button("stop", text::REMOVE_NOW, Effect::Delete));
    let buttons = el("div", "buttons")
        .el(button("", text::OPEN, Effect::Open))
        .el(button("quiet", text::SAVE, Effect::SaveAsFile))
        .el(confirm);
    let is_of = |form: &&Form| entry.form.starts_with(form.label());
    let form = Form::ALL.iter().find(is_of).copied();
    el("li", "shelf-line")
        .key(&entry.id)
        .el(small_piece(form.unwrap_or(Form::Other)))
        .el(el("h3", "").words(name.clone()))
        .el(el("p", "hint")
            .hidden(about.is_empty())
            .words(about.to_owned()))
        .said("", said)
        .el(el("p", "hint")
            .hidden(entry.stock.most_while_looking().is_none())
            .words(stock_text::most_to_pay(&stock::cell(
                entry,
                BookColumn::Most,
            ))))
        .el(buttons)
}

/// A button on a line of the shelf. Its accessible name adds the name of the piece.
fn button(
    class: &'static str,
    (seen, heard): (&'static str, String),
    effect: &Callback<Effect>,
    what: Effect,
) -> El {
    element::button(class)
        .set("aria-label", heard)
        .pressed(press(effect, what))
        .text(seen)
}
