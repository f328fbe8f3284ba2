//! The wear model of one part.
//!
//! Wear is uneven, and more so as silver is lost. The local thickness T is Normal(mu, s) with s^2 = (k (t0 -
//! max(mu, 0)))^2 + (floor t0)^2, so the share f = P(T < 0) of the part is bare. The observed bare share
//! gives mu; removing silver lowers mu and so raises f. The model is our judgement (we know of no published
//! wear field); the tests check it against its closed forms.

use crate::maths::{at_least, at_most, phi, probability, probit};

/// The silver of one part, in micrometres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// Thickness when new, per face; > 0.
    pub t0_um: f64,
    /// Unevenness of wear k, 0 to about 1.
    pub k: f64,
    /// Mean mu of the thickness field; negative when more than half is bare.
    pub mu_um: f64,
    /// Spread of a new surface as a share of `t0_um`.
    pub floor: f64,
}

impl Layer {
    /// The layer whose bare share has the standard normal quantile `z`; see [`held`] for a share of 0 or 1.
    ///
    /// With q = (z k)^2 and c = k^2 + floor^2, mu/t0 is z^2 c / (q + sqrt(q^2 + (1 - q) z^2 c)) for z < 0,
    /// else -z sqrt(c). Of the two roots for a small share, this is the one with mu <= t0.
    #[must_use]
    pub fn from_quantile(t0_um: f64, k: f64, floor: f64, z: f64) -> Self {
        let c = k * k + floor * floor;
        let share = if z < 0.0 {
            let (q, zc) = (z * z * k * k, z * z * c);
            zc / (q + at_least(q * q + (1.0 - q) * zc, 0.0).sqrt())
        } else {
            -z * c.sqrt()
        };
        Self {
            t0_um,
            k,
            mu_um: share * t0_um,
            floor,
        }
    }

    /// Standard deviation s of the thickness field.
    #[must_use]
    pub fn spread_um(&self) -> f64 {
        let worn = self.k * (self.t0_um - at_least(self.mu_um, 0.0));
        let new = self.floor * self.t0_um;
        (worn * worn + new * new).sqrt()
    }

    /// Share of the part that is bare: P(T < 0).
    #[must_use]
    pub fn bleed(&self) -> f64 {
        probability(-self.mu_um / self.spread_um())
    }

    /// Mean thickness of silver left, averaged over the whole part: E max(T, 0) = mu Phi(mu/s) + s phi(mu/s).
    #[must_use]
    pub fn left_um(&self) -> f64 {
        let s = self.spread_um();
        let z = self.mu_um / s;
        (self.mu_um * probability(z) + s * phi(z)).clamp(0.0, self.t0_um)
    }

    /// [`Layer::left_um`] when the bare share `f` and its standard normal quantile `z` are already known:
    /// mu/s is -z, so no distribution function is needed.
    #[must_use]
    pub fn left_um_at(&self, f: f64, z: f64) -> f64 {
        (self.mu_um * (1.0 - f) + self.spread_um() * phi(z)).clamp(0.0, self.t0_um)
    }

    /// Mean thickness of the silver where any is left.
    #[must_use]
    pub fn covered_um(&self) -> f64 {
        self.left_um() / (1.0 - self.bleed()).max(1e-9)
    }

    /// Silver left as a share of the original layer, 0 to 1.
    #[must_use]
    pub fn left_fraction(&self) -> f64 {
        self.left_um() / self.t0_um
    }

    /// The layer after a further `taken_um` is removed; a negative amount counts as 0.
    #[must_use]
    pub fn thinned(&self, taken_um: f64) -> Self {
        Self {
            mu_um: self.mu_um - at_least(taken_um, 0.0),
            ..*self
        }
    }

    /// Thickness at the 10th percentile of the covered area: where base metal will show next.
    #[must_use]
    pub fn worst_point_um(&self) -> f64 {
        let f = self.bleed();
        at_least(
            self.mu_um + self.spread_um() * probit(f + 0.1 * (1.0 - f)),
            0.0,
        )
    }

    /// How many times `each_um` can be removed before the share `f` is bare; 0 when it already is, `None`
    /// when nothing is removed.
    #[must_use]
    pub fn times_until(&self, f: f64, each_um: f64) -> Option<f64> {
        self.times_until_quantile(probit(held(f)), each_um)
    }

