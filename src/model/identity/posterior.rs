//! From the findings to the probability of each kind.
//!
//! Every answer becomes one row of log-likelihoods by kind, measured from a pivot. Findings of one cluster
//! share a cause, so within a cluster the rows add in quadrature, support and misfit separately. Clusters add
//! linearly. "Not sure" and "not looked" are no evidence.
//!
//! Invariants: the order of answers never matters; a finding given twice counts once; and a finding that
//! every kind of a family explains at least as well as every kind outside it never makes that family less
//! probable, whatever else was found.

use super::judged_reading::JudgedReading;
use crate::ledger::EvidenceId;
use crate::ledger::{FigureId, FindingFact, FindingId, Ledger};
use crate::maths::at_least;
use crate::record::{Answer, Case};
use crate::terms::ShortSort;
use crate::terms::{ByKind, Cluster, Family, Kind, Letter};
use crate::terms::{CameFrom, Seen};

/// The evidence on what a piece is.
#[derive(Clone, Copy, Debug)]
pub struct Evidence<'a> {
    /// Answered findings.
    pub answers: &'a [Answer],
    /// Readings of instruments.
    pub readings: &'a [JudgedReading],
    /// How the piece came to its owner, which sets how common each kind is taken to be.
    pub came_from: Option<CameFrom>,
}

impl<'a> Evidence<'a> {
    /// The evidence of a case, with its readings.
    #[must_use]
    pub fn of(case: &'a Case, readings: &'a [JudgedReading]) -> Self {
        Self {
            answers: &case.findings,
            readings,
            came_from: case.piece.came_from,
        }
    }
}

/// How strong findings are taken to be as evidence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// As strong as we think.
    Base,
    /// Weaker than we think.
    Blunt,
    /// Stronger than we think.
    Sharp,
}

/// The letters' likelihoods, by [`Edge`].
const STEPS: [[FigureId; 5]; 3] = [
    FigureId::family("identity.ladder.base.", Letter::CODES, ""),
    FigureId::family("identity.ladder.blunt.", Letter::CODES, ""),
    FigureId::family("identity.ladder.sharp.", Letter::CODES, ""),
];

/// How common each kind is if the record does not say how the piece came to its owner.
const PRIORS: [FigureId; Kind::COUNT] = FigureId::family("identity.prior.", Kind::CODES, "");
/// The same for a household, a general sale and a dealer in old plate.
const PRIORS_FROM: [[FigureId; Kind::COUNT]; 3] = [
    FigureId::family("identity.prior.household.", Kind::CODES, ""),
    FigureId::family("identity.prior.sale.", Kind::CODES, ""),
    FigureId::family("identity.prior.dealer.", Kind::CODES, ""),
];

/// The likelihoods behind the letters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ladder {
    steps: [f64; 5],
}

impl Ladder {
    /// One of the three ladders of the ledger: `base`, or `blunt` and `sharp`, which show what the answer
    /// would be if findings were weaker or stronger evidence than we think.
    #[must_use]
    pub fn of(ledger: &Ledger, edge: Edge) -> Self {
        Self {
            steps: STEPS[edge as usize].map(|id| ledger.value(id).clamp(1e-6, 1.0 - 1e-6)),
        }
    }

    /// All three, the base one first.
    #[must_use]
    pub fn all(ledger: &Ledger) -> [Self; 3] {
        [Edge::Base, Edge::Blunt, Edge::Sharp].map(|edge| Self::of(ledger, edge))
    }

    /// Likelihood of a letter.
    #[must_use]
    pub fn step(&self, letter: Letter) -> f64 {
        self.steps[letter as usize]
    }
}

/// Probability of each kind, in the order of [`Kind::ALL`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Posterior {
    p: ByKind,
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

    /// Shannon entropy over families in bits.
    #[must_use]
    pub(super) fn family_bits(&self) -> f64 {
        -Family::ALL
            .into_iter()
            .map(|f| self.family(f))
            .filter(|p| *p > 0.0)
            .map(|p| p * libm::log2(p))
            .sum::<f64>()
    }

    /// The same posterior with the odds of one set of kinds multiplied by `factor`; proportions inside and
    /// outside the set do not change. `factor` > 0.
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

    /// A posterior from unnormalised log probabilities.
    fn from_logs(log_p: &ByKind) -> Self {
        let top = log_p.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let mass = log_p.map(|l| libm::exp(l - top));
        let sum: f64 = mass.iter().sum();
        Self {
            p: mass.map(|m| m / sum),
        }
    }
}

/// Kinds whose body is fused sheet, whatever silver is on it now.
pub const FUSED_BODY: [Kind; 4] = [Kind::Fps, Kind::Fpd, Kind::Fpn, Kind::Rfp];

