//! Pages worked out on request, beside the answer: each a function from the record as typed to
//! blocks.
//!
//! Nothing here is part of the answer itself, so the program that answers need not hold it: the app
//! fetches these pages from a second program when a screen first asks for one.

pub mod ask;
mod block;
mod money;
mod picture;

pub use block::{Block, Choice, Field, Table, Tone};
pub use picture::{Anchor, Ink, Mark, Picture};

use serde::Serialize;

use crate::case::{Draft, Problem};

/// The pages there are, each with what makes it.
pub const PAGES: &[(&str, Make)] = &[("worth", money::page)];

/// What makes a page.
pub type Make = fn(&Draft) -> Vec<Block>;

/// The page of this name for a case; `None` when there is no such page.
#[must_use]
pub fn page(name: &str, draft: &Draft) -> Option<Vec<Block>> {
    PAGES
        .iter()
        .find(|(known, _)| *known == name)
        .map(|(_, make)| make(draft))
}

/// The same as JSON text: `{"blocks": […]}`, or `{"refused": {field, message, remedy}}`.
#[must_use]
pub fn page_json(name: &str, case: &str) -> String {
    let answer = match Draft::parse(case) {
        Err(fault) => serde_json::to_string(&Answer::Refused(fault.problem())),
        Ok(draft) => serde_json::to_string(&page(name, &draft).map_or_else(
            || {
                Answer::Refused(Problem {
                    field: "page".to_owned(),
                    message: format!("There is no page called {name}."),
                    remedy: "Go back to the piece and choose a screen from there.".to_owned(),
                })
            },
            Answer::Blocks,
        )),
    };
    answer.unwrap_or_default()
}

#[derive(Serialize)]
#[serde(rename_all = "snake_case")]
enum Answer {
    Blocks(Vec<Block>),
    Refused(Problem),
}
