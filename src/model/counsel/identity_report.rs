//! What a piece is and what to look at next, as the plain data of a report.

use super::Solved;
use super::advise::worth_of;
use crate::identity::{
    ASKED_FIRST, ByKind, Carried, Cluster, Edge, Evidence, Identified, Kind, Ladder, Posterior,
    Surety, Turn, open_in_words, parting,
};
use crate::ledger::{FigureId, FindingFact, FindingId, LOOK_EFFORT, Requires};
use crate::record::Instrument;
use crate::report::{AfterLook, IdentityReport, NextLook, PartingReport};
use crate::terms::ShortSort;

/// The most looks offered.
const LOOKS: usize = 12;

impl Solved {
    pub(super) fn identity(&self, by_kind: &[ByKind]) -> IdentityReport {
        let found = Identified {
            case: &self.case,
            ledger: &self.ledger,
            readings: &self.looked.readings,
            interval: &self.looked.interval,
            dating: &self.dating,
        };
        let parted = parting(
            &Evidence::of(&self.case, &self.looked.readings),
            &self.case.instruments,
            &self.ledger,
        );
        // Before anything has been looked at, no family is named, not even as one of two.
        let open =
            open_in_words(&parted, &self.looked.interval.base).filter(|_| !found.nothing_found());
        IdentityReport {
            open,
            parting: parted
                .looks
                .iter()
                .map(|look| PartingReport {
                    finding: look.finding.id,
                    title: look.finding.title.into(),
                    how: look.finding.how.into(),
                    if_seen: after_look(&look.if_seen, &self.looked.interval.base),
                    if_absent: after_look(&look.if_absent, &self.looked.interval.base),
                })
                .collect(),
            next_looks: self.next_looks(by_kind),
            ..found.report()
        }
    }

    pub(super) fn next_looks(&self, by_kind: &[ByKind]) -> Vec<NextLook> {
        let out = [FigureId::IDENTITY_OUT_FINDING, FigureId::IDENTITY_OUT_MARK]
            .map(|id| self.ledger.value(id));
        let ladder = Ladder::of(&self.ledger, Edge::Base);
        let mut looks: Vec<NextLook> = self
            .next
            .iter()
            .map(|g| {
                let f = g.finding;
                let seen = Kind::ALL.map(|k| {
                    f.letter(k)
                        .map_or(out[usize::from(f.cluster == Cluster::Mark)], |l| {
                            ladder.step(l)
                        })
                });
                let absent = seen.map(|p| 1.0 - p);
                let effort = self
                    .ledger
                    .value(LOOK_EFFORT[effort_of(f, &self.case.instruments)]);
                let worth = self.money_of(worth_of(&[seen, absent], &self.posterior, by_kind));
                // Differences caused by rounding have no value.
                let worth = if worth < 0.5 { 0.0 } else { worth };
                NextLook {
                    finding: f.id,
                    worth: worth - effort,
                    bits: g.bits,
                    title: f.title.into(),
                    how: f.how.into(),
                    needs: f.needs.into(),
                    if_seen: after_look(&g.if_seen, &self.posterior),
                    if_absent: after_look(&g.if_absent, &self.posterior),
                }
            })
            .collect();
        looks.order_by(|a, b| {
            b.worth
                .total_cmp(&a.worth)
                .then(b.bits.total_cmp(&a.bits))
                .then_with(|| a.finding.cmp(&b.finding))
        });
        // A look that is almost uninformative and has no value is not suggested.
        let least = self.ledger.value(FigureId::LOOK_LEAST_BITS);
        looks.retain(|l| l.worth > 0.0 || l.bits >= least);
        // Nor is a look that leaves the same family in front whatever it shows, and changes no choice.
        let settled = self.ledger.value(FigureId::COUNSEL_FAMILY);
        // Neither answer may leave the family named, and how firmly, as it is now.
        let (family, p) = self.posterior.top_family();
        let named = |p: f64| Surety::of(p, Carried::ByMore, &self.ledger);
        let moves = |after: &AfterLook| named(after.p) != named(p) || after.family != family;
        looks.retain(|l| {
            let same = l.if_seen.family == l.if_absent.family;
            let settles = l.if_seen.p.min(l.if_absent.p) < settled;
            l.worth > 0.0 || !same || (settles && (moves(&l.if_seen) || moves(&l.if_absent)))
        });
        looks.order_by_key(|l| Turn::of(l.finding.fact(), &self.case.instruments));
        if self.case.findings.is_empty() && self.looked.readings.is_empty() {
            let place = |l: &NextLook| ASKED_FIRST.iter().position(|id| l.finding == *id);
            looks.order_by_key(|l| place(l).unwrap_or(ASKED_FIRST.len()));
        }
        // A close-plater's mark calls for the magnet, because the mark alone is outweighed by commoner kinds.
        if self.case.has_seen(FindingId::M12)
            && let Some(magnet) = looks.iter().position(|l| l.finding == FindingId::P01)
        {
            looks[..=magnet].rotate_right(1);
        }
        looks.truncate(LOOKS);
        looks
    }
}

/// How much effort a look asks, 0 to 3. With the instrument at hand, a reading asks no more than looking;
/// weighing in water still wets the piece.
fn effort_of(look: &FindingFact, at_hand: &[Instrument]) -> usize {
    match look.requires {
        Requires::Instrument(i) if at_hand.contains(&i) && i != Instrument::Scales => 0,
        _ => usize::from(look.invasive.min(3)),
    }
}

/// The likeliest family after a look.
fn after_look(posterior: &Posterior, now: &Posterior) -> AfterLook {
    let (family, p) = posterior.top_family();
    let moved = |k: &Kind| (posterior.of(*k) - now.of(*k)).abs() > 1e-9;
    AfterLook {
        family,
        name: family.name().into(),
        p,
        tells: Kind::ALL.iter().any(moved),
    }
}
