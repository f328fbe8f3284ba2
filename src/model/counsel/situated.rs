//! The situation the rules are asked in, for pages that ask more of them than the answer does.

use super::what_if::WhatIf;
use super::{ANSWER_LOG2, Solved};
use crate::record::Case;
use crate::record::ledger_of;
use crate::treatment::Situation;

/// Shows `look` the situation just as the answer has it.
pub fn situated<R>(case: &Case, look: impl FnOnce(&Situation<'_>) -> R) -> R {
    let ledger = ledger_of(case);
    let solved = Solved::new(case, &ledger, &WhatIf::NOTHING, ANSWER_LOG2);
    look(&solved.situation)
}
