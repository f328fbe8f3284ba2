//! Findings that contradict each other.

use super::dates::seen_windows;
use super::judged_reading::JudgedReading;
use super::posterior::{Edge, Ladder, counts, is_replaced};
use super::turn::Turn;
use crate::ledger::EvidenceId;
use crate::ledger::{FigureId, FindingFact, FindingId, Ledger, WindowOf, findings};
use crate::record::{Answer, Case};
use crate::terms::{ByLadderKind, Cluster};
use crate::terms::{PartName, Seen};

/// Two seen findings that no single kind, or no single year, explains together.
#[derive(Clone, Debug, PartialEq)]
pub struct Contradiction {
    /// The two findings.
    pub findings: [&'static FindingFact; 2],
    /// They were seen on different parts, so a married piece would explain them.
    pub different_parts: bool,
    /// The available look that distinguishes the two best; `None` if none does.
    pub settled_by: Option<&'static FindingFact>,
    /// In words.
    pub text: String,
}

/// Every pair of seen findings whose joint support is below the ledger's limit, or whose date windows do not
/// overlap.
///
/// The joint support of a pair is the maximum over kinds of p1 p2, divided by (max p1)(max p2). It is 1 when
/// one kind is the best explanation of both.
#[must_use]
pub fn contradictions(case: &Case, ledger: &Ledger) -> Vec<Contradiction> {
    let ladder = Ladder::of(ledger, Edge::Base);
    let limit = ledger.value(FigureId::IDENTITY_CONTRADICTION);
    let seen: Vec<(&'static FindingFact, Vec<&Answer>)> = findings()
        .iter()
        .map(|f| {
            (
                f,
                case.findings
                    .iter()
                    .filter(|a| a.id == f.id && a.seen == Seen::Yes)
                    .collect::<Vec<_>>(),
            )
        })
        .filter(|(_, answers)| !answers.is_empty())
        .collect();
    let mut found = Vec::new();
    for (i, (first, on_first)) in seen.iter().enumerate() {
        for (second, on_second) in &seen[i + 1..] {
            let parts = apart_on_the_piece(on_first, on_second);
            let exclude = parts.is_none() && exclude_each_other(first.id, second.id);
            let by_kind = joint_support(&of(first, &ladder), &of(second, &ladder)) < limit;
            let years = apart(on_first[0], on_second[0]);
            if !by_kind && years.is_none() && !exclude {
                continue;
            }
            let text = if exclude {
                excluded_words(first.title, second.title)
            } else {
                words(first.title, second.title, parts, years)
            };
            let claims = [first, second].map(|f| Claim::of(f, &ladder));
            let settled_by = settling_look(case, &[], &claims, &ladder);
            let look = settled_by.map(|look| look_words(look, &claims, &ladder));
            found.push(Contradiction {
                findings: [first, second],
                different_parts: parts.is_some(),
                settled_by,
                text: text + look.as_deref().unwrap_or(""),
            });
        }
    }
    found
}

/// One side of a contradiction: a finding or a reading, with its likelihood by kind.
#[derive(Clone, Copy)]
struct Claim {
    id: EvidenceId,
    title: &'static str,
    /// A look with the same twin settles nothing.
    twin: &'static str,
    likelihood: ByLadderKind,
}

impl Claim {
    fn of(f: &FindingFact, ladder: &Ladder) -> Self {
        Self {
            id: EvidenceId::Finding(f.id),
            title: f.title,
            twin: f.twin,
            likelihood: of(f, ladder),
        }
    }
}

/// The look that distinguishes two claims best: among the open looks that need nothing beyond what is at
/// hand, the one whose chance of being seen differs most between the kinds that explain one claim and the
/// kinds that explain the other.
fn settling_look(
    case: &Case,
    readings: &[JudgedReading],
    claims: &[Claim; 2],
    ladder: &Ladder,
) -> Option<&'static FindingFact> {
    let answered = |f: &FindingFact| case.answer(f.id).is_some_and(|seen| seen != Seen::Unsure);
    let ruled_out = |f: &FindingFact| {
        let seen = case.findings.iter().filter(|a| a.seen == Seen::Yes);
        let mut seen = seen.map(|a| a.id);
        seen.any(|id| exclude_each_other(id, f.id))
    };
    let open = findings().iter().filter(|f| {
        // Marks and styles say which kinds can have them, not how common they are.
        !matches!(f.cluster, Cluster::Mark | Cluster::Style | Cluster::Date)
            && Turn::of(f, &case.instruments) == Turn::First
            && !answered(f)
            && !ruled_out(f)
            && !is_replaced(f.id, readings)
            && claims.iter().all(|one| one.twin != f.twin)
    });
    let mut best: Option<(f64, &'static FindingFact)> = None;
    for look in open {
        let [first, second] = chances(look, claims, ladder);
        let apart = (first - second).abs();
        if apart > best.map_or(1e-9, |(most, _)| most) {
            best = Some((apart, look));
        }
    }
    best.map(|(_, look)| look)
}

/// The chance that a look is positive if the first claim is right, and if the second is.
fn chances(look: &FindingFact, claims: &[Claim; 2], ladder: &Ladder) -> [f64; 2] {
    let there = of(look, ladder);
    claims.map(|claim| {
        let weights = claim.likelihood;
        let joint: f64 = weights.iter().zip(&there).map(|(w, p)| w * p).sum();
        joint / weights.iter().sum::<f64>()
    })
}

/// Two parts that carry the two findings, when no part carries both and the part of every finding is given;
/// for each finding, the part that comes first in the list of parts.
fn apart_on_the_piece(a: &[&Answer], b: &[&Answer]) -> Option<(PartName, PartName)> {
    let told = |answers: &[&Answer]| {
        answers
            .iter()
            .map(|x| x.part)
            .collect::<Option<Vec<PartName>>>()
    };
    let (a, b) = (told(a)?, told(b)?);
    if a.iter().any(|part| b.contains(part)) {
        return None;
    }
    a.into_iter().min().zip(b.into_iter().min())
}

/// Groups of findings of which one spot can show only one.
const ONE_OF: [&[FindingId]; 14] = [
    &[FindingId::C14, FindingId::C15],
    &[FindingId::C25, FindingId::C26],
    &[
        FindingId::C17,
        FindingId::C18,
        FindingId::C30,
        FindingId::C31,
    ],
    &[FindingId::C04, FindingId::C20],
    &[FindingId::C01, FindingId::C02, FindingId::C04],
    &[FindingId::S01, FindingId::S02],
    &[FindingId::S14, FindingId::S15, FindingId::S16],
    &[
        FindingId::M01,
        FindingId::M01B,
        FindingId::M02,
        FindingId::M30,
    ],
    &[FindingId::P15, FindingId::P16],
    &[FindingId::D01, FindingId::D02],
    &[
        FindingId::P02,
        FindingId::P03,
        FindingId::P04,
        FindingId::P05,
    ],
    &[FindingId::P06, FindingId::P07, FindingId::P08],
    &[FindingId::P09, FindingId::P10, FindingId::P13],
    &[FindingId::P11, FindingId::P12],
];

/// Findings of engraving or chasing, or of the shield it was cut in.
const ENGRAVED: [FindingId; 6] = [
    FindingId::C14,
    FindingId::C15,
    FindingId::C24,
    FindingId::C27,
    FindingId::C29,
    FindingId::C23,
];

/// Whether two findings say opposite things about one spot.
pub(super) fn exclude_each_other(a: FindingId, b: FindingId) -> bool {
    // "No mark anywhere" excludes every mark.
    let unmarked =
        |x: FindingId, y: FindingId| x == FindingId::M10 && y.fact().cluster == Cluster::Mark;
    // "No engraving at all" excludes every finding of engraving.
    let plain = |x: FindingId, y: FindingId| x == FindingId::C34 && ENGRAVED.contains(&y);
    unmarked(a, b)
        || unmarked(b, a)
        || plain(a, b)
        || plain(b, a)
        || ONE_OF
            .iter()
            .any(|group| group.contains(&a) && group.contains(&b))
}

/// A reading with a number that no kind explains together with a seen finding or with another reading.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadingClash {
    /// The two observations.
    pub between: [EvidenceId; 2],
    /// The available look that distinguishes the two best; `None` if none does.
    pub settled_by: Option<&'static FindingFact>,
    /// In words.
    pub text: String,
}

/// Readings with a number that no kind explains together with a seen finding, or with each other.
#[must_use]
pub fn readings_that_clash(
    case: &Case,
    readings: &[JudgedReading],
    ledger: &Ledger,
) -> Vec<ReadingClash> {
    let ladder = Ladder::of(ledger, Edge::Base);
    let limit = ledger.value(FigureId::IDENTITY_CONTRADICTION);
    let mut others: Vec<Claim> = findings()
        .iter()
        .filter(|f| case.has_seen(f.id))
        .map(|f| Claim::of(f, &ladder))
        .collect();
    let mut found = Vec::new();
    for reading in readings.iter().filter(|r| r.counts) {
        let own = Claim {
            id: EvidenceId::Reading(reading.of),
            title: reading.title,
            twin: reading.of.id(),
            likelihood: reading.likelihood(&ladder),
        };
        for other in &others {
            if joint_support(&own.likelihood, &other.likelihood) < limit {
                let claims = [*other, own];
                let settled_by = settling_look(case, readings, &claims, &ladder);
                let look = settled_by.map(|look| look_words(look, &claims, &ladder));
                found.push(ReadingClash {
                    between: claims.map(|c| c.id),
                    settled_by,
                    text: words(other.title, own.title, None, None) + look.as_deref().unwrap_or(""),
                });
            }
        }
        others.push(own);
    }
    found
}

/// Likelihood of a finding by kind.
fn of(f: &FindingFact, ladder: &Ladder) -> ByLadderKind {
    f.letters.map(|l| ladder.step(l))
}

fn joint_support(a: &ByLadderKind, b: &ByLadderKind) -> f64 {
    let best = |x: &ByLadderKind| x.iter().copied().fold(0.0, f64::max);
    let joint = a.iter().zip(b).map(|(a, b)| a * b).fold(0.0, f64::max);
    joint / (best(a) * best(b))
}

/// The two date windows in words, when they do not overlap.
fn apart(a: &Answer, b: &Answer) -> Option<String> {
    let of = |x: &Answer| {
        seen_windows(std::slice::from_ref(x))
            .into_iter()
            .find(|w| matches!(w.of, WindowOf::Body(_)))
            .map(|w| (w.from, w.to.unwrap_or(u16::MAX)))
    };
    let ((a_from, a_to), (b_from, b_to)) = (of(a)?, of(b)?);
    (a_to < b_from || b_to < a_from).then(|| {
        let (early, late) = if a_to < b_from {
            (a_to, b_from)
        } else {
            (b_to, a_from)
        };
        format!("one ends about {early}, the other begins about {late}")
    })
}

/// What the settling look would show in either case.
fn look_words(look: &FindingFact, claims: &[Claim; 2], ladder: &Ladder) -> String {
    let [first, second] = chances(look, claims, ladder);
    let (there, not_there) = if first > second {
        (claims[0], claims[1])
    } else {
        (claims[1], claims[0])
    };
    let absent = if counts(look, Seen::No) {
        format!(
            "; if you look and it is not there, for “{}”",
            not_there.title
        )
    } else {
        String::new()
    };
    format!(
        " The look that parts them best: “{}”. If it is there, it speaks for “{}”{absent}.",
        look.title, there.title
    )
}

fn excluded_words(a: &str, b: &str) -> String {
    format!(
        "“{a}” and “{b}”: one spot can show only one of the two. Look again and keep the one you are sure of; if each was on a part of its own, say which."
    )
}

fn words(a: &str, b: &str, parts: Option<(PartName, PartName)>, years: Option<String>) -> String {
    let pair = format!("“{a}” and “{b}”");
    let clash = years.map_or_else(
        || "no one kind of piece shows both".to_owned(),
        |y| format!("their dates do not meet: {y}"),
    );
    match parts {
        Some((x, y)) => format!(
            "{pair}: {clash}. They were seen on different parts ({}, {}), so it may be a married piece, made up from two.",
            x.label().to_ascii_lowercase(),
            y.label().to_ascii_lowercase()
        ),
        None => format!(
            "{pair}: {clash}. Either they belong to different parts of a married piece, or one is misread. Look again."
        ),
    }
}
