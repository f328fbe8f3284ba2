//! From answered findings to the probability of each kind.
//!
//! Bayes in log space with the ladder's likelihoods. Within a cluster the log-likelihoods are
//! tempered, because findings there share a cause; between clusters they multiply. "Not sure" and
//! "not looked" say nothing. Invariants: the order of answers never matters; a finding that every
//! kind explains equally never moves anything; the same finding twice counts once.

use super::measure::Reading;
use crate::ledger::{FindingFact, Ledger, finding};
use crate::record::{Answer, Seen};
use crate::small::sort_short;
use crate::terms::{Cluster, Family, Kind, Letter};

/// The likelihoods behind the letters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ladder {
    steps: [f64; 5],
}

impl Ladder {
    /// One of the three ladders of the ledger: `base`, or `blunt` and `sharp`, which tell what the
    /// answer would be if findings told less or more than we think.
    #[must_use]
    pub fn of(ledger: &Ledger, name: &str) -> Self {
        Self {
            steps: Letter::ALL.map(|l| {
                ledger
                    .value(&format!("identity.ladder.{name}.{}", l.code()))
                    .clamp(1e-6, 1.0 - 1e-6)
            }),
        }
    }

    /// All three, the base one first.
    #[must_use]
    pub fn all(ledger: &Ledger) -> [Self; 3] {
        ["base", "blunt", "sharp"].map(|name| Self::of(ledger, name))
    }

    /// Likelihood of a letter.
    pub(super) fn step(&self, letter: Letter) -> f64 {
        self.steps[letter as usize]
    }
}

/// Whether the guard on copper wear applies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CopperRule {
    /// The ladder as it stands. For checks against published letters only.
    Bare,
    /// Copper showing through, by itself, speaks for electroplate on copper as loudly as for fused
    /// plate, until a finding of construction, edge, mount or shield is seen.
    Guarded,
}

/// Probability of each kind, in the order of [`Kind::ALL`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Posterior {
    p: [f64; 12],
}

impl Posterior {
    /// Probability of a kind.
    #[must_use]
    pub fn of(&self, kind: Kind) -> f64 {
        self.p[kind.index()]
    }

    /// Probability of a set of kinds.
    #[must_use]
    pub fn of_any(&self, kinds: &[Kind]) -> f64 {
        kinds.iter().map(|k| self.of(*k)).sum()
    }

    /// Probability of a family.
    #[must_use]
    pub fn family(&self, family: Family) -> f64 {
        Kind::ALL
            .into_iter()
            .filter(|k| k.family() == family)
            .map(|k| self.of(k))
            .sum()
    }

    /// Probability that it is fused plate with its original surface.
    #[must_use]
    pub fn original_fused(&self) -> f64 {
        self.family(Family::Fused)
    }

    /// The most probable family and its probability; the first of [`Family::ALL`] on a tie.
    #[must_use]
    pub fn top_family(&self) -> (Family, f64) {
        let mut top = (Family::Fused, self.family(Family::Fused));
        for family in Family::ALL {
            let p = self.family(family);
            if p > top.1 {
                top = (family, p);
            }
        }
        top
    }

    /// The most probable kind.
    #[must_use]
    pub fn top_kind(&self) -> Kind {
        Kind::ALL.into_iter().fold(
            Kind::Sil,
            |top, k| if self.of(k) > self.of(top) { k } else { top },
        )
    }

    /// Shannon entropy in bits.
    #[must_use]
    pub fn entropy_bits(&self) -> f64 {
        -self
            .p
            .iter()
            .filter(|p| **p > 0.0)
            .map(|p| p * libm::log2(*p))
            .sum::<f64>()
    }

    /// The same posterior with the odds of one set of kinds multiplied by `factor`, the shares
    /// inside and outside the set kept. `factor` > 0.
    #[must_use]
    pub fn with_odds_scaled(&self, kinds: &[Kind], factor: f64) -> Self {
        let mut p = self.p;
        for k in kinds {
            p[k.index()] *= factor;
        }
        let sum: f64 = p.iter().sum();
        Self {
            p: p.map(|x| x / sum),
        }
    }
}

/// The posterior for these answers.
///
/// Log posterior of a kind = log prior + sum over clusters of [sum ln(likelihood of seen)/sqrt(n
/// seen) + sum ln(1 - det * likelihood)/sqrt(n absent)], normalised. `det` is how surely a thing
/// that is there would have been noticed. Kinds outside the ladder have a flat likelihood.
#[must_use]
pub fn posterior(
    answers: &[Answer],
    ledger: &Ledger,
    ladder: &Ladder,
    rule: CopperRule,
) -> Posterior {
    posterior_of(&counted(answers, &[]), &[], ledger, ladder, rule)
}

/// One posterior with its least and greatest value over the three ladders.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// On the base ladder.
    pub base: Posterior,
    others: [Posterior; 2],
}

