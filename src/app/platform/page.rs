//! The page: its title, focus, appearance and address.

use gloo::events::{EventListener, EventListenerOptions};
use js_sys::{Object, Reflect};
use wasm_bindgen::JsCast;
use web_sys::{
    CustomEvent, CustomEventInit, Event, HtmlElement, HtmlInputElement, HtmlSelectElement,
    KeyboardEvent,
};

use crate::app::route::Route;
use crate::app::state::Theme;
use crate::app::wording::keeping;

/// The keys that are shortcuts.
const SHORTCUTS: [&str; 10] = ["?", "/", "n", "t", "s", "1", "2", "3", "4", "5"];

/// Sets the title of the page.
pub fn set_title(title: &str) {
    if let Some(document) = document() {
        document.set_title(title);
    }
}

/// Opens the browser's print dialogue.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // A browser that cannot print does nothing.
        let _ = window.print();
    }
}

/// Says to the page's scripts that a screen stands, so that a step back finds its place again.
pub fn shown() {
    send("leavewell-shown");
}

/// Has the questions about the chosen part brought into view, unless they are.
pub fn part_chosen() {
    send("leavewell-part");
}

/// Sends a plain event to the page's scripts.
fn send(name: &str) {
    if let (Some(window), Ok(event)) = (web_sys::window(), Event::new(name)) {
        let _ = window.dispatch_event(&event);
    }
}

/// Focuses the screen's first heading and scrolls to the top.
pub fn focus_heading() {
    if let Some(window) = web_sys::window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
    let heading = document().and_then(|d| d.query_selector("main h1").ok().flatten());
    if let Some(heading) = heading.and_then(|h| h.dyn_into::<HtmlElement>().ok()) {
        // Failing to focus a heading is harmless.
        let _ = heading.focus();
    }
}

/// Jumps to a heading on the screen: focuses it, opens the fold it heads, and scrolls to it. The browser's Back button
/// returns from there.
pub fn focus_on(id: &str) {
    send("leavewell-jump");
    let heading = document().and_then(|d| d.get_element_by_id(id));
    let fold = heading
        .as_ref()
        .and_then(|h| h.closest("details").ok().flatten());
    if let Some(fold) = fold {
        // A fold that does not open still shows its heading.
        let _ = fold.set_attribute("open", "");
    }
    if let Some(heading) = heading.and_then(|h| h.dyn_into::<HtmlElement>().ok()) {
        // A heading accepts the focus only with a `tabindex`.
        let _ = heading.set_attribute("tabindex", "-1");
        let _ = heading.focus();
        heading.scroll_into_view();
    }
}

/// The current value of a field or a drop-down list.
#[must_use]
pub fn typed_in(id: &str) -> String {
    let Some(place) = document().and_then(|d| d.get_element_by_id(id)) else {
        return String::new();
    };
    match place.dyn_into::<HtmlInputElement>() {
        Ok(input) => input.value(),
        Err(other) => other
            .dyn_into::<HtmlSelectElement>()
            .map(|list| list.value())
            .unwrap_or_default(),
    }
}

/// Puts a text into a field.
pub fn put_in(id: &str, text: &str) {
    let Some(place) = document().and_then(|d| d.get_element_by_id(id)) else {
        return;
    };
    match place.dyn_into::<HtmlInputElement>() {
        Ok(input) => input.set_value(text),
        Err(other) => {
            if let Ok(list) = other.dyn_into::<HtmlSelectElement>() {
                list.set_value(text);
            }
        }
    }
}

/// Focuses a field and selects what is in it, and opens the fold around it.
pub fn focus_field(id: &str) {
    let Some(place) = document().and_then(|d| d.get_element_by_id(id)) else {
        return;
    };
    if let Ok(Some(fold)) = place.closest("details") {
        // A fold that does not open keeps its field out of reach, and says so by itself.
        let _ = fold.set_attribute("open", "");
    }
    if let Some(input) = place.dyn_ref::<HtmlInputElement>() {
        input.select();
    }
    if let Some(place) = place.dyn_ref::<HtmlElement>() {
        let _ = place.focus();
    }
}

