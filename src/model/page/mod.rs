//! Pages worked out on request, beside the answer: each a function from the record as typed to
//! blocks.
//!
//! Nothing here is part of the answer itself, so the program that answers need not hold it: the app
//! fetches these pages from a second program when a screen first asks for one.

pub mod ask;
pub mod bleed;
mod block;
pub mod care;
mod care_fan;
mod cross_section;
mod measures;
mod part_words;
mod picture;
pub mod record;
mod record_fields;
mod why;

pub mod compare;

pub use block::{Block, Choice, Field, Table, Tone};
pub use picture::{Anchor, Ink, Mark, Picture};

use serde::Serialize;

use crate::case::{Draft, Problem};

/// What makes a page: from the record as typed to blocks.
pub type Maker = fn(&Draft) -> Vec<Block>;

/// The pages there are, each with what makes it.
pub const PAGES: &[(&str, Maker)] = &[
    ("bleed", bleed::page),
    ("care", care::page),
    ("measures", measures::page),
    ("record", record::page),
    ("why", why::page),
];

/// The page of this name for a case; `None` when there is no such page.
#[must_use]
pub fn page(name: &str, draft: &Draft) -> Option<Vec<Block>> {
    PAGES
        .iter()
        .find(|(known, _)| *known == name)
        .map(|(_, make)| make(draft))
}

/// The name under which the second program answers with the report.
pub const REPORT: &str = "report";
/// The name under which it answers what would change the counsel.
pub const CHANGES: &str = "changes";
/// The name under which it answers with all of that as JSON text.
pub const WEIGH: &str = "weigh";

/// The same as JSON text: `{"blocks": […]}`, and when there is nothing to show
/// `{"refused": {field, message, remedy}}`.
#[must_use]
pub fn page_json(name: &str, case: &str) -> String {
    let answer = match Draft::parse(case) {
        Err(fault) => Answer::Refused(fault.problem()),
        Ok(draft) => {
            page(name, &draft).map_or_else(|| Answer::Refused(unknown(name)), Answer::Blocks)
        }
    };
    serde_json::to_string(&answer).unwrap_or_default()
}

#[derive(Serialize)]
#[serde(rename_all = "snake_case")]
enum Answer {
    Blocks(Vec<Block>),
    Refused(Problem),
}

fn unknown(name: &str) -> Problem {
    Problem {
        field: "page".to_owned(),
        message: format!("There is no page called {name}."),
        remedy: "Go back to the piece and choose a screen from there.".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_unknown_page_and_a_broken_record_are_refused() {
        let case = Draft::default().to_json();
        assert!(page_json("nowhere", &case).contains("no page called nowhere"));
        let answer = page_json("bleed", "{\"format\":");
        assert!(answer.starts_with("{\"refused\":"), "{answer}");
    }
}
