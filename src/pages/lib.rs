//! Pages and sheets: everything Leavewell shows beyond the answer itself, as documents.
//!
//! A [`Subject`] is a record, read once and solved once. A [`PageName`] builds a page about it, as a list of
//! [`Block`]s: text, tables, pictures and fields as plain data. The app draws the blocks, and the command
//! line and the worker render them as Markdown or HTML.
//!
//! The doors of the crate:
//! - [`PageName::blocks`] builds one page about one record;
//! - [`sheet_text::sheet_text`] renders a sheet for a client, a buyer, the file or a conservator;
//! - [`plan`] plans the work on a whole shelf;
//! - [`compare`] compares two records of one piece.
//!
//! This crate computes no advice. It reads what the model solved and puts it into words; all wording is in
//! the folder `wording`. It knows nothing of the web, the clock or files, so the same record always gives
//! the same pages.
//!
//! A record becomes a sheet like this:
//!
//! ```
//! use leavewell_pages::Subject;
//! use leavewell_pages::sheet_text::{Form, Recipient, sheet_text};
//!
//! let record = r#"{
//!     "format": "leavewell-case",
//!     "version": 1,
//!     "piece": { "name": "Tea tray", "form": "tray" }
//! }"#;
//! let subject = Subject::parse(record)?;
//! let sheet = sheet_text(&subject, Recipient::Buyer, Form::Markdown);
//! assert!(sheet.starts_with("# Tray or salver: For a buyer"));
//! # Ok::<(), leavewell_model::record::OpenError>(())
//! ```

pub mod as_typed;
pub mod ask;
mod bench;
mod bench_inputs;
pub mod bleed;
mod block;
pub mod care;
mod care_fan;
mod catalogue;
mod caution_blocks;
mod closer_look;
mod closer_samples;
mod cross_section;
mod field_words;
mod food;
pub mod guide;
mod happened;
mod heat;
mod heat_on_piece;
mod heat_picture;
mod heat_reach;
pub mod learning;
mod learning_example;
mod learning_picture;
mod ledger;
mod ledger_book;
mod ledger_trace;
pub mod lot;
pub mod markdown;
pub mod markup;
mod measures;
mod money;
mod money_text;
mod number_text;
pub mod owner;
mod page_name;
mod part_words;
mod picture;
mod placing;
pub mod plan;
mod plan_curve;
mod plating;
mod plating_picture;
pub mod record;
mod record_fields;
mod risk;
mod risk_tornado;
pub mod scale_words;
mod sentence;
mod sheet;
mod sheet_buyer;
mod sheet_cautions;
mod sheet_client;
mod sheet_conservation;
mod sheet_disclosure;
mod sheet_done;
mod sheet_file;
mod sheet_glossary;
mod sheet_history;
mod sheet_photos;
mod sheet_places;
mod sheet_proposal;
pub mod sheet_text;
mod sources_fold;
pub mod standing;
pub mod stock_table;
mod subject;
mod table;
mod weights;
mod why;
mod wording;
mod worth_knowing;
mod worth_knowing_draw;
mod worth_knowing_tree;

pub mod compare;

pub use block::{
    Block, Choice, EntryField, HeatOnPiece, HeatZone, NumberedPlace, Photos, PlacesOnPiece, Table,
    TakePhotos, Tone,
};
pub use page_name::PageName;
pub use picture::{Anchor, Ink, Mark, Picture, wrapped};
pub use subject::Subject;

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::record::Draft;

    #[test]
    fn every_page_has_content_for_an_empty_record() {
        let subject = Subject::new(Draft::default());
        for name in PageName::ALL {
            assert!(!name.blocks(&subject).is_empty(), "{name:?}");
        }
    }

    #[test]
    fn preparing_a_page_does_not_change_its_blocks() {
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
    fn a_reused_subject_gives_the_same_pages_as_a_new_one() {
        let text = include_str!("../../tests/cases/daily_teapot.json");
        let kept = Subject::parse(text).unwrap();
        for name in PageName::ALL.into_iter().rev() {
            let new = Subject::parse(text).unwrap();
            assert_eq!(name.blocks(&kept), name.blocks(&new), "{name:?}");
        }
        assert_eq!(
            PageName::Closer.prepare(&kept),
            None,
            "all samples are already drawn"
        );
    }
}
