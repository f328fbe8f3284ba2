//! What is kept on this device. `www/kept.js` keeps every record in the browser's database; the app reaches it
//! only through this module.
//!
//! Questions are answered at once, from what that script holds in memory. Writing happens a moment later, and
//! an [`Event`] says what came of it. Invariant: nothing here overwrites or removes
//! a record that cannot be read.

use gloo::events::EventListener;
use js_sys::{Object, Reflect};
use leavewell_model::Draft;
use serde_json::Value;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CustomEvent, CustomEventInit, Storage};

use crate::app::reader::Reader;
use crate::app::state::{Entry, Open, Theme};
use crate::app::wording::shelf;

const THEME: &str = "leavewell.theme";
const READER: &str = "leavewell.reader";
const FIGURES: &str = "leavewell.figures";

/// Something that happened to what is kept, or that a script of the page asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Event {
    /// A record was written, or could not be.
    Kept {
        /// The key of the piece.
        id: String,
        /// Why not, when it could not be.
        failure: Option<String>,
    },
    /// The lines of the shelf changed.
    ShelfChanged,
    /// The record of a piece was changed elsewhere: this is it now.
    Replaced {
        /// The key of the piece.
        id: String,
        /// The record.
        text: String,
    },
    /// A piece is to be opened: its key.
    Open(String),
    /// The shelf is to be planned: the question of the plan.
    PlanAsked(String),
    /// The last change is to be taken back.
    Undo,
    /// What was taken back is to be done again.
    Redo,
}

impl Event {
    fn parse(what: &str, id: String, text: String) -> Option<Self> {
        Some(match what {
            "kept" => Self::Kept {
                id,
                failure: Some(text).filter(|why| !why.is_empty()),
            },
            "shelf" => Self::ShelfChanged,
            "take" => Self::Replaced { id, text },
            "open" => Self::Open(id),
            "plan" => Self::PlanAsked(text),
            "undo" => Self::Undo,
            "redo" => Self::Redo,
            _ => return None,
        })
    }
}

/// Calls back with every event, until the returned listener is dropped.
#[must_use]
pub fn on_event(happened: impl Fn(Event) + 'static) -> Option<EventListener> {
    let window = web_sys::window()?;
    Some(EventListener::new(
        &window,
        "leavewell-told",
        move |event| {
            let detail = event.dyn_ref::<CustomEvent>().map(CustomEvent::detail);
            let text = |field: &str| {
                let detail = detail.as_ref()?;
                Reflect::get(detail, &field.into()).ok()?.as_string()
            };
            let of = |field| text(field).unwrap_or_default();
            if let Some(event) = Event::parse(&of("what"), of("id"), of("text")) {
                happened(event);
            }
        },
    ))
}

/// Every piece on the shelf.
#[must_use]
pub fn shelf() -> Vec<Entry> {
    let list = ask("list", "", "", "").unwrap_or_default();
    let Ok(Value::Array(lines)) = serde_json::from_str(&list) else {
        return Vec::new();
    };
    lines.iter().filter_map(entry_of).collect()
}

/// The record of a piece, as text.
#[must_use]
pub fn case_text(id: &str) -> Option<String> {
    ask("text", id, "", "")
}

/// Keeps a piece.
pub fn keep_case(id: &str, text: &str, entry: &Entry) {
    ask("keep", id, text, &entry.to_value().to_string());
}

/// Keeps the shelf line of a piece. It can be made again from the record.
pub fn keep_entry(entry: &Entry) {
    ask("entry", &entry.id, "", &entry.to_value().to_string());
}

/// Notes that a piece is the open one.
pub fn note_open(id: &str) {
    ask("opened", id, "", "");
}

/// Puts a piece into the bin.
pub fn bin_case(id: &str) {
    ask("bin", id, "", "");
}

/// The piece that was open last, if it can still be read.
#[must_use]
pub fn last_open() -> Option<Open> {
    let id = ask("last", "", "", "")?;
    let draft = Draft::parse(&case_text(&id)?).ok()?;
    Some(Open::new(id, draft))
}

/// The appearance chosen last.
#[must_use]
pub fn theme() -> Theme {
    storage()
        .and_then(|s| s.get_item(THEME).ok().flatten())
        .and_then(|id| Theme::parse(&id))
        .unwrap_or_default()
}

/// Keeps the appearance chosen.
pub fn keep_theme(theme: Theme) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(THEME, theme.id());
    }
}

/// Who was reading last.
#[must_use]
pub fn reader() -> Reader {
    storage()
        .and_then(|s| s.get_item(READER).ok().flatten())
        .and_then(|id| Reader::parse(&id))
        .unwrap_or_default()
}

/// Keeps who is reading.
pub fn keep_reader(reader: Reader) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(READER, reader.id());
    }
}

/// The figures that new pieces on this device begin with, as the text of a file of figures.
#[must_use]
pub fn figures() -> Option<String> {
    storage()?.get_item(FIGURES).ok().flatten()
}

/// Keeps the figures that new pieces begin with, or forgets them; false when that is not possible.
#[must_use]
pub fn keep_figures(text: Option<&str>) -> bool {
    let Some(storage) = storage() else {
        return false;
    };
    match text {
        Some(text) => storage.set_item(FIGURES, text).is_ok(),
        None => storage.remove_item(FIGURES).is_ok(),
    }
}

/// A line of the list: as it was kept, or else made from the record.
fn entry_of(line: &Value) -> Option<Entry> {
    let id = line["id"].as_str()?;
    if let Some(mut entry) = Entry::from_value(&line["entry"]) {
        id.clone_into(&mut entry.id);
        return Some(entry);
    }
    let text = case_text(id).unwrap_or_default();
    Some(match Draft::parse(&text) {
        Ok(draft) => Entry::of_draft(id, &draft),
        Err(fault) => Entry {
            id: id.to_owned(),
            name: shelf::UNREADABLE.to_owned(),
            unreadable: Some(fault.problem().message),
            ..Entry::default()
        },
    })
}

/// Asks `www/kept.js`, which answers before this returns.
fn ask(what: &str, id: &str, text: &str, entry: &str) -> Option<String> {
    let window = web_sys::window()?;
    let detail = Object::new();
    for (key, value) in [("do", what), ("id", id), ("text", text), ("entry", entry)] {
        // A plain object takes any field.
        let _ = Reflect::set(&detail, &key.into(), &JsValue::from(value));
    }
    let init = CustomEventInit::new();
    init.set_detail(&detail);
    let event = CustomEvent::new_with_event_init_dict("leavewell-store", &init).ok()?;
    window.dispatch_event(&event).ok()?;
    Reflect::get(&detail, &"answer".into()).ok()?.as_string()
}

/// Private windows and strict settings may have none.
fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}
