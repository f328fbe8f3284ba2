//! What stands round every screen, and the only place where wishes meet the outside.

use std::rc::Rc;

use leavewell_model::facts::{LEDGER_VERSION, caution};
use leavewell_model::{Draft, Problem};
use web_sys::HtmlSelectElement;
use yew::prelude::*;

use super::examples::EXAMPLES;
use super::pages::condition::ConditionPage;
use super::pages::counsel::CounselPage;
use super::pages::look::LookPage;
use super::pages::money::MoneyPage;
use super::pages::piece::PiecePage;
use super::pages::shelf::ShelfPage;
use super::parts::places::Places;
use super::platform::{clock, file, page, store};
use super::route::Route;
use super::state::{Action, Entry, Notice, Open, SaveState, State, Theme, Wish};

/// The whole app.
#[component]
pub fn App() -> Html {
    let state = use_reducer(stored_state);
    let route = use_route();
    let act = use_callback((), {
        let dispatcher = state.dispatcher();
        move |action: Action, ()| dispatcher.dispatch(action)
    });
    let wish = use_callback(state.shelf.clone(), {
        let act = act.clone();
        move |wish: Wish, shelf: &Rc<Vec<Entry>>| carry_out(wish, shelf, &act)
    });
    use_keeping(&state, &act);
    use_appearance(state.theme);
    use_heading(route);
    use_title(&title(route, state.open.as_deref()));
    use_other_tabs(&state, &act);

    let place = match (route, &state.open) {
        (Route::Shelf, _) => {
            html! { <ShelfPage shelf={state.shelf.clone()} wish={wish.clone()} /> }
        }
        (_, None) => nothing_open(),
        (Route::Piece, Some(open)) => html! { <PiecePage open={open.clone()} act={act.clone()} /> },
        (Route::Look, Some(open)) => html! { <LookPage open={open.clone()} act={act.clone()} /> },
        (Route::Condition, Some(open)) => {
            html! { <ConditionPage open={open.clone()} act={act.clone()} /> }
        }
        (Route::Money, Some(open)) => html! { <MoneyPage open={open.clone()} act={act.clone()} /> },
        (Route::Counsel, Some(open)) => {
            html! { <CounselPage open={open.clone()} act={act.clone()} /> }
        }
    };
    let places = match (route, &state.open) {
        (Route::Shelf, _) | (_, None) => html! { <div hidden=true /> },
        (_, Some(open)) => html! { <Places open={open.clone()} here={route} /> },
    };
    // Another piece is another screen: keyed, so that nothing typed for one is taken for the other.
    let key = format!(
        "{route:?}-{}",
        state.open.as_ref().map_or("", |open| open.id.as_str())
    );
    let skip = Callback::from(|event: MouseEvent| {
        event.prevent_default();
        page::focus_heading();
    });
    html! {
        <>
            <a class="skip" href={route.href()} onclick={skip}>{ "Skip to the content" }</a>
            <header class="top">
                <a class="brand" href={Route::Shelf.href()}>{ "Leavewell" }</a>
                <ThemeSwitch theme={state.theme} act={act.clone()} />
            </header>
            <Notices open={state.open.clone()} notice={state.notice.clone()} act={act.clone()} wish={wish} />
            <div class="places-holder">{ places }</div>
            <main id="main"><div class="place" key={key}>{ place }</div></main>
            { foot() }
        </>
    }
}

/// What was kept on this device.
fn stored_state() -> State {
    State {
        shelf: Rc::new(store::shelf()),
        open: store::last_open().map(Rc::new),
        theme: store::theme(),
        notice: None,
    }
}

/// Does what only the outside can do, and says what came of it.
fn carry_out(wish: Wish, shelf: &[Entry], act: &Callback<Action>) {
    match wish {
        Wish::New { name, form } => {
            let mut draft = Draft::default();
            draft.set("piece.name", &name);
            draft.set("piece.form", &form);
            open_new(draft, Route::Piece, act);
        }
        Wish::Open(id) => open_stored(id, act),
        Wish::Example(at) => {
            if let Some(Ok(draft)) = EXAMPLES.get(at).map(|example| Draft::parse(example.text)) {
                open_new(draft, Route::Counsel, act);
            }
        }
        Wish::Import(text) => match Draft::parse(&text) {
            Ok(draft) => open_new(draft, Route::Counsel, act),
            Err(fault) => tell(fault.problem(), None, act),
        },
        Wish::SaveAsFile(id) => {
            let name = shelf
                .iter()
                .find(|entry| entry.id == id)
                .map_or("", |entry| entry.name.as_str());
            match store::case_text(&id) {
                Some(text) => save(name, text, act),
                None => tell(gone(), None, act),
            }
        }
        Wish::Rescue(text) => save("piece", text, act),
        Wish::Delete(id) => {
            store::remove_case(&id);
            act.emit(Action::Removed(id));
            page::focus_heading();
        }
    }
}

