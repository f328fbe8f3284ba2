//! The model behind Leavewell: from a [`Case`] to a [`Report`].
//!
//! Pure and deterministic: no clock, no web, no input or output, and the same bits on every
//! machine (transcendental functions come from `libm`). Data flows one way:
//! case → identity → silver → treatment → value → counsel → report.

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
/// This is the one door for `cargo weigh`, for the browser and for the tests that compare them byte
/// for byte. A file that cannot be opened gives `{"refused": {field, message, remedy}}`.
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

/// Weighs a draft: what can be used is used, the rest is reported in [`Report::problems`].
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
