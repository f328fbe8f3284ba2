//! The programs beside this one, which weigh and work out pages on request. `www/boot.js` runs them
//! in workers; question and answer are events of the window.

use gloo::events::EventListener;
use js_sys::{Object, Reflect, Uint8Array};
use leavewell_pages::program_of;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CustomEvent, CustomEventInit};

/// An answer, or why there is none.
#[derive(Clone, Debug)]
pub struct Answer {
    /// What was asked for.
    pub name: String,
    /// The state of the record it was asked for.
    pub turn: u32,
    /// What it says, in bytes, or what went wrong.
    pub said: Result<Vec<u8>, String>,
}

/// Asks for a page, or the report, of a record in a given state.
pub fn ask(name: &str, turn: u32, case: &str) {
    let Some(window) = web_sys::window() else {
        return;
    };
    let detail = Object::new();
    for (key, value) in [
        ("program", JsValue::from(program_of(name))),
        ("name", JsValue::from(name)),
        ("turn", JsValue::from(turn)),
        ("text", JsValue::from(case)),
    ] {
        // A plain object takes any field.
        let _ = Reflect::set(&detail, &key.into(), &value);
    }
    let init = CustomEventInit::new();
    init.set_detail(&detail);
    if let Ok(event) = CustomEvent::new_with_event_init_dict("leavewell-ask", &init) {
        let _ = window.dispatch_event(&event);
    }
}

/// Calls back with every answer, for as long as what is returned is held.
#[must_use]
pub fn on_answer(told: impl Fn(Answer) + 'static) -> Option<EventListener> {
    let window = web_sys::window()?;
    Some(EventListener::new(
        &window,
        "leavewell-answer",
        move |event| {
            let Some(event) = event.dyn_ref::<CustomEvent>() else {
                return;
            };
            let detail = event.detail();
            let field = |name: &str| Reflect::get(&detail, &name.into()).ok();
            let text = |name: &str| field(name).and_then(|value| value.as_string());
            // Turns are counted by us and fit.
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            let turn = field("turn").and_then(|turn| turn.as_f64()).unwrap_or(0.0) as u32;
            told(Answer {
                name: text("name").unwrap_or_default(),
                turn,
                said: field("answer")
                    .and_then(|answer| answer.dyn_into::<Uint8Array>().ok())
                    .map(|bytes| bytes.to_vec())
                    .ok_or_else(|| text("failure").unwrap_or_default()),
            });
        },
    ))
}
