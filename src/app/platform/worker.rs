//! The two workers that weigh pieces and make pages. `www/boot.js` starts them. Questions and answers are
//! window events that carry bytes.

use gloo::events::EventListener;
use js_sys::{Object, Reflect, Uint8Array};
use leavewell_worker::ask::{Question, Reply, from_bytes, to_bytes};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CustomEvent, CustomEventInit};

/// A worker's message about a question.
#[derive(Clone, Debug)]
pub struct Message {
    /// The topic of the question, from `Ask::topic`.
    pub topic: u32,
    /// The generation of the record that the question is about.
    pub generation: u32,
    /// The progress or the answer.
    pub news: News,
}

/// The state of a question.
#[derive(Clone, Debug)]
pub enum News {
    /// The share of the work that is finished, 0 to 1.
    Working(f64),
    /// The answer, or why it failed.
    Answered(Result<Reply, String>),
}

/// Asks a worker about a text. Of the waiting questions on one topic, only the newest is answered.
pub fn ask(question: &Question, generation: u32, text: &str) {
    let Some(window) = web_sys::window() else {
        return;
    };
    let detail = Object::new();
    for (key, value) in [
        ("worker", JsValue::from(question.ask.worker().name())),
        ("topic", JsValue::from(question.ask.topic())),
        ("turn", JsValue::from(generation)),
        ("ask", Uint8Array::from(&to_bytes(question)[..]).into()),
        ("text", JsValue::from(text)),
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

/// Calls back with every message, until the returned listener is dropped.
#[must_use]
pub fn on_message(received: impl Fn(Message) + 'static) -> Option<EventListener> {
    let window = web_sys::window()?;
    Some(EventListener::new(
        &window,
        "leavewell-answer",
        move |event| {
            if let Some(event) = event.dyn_ref::<CustomEvent>() {
                received(message(&event.detail()));
            }
        },
    ))
}

fn message(detail: &JsValue) -> Message {
    let field = |name: &str| Reflect::get(detail, &name.into()).ok();
    let number = |name: &str| field(name).and_then(|value| value.as_f64());
    // Our counters for topics and generations fit.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let whole = |name: &str| number(name).unwrap_or(0.0) as u32;
    let news = match number("share") {
        Some(share) => News::Working(share),
        None => News::Answered(
            field("answer")
                .and_then(|answer| answer.dyn_into::<Uint8Array>().ok())
                .ok_or_else(|| {
                    let failure = field("failure").and_then(|why| why.as_string());
                    failure.unwrap_or_default()
                })
                .and_then(|bytes| from_bytes(&bytes.to_vec())),
        ),
    };
    Message {
        topic: whole("topic"),
        generation: whole("turn"),
        news,
    }
}
