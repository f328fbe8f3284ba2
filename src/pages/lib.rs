//! Pages worked out on request, beside the answer: each a function from a [`Subject`], which is a record read
//! and solved, to [`Block`]s.
//!
//! The app draws blocks but makes none: it asks the worker for pages.
//!
//! ```
//! use leavewell_pages::{PageName, Subject};
//!
//! let subject = Subject::parse(r#"{"format": "leavewell-case", "version": 1}"#).unwrap();
//! let blocks = PageName::Catalogue.blocks(&subject);
//! assert!(!blocks.is_empty());
//! ```

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
mod page_name;
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
pub mod standing;
mod subject;
mod weights;
mod why;
mod wording;
mod worth_knowing;
mod worth_knowing_draw;
mod worth_knowing_tree;

pub mod compare;

pub use block::{Block, Choice, Field, HeatOnPiece, HeatZone, Table, Tone};
pub use page_name::PageName;
pub use picture::{Anchor, Ink, Mark, Picture};
pub use subject::Subject;

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::record::Draft;

    #[test]
    fn every_page_has_something_to_say_of_an_empty_record() {
        let subject = Subject::new(Draft::default());
        for name in PageName::ALL {
            assert!(!name.blocks(&subject).is_empty(), "{name:?}");
        }
    }

    #[test]
    fn preparing_a_page_leaves_its_blocks_as_they_are() {
        let text = include_str!("../../tests/cases/worn_tray.json");
        for name in PageName::ALL {
            let prepared = Subject::parse(text).unwrap();
            let mut before = 0.0;
            while let Some(share) = name.prepare(&prepared) {
                assert!(share > before && share < 1.0, "{name:?}: {share}");
                before = share;
            }
            let plain = Subject::parse(text).unwrap();
            assert_eq!(name.blocks(&prepared), name.blocks(&plain), "{name:?}");
        }
    }

    #[test]
    fn pages_of_a_kept_subject_are_those_of_a_new_one() {
        let text = include_str!("../../tests/cases/daily_teapot.json");
        let kept = Subject::parse(text).unwrap();
        for name in PageName::ALL.into_iter().rev() {
            let new = Subject::parse(text).unwrap();
            assert_eq!(name.blocks(&kept), name.blocks(&new), "{name:?}");
        }
        assert_eq!(
            PageName::Closer.prepare(&kept),
            None,
            "its samples are drawn"
        );
    }
}
