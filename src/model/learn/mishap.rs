//! Bad results: how many are recorded, how many were to be expected, and what that makes of the chances.
//!
//! They are counted and shown beside what was expected. Nothing here is taught: two hundred pieces do not
//! find how often work goes wrong, and what is recorded comes from those who did the work.

use super::evidence::PieceEvidence;
use crate::ledger::{FigureId, Ledger};
use crate::maths::{Beta, Z5};
use crate::terms::ShortSort;
use crate::treatment::{MishapRisk, work};
use crate::value::Class;

/// A work on a group of classes: its chance of a bad result, and what is recorded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cell {
    /// The figure of the chance.
    pub chance: FigureId,
    /// Works whose result is recorded.
    pub n: f64,
    /// How many of them went wrong.
    pub bad: f64,
    /// Shapes of the beta law of the chance, with what is recorded.
    pub law: (f64, f64),
    /// Shapes without it.
    pub before: (f64, f64),
}

impl Cell {
    /// The chance that the evidence points to: the shipped middle, moved as the median of its law moved.
    #[must_use]
    pub fn chance_seen(&self) -> f64 {
        let median = |(a, b): (f64, f64)| Beta::new(a, b).quantile(0.5, f64::NAN);
        let shipped = Ledger::standard().value(self.chance);
        (shipped * median(self.law) / median(self.before)).min(MOST)
    }
}

/// Every cell, and the total.
#[derive(Clone, Debug, PartialEq)]
pub struct MishapCount {
    /// The cells, in order of their figures.
    pub cells: Vec<Cell>,
    /// Works whose result is recorded.
    pub works: f64,
    /// Bad results.
    pub bad: f64,
    /// Bad results that would be expected.
    pub expected: f64,
    /// How many times as many went wrong as expected, held to 1 by what was known before.
    pub times: f64,
}

/// No chance is held higher than this.
const MOST: f64 = 0.95;

/// Mean of a chance, and its squared coefficient of variation, as a lognormal of its range.
fn mean_and_spread(id: FigureId) -> (f64, f64) {
    let figure = Ledger::standard().figure(id);
    let sd = libm::log(figure.high / figure.low) / (2.0 * Z5);
    let spread = libm::exp(sd * sd) - 1.0;
    (figure.value * libm::exp(0.5 * sd * sd), spread)
}

/// The figures of every chance that a work has for itself.
fn chances() -> Vec<FigureId> {
    let mut all: Vec<FigureId> = crate::terms::Treatment::ALL
        .into_iter()
        .filter_map(|t| match work(t)?.risk {
            MishapRisk::Figures(mishaps) => Some(mishaps.chance),
            MishapRisk::None | MishapRisk::ByClass => None,
        })
        .flatten()
        .collect();
    all.order_by(Ord::cmp);
    all.dedup();
    debug_assert_eq!(all.len() % Class::HAZARD_GROUPS.len(), 0);
    all
}

/// Counts the recorded results. For each cell the share of doubt that all cells have in common is moved by the
/// other cells only, so that nothing counts twice.
#[must_use]
pub fn count_mishaps(evidence: &[PieceEvidence]) -> MishapCount {
    let recorded: Vec<(FigureId, f64, f64)> = chances()
        .into_iter()
        .map(|chance| {
            let results = evidence.iter().flat_map(|one| &one.results);
            let (mut n, mut bad) = (0.0, 0.0);
            for result in results.filter(|result| result.chance == chance) {
                n += 1.0;
                bad += f64::from(u8::from(result.bad));
            }
            (chance, n, bad)
        })
        .collect();
    count(&recorded)
}