/// A posterior with its range over three ladders and three priors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// On the base ladder and the unmodified prior.
    pub base: Posterior,
    others: [Posterior; 8],
}

impl Interval {
    /// The probability that `f` picks out, with its least and greatest value.
    #[must_use]
    pub fn range(&self, f: impl Fn(&Posterior) -> f64) -> (f64, f64, f64) {
        let p = f(&self.base);
        self.others
            .iter()
            .map(&f)
            .fold((p, p, p), |(p, low, high), q| (p, low.min(q), high.max(q)))
    }
}

/// The posterior on all three ladders, and with the prior odds of a fused body unchanged, lowered and raised
/// by the ledger's factor.
#[must_use]
pub fn interval_with(evidence: &Evidence, ledger: &Ledger) -> Interval {
    let counted = counted(evidence);
    let prior = log_prior(ledger, evidence.came_from);
    let odds = ledger.value(FigureId::IDENTITY_FUSED_ODDS).max(1.0);
    let [base, blunt, sharp] = Ladder::all(ledger).map(|ladder| {
        let rows = Rows::new(ledger, &ladder);
        let found = combined(&terms(&counted, evidence.readings, &rows));
        let posterior = Posterior::from_logs(&sum(&prior, &found));
        [1.0, 1.0 / odds, odds].map(|factor| {
            if factor.to_bits() == 1.0_f64.to_bits() {
                posterior
            } else {
                posterior.with_odds_scaled(&FUSED_BODY, factor)
            }
        })
    });
    Interval {
        base: base[0],
        others: [
            base[1], base[2], blunt[0], blunt[1], blunt[2], sharp[0], sharp[1], sharp[2],
        ],
    }
}

/// How far one answer or reading moved the families.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// The finding or the reading.
    pub id: EvidenceId,
    /// What was looked for or measured.
    pub title: &'static str,
    /// The answer; [`Seen::Yes`] for a reading.
    pub seen: Seen,
    /// Change in the natural log-odds of each of [`Family::ALL`] when this evidence is added to all the rest.
    pub log_odds: [f64; 7],
}

/// How far each answer and each reading moved the families, the strongest for `family` first.
#[must_use]
pub fn pushes(evidence: &Evidence, ledger: &Ledger, family: Family) -> Vec<Push> {
    let counted = counted(evidence);
    let rows = Rows::new(ledger, &Ladder::of(ledger, Edge::Base));
    let prior = log_prior(ledger, evidence.came_from);
    let log_odds = |terms: &[Term]| {
        let p = Posterior::from_logs(&sum(&prior, &combined(terms)));
        Family::ALL.map(|f| {
            let p = p.family(f).clamp(1e-12, 1.0 - 1e-12);
            libm::log(p / (1.0 - p))
        })
    };
    let all = terms(&counted, evidence.readings, &rows);
    let with_all = log_odds(&all);
    let mut pushes: Vec<Push> = (0..all.len())
        .map(|i| {
            let mut without = all.clone();
            let term = without.remove(i);
            let mut change = with_all;
            for (c, w) in change.iter_mut().zip(log_odds(&without)) {
                *c -= w;
            }
            Push {
                id: term.id,
                title: term.title,
                seen: term.seen,
                log_odds: change,
            }
        })
        .collect();
    let at = |p: &Push| p.log_odds[family.place()].abs();
    pushes.order_by(|a, b| {
        at(b)
            .total_cmp(&at(a))
            .then_with(|| a.id.text().cmp(b.id.text()))
    });
    pushes
}

