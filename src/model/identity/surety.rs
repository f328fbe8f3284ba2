//! How firmly a family may be named: never more firmly than the looks justify.

use super::posterior::{Evidence, FUSED_BODY};
use crate::ledger::{FigureId, FindingFact, FindingId, Ledger};
use crate::terms::{Cluster, Family, Kind, Letter};
use crate::terms::{PartName, Seen};

/// Words for how sure an answer is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Surety {
    /// No family is settled.
    Open,
    /// Probably.
    Probable,
    /// Very probably.
    VeryProbable,
    /// Almost certainly.
    AlmostCertain,
}

impl Surety {
    /// From the low end of the range over ladders and priors, limited by what the looks justify.
    #[must_use]
    pub fn of(low: f64, carried: Carried, ledger: &Ledger) -> Self {
        let at = |id: FigureId| low >= ledger.value(id);
        if at(FigureId::IDENTITY_SURE_CERTAIN) && carried == Carried::ByMore {
            Self::AlmostCertain
        } else if at(FigureId::IDENTITY_SURE_VERY) {
            Self::VeryProbable
        } else if at(FigureId::IDENTITY_SURE_PROBABLE) {
            Self::Probable
        } else {
            Self::Open
        }
    }

    /// In words that precede the name of a family.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::AlmostCertain => "Almost certainly",
            Self::VeryProbable => "Very probably",
            Self::Probable => "Probably",
            Self::Open => "Not settled; the likeliest is",
        }
    }
}

/// What supports an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carried {
    /// One sort of look, or none.
    ByOne,
    /// Two independent sorts of look that favour the family, a decisive mark or an instrument.
    ByMore,
}

impl Carried {
    /// What supports the answer `family`.
    #[must_use]
    pub fn of(evidence: &Evidence, family: Family) -> Self {
        let mut clusters: Vec<Cluster> = Vec::new();
        let mut decisive = evidence.readings.iter().any(|r| r.counts);
        for (f, part) in seen(evidence) {
            decisive |= is_decisive(f, part) || is_instrument(f);
            if favours(f, family) && !clusters.contains(&f.cluster) {
                clusters.push(f.cluster);
            }
        }
        if decisive || clusters.len() >= 2 {
            Self::ByMore
        } else {
            Self::ByOne
        }
    }
}

/// Findings that were seen, each with the part it was seen on.
fn seen(evidence: &Evidence) -> impl Iterator<Item = (&'static FindingFact, Option<PartName>)> {
    evidence
        .answers
        .iter()
        .filter(|a| a.seen == Seen::Yes)
        .map(|a| (a.id.fact(), a.part))
}

/// A mark that names what the piece is: EPNS, full hallmarks on the body, a number of coats, silver on
/// copper.
fn is_decisive(f: &FindingFact, part: Option<PartName>) -> bool {
    let on_body = matches!(part, None | Some(PartName::Body));
    matches!(f.id, FindingId::M01 | FindingId::M16 | FindingId::M18)
        || (f.id == FindingId::M03 && on_body)
}

/// A reading of an instrument, or a weighing in water.
fn is_instrument(f: &FindingFact) -> bool {
    f.cluster == Cluster::Phys && f.invasive >= 2
}

/// Whether some kind of the family explains the finding better than every kind outside it, or as well as the
/// best of them while some kind outside does worse.
fn favours(f: &FindingFact, family: Family) -> bool {
    let best = |inside: bool| {
        Kind::LADDER
            .into_iter()
            .filter(|k| (k.family() == family) == inside)
            .filter_map(|k| f.letter(k))
            .min()
    };
    let worst = f.letters.iter().max();
    best(true) <= best(false) && best(true) < worst.copied()
}

/// Whether a seen finding distinguishes fused plate from copper plated later: some kind with a fused body
/// explains it two steps better than both electroplate on copper and reproductions.
#[must_use]
pub(super) fn fused_is_parted_from_copies(evidence: &Evidence) -> bool {
    let step = |l: Option<Letter>| l.map_or(0, |l| l as usize);
    seen(evidence).any(|(f, _)| {
        let fused = FUSED_BODY.iter().map(|k| step(f.letter(*k))).min();
        let copies = [Kind::Ecu, Kind::Rep].map(|k| step(f.letter(k)));
        fused.is_some_and(|fused| copies.iter().all(|c| fused + 2 <= *c))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Answer;

    fn answers(ids: &[&'static str]) -> Vec<Answer> {
        ids.iter()
            .map(|id| Answer {
                id: FindingId::parse(id).unwrap(),
                seen: Seen::Yes,
                part: None,
            })
            .collect()
    }

    fn carried(ids: &[&'static str], family: Family) -> Carried {
        let answers = answers(ids);
        Carried::of(&evidence(&answers), family)
    }

    fn evidence(answers: &[Answer]) -> Evidence<'_> {
        Evidence {
            answers,
            readings: &[],
            came_from: None,
        }
    }

    #[test]
    fn one_sort_of_look_never_makes_an_answer_almost_certain() {
        assert_eq!(
            carried(&["C06", "C07", "C08"], Family::Fused),
            Carried::ByOne
        );
        assert_eq!(carried(&["C01", "C08"], Family::Fused), Carried::ByMore);
        assert_eq!(carried(&["M01"], Family::Electroplate), Carried::ByMore);
        assert_eq!(carried(&["P02"], Family::Solid), Carried::ByMore);
        let ledger = Ledger::standard();
        assert_eq!(
            Surety::of(0.999, Carried::ByOne, ledger),
            Surety::VeryProbable
        );
        assert_eq!(Surety::of(0.2, Carried::ByMore, ledger), Surety::Open);
    }

    #[test]
    fn copper_alone_does_not_distinguish_fused_plate_from_copies() {
        for (ids, parted) in [
            (&["S03"][..], false),
            (&["S03", "C14"], false),
            (&["S03", "C08"], true),
            (&["C13"], true),
            (&["C07"], true),
        ] {
            let answers = answers(ids);
            assert_eq!(
                fused_is_parted_from_copies(&evidence(&answers)),
                parted,
                "{ids:?}"
            );
        }
    }
}
