//! A sheet as a text of its own, to print, to send or to keep: as Markdown or as HTML.

use super::as_typed::as_typed;
use super::markdown::markdown;
use super::markup::markup;
use super::wording::sheet_text as words;
use super::{PAPERS, page_of};
use leavewell_model::record::Draft;

/// The sheets: for whom, the page it is, and its title.
pub const SHEETS: [(&str, &str, &str); 3] = [
    ("client", "sheet_client", words::FOR_THE_CLIENT),
    ("buyer", "sheet_buyer", words::FOR_A_BUYER),
    ("file", "sheet_file", words::FOR_THE_FILE),
];

/// How a sheet is written out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Plain text with few marks, for a letter.
    Markdown,
    /// A whole page that needs no other file.
    Html,
}

/// The sheet for `client`, `buyer` or `file`; `None` for any other word.
#[must_use]
pub fn sheet_text(draft: &Draft, whom: &str, form: Form) -> Option<String> {
    let (_, name, title) = SHEETS.iter().find(|(known, ..)| *known == whom)?;
    let blocks = page_of(PAPERS, name, draft)?;
    let piece = as_typed(&draft.text("piece.name"));
    let running = match piece.as_str() {
        "" => (*title).to_owned(),
        piece => words::titled(piece, title),
    };
    Some(match form {
        Form::Html => markup(&running, &running, &blocks),
        Form::Markdown => markdown(&running, &blocks),
    })
}
