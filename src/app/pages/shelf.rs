//! The shelf: start a piece, go on with one, try a worked example, open a file.

use std::rc::Rc;

use leavewell_model::Problem;
use leavewell_model::case::Form;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use crate::app::examples::EXAMPLES;
use crate::app::parts::cautions::{Cautions, named};
use crate::app::parts::choice::{Pick, choices};
use crate::app::parts::field::{TextField, Trouble};
use crate::app::platform::file;
use crate::app::state::{Entry, Wish};

/// What the shelf is given.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct ShelfProps {
    /// The pieces on this device.
    pub shelf: Rc<Vec<Entry>>,
    /// Where to ask for something.
    pub wish: Callback<Wish>,
}

/// The shelf.
#[component]
pub fn ShelfPage(props: &ShelfProps) -> Html {
    let ShelfProps { shelf, wish } = props;
    let mut steps: Vec<&str> = shelf
        .iter()
        .flat_map(|entry| entry.steps.iter().map(String::as_str))
        .collect();
    steps.sort_unstable();
    steps.dedup();
    let cautions = named(&steps);
    html! {
        <div class="screen is-shelf">
            <header class="screen-head">
                <h1 tabindex="-1">{ "Old silver plate: work on it, or leave it well alone?" }</h1>
                <p class="purpose">
                    { "Tell Leavewell what you see on a piece that looks like silver and may not be silver all \
                       through. It tells you what the piece probably is, how much silver is left, what each choice \
                       would do to it and to its value, and how sure that is." }
                </p>
            </header>
            <div class="work">
                <Start wish={wish.clone()} />
                <section aria-labelledby="yours-title">
                    <h2 id="yours-title">{ "Your pieces" }</h2>
                    <p class="hint" hidden={!shelf.is_empty()}>
                        { "None yet. What you start or open is kept here, on this device only." }
                    </p>
                    <ul class="shelf">
                        for entry in shelf.iter() {
                            <ShelfLine key={entry.id.clone()} entry={entry.clone()} wish={wish.clone()} />
                        }
                    </ul>
                </section>
                <section aria-labelledby="examples-title">
                    <h2 id="examples-title">{ "Worked examples" }</h2>
                    <p class="hint">
                        { "These pieces are invented. Opening one puts a copy on your shelf, to change as you like." }
                    </p>
                    <ul class="shelf">
                        for (at, example) in EXAMPLES.iter().enumerate() {
                            <li key={at} class="shelf-line">
                                <h3>{ example.title }</h3>
                                <p>{ example.story }</p>
                                <p class="buttons">
                                    <button
                                        type="button"
                                        aria-label={format!("Open a copy of: {}", example.title)}
                                        onclick={wish.reform(move |_: MouseEvent| Wish::Example(at))}
                                    >
                                        { "Open a copy" }
                                    </button>
                                </p>
                            </li>
                        }
                    </ul>
                </section>
                <OpenFile wish={wish.clone()} />
                <div hidden={cautions.is_empty()}><Cautions {cautions} /></div>
            </div>
        </div>
    }
}

#[derive(PartialEq, Properties)]
struct WishProps {
    wish: Callback<Wish>,
}

/// Name and form, and off one goes. Both can be left open.
#[component]
fn Start(props: &WishProps) -> Html {
    let name = use_state(String::new);
    let form = use_state(String::new);
    let onsubmit = {
        let (wish, name, form) = (props.wish.clone(), name.clone(), form.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            wish.emit(Wish::New {
                name: (*name).clone(),
                form: (*form).clone(),
            });
        })
    };
    let on_text = {
        let name = name.clone();
        Callback::from(move |typed| name.set(typed))
    };
    let on_choice = {
        let form = form.clone();
        Callback::from(move |id| form.set(id))
    };
    html! {
        <section aria-labelledby="start-title">
            <h2 id="start-title">{ "Start a piece" }</h2>
            <form class="start" {onsubmit}>
                <TextField
                    id="start-name"
                    label="What do you call it?"
                    hint="Any words you will know it by. You may leave it open."
                    value={(*name).clone()}
                    {on_text}
                />
                <Pick
                    id="start-form"
                    label="What is it?"
                    hint="The form decides which parts there are to look at."
                    choices={choices!(Form)}
                    unsaid="Not said yet"
                    value={(*form).clone()}
                    {on_choice}
                />
                <button type="submit" class="main">{ "Start this piece" }</button>
            </form>
        </section>
    }
}

