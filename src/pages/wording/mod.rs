//! Every text that a page or sheet shows, one file per page file that has text.
//!
//! A page file decides what appears where and when. This folder holds the wording, so that it can be
//! proofread, corrected or translated without reading code. A test in `tests/tidy.rs` holds the rule:
//! outside this folder no page file contains a sentence, a label or a heading.
//!
//! A fixed text is a constant, a text with slots is a function of their contents, and a list of texts is an
//! array. The name of each says what it tells or where it appears. Paths, ids, units and drawings stay with
//! the page. Names of findings, treatments, cautions and figures are data of the ledger; labels of a
//! record's choices belong to the vocabulary of the model.

pub(crate) mod bench;
pub(crate) mod bleed;
pub(crate) mod care;
pub(crate) mod care_fan;
pub(crate) mod catalogue;
pub(crate) mod caution_blocks;
pub(crate) mod compare;
pub(crate) mod cross_section;
pub(crate) mod food;
pub(crate) mod guide;
pub(crate) mod happened;
pub(crate) mod heat;
pub(crate) mod heat_on_piece;
pub(crate) mod heat_picture;
pub(crate) mod learning;
pub(crate) mod ledger;
pub(crate) mod ledger_trace;
pub(crate) mod lot;
pub(crate) mod markdown;
pub(crate) mod markup;
pub(crate) mod measures;
pub(crate) mod money;
pub(crate) mod money_text;
pub(crate) mod not_counted;
pub(crate) mod number_text;
pub(crate) mod owner;
pub(crate) mod part_words;
pub(crate) mod plan;
pub(crate) mod plan_curve;
pub(crate) mod plating;
pub(crate) mod plating_picture;
pub(crate) mod record;
pub(crate) mod record_fields;
pub(crate) mod risk;
pub(crate) mod risk_tornado;
pub(crate) mod scale_words;
pub(crate) mod sentence;
pub(crate) mod sheet;
pub(crate) mod sheet_buyer;
pub(crate) mod sheet_cautions;
pub(crate) mod sheet_client;
pub(crate) mod sheet_conservation;
pub(crate) mod sheet_disclosure;
pub(crate) mod sheet_done;
pub(crate) mod sheet_file;
pub(crate) mod sheet_glossary;
pub(crate) mod sheet_photos;
pub(crate) mod sheet_places;
pub(crate) mod sheet_proposal;
pub(crate) mod sheet_text;
pub(crate) mod sources_fold;
pub(crate) mod standing;
pub(crate) mod stock_table;
pub(crate) mod weights;
pub(crate) mod why;
pub(crate) mod worth_knowing;
pub(crate) mod worth_knowing_tree;