/// An answer that counts as evidence.
pub(super) type Counted = (&'static FindingFact, Seen);

/// The answers that count: one per finding, "seen" before "absent", without answers that are no evidence and
/// without bands of an instrument whose reading is there.
pub(super) fn counted(evidence: &Evidence) -> Vec<Counted> {
    let mut all: Vec<Counted> = Vec::new();
    for a in evidence.answers {
        match all.iter_mut().find(|(f, _)| f.id == a.id) {
            Some((_, seen)) => *seen = (*seen).min(a.seen),
            None => all.push((a.id.fact(), a.seen)),
        }
    }
    all.retain(|(f, seen)| counts(f, *seen) && !is_replaced(f.id, evidence.readings));
    // In order of id, so that sums do not depend on the order of the answers.
    all.order_by_key(|(f, _)| f.id);
    all
}

/// Whether a reading already answers this finding.
pub(super) fn is_replaced(finding: FindingId, readings: &[JudgedReading]) -> bool {
    readings.iter().any(|r| r.replaces.contains(&finding))
}

/// Whether an answer is evidence at all.
pub(super) fn counts(f: &FindingFact, seen: Seen) -> bool {
    let said = match seen {
        Seen::Yes => true,
        Seen::No => absence_counts(f),
        Seen::Unsure => false,
    };
    said && !f.says_nothing()
}

/// Whether "absent" is evidence on its own. For marks, "no mark anywhere" is the answer that says so. An
/// instrument gives one reading, so the bands it did not fall in were not looked for separately; a magnet is
/// a plain yes or no. The absence of a style or a date leaves all others open.
fn absence_counts(f: &FindingFact) -> bool {
    match f.cluster {
        Cluster::Phys => f.id == FindingId::P01,
        Cluster::Mark | Cluster::Style | Cluster::Date => false,
        _ => true,
    }
}

/// Log of how common each kind is before anything is looked at. A user's own figure for a kind applies
/// however the piece came to them.
pub(super) fn log_prior(ledger: &Ledger, came_from: Option<CameFrom>) -> ByKind {
    Kind::ALL.map(|k| {
        let any = ledger.figure(PRIORS[k.index()]);
        let share = match came_from {
            Some(from) if any.own_reason.is_none() => {
                ledger.value(PRIORS_FROM[from as usize][k.index()])
            }
            _ => any.value,
        };
        libm::log(share.clamp(f64::MIN_POSITIVE, 1.0))
    })
}

/// The log likelihoods of the letters, looked up once per ladder.
#[derive(Clone, Debug)]
pub(super) struct Rows {
    /// ln of seen, by letter; ln of absent, by letter, for features that would be noticed and for hidden
    /// ones.
    seen: [f64; 5],
    absent: [[f64; 5]; 2],
    /// The same for kinds outside the ladder, for a finding and for a mark.
    out_seen: [f64; 2],
    out_absent: [[f64; 2]; 2],
}

impl Rows {
    pub(super) fn new(ledger: &Ledger, ladder: &Ladder) -> Self {
        let noticed = [
            FigureId::IDENTITY_ABSENT_PLAIN,
            FigureId::IDENTITY_ABSENT_HIDDEN,
        ]
        .map(|id| ledger.value(id).clamp(0.0, 0.999));
        let outside = [FigureId::IDENTITY_OUT_FINDING, FigureId::IDENTITY_OUT_MARK]
            .map(|id| ledger.value(id).clamp(1e-6, 1.0 - 1e-6));
        let ln = |p: f64| libm::log(p.max(f64::MIN_POSITIVE));
        Self {
            seen: ladder.steps.map(ln),
            absent: noticed.map(|d| ladder.steps.map(|p| ln(1.0 - d * p))),
            out_seen: outside.map(ln),
            out_absent: noticed.map(|d| outside.map(|p| ln(1.0 - d * p))),
        }
    }

    /// As if every feature looked for were noticed as easily as one in plain sight.
    pub(super) fn careful(ledger: &Ledger, ladder: &Ladder) -> Self {
        let mut rows = Self::new(ledger, ladder);
        rows.absent[1] = rows.absent[0];
        rows.out_absent[1] = rows.out_absent[0];
        rows
    }

    /// One answer as a term of the sum. `seen` is [`Seen::Yes`] or [`Seen::No`].
    pub(super) fn answer(&self, f: &'static FindingFact, seen: Seen) -> Term {
        let mark = usize::from(f.cluster == Cluster::Mark);
        let hidden = usize::from(f.hidden);
        let (letters, out) = if seen == Seen::Yes {
            (&self.seen, self.out_seen[mark])
        } else {
            (&self.absent[hidden], self.out_absent[hidden][mark])
        };
        let ln = Kind::ALL.map(|k| f.letter(k).map_or(out, |l| letters[l as usize]));
        Term {
            id: EvidenceId::Finding(f.id),
            title: f.title,
            seen,
            cluster: (seen == Seen::Yes).then_some(f.cluster),
            twin: f.twin,
            u: from_pivot(&ln),
        }
    }

    /// One reading as a term; `None` when it says the same of every kind or is not counted.
    fn reading(&self, reading: &JudgedReading) -> Option<Term> {
        let named = reading.log_likelihood(&self.seen)?;
        let mut ln = [self.out_seen[0]; Kind::COUNT];
        ln[..named.len()].copy_from_slice(&named);
        Some(Term {
            id: EvidenceId::Reading(reading.of),
            title: reading.title,
            seen: Seen::Yes,
            cluster: Some(Cluster::Phys),
            twin: reading.of.id(),
            u: from_pivot(&ln),
        })
    }
}

/// One observation: how far each kind stands above or below its pivot.
#[derive(Clone, Debug)]
pub(super) struct Term {
    id: EvidenceId,
    title: &'static str,
    seen: Seen,
    /// `None` for everything that was looked for and absent: how carefully the user looked is their common
    /// cause.
    cluster: Option<Cluster>,
    twin: &'static str,
    u: ByKind,
}

/// The observations of a piece, readings last.
pub(super) fn terms(counted: &[Counted], readings: &[JudgedReading], rows: &Rows) -> Vec<Term> {
    counted
        .iter()
        .map(|(f, seen)| rows.answer(f, *seen))
        .chain(readings.iter().filter_map(|r| rows.reading(r)))
        .collect()
}

/// Sets of kinds that may rank above all others in a row: families first, then builds.
fn groups() -> impl Iterator<Item = fn(Kind) -> bool> {
    const GROUPS: [fn(Kind) -> bool; 9] = [
        |k| k.family() == Family::Fused,
        |k| k.family() == Family::ReplatedFused,
        |k| k.family() == Family::Electroplate,
        |k| k.family() == Family::Close,
        |k| k.family() == Family::French,
        |k| k.family() == Family::Solid,
        |k| k.family() == Family::Outside,
        |k| FUSED_BODY.contains(&k),
        |k| k == Kind::Rfp || k.family() == Family::Electroplate,
    ];
    GROUPS.into_iter()
}

/// A row of log-likelihoods relative to its pivot. The pivot is the least value within the first family (then
/// build) whose kinds all explain the observation at least as well as every kind outside; if there is none,
/// it is the greatest value of the row.
fn from_pivot(ln: &ByKind) -> ByKind {
    let edge = |group: fn(Kind) -> bool| {
        let (mut inside, mut outside) = (f64::INFINITY, f64::NEG_INFINITY);
        for (k, l) in Kind::ALL.into_iter().zip(ln) {
            if group(k) {
                inside = inside.min(*l);
            } else {
                outside = outside.max(*l);
            }
        }
        (inside >= outside - 1e-12).then_some(inside)
    };
    let most = ln.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let pivot = groups().find_map(edge).unwrap_or(most);
    ln.map(|l| l - pivot)
}

/// The combined terms of one cluster: for each kind, the root of the sum of squares above the pivot minus the
/// root of the sum of squares below it. Twins count as one term, with the greater of each.
fn of_cluster<'a>(terms: &(impl Iterator<Item = &'a Term> + Clone)) -> ByKind {
    let (mut above, mut below) = ([0.0; Kind::COUNT], [0.0; Kind::COUNT]);
    for (i, term) in terms.clone().enumerate() {
        if terms.clone().take(i).any(|t| t.twin == term.twin) {
            continue;
        }
        let (mut up, mut down) = ([0.0_f64; Kind::COUNT], [0.0_f64; Kind::COUNT]);
        for twin in terms.clone().skip(i).filter(|t| t.twin == term.twin) {
            for k in 0..Kind::COUNT {
                up[k] = at_least(up[k], twin.u[k]);
                down[k] = at_least(down[k], -twin.u[k]);
            }
        }
        for k in 0..Kind::COUNT {
            above[k] += up[k] * up[k];
            below[k] += down[k] * down[k];
        }
    }
    std::array::from_fn(|k| above[k].sqrt() - below[k].sqrt())
}

