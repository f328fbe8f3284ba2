//! The second program: pages that a screen asks for, worked out beside the app.
//!
//! It runs in a worker that `www/boot.js` starts when a screen first asks, so that a first visit
//! need not load it and long work never holds up typing. It says what the model says and nothing
//! more.

// The code that wasm-bindgen generates for exported functions needs it; ours has none.
#![allow(unsafe_code)]

use wasm_bindgen::prelude::wasm_bindgen;

fn main() {}

/// The page of this name for a case given as JSON text, as JSON text.
#[wasm_bindgen]
#[must_use]
pub fn page(name: &str, case: &str) -> String {
    leavewell_model::page::page_json(name, case)
}
