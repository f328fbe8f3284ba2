//! The shelf: start a piece, go on with one, try a worked example, open a file.

use leavewell_model::case::Form;
use leavewell_model::small::sort_short;
use yew::prelude::*;

use crate::app::examples::EXAMPLES;
use crate::app::parts::cautions::{cautions, named};
use crate::app::parts::choice::{choices, list};
use crate::app::parts::element::{self, El, el, group};
use crate::app::parts::field::hint;
use crate::app::parts::marks::{press, section};
use crate::app::parts::words::joined;
use crate::app::platform::page::typed_in;
use crate::app::state::{Entry, Wish};

/// Fields of the form that starts a piece.
const NAME: &str = "start-name";
const FORM: &str = "start-form";

/// The shelf, and where to ask for something.
pub fn shelf_page(shelf: &[Entry], wish: &Callback<Wish>) -> Html {
    let mut steps: Vec<&str> = shelf
        .iter()
        .flat_map(|entry| entry.steps.iter().map(String::as_str))
        .collect();
    sort_short(&mut steps, Ord::cmp);
    steps.dedup();
    let named = named(&steps);
    let title = el("h1", "")
        .attr("tabindex", "-1")
        .text("Old silver plate: work on it, or leave it well alone?");
    let head = el("header", "screen-head").el(title).p(
        "purpose",
        "Tell Leavewell what you see on a piece that looks like silver and may not be silver all \
         through. It tells you what the piece probably is, how much silver is left, what each choice \
         would do to it and to its value, and how sure that is.",
    );
    let cautions = el("div", "").hidden(named.is_empty()).put(cautions(&named));
    let work = el("div", "work")
        .put(section("", "start-title", "Start a piece", start(wish)))
        .put(section(
            "",
            "yours-title",
            "Your pieces",
            yours(shelf, wish),
        ))
        .put(section(
            "",
            "examples-title",
            "Worked examples",
            examples(wish),
        ))
        .put(section(
            "",
            "file-title",
            "Files and safe keeping",
            el("shelf-keeping", "").html(),
        ))
        .el(cautions);
    el("div", "screen is-shelf").el(head).el(work).html()
}

/// Name and form, and off one goes. Both can be left open. Nothing else hangs on them, so they are
/// read when the piece is started.
fn start(wish: &Callback<Wish>) -> Html {
    let onsubmit = wish.reform(|event: SubmitEvent| {
        event.prevent_default();
        Wish::New {
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
        .el(el("label", "")
            .attr("for", NAME)
            .text("What do you call it?"))
        .put(hint(
            NAME,
            "Any words you will know it by. You may leave it open.",
        ))
        .el(el("div", "field-line").el(control));
    let form = list(
        FORM,
        "What is it?".into(),
        [
            "The form decides which parts there are to look at.",
            "Not said yet",
        ],
        "",
        choices!(Form),
        Callback::noop(),
        el("span", "").hidden(true).html(),
    );
    let start = el("button", "main")
        .attr("type", "submit")
        .text("Start this piece");
    el("form", "start")
        .sent(onsubmit)
        .el(name)
        .put(form)
        .el(start)
        .html()
}

fn yours(shelf: &[Entry], wish: &Callback<Wish>) -> Html {
    group()
        .el(el("p", "hint")
            .hidden(!shelf.is_empty())
            .text("None yet. What you start or open is kept here, on this device only."))
        .el(el("ul", "shelf").each(shelf, |entry| line(entry, wish)))
        .html()
}

fn examples(wish: &Callback<Wish>) -> Html {
    group().p("hint", "These pieces are invented. Opening one puts a copy on your shelf, to change as you like.").el(el("ul", "shelf")
            .each(EXAMPLES.iter().enumerate(), |(at, example)| {
                let words = ["Open a copy", " of: "];
                let copy = button("", words, example.title, wish, Wish::Example(at));
                el("li", "shelf-line")
                    .key(example.title)
                    .tag("h3", example.title)
                    .p("", example.story)
                    .el(el("p", "buttons").el(copy))
            })).html()
}

fn line(entry: &Entry, wish: &Callback<Wish>) -> El {
    let name = &entry.name;
    let about = if entry.form == *name { "" } else { &entry.form };
    let said = match &entry.unreadable {
        Some(why) => why.clone() + " It is kept as it is; you can save it as a file.",
        None if entry.answer.is_empty() => "No answer yet.".to_owned(),
        None => entry.answer.clone(),
    };
    let button = |class, words, make: fn(String) -> Wish| {
        button(class, [words, ": "], name, wish, make(entry.id.clone()))
    };
    let remove = el("summary", "")
        .set("aria-label", joined(&["Remove: ", name]))
        .text("Remove");
    let confirm = el("details", "confirm")
        .el(remove)
        .p(
            "",
            "It goes into the bin at the foot of this page, and stays there for 30 days.",
        )
        .el(button("stop", "Put into the bin", Wish::Delete));
    let buttons = el("div", "buttons")
        .el(button("", "Open", Wish::Open))
        .el(button("quiet", "Save as a file", Wish::SaveAsFile))
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
    [words, joint]: [&'static str; 2],
    name: &str,
    wish: &Callback<Wish>,
    what: Wish,
) -> El {
    element::button(class)
        .set("aria-label", joined(&[words, joint, name]))
        .pressed(press(wish, what))
        .text(words)
}
