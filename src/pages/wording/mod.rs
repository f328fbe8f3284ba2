//! Every word that a page or a sheet shows, a file for each file of pages that has words.
//!
//! A page file says what stands where and when; here stands how it is said, so that the words can be
//! read through, corrected or put into another language without reading code. The rule, held by a test
//! (`tests/tidy.rs`): outside this folder no file of pages holds a sentence, a label or a heading.
//!
//! A fixed text is a constant, a text with things put in is a function of those things as they are
//! said, a table of words is an array. A name tells what the line says or where it stands. Paths, ids,
//! units and drawings are no words and stay with the page. What findings, treatments, cautions and
//! figures are called is data (`facts/data`), and what the choices of a record are called stands with
//! them in `case`.

pub(crate) mod bench;
pub(crate) mod bleed;
pub(crate) mod care;
pub(crate) mod care_fan;
pub(crate) mod catalogue;
pub(crate) mod caution_blocks;
pub(crate) mod compare;
pub(crate) mod cross_section;
pub(crate) mod food;
pub(crate) mod heat;
pub(crate) mod heat_on_piece;
pub(crate) mod heat_picture;
pub(crate) mod ledger;
pub(crate) mod ledger_trace;
pub(crate) mod markdown;
pub(crate) mod markup;
pub(crate) mod measures;
pub(crate) mod money;
pub(crate) mod part_words;
pub(crate) mod plan;
pub(crate) mod plan_curve;
pub(crate) mod plating;
pub(crate) mod plating_picture;
pub(crate) mod purse;
pub(crate) mod record;
pub(crate) mod record_fields;
pub(crate) mod risk;
pub(crate) mod risk_tornado;
pub(crate) mod say;
pub(crate) mod scale_words;
pub(crate) mod sheet;
pub(crate) mod sheet_buyer;
pub(crate) mod sheet_cautions;
pub(crate) mod sheet_client;
pub(crate) mod sheet_disclosure;
pub(crate) mod sheet_done;
pub(crate) mod sheet_file;
pub(crate) mod sheet_glossary;
pub(crate) mod sheet_text;
pub(crate) mod sources_fold;
pub(crate) mod standing;
pub(crate) mod weights;
pub(crate) mod why;
pub(crate) mod worth_knowing;
pub(crate) mod worth_knowing_tree;
