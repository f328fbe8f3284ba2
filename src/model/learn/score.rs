//! How good the predictions were: what was frozen beforehand, compared with what happened.
//!
//! Nothing is computed again: every prediction is the one in the record.

use super::evidence::{Closing, Topic, expected_as_sold, in_another_currency};
use super::mishap::{MishapCount, few_expected};
use super::student4::{WIDER, below, crps, density};
use super::taught::{Learnt, PredictedLn};
use crate::ledger::{FigureId, Ledger};
use crate::maths::{Z5, Z10, exact_interval, exact_interval_within, probit};
use crate::record::{
    Case, Ending, Predicted, PredictedFigures, PredictedOf, PredictedWhen, SoldAs,
};
use crate::terms::ShortSort;
use crate::terms::Treatment;
use crate::value::channel;

/// One prediction and what happened.
#[derive(Clone, Debug, PartialEq)]
pub struct ScoredPrediction {
    /// The key of the piece.
    pub id: String,
    /// What its owner calls it.
    pub name: String,
    /// The work; `None` for a price.
    pub work: Option<Treatment>,
    /// The prediction, with the figures that applied: low, likely, high.
    pub predicted: [f64; 3],
    /// What happened.
    pub happened: f64,
    /// Where what happened lies in the prediction: 0 to 1, evenly spread when the bands are right.
    pub at: f64,
    /// The same as a normal deviate, by the law of which a few outliers do not pull the mean.
    pub off_middle: f64,
    /// Score of the shipped figures, in ln: smaller is better.
    pub crps_shipped: f64,
    /// Score of the taught figures, where some held.
    pub crps_taught: Option<f64>,
    /// Logarithm of the density the shipped figures gave to what happened.
    log_shipped: f64,
    log_taught: Option<f64>,
}

/// How often what happened fell into a band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coverage {
    /// The share the band should hold.
    pub band: f64,
    /// How many it held.
    pub hits: usize,
    /// The share it held, with its exact 95 % interval.
    pub share: [f64; 3],
}

/// Something that the record of a topic calls for saying.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Alarm {
    /// What happened lies above the prediction.
    TooLow,
    /// What happened lies below the prediction.
    TooHigh,
    /// The bands were too narrow.
    TooNarrow,
    /// The bands were too wide.
    TooWide,
    /// The taught figures did no better than the shipped ones.
    LearningHasNotHelped,
}

/// How good the predictions were, for one topic.
#[derive(Clone, Debug, PartialEq)]
pub struct TopicRecord {
    /// Every prediction, in order of key.
    pub predictions: Vec<ScoredPrediction>,
    /// Coverage of the bands of 50, 80 and 90 in 100.
    pub coverage: [Coverage; 3],
    /// How many fell into each tenth of its prediction.
    pub bars: [usize; 10],
    /// The least and the most that 19 in 20 bars hold when the bands are right.
    pub bar_band: (usize, usize),
    /// What to tell the person.
    pub alarms: Vec<Alarm>,
}

impl TopicRecord {
    /// Whether there are too few pieces to judge by.
    #[must_use]
    pub fn is_too_few(&self) -> bool {
        (self.predictions.len() as f64) < Ledger::standard().value(FigureId::LEARN_FEW)
    }

    /// The running mean of how much better the taught figures scored than the shipped ones.
    #[must_use]
    pub fn running_gain(&self) -> Vec<f64> {
        let mut sum = 0.0;
        let both = self.predictions.iter();
        both.filter_map(|one| Some(one.crps_shipped - one.crps_taught?))
            .enumerate()
            .map(|(n, gain)| {
                sum += gain;
                sum / (n + 1) as f64
            })
            .collect()
    }
}

/// Holds every prediction of a topic against what happened.
#[must_use]
pub fn record_of(topic: Topic, closings: &[Closing]) -> TopicRecord {
    let mut order: Vec<&Closing> = closings.iter().collect();
    order.order_by(|a, b| a.id.cmp(&b.id));
    let mut scored = Vec::new();
    for closing in order.into_iter().filter(|c| !c.case.closed.left_out) {
        match topic {
            Topic::Prices => scored.extend(price(closing)),
            Topic::Bills | Topic::Hours => works(topic, closing, &mut scored),
        }
    }
    judge(scored)
}

