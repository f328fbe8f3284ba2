//! When it was made: windows of the kinds, narrowed by dated findings and by the years a person was
//! told.
//!
//! Invariants: a kind keeps its probability however long its window is; years never move kinds; and
//! years that were told either narrow the answer or are said to clash with it.

use super::posterior::{FUSED_BODY, Posterior};
use crate::ledger::FigureId;
use crate::ledger::{Ledger, LowerEnd, Window, WindowAbout, finding, windows};
use crate::record::{Answer, Case};
use crate::terms::Seen;
use crate::terms::share;
use crate::terms::{Cluster, Kind};

/// First year considered.
const FIRST_YEAR: u16 = 1670;

/// Weight of every year and what shaped it.
#[derive(Clone, Debug)]
pub struct Dating {
    last: u16,
    /// For each kind, the probability of each year together with the kind; sums to 1 over all
    /// unless no year is possible.
    by_kind: [Vec<f64>; Kind::COUNT],
    reasons: Vec<String>,
    conflicts: Vec<String>,
    /// A dated finding of the body or a date that was told, not only a style.
    dated: bool,
    /// A span that ends this close to the last year is open.
    open_years: f64,
}

/// The middle nine tenths of the date, with the reasons for its ends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DateSpan {
    /// 5th percentile.
    pub from: u16,
    /// 95th percentile.
    pub to: u16,
    /// It may have been made lately, so that the end is said as "or later".
    pub open: bool,
    /// In words.
    pub reasons: Vec<String>,
}

/// The years a person was told, with how far they fade out.
struct Told {
    from: u16,
    to: u16,
    tail: f64,
    documented: bool,
}

impl Told {
    fn of(case: &Case, ledger: &Ledger) -> Option<Self> {
        let piece = &case.piece;
        if piece.from_year.is_none() && piece.to_year.is_none() {
            return None;
        }
        let documented = piece.documented;
        let tail = ledger.value(if documented {
            "identity.documented_tail"
        } else {
            "identity.told_tail"
        });
        Some(Self {
            from: piece.from_year.unwrap_or(0),
            to: piece.to_year.unwrap_or(u16::MAX),
            tail,
            documented,
        })
    }

    fn weight(&self, year: u16) -> f64 {
        let before = f64::from(self.from) - f64::from(year);
        let after = f64::from(year) - f64::from(self.to);
        fading(before.max(after), self.tail)
    }

    fn words(&self) -> String {
        match (self.from, self.to) {
            (from, u16::MAX) => format!("{from} or later"),
            (0, to) => format!("{to} or earlier"),
            (from, to) if from == to => format!("about {from}"),
            (from, to) => format!("between {from} and {to}"),
        }
    }
}

impl Dating {
    /// The weight over years: for each kind its own window, summing to 1, times the windows of the
    /// findings seen, brought back to the kind's probability. A kind to which the findings leave next
    /// to none of its years is left out. Then the years that were told, if they leave enough.
    #[must_use]
    pub fn new(case: &Case, posterior: &Posterior, ledger: &Ledger) -> Self {
        let today = case
            .asked_on
            .map_or(ledger.value(FigureId::IDENTITY_TODAY), |d| {
                f64::from(d.year)
            });
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to four digits
        let last = today.clamp(1900.0, 2999.0) as u16;
        let seen = seen_windows(&case.findings);
        let (by_kind, dropped) = years_by_kind(last, posterior, &seen, ledger);
        let mut dating = Self {
            last,
            by_kind,
            reasons: seen.iter().map(|w| w.what.to_owned()).collect(),
            conflicts: Vec::new(),
            dated: seen.iter().any(|w| !is_style(w.id)),
            open_years: ledger.value(FigureId::IDENTITY_OPEN_YEARS),
        };
        if dropped > ledger.value(FigureId::IDENTITY_WINDOW_DROPPED_SAID) {
            dating.reasons.push(format!(
                "kinds never made in these years are left out of the dating, {} of the answer",
                share(dropped)
            ));
        }
        if let Some(told) = Told::of(case, ledger) {
            dating.hear(&told, ledger.value(FigureId::IDENTITY_TOLD_LEAST));
        }
        dating
    }

