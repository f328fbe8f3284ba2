//! The records stored on this device. `www/kept.js` keeps them in the browser's database; the app reaches it
//! only through this module.
//!
//! Reads return at once, from that script's memory. Writes finish a moment later, and an [`Event`] reports
//! the result. Invariant: nothing here overwrites or removes a record that cannot be read.

use gloo::events::EventListener;
use js_sys::{Object, Reflect};
use leavewell_model::Draft;
use leavewell_model::learn::TurnedOn;
use serde_json::{Value, json};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CustomEvent, CustomEventInit, Storage};

use crate::app::parts::words::joined;
use crate::app::reader::Reader;
use crate::app::state::{Open, ShelfLine, Theme};
use crate::app::stock_book::Layout;
use crate::app::wording::shelf;

const THEME: &str = "leavewell.theme";
const READER: &str = "leavewell.reader";
const FIGURES: &str = "leavewell.figures";
const LAYOUT: &str = "leavewell.layout";
const SHORTCUTS: &str = "leavewell.shortcuts";
const BEGINNING: &str = "leavewell.begin.";
/// The fields that new pieces take over from the piece before.
const BEGINNINGS: [&str; 4] = [
    "piece.length_unit",
    "piece.weight_unit",
    "market.currency",
    "stock.seller",
];
const WALK: &str = "leavewell.road.";
const STARTING: &str = "leavewell.starting.";
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
    /// Several pieces were stored together, or storing them failed.
    Together {
        /// What it was for, as given to [`keep_together`].
        what: String,
        /// Why storing failed, if it did.
        failure: Option<String>,
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
            "together" => Self::Together {
                what: id,
                failure: Some(text).filter(|why| !why.is_empty()),
            },
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

/// Stores several pieces together: all of them, or none. An [`Event::Together`] with `what` reports the result.
pub fn keep_together(what: &str, pieces: &[(String, String, ShelfLine)]) {
    let list = pieces
        .iter()
        .map(|(id, text, entry)| json!({ "id": id, "text": text, "entry": entry.to_value() }));
    ask("together", what, &list.collect::<Value>().to_string(), "");
}

/// Asks the page's script to save these pieces with their photos as one file.
pub fn save_together(ids: &[String]) {
    ask("save", "", &ids.join("\n"), "");
}

/// Asks the page's script to save a sheet as a page, with the pictures that the screen shows. Returns false
/// where the script is not there.
#[must_use]
pub fn save_page(name: &str, text: &str) -> bool {
    ask("page", name, text, "").is_some()
}

/// Remembers which piece is open.
pub fn note_open(id: &str) {
    ask("opened", id, "", "");
}

/// Moves a piece to the bin.
pub fn bin_case(id: &str) {
    keep_walk(id, "");
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

/// Whether the shelf was shown as a table when it was shown last.
#[must_use]
pub fn layout() -> Layout {
    match kept(LAYOUT).as_deref() {
        Some("table") => Layout::Table,
        _ => Layout::Cards,
    }
}

/// Stores how the shelf is laid out.
pub fn keep_layout(layout: Layout) {
    keep(LAYOUT, layout.id());
}

/// Whether single keys are shortcuts; they are unless the person turned them off.
#[must_use]
pub fn has_shortcuts() -> bool {
    kept(SHORTCUTS).as_deref() != Some("off")
}

/// Stores whether single keys are shortcuts.
pub fn keep_shortcuts(on: bool) {
    keep(SHORTCUTS, if on { "on" } else { "off" });
}

/// What new pieces begin with on this device, such as the unit of lengths: pairs of a path and a text.
#[must_use]
pub fn beginnings() -> Vec<(&'static str, String)> {
    let one = |path: &'static str| Some((path, kept(&joined(&[BEGINNING, path]))?));
    BEGINNINGS.into_iter().filter_map(one).collect()
}

/// Whether the person measures lengths in inches.
#[must_use]
pub fn has_inches() -> bool {
    kept(&joined(&[BEGINNING, BEGINNINGS[0]])).as_deref() == Some("in")
}

/// Stores what new pieces begin with, if this field is one of those.
pub fn keep_beginning(path: &str, text: &str) {
    if BEGINNINGS.contains(&path) {
        keep(&joined(&[BEGINNING, path]), text);
    }
}

fn kept(key: &str) -> Option<String> {
    storage()?.get_item(key).ok().flatten()
}

fn keep(key: &str, text: &str) {
    if let Some(storage) = storage() {
        // A browser that keeps nothing asks again next time.
        let _ = storage.set_item(key, text);
    }
}

/// The questions of the owner's road put so far about a piece, as text.
#[must_use]
pub fn walk(id: &str) -> String {
    kept(&joined(&[WALK, id])).unwrap_or_default()
}

/// Stores the questions put about a piece. An empty text removes them.
pub fn keep_walk(id: &str, text: &str) {
    keep_or_drop(&joined(&[WALK, id]), text);
}

/// What was typed or chosen to start a piece before it was started.
#[must_use]
pub fn starting(field: &str) -> String {
    kept(&joined(&[STARTING, field])).unwrap_or_default()
}

/// Stores what is typed or chosen to start a piece; an empty text removes it.
pub fn keep_starting(field: &str, text: &str) {
    keep_or_drop(&joined(&[STARTING, field]), text);
}

fn keep_or_drop(key: &str, text: &str) {
    if let Some(storage) = storage() {
        // A browser that keeps nothing asks again next time.
        let _ = if text.is_empty() {
            storage.remove_item(key)
        } else {
            storage.set_item(key, text)
        };
    }
}

/// Asks the page's script to say what an undo or a redo changed: the word for it, and the record before and now.
pub fn say_undone(word: &str, before: &str, now: &str) {
    ask("undone", word, before, now);
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
    let words = [(on.prices, PRICES), (on.works, WORKS)];
    let words: Vec<&str> = words
        .iter()
        .filter(|(on, _)| *on)
        .map(|(_, word)| *word)
        .collect();
    keep_or_drop(TEACHING, &words.join(" "));
    keep_or_drop(TAUGHT, taught);
}

/// A line of the shelf, as stored or else built from the record.
fn entry_of(line: &Value) -> Option<ShelfLine> {
    let id = line["id"].as_str()?;
    let known = ShelfLine::from_value(&line["entry"]);
    if let Some(mut entry) = known.clone().filter(|_| line["entry"]["stock"].is_object()) {
        id.clone_into(&mut entry.id);
        return Some(entry);
    }
    let text = case_text(id).unwrap_or_default();
    Some(match Draft::parse(&text) {
        // A line of an older build knows the answer and nothing of the stock.
        Ok(draft) => {
            let mut line = ShelfLine::of_draft(id, &draft);
            if let Some(known) = known.filter(|known| !known.answer.is_empty()) {
                line.answer = known.answer;
                line.steps = known.steps;
            }
            line
        }
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