fn open_new(mut draft: Draft, route: Route, act: &Callback<Action>) {
    // The model has no clock; prices and law are as of the day the question is asked.
    if draft.text("asked_on").is_empty() {
        draft.set("asked_on", &clock::today());
    }
    act.emit(Action::Opened {
        id: clock::new_id(),
        draft: Box::new(draft),
    });
    page::go(route);
}

fn open_stored(id: String, act: &Callback<Action>) {
    let Some(text) = store::case_text(&id) else {
        act.emit(Action::Unreadable {
            id,
            problem: gone(),
            text: None,
        });
        return;
    };
    match Draft::parse(&text) {
        Ok(draft) => {
            let looked = !draft.read().0.findings.is_empty();
            act.emit(Action::Opened {
                id,
                draft: Box::new(draft),
            });
            page::go(if looked { Route::Counsel } else { Route::Piece });
        }
        Err(fault) => act.emit(Action::Unreadable {
            id,
            problem: fault.problem(),
            text: Some(text),
        }),
    }
}

fn save(name: &str, text: String, act: &Callback<Action>) {
    if !file::save(&file::file_name(name), &text) {
        let problem = Problem {
            field: "file".to_owned(),
            message: "The browser did not let the file be saved.".to_owned(),
            remedy: "Allow downloads for this page, then try again.".to_owned(),
        };
        tell(problem, Some(text), act);
    }
}

fn tell(problem: Problem, rescue: Option<String>, act: &Callback<Action>) {
    act.emit(Action::Tell(Notice {
        what: problem.message,
        remedy: problem.remedy,
        rescue,
    }));
}

fn gone() -> Problem {
    Problem {
        field: "file".to_owned(),
        message: "This piece is no longer on this device.".to_owned(),
        remedy: "It may have been removed in another tab. If you saved it as a file, open that."
            .to_owned(),
    }
}

fn title(route: Route, open: Option<&Open>) -> String {
    match (route, open) {
        (Route::Shelf, _) => "Leavewell".to_owned(),
        (_, None) => format!("{} · Leavewell", route.name()),
        (_, Some(open)) => format!("{} · {} · Leavewell", route.name(), open.name()),
    }
}

#[hook]
fn use_route() -> Route {
    let route = use_state_eq(page::route);
    use_effect_with((), {
        let route = route.clone();
        move |()| {
            let listener = page::on_route(move |now| route.set(now));
            move || drop(listener)
        }
    });
    *route
}

/// Two handles are the same when they hold the same value in memory; looking inside would mean
/// comparing whole reports.
#[derive(Clone)]
struct Held(Option<Rc<Open>>);

impl PartialEq for Held {
    fn eq(&self, other: &Self) -> bool {
        self.0.as_ref().map(Rc::as_ptr) == other.0.as_ref().map(Rc::as_ptr)
    }
}

/// Keeps the open piece and the index on this device after every change.
#[hook]
fn use_keeping(state: &State, act: &Callback<Action>) {
    let tell = act.clone();
    use_effect_with(Held(state.open.clone()), move |held| {
        if let Held(Some(open)) = held {
            let failure = store::keep_case(&open.id, &open.draft.to_json()).err();
            tell.emit(Action::Saved {
                id: open.id.clone(),
                failure,
            });
        }
    });
    use_effect_with(state.shelf.clone(), |shelf| store::keep_index(shelf));
}

#[hook]
fn use_appearance(theme: Theme) {
    use_effect_with(theme, |theme| {
        page::set_theme(*theme);
        store::keep_theme(*theme);
    });
}

/// On a change of screen the focus goes to its heading; not at the start, where the page begins.
#[hook]
fn use_heading(route: Route) {
    let started = use_mut_ref(|| false);
    use_effect_with(route, move |_| {
        if started.replace(true) {
            page::focus_heading();
        }
    });
}

#[hook]
fn use_title(title: &str) {
    use_effect_with(title.to_owned(), |title| page::set_title(title));
}

