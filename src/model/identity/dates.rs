//! When it was made: windows of the kinds and of dated findings, with soft edges.

use super::posterior::Posterior;
use crate::ledger::{Ledger, Window, WindowAbout, windows};
use crate::record::{Answer, Case, Seen};
use crate::terms::Kind;

/// First year considered.
const FIRST_YEAR: u16 = 1670;

/// Weight of every year and what shaped it.
#[derive(Clone, Debug)]
pub struct Dating {
    last: u16,
    /// For each kind, the probability of each year together with the kind; sums to 1 over all
    /// unless no year is possible.
    by_kind: [Vec<f64>; 12],
    findings: Vec<&'static Window>,
}

/// The middle nine tenths of the date, with the reasons for its ends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DateSpan {
    /// 5th percentile.
    pub from: u16,
    /// 95th percentile.
    pub to: u16,
    /// In words.
    pub reasons: Vec<String>,
}

impl Dating {
    /// The weight over years: sum over kinds of P(kind) times the kind's trapezoid times the
    /// trapezoids of the findings seen, with linear tails as long as the ledger says. A finding that
    /// dates only the present silver says nothing about a fused body plated again later.
    #[must_use]
    pub fn new(case: &Case, posterior: &Posterior, ledger: &Ledger) -> Self {
        let today = case
            .asked_on
            .map_or(ledger.value("identity.today"), |d| f64::from(d.year));
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to four digits
        let last = today.clamp(1900.0, 2999.0) as u16;
        let tail = ledger.value("identity.window_tail").max(0.0);
        let findings = seen_windows(&case.findings);
        // What the findings say is the same for all kinds, but for those about the present silver.
        let said = |skin: bool| -> Vec<f64> {
            let windows = findings
                .iter()
                .filter(|w| (w.about == WindowAbout::Skin) == skin);
            let mut weights = vec![1.0; usize::from(last - FIRST_YEAR) + 1];
            for window in windows {
                for (weight, year) in weights.iter_mut().zip(FIRST_YEAR..) {
                    *weight *= trapezoid(window, year, last, tail);
                }
            }
            weights
        };
        let (of_piece, of_skin) = (said(false), said(true));
        let mut by_kind = Kind::ALL.map(|kind| {
            let window = windows()
                .iter()
                .find(|w| w.about == WindowAbout::Kind && w.id == kind.code());
            let p = posterior.of(kind);
            let years = (FIRST_YEAR..).zip(&of_piece).zip(&of_skin);
            years
                .map(|((year, piece), skin)| {
                    let own = window.map_or(1.0, |w| trapezoid(w, year, last, tail));
                    let skin = if kind == Kind::Rfp { 1.0 } else { *skin };
                    p * own * piece * skin
                })
                .collect::<Vec<_>>()
        });
        let total: f64 = by_kind.iter().flatten().sum();
        if total > 0.0 {
            for weight in by_kind.iter_mut().flatten() {
                *weight /= total;
            }
        }
        Self {
            last,
            by_kind,
            findings,
        }
    }

    fn year_weights(&self) -> Vec<f64> {
        let mut all = vec![0.0; usize::from(self.last - FIRST_YEAR) + 1];
        for weights in &self.by_kind {
            for (sum, w) in all.iter_mut().zip(weights) {
                *sum += w;
            }
        }
        all
    }

    /// The middle nine tenths; `None` when the findings leave no year possible.
    #[must_use]
    pub fn span(&self) -> Option<DateSpan> {
        let weights = self.year_weights();
        let total: f64 = weights.iter().sum();
        if total <= 0.0 {
            return None;
        }
        let at = |p: f64| {
            let mut sum = 0.0;
            (FIRST_YEAR..=self.last)
                .zip(&weights)
                .find(|(_, w)| {
                    sum += **w;
                    sum >= p * total
                })
                .map_or(self.last, |(year, _)| year)
        };
        let reasons = self.findings.iter().map(|w| w.what.to_owned()).collect();
        Some(DateSpan {
            from: at(0.05),
            to: at(0.95),
            reasons,
        })
    }
}

