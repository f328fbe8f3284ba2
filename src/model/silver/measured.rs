//! Measured thickness of silver, combined with the estimate from visible wear.

use super::Layer;
use crate::ledger::{FigureId, Ledger, signs};
use crate::record::{Case, Reading};
use crate::terms::{Method, PartName};

/// The thinnest silver in any calculation, micrometres; a thinner layer counts as gone.
const LEAST_UM: f64 = 1e-3;

/// Normal distribution of a mean thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Belief {
    /// Mean, micrometres.
    pub mean_um: f64,
    /// Standard deviation, micrometres, 0 or more.
    pub sd_um: f64,
}

impl Belief {
    /// The posterior after one reading of `um` with standard deviation `sd_um`, in micrometres: the conjugate
    /// update of a normal distribution, where precisions add (Gelman et al. 2013, Bayesian Data Analysis,
    /// section 2.5). A standard deviation of 0 decides alone; if both are 0, the belief decides.
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

/// Relative error of a reading, by method, in the order of [`Method::ALL`].
const RELATIVE_ERROR: [FigureId; Method::IDS.len()] =
    FigureId::family("silver.reading.", Method::IDS, "");

/// Standard error of one reading, in micrometres: as recorded, or else from the method's relative error in
/// the ledger; never below the least error in the ledger.
#[must_use]
pub fn reading_error_um(reading: &Reading, ledger: &Ledger) -> f64 {
    let error = reading
        .error_um
        .unwrap_or_else(|| reading.um * ledger.value(RELATIVE_ERROR[reading.method as usize]));
    error.max(ledger.value(FigureId::SILVER_READING_LEAST))
}

/// Updates layers, one per draw, with readings taken on the same part. `None` stays `None`.
///
/// A reading measures the mean thickness where silver is left. Over the draws, this thickness has a mean and
/// a standard deviation, and the readings update both as for a normal distribution. Each draw is then
/// rescaled to match and keeps its rank, its unevenness and its bare share, because the whole layer is
/// scaled. A reading differs from the mean of the part by its own error and by where it was taken; for the
/// latter the ledger holds a share of the spread of the layer (our judgement: spots are chosen to be
/// typical). Without readings, nothing changes.
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
    let place = ledger.value(FigureId::SILVER_READING_PLACE) * spread / n;
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

/// Whether this part is a let-in shield (finding C13) that was not measured. It is thicker than the plate
/// around it, but nobody has published by how much, so no number is shown for it.
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
    fn without_readings_nothing_changes() {
        let mut after = layers();
        measured(&mut after, &[], Ledger::standard());
        assert_eq!(after, layers());
    }

    #[test]
    fn readings_pull_layers_toward_them_and_keep_the_bare_share() {
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
    fn a_reading_of_zero_never_makes_a_layer_negative() {
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
    fn equally_certain_belief_and_reading_meet_half_way_with_half_the_variance() {
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
