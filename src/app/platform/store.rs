//! The records stored on this device. `www/kept.js` keeps them in the browser's database; the app reaches it
//! only through this module.
//!
//! Reads return at once, from that script's memory. Writes finish a moment later, and an [`Event`] reports
//! the result. Invariant: nothing here overwrites or removes a record that cannot be read.

use gloo::events::EventListener;
use js_sys::{Object, Reflect};
use leavewell_model::Draft;
use leavewell_model::learn::TurnedOn;
use serde_json::Value;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CustomEvent, CustomEventInit, Storage};

use crate::app::reader::Reader;
use crate::app::state::{Open, ShelfLine, Theme};
use crate::app::wording::shelf;

const THEME: &str = "leavewell.theme";
const READER: &str = "leavewell.reader";
const FIGURES: &str = "leavewell.figures";
const TEACHING: &str = "leavewell.teaching";
const TAUGHT: &str = "leavewell.taught";

/// A change to the stored records, or a request from a script of the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Event {
    /// A record was written, or writing failed.
    Kept {
        /// The key of the piece.
        id: String,
        /// Why writing failed, if it did.
        failure: Option<String>,
    },
    /// The lines of the shelf changed.
    ShelfChanged,
    /// The record of a piece was changed elsewhere.
    Replaced {
        /// The key of the piece.
        id: String,
        /// The record now.
        text: String,
    },
    /// A request to open the piece with this key.
    Open(String),
    /// A request to plan the shelf, with the plan's question.
    PlanAsked(String),
    /// A request to undo the last change.
    Undo,
    /// A request to redo the change undone last.
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
pub fn shelf() -> Vec<ShelfLine> {
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

/// Stores a piece.
pub fn keep_case(id: &str, text: &str, entry: &ShelfLine) {
    ask("keep", id, text, &entry.to_value().to_string());
}

/// Stores the shelf line of a piece. It can be rebuilt from the record.
pub fn keep_entry(entry: &ShelfLine) {
    ask("entry", &entry.id, "", &entry.to_value().to_string());
}

/// Remembers which piece is open.
pub fn note_open(id: &str) {
    ask("opened", id, "", "");
}

/// Moves a piece to the bin.
pub fn bin_case(id: &str) {
    ask("bin", id, "", "");
}

/// The piece that was open last, if it is still readable.
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

/// Stores the chosen appearance.
pub fn keep_theme(theme: Theme) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(THEME, theme.id());
    }
}

/// The reader chosen last.
#[must_use]
pub fn reader() -> Reader {
    storage()
        .and_then(|s| s.get_item(READER).ok().flatten())
        .and_then(|id| Reader::parse(&id))
        .unwrap_or_default()
}

/// Stores the chosen reader.
pub fn keep_reader(reader: Reader) {
    if let Some(storage) = storage() {
        let _ = storage.set_item(READER, reader.id());
    }
}

/// The figures that new pieces on this device start with, as the text of a file of figures.
#[must_use]
pub fn figures() -> Option<String> {
    storage()?.get_item(FIGURES).ok().flatten()
}

/// Stores the figures that new pieces start with, or removes them. Returns false if that fails.
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

/// What learning is turned on for, and the taught figures that hold, as text.
#[must_use]
pub fn teaching() -> (TurnedOn, String) {
    let text = |key| storage().and_then(|s| s.get_item(key).ok().flatten());
    let on = text(TEACHING).unwrap_or_default();
    let on = TurnedOn {
        prices: on.contains(PRICES),
        works: on.contains(WORKS),
    };
    (on, text(TAUGHT).unwrap_or_default())
}

/// Words of the setting.
const PRICES: &str = "prices";
const WORKS: &str = "works";

/// Stores what learning is turned on for, and the taught figures. Both are settings of this browser; no
/// record holds them.
pub fn keep_teaching(on: TurnedOn, taught: &str) {
    let Some(storage) = storage() else { return };
    let words = [(on.prices, PRICES), (on.works, WORKS)];
    let words: Vec<&str> = words
        .iter()
        .filter(|(on, _)| *on)
        .map(|(_, word)| *word)
        .collect();
    for (key, text) in [(TEACHING, words.join(" ").as_str()), (TAUGHT, taught)] {
        let _ = if text.is_empty() {
            storage.remove_item(key)
        } else {
            storage.set_item(key, text)
        };
    }
}

/// A line of the shelf, as stored or else built from the record.
fn entry_of(line: &Value) -> Option<ShelfLine> {
    let id = line["id"].as_str()?;
    if let Some(mut entry) = ShelfLine::from_value(&line["entry"]) {
        id.clone_into(&mut entry.id);
        return Some(entry);
    }
    let text = case_text(id).unwrap_or_default();
    Some(match Draft::parse(&text) {
        Ok(draft) => ShelfLine::of_draft(id, &draft),
        Err(fault) => ShelfLine {
            id: id.to_owned(),
            name: shelf::UNREADABLE.to_owned(),
            unreadable: Some(fault.problem().message),
            ..ShelfLine::default()
        },
    })
}

/// Calls `www/kept.js`, which answers synchronously.
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

/// The browser's local storage. Private windows and strict settings may have none.
fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}