/// Chance that it was made by the end of `year`, given that it is one of `kinds`; 0 when they are
/// impossible.
#[must_use]
pub fn made_by(dating: &Dating, kinds: &[Kind], year: f64) -> f64 {
    let (mut before, mut all) = (0.0, 0.0);
    for kind in kinds {
        for (y, w) in (FIRST_YEAR..=dating.last).zip(&dating.by_kind[kind.index()]) {
            all += w;
            if f64::from(y) <= year {
                before += w;
            }
        }
    }
    if all > 0.0 { before / all } else { 0.0 }
}

/// What does not fit the years a person was told, each in words: findings of the body whose window
/// does not meet them, and the likeliest kind when it was not made then. Nothing is averaged away.
#[must_use]
pub fn date_conflicts(case: &Case, posterior: &Posterior, ledger: &Ledger) -> Vec<String> {
    let (Some(from), to) = (
        case.piece.from_year.or(case.piece.to_year),
        case.piece.to_year,
    ) else {
        return Vec::new();
    };
    let to = to.unwrap_or(u16::MAX);
    let told = match (case.piece.from_year, case.piece.to_year) {
        (Some(a), Some(b)) => format!("between {a} and {b}"),
        (Some(a), None) => format!("{a} or later"),
        (None, Some(b)) => format!("{b} or earlier"),
        (None, None) => return Vec::new(),
    };
    let from = if case.piece.from_year.is_some() {
        from
    } else {
        0
    };
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to years
    let tail = ledger.value("identity.window_tail").clamp(0.0, 100.0) as u16;
    let misses =
        |w: &Window| w.from > to.saturating_add(tail) || w.to.is_some_and(|end| end + tail < from);
    let mut conflicts: Vec<String> = seen_windows(&case.findings)
        .into_iter()
        .filter(|w| w.about == WindowAbout::Body && misses(w))
        .map(|w| {
            format!(
                "You were told {told}, but: {}. One of the two is wrong.",
                w.what
            )
        })
        .collect();
    let top = posterior.top_kind();
    let own = windows()
        .iter()
        .find(|w| w.about == WindowAbout::Kind && w.id == top.code());
    if let Some(w) = own.filter(|w| posterior.of(top) >= 0.5 && misses(w)) {
        conflicts.push(format!(
            "You were told {told}, but it looks like {}: {}.",
            top.name(),
            w.what
        ));
    }
    conflicts
}

/// Windows of the findings that were seen.
pub(super) fn seen_windows(answers: &[Answer]) -> Vec<&'static Window> {
    windows()
        .iter()
        .filter(|w| w.about != WindowAbout::Kind)
        .filter(|w| answers.iter().any(|a| a.id == w.id && a.seen == Seen::Yes))
        .collect()
}

/// 1 inside the window, falling in a straight line to 0 over `tail` years outside it.
fn trapezoid(window: &Window, year: u16, today: u16, tail: f64) -> f64 {
    let outside = |years: f64| {
        if years <= 0.0 {
            1.0
        } else {
            (1.0 - years / tail.max(f64::MIN_POSITIVE)).max(0.0)
        }
    };
    let early = f64::from(window.from) - f64::from(year);
    let late = f64::from(year) - f64::from(window.to.unwrap_or(today));
    outside(early).min(outside(late))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identity::{CopperRule, Ladder, posterior};
    use crate::record::Answer;

    fn conflicts(seen: &[&'static str], from: Option<u16>, to: Option<u16>) -> Vec<String> {
        let mut case = Case::default();
        case.piece.from_year = from;
        case.piece.to_year = to;
        case.findings = seen
            .iter()
            .map(|id| Answer {
                id,
                seen: Seen::Yes,
                part: None,
            })
            .collect();
        let ledger = Ledger::standard();
        let p = posterior(
            &case.findings,
            ledger,
            &Ladder::of(ledger, "base"),
            CopperRule::Guarded,
        );
        date_conflicts(&case, &p, ledger)
    }

    #[test]
    fn a_told_date_that_cannot_be_is_reported() {
        // Electroplating begins in 1840 (patent; Victoria and Albert Museum).
        assert!(conflicts(&["M01", "S04"], Some(1780), Some(1800)).len() >= 2);
        assert_eq!(
            conflicts(&["M01", "S04"], Some(1880), Some(1900)),
            Vec::<String>::new()
        );
        assert_eq!(conflicts(&["M01", "S04"], None, None), Vec::<String>::new());
        assert!(!conflicts(&["M05"], Some(1800), None).is_empty());
        assert!(!conflicts(&["M02", "S05"], None, Some(1800)).is_empty());
    }
}
