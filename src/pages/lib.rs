//! Pages worked out on request, beside the answer: each a function from the record as typed to
//! blocks.
//!
//! Nothing here is part of the app: it fetches these pages from programs beside it when a screen
//! first asks for one. There are several, so that none is long in coming.

pub mod as_typed;
pub mod ask;
mod bench;
pub mod bleed;
mod block;
pub mod care;
mod care_fan;
mod catalogue;
mod caution_blocks;
mod cross_section;
mod food;
mod heat;
mod heat_on_piece;
mod heat_picture;
mod ledger;
mod ledger_trace;
pub mod markdown;
pub mod markup;
mod measures;
mod money;
mod part_words;
mod picture;
pub mod plan;
mod plan_curve;
mod plating;
mod plating_picture;
mod purse;
pub mod record;
mod record_fields;
mod risk;
mod risk_tornado;
mod say;
pub mod scale_words;
mod sheet;
mod sheet_buyer;
mod sheet_cautions;
mod sheet_client;
mod sheet_disclosure;
mod sheet_done;
mod sheet_file;
mod sheet_glossary;
pub mod sheet_text;
mod sources_fold;
mod weights;
mod why;
mod wording;
mod worth_knowing;
mod worth_knowing_draw;
mod worth_knowing_tree;

pub mod compare;

pub use block::{Block, Choice, Field, HeatOnPiece, HeatZone, Table, Tone};
pub use picture::{Anchor, Ink, Mark, Picture};

use serde::Serialize;

use leavewell_model::record::{Draft, Problem};

/// What makes a page: from the record as typed to blocks.
pub type Maker = fn(&Draft) -> Vec<Block>;

/// Pages by name, each with what makes it.
pub type Pages = [(&'static str, Maker)];

/// The pages that go with the record: the second program makes them.
pub const PAGES: &Pages = &[
    ("bleed", bleed::page),
    ("care", care::page),
    ("measures", measures::page),
    ("record", record::page),
    ("why", why::page),
];

/// What is read at leisure: the third program makes them.
pub const STUDIES: &Pages = &[
    ("bench", bench::page),
    ("deeper", worth_knowing::deeper),
    ("worth", money::page),
];

/// What is looked up and handed on: the fourth program makes them.
pub const PAPERS: &Pages = &[
    ("catalogue", catalogue::page),
    ("done", sheet_done::page),
    ("ledger", ledger::page),
    ("sheet_buyer", sheet_buyer::page),
    ("sheet_client", sheet_client::page),
    ("sheet_file", sheet_file::page),
    ("trace", ledger_trace::page),
];

/// The program that makes what has this name. Said apart from the tables above, so that asking does
/// not bring the makers along.
#[must_use]
pub fn program_of(name: &str) -> &'static str {
    match name {
        "bench" | "deeper" | "worth" => "study",
        "catalogue" | "done" | "ledger" | "trace" => "papers",
        // With an ending it is a sheet written out.
        _ if name.contains('.') || name.starts_with("sheet_") => "papers",
        _ => "desk",
    }
}

/// The page of this name for a case; `None` when there is no such page among these.
#[must_use]
pub fn page_of(pages: &Pages, name: &str, draft: &Draft) -> Option<Vec<Block>> {
    pages
        .iter()
        .find(|(known, _)| *known == name)
        .map(|(_, make)| make(draft))
}

/// The page of this name, whichever program makes it.
#[must_use]
pub fn page(name: &str, draft: &Draft) -> Option<Vec<Block>> {
    [PAGES, STUDIES, PAPERS]
        .into_iter()
        .find_map(|pages| page_of(pages, name, draft))
}

/// The name under which the second program answers with the report.
pub const REPORT: &str = "report";
/// The name under which it answers what would change the counsel.
pub const CHANGES: &str = "changes";
/// The name under which it answers with the counsel as it would be with one input moved. The first line
/// of such a question says which and how far, such as `value -3`; the case follows.
pub const MOVED: &str = "moved";
/// The name under which it answers with all of that as JSON text.
pub const WEIGH: &str = "weigh";

/// A page as JSON text: `{"blocks": […]}`, and when there is nothing to show
/// `{"refused": {field, message, remedy}}`.
#[must_use]
pub fn page_json(pages: &Pages, name: &str, case: &str) -> String {
    let answer = match Draft::parse(case) {
        Err(fault) => Answer::Refused(fault.problem()),
        Ok(draft) => page_of(pages, name, &draft)
            .map_or_else(|| Answer::Refused(unknown(name)), Answer::Blocks),
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
        message: wording::unknown::message(name),
        remedy: wording::unknown::REMEDY.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_page_is_asked_of_the_program_that_makes_it() {
        for (pages, program) in [(PAGES, "desk"), (STUDIES, "study"), (PAPERS, "papers")] {
            assert!(pages.iter().all(|(name, _)| program_of(name) == program));
        }
        for name in [REPORT, CHANGES, MOVED, WEIGH] {
            assert_eq!(program_of(name), "desk");
        }
        for (whom, name, _) in sheet_text::SHEETS {
            assert!(page(name, &Draft::default()).is_some());
            assert_eq!(program_of(&format!("{whom}.html")), "papers");
        }
    }

    #[test]
    fn an_unknown_page_and_a_broken_record_are_refused() {
        let case = Draft::default().to_json();
        assert!(page_json(PAGES, "nowhere", &case).contains("no page called nowhere"));
        let answer = page_json(PAGES, "bleed", "{\"format\":");
        assert!(answer.starts_with("{\"refused\":"), "{answer}");
    }
}