/// The laws of all cells: for each the figure of its chance, how many works are recorded and how many went
/// wrong.
pub(super) fn count(recorded: &[(FigureId, f64, f64)]) -> MishapCount {
    let ledger = Ledger::standard();
    let shared = ledger.value(FigureId::LEARN_MISHAP_SHARED);
    let strength = 1.0 / (shared * mean_and_spread(FigureId::HAZARD_T14A_A_P).1);
    let bad: f64 = recorded.iter().map(|(_, _, k)| k).sum();
    let expected: f64 = recorded
        .iter()
        .map(|(id, n, _)| n * mean_and_spread(*id).0)
        .sum();
    let law = |(id, n, k): (FigureId, f64, f64), bad: f64, expected: f64| {
        let (mean, spread) = mean_and_spread(id);
        let times = (strength + bad - k) / (strength + expected - n * mean);
        let relative = 1.0 / (strength + bad - k) + (1.0 - shared) * spread;
        let mean = (mean * times).min(0.9);
        let weight = ((1.0 - mean) / (mean * relative) - 1.0).max(2.0);
        (weight * mean + k, weight * (1.0 - mean) + n - k)
    };
    MishapCount {
        cells: recorded
            .iter()
            .map(|cell| Cell {
                chance: cell.0,
                n: cell.1,
                bad: cell.2,
                law: law(*cell, bad, expected),
                before: law((cell.0, 0.0, 0.0), 0.0, 0.0),
            })
            .collect(),
        works: recorded.iter().map(|(_, n, _)| n).sum(),
        bad,
        expected,
        times: (strength + bad) / (strength + expected),
    }
}

/// The chance of at least so many bad results where `expected` were to be expected and the scale of all chances
/// is as doubtful as the shipped ranges say: a negative binomial law.
pub(super) fn few_expected(bad: f64, expected: f64) -> f64 {
    if expected <= 0.0 {
        return 1.0;
    }
    let size = 1.0 / mean_and_spread(FigureId::HAZARD_T14A_A_P).1;
    let share = size / (size + expected);
    let mut chance = libm::pow(share, size);
    let mut below = 0.0;
    let mut k = 0.0;
    while k < bad {
        below += chance;
        chance *= (size + k) / (k + 1.0) * (1.0 - share);
        k += 1.0;
    }
    (1.0 - below).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_laws_are_those_of_the_prototype() {
        // Worked independently from the same formulas: T14a on fused plate 2 of 12, T09 on Britannia
        // metal 3 of 6.
        let recorded: Vec<(FigureId, f64, f64)> = chances()
            .into_iter()
            .map(|id| match id.text() {
                "hazard.T14a.A.p" => (id, 12.0, 2.0),
                "hazard.T09.C3.p" => (id, 6.0, 3.0),
                _ => (id, 0.0, 0.0),
            })
            .collect();
        let counted = count(&recorded);
        let cell = |id: FigureId| *counted.cells.iter().find(|c| c.chance == id).unwrap();
        let replate = cell(FigureId::HAZARD_T14A_A_P);
        assert!((replate.law.0 - 8.586_644).abs() < 5e-7, "{replate:?}");
        assert!((replate.law.1 - 168.349_631).abs() < 5e-7);
        assert!((replate.before.0 - 4.944_524).abs() < 5e-7);
        assert!((replate.chance_seen() - 0.045_709).abs() < 5e-7);
        assert!((cell(FigureId::HAZARD_T09_C3_P).chance_seen() - 0.315_110).abs() < 5e-7);
        // What is recorded of others moves a cell of which nothing is recorded.
        assert!((cell(FigureId::HAZARD_T03_A_P).chance_seen() - 0.028_766).abs() < 5e-7);
        assert!((counted.times - 1.404_940).abs() < 5e-7);
    }

    #[test]
    fn how_many_bad_results_are_too_many() {
        // The 99th percentiles of the law, worked out independently, for so many expected.
        for (expected, most) in [(1.0, 4.0), (3.0, 10.0), (5.0, 14.0), (10.0, 26.0)] {
            assert!(few_expected(most + 1.0, expected) < 0.01, "{expected}");
            assert!(few_expected(most, expected) >= 0.01, "{expected}");
        }
        assert!((few_expected(0.0, 2.0) - 1.0).abs() < 1e-12);
        assert!((few_expected(3.0, 0.0) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn nothing_told_leaves_every_chance_where_it_was() {
        let counted = count_mishaps(&[]);
        assert_eq!(counted.cells.len(), 24);
        for cell in counted.cells {
            let shipped = Ledger::standard().value(cell.chance);
            assert!((cell.chance_seen() / shipped - 1.0).abs() < 1e-12);
        }
    }
}
