//! The shelf: start a piece, go on with one, try a worked example, open a file.

use leavewell_model::record::Form;
use yew::prelude::*;

use crate::app::examples::EXAMPLES;
use crate::app::parts::cautions::{cautions, named};
use crate::app::parts::choice::{choices, list};
use crate::app::parts::element::{self, El, el, group};
use crate::app::parts::field::hint;
use crate::app::parts::marks::{press, section};
use crate::app::platform::page::typed_in;
use crate::app::route::Route;
use crate::app::state::{Effect, Entry};
use crate::app::wording::{plan, shelf as say};

/// Fields of the form that starts a piece.
const NAME: &str = "start-name";
const FORM: &str = "start-form";

/// The shelf, and where to ask for something.
pub fn shelf_page(shelf: &[Entry], effect: &Callback<Effect>) -> Html {
    let mut steps: Vec<&str> = shelf
        .iter()
        .flat_map(|entry| entry.steps.iter().map(String::as_str))
        .collect();
    steps.sort();
    steps.dedup();
    let named = named(&steps);
    let title = el("h1", "").attr("tabindex", "-1").text(say::TITLE);
    let head = el("header", "screen-head")
        .el(title)
        .p("purpose", say::PURPOSE);
    let cautions = el("div", "").hidden(named.is_empty()).put(cautions(&named));
    let work = el("div", "work")
        .put(section("", "start-title", say::START, start(effect)))
        .put(section("", "yours-title", say::YOURS, yours(shelf, effect)))
        .put(section(
            "",
            "examples-title",
            say::EXAMPLES,
            examples(effect),
        ))
        .put(section(
            "",
            "file-title",
            say::KEEPING,
            el("shelf-keeping", "").html(),
        ))
        .el(cautions);
    el("div", "screen is-shelf").el(head).el(work).html()
}

/// Name and form, and off one goes. Both can be left open. Nothing else hangs on them, so they are
/// read when the piece is started.
fn start(effect: &Callback<Effect>) -> Html {
    let onsubmit = effect.reform(|event: SubmitEvent| {
        event.prevent_default();
        Effect::New {
            name: typed_in(NAME),
            form: typed_in(FORM),
        }
    });
    let control = el("input", "")
        .attr("id", NAME)
        .attr("type", "text")
        .attr("autocomplete", "off")
        .attr("aria-describedby", "start-name-hint");
    let name = el("div", "field")
        .el(el("label", "").attr("for", NAME).text(say::NAME))
        .put(hint(NAME, say::NAME_HINT))
        .el(el("div", "field-line").el(control));
    let form = list(
        FORM,
        say::FORM.into(),
        say::FORM_CHOICE,
        "",
        choices!(Form),
        Callback::noop(),
        el("span", "").hidden(true).html(),
    );
    let start = el("button", "main")
        .attr("type", "submit")
        .text(say::START_NOW);
    el("form", "start")
        .sent(onsubmit)
        .el(name)
        .put(form)
        .el(start)
        .html()
}

fn yours(shelf: &[Entry], effect: &Callback<Effect>) -> Html {
    let link = el("a", "")
        .attr("href", Route::Plan.href())
        .text(plan::LINK);
    group()
        .el(el("p", "hint")
            .hidden(!shelf.is_empty())
            .text(say::NONE_YET))
        .el(el("div", "")
            .hidden(shelf.is_empty())
            .el(el("p", "").el(link))
            .p("hint", plan::LINK_HINT))
        .el(el("ul", "shelf").each(shelf, |entry| line(entry, effect)))
        .html()
}

fn examples(effect: &Callback<Effect>) -> Html {
    group()
        .p("hint", say::EXAMPLES_HINT)
        .el(
            el("ul", "shelf").each(EXAMPLES.iter().enumerate(), |(at, example)| {
                let words = (say::OPEN_COPY, say::open_copy_of(example.title));
                let copy = button("", words, effect, Effect::Example(at));
                el("li", "shelf-line")
                    .key(example.title)
                    .tag("h3", example.title)
                    .p("", example.story)
                    .el(el("p", "buttons").el(copy))
            }),
        )
        .html()
}

fn line(entry: &Entry, effect: &Callback<Effect>) -> El {
    let name = &entry.name;
    let about = if entry.form == *name { "" } else { &entry.form };
    let said = match &entry.unreadable {
        Some(why) => say::kept_as_it_is(why),
        None if entry.answer.is_empty() => say::NO_ANSWER.to_owned(),
        None => entry.answer.clone(),
    };
    let button = |class, words, make: fn(String) -> Effect| {
        let words = (words, say::button_for(words, name));
        button(class, words, effect, make(entry.id.clone()))
    };
    let remove = el("summary", "")
        .set("aria-label", say::button_for(say::REMOVE, name))
        .text(say::REMOVE);
    let confirm = el("details", "confirm")
        .el(remove)
        .p("", say::REMOVE_MEANS)
        .el(button("stop", say::REMOVE_NOW, Effect::Delete));
    let buttons = el("div", "buttons")
        .el(button("", say::OPEN, Effect::Open))
        .el(button("quiet", say::SAVE, Effect::SaveAsFile))
        .el(confirm);
    el("li", "shelf-line")
        .key(&entry.id)
        .el(el("h3", "").words(name.clone()))
        .el(el("p", "hint")
            .hidden(about.is_empty())
            .words(about.to_owned()))
        .said("", said)
        .el(buttons)
}

/// A button on a line: its words stand alone for the eye, and with the name for the ear.
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
