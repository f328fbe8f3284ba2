//! The second program: it weighs a case, and works out the pages that go with the record.
//!
//! It runs in a worker that `www/boot.js` starts when a screen first asks, so that a first visit
//! need not load it and long work never holds up typing. It says what the model says and nothing
//! more. What the app reads back goes as bytes, which need no numbers written out and read again.

// The code that wasm-bindgen generates for exported functions needs it; ours has none.
#![allow(unsafe_code)]

use leavewell_model::counsel::{solve, weigh_at_once, what_would_change};
use leavewell_model::record::shelf_file;
use leavewell_model::{Case, Draft, Problem, weigh_json};
use leavewell_pages::{self as page, compare, plan};
use wasm_bindgen::JsError;
use wasm_bindgen::prelude::wasm_bindgen;

fn main() {}

/// The answer to a question about a case given as JSON text. For [`page::REPORT`] and
/// [`page::CHANGES`] that is the report, or what would change it, for [`page::MOVED`] the answer with
/// one input moved, all in postcard's format; for
/// [`page::WEIGH`] the report as JSON text, byte for byte as `cargo weigh` prints it; for
/// [`compare::COMPARE`], [`plan::OFFERS`] and [`shelf_file::OPEN_FILE`] what they say as JSON text; for every other name
/// the page of that name as JSON text.
///
/// # Errors
/// When the text is no case.
#[wasm_bindgen]
pub fn answer(name: &str, case: &str) -> Result<Vec<u8>, JsError> {
    let said = match name {
        page::WEIGH => return Ok(weigh_json(case).into_bytes()),
        compare::COMPARE => return Ok(compare::compare_json(case).into_bytes()),
        plan::OFFERS => return Ok(plan::offers_json(case).into_bytes()),
        shelf_file::OPEN_FILE => return Ok(shelf_file::open_json(case).into_bytes()),
        page::REPORT => {
            let (case, problems) = read(case)?;
            postcard::to_allocvec(&weigh_at_once(&case, problems))
        }
        page::MOVED => {
            let (asked, case) = case.split_once('\n').unwrap_or_default();
            let (input, step) = asked.split_once(' ').unwrap_or_default();
            let step = step.parse().unwrap_or(0);
            postcard::to_allocvec(&solve(&read(case)?.0).moved(input, step))
        }
        page::CHANGES => postcard::to_allocvec(&what_would_change(&read(case)?.0)),
        _ => return Ok(page::page_json(page::PAGES, name, case).into_bytes()),
    };
    said.map_err(|fault| JsError::new(&fault.to_string()))
}

fn read(case: &str) -> Result<(Case, Vec<Problem>), JsError> {
    match Draft::parse(case) {
        Ok(draft) => Ok(draft.read()),
        Err(fault) => Err(JsError::new(&fault.problem().message)),
    }
}
