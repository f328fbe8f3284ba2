//! The fifth program: it plans the work on a whole shelf, from what the second says each piece offers.
//!
//! It runs in a worker of its own, started when the plan is opened. It weighs nothing, and so is small.

// The code that wasm-bindgen generates for exported functions needs it; ours has none.
#![allow(unsafe_code)]

use leavewell_pages::plan::plan_json;
use wasm_bindgen::prelude::wasm_bindgen;

fn main() {}

/// The answer of [`plan_json`]; the name says nothing more here.
#[wasm_bindgen]
#[must_use]
pub fn answer(_name: &str, question: &str) -> Vec<u8> {
    plan_json(question).into_bytes()
}
