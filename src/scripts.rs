//! The model for scripts: browser tests and any page that hosts the app.

// The code that wasm-bindgen generates for exported functions needs it; ours has none.
#![allow(unsafe_code)]

use js_sys::JSON;
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsError, JsValue};

/// Weighs a case given as an object and returns the report as a plain object.
///
/// The object goes in and out by way of its JSON text: the same limits then hold as for a file, and
/// an object that contains itself is an error rather than an endless walk.
///
/// # Errors
/// When the object has no JSON form.
#[wasm_bindgen]
pub fn weigh(case: &JsValue) -> Result<JsValue, JsError> {
    let text = JSON::stringify(case)
        .ok()
        .and_then(|text| text.as_string())
        .ok_or_else(|| JsError::new("A case is a plain object, such as a case file holds."))?;
    JSON::parse(&weigh_json(&text)).map_err(|_| JsError::new("The report has no JSON form."))
}

/// Weighs a case file's text and returns the report as JSON text, byte for byte as `cargo weigh`
/// prints it.
#[wasm_bindgen]
#[must_use]
pub fn weigh_json(text: &str) -> String {
    leavewell_model::weigh_json(text)
}