/// Calls back with a key that is pressed while no field has the focus, until the returned listener is dropped.
/// Keys held with Ctrl, Alt or the like are left to the browser.
#[must_use]
pub fn on_key(pressed: impl Fn(String) + 'static) -> Option<EventListener> {
    let window = web_sys::window()?;
    let options = EventListenerOptions::enable_prevent_default();
    let heard = move |event: &web_sys::Event| {
        let Some(key) = event.dyn_ref::<KeyboardEvent>() else {
            return;
        };
        let is_typing = event
            .target()
            .and_then(|place| place.dyn_into::<HtmlElement>().ok())
            .is_some_and(|place| {
                place
                    .closest("input, select, textarea, [contenteditable]")
                    .is_ok_and(|field| field.is_some())
            });
        let is_held = key.ctrl_key() || key.alt_key() || key.meta_key() || key.is_composing();
        if is_typing || is_held || !SHORTCUTS.contains(&key.key().as_str()) {
            return;
        }
        event.prevent_default();
        pressed(key.key());
    };
    Some(EventListener::new_with_options(
        &window, "keydown", options, heard,
    ))
}

/// The prefix of the ids of the Look screen's drawings. They are in a separate file or, in the single-file
/// edition, in the page.
#[must_use]
pub fn looks() -> &'static str {
    let inside = document().and_then(|d| d.get_element_by_id("looks"));
    if inside.is_some() {
        "#look-"
    } else {
        "looks.svg#"
    }
}

/// Applies the chosen appearance.
pub fn set_theme(theme: Theme) {
    let Some(root) = document().and_then(|d| d.document_element()) else {
        return;
    };
    let _ = match theme {
        Theme::System => root.remove_attribute("data-theme"),
        Theme::Light | Theme::Dark => root.set_attribute("data-theme", theme.id()),
    };
}

/// The screen that the address names.
#[must_use]
pub fn route() -> Route {
    Route::parse(&location().and_then(|l| l.hash().ok()).unwrap_or_default())
}

/// Goes to a screen, as a link would.
pub fn go(route: Route) {
    if let Some(location) = location() {
        let _ = location.set_hash(route.href());
    }
}

/// Calls back when the address names another screen, until the returned listener is dropped.
#[must_use]
pub fn on_route(changed: impl Fn(Route) + 'static) -> Option<EventListener> {
    let window = web_sys::window()?;
    Some(EventListener::new(&window, "hashchange", move |_| {
        changed(route());
    }))
}

/// Calls back with a path and a text when a script of the page writes to the record, as photos and point
/// counts do.
#[must_use]
pub fn on_put(put: impl Fn(String, String) + 'static) -> Option<EventListener> {
    let window = web_sys::window()?;
    Some(EventListener::new(&window, "leavewell-put", move |event| {
        let detail = event.dyn_ref::<CustomEvent>().map(CustomEvent::detail);
        let text = |field: &str| {
            Reflect::get(detail.as_ref()?, &field.into())
                .ok()?
                .as_string()
        };
        if let (Some(path), Some(text)) = (text("path"), text("text")) {
            put(path, text);
        }
    }))
}

/// Panics on a "leavewell-panic" event, for the crash tests. It listens only on a page that a test marked
/// before the app started; no served page is marked.
///
/// # Panics
/// On that event.
#[must_use]
pub fn stops_when_tested() -> Option<EventListener> {
    let root = document()?.document_element()?;
    root.get_attribute("data-test")?;
    let window = web_sys::window()?;
    Some(EventListener::once(&window, "leavewell-panic", |_| {
        panic!("stopped by a test")
    }))
}

/// Shows that the app has stopped, without using the app. The page's scripts show it with the next steps. If
/// they do not respond, this adds a plain notice.
pub fn show_stopped(reason: &str) {
    let detail = Object::new();
    let _ = Reflect::set(&detail, &"reason".into(), &reason.into());
    let init = CustomEventInit::new();
    init.set_detail(&detail);
    if let (Some(window), Ok(event)) = (
        web_sys::window(),
        CustomEvent::new_with_event_init_dict("leavewell-crash", &init),
    ) {
        let _ = window.dispatch_event(&event);
        if Reflect::get(&detail, &"seen".into()).is_ok_and(|seen| seen.is_truthy()) {
            return;
        }
    }
    let Some(document) = document() else { return };
    let (Ok(note), Some(body)) = (document.create_element("p"), document.body()) else {
        return;
    };
    let _ = note.set_attribute("role", "alert");
    let _ = note.set_attribute("class", "stopped");
    note.set_text_content(Some(&keeping::stopped(reason)));
    let _ = body.insert_before(&note, body.first_child().as_ref());
}

fn document() -> Option<web_sys::Document> {
    web_sys::window()?.document()
}

fn location() -> Option<web_sys::Location> {
    Some(web_sys::window()?.location())
}
