//! Several pieces in one record: how many, what they are to each other, and which differ.

use super::{Case, Part, Test};
use crate::terms::{LotRule, PartName, Relation, SellAs, TestKind};

/// Most pieces one record can be of.
pub const MOST_PIECES: u16 = 200;

/// How many pieces a record is of.
#[derive(Clone, Debug, PartialEq)]
pub struct Pieces {
    /// How many: 1 to [`MOST_PIECES`].
    pub count: u16,
    /// What they are to each other. One piece is single or one left of a pair; more are neither.
    pub relation: Relation,
    /// Whether they are to be sold as one lot; `None` if not recorded.
    pub sell: Option<SellAs>,
    /// Each piece, in the order of their numbers from 1 up; empty for one piece.
    pub each: Vec<Each>,
}

/// One of several pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Each {
    /// Its share of what all are worth when whole, 0 to 1; the shares of all sum to 1.
    pub share: f64,
    /// The photographs that show it, as `<part id>/<number>` or `piece/<number>`.
    pub photos: Vec<String>,
}

impl Default for Pieces {
    fn default() -> Self {
        Self {
            count: 1,
            relation: Relation::Single,
            sell: None,
            each: Vec::new(),
        }
    }
}

impl Pieces {
    /// The numbers of the pieces that a photograph shows; none where it was not said.
    #[must_use]
    pub fn shown_on(&self, key: &str) -> Vec<u16> {
        let each = (1..).zip(&self.each);
        let shown = each.filter(|(_, one)| one.photos.iter().any(|photo| photo == key));
        shown.map(|(no, _)| no).collect()
    }

    /// Whether there is more than one.
    #[must_use]
    pub fn are_several(&self) -> bool {
        self.count > 1
    }
}

/// The lot a piece was bought in, at one price for all of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lot {
    /// Id of the lot, as written; empty if the piece was bought by itself.
    pub id: String,
    /// What was paid for the whole lot, in the case's currency.
    pub price: Option<f64>,
    /// How that is shared out.
    pub rule: Option<LotRule>,
    /// The person's own share for this record: its weight beside the shares of the others.
    pub share: Option<f64>,
}

impl Case {
    /// The record of one of several pieces by its number from 1 up, as if it were alone: its own parts, and
    /// the flaws that were ticked for all or are on one of its parts.
    #[must_use]
    pub fn of_piece(&self, no: u16) -> Self {
        let mut one = self.clone();
        one.pieces = Pieces::default();
        let unlike = |name: PartName| self.parts_named(name).any(|part| !part.on.is_empty());
        // A pass is of the pieces it names; where it names none, nobody says which of several unlike ones it
        // cleared. A find is heard of every piece.
        one.tests.retain(|test| match test.passed {
            Some(true) => test.is_of(no, !test.part.is_some_and(unlike)),
            Some(false) => test.of.is_empty() || !self.passed_later(test),
            None => true,
        });
        for pass in one.tests.iter_mut().filter(|t| t.passed == Some(true)) {
            pass.of.clear();
        }
        one.parts.retain(|part| part.is_on(no));
        for part in &mut one.parts {
            part.on.clear();
        }
        one.flaws.retain(|flaw| {
            self.flaw_parts(flaw).is_empty() || one.parts.iter().any(|part| part.has_flaw(flaw))
        });
        one
    }

    /// Whether two pieces of one record are in the same state, by all that is recorded of them.
    #[must_use]
    pub fn is_like(&self, other: &Self) -> bool {
        self.parts == other.parts && self.flaws == other.flaws && self.tests == other.tests
    }

    /// Whether tests that count were made of every one of these pieces, of all where none is named. A test that names no
    /// piece is of none of those that differ from others.
    #[must_use]
    pub fn tested_each(&self, on: &[u16], counts: &dyn Fn(&Test) -> bool) -> bool {
        let is_tested = |no: u16| {
            let mut tests = self.tests.iter();
            tests.any(|test| counts(test) && test.is_of(no, on.is_empty()))
        };
        if on.is_empty() {
            (1..=self.pieces.count).all(is_tested)
        } else {
            on.iter().all(|no| is_tested(*no))
        }
    }

    /// Whether the same part of the same pieces passed a release test on a later day than this failure.
    #[must_use]
    pub fn passed_later(&self, failed: &Test) -> bool {
        self.tested_each(&failed.of, &|test| {
            let later = matches!((test.on, failed.on), (Some(a), Some(b)) if a > b);
            test.kind == TestKind::Release
                && test.part == failed.part
                && test.passed == Some(true)
                && later
        })
    }

    /// The parts with this name: one, or as many as there are states it is in on several pieces.
    pub fn parts_named(&self, name: PartName) -> impl Iterator<Item = &Part> {
        self.parts.iter().filter(move |part| part.name == name)
    }
}

impl Test {
    /// Whether it was made of this piece. One that names no piece speaks of all of them while they are alike.
    fn is_of(&self, no: u16, alike: bool) -> bool {
        if self.of.is_empty() {
            alike
        } else {
            self.of.contains(&no)
        }
    }
}

impl Part {
    /// Whether it is a part of this piece.
    #[must_use]
    pub fn is_on(&self, no: u16) -> bool {
        self.on.is_empty() || self.on.contains(&no)
    }

    /// This where it says something, else what the other says. A fault placed on the other counts here too where its
    /// places are taken over.
    #[must_use]
    pub(super) fn over(self, below: &Self) -> Self {
        let mut part = Self {
            name: self.name,
            on: self.on,
            bleed: self.bleed.or(below.bleed),
            counted_fields: match self.bleed {
                Some(_) => self.counted_fields,
                None => below.counted_fields,
            },
            tarnish: self.tarnish.or(below.tarnish),
            joint: self.joint.or(below.joint),
            lead: self.lead.or(below.lead),
            dents: self.dents.or(below.dents),
            interior: self.interior.or(below.interior),
            corrosion: self.corrosion.or(below.corrosion),
            fill: self.fill.or(below.fill),
            joint_distance_mm: self.joint_distance_mm.or(below.joint_distance_mm),
            readings: if self.readings.is_empty() {
                below.readings.clone()
            } else {
                self.readings
            },
            split: self.split.or(below.split),
            loss: self.loss.or(below.loss),
            mount: self.mount.or(below.mount),
            lacquer: self.lacquer.or(below.lacquer),
            replaced: self.replaced.or(below.replaced),
            engraving: self.engraving.or(below.engraving),
            repair: self.repair.or(below.repair),
            fill_state: self.fill_state.or(below.fill_state),
            hollow: self.hollow.or(below.hollow),
            liner: self.liner.or(below.liner),
            material: self.material.or(below.material),
            gilding: self.gilding.or(below.gilding),
            wax: self.wax.or(below.wax),
            other_joint: self.other_joint.or(below.other_joint),
            spots: if self.spots.is_empty() {
                below.spots.clone()
            } else {
                self.spots
            },
            photos: if self.photos.is_empty() {
                below.photos.clone()
            } else {
                self.photos
            },
        };
        part.count_spots();
        part
    }
}
