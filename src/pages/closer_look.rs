//! A case weighed on several samples, for the closer look.

use super::Subject;
use super::wording::worth_knowing as words;
use leavewell_model::counsel::{Shared, money};
use leavewell_model::decide::information::above_noise;
use leavewell_model::identity::{Edge, Ladder};
use leavewell_model::ledger::{FigureId, FindingFact, FindingId, LOOK_EFFORT, Ledger};
use leavewell_model::record::{Case, ledger_of};
use leavewell_model::terms::{ByKind, Family, Kind};

/// A case weighed for this page.
pub(super) struct CloserLook<'a> {
    pub(super) case: &'a Case,
    pub(super) ledger: Ledger,
    pub(super) shown: Shared,
    /// The other samples, which agree up to noise.
    pub(super) scrambles: Vec<Shared>,
}

/// A look or test that bears on the kind, with the chance of each answer by kind.
pub(super) struct Look {
    pub(super) name: &'static str,
    /// Cost of the look, in the currency of the case.
    pub(super) fee: f64,
    pub(super) answers: Vec<(String, ByKind)>,
}

impl<'a> CloserLook<'a> {
    pub(super) fn new(subject: &'a Subject) -> Self {
        let case = subject.case();
        let mut samples = subject.samples();
        let scrambles = samples.split_off(1);
        Self {
            case,
            ledger: ledger_of(case).into_owned(),
            shown: samples.remove(0),
            scrambles,
        }
    }

    /// A score as money where possible, or else as points out of 100.
    pub(super) fn amount(&self, score: f64) -> String {
        match self.shown.money_per_score {
            Some(rate) => money(self.case, score * rate),
            None => words::points(100.0 * score),
        }
    }

    /// The amount with its sign.
    pub(super) fn signed(&self, score: f64) -> String {
        let text = self.amount(score);
        let shown = self.in_units(score);
        if shown >= 0.5 {
            format!("+{text}")
        } else {
            text
        }
    }

    /// A score in the units shown: money, or points out of 100.
    pub(super) fn in_units(&self, score: f64) -> f64 {
        score * self.shown.money_per_score.unwrap_or(100.0)
    }

    /// Money as a score; 0 if money does not count.
    pub(super) fn score_of(&self, money: f64) -> f64 {
        self.shown.money_per_score.map_or(0.0, |rate| money / rate)
    }

    /// A worth averaged over the scrambled samples; `None` if it is no greater than their spread.
    pub(super) fn worth(&self, of: &dyn Fn(&Shared) -> f64) -> Option<f64> {
        let estimates: Vec<f64> = self.scrambles.iter().map(of).collect();
        above_noise(&estimates).filter(|w| self.in_units(*w) >= 0.5)
    }

    /// The looks still available, apart from the lead test.
    pub(super) fn looks(&self) -> Vec<Look> {
        let mut looks = vec![self.opinion()];
        for (name, ids) in [
            (
                words::XRAY_BELOW,
                &[FindingId::P09, FindingId::P10, FindingId::P13][..],
            ),
            (words::XRAY_UNWORN, &[FindingId::P11, FindingId::P12]),
            (
                words::DENSITY,
                &[
                    FindingId::P02,
                    FindingId::P03,
                    FindingId::P04,
                    FindingId::P05,
                ],
            ),
            (
                words::SEAM,
                &[FindingId::C01, FindingId::C02, FindingId::C04],
            ),
        ] {
            if !ids.iter().any(|id| self.case.answer(*id).is_some()) {
                looks.extend(self.look(name, ids));
            }
        }
        looks
    }

    /// A specialist names the family: the right one with the ledger's probability, or else any other with
    /// equal probability.
    fn opinion(&self) -> Look {
        let right = self
            .ledger
            .value(FigureId::COUNSEL_OPINION_RIGHT)
            .clamp(0.0, 1.0);
        let wrong = (1.0 - right) / (Family::ALL.len() as f64 - 1.0);
        Look {
            name: words::OPINION,
            fee: self.ledger.value(FigureId::COST_OPINION),
            answers: Family::ALL
                .into_iter()
                .map(|f| {
                    let chance = Kind::ALL.map(|k| if k.family() == f { right } else { wrong });
                    (f.name().to_owned(), chance)
                })
                .collect(),
        }
    }

    /// Mutually exclusive findings as one look. The remaining probability goes to "none of these".
    fn look(&self, name: &'static str, ids: &[FindingId]) -> Option<Look> {
        let facts: Vec<_> = ids.iter().map(|id| id.fact()).collect();
        let effort = facts.iter().map(|f| usize::from(f.invasive.min(3))).max()?;
        let ladder = Ladder::of(&self.ledger, Edge::Base);
        let chance = |f: &FindingFact, k: Kind| match f.letter(k) {
            Some(letter) => ladder.step(letter),
            None => self.ledger.value(FigureId::IDENTITY_OUT_FINDING),
        };
        let rows: Vec<ByKind> = facts
            .iter()
            .map(|f| Kind::ALL.map(|k| chance(f, k)))
            .collect();
        let sums: Vec<f64> = (0..Kind::COUNT)
            .map(|k| rows.iter().map(|r| r[k]).sum::<f64>().max(1.0))
            .collect();
        let mut answers: Vec<(String, ByKind)> = facts
            .iter()
            .zip(&rows)
            .map(|(f, r)| (f.title.to_owned(), std::array::from_fn(|k| r[k] / sums[k])))
            .collect();
        let none: ByKind = std::array::from_fn(|k| {
            (1.0 - rows.iter().map(|r| r[k] / sums[k]).sum::<f64>()).max(0.0)
        });
        answers.push((words::NONE_OF_THESE.to_owned(), none));
        Some(Look {
            name,
            fee: self.ledger.value(LOOK_EFFORT[effort]),
            answers,
        })
    }
}