    /// [`Layer::times_until`] with the standard normal quantile `z` of the share already known.
    #[must_use]
    pub fn times_until_quantile(&self, z: f64, each_um: f64) -> Option<f64> {
        if each_um <= 0.0 {
            return None;
        }
        let then = Self::from_quantile(self.t0_um, self.k, self.floor, z);
        Some(at_least((self.mu_um - then.mu_um) / each_um, 0.0))
    }

    /// The bare share that counts as "twice as much" as `f`: 2 f, but at least `none` (the share below which
    /// nothing shows) and at most a half. `None` when half or more is already bare.
    #[must_use]
    pub fn doubled(f: f64, none: f64) -> Option<f64> {
        if f >= 0.5 {
            None
        } else if f < none / 2.0 {
            Some(none)
        } else {
            Some(at_most(2.0 * f, 0.5))
        }
    }
}

/// A bare share clamped to 0 to 0.99: something is always covered.
#[must_use]
pub fn shown_share(f: f64) -> f64 {
    f.clamp(0.0, 0.99)
}

/// A bare share clamped away from 0 and 1, where a layer would not have a finite thickness.
#[must_use]
pub fn held(f: f64) -> f64 {
    f.clamp(1e-9, 1.0 - 1e-9)
}

#[cfg(test)]
impl Layer {
    /// The layer of which the share `f` is bare.
    pub(crate) fn from_bleed(t0_um: f64, k: f64, floor: f64, f: f64) -> Self {
        Self::from_quantile(t0_um, k, floor, probit(held(f)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid() -> impl Iterator<Item = (f64, f64)> {
        [
            1e-6, 1e-3, 0.005, 0.02, 0.1, 0.3, 0.499, 0.5, 0.7, 0.95, 0.999,
        ]
        .into_iter()
        .flat_map(|f| [0.15, 0.3, 0.5, 0.7].map(|k| (f, k)))
    }

    #[test]
    fn a_layer_has_the_bare_share_it_was_made_from() {
        for (f, k) in grid() {
            let layer = Layer::from_bleed(20.0, k, 0.1, f);
            assert!(
                (layer.bleed() - f).abs() < 1e-9,
                "f {f}, k {k}: {}",
                layer.bleed()
            );
            assert!(layer.mu_um <= 20.0);
            assert!((0.0..=1.0).contains(&layer.left_fraction()));
        }
    }

    #[test]
    fn both_formulas_for_the_silver_left_agree() {
        for (f, k) in grid() {
            let layer = Layer::from_bleed(20.0, k, 0.1, f);
            let left = layer.left_um_at(f, probit(f));
            assert!((left - layer.left_um()).abs() < 1e-9, "f {f} k {k}");
        }
    }

    #[test]
    fn half_bare_means_a_mean_of_zero() {
        assert!(Layer::from_bleed(20.0, 0.5, 0.1, 0.5).mu_um.abs() < 1e-9);
    }

    #[test]
    fn more_cleaning_never_leaves_more() {
        for (f, k) in grid() {
            let mut last = Layer::from_bleed(15.0, k, 0.1, f);
            let first = last;
            for _ in 0..400 {
                let next = last.thinned(0.1);
                assert!(next.bleed() >= last.bleed() - 1e-12, "f {f} k {k}");
                assert!(next.left_um() <= last.left_um() + 1e-9, "f {f} k {k}");
                last = next;
            }
            assert!((first.thinned(0.0).bleed() - f).abs() < 1e-9);
        }
    }

    #[test]
    fn counting_cleanings_agrees_with_removing_the_silver() {
        let layer = Layer::from_bleed(20.0, 0.5, 0.1, 0.05);
        let n = layer.times_until(0.10, 0.12).unwrap();
        assert!((layer.thinned(n * 0.12).bleed() - 0.10).abs() < 1e-9);
        assert!(layer.times_until(0.05, 0.12).unwrap().abs() < 1e-6);
        assert_eq!(layer.times_until(0.10, 0.0), None);
        assert!(layer.times_until(0.01, 0.12).unwrap().abs() < 1e-12);
    }

    #[test]
    fn doubling_is_clamped_between_the_least_visible_share_and_a_half() {
        assert_eq!(Layer::doubled(0.0, 0.005), Some(0.005));
        assert_eq!(Layer::doubled(0.003, 0.005), Some(0.006));
        assert_eq!(Layer::doubled(0.3, 0.005), Some(0.5));
        assert_eq!(Layer::doubled(0.5, 0.005), None);
    }
}