/// The record of these predictions.
#[must_use]
pub fn judge(scored: Vec<ScoredPrediction>) -> TopicRecord {
    let mut bars = [0; 10];
    for one in &scored {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 9
        let bar = (one.at * 10.0).clamp(0.0, 9.0) as usize;
        bars[bar] += 1;
    }
    let n = scored.len();
    let coverage = [0.5, 0.8, 0.9].map(|band| {
        let hits = scored
            .iter()
            .filter(|one| (one.at - 0.5).abs() <= 0.5 * band)
            .count();
        let (low, high) = exact_interval(hits as f64, n.max(1) as f64);
        let share = if n == 0 {
            [0.0, 0.0, 1.0]
        } else {
            [low, hits as f64 / n as f64, high]
        };
        Coverage { band, hits, share }
    });
    TopicRecord {
        alarms: alarms(&scored, coverage[1].hits),
        coverage,
        bars,
        bar_band: bar_band(n),
        predictions: scored,
    }
}

fn alarms(scored: &[ScoredPrediction], in_80: usize) -> Vec<Alarm> {
    let ledger = Ledger::standard();
    let n = scored.len() as f64;
    let mut alarms = Vec::new();
    if n >= ledger.value(FigureId::LEARN_ALARM_SIDE_FROM) {
        let mean = scored.iter().map(|one| one.off_middle).sum::<f64>() / n;
        if mean.abs() * n.sqrt() > ledger.value(FigureId::LEARN_ALARM_SIDE) {
            alarms.push(if mean > 0.0 {
                Alarm::TooLow
            } else {
                Alarm::TooHigh
            });
        }
    }
    if n >= ledger.value(FigureId::LEARN_FEW) {
        let within = ledger.value(FigureId::LEARN_ALARM_WITHIN);
        let (low, high) = exact_interval_within(in_80 as f64, n, within);
        if high < 0.8 {
            alarms.push(Alarm::TooNarrow);
        } else if low > 0.8 {
            alarms.push(Alarm::TooWide);
        }
    }
    let better: Vec<f64> = scored
        .iter()
        .filter_map(|one| Some(one.log_taught? - one.log_shipped))
        .collect();
    let m = better.len() as f64;
    if m >= ledger.value(FigureId::LEARN_ALARM_HELPED_FROM) {
        let mean = better.iter().sum::<f64>() / m;
        let squares: f64 = better.iter().map(|b| (b - mean) * (b - mean)).sum();
        let error = (squares / (m - 1.0) / m).sqrt();
        if mean < -ledger.value(FigureId::LEARN_ALARM_HELPED) * error {
            alarms.push(Alarm::LearningHasNotHelped);
        }
    }
    alarms
}

/// The least and the most counts of a bar that hold 95 in 100 when one in ten belongs there.
fn bar_band(n: usize) -> (usize, usize) {
    let mut chance = libm::pow(0.9, n as f64);
    let mut below = chance;
    let mut low = 0;
    let mut k = 0;
    while k < n && below < 0.975 {
        if below < 0.025 {
            low = k + 1;
        }
        chance *= (n - k) as f64 / (k + 1) as f64 / 9.0;
        k += 1;
        below += chance;
    }
    (low, k)
}

/// A frozen range as a law in ln. `z`: the normal deviate of its ends.
fn law([low, likely, high]: [f64; 3], z: f64) -> Option<PredictedLn> {
    let scale = libm::log(high / low) / (2.0 * z * WIDER);
    (scale > 0.0 && scale.is_finite()).then_some(PredictedLn {
        at: libm::log(likely),
        scale,
    })
}

