//! Predictions for a piece, to be compared later with what happened: its price as it is, and the bill, the
//! hours and the chance of a bad result of each work.

use super::draws::shares;
use super::offer::work_hours;
use super::prices::{answered, estimate};
use super::{Solved, choice};
use crate::identity::Kind;
use crate::ledger::{Figure, FigureId, Ledger, Offered};
use crate::maths::Z10;
use crate::record::{Case, PriceBasis};
use crate::terms::Treatment;
use crate::treatment::{Faults, MishapRisk, work};
use crate::value::{Class, Comparison, guess, less_saved, ln_sd};

/// The predictions for a piece as recorded.
#[derive(Clone, Debug, PartialEq)]
pub struct ExpectedPiece {
    /// The likeliest kind.
    pub kind: Kind,
    /// Its probability, 0 to 1.
    pub p: f64,
    /// The likeliest class of value.
    pub class: Class,
    /// Visible bare share, 0 to 1.
    pub bare: f64,
    /// Each of several pieces, alike ones of a large number together; empty for one.
    pub each: Vec<ExpectedOne>,
    /// What the level rests on.
    pub basis: PriceBasis,
    /// ln of the undamaged price, in the case's currency.
    pub ln_level: f64,
    /// The uncertainty of `ln_level`, as a standard deviation.
    pub sd: f64,
    /// The hammer price as it is: 10th, 50th and 90th percentile.
    pub price: [f64; 3],
    /// The works that have something to do, or that were done or proposed.
    pub works: Vec<ExpectedWork>,
}

/// What is expected of one of several pieces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExpectedOne {
    /// Its number, or the first of several alike.
    pub number: u16,
    /// Its share of what all are worth when whole, or that of all alike.
    pub share: f64,
    /// Bare share that shows, 0 to 1.
    pub bare: f64,
}

/// What is expected of one work. What costs or risks nothing is `None`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExpectedWork {
    /// The work.
    pub work: Treatment,
    /// The bill without a quote: low, likely, high.
    pub bill: Option<[f64; 3]>,
    /// Hours: low, likely, high.
    pub hours: Option<[f64; 3]>,
    /// The chance of a bad result.
    pub chance: Option<f64>,
}

/// The figure for the cost of a work without a quote, and its multiplier.
#[must_use]
pub fn bill_figure(case: &Case, ledger: &Ledger, t: Treatment) -> Option<(FigureId, f64)> {
    if !case.pieces.are_several() {
        let faults = Faults::of(case, ledger);
        return estimate((case, ledger), t, &answered(t, &faults));
    }
    // The bill is for every piece that has what the work answers, or for all where none has.
    let ones: Vec<Case> = (1..=case.pieces.count)
        .map(|no| case.of_piece(no))
        .collect();
    let mut each: Vec<(FigureId, f64, bool)> = Vec::new();
    for one in &ones {
        let faults = Faults::of(one, ledger);
        let served = answered(t, &faults);
        let (id, times) = estimate((one, ledger), t, &served)?;
        each.push((id, times, !served.is_empty()));
    }
    if each.iter().any(|(.., served)| *served) {
        each.retain(|(.., served)| *served);
    }
    let cost = |(id, times, _): &(FigureId, f64, bool)| ledger.value(*id) * times;
    let dearest = *each.iter().max_by(|a, b| cost(a).total_cmp(&cost(b)))?;
    let most = cost(&dearest);
    if most <= 0.0 {
        return Some((dearest.0, dearest.1));
    }
    let saved = ledger.value(FigureId::COST_MORE_PIECES).clamp(0.0, 1.0);
    let sum = each.iter().map(cost).sum();
    Some((dearest.0, dearest.1 * less_saved(sum, most, saved) / most))
}

/// The figures for the risk of a work on a piece of a class: the chance of a bad result, and the share of the
/// price that is kept. `None` if the work has no separate figures.
#[must_use]
pub fn mishap_figures(t: Treatment, class: Class) -> Option<(FigureId, FigureId)> {
    match work(t)?.risk {
        MishapRisk::Figures(mishaps) => {
            let place = class.hazard_place();
            Some((mishaps.chance[place], mishaps.kept[place]))
        }
        MishapRisk::None | MishapRisk::ByClass => None,
    }
}

