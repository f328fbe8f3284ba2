//! A course: one choice in each block, with or without a test for lead first.

use crate::ledger::Ground;
use crate::terms::ShortSort;
use std::rc::Rc;

use super::choice::{BlockChoice, Rulings, Tested, in_order, needed};

use super::work_block::WorkBlock;
use crate::terms::Reversibility;
use crate::treatment::first;
use crate::treatment::{LeadStatus, Outcome, Treatment, Verdict};

/// A plan in the order in which it would be done. With a test for lead it is a policy: the later steps depend
/// on the result.
#[derive(Clone, Debug)]
pub(super) struct Course {
    pub(super) steps: Vec<Treatment>,
    /// What is actually done if no lead is found, and if lead is found.
    pub(super) if_clear: Vec<Treatment>,
    pub(super) if_lead: Vec<Treatment>,
    /// Why it cannot be advised; empty when it can.
    pub(super) barred: Vec<Verdict>,
    /// Its conditions.
    pub(super) conditions: Vec<Verdict>,
    /// One for each of [`WorkBlock::ALL`], in that order.
    pub(super) choices: Vec<Rc<BlockChoice>>,
    pub(super) tested: Tested,
}

impl Course {
    /// The course of these choices, one for each of [`WorkBlock::ALL`].
    pub(super) fn of(choices: Vec<Rc<BlockChoice>>, tested: Tested, rulings: &Rulings) -> Self {
        let all: Vec<Treatment> = choices.iter().flat_map(|c| c.steps.clone()).collect();
        let first = match tested {
            Tested::First => vec![Treatment::TestLead],
            Tested::AsRecorded => Vec::new(),
        };
        let side = |side: usize| -> Vec<Treatment> {
            let done = choices.iter().flat_map(|c| c.sides[side].clone());
            in_order(&first.iter().copied().chain(done).collect::<Vec<_>>())
        };
        let mut steps = in_order(&first.iter().copied().chain(all).collect::<Vec<_>>());
        if steps.is_empty() {
            steps.push(Treatment::Leave);
        }
        let mut course = Self {
            steps,
            if_clear: side(0),
            if_lead: side(1),
            barred: Vec::new(),
            conditions: Vec::new(),
            choices,
            tested,
        };
        for choice in course.choices.clone() {
            for verdict in choice.barred.iter().chain(&choice.conditions) {
                course.note(verdict.clone());
            }
        }
        for verdict in course.unmet(rulings) {
            course.note(verdict);
        }
        course
    }

    /// The needs of steps that no other step meets, for either result of a test.
    fn unmet(&self, rulings: &Rulings) -> Vec<Verdict> {
        let given = rulings.given();
        let lacking = (0..2).fold(0, |lacking, side| {
            let (mut needs, mut serves) = (0, given);
            for choice in &self.choices {
                needs |= choice.needs[side];
                serves |= choice.serves[side];
            }
            lacking | (needs & !serves)
        });
        let each = [
            (needed::PUSHED_SPLIT, first::PUSHED_SPLIT),
            (needed::PLATED_SPLIT, first::PLATED_SPLIT),
            (needed::JOINTS, first::OPEN_JOINT),
            (needed::LEAK, first::LACQUERED_TROUBLE),
            (needed::LEAD_OUT, first::LEAD_LEFT),
            (needed::PLATED, first::WORN_SKIN),
        ];
        each.into_iter()
            .filter(|(bit, _)| lacking & bit != 0)
            .map(|(_, (reason, lifted_by))| Verdict {
                ground: Ground::Need,
                outcome: Outcome::Barred,
                reason: reason.to_owned(),
                lifted_by: lifted_by.to_owned(),
            })
            .collect()
    }

    fn note(&mut self, verdict: Verdict) {
        let list = if verdict.outcome.can_be_advised() {
            &mut self.conditions
        } else {
            &mut self.barred
        };
        if !list.contains(&verdict) {
            list.push(verdict);
            list.order_by_key(|verdict| std::cmp::Reverse(verdict.outcome));
        }
    }

    pub(super) fn can_be_advised(&self) -> bool {
        self.barred.is_empty()
    }

    /// The steps that distinguish it from others for the question of which course is best. Keeping, washing
    /// and removing lacquer before something else do not count.
    pub(super) fn group(&self) -> Vec<Treatment> {
        use Treatment as T;
        let over = [T::Clean, T::Foam, T::Lacquer, T::Replate, T::Overplate];
        let stripped = over.iter().any(|t| self.steps.contains(t));
        self.steps
            .iter()
            .copied()
            .filter(|t| !matches!(t, T::Leave | T::Keeping | T::Wash))
            .filter(|t| *t != T::LacquerOff || !stripped)
            .collect()
    }

    /// Whether anything is done to the piece itself.
    pub(super) fn touches(&self) -> bool {
        self.steps.iter().any(|t| {
            !matches!(
                t,
                Treatment::Leave | Treatment::Keeping | Treatment::TestLead
            )
        })
    }

    /// Whether it does the same as another course.
    pub(super) fn same_as(&self, other: &Self) -> bool {
        self.tested == other.tested
            && self.if_clear == other.if_clear
            && self.if_lead == other.if_lead
            && self.steps == other.steps
    }

    /// What is done on each side of the test, with the status of lead on that side; without a test, the same
    /// side twice.
    pub(super) fn sides(&self, lead: LeadStatus) -> [(&[Treatment], LeadStatus); 2] {
        match self.tested {
            Tested::AsRecorded => [(&self.if_clear, lead), (&self.if_lead, lead)],
            Tested::First => [
                (&self.if_clear, LeadStatus::Absent),
                (&self.if_lead, LeadStatus::Present),
            ],
        }
    }

    /// The course with another choice in one block.
    pub(super) fn with(&self, choice: &Rc<BlockChoice>, rulings: &Rulings) -> Self {
        let mut choices = self.choices.clone();
        for (block, slot) in WorkBlock::ALL.iter().zip(&mut choices) {
            if *block == choice.block {
                *slot = Rc::clone(choice);
            }
        }
        Self::of(choices, self.tested, rulings)
    }

    /// Worst reversibility of its steps.
    pub(super) fn reversibility(&self) -> Reversibility {
        self.steps
            .iter()
            .map(|t| t.reversibility())
            .min()
            .unwrap_or(Reversibility::V4)
    }
}