/// One prediction against what happened. `limit`: below it the thing would not have happened.
fn scored(
    (shipped, taught): ([f64; 3], Option<[f64; 3]>),
    z: f64,
    happened: f64,
    limit: Option<f64>,
) -> Option<ScoredPrediction> {
    let y = libm::log(happened);
    let score = |law: PredictedLn| {
        let d = law.deviate(y);
        (law.scale * crps(d), libm::log(density(d) / law.scale))
    };
    let first = law(shipped, z)?;
    let second = taught.and_then(|range| law(range, z));
    let held = second.unwrap_or(first);
    let limit = limit.filter(|limit| *limit > 0.0 && *limit <= happened);
    let place = |share: &dyn Fn(f64) -> f64| {
        let cut = limit.map_or(0.0, |limit| share(libm::log(limit)));
        ((share(y) - cut) / (1.0 - cut).max(1e-12)).clamp(1e-6, 1.0 - 1e-6)
    };
    let at = place(&|x| held.share_below(x));
    let off_middle = probit(place(&|x| below(held.deviate(x))));
    let (crps_shipped, log_shipped) = score(first);
    let of_taught = second.map(score);
    Some(ScoredPrediction {
        id: String::new(),
        name: String::new(),
        work: None,
        predicted: taught.unwrap_or(shipped),
        happened,
        at,
        off_middle,
        crps_shipped,
        crps_taught: of_taught.map(|(crps, _)| crps),
        log_shipped,
        log_taught: of_taught.map(|(_, log)| log),
    })
}

/// The prediction of the price of a sold piece, before the sale.
#[must_use]
pub fn price(closing: &Closing) -> Option<ScoredPrediction> {
    let case = &closing.case;
    let sale = &case.closed.sale;
    if case.closed.outcome != Some(Ending::Sold) {
        return None;
    }
    let before = offered_before(case)?;
    let sold_as = sale.sold_as.unwrap_or(SoldAs::Hammer);
    if sold_as == SoldAs::Asking || in_another_currency(case) {
        return None;
    }
    let over_hammer = channel(sold_as, Ledger::standard());
    let hammer = sale.price.filter(|p| *p > 0.0)? / over_hammer;
    let ranges = (before.shipped.price?, before.taught_values.price);
    let one = scored(ranges, Z10, hammer, sale.reserve)?;
    Some(named(one, closing, None))
}

fn named(
    mut one: ScoredPrediction,
    closing: &Closing,
    work: Option<Treatment>,
) -> ScoredPrediction {
    one.id.clone_from(&closing.id);
    one.name.clone_from(&closing.case.piece.name);
    one.work = work;
    one
}

/// What was frozen before the piece was sold.
fn offered_before(case: &Case) -> Option<&Predicted> {
    let sold_on = case.closed.sale.on.or(case.closed.on);
    let latest = expected_as_sold(case)?;
    let later = match (sold_on, latest.on) {
        (Some(sold), Some(frozen)) => sold.days_until(frozen) > 0,
        _ => false,
    };
    (!later).then_some(latest)
}

fn works(topic: Topic, closing: &Closing, said_of: &mut Vec<ScoredPrediction>) {
    let case = &closing.case;
    let Some(before) = case
        .predicted
        .iter()
        .find(|p| p.event == PredictedWhen::Agreed)
    else {
        return;
    };
    let z = if topic == Topic::Bills { Z10 } else { Z5 };
    let ranges = |figures: &PredictedFigures| -> Vec<PredictedOf<[f64; 3]>> {
        if topic == Topic::Bills {
            figures.bills.clone()
        } else {
            figures.hours.clone()
        }
    };
    for (at, done) in case.done.iter().enumerate() {
        let recorded = if topic == Topic::Bills {
            done.bill
        } else {
            done.hours
        };
        let (Some(happened), Some(_)) = (recorded.filter(|x| *x > 0.0), done.treatment) else {
            continue;
        };
        let shares_bill = |other: &crate::record::Done| {
            topic == Topic::Bills && !done.bill_no.is_empty() && other.bill_no == done.bill_no
        };
        if case.done[..at].iter().any(shares_bill) {
            continue;
        }
        let together = case
            .done
            .iter()
            .filter(|other| other.place == done.place || shares_bill(other));
        let works: Vec<Treatment> = together.filter_map(|other| other.treatment).collect();
        let sum = |figures: &PredictedFigures| {
            let known = ranges(figures);
            works.iter().try_fold([0.0; 3], |sum: [f64; 3], work| {
                let range = known.iter().find(|one| one.work == *work)?.value;
                Some([sum[0] + range[0], sum[1] + range[1], sum[2] + range[2]])
            })
        };
        let Some(shipped) = sum(&before.shipped) else {
            continue;
        };
        if let Some(one) = scored((shipped, sum(&before.taught_values)), z, happened, None) {
            said_of.push(named(one, closing, done.treatment));
        }
    }
}

