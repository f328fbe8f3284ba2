//! The two looks that best distinguish what is still possible, and whether looking alone can settle it.
//!
//! Only looks that can be taken with what is at hand count: no instrument that the user has not named,
//! nothing to look up and nothing to compare with. Each pair is judged by the expected decrease of the
//! entropy over families once both looks are answered, whether seen or absent, assuming that each look is
//! taken carefully, because the program says where and how to look. The posterior shown for "not there" is
//! the one that the program computes from that answer.

use super::contradiction::exclude_each_other;
use super::next_look::{ASKED_FIRST, is_open};
use super::posterior::{
    Basis, Edge, Evidence, Ladder, Posterior, Rows, Term, counted, counts, log_prior, terms,
};
use super::turn::Turn;
use crate::ledger::{FigureId, FindingFact, Ledger, findings};
use crate::terms::ShortSort;
use crate::terms::{ByKind, Cluster, Family, Instrument, Kind};
use crate::terms::{Seen, all_of};

/// One of the two looks, with the posterior after either answer.
#[derive(Clone, Debug)]
pub struct PartingLook {
    /// The finding to look for.
    pub finding: &'static FindingFact,
    /// Posterior if it is seen.
    pub if_seen: Posterior,
    /// Posterior if it is looked for and not there.
    pub if_absent: Posterior,
}

/// What to look at to distinguish what is still possible.
#[derive(Clone, Debug)]
pub struct Parting {
    /// At most two looks, the easier one first.
    pub looks: Vec<PartingLook>,
    /// Set if these looks are not expected to settle the family; it then holds the reading that would add
    /// most in combination with one of the looks, if there is one.
    pub open: Option<Option<&'static FindingFact>>,
}

/// How many single looks are tried in pairs.
const TRIED: usize = 10;
/// How many readings are tried, each with every look.
const READINGS_TRIED: usize = 3;