impl Interval {
    /// Probability by `f`, with its least and greatest value.
    #[must_use]
    pub fn range(&self, f: impl Fn(&Posterior) -> f64) -> (f64, f64, f64) {
        let p = f(&self.base);
        self.others
            .iter()
            .map(&f)
            .fold((p, p, p), |(p, low, high), q| (p, low.min(q), high.max(q)))
    }
}

/// The posterior on all three ladders, from answers alone.
#[must_use]
pub fn with_interval(answers: &[Answer], ledger: &Ledger) -> Interval {
    interval_with(answers, &[], ledger)
}

/// The posterior on all three ladders, from answers and readings.
#[must_use]
pub fn interval_with(answers: &[Answer], readings: &[Reading], ledger: &Ledger) -> Interval {
    let evidence = counted(answers, readings);
    let [base, blunt, sharp] = Ladder::all(ledger)
        .map(|l| posterior_of(&evidence, readings, ledger, &l, CopperRule::Guarded));
    Interval {
        base,
        others: [blunt, sharp],
    }
}

/// How far one answer or reading moved the families.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// Id of the finding or the reading.
    pub id: &'static str,
    /// What was looked for or measured.
    pub title: &'static str,
    /// The answer; seen for a reading.
    pub seen: Seen,
    /// Change in the natural log-odds of each of [`Family::ALL`] when it is added to all the others.
    pub log_odds: [f64; 7],
}

/// How far each answer and each reading moved the families, the strongest for `family` first.
#[must_use]
pub fn pushes(
    answers: &[Answer],
    readings: &[Reading],
    ledger: &Ledger,
    family: Family,
) -> Vec<Push> {
    let evidence = counted(answers, readings);
    let scales = Scales::new(ledger, &Ladder::of(ledger, "base"));
    let log_odds = |evidence: &[Counted], readings: &[Reading]| {
        let p = weigh_evidence(evidence, readings, &scales, CopperRule::Guarded);
        Family::ALL.map(|f| {
            let p = p.family(f).clamp(1e-12, 1.0 - 1e-12);
            libm::log(p / (1.0 - p))
        })
    };
    let with_all = log_odds(&evidence, readings);
    let moved = |without: [f64; 7]| {
        let mut change = with_all;
        for (c, w) in change.iter_mut().zip(without) {
            *c -= w;
        }
        change
    };
    let mut pushes: Vec<Push> = Vec::new();
    for i in 0..evidence.len() {
        let mut without = evidence.clone();
        let (finding, seen) = without.remove(i);
        pushes.push(Push {
            id: finding.id,
            title: finding.title,
            seen,
            log_odds: moved(log_odds(&without, readings)),
        });
    }
    for (i, reading) in readings.iter().enumerate().filter(|(_, r)| r.counts) {
        let mut without = readings.to_vec();
        without.remove(i);
        // A band ticked besides stays uncounted: the reading is taken away, not put off.
        pushes.push(Push {
            id: reading.id,
            title: reading.title,
            seen: Seen::Yes,
            log_odds: moved(log_odds(&evidence, &without)),
        });
    }
    let at = |p: &Push| p.log_odds[family.place()].abs();
    sort_short(&mut pushes, |a, b| {
        at(b).total_cmp(&at(a)).then(a.id.cmp(b.id))
    });
    pushes
}