/// Whether more went wrong than was to be expected, by a test that is seldom wrong.
#[must_use]
pub fn more_went_wrong(count: &MishapCount) -> bool {
    let ledger = Ledger::standard();
    few_expected(count.bad, count.expected) < ledger.value(FigureId::LEARN_ALARM_MISHAPS)
}

/// The shifts that lie further from their shipped middles than the ranges allow.
#[must_use]
pub fn outside_the_range(learnt: &Learnt) -> Vec<super::Shift> {
    let ledger = Ledger::standard();
    let out: Vec<(super::Shift, f64)> = learnt
        .shifts
        .iter()
        .filter(|shift| learnt.pieces_on(**shift) > 0)
        .filter_map(|shift| Some((*shift, learnt.outside(*shift)?)))
        .collect();
    let tail = ledger.value(FigureId::LEARN_ALARM_OUTSIDE) / out.len().max(1) as f64;
    let limit = probit(1.0 - tail);
    out.into_iter()
        .filter(|(_, far)| *far > limit)
        .map(|(shift, _)| shift)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Predictions of which what happened lies at these places.
    fn at(places: impl Iterator<Item = f64>) -> TopicRecord {
        judge(
            places
                .map(|at| ScoredPrediction {
                    at,
                    off_middle: probit(at),
                    ..scored(([80.0, 100.0, 125.0], None), Z10, 100.0, None).unwrap()
                })
                .collect(),
        )
    }

    #[test]
    fn right_bands_raise_no_alarm_and_wrong_ones_do() {
        let even = |n: u32| (0..n).map(move |i| (f64::from(i) + 0.5) / f64::from(n));
        let right = at(even(100));
        assert!(right.alarms.is_empty() && right.bars == [10; 10]);
        assert_eq!(right.coverage.map(|c| c.hits), [50, 80, 90]);
        assert_eq!(right.bar_band, (5, 16));
        assert_eq!(at(even(50)).bar_band, (1, 9));
        assert_eq!(at(even(200)).bar_band, (12, 29));
        assert_eq!(at(even(40).map(|u| 1.0 - 0.5 * u)).alarms, [Alarm::TooLow]);
        assert_eq!(at(even(40).map(|u| 0.5 * u)).alarms, [Alarm::TooHigh]);
        let edges = |u: f64| {
            if u < 0.5 {
                0.3 * u
            } else {
                1.0 - 0.3 * (1.0 - u)
            }
        };
        assert_eq!(at(even(60).map(edges)).alarms, [Alarm::TooNarrow]);
        assert_eq!(
            at(even(60).map(|u| 0.25 + 0.5 * u)).alarms,
            [Alarm::TooWide]
        );
        assert!(at(even(19)).is_too_few() && !at(even(20)).is_too_few());
        assert!(at(std::iter::empty()).alarms.is_empty());
    }

    #[test]
    fn a_reserve_cuts_off_what_could_not_happen() {
        let free = scored(([50.0, 100.0, 200.0], None), Z10, 100.0, None).unwrap();
        assert!((free.at - 0.5).abs() < 1e-9);
        let cut = scored(([50.0, 100.0, 200.0], None), Z10, 100.0, Some(100.0)).unwrap();
        assert!(cut.at < 1e-5, "{cut:?}");
        let above = scored(([50.0, 100.0, 200.0], None), Z10, 200.0, Some(100.0)).unwrap();
        assert!((above.at - 0.8).abs() < 1e-9, "{above:?}");
    }

    #[test]
    fn learning_that_scores_worse_is_named() {
        let worse = |n: u32| {
            judge(
                (0..n)
                    .map(|i| {
                        let happened =
                            100.0 * libm::exp(0.2 * probit((f64::from(i) + 0.5) / f64::from(n)));
                        let taught = Some([40.0, 50.0, 62.0]);
                        scored(([80.0, 100.0, 125.0], taught), Z10, happened, None).unwrap()
                    })
                    .collect(),
            )
        };
        assert!(worse(40).alarms.contains(&Alarm::LearningHasNotHelped));
        assert!(!worse(20).alarms.contains(&Alarm::LearningHasNotHelped));
        let gain = worse(40).running_gain();
        assert!(gain.len() == 40 && gain[39] < 0.0);
    }
}
