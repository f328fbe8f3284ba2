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
mod money;
mod part_words;
mod picture;
pub mod record;
mod record_fields;
mod why;

pub use block::{Block, Choice, Field, Table, Tone};
pub use picture::{Anchor, Ink, Mark, Picture};

use serde::Serialize;

use crate::case::{Draft, Problem};
use crate::counsel::what_would_change;
use crate::report::ChangeReport;

/// What makes a page: from the record as typed to blocks.
pub type Maker = fn(&Draft) -> Vec<Block>;

/// The pages there are, each with what makes it.
pub const PAGES: &[(&str, Maker)] = &[
    ("bleed", bleed::page),
    ("care", care::page),
    ("measures", measures::page),
    ("record", record::page),
    ("why", why::page),
    ("worth", money::page),
];

/// The page of this name for a case; `None` when there is no such page.
#[must_use]
pub fn page(name: &str, draft: &Draft) -> Option<Vec<Block>> {
    PAGES
        .iter()
        .find(|(known, _)| *known == name)
        .map(|(_, make)| make(draft))
}

/// The name under which [`page_json`] answers what would change the counsel.
pub const CHANGES: &str = "changes";

/// The same as JSON text: `{"blocks": […]}`, for [`CHANGES`] `{"changes": […]}`, and when there is
/// nothing to show `{"refused": {field, message, remedy}}`.
#[must_use]
pub fn page_json(name: &str, case: &str) -> String {
    let answer = match Draft::parse(case) {
        Err(fault) => Answer::Refused(fault.problem()),
        Ok(draft) if name == CHANGES => Answer::Changes(what_would_change(&draft.read().0)),
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
    Changes(Vec<ChangeReport>),
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
        for name in [CHANGES, "nowhere"] {
            let answer = page_json(name, "{\"format\":");
            assert!(answer.starts_with("{\"refused\":"), "{answer}");
        }
    }

    #[test]
    fn what_would_change_it_is_the_same_as_in_the_whole_answer() {
        let text = r#"{"format":"leavewell-case","version":1,"piece":{"form":"tray"},"findings":[{"id":"C01","answer":"seen"}],
            "parts":[{"part":"body","bleed":0.2}],"market":{"likely":300}}"#;
        let apart: serde_json::Value = serde_json::from_str(&page_json(CHANGES, text)).unwrap();
        let whole: serde_json::Value = serde_json::from_str(&crate::weigh_json(text)).unwrap();
        assert_eq!(apart["changes"], whole["counsel"]["would_change"]);
        assert!(!apart["changes"].as_array().unwrap().is_empty());
    }
}
