//! The third program: what is read at leisure, such as the bench and the closer look.
//!
//! It is apart from the second, so that neither is long in coming and a long page never keeps an
//! answer waiting. It runs in a worker of its own, started when a screen first asks.

// The code that wasm-bindgen generates for exported functions needs it; ours has none.
#![allow(unsafe_code)]

use leavewell_pages as page;
use wasm_bindgen::prelude::wasm_bindgen;

fn main() {}

/// The page of this name on a case given as JSON text, as JSON text.
#[wasm_bindgen]
#[must_use]
pub fn answer(name: &str, case: &str) -> Vec<u8> {
    page::page_json(page::STUDIES, name, case).into_bytes()
}
