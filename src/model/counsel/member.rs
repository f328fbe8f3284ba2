//! The pieces of a record of several.
//!
//! Invariants: a record of one piece has no members; every draw of the members is on the sample of the
//! whole, but whether work goes wrong on one says nothing of another.

use std::rc::Rc;

use super::draws::Draws;
use super::sample::Sample;
use super::what_if::WhatIf;
use crate::identity::Posterior;
use crate::ledger::Ledger;
use crate::record::Case;
use crate::treatment::Faults;
use crate::value::{MOST_UNITS, Unit};

/// One piece, or several alike ones, with everything drawn for it.
#[derive(Clone)]
pub(super) struct Member {
    /// The numbers of its pieces, from 1 up.
    pub(super) numbers: Vec<u16>,
    /// Their share of the value of the whole, together.
    pub(super) share: f64,
    /// The record of one of them, as if it were alone.
    pub(super) case: Case,
    pub(super) faults: Faults,
    pub(super) draws: Rc<Draws>,
}

impl Member {
    /// The members of a case; none where it is of one piece.
    pub(super) fn all(
        case: &Case,
        ledger: &Ledger,
        posterior: &Posterior,
        early: bool,
        sample: &Sample,
        moved: &WhatIf,
    ) -> Vec<Self> {
        let mut members: Vec<Self> = Vec::new();
        if !case.pieces.are_several() {
            return members;
        }
        let few = case.pieces.each.len() <= MOST_UNITS;
        for (no, each) in (1..).zip(&case.pieces.each) {
            let one = case.of_piece(no);
            let same = |m: &&mut Self| m.case.is_like(&one);
            // Of a few pieces each is its own, so that luck with one is not luck with all.
            let known = members.iter_mut().find(same).filter(|_| !few);
            match known {
                Some(member) => member.add(no, each.share),
                None => members.push(Self {
                    numbers: vec![no],
                    share: each.share,
                    faults: Faults::of(&one, ledger),
                    draws: Rc::new(Draws::new(&one, ledger, posterior, early, sample, moved)),
                    case: one,
                }),
            }
        }
        members
    }

    fn add(&mut self, no: u16, share: f64) {
        self.numbers.push(no);
        self.share += share;
    }

    /// The same members of a case that differs in what is wanted.
    pub(super) fn wanted_as(members: &[Self], case: &Case) -> Vec<Self> {
        let mut members = members.to_vec();
        for member in &mut members {
            member.case.aim = case.aim.clone();
            member.case.proposal = case.proposal.clone();
        }
        members
    }

    /// As a unit of a lot, with what condition leaves of it.
    pub(super) fn unit(&self, multiplier: f64) -> Unit {
        Unit {
            share: self.share,
            count: self.numbers.len(),
            multiplier,
        }
    }
}