/// Warns when the open piece is changed in another tab: the last change would win in silence.
#[hook]
fn use_other_tabs(state: &State, act: &Callback<Action>) {
    let act = act.clone();
    use_effect_with(Held(state.open.clone()), move |held| {
        let listener = held.0.clone().and_then(|open| {
            store::on_changed_elsewhere(open.id.clone(), move || {
                act.emit(Action::Tell(Notice {
                    what: "This piece has just been changed in another tab.".to_owned(),
                    remedy: "Go on in one tab only: the last change made in either is the one that is kept. You can \
                             save what this tab holds as a file."
                        .to_owned(),
                    rescue: Some(open.draft.to_json()),
                }));
            })
        });
        move || drop(listener)
    });
}

#[derive(PartialEq, Properties)]
struct ThemeSwitchProps {
    theme: Theme,
    act: Callback<Action>,
}

#[component]
fn ThemeSwitch(props: &ThemeSwitchProps) -> Html {
    let onchange = {
        let act = props.act.clone();
        Callback::from(move |event: Event| {
            let chosen = event
                .target_dyn_into::<HtmlSelectElement>()
                .and_then(|select| Theme::parse(&select.value()));
            if let Some(theme) = chosen {
                act.emit(Action::SetTheme(theme));
            }
        })
    };
    html! {
        <div class="theme">
            <label for="theme">{ "Appearance" }</label>
            <select id="theme" {onchange}>
                for theme in Theme::ALL {
                    <option key={theme.id()} value={theme.id()} selected={theme == props.theme}>
                        { theme.label() }
                    </option>
                }
            </select>
        </div>
    }
}

#[derive(PartialEq, Properties)]
struct NoticesProps {
    open: Option<Rc<Open>>,
    notice: Option<Rc<Notice>>,
    act: Callback<Action>,
    wish: Callback<Wish>,
}

/// What has to be told. The element is always there, so that a message in it is read out.
#[component]
fn Notices(props: &NoticesProps) -> Html {
    let unsaved = props.open.as_ref().and_then(|open| match &open.saved {
        SaveState::Kept => None,
        SaveState::Failed(why) => Some(Notice {
            what: format!("The last change to \"{}\" is not kept. {why}", open.name()),
            remedy: "Save it as a file now, so that nothing is lost.".to_owned(),
            rescue: Some(open.draft.to_json()),
        }),
    });
    let dismiss = {
        let act = props.act.clone();
        Callback::from(move |_: MouseEvent| act.emit(Action::DismissNotice))
    };
    html! {
        <div class="notices" role="alert">
            if let Some(notice) = unsaved {
                <div class="notice">
                    <p><strong>{ notice.what.clone() }</strong>{ " " }{ notice.remedy.clone() }</p>
                    { rescue_button(notice.rescue.clone(), &props.wish) }
                </div>
            }
            if let Some(notice) = props.notice.clone() {
                <div class="notice">
                    <p><strong>{ notice.what.clone() }</strong>{ " " }{ notice.remedy.clone() }</p>
                    { rescue_button(notice.rescue.clone(), &props.wish) }
                    <button type="button" class="quiet" onclick={dismiss}>{ "I have read this" }</button>
                </div>
            }
        </div>
    }
}

fn rescue_button(text: Option<String>, wish: &Callback<Wish>) -> Html {
    let hidden = text.is_none();
    let onclick = wish.reform(move |_: MouseEvent| Wish::Rescue(text.clone().unwrap_or_default()));
    html! { <button type="button" {hidden} {onclick}>{ "Save the record as a file" }</button> }
}

fn nothing_open() -> Html {
    html! {
        <div class="screen">
            <header class="screen-head">
                <h1 tabindex="-1">{ "No piece is open" }</h1>
                <p class="purpose">{ "Choose a piece from the shelf, start one, or open a worked example." }</p>
                <p class="next-step"><a class="button" href={Route::Shelf.href()}>{ "Go to the shelf" }</a></p>
            </header>
        </div>
    }
}

/// The deferral line stands on every screen, whatever it shows.
fn foot() -> Html {
    html! {
        <footer class="foot">
            <p class="deferral">{ caution("caution.deferral").map(|c| c.text).unwrap_or_default() }</p>
            <p>
                { "What you enter stays on this device: nothing is sent anywhere. Save a piece as a file to keep it \
                   safe or to hand it on. Figures of " }{ LEDGER_VERSION }{ "." }
            </p>
        </footer>
    }
}
