//! The record behind a page, read once and solved once.
//!
//! Invariant: everything here follows from the draft alone. Any number of pages may be built from one
//! subject, in any order, with the same blocks as from a new subject.

use std::cell::{OnceCell, RefCell};
use std::collections::BTreeSet;

use leavewell_model::counsel::{
    Shared, Solved, otherwise_as_shipped, shared, solve, solve_finely, what_would_change,
};
use leavewell_model::record::{Case, Draft, OpenError, Problem, TaughtFigures};
use leavewell_model::report::{ChangeReport, Report};

use super::closer_samples::SAMPLES;

/// A record as typed, the case read from it, and the results so far.
pub struct Subject {
    draft: Draft,
    case: Case,
    problems: Vec<Problem>,
    answer: OnceCell<Answered>,
    finely: OnceCell<Solved>,
    changes: OnceCell<Vec<ChangeReport>>,
    samples: RefCell<Vec<Shared>>,
}

/// The case solved on the sample of the answer.
struct Answered {
    solved: Solved,
    report: Report,
    used: BTreeSet<&'static str>,
}

/// Whether a sheet includes what would change the advice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sheet {
    /// It does.
    WithChanges,
    /// It does not.
    WithoutChanges,
}

impl Subject {
    /// Reads the case. Nothing is solved until a page needs it.
    #[must_use]
    pub fn new(draft: Draft) -> Self {
        let (case, problems) = draft.read();
        Self {
            draft,
            case,
            problems,
            answer: OnceCell::new(),
            finely: OnceCell::new(),
            changes: OnceCell::new(),
            samples: RefCell::default(),
        }
    }

    /// Reads the text of a case file.
    ///
    /// # Errors
    /// If the text is not a case.
    pub fn parse(text: &str) -> Result<Self, OpenError> {
        Draft::parse(text).map(Self::new)
    }

    /// The same record with these taught figures, for which nothing is solved yet.
    #[must_use]
    pub fn with_taught(self, taught: TaughtFigures) -> Self {
        let mut subject = Self::new(self.draft);
        subject.case.taught = taught;
        subject
    }

    /// The record as typed.
    #[must_use]
    pub fn draft(&self) -> &Draft {
        &self.draft
    }

    /// The usable part of the record.
    #[must_use]
    pub fn case(&self) -> &Case {
        &self.case
    }

    /// The unusable parts of the record, with the reason for each.
    #[must_use]
    pub fn problems(&self) -> &[Problem] {
        &self.problems
    }

    /// The case solved on the sample of the answer.
    #[must_use]
    pub fn solved(&self) -> &Solved {
        &self.answer().solved
    }

    /// The case solved on the finer sample of a printed sheet.
    #[must_use]
    pub fn solved_finely(&self) -> &Solved {
        self.finely.get_or_init(|| solve_finely(&self.case))
    }

    /// The report on the sample of the answer, without what would change it.
    #[must_use]
    pub fn report(&self) -> &Report {
        &self.answer().report
    }

    /// Ids of the figures looked up for the report. A build without the feature `trace` does not record
    /// them and lists all figures.
    #[must_use]
    pub fn figures_used(&self) -> &BTreeSet<&'static str> {
        &self.answer().used
    }

    /// What would change the advice.
    #[must_use]
    pub fn changes(&self) -> &[ChangeReport] {
        self.changes.get_or_init(|| what_would_change(&self.case))
    }

    /// Draws one more sample for the closer look and returns the share drawn so far. Returns `None` once
    /// all are drawn.
    pub(super) fn draw_next_sample(&self) -> Option<f64> {
        let mut samples = self.samples.borrow_mut();
        let (log2_points, attributes) = SAMPLES.get(samples.len())?;
        let scramble = u32::try_from(samples.len()).ok()?;
        samples.push(shared(&self.case, *log2_points, scramble, *attributes));
        // Building the page counts as one more slice.
        Some(samples.len() as f64 / (SAMPLES.len() + 1) as f64)
    }

    /// All samples for the closer look.
    pub(super) fn samples(&self) -> Vec<Shared> {
        while self.draw_next_sample().is_some() {}
        self.samples.borrow().clone()
    }

    /// Solves the next thing that a sheet needs and returns the share done. Returns `None` once everything
    /// is solved.
    pub(super) fn solve_next(&self, sheet: Sheet) -> Option<f64> {
        if self.finely.get().is_none() {
            let _ = self.solved_finely();
            return Some(0.5);
        }
        if sheet == Sheet::WithChanges && self.changes.get().is_none() {
            let _ = self.changes();
            return Some(0.9);
        }
        None
    }

    fn answer(&self) -> &Answered {
        self.answer.get_or_init(|| {
            let ((solved, report), used) = read_during(|| {
                let solved = solve(&self.case);
                let mut report = solved.report(self.problems.clone());
                report.counsel.doubts.extend(otherwise_as_shipped(&solved));
                (solved, report)
            });
            Answered {
                solved,
                report,
                used,
            }
        })
    }
}

#[cfg(any(test, feature = "trace"))]
fn read_during<T>(work: impl FnOnce() -> T) -> (T, BTreeSet<&'static str>) {
    leavewell_model::ledger::read_during(work)
}

#[cfg(not(any(test, feature = "trace")))]
fn read_during<T>(work: impl FnOnce() -> T) -> (T, BTreeSet<&'static str>) {
    use leavewell_model::ledger::Ledger;
    (work(), Ledger::standard().figures().map(|f| f.id).collect())
}
