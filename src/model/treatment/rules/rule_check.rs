//! One query to the rule book: a treatment in a situation, and the verdicts so far.

use super::first::First;
use crate::ledger::FigureId;
use crate::ledger::Ground;
use crate::record::{Circumstances, Doer, Goal};
use crate::terms::Outcome;
use crate::terms::ShortSort;
use crate::terms::Treatment;
use crate::treatment::situation::Situation;
use crate::treatment::verdict::Verdict;

pub(super) struct RuleCheck<'a, 'b> {
    pub(super) treatment: Treatment,
    pub(super) s: &'a Situation<'b>,
    found: Vec<Verdict>,
}

impl<'a, 'b> RuleCheck<'a, 'b> {
    pub(super) fn new(treatment: Treatment, s: &'a Situation<'b>) -> Self {
        Self {
            treatment,
            s,
            found: Vec::new(),
        }
    }

    /// The verdicts, the most serious first; those of equal severity keep the order in which they were added.
    pub(super) fn verdicts(mut self) -> Vec<Verdict> {
        self.found
            .order_by_key(|verdict| std::cmp::Reverse(verdict.outcome));
        self.found
    }

    /// Adds a verdict, unless another rule has already added the same one.
    pub(super) fn add(
        &mut self,
        ground: impl Into<Ground>,
        outcome: Outcome,
        reason: &str,
        lifted_by: &str,
    ) {
        let verdict = Verdict {
            ground: ground.into(),
            outcome,
            reason: reason.to_owned(),
            lifted_by: lifted_by.to_owned(),
        };
        if !self.found.contains(&verdict) {
            self.found.push(verdict);
        }
    }

    pub(super) fn bar(&mut self, ground: impl Into<Ground>, reason: &str, lifted_by: &str) {
        self.add(ground, Outcome::Barred, reason, lifted_by);
    }

    /// Bars until something else is done.
    pub(super) fn bar_first(&mut self, (reason, lifted_by): First) {
        self.bar(Ground::Need, reason, lifted_by);
    }

    pub(super) fn check_first(&mut self, ground: impl Into<Ground>, reason: &str, lifted_by: &str) {
        self.add(ground, Outcome::NeedsCheck, reason, lifted_by);
    }

    pub(super) fn condition(&mut self, ground: impl Into<Ground>, reason: &str, lifted_by: &str) {
        self.add(ground, Outcome::Conditional, reason, lifted_by);
    }

    /// A rule that applies to some kinds, described by `what`, with probability `p`. At or above
    /// `guard.kind_barred` it bars; at or above `guard.kind_check` it asks for the look that would settle the
    /// kind.
    pub(super) fn on_kinds(&mut self, ground: impl Into<Ground>, p: f64, what: &str, reason: &str) {
        if p >= self.figure(FigureId::GUARD_KIND_BARRED) {
            let lifted_by =
                format!("Nothing lifts this unless a closer look shows that it is not {what}.");
            self.bar(ground, reason, &lifted_by);
        } else if p >= self.figure(FigureId::GUARD_KIND_CHECK) {
            let next = format!("Find out what it is, starting with: {}.", self.s.next_look);
            self.check_first(ground, &format!("It may be {what}. {reason}"), &next);
        }
    }

    /// Whether kinds with probability `p` are likely enough to ask about.
    pub(super) fn may_be(&self, p: f64) -> bool {
        p >= self.figure(FigureId::GUARD_KIND_CHECK)
    }

    pub(super) fn figure(&self, id: FigureId) -> f64 {
        self.s.ledger.value(id)
    }

    pub(super) fn circumstances(&self) -> &'a Circumstances {
        &self.s.case.circumstances
    }

    pub(super) fn done_by_owner(&self) -> bool {
        self.s.case.aim.who_does(self.treatment) == Some(Doer::Owner)
    }

    pub(super) fn child_at_home(&self) -> bool {
        self.s.case.aim.household_child_or_pregnant
    }

    /// Whether the piece is used for food, or kept to be used.
    pub(super) fn in_use(&self) -> bool {
        self.s.case.aim.food || self.s.case.aim.goal == Some(Goal::KeepUse)
    }
}
