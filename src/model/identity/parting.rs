//! The two looks that part what is still possible, and whether looking alone can settle it.
//!
//! Only looks that can be taken with what is at hand count: no instrument that the person has not named,
//! nothing to look up and nothing to compare with. Each pair is judged by how sure the family is expected to be after both answers.

use super::contradiction::exclude_each_other;
use super::next_look::{Turn, is_open};
use super::posterior::{
    Edge, Evidence, Ladder, Posterior, Rows, Term, counted, counts, log_prior, posterior, terms,
};
use crate::ledger::{FigureId, FindingFact, Ledger, findings};
use crate::terms::Seen;
use crate::terms::{Cluster, Family, Instrument, Kind};

/// One of the two looks, with what either answer would make of the piece.
#[derive(Clone, Debug)]
pub struct PartingLook {
    /// The finding to look for.
    pub finding: &'static FindingFact,
    /// Posterior if it is seen.
    pub if_seen: Posterior,
    /// Posterior if it is looked for and not there.
    pub if_absent: Posterior,
}

/// What to look at to part what is still possible.
#[derive(Clone, Debug)]
pub struct Parting {
    /// At most two looks, the least effort first.
    pub looks: Vec<PartingLook>,
    /// These looks are not expected to settle the family; the reading that would tell most, where
    /// there is one.
    pub open: Option<Option<&'static FindingFact>>,
}

/// So many single looks are tried in pairs.
const TRIED: usize = 8;

struct Judge<'a> {
    prior: [f64; Kind::COUNT],
    base: Vec<Term>,
    rows: Rows,
    ladder: Ladder,
    out: [f64; 2],
    now: &'a Posterior,
}

impl Judge<'_> {
    fn likelihood(&self, f: &FindingFact, kind: Kind) -> f64 {
        let mark = usize::from(f.cluster == Cluster::Mark);
        f.letter(kind)
            .map_or(self.out[mark], |l| self.ladder.step(l))
    }

    fn after(&self, answers: &[(&'static FindingFact, Seen)]) -> Posterior {
        let mut all = self.base.clone();
        all.extend(
            answers
                .iter()
                .filter(|(f, seen)| counts(f, *seen))
                .map(|(f, seen)| self.rows.answer(f, *seen)),
        );
        posterior(&self.prior, &all)
    }

    /// How sure the leading family is expected to be once these looks are answered.
    fn expected(&self, looks: &[&'static FindingFact]) -> f64 {
        let mut sum = 0.0;
        for pattern in 0..1_usize << looks.len() {
            let answers: Vec<(&'static FindingFact, Seen)> = looks
                .iter()
                .enumerate()
                .map(|(i, f)| {
                    let seen = if pattern >> i & 1 == 1 {
                        Seen::Yes
                    } else {
                        Seen::No
                    };
                    (*f, seen)
                })
                .collect();
            let chance: f64 = Kind::ALL
                .into_iter()
                .map(|k| {
                    answers.iter().fold(self.now.of(k), |p, (f, seen)| {
                        let there = self.likelihood(f, k);
                        p * if *seen == Seen::Yes {
                            there
                        } else {
                            1.0 - there
                        }
                    })
                })
                .sum();
            sum += chance * self.after(&answers).top_family().1;
        }
        sum
    }
}

/// The two looks that part best what is still possible.
#[must_use]
pub fn parting(
    evidence: &Evidence,
    at_hand: &[Instrument],
    now: &Posterior,
    ledger: &Ledger,
) -> Parting {
    let ladder = Ladder::of(ledger, Edge::Base);
    let rows = Rows::new(ledger, &ladder);
    let judge = Judge {
        prior: log_prior(ledger, evidence.came_from),
        base: terms(&counted(evidence), evidence.readings, &rows),
        rows,
        ladder,
        out: ["identity.out.finding", "identity.out.mark"].map(|id| ledger.value(id)),
        now,
    };
    let open_to_look =
        |f: &&FindingFact| Turn::of(f, at_hand) != Turn::Later && is_open(f, evidence);
    let mut single: Vec<(f64, &'static FindingFact)> = findings()
        .iter()
        .filter(open_to_look)
        .map(|f| (judge.expected(&[f]), f))
        .collect();
    single.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.id.cmp(b.1.id)));
    let lay: Vec<&'static FindingFact> = single
        .iter()
        .map(|(_, f)| *f)
        .filter(|f| Turn::of(f, at_hand) == Turn::First)
        .take(TRIED)
        .collect();
    let mut best: (f64, Vec<&'static FindingFact>) = (now.top_family().1, Vec::new());
    for (i, first) in lay.iter().enumerate() {
        for second in &lay[i + 1..] {
            if first.twin == second.twin || exclude_each_other(first.id, second.id) {
                continue;
            }
            let sure = judge.expected(&[first, second]);
            if sure > best.0 + 1e-9 {
                best = (sure, vec![*first, *second]);
            }
        }
    }
    best.1.sort_by_key(|f| f.invasive);
    let open = (best.0 < ledger.value(FigureId::LOOK_SETTLES)).then(|| {
        single
            .iter()
            .find(|(sure, f)| {
                Turn::of(f, at_hand) == Turn::Last && *sure > now.top_family().1 + 0.01
            })
            .map(|(_, f)| *f)
    });
    let looks = best
        .1
        .into_iter()
        .map(|f| PartingLook {
            finding: f,
            if_seen: judge.after(&[(f, Seen::Yes)]),
            if_absent: judge.after(&[(f, Seen::No)]),
        })
        .collect();
    Parting { looks, open }
}

/// What the looks will probably leave open, and the reading that tells more, in words; `None` where they
/// may settle it.
#[must_use]
pub fn open_in_words(parting: &Parting, now: &Posterior) -> Option<String> {
    let reading = parting.open?;
    let still = still_possible(now).join(" and ");
    let open = format!("These looks will probably leave it open between {still}.");
    Some(match reading {
        Some(f) => format!(
            "{open} An instrument can tell more: {} ({}).",
            f.title, f.needs
        ),
        None => open,
    })
}

/// The one or two families that lead.
fn still_possible(now: &Posterior) -> Vec<&'static str> {
    let mut families: Vec<Family> = Family::ALL.to_vec();
    families.sort_by(|a, b| now.family(*b).total_cmp(&now.family(*a)));
    families.truncate(2);
    families.into_iter().map(Family::name).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identity::interval_with;
    use crate::record::Answer;

    fn parted(ids: &[&'static str]) -> (Parting, Posterior) {
        let answers: Vec<Answer> = ids
            .iter()
            .map(|id| Answer {
                id,
                seen: Seen::Yes,
                part: None,
            })
            .collect();
        let evidence = Evidence {
            answers: &answers,
            readings: &[],
            came_from: None,
        };
        let ledger = Ledger::standard();
        let now = interval_with(&evidence, ledger).base;
        (parting(&evidence, &[], &now, ledger), now)
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
    fn a_look_that_what_was_seen_rules_out_is_not_offered() {
        let (parting, _) = parted(&["C01"]);
        for look in &parting.looks {
            assert!(!["C02", "C04", "C20"].contains(&look.finding.id));
        }
    }

    #[test]
    fn what_looking_cannot_settle_is_said_to_be_open() {
        // Worn to a metal nobody named: two looks are not enough.
        let (parting, now) = parted(&["S11"]);
        let words = open_in_words(&parting, &now).unwrap();
        assert!(words.contains("open"), "{words}");
        // Full hallmarks, cast: nothing is open.
        let (parting, now) = parted(&["M03", "C22"]);
        assert_eq!(open_in_words(&parting, &now), None);
    }
}
