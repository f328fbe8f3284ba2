//! What to look at next: how informative each look not yet taken is expected to be, and in which order to ask
//! for looks.

use super::contradiction::exclude_each_other;
use super::posterior::{
    Basis, Edge, Evidence, Ladder, Posterior, Rows, counted, is_replaced, log_prior, terms,
};
use crate::ledger::{FigureId, FindingFact, FindingId, Ledger, findings};
use crate::terms::ShortSort;
use crate::terms::{Cluster, Kind, Seen};

/// The expected information from a look.
#[derive(Clone, Debug)]
pub struct InformationGain {
    /// The finding.
    pub finding: &'static FindingFact,
    /// Chance of seeing it.
    pub p_seen: f64,
    /// Posterior if it is seen.
    pub if_seen: Posterior,
    /// Posterior if it is looked for and not there.
    pub if_absent: Posterior,
    /// Expected decrease of the entropy over kinds, in bits; never below 0.
    pub bits: f64,
}

/// The looks asked for before anything has been answered: letters underneath, the colour of the metal that
/// shows, a magnet, a seam, an edge. Each is in a different place, and anyone can take it.
pub const ASKED_FIRST: [FindingId; 5] = [
    FindingId::M01,
    FindingId::S03,
    FindingId::P01,
    FindingId::C01,
    FindingId::C06,
];

/// Whether a look is still open: not answered, not replaced by a reading, and not ruled out by what was seen.
pub(super) fn is_open(look: &FindingFact, evidence: &Evidence) -> bool {
    !is_replaced(look.id, evidence.readings)
        && !evidence
            .answers
            .iter()
            .any(|a| a.id == look.id || (a.seen == Seen::Yes && exclude_each_other(a.id, look.id)))
}

/// Every look that is still open, the most informative first.
///
/// The chance of seeing a finding is the mixture of its likelihoods over the posterior; the expected gain is
/// the expected decrease of the entropy over kinds. Where an absence is no evidence (marks, styles,
/// instrument readings), the posterior is unchanged.
#[must_use]
pub fn information_gain(
    evidence: &Evidence,
    now: &Posterior,
    ledger: &Ledger,
) -> Vec<InformationGain> {
    let ladder = Ladder::of(ledger, Edge::Base);
    let rows = Rows::new(ledger, &ladder);
    let prior = log_prior(ledger, evidence.came_from);
    let base = counted(evidence);
    let base = Basis::new(prior, terms(&base, evidence.readings, &rows));
    let out = [
        ledger.value(FigureId::IDENTITY_OUT_FINDING),
        ledger.value(FigureId::IDENTITY_OUT_MARK),
    ];
    let with = |f: &'static FindingFact, seen: Seen| {
        if !super::posterior::counts(f, seen) {
            return *now;
        }
        base.with(&[&rows.answer(f, seen)])
    };
    let mut gains: Vec<InformationGain> = findings()
        .iter()
        .filter(|f| is_open(f, evidence))
        .map(|f| {
            let is_mark = usize::from(f.cluster == Cluster::Mark);
            let p_seen: f64 = Kind::ALL
                .iter()
                .map(|k| now.of(*k) * f.letter(*k).map_or(out[is_mark], |l| ladder.step(l)))
                .sum();
            let (if_seen, if_absent) = (with(f, Seen::Yes), with(f, Seen::No));
            let after = p_seen * if_seen.entropy_bits() + (1.0 - p_seen) * if_absent.entropy_bits();
            InformationGain {
                finding: f,
                p_seen,
                if_seen,
                if_absent,
                bits: (now.entropy_bits() - after).max(0.0),
            }
        })
        .collect();
    gains.order_by(|a, b| {
        b.bits
            .total_cmp(&a.bits)
            .then(a.finding.id.cmp(&b.finding.id))
    });
    gains
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identity::Turn;
    use crate::terms::Instrument;

    #[test]
    fn looks_that_need_comparison_pieces_papers_or_books_come_later() {
        let turn = |id: FindingId, at_hand: &[Instrument]| Turn::of(id.fact(), at_hand);
        for id in [
            FindingId::S01,
            FindingId::S02,
            FindingId::S16,
            FindingId::S18,
            FindingId::S19,
            FindingId::M25,
            FindingId::F02,
            FindingId::D01,
        ] {
            assert_eq!(turn(id, Instrument::ALL), Turn::Later, "{id}");
        }
        for id in [FindingId::P02, FindingId::P06, FindingId::P11] {
            assert_eq!(turn(id, &[]), Turn::Last, "{id}");
            assert_eq!(turn(id, Instrument::ALL), Turn::First, "{id}");
        }
        for id in ASKED_FIRST {
            assert_eq!(turn(id, &[]), Turn::First, "{id}");
        }
    }
}
