//! Findings that do not fit together.

use super::dates::seen_windows;
use super::kind::Kind;
use super::posterior::Ladder;
use crate::case::{Answer, Case, PartName, Seen};
use crate::facts::{FindingFact, Ledger, WindowAbout, findings};

/// Two seen findings that no one kind, or no one year, explains together.
#[derive(Clone, Debug, PartialEq)]
pub struct Contradiction {
    /// The two findings.
    pub findings: [&'static FindingFact; 2],
    /// Seen on different parts, so that a married piece explains it.
    pub different_parts: bool,
    /// In words.
    pub text: String,
}

/// Every pair of seen findings whose joint support is below what any kind explains, or whose date
/// windows do not meet.
///
/// Joint support of a pair = max over kinds of p1 p2, divided by (max p1)(max p2); 1 when one kind
/// explains both best. Below the ledger's limit the pair is named.
#[must_use]
pub fn contradictions(case: &Case, ledger: &Ledger) -> Vec<Contradiction> {
    let ladder = Ladder::of(ledger, "base");
    let limit = ledger.value("identity.contradiction");
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
            let by_kind = joint_support(first, second, &ladder) < limit;
            let years = apart(on_first[0], on_second[0]);
            if !by_kind && years.is_none() {
                continue;
            }
            let parts = apart_on_the_piece(on_first, on_second);
            let text = words(first, second, parts, years);
            found.push(Contradiction {
                findings: [first, second],
                different_parts: parts.is_some(),
                text,
            });
        }
    }
    found
}

/// Two parts that carry the two findings, when no part carries both and every place is told; the
/// first of each in the order of the list of parts.
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

fn joint_support(a: &FindingFact, b: &FindingFact, ladder: &Ladder) -> f64 {
    let of = |f: &FindingFact, k: Kind| f.letter(k).map_or(0.0, |l| ladder.step(l));
    let best = |f: &FindingFact| Kind::LADDER.iter().map(|k| of(f, *k)).fold(0.0, f64::max);
    let joint = Kind::LADDER
        .iter()
        .map(|k| of(a, *k) * of(b, *k))
        .fold(0.0, f64::max);
    joint / (best(a) * best(b))
}

/// The years of two findings that do not meet, in words.
fn apart(a: &Answer, b: &Answer) -> Option<String> {
    let of = |x: &Answer| {
        seen_windows(std::slice::from_ref(x))
            .into_iter()
            .find(|w| w.about == WindowAbout::Body)
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

fn words(
    a: &FindingFact,
    b: &FindingFact,
    parts: Option<(PartName, PartName)>,
    years: Option<String>,
) -> String {
    let pair = format!("“{}” and “{}”", a.title, b.title);
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
