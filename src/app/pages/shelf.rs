//! The shelf: start a piece, go on with one, try a worked example, open a file.

use leavewell_model::case::Form;
use leavewell_model::small::sort_short;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use crate::app::examples::EXAMPLES;
use crate::app::parts::cautions::{cautions, named};
use crate::app::parts::choice::{choices, list};
use crate::app::parts::field::hint;
use crate::app::parts::marks::{all, div, p, press, section};
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
    div(
        "screen is-shelf",
        vec![
            html! { <header class="screen-head">
                <h1 tabindex="-1">{ "Old silver plate: work on it, or leave it well alone?" }</h1>
                { p(
                    "purpose",
                    "Tell Leavewell what you see on a piece that looks like silver and may not be silver all \
                     through. It tells you what the piece probably is, how much silver is left, what each choice \
                     would do to it and to its value, and how sure that is.",
                ) }
            </header> },
            div(
                "work",
                vec![
                    section("", "start-title", "Start a piece", start(wish)),
                    section("", "yours-title", "Your pieces", yours(shelf, wish)),
                    section("", "examples-title", "Worked examples", examples(wish)),
                    section("", "file-title", "Open a file", open_file(wish)),
                    html! { <div hidden={named.is_empty()}>{ cautions(&named) }</div> },
                ],
            ),
        ],
    )
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
    html! {
        <form class="start" {onsubmit}>
            <div class="field">
                <label for={NAME}>{ "What do you call it?" }</label>
                { hint(NAME, "Any words you will know it by. You may leave it open.") }
                <div class="field-line">
                    <input id={NAME} type="text" autocomplete="off" aria-describedby="start-name-hint" />
                </div>
            </div>
            { list(
                FORM,
                "What is it?".into(),
                ["The form decides which parts there are to look at.", "Not said yet"],
                "",
                choices!(Form),
                Callback::noop(),
                html! { <span hidden=true /> },
            ) }
            <button type="submit" class="main">{ "Start this piece" }</button>
        </form>
    }
}

fn yours(shelf: &[Entry], wish: &Callback<Wish>) -> Html {
    all(vec![
        html! { <p class="hint" hidden={!shelf.is_empty()}>
            { "None yet. What you start or open is kept here, on this device only." }
        </p> },
        html! { <ul class="shelf">
            for entry in shelf {
                { line(entry, wish) }
            }
        </ul> },
    ])
}

fn examples(wish: &Callback<Wish>) -> Html {
    all(vec![
        p(
            "hint",
            "These pieces are invented. Opening one puts a copy on your shelf, to change as you like.",
        ),
        html! { <ul class="shelf">
            for (at, example) in EXAMPLES.iter().enumerate() {
                <li key={at} class="shelf-line">
                    <h3>{ example.title }</h3>
                    { p("", example.story) }
                    <p class="buttons">
                        { button("", ["Open a copy", " of: "], example.title, wish, Wish::Example(at)) }
                    </p>
                </li>
            }
        </ul> },
    ])
}

fn line(entry: &Entry, wish: &Callback<Wish>) -> Html {
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
    html! {
        <li class="shelf-line" key={entry.id.clone()}>
            <h3>{ name.clone() }</h3>
            <p class="hint" hidden={about.is_empty()}>{ about.to_owned() }</p>
            { p("", said) }
            <div class="buttons">
                { button("", "Open", Wish::Open) }
                { button("quiet", "Save as a file", Wish::SaveAsFile) }
                <details class="confirm">
                    <summary aria-label={joined(&["Remove: ", name])}>{ "Remove" }</summary>
                    { p(
                        "",
                        "It is taken off this device for good. Save it as a file first if you may want it again.",
                    ) }
                    { button("stop", "Remove for good", Wish::Delete) }
                </details>
            </div>
        </li>
    }
}

/// A button on a line: its words stand alone for the eye, and with the name for the ear.
fn button(
    class: &'static str,
    [words, joint]: [&'static str; 2],
    name: &str,
    wish: &Callback<Wish>,
    what: Wish,
) -> Html {
    html! {
        <button
            type="button"
            class={(!class.is_empty()).then_some(class)}
            aria-label={joined(&[words, joint, name])}
            onclick={press(wish, what)}
        >
            { words }
        </button>
    }
}

fn open_file(wish: &Callback<Wish>) -> Html {
    let wish = wish.clone();
    let onchange = Callback::from(move |event: Event| {
        let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
            return;
        };
        if let Some(chosen) = input.files().and_then(|files| files.get(0)) {
            // The same file can then be chosen again.
            input.set_value("");
            wish.emit(Wish::Read(chosen));
        }
    });
    div(
        "field",
        vec![
            html! { <label for="file">{ "A piece saved by Leavewell" }</label> },
            hint(
                "file",
                "It is read here and put on your shelf; the file stays as it is.",
            ),
            html! { <input
                id="file"
                type="file"
                accept=".json,application/json"
                aria-describedby="file-hint"
                {onchange}
            /> },
        ],
    )
}
