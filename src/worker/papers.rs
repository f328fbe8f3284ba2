//! The fourth program: it writes what is looked up and handed on: treatments, sheets, figures.
//!
//! It runs in a worker of its own, started when a screen first asks for one of these.

// The code that wasm-bindgen generates for exported functions needs it; ours has none.
#![allow(unsafe_code)]

use leavewell_model::Draft;
use leavewell_pages as page;
use leavewell_pages::sheet_text::{Form, sheet_text};
use wasm_bindgen::JsError;
use wasm_bindgen::prelude::wasm_bindgen;

fn main() {}

/// A paper on a case given as JSON text: the page of this name as JSON text, or for whom it is with
/// `.md` or `.html` after it the sheet written out.
///
/// # Errors
/// When a sheet is asked for and the text is no case.
#[wasm_bindgen]
pub fn answer(name: &str, case: &str) -> Result<Vec<u8>, JsError> {
    let Some((whom, ending)) = name.split_once('.') else {
        return Ok(page::page_json(page::PAPERS, name, case).into_bytes());
    };
    let form = if ending == "html" {
        Form::Html
    } else {
        Form::Markdown
    };
    let draft = Draft::parse(case).map_err(|fault| JsError::new(&fault.problem().message))?;
    let text = sheet_text(&draft, whom, form).unwrap_or_default();
    Ok(text.into_bytes())
}