    /// Narrows the years to those that were told, or says that they clash.
    fn hear(&mut self, told: &Told, least: f64) {
        let weight: Vec<f64> = (FIRST_YEAR..=self.last).map(|y| told.weight(y)).collect();
        let kept: f64 = self
            .by_kind
            .iter()
            .flat_map(|years| years.iter().zip(&weight).map(|(y, w)| y * w))
            .sum();
        let years = told.words();
        if kept < least {
            let source = if told.documented {
                "Its papers say"
            } else {
                "You were told"
            };
            self.conflicts.push(format!(
                "{source} {years}, but what was found leaves next to nothing of those years. They are left out: one \
                 of the two is wrong."
            ));
            return;
        }
        for kind in &mut self.by_kind {
            for (y, w) in kind.iter_mut().zip(&weight) {
                *y *= w / kept;
            }
        }
        self.dated = true;
        self.reasons.push(if told.documented {
            format!("its papers say {years}")
        } else {
            format!("you were told {years}")
        });
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
        let to = at(0.95);
        Some(DateSpan {
            from: at(0.05),
            to,
            open: f64::from(self.last - to) < self.open_years,
            reasons: self.reasons.clone(),
        })
    }

    /// What does not fit the years that were told, each in words.
    #[must_use]
    pub fn conflicts(&self) -> &[String] {
        &self.conflicts
    }

    /// Whether the piece counts as early: more likely than not made by the ledger's year, and dated by
    /// a finding of the body or by what was told. A style alone does not make it early, because styles
    /// were revived.
    #[must_use]
    pub fn is_early(&self, ledger: &Ledger) -> bool {
        self.dated && made_by(self, &FUSED_BODY, ledger.value(FigureId::VALUE_EARLY_YEAR)) >= 0.5
    }
}

/// The weight of each year for each kind, and the probability of the kinds left out.
fn years_by_kind(
    last: u16,
    posterior: &Posterior,
    seen: &[&Window],
    ledger: &Ledger,
) -> ([Vec<f64>; Kind::COUNT], f64) {
    let tail = ledger.value(FigureId::IDENTITY_WINDOW_TAIL).max(0.0);
    let shoulder = ledger
        .value(FigureId::IDENTITY_WINDOW_SHOULDER)
        .clamp(0.0, 1.0);
    let least = ledger.value(FigureId::IDENTITY_WINDOW_DROPPED).max(0.0);
    let found: Vec<f64> = (FIRST_YEAR..=last)
        .map(|y| seen.iter().map(|w| of_finding(w, y, last, tail)).product())
        .collect();
    let mut dropped = 0.0;
    let mut by_kind = Kind::ALL.map(|kind| {
        let own: Vec<f64> = (FIRST_YEAR..=last)
            .map(|y| kind_window(kind).map_or(1.0, |w| of_kind(w, y, last, tail, shoulder)))
            .collect();
        let whole: f64 = own.iter().sum();
        let joint: Vec<f64> = own.iter().zip(&found).map(|(o, f)| o * f / whole).collect();
        let kept: f64 = joint.iter().sum();
        let p = posterior.of(kind);
        if kept <= least {
            dropped += p;
            return vec![0.0; joint.len()];
        }
        joint.into_iter().map(|y| p * y / kept).collect()
    });
    let total: f64 = by_kind.iter().flatten().sum();
    if total > 0.0 {
        for weight in by_kind.iter_mut().flatten() {
            *weight /= total;
        }
    }
    (by_kind, dropped)
}

/// Chance that it was made by the end of `year`, given that it is one of `kinds`; 0 when they are
/// impossible.
fn made_by(dating: &Dating, kinds: &[Kind], year: f64) -> f64 {
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

/// Whether a finding dates only by style or form.
fn is_style(id: &str) -> bool {
    finding(id).is_some_and(|f| f.cluster == Cluster::Style)
}

fn kind_window(kind: Kind) -> Option<&'static Window> {
    windows()
        .iter()
        .find(|w| w.about == WindowAbout::Kind && w.id == kind.code())
}

/// Windows of the findings that were seen.
pub(super) fn seen_windows(answers: &[Answer]) -> Vec<&'static Window> {
    windows()
        .iter()
        .filter(|w| w.about != WindowAbout::Kind)
        .filter(|w| answers.iter().any(|a| a.id == w.id && a.seen == Seen::Yes))
        .collect()
}

/// 1 up to nothing outside, falling in a straight line to 0 over `tail` years.
fn fading(years_outside: f64, tail: f64) -> f64 {
    if years_outside <= 0.0 {
        1.0
    } else {
        (1.0 - years_outside / tail.max(f64::MIN_POSITIVE)).max(0.0)
    }
}

