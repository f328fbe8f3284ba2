//! The wear model of one part.
//!
//! Wear is uneven, and more so as silver goes: the local thickness is Normal(mu, s) with
//! s^2 = (k (t0 - max(mu, 0)))^2 + (0.1 t0)^2, so a share f = P(T < 0) of the part is bare. Seeing f
//! gives mu; taking silver off moves mu and so f. All of it is our judgement (no published wear
//! field is known); the closed forms are checked in the tests.

use crate::maths::{at_least, at_most, phi, probability, probit};

/// The silver of one part, in micrometres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// Thickness when new, per face; > 0.
    pub t0_um: f64,
    /// Unevenness of wear, 0 to about 1.
    pub k: f64,
    /// Mean of the thickness field; below zero when more than half is bare.
    pub mu_um: f64,
    /// Spread of a new surface as a share of `t0_um`.
    pub floor: f64,
}

impl Layer {
    /// The layer on which the share `f` is bare; `f` is held within [1e-9, 1 - 1e-9].
    ///
    /// With z the standard normal quantile of f, q = (z k)^2 and c = k^2 + floor^2:
    /// mu/t0 = z^2 c / (q + sqrt(q^2 + (1 - q) z^2 c)) for z < 0, else -z sqrt(c). Of the two roots
    /// for small f this is the one with mu <= t0.
    #[must_use]
    pub fn from_bleed(t0_um: f64, k: f64, floor: f64, f: f64) -> Self {
        Self::from_quantile(t0_um, k, floor, probit(held(f)))
    }

    /// [`Layer::from_bleed`] with z, the standard normal quantile of the bare share, already known.
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

    /// The spread s of the thickness field.
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

    /// Mean silver left over the whole part: E max(T, 0) = mu Phi(mu/s) + s phi(mu/s).
    #[must_use]
    pub fn left_um(&self) -> f64 {
        let s = self.spread_um();
        let z = self.mu_um / s;
        (self.mu_um * probability(z) + s * phi(z)).clamp(0.0, self.t0_um)
    }

    /// [`Layer::left_um`] where the bare share `f` and its standard normal quantile `z` are known:
    /// mu/s is -z, so no distribution function is needed.
    #[must_use]
    pub fn left_um_at(&self, f: f64, z: f64) -> f64 {
        (self.mu_um * (1.0 - f) + self.spread_um() * phi(z)).clamp(0.0, self.t0_um)
    }

    /// Mean silver where there is any: what is left over the share that is covered.
    #[must_use]
    pub fn covered_um(&self) -> f64 {
        self.left_um() / (1.0 - self.bleed()).max(1e-9)
    }

    /// Silver left as a share of the first layer, 0 to 1.
    #[must_use]
    pub fn left_fraction(&self) -> f64 {
        self.left_um() / self.t0_um
    }

    /// The layer after `taken_um` >= 0 more has gone.
    #[must_use]
    pub fn thinned(&self, taken_um: f64) -> Self {
        Self {
            mu_um: self.mu_um - at_least(taken_um, 0.0),
            ..*self
        }
    }

    /// Thickness at the 10th percentile of the area still covered: where it will go next.
    #[must_use]
    pub fn worst_point_um(&self) -> f64 {
        let f = self.bleed();
        at_least(
            self.mu_um + self.spread_um() * probit(f + 0.1 * (1.0 - f)),
            0.0,
        )
    }

    /// How many times `each_um` may be taken before the share `f` is bare; 0 when it already is.
    /// `None` when nothing is taken.
    #[must_use]
    pub fn times_until(&self, f: f64, each_um: f64) -> Option<f64> {
        self.times_until_quantile(probit(held(f)), each_um)
    }

    /// [`Layer::times_until`] with z, the standard normal quantile of the share, already known.
    #[must_use]
    pub fn times_until_quantile(&self, z: f64, each_um: f64) -> Option<f64> {
        if each_um <= 0.0 {
            return None;
        }
        let then = Self::from_quantile(self.t0_um, self.k, self.floor, z);
        Some(at_least((self.mu_um - then.mu_um) / each_um, 0.0))
    }

    /// The bare share that counts as "twice as much" as `f`: twice, but at least half a per cent
    /// and at most a half. `None` when half is bare already.
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

/// A bare share as it is reckoned with: something is always covered.
#[must_use]
pub fn shown_share(f: f64) -> f64 {
    f.clamp(0.0, 0.99)
}

/// A bare share held off its ends, where a layer has no finite thickness.
#[must_use]
pub fn held(f: f64) -> f64 {
    f.clamp(1e-9, 1.0 - 1e-9)
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
    fn the_bleed_seen_comes_back() {
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
    fn what_is_left_is_the_same_by_either_way() {
        for (f, k) in grid() {
            let layer = Layer::from_bleed(20.0, k, 0.1, f);
            let left = layer.left_um_at(f, probit(f));
            assert!((left - layer.left_um()).abs() < 1e-9, "f {f} k {k}");
        }
    }

    #[test]
    fn half_bare_means_a_mean_of_nothing() {
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
    fn counting_cleanings_agrees_with_doing_them() {
        let layer = Layer::from_bleed(20.0, 0.5, 0.1, 0.05);
        let n = layer.times_until(0.10, 0.12).unwrap();
        assert!((layer.thinned(n * 0.12).bleed() - 0.10).abs() < 1e-9);
        assert!(layer.times_until(0.05, 0.12).unwrap().abs() < 1e-6);
        assert_eq!(layer.times_until(0.10, 0.0), None);
        assert!(layer.times_until(0.01, 0.12).unwrap().abs() < 1e-12);
    }

    #[test]
    fn doubling_has_its_edges() {
        assert_eq!(Layer::doubled(0.0, 0.005), Some(0.005));
        assert_eq!(Layer::doubled(0.003, 0.005), Some(0.006));
        assert_eq!(Layer::doubled(0.3, 0.005), Some(0.5));
        assert_eq!(Layer::doubled(0.5, 0.005), None);
    }
}
