//! The program in the workers: it weighs, makes pages, writes sheets and plans. `www/worker.js` loads it.

// The code that wasm-bindgen generates for exported functions needs it; ours has none.
#![allow(unsafe_code)]

use std::cell::{Cell, RefCell};

use leavewell_worker::ask::{Question, from_bytes, to_bytes};
use leavewell_worker::keeper::{Keeper, Progress, ScriptAsk};
use wasm_bindgen::JsError;
use wasm_bindgen::prelude::wasm_bindgen;

thread_local! {
    static KEEPER: RefCell<Keeper> = RefCell::default();
    static SHARE_DONE: Cell<f64> = const { Cell::new(1.0) };
}

fn main() {}

/// The bytes of an [`leavewell_worker::ask::Reply`] to the bytes of a [`Question`]. `undefined` while more is to be
/// done: [`share_done`] then says how far it is, and the same call goes on.
///
/// # Errors
/// When the bytes are no question, which happens only between an app and a worker of different builds.
#[wasm_bindgen]
pub fn answer(ask: &[u8], text: &str) -> Result<Option<Vec<u8>>, JsError> {
    let question: Question = from_bytes(ask).map_err(|why| JsError::new(&why))?;
    let progress = KEEPER.with_borrow_mut(|keeper| keeper.advance(&question, text));
    Ok(match progress {
        Progress::Working(share) => {
            SHARE_DONE.set(share);
            None
        }
        Progress::Done(answer) => {
            SHARE_DONE.set(1.0);
            Some(to_bytes(&answer))
        }
    })
}

/// The share of the work done for the answer asked for last, 0 to 1.
#[wasm_bindgen]
#[must_use]
pub fn share_done() -> f64 {
    SHARE_DONE.get()
}

/// The answer to a question of a script, both JSON text.
///
/// # Errors
/// When scripts may ask nothing of this name.
#[wasm_bindgen]
pub fn answer_script(name: &str, text: &str) -> Result<String, JsError> {
    let ask = ScriptAsk::parse(name).ok_or_else(|| JsError::new("scripts may not ask this"))?;
    Ok(KEEPER.with_borrow_mut(|keeper| keeper.answer_script(ask, text)))
}