/// An answer that counts as evidence.
pub(super) type Counted = (&'static FindingFact, Seen);

/// The answers that count: one a finding, seen before absent, nothing that says nothing, and no band
/// of an instrument whose reading is there.
pub(super) fn counted(answers: &[Answer], readings: &[Reading]) -> Vec<Counted> {
    let mut all: Vec<Counted> = Vec::new();
    for a in answers {
        match all.iter_mut().find(|(f, _)| f.id == a.id) {
            Some((_, seen)) => *seen = (*seen).min(a.seen),
            None => all.extend(finding(a.id).map(|f| (f, a.seen))),
        }
    }
    all.retain(|(f, seen)| {
        *seen != Seen::Unsure && !f.says_nothing() && !is_replaced(f.id, readings)
    });
    // In the order of the ladder, so that sums do not depend on the order of answers.
    sort_short(&mut all, |(f, _), (g, _)| f.id.cmp(g.id));
    let a_mark_is_read = all
        .iter()
        .any(|(f, seen)| f.cluster == Cluster::Mark && *seen == Seen::Yes);
    all.into_iter()
        .filter(|(f, seen)| *seen == Seen::Yes || absence_counts(f, a_mark_is_read))
        .collect()
}

/// Whether a reading already answers this finding.
pub(super) fn is_replaced(finding: &str, readings: &[Reading]) -> bool {
    readings.iter().any(|r| r.replaces.contains(&finding))
}

/// Whether "absent" is an observation of its own. An instrument gives one reading, so the bands it
/// did not fall in were not looked for one by one; and a piece that carries one mark says nothing
/// about the others. The magnet is a plain yes or no.
fn absence_counts(f: &FindingFact, a_mark_is_read: bool) -> bool {
    match f.cluster {
        Cluster::Phys => f.id == "P01",
        Cluster::Mark => !a_mark_is_read,
        _ => true,
    }
}

/// Everything of the ledger that weighing evidence needs, as logarithms, looked up once.
#[derive(Clone, Debug)]
pub(super) struct Scales {
    prior: [f64; 12],
    /// ln of seen, by letter; ln of absent, by letter, where it would be noticed and where it hides.
    seen: [f64; 5],
    absent: [[f64; 5]; 2],
    /// The same for kinds outside the ladder, for a finding and for a mark.
    out_seen: [f64; 2],
    out_absent: [[f64; 2]; 2],
}

impl Scales {
    pub(super) fn new(ledger: &Ledger, ladder: &Ladder) -> Self {
        let out = ledger.value("identity.prior.OUT").clamp(0.0, 1.0);
        let noticed = ["plain", "hidden"].map(|d| {
            ledger
                .value(&format!("identity.absent.{d}"))
                .clamp(0.0, 0.999)
        });
        let outside = ["finding", "mark"].map(|f| {
            ledger
                .value(&format!("identity.out.{f}"))
                .clamp(1e-6, 1.0 - 1e-6)
        });
        let named = Kind::LADDER.map(|k| {
            ledger
                .value(&format!("identity.prior.{}", k.code()))
                .max(0.0)
        });
        let total: f64 = named.iter().sum::<f64>().max(f64::MIN_POSITIVE);
        let ln = |p: f64| libm::log(p.max(f64::MIN_POSITIVE));
        let mut prior = [ln(out); 12];
        for (slot, p) in prior.iter_mut().zip(named) {
            *slot = ln(p / total * (1.0 - out));
        }
        Self {
            prior,
            seen: ladder.steps.map(ln),
            absent: noticed.map(|d| ladder.steps.map(|p| ln(1.0 - d * p))),
            out_seen: outside.map(ln),
            out_absent: noticed.map(|d| outside.map(|p| ln(1.0 - d * p))),
        }
    }
}

/// One posterior, for callers that need no more than one.
fn posterior_of(
    evidence: &[Counted],
    readings: &[Reading],
    ledger: &Ledger,
    ladder: &Ladder,
    rule: CopperRule,
) -> Posterior {
    weigh_evidence(evidence, readings, &Scales::new(ledger, ladder), rule)
}

pub(super) fn weigh_evidence(
    evidence: &[Counted],
    readings: &[Reading],
    scales: &Scales,
    rule: CopperRule,
) -> Posterior {
    let copper_is_ambiguous = rule == CopperRule::Guarded
        && !evidence
            .iter()
            .any(|(f, seen)| *seen == Seen::Yes && f.cluster.is_construction() && f.id != "C14");
    let mut log_p = scales.prior;
    let measured: Vec<[f64; 11]> = readings
        .iter()
        .filter_map(|r| r.log_likelihood(&scales.seen))
        .collect();
    // Each reading is one seen observation among the physical measures.
    let share = |cluster: Cluster, seen: Seen| {
        let beside = if cluster == Cluster::Phys && seen == Seen::Yes {
            measured.len()
        } else {
            0
        };
        evidence
            .iter()
            .filter(|(g, s)| g.cluster == cluster && *s == seen)
            .count()
            + beside
    };
    for row in &measured {
        let weight = 1.0 / (share(Cluster::Phys, Seen::Yes) as f64).sqrt();
        for (l, ln) in log_p.iter_mut().zip(row) {
            *l += weight * ln;
        }
        log_p[Kind::Out.index()] += weight * scales.out_seen[0];
    }
    for (f, seen) in evidence {
        let n = share(f.cluster, *seen);
        let weight = 1.0 / (n as f64).sqrt();
        let (hidden, mark) = (
            usize::from(f.hidden),
            usize::from(f.cluster == Cluster::Mark),
        );
        let of = |letter: Letter| match seen {
            Seen::Yes => scales.seen[letter as usize],
            _ => scales.absent[hidden][letter as usize],
        };
        let raised = copper_is_ambiguous && f.id == "S03";
        for (i, letter) in f.letters.iter().enumerate() {
            let letter = if raised && matches!(Kind::LADDER[i], Kind::Ecu | Kind::Rep) {
                Letter::L
            } else {
                *letter
            };
            log_p[i] += weight * of(letter);
        }
        log_p[Kind::Out.index()] += weight
            * match seen {
                Seen::Yes => scales.out_seen[mark],
                _ => scales.out_absent[hidden][mark],
            };
    }
    let top = log_p.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mass = log_p.map(|l| libm::exp(l - top));
    let sum: f64 = mass.iter().sum();
    Posterior {
        p: mass.map(|m| m / sum),
    }
}
