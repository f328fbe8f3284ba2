//! What to look at next: how much each look not yet taken is expected to tell.

use super::posterior::{
    Edge, Evidence, Ladder, Posterior, Rows, counted, is_replaced, log_prior, posterior, terms,
};
use crate::ledger::{FigureId, FindingFact, Ledger, findings};
use crate::terms::Seen;
use crate::terms::{Cluster, Kind};

/// What a look would be expected to tell.
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
    /// Expected fall of the entropy over kinds, bits; never below 0.
    pub bits: f64,
}

/// Every look not answered yet, by an answer or a reading, the most telling first.
///
/// The chance of seeing a finding is the mixture of its likelihoods over the posterior, and the
/// expected gain is the expected fall of the entropy over kinds. Where an absence says nothing (marks,
/// styles, readings of instruments) the posterior stays as it is.
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
    let base = terms(&base, evidence.readings, &rows);
    let out = [
        ledger.value(FigureId::IDENTITY_OUT_FINDING),
        ledger.value(FigureId::IDENTITY_OUT_MARK),
    ];
    let with = |f: &'static FindingFact, seen: Seen| {
        if !super::posterior::counts(f, seen) {
            return *now;
        }
        let mut more = base.clone();
        more.push(rows.answer(f, seen));
        posterior(&prior, &more)
    };
    let mut gains: Vec<InformationGain> = findings()
        .iter()
        .filter(|f| {
            !evidence.answers.iter().any(|a| a.id == f.id) && !is_replaced(f.id, evidence.readings)
        })
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
    gains.sort_by(|a, b| {
        b.bits
            .total_cmp(&a.bits)
            .then(a.finding.id.cmp(b.finding.id))
    });
    gains
}