/// The weight a finding gives to a year: 1 inside its window, fading outside, never below its floor.
fn of_finding(w: &Window, year: u16, today: u16, tail: f64) -> f64 {
    let early = f64::from(w.from) - f64::from(year);
    let late = f64::from(year) - f64::from(w.to.unwrap_or(today));
    let below = match w.lower_end {
        LowerEnd::Hard => fading(early, 0.0),
        LowerEnd::Soft => fading(early, tail),
    };
    below.min(fading(late, tail)).max(w.floor)
}

/// The weight of a year for a kind: 1 in its peak, `shoulder` in its first and last year, straight
/// between; outside it fades from the shoulder, with nothing before a hard lower end.
fn of_kind(w: &Window, year: u16, today: u16, tail: f64, shoulder: f64) -> f64 {
    let y = f64::from(year);
    let [from, peak_from] = [w.from, w.peak.0].map(f64::from);
    let [peak_to, to] = [w.peak.1, w.to].map(|end| f64::from(end.unwrap_or(today)));
    let between = |part: f64, whole: f64| shoulder + (1.0 - shoulder) * part / whole.max(1.0);
    if y < from {
        match w.lower_end {
            LowerEnd::Hard => 0.0,
            LowerEnd::Soft => shoulder * fading(from - y, tail),
        }
    } else if y > to {
        shoulder * fading(y - to, tail)
    } else if y < peak_from {
        between(y - from, peak_from - from)
    } else if y > peak_to {
        between(to - y, to - peak_to)
    } else {
        1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identity::{Evidence, interval_with};

    /// The span for these findings and told years, asked in 2026.
    fn dated(seen: &[&'static str], told: Option<(u16, u16)>) -> (DateSpan, Vec<String>, bool) {
        let mut case = Case::default();
        case.piece.from_year = told.map(|t| t.0);
        case.piece.to_year = told.map(|t| t.1);
        case.findings = seen
            .iter()
            .map(|id| Answer {
                id,
                seen: Seen::Yes,
                part: None,
            })
            .collect();
        let ledger = Ledger::standard();
        let p = interval_with(&Evidence::of(&case, &[]), ledger).base;
        let dating = Dating::new(&case, &p, ledger);
        let early = dating.is_early(ledger);
        (dating.span().unwrap(), dating.conflicts.clone(), early)
    }

    fn years(seen: &[&'static str], told: Option<(u16, u16)>) -> (u16, u16) {
        let span = dated(seen, told).0;
        (span.from, span.to)
    }

    #[test]
    fn spans_match_those_worked_out_apart_from_the_program() {
        assert_eq!(years(&["C01", "C08"], None), (1763, 1847));
        assert_eq!(years(&["C01", "C08"], Some((1780, 1800))), (1775, 1804));
        assert_eq!(years(&["M01", "S04"], None), (1852, 2017));
        assert_eq!(years(&["M01", "S04"], Some((1880, 1900))), (1876, 1905));
        assert_eq!(years(&["C17", "C05", "M05"], None), (1750, 1778));
        assert_eq!(years(&["C01", "C07", "C25", "F03"], None), (1803, 1843));
    }

    #[test]
    fn a_told_date_that_cannot_be_is_said_and_left_out() {
        // Electroplating begins in 1840 (patent; Victoria and Albert Museum).
        let (span, conflicts, _) = dated(&["M01", "S04"], Some((1780, 1800)));
        assert_eq!((span.from, span.to), (1852, 2017));
        assert_eq!(conflicts.len(), 1);
        assert!(dated(&["M01", "S04"], Some((1880, 1900))).1.is_empty());
    }

    #[test]
    fn a_window_that_reaches_our_days_is_open() {
        assert!(dated(&["M01", "S04"], None).0.open);
        assert!(!dated(&["C01", "C08"], None).0.open);
    }

    #[test]
    fn a_style_alone_does_not_make_a_piece_early() {
        assert!(dated(&["C17", "C05", "M05"], None).2);
        assert!(!dated(&["C17", "C05", "F01"], None).2);
    }

    #[test]
    fn nothing_is_dated_before_a_hard_lower_end() {
        assert!(years(&["M01"], None).0 >= 1840);
        let w = kind_window(Kind::Ens).unwrap();
        assert!(of_kind(w, 1839, 2026, 10.0, 0.3) <= 0.0);
    }
}
