//! The counsel: every fault and every treatment weighed on one shared sample, and the advice explained.
//!
//! Phases: posterior → draws → situation → faults → choices in each block → courses → outcomes → advice →
//! contrast → report. Each phase depends only on earlier ones; there is no feedback. The same case gives the
//! same bytes on every machine.

mod advise;
mod block_effects;
pub mod caution_list;
mod change;
mod choice;
mod column;
mod columns;
mod contrast;
mod course;
mod draws;
mod expected;
mod explain;
mod hammer;
mod identity_report;
mod looked_at;
mod member;
mod member_weighing;
pub mod offer;
mod outcome;
mod part_silver;
mod per_draw;
mod pieces;
mod prices;
mod proposal;
mod report;
mod sample;
mod sampled_part;
mod search;
mod selling;
mod sentences;
mod shared;
mod solved;
mod steps_alone;
#[cfg(test)]
mod tests;
mod wear;
mod weighed;
mod weights;
mod what_if;
mod wording;
mod work_block;
#[cfg(test)]
mod worked;
mod world;
mod worth;

pub use sampled_part::{SampledPart, UncertainInput};

pub use crate::terms::Input;
pub use expected::{ExpectedOne, ExpectedPiece, ExpectedWork, bill_figure, mishap_figures};
pub use offer::work_hours;
pub use shared::{Shared, SharedCourse, shared};
pub use solved::Solved;
pub use worth::{Plan, WorthDraws};

use wording::report as words;

pub use sentences::money;

use crate::record::{Case, Problem, TaughtFigures};
use crate::report::{ChangeReport, Report};
use what_if::WhatIf;

/// Sample size for the answer: 2^12 points.
pub const ANSWER_LOG2: u32 = 12;
/// Sample size for a printed sheet: 2^14 points.
pub const SHEET_LOG2: u32 = 14;
/// Sample size for the search for what would change the answer: 2^9 points, a prefix of the same scrambled
/// sequence.
const SEARCH_LOG2: u32 = 9;

/// Weighs a case. `problems` are those found when reading it; they are passed on to the report.
#[must_use]
pub fn weigh(case: &Case, problems: Vec<Problem>) -> Report {
    let mut report = weigh_at_once(case, problems);
    report.counsel.would_change = what_would_change(case);
    report
}

/// Weighs a case without the search for what would change the answer, which is most of the work: for a screen
/// that answers while the user types. `would_change` is empty.
#[must_use]
pub fn weigh_at_once(case: &Case, problems: Vec<Problem>) -> Report {
    solve(case).report(problems)
}

/// Solves a case on the sample size of the answer. The report and every page about the case read the result,
/// so a record is solved once.
#[must_use]
pub fn solve(case: &Case) -> Solved {
    Solved::of(case, ANSWER_LOG2)
}

/// Solves a case on the larger sample of a printed sheet.
#[must_use]
pub fn solve_finely(case: &Case) -> Solved {
    Solved::of(case, SHEET_LOG2)
}

/// If figures were taught and the shipped figures would give different advice: that advice, in a sentence.
#[must_use]
pub fn otherwise_as_shipped(solved: &Solved) -> Option<String> {
    let case = solved.case();
    if case.taught.is_empty() {
        return None;
    }
    let shipped = Solved::of(
        &Case {
            taught: TaughtFigures::default(),
            ..case.clone()
        },
        solved.log2_points,
    );
    let advised = |of: &Solved| of.courses[of.advice.chosen].steps.clone();
    (advised(&shipped) != advised(solved)).then(|| {
        let course = &shipped.courses[shipped.advice.chosen];
        words::otherwise_as_shipped(&sentences::course_name(course), case.taught.pieces)
    })
}

/// What would change the answer: each main input is moved alone until the advice flips.
#[must_use]
pub fn what_would_change(case: &Case) -> Vec<ChangeReport> {
    let solved = Solved::of(case, SEARCH_LOG2);
    let explained = solved.explained(0.0);
    let now = solved.now();
    let advised = |moved_by: &WhatIf| {
        let moved = solved.with_inputs(moved_by);
        moved.courses[moved.advice.chosen].clone()
    };
    let chosen = &solved.courses[solved.advice.chosen];
    change::changes(&now, chosen, &advised, &|c| explained.change_words(c))
}