/// Looks with their expected information in bits.
type Weighed<const N: usize> = (f64, [&'static FindingFact; N]);

/// A candidate look, with the term that either answer would add.
struct Tried {
    finding: &'static FindingFact,
    /// Chance by kind that a careful look finds it.
    chance: ByKind,
    /// The terms for "there" and "not there"; `None` where that answer is no evidence.
    terms: [Option<Term>; 2],
    /// Its expected information on its own, in bits.
    bits: f64,
}

/// Ranks looks by their expected information.
struct Judge {
    base: Basis,
    /// How answers are counted.
    rows: Rows,
    /// Chance that a careful look notices a feature that is there.
    noticed: f64,
    ladder: Ladder,
    out: [f64; 2],
    now: Posterior,
    /// A smaller difference in bits counts as none.
    least_bits: f64,
}

impl Judge {
    fn new(evidence: &Evidence, prior: ByKind, ledger: &Ledger) -> Self {
        let ladder = Ladder::of(ledger, Edge::Base);
        let base = terms(
            &counted(evidence),
            evidence.readings,
            &Rows::new(ledger, &ladder),
        );
        let base = Basis::new(prior, base);
        Self {
            now: base.with(&[]),
            base,
            rows: Rows::careful(ledger, &ladder),
            noticed: ledger.value(FigureId::IDENTITY_ABSENT_PLAIN),
            ladder,
            out: [FigureId::IDENTITY_OUT_FINDING, FigureId::IDENTITY_OUT_MARK]
                .map(|id| ledger.value(id)),
            least_bits: ledger.value(FigureId::LOOK_LEAST_BITS),
        }
    }

    /// Chance that a careful look at a piece of this kind finds it.
    fn chance(&self, f: &FindingFact, kind: Kind) -> f64 {
        let mark = usize::from(f.cluster == Cluster::Mark);
        self.noticed
            * f.letter(kind)
                .map_or(self.out[mark], |l| self.ladder.step(l))
    }

    fn after(&self, answers: &[(&'static FindingFact, Seen)], rows: &Rows) -> Posterior {
        let told: Vec<Term> = answers
            .iter()
            .filter(|(f, seen)| counts(f, *seen))
            .map(|(f, seen)| rows.answer(f, *seen))
            .collect();
        self.base.with(&told.iter().collect::<Vec<_>>())
    }

    /// Expected decrease of the entropy over families once these looks are answered, in bits.
    fn bits(&self, looks: &[&Tried]) -> f64 {
        let mut left = 0.0;
        for pattern in 0..1_usize << looks.len() {
            let is_there = |i: usize| pattern >> i & 1 == 1;
            let mut chance = 0.0;
            for k in Kind::ALL {
                let mut p = self.now.of(k);
                for (i, look) in looks.iter().enumerate() {
                    let there = look.chance[k.index()];
                    p *= if is_there(i) { there } else { 1.0 - there };
                }
                chance += p;
            }
            let told: Vec<&Term> = looks
                .iter()
                .enumerate()
                .filter_map(|(i, look)| look.terms[usize::from(!is_there(i))].as_ref())
                .collect();
            left += chance * self.base.with(&told).family_bits();
        }
        self.now.family_bits() - left
    }

    /// These looks singly, the most informative first.
    fn singles(&self, looks: impl Iterator<Item = &'static FindingFact>) -> Vec<Tried> {
        let term = |f: &'static FindingFact, seen: Seen| {
            counts(f, seen).then(|| self.rows.answer(f, seen))
        };
        let mut singles: Vec<Tried> = looks
            .map(|f| {
                let mut tried = Tried {
                    finding: f,
                    chance: Kind::ALL.map(|k| self.chance(f, k)),
                    terms: [term(f, Seen::Yes), term(f, Seen::No)],
                    bits: 0.0,
                };
                tried.bits = self.bits(&[&tried]);
                tried
            })
            .collect();
        singles.order_by(|a, b| {
            b.bits
                .total_cmp(&a.bits)
                .then(a.finding.id.cmp(&b.finding.id))
        });
        singles
    }

    /// Every pair of a look of the first list with one of the second. No pair combines two versions of one
    /// look, or two things that one spot cannot show together.
    fn pairs(&self, first: &[Tried], second: &[Tried]) -> Vec<Weighed<2>> {
        let mut pairs: Vec<Weighed<2>> = Vec::new();
        for one in first {
            for other in second {
                let (a, b) = (one.finding, other.finding);
                let is_in =
                    |pair: &[&FindingFact; 2], f: &FindingFact| pair.iter().any(|p| p.id == f.id);
                let same = |(_, pair): &Weighed<2>| is_in(pair, a) && is_in(pair, b);
                if a.twin == b.twin || exclude_each_other(a.id, b.id) || pairs.iter().any(same) {
                    continue;
                }
                pairs.push((self.bits(&[one, other]), [a, b]));
            }
        }
        pairs
    }

    /// The most informative pair; among equally informative pairs, the one with the least effort.
    fn best(&self, pairs: &[Weighed<2>]) -> Option<Weighed<2>> {
        let most = pairs.iter().map(|(bits, _)| *bits).fold(0.0, f64::max);
        let effort = |looks: &[&FindingFact; 2]| looks[0].invasive + looks[1].invasive;
        pairs
            .iter()
            .filter(|(bits, _)| *bits > 1e-9 && *bits + self.least_bits > most)
            .min_by(|a, b| effort(&a.1).cmp(&effort(&b.1)).then(b.0.total_cmp(&a.0)))
            .copied()
    }
}

/// The two looks that best distinguish what is still possible.
#[must_use]
pub fn parting(evidence: &Evidence, at_hand: &[Instrument], ledger: &Ledger) -> Parting {
    let judge = Judge::new(evidence, log_prior(ledger, evidence.came_from), ledger);
    let as_answered = Rows::new(ledger, &judge.ladder);
    let looked_for_marks = evidence
        .answers
        .iter()
        .any(|a| a.id.fact().cluster == Cluster::Mark && a.seen != Seen::Unsure);
    let on_turn = |turn: Turn| {
        let parts = move |f: &&FindingFact| match f.cluster {
            // A style or a date is no sign of how a piece was made.
            Cluster::Style | Cluster::Date => false,
            // The letter of a mark says which kinds can have it, not how common it is. Only the letters found
            // on half of all electroplate are worth asking a user to look for.
            Cluster::Mark => !looked_for_marks && ASKED_FIRST.contains(&f.id),
            _ => true,
        };
        let open = findings()
            .iter()
            .filter(parts)
            .filter(|f| is_open(f, evidence));
        judge.singles(open.filter(move |f| Turn::of(f, at_hand) == turn))
    };
    let mut lay = on_turn(Turn::First);
    lay.truncate(TRIED);
    let best = judge.best(&judge.pairs(&lay, &lay));
    let told = best.map_or(0.0, |(bits, _)| bits);
    let left = judge.now.family_bits() - told;
    let open = (left > ledger.value(FigureId::LOOK_LEAVES_OPEN)).then(|| {
        let mut readings = on_turn(Turn::Last);
        readings.truncate(READINGS_TRIED);
        judge
            .pairs(&readings, &lay)
            .into_iter()
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .filter(|(bits, _)| *bits > told + judge.least_bits)
            .map(|(_, [reading, _])| reading)
    });
    let mut looks: Vec<&'static FindingFact> = best.map_or(Vec::new(), |(_, pair)| pair.to_vec());
    looks.order_by_key(|f| f.invasive);
    let looks = looks
        .into_iter()
        .map(|f| PartingLook {
            finding: f,
            if_seen: judge.after(&[(f, Seen::Yes)], &as_answered),
            if_absent: judge.after(&[(f, Seen::No)], &as_answered),
        })
        .collect();
    Parting { looks, open }
}

/// What the looks will probably leave open, and the reading that would add more, in words; `None` if the
/// looks may settle it.
#[must_use]
pub fn open_in_words(parting: &Parting, now: &Posterior) -> Option<String> {
    let reading = parting.open?;
    let still = all_of(&still_possible(now));
    let open = format!("These looks will probably leave it open between {still}.");
    Some(match reading {
        Some(f) => format!(
            "{open} An instrument can tell more: {} ({}).",
            f.title, f.needs
        ),
        None => format!("{open} No instrument is expected to tell noticeably more."),
    })
}

/// The one or two leading families.
fn still_possible(now: &Posterior) -> Vec<&'static str> {
    let mut families: Vec<Family> = Family::ALL.to_vec();
    families.order_by(|a, b| now.family(*b).total_cmp(&now.family(*a)));
    families.truncate(2);
    families.into_iter().map(Family::name).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identity::interval_with;
    use crate::ledger::FindingId;
    use crate::record::Answer;

    fn parted(ids: &[&'static str]) -> (Parting, Posterior) {
        let answers = answers(ids);
        let evidence = Evidence {
            answers: &answers,
            readings: &[],
            came_from: None,
        };
        let ledger = Ledger::standard();
        let now = interval_with(&evidence, ledger).base;
        (parting(&evidence, &[], ledger), now)
    }

    /// Shares of the kinds of one side of a question.
    type Side = &'static [(Kind, f64)];

    /// A question between two sides at even odds, before anything but `seen` is known.
    fn between(sides: [Side; 2], seen: &[Answer]) -> Judge {
        let mut prior = [1e-9_f64; Kind::COUNT];
        for (kind, share) in sides.into_iter().flatten() {
            prior[kind.index()] = *share / 2.0;
        }
        let evidence = Evidence {
            answers: seen,
            readings: &[],
            came_from: None,
        };
        Judge::new(&evidence, prior.map(libm::log), Ledger::standard())
    }

    fn answers(ids: &[&'static str]) -> Vec<Answer> {
        ids.iter()
            .map(|id| Answer {
                id: FindingId::parse(id).unwrap(),
                seen: Seen::Yes,
                part: None,
            })
            .collect()
    }

    const COPIES: Side = &[(Kind::Ecu, 0.5), (Kind::Rep, 0.5)];
    const WORN_COPIES: Side = &[(Kind::Ecu, 0.65), (Kind::Rep, 0.35)];
    const FUSED: Side = &[(Kind::Fpd, 0.75), (Kind::Fps, 0.25)];
    const REPLATED: Side = &[(Kind::Rfp, 1.0)];
    const CLOSE: Side = &[(Kind::Clp, 1.0)];
    const ON_STEEL: Side = &[(Kind::Est, 1.0)];

    /// The information in bits that two looks give on each of the hardest distinctions, computed
    /// independently.
    #[test]
    fn information_on_the_hardest_distinctions_matches_independent_values() {
        for (sides, seen, looks, bits) in [
            ([REPLATED, COPIES], "", ["C06", ""], 0.286),
            ([REPLATED, COPIES], "", ["S10", ""], 0.286),
            ([REPLATED, COPIES], "", ["C12", ""], 0.155),
            ([REPLATED, COPIES], "", ["C07", "S20"], 0.394),
            ([REPLATED, COPIES], "", ["C06", "S10"], 0.394),
            ([FUSED, WORN_COPIES], "S03", ["C01", ""], 0.286),
            ([FUSED, WORN_COPIES], "S03", ["C08", ""], 0.216),
            ([FUSED, WORN_COPIES], "S03", ["C01", "S08"], 0.471),
            ([FUSED, WORN_COPIES], "S03", ["P11", "S08"], 0.524),
            ([CLOSE, ON_STEEL], "S12", ["S24", ""], 0.125),
            ([CLOSE, ON_STEEL], "S12", ["S24", "C09"], 0.221),
            ([CLOSE, ON_STEEL], "S12", ["P13", "C09"], 0.360),
        ] {
            let given: &[&'static str] = if seen.is_empty() { &[] } else { &[seen] };
            let looks: Vec<&'static FindingFact> = looks
                .iter()
                .filter_map(|id| FindingId::parse(id))
                .map(FindingId::fact)
                .collect();
            let judge = between(sides, &answers(given));
            let tried = judge.singles(looks.iter().copied());
            let told = judge.bits(&tried.iter().collect::<Vec<_>>());
            assert!((told - bits).abs() < 0.0015, "{looks:?}: {told}");
        }
    }

    /// No pair of looks gives more information on the hardest distinctions than the pairs named for them, and
    /// none reaches half a bit.
    #[test]
    fn no_two_looks_settle_the_hardest_distinctions_better_than_those_named() {
        for (sides, seen, most) in [
            ([REPLATED, COPIES], "", 0.394),
            ([FUSED, WORN_COPIES], "S03", 0.471),
            ([CLOSE, ON_STEEL], "S12", 0.221),
        ] {
            let given = FindingId::parse(seen).map(FindingId::fact);
            let answers = given.map_or_else(Vec::new, |f| answers(&[f.id.text()]));
            let judge = between(sides, &answers);
            let looks = findings().iter().filter(|f| {
                let apart = given.is_none_or(|given| given.twin != f.twin);
                apart && f.cluster != Cluster::Mark && Turn::of(f, &[]) == Turn::First
            });
            let mut single = judge.singles(looks);
            single.truncate(22);
            let best = judge.pairs(&single, &single);
            let best = best.iter().map(|(bits, _)| *bits).fold(0.0, f64::max);
            assert!((best - most).abs() < 0.0015, "{sides:?}: {best}");
            assert!(best < Ledger::standard().value(FigureId::LOOK_LEAVES_OPEN));
        }
    }

    #[test]
    fn no_look_offered_first_needs_an_instrument() {
        for ids in [&[][..], &["S03"], &["S12"], &["C06", "C07"], &["M10"]] {
            let (parting, _) = parted(ids);
            assert_eq!(parting.looks.len(), 2, "{ids:?}");
            assert!(parting.looks.iter().all(|l| l.finding.invasive <= 1));
            assert!(parting.looks[0].finding.invasive <= parting.looks[1].finding.invasive);
        }
    }

    #[test]
    fn marks_are_asked_for_once_and_styles_never() {
        for ids in [
            &[][..],
            &["S03"],
            &["M10"],
            &["C06", "C07"],
            &["M12"],
            &["M01"],
        ] {
            let (parting, _) = parted(ids);
            for look in &parting.looks {
                let asked = match look.finding.cluster {
                    Cluster::Mark => !ids.iter().any(|id| id.starts_with('M')),
                    cluster => !matches!(cluster, Cluster::Style | Cluster::Date),
                };
                assert!(asked, "{ids:?}: {}", look.finding.id);
            }
        }
    }

    #[test]
    fn a_look_ruled_out_by_what_was_seen_is_not_offered() {
        let (parting, _) = parted(&["C01"]);
        for look in &parting.looks {
            assert!(!["C02", "C04", "C20"].contains(&look.finding.id.text()));
        }
    }

    #[test]
    fn what_looking_cannot_settle_is_reported_as_open() {
        // Worn to an unnamed metal: two looks are not enough.
        let (parting, now) = parted(&["S11"]);
        let words = open_in_words(&parting, &now).unwrap();
        assert!(words.contains("open"), "{words}");
        // Full hallmarks, cast: nothing is open.
        let (parting, now) = parted(&["M03", "C22"]);
        assert_eq!(open_in_words(&parting, &now), None);
    }
}