fn range_of(figure: &Figure, times: f64) -> Option<[f64; 3]> {
    let range = [figure.low, figure.value, figure.high].map(|x| x * times);
    (range[0] > 0.0).then_some(range)
}

impl Solved {
    /// The predictions for the piece as it is.
    #[must_use]
    pub fn expected(&self) -> ExpectedPiece {
        let (case, ledger) = (self.case(), self.ledger());
        let mut kind = Kind::Out;
        for k in Kind::ALL {
            if self.posterior.of(k) > self.posterior.of(kind) {
                kind = k;
            }
        }
        let classes = shares(&self.draws.class);
        let mut class = Class::A2;
        let mut most = 0.0;
        for (c, p) in Class::ALL.into_iter().zip(classes) {
            if p > most {
                (class, most) = (c, p);
            }
        }
        let (basis, ln_level, sd) = self.level(&classes, class);
        ExpectedPiece {
            kind,
            p: self.posterior.of(kind),
            class,
            bare: self.draws.shown.median(),
            each: (self.members.iter())
                .map(|m| ExpectedOne {
                    number: m.numbers.first().copied().unwrap_or(1),
                    share: m.share,
                    bare: m.draws.shown.median(),
                })
                .collect(),
            basis,
            ln_level,
            sd,
            price: self.as_it_is[0].deciles(),
            works: self.expected_works(class, ledger, case),
        }
    }

    fn level(&self, classes: &[f64; 8], class: Class) -> (PriceBasis, f64, f64) {
        let (case, ledger) = (self.case(), self.ledger());
        if !case.comparables.is_empty() {
            let law = Comparison::new(case, ledger, classes).after.middle();
            return (PriceBasis::Comparables, law.at, law.scale);
        }
        if let Some(likely) = guess(&case.market, ledger) {
            let spread = ledger.value(FigureId::VALUE_SINGLE_GUESS_SPREAD).max(1.0);
            let low = case.market.low.unwrap_or(likely / spread);
            let high = case.market.high.unwrap_or(likely * spread);
            let sd = libm::log(high / low) / (2.0 * Z10);
            return (PriceBasis::Guess, libm::log(likely), sd);
        }
        let figure = ledger.figure(class.median());
        let middle = libm::log(figure.value.max(1e-6));
        (PriceBasis::Class, middle, ln_sd(figure))
    }

    fn expected_works(&self, class: Class, ledger: &Ledger, case: &Case) -> Vec<ExpectedWork> {
        let situation = self.situation();
        let world = self.world(&self.draws, &situation, None);
        let named = |t: Treatment| {
            case.proposal.steps.iter().any(|step| step.treatment == t)
                || case.done.iter().any(|done| done.treatment == Some(t))
        };
        let has_to_do =
            |t: Treatment| t.offered() != Offered::Never && choice::not_needed(t, &world).is_none();
        let works = Treatment::ALL
            .into_iter()
            .filter(|t| *t != Treatment::Leave);
        works
            .filter(|t| named(*t) || has_to_do(*t))
            .map(|t| ExpectedWork {
                work: t,
                bill: bill_figure(case, ledger, t)
                    .and_then(|(id, times)| range_of(ledger.figure(id), times)),
                hours: work_hours(t).and_then(|id| range_of(ledger.figure(id), 1.0)),
                chance: mishap_figures(t, class).map(|(chance, _)| ledger.value(chance)),
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use crate::counsel::solve;
    use crate::record::{Draft, PriceBasis};
    use crate::terms::Treatment;

    #[test]
    fn predictions_for_a_tray_match_its_report() {
        let text = include_str!("../../../tests/cases/worn_tray.json");
        let (case, _) = Draft::parse(text).unwrap().read();
        let solved = solve(&case);
        let expected = solved.expected();
        let report = solved.report(Vec::new());
        assert_eq!(
            expected.price[1].to_bits(),
            report.value.as_it_is.p50.to_bits()
        );
        assert_eq!(expected.basis, PriceBasis::Guess);
        let of = |t: Treatment| expected.works.iter().find(|w| w.work == t);
        let replate = of(Treatment::parse("T14a").unwrap()).unwrap();
        assert!(replate.bill.is_some() && replate.hours.is_some() && replate.chance.is_some());
        assert!(of(Treatment::Leave).is_none());
    }
}