#[derive(PartialEq, Properties)]
struct LineProps {
    entry: Entry,
    wish: Callback<Wish>,
}

#[component]
fn ShelfLine(props: &LineProps) -> Html {
    let LineProps { entry, wish } = props;
    let asks = |make: fn(String) -> Wish| {
        let id = entry.id.clone();
        wish.reform(move |_: MouseEvent| make(id.clone()))
    };
    let about = if entry.form.is_empty() || entry.form == entry.name {
        String::new()
    } else {
        entry.form.clone()
    };
    let said = match &entry.unreadable {
        Some(why) => format!("{why} It is kept as it is; you can save it as a file."),
        None if entry.answer.is_empty() => "No answer yet.".to_owned(),
        None => entry.answer.clone(),
    };
    html! {
        <li class="shelf-line">
            <h3>{ entry.name.clone() }</h3>
            <p class="hint" hidden={about.is_empty()}>{ about }</p>
            <p>{ said }</p>
            <div class="buttons">
                <button
                    type="button"
                    aria-label={format!("Open: {}", entry.name)}
                    onclick={asks(Wish::Open)}
                >
                    { "Open" }
                </button>
                <button
                    type="button"
                    class="quiet"
                    aria-label={format!("Save as a file: {}", entry.name)}
                    onclick={asks(Wish::SaveAsFile)}
                >
                    { "Save as a file" }
                </button>
                <details class="confirm">
                    <summary aria-label={format!("Remove: {}", entry.name)}>{ "Remove" }</summary>
                    <p>{ "It is taken off this device for good. Save it as a file first if you may want it again." }</p>
                    <button
                        type="button"
                        class="stop"
                        aria-label={format!("Remove for good: {}", entry.name)}
                        onclick={asks(Wish::Delete)}
                    >
                        { "Remove for good" }
                    </button>
                </details>
            </div>
        </li>
    }
}

#[component]
fn OpenFile(props: &WishProps) -> Html {
    // Dropping a reader stops it, so it is held until the next one.
    let reader = use_mut_ref(|| None::<file::Reading>);
    let problem = use_state(|| None::<Problem>);
    let onchange = {
        let (wish, problem) = (props.wish.clone(), problem.clone());
        Callback::from(move |event: Event| {
            let Some(input) = event.target_dyn_into::<HtmlInputElement>() else {
                return;
            };
            let Some(chosen) = input.files().and_then(|files| files.get(0)) else {
                return;
            };
            // The same file can then be chosen again.
            input.set_value("");
            let (wish, told) = (wish.clone(), problem.clone());
            let read = file::read(chosen, move |text| match text {
                Ok(text) => wish.emit(Wish::Import(text)),
                Err(fault) => told.set(Some(fault)),
            });
            match read {
                Ok(reading) => {
                    problem.set(None);
                    *reader.borrow_mut() = Some(reading);
                }
                Err(fault) => problem.set(Some(fault)),
            }
        })
    };
    html! {
        <section aria-labelledby="file-title">
            <h2 id="file-title">{ "Open a file" }</h2>
            <div class="field">
                <label for="file">{ "A piece saved by Leavewell" }</label>
                <p class="hint" id="file-hint">{ "It is read here and put on your shelf; the file stays as it is." }</p>
                <input
                    id="file"
                    type="file"
                    accept=".json,application/json"
                    aria-describedby="file-hint file-problem"
                    {onchange}
                />
                <Trouble id="file-problem" problem={(*problem).clone()} />
            </div>
        </section>
    }
}
