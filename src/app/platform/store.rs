//! What is kept on this device: every piece under its own key, and an index of them.
//!
//! Invariant: a record that cannot be read is never overwritten or removed by itself. The index can
//! always be made again from the records.

use gloo::events::EventListener;
use js_sys::Reflect;
use leavewell_model::Draft;
use serde_json::Value;
use web_sys::Storage;

use crate::app::state::{Entry, Open, Theme};

const CASE: &str = "leavewell.case.";
const INDEX: &str = "leavewell.index";
const INDEX_UNREAD: &str = "leavewell.index.unread";
const LAST_OPEN: &str = "leavewell.open";
const THEME: &str = "leavewell.theme";

/// Calls back when another tab has changed a piece, for as long as what is returned is held.
#[must_use]
pub fn on_changed_elsewhere(id: String, changed: impl Fn() + 'static) -> Option<EventListener> {
    let window = web_sys::window()?;
    Some(EventListener::new(&window, "storage", move |event| {
        let key = Reflect::get(event, &"key".into())
            .ok()
            .and_then(|key| key.as_string());
        if key == Some(case_key(&id)) {
            changed();
        }
    }))
}

/// Every piece on this device: those of the index that are still there, then those it has missed.
#[must_use]
pub fn shelf() -> Vec<Entry> {
    let Some(storage) = storage() else {
        return Vec::new();
    };
    let ids = stored_ids(&storage);
    let mut shelf: Vec<Entry> = match get(&storage, INDEX) {
        None => Vec::new(),
        Some(text) => {
            if let Ok(Value::Array(lines)) = serde_json::from_str(&text) {
                lines.iter().filter_map(Entry::from_value).collect()
            } else {
                // Kept for whoever wants to look into it; the records speak for themselves.
                let _ = storage.set_item(INDEX_UNREAD, &text);
                Vec::new()
            }
        }
    };
    shelf.retain(|entry| ids.contains(&entry.id));
    for id in ids {
        if !shelf.iter().any(|entry| entry.id == id) {
            shelf.push(entry_of(&storage, id));
        }
    }
    shelf
}

/// The record of a piece, as text.
#[must_use]
pub fn case_text(id: &str) -> Option<String> {
    get(&storage()?, &case_key(id))
}

/// Keeps a piece and notes that it is the open one.
///
/// # Errors
/// In words, when this device does not take it.
pub fn keep_case(id: &str, text: &str) -> Result<(), String> {
    put(&case_key(id), text)?;
    put(LAST_OPEN, id)
}

/// Takes a piece off this device.
pub fn remove_case(id: &str) {
    if let Some(storage) = storage() {
        let _ = storage.remove_item(&case_key(id));
    }
}

/// Keeps the index. It can be made again, so a failure needs no words.
pub fn keep_index(shelf: &[Entry]) {
    let lines: Vec<Value> = shelf.iter().map(Entry::to_value).collect();
    let _ = put(INDEX, &Value::Array(lines).to_string());
}

/// The piece that was open last, if it can still be read.
#[must_use]
pub fn last_open() -> Option<Open> {
    let id = get(&storage()?, LAST_OPEN)?;
    let draft = Draft::parse(&case_text(&id)?).ok()?;
    Some(Open::new(id, draft))
}

/// The appearance chosen last.
#[must_use]
pub fn theme() -> Theme {
    storage()
        .and_then(|s| get(&s, THEME))
        .and_then(|id| Theme::parse(&id))
        .unwrap_or_default()
}

/// Keeps the appearance chosen.
pub fn keep_theme(theme: Theme) {
    let _ = put(THEME, theme.id());
}

fn case_key(id: &str) -> String {
    format!("{CASE}{id}")
}

fn entry_of(storage: &Storage, id: String) -> Entry {
    let text = get(storage, &case_key(&id)).unwrap_or_default();
    match Draft::parse(&text) {
        Ok(draft) => Open::new(id, draft).entry(None),
        Err(fault) => Entry {
            id,
            name: "A record that cannot be read".to_owned(),
            form: String::new(),
            answer: String::new(),
            steps: Vec::new(),
            unreadable: Some(fault.problem().message),
        },
    }
}

fn stored_ids(storage: &Storage) -> Vec<String> {
    let n = storage.length().unwrap_or(0);
    (0..n)
        .filter_map(|i| storage.key(i).ok().flatten())
        .filter_map(|key| key.strip_prefix(CASE).map(str::to_owned))
        .collect()
}

fn put(key: &str, text: &str) -> Result<(), String> {
    let storage = storage().ok_or("This browser keeps nothing for this page.")?;
    storage
        .set_item(key, text)
        .map_err(|_| "This device has no room left for it.".to_owned())
}

fn get(storage: &Storage, key: &str) -> Option<String> {
    storage.get_item(key).ok().flatten()
}

/// Private windows and strict settings may have none.
fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}
