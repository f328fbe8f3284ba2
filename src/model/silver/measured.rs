//! A measured thickness, and what it leaves of the guess from what can be seen.

use super::Layer;
use crate::ledger::{Ledger, signs};
use crate::record::{Case, PartName, Reading};

/// Thinnest silver that is reckoned with, micrometres: below it a layer is gone for any purpose.
const LEAST_UM: f64 = 1e-3;

/// What is believed of a mean thickness: normal, cut off at nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Belief {
    /// Mean, micrometres.
    pub mean_um: f64,
    /// Standard deviation, micrometres, 0 or more.
    pub sd_um: f64,
}

impl Belief {
    /// The belief after one reading of `um` with standard deviation `sd_um`: the conjugate update of
    /// a normal law, precisions adding (Gelman et al. 2013, Bayesian Data Analysis, section 2.5). A
    /// belief or a reading without any doubt wins outright, the belief first.
    #[must_use]
    pub fn updated(self, um: f64, sd_um: f64) -> Self {
        let (v, e) = (self.sd_um * self.sd_um, sd_um * sd_um);
        if v <= 0.0 {
            return self;
        }
        let weight = v / (v + e);
        Self {
            mean_um: self.mean_um + weight * (um - self.mean_um),
            sd_um: (v * (1.0 - weight)).sqrt(),
        }
    }
}

/// Standard error of one reading, micrometres: as told, else the ledger's share for the method; never
/// below the ledger's least.
#[must_use]
pub fn reading_error_um(reading: &Reading, ledger: &Ledger) -> f64 {
    let told = reading.error_um.unwrap_or_else(|| {
        reading.um * ledger.value(&format!("silver.reading.{}", reading.method.id()))
    });
    told.max(ledger.value("silver.reading.least"))
}

/// Brings layers, one a draw, in line with readings on the same part; `None` stays.
///
/// What is measured is the mean thickness where silver is left. Over the draws it has a mean and a
/// spread; the readings update both as for a normal law, and each draw is moved with them, keeping
/// its rank, its unevenness and its bare share: the whole layer is scaled. A reading differs from the
/// mean of the part by its own error and by the place it was taken at, for which the ledger's share
/// of the layer's spread is allowed (our judgement: spots are chosen to be typical). No reading
/// changes nothing.
pub fn measured(layers: &mut [Option<Layer>], readings: &[Reading], ledger: &Ledger) {
    if readings.is_empty() {
        return;
    }
    let (mut n, mut sum, mut squares, mut spread) = (0.0, 0.0, 0.0, 0.0);
    for layer in layers.iter().flatten() {
        let covered = layer.covered_um();
        n += 1.0;
        sum += covered;
        squares += covered * covered;
        spread += layer.spread_um();
    }
    if n < 1.0 {
        return;
    }
    let prior = Belief {
        mean_um: sum / n,
        sd_um: (squares / n - sum / n * (sum / n)).max(0.0).sqrt(),
    };
    let place = ledger.value("silver.reading.place") * spread / n;
    let belief = readings.iter().fold(prior, |belief, reading| {
        let error = reading_error_um(reading, ledger);
        belief.updated(reading.um, (error * error + place * place).sqrt())
    });
    let narrower = if prior.sd_um > 0.0 {
        belief.sd_um / prior.sd_um
    } else {
        1.0
    };
    for layer in layers.iter_mut().flatten() {
        let covered = layer.covered_um().max(LEAST_UM);
        let moved = belief.mean_um + narrower * (covered - prior.mean_um);
        let by = moved.max(LEAST_UM) / covered;
        layer.t0_um *= by;
        layer.mu_um *= by;
    }
}

/// A shield that was let in (finding C13) and not measured: thicker than the plate round it, and
/// nobody has published how much, so no number is shown for it.
#[must_use]
pub fn let_in(case: &Case, part: &str) -> bool {
    part == PartName::Shield.id()
        && case.has_seen_any(&signs::LET_IN)
        && case
            .part(PartName::Shield)
            .is_none_or(|p| p.readings.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Method;

    fn layers() -> Vec<Option<Layer>> {
        let mut all: Vec<_> = (0..41)
            .map(|i| Some(Layer::from_bleed(10.0 + f64::from(i), 0.4, 0.1, 0.05)))
            .collect();
        all.push(None);
        all
    }

    fn reading(um: f64, error_um: Option<f64>) -> Reading {
        Reading {
            method: Method::Xrf,
            um,
            error_um,
        }
    }

    fn mean(layers: &[Option<Layer>]) -> f64 {
        let known: Vec<f64> = layers.iter().flatten().map(Layer::covered_um).collect();
        known.iter().sum::<f64>() / known.len() as f64
    }

    #[test]
    fn no_reading_changes_nothing() {
        let mut after = layers();
        measured(&mut after, &[], Ledger::standard());
        assert_eq!(after, layers());
    }

    #[test]
    fn readings_pull_the_layers_toward_them_and_keep_what_is_seen() {
        let ledger = Ledger::standard();
        let mut one = layers();
        let before = mean(&one);
        let target = before / 2.0;
        measured(&mut one, &[reading(target, None)], ledger);
        let mut many = layers();
        measured(&mut many, &[reading(target, None); 30], ledger);
        assert!(before > mean(&one) && mean(&one) > mean(&many) && mean(&many) > target - 0.01);
        assert!((mean(&many) - target).abs() < 0.05 * target);
        for (a, b) in layers().iter().zip(&many) {
            match (a, b) {
                (Some(a), Some(b)) => assert!((a.bleed() - b.bleed()).abs() < 1e-9),
                (a, b) => assert!(a.is_none() && b.is_none()),
            }
        }
    }

    #[test]
    fn a_reading_of_nothing_leaves_a_layer_of_nothing_not_less() {
        let mut after = layers();
        measured(
            &mut after,
            &[reading(0.0, Some(0.0)); 200],
            Ledger::standard(),
        );
        assert!(
            after
                .iter()
                .flatten()
                .all(|l| l.t0_um > 0.0 && l.left_um() >= 0.0)
        );
        assert!(mean(&after) < 1.0);
    }

    #[test]
    fn two_alike_beliefs_meet_half_way_with_half_the_variance() {
        let prior = Belief {
            mean_um: 10.0,
            sd_um: 2.0,
        };
        let after = prior.updated(14.0, 2.0);
        assert!((after.mean_um - 12.0).abs() < 1e-12);
        assert!((after.sd_um * after.sd_um - 2.0).abs() < 1e-12);
        let sure = Belief {
            mean_um: 10.0,
            sd_um: 0.0,
        };
        assert_eq!(sure.updated(14.0, 0.0), sure);
    }
}
