//! Where a treatment stands for a piece, in one word. Invariant: every screen says the same word for the same
//! state, because all of them take it from here.

use super::wording::standing as words;
use leavewell_model::report::{OptionOutcome, OptionReport, Report};

/// Where a treatment stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// A step of the course that is advised.
    Advised,
    /// No rule keeps it out, though conditions may go with it.
    Possible,
    /// A check comes first.
    NeedsCheck,
    /// A conservator's written opinion comes first.
    NeedsOpinion,
    /// A rule keeps it out.
    Barred,
    /// It has nothing to do on this piece.
    NotNeeded,
    /// It is never for pieces of this sort.
    Never,
}

impl Standing {
    /// Where this option of a report stands.
    #[must_use]
    pub fn of(option: &OptionReport, report: &Report) -> Self {
        match option.outcome {
            _ if report.counsel.steps.contains(&option.treatment) => Self::Advised,
            OptionOutcome::NeedsCheck => Self::NeedsCheck,
            OptionOutcome::NeedsOpinion => Self::NeedsOpinion,
            OptionOutcome::Barred => Self::Barred,
            OptionOutcome::NotNeeded => Self::NotNeeded,
            OptionOutcome::Never => Self::Never,
            OptionOutcome::Allowed | OptionOutcome::Conditional => Self::Possible,
        }
    }

    /// The word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Advised => words::ADVISED,
            Self::Possible => words::POSSIBLE,
            Self::NeedsCheck => words::NEEDS_CHECK,
            Self::NeedsOpinion => words::NEEDS_OPINION,
            Self::Barred => words::BARRED,
            Self::NotNeeded => words::NOT_NEEDED,
            Self::Never => words::NEVER,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Subject;

    #[test]
    fn every_state_of_a_report_has_a_word_of_its_own() {
        let text = include_str!("../../tests/cases/six_faults_teapot.json");
        let subject = Subject::parse(text).unwrap();
        let report = subject.report();
        for option in &report.options {
            let standing = Standing::of(option, report);
            let advised = report.counsel.steps.contains(&option.treatment);
            assert_eq!(standing == Standing::Advised, advised, "{}", option.name);
            if !advised && option.outcome == OptionOutcome::Barred {
                assert_eq!(standing.word(), words::BARRED);
            }
        }
    }
}