/// The clusters, then `None` for what was looked for and absent.
fn clusters() -> impl Iterator<Item = Option<Cluster>> {
    Cluster::ALL.into_iter().map(Some).chain([None])
}

/// The combined terms, as an amount to add to each kind's log prior: the sum over the clusters.
pub(super) fn combined(terms: &[Term]) -> ByKind {
    let mut all = [0.0; Kind::COUNT];
    for cluster in clusters() {
        let here = of_cluster(&terms.iter().filter(|t| t.cluster == cluster));
        all = sum(&all, &here);
    }
    all
}

/// The evidence so far, by cluster, for trying the effect of further answers.
pub(super) struct Basis {
    prior: ByKind,
    terms: Vec<Term>,
    by_cluster: Vec<ByKind>,
}

impl Basis {
    pub(super) fn new(prior: ByKind, terms: Vec<Term>) -> Self {
        let here = |cluster| of_cluster(&terms.iter().filter(|t| t.cluster == cluster));
        Self {
            by_cluster: clusters().map(here).collect(),
            prior,
            terms,
        }
    }

    /// The posterior with further answers, bit for bit equal to that of all the terms together. Only the
    /// clusters of these answers are recomputed.
    pub(super) fn with(&self, more: &[&Term]) -> Posterior {
        let mut all = [0.0; Kind::COUNT];
        for (cluster, known) in clusters().zip(&self.by_cluster) {
            let these = more.iter().copied().filter(|t| t.cluster == cluster);
            if these.clone().next().is_none() {
                all = sum(&all, known);
            } else {
                let terms = self.terms.iter().filter(|t| t.cluster == cluster);
                all = sum(&all, &of_cluster(&terms.chain(these)));
            }
        }
        Posterior::from_logs(&sum(&self.prior, &all))
    }
}

fn sum(a: &ByKind, b: &ByKind) -> ByKind {
    std::array::from_fn(|k| a[k] + b[k])
}
