//! The model behind Leavewell: from a record as typed to advice with its reasons.
//!
//! Pure and deterministic: no clock, no web, no input or output, and the same bits on every machine
//! (transcendental functions come from `libm`). Data flows one way: record → identity → silver → treatment →
//! value → counsel → report.
//!
//! The entry points of the crate:
//! - [`Draft::parse`] opens a record, and [`Draft::read`] turns it into a valid [`Case`], with a [`Problem`]
//!   for whatever cannot be used;
//! - [`counsel::weigh`] gives the whole answer as a [`Report`], [`weigh_json`] does the same from text to text;
//! - [`counsel::solve`] returns the solved case, which every page about it reads;
//! - [`ledger::Ledger`] holds every figure with its range, source and tag;
//! - [`learn`] estimates prices, bills and hours from closed pieces.
//!
//! A record becomes advice like this:
//!
//! ```
//! use leavewell_model::counsel::weigh;
//! use leavewell_model::Draft;
//!
//! let draft = Draft::parse(r#"{
//!     "format": "leavewell-case",
//!     "version": 1,
//!     "piece": { "form": "tray" },
//!     "findings": [{ "id": "C07", "answer": "seen" }],
//!     "parts": [{ "part": "body", "bleed": 0.04 }],
//!     "aim": { "goal": "sell" },
//!     "market": { "likely": 300 }
//! }"#)?;
//! let (case, problems) = draft.read();
//! assert!(problems.is_empty());
//! let report = weigh(&case, problems);
//! assert_eq!(report.counsel.steps, [leavewell_model::terms::Treatment::Leave]);
//! assert!(report.value.as_it_is.p50 < report.value.undamaged.p50);
//! # Ok::<(), leavewell_model::record::OpenError>(())
//! ```

pub mod bench;
pub mod counsel;
pub mod decide;
pub mod identity;
pub mod learn;
pub mod ledger;
pub mod maths;
pub mod record;
pub mod report;
pub mod road;
pub mod silver;
pub mod terms;
pub mod treatment;
pub mod value;

pub use record::{Case, Draft, Problem};
pub use report::Report;

/// Weighs a case file given as text and returns the report as JSON text.
///
/// This is the single entry point for `cargo weigh`, for the browser and for the tests that compare the two
/// byte for byte. A file that cannot be opened gives `{"refused": {field, message, remedy}}`.
#[must_use]
pub fn weigh_json(text: &str) -> String {
    let shown = match Draft::parse(text) {
        Ok(draft) => serde_json::to_string(&weigh_draft(&draft)),
        Err(e) => serde_json::to_string(&record::Refused {
            refused: e.problem(),
        }),
    };
    shown.unwrap_or_default()
}

/// Weighs a draft: uses what it can and reports the rest in [`Report::problems`].
#[must_use]
pub fn weigh_draft(draft: &Draft) -> Report {
    let (case, problems) = draft.read();
    counsel::weigh(&case, problems)
}

/// Weighs a case.
#[must_use]
pub fn weigh(case: &Case) -> Report {
    counsel::weigh(case, Vec::new())
}
