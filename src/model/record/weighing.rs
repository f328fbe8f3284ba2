//! Density by weighing in air and in water.

/// Density of air-free water at one atmosphere, g/cm3, for 0 to 40 C; a temperature outside is held
/// to the nearer end.
///
/// Tanaka, Girard, Davis, Peuto and Bignell, "Recommended table for the density of water between
/// 0 C and 40 C", Metrologia 38 (2001), equation 1. Tap water holds salts and air and may differ by
/// some 0.0005, which is far below what a kitchen balance shows.
#[must_use]
pub fn water_density(celsius: f64) -> f64 {
    let t = celsius.clamp(0.0, 40.0);
    let from_densest = t - 3.983_035;
    0.999_974_950
        * (1.0 - from_densest * from_densest * (t + 301.797) / (522_528.9 * (t + 69.348_81)))
}

/// One weighing in air and one in water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighing {
    /// Dry, in air, grams; > 0.
    pub in_air_g: f64,
    /// Hanging in water, grams; from 0 to below the weight in air.
    pub in_water_g: f64,
    /// Temperature of the water, C.
    pub water_c: f64,
    /// Smallest step the balance shows, grams; taken as the spread of each weight.
    pub readable_g: f64,
    /// Volume of drops and bubbles that may go unnoticed, cm3.
    pub unnoticed_cm3: f64,
}

impl Weighing {
    /// Apparent density, g/cm3: weight in air times the density of water, divided by the weight lost
    /// in water (Archimedes). `None` unless it loses weight in water and weighs something in both.
    ///
    /// The lift of the air is left out; it makes silver read up to 0.012 too high.
    #[must_use]
    pub fn density(&self) -> Option<f64> {
        let lost = self.in_air_g - self.in_water_g;
        (self.in_air_g > 0.0 && self.in_water_g >= 0.0 && lost > 0.0)
            .then(|| water_density(self.water_c) * self.in_air_g / lost)
    }

    /// Spread of that density, g/cm3, by first-order propagation (JCGM 100:2008, 5.1.2) of the two
    /// weights and the unnoticed volume, each on its own: d/d(water) = rho^2 / (w a),
    /// d/d(air) = rho (1 - rho / w) / a, d/d(volume) = rho^2 / a, with w the density of water and a
    /// the weight in air. `None` where there is no density.
    #[must_use]
    pub fn spread(&self) -> Option<f64> {
        let (rho, water) = (self.density()?, water_density(self.water_c));
        let terms = [
            rho * rho / (water * self.in_air_g) * self.readable_g,
            rho * (1.0 - rho / water) / self.in_air_g * self.readable_g,
            rho * rho / self.in_air_g * self.unnoticed_cm3,
        ];
        Some(terms.iter().map(|t| t * t).sum::<f64>().sqrt())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WEIGHING: Weighing = Weighing {
        in_air_g: 300.0,
        in_water_g: 266.7,
        water_c: 20.0,
        readable_g: 0.1,
        unnoticed_cm3: 0.0,
    };

    #[test]
    fn no_density_without_a_loss_of_weight() {
        for (in_air_g, in_water_g) in [(300.0, 300.0), (300.0, 301.0), (0.0, 0.0), (300.0, -1.0)] {
            let w = Weighing {
                in_air_g,
                in_water_g,
                ..WEIGHING
            };
            assert_eq!((w.density(), w.spread()), (None, None));
        }
        assert!(WEIGHING.density().is_some());
    }

    #[test]
    fn the_spread_is_what_a_small_change_does() {
        let rho = |air: f64, water: f64| {
            Weighing {
                in_air_g: air,
                in_water_g: water,
                ..WEIGHING
            }
            .density()
            .unwrap()
        };
        let (step, readable) = (1e-4, 0.1);
        let by_air = (rho(300.0 + step, 266.7) - rho(300.0 - step, 266.7)) / (2.0 * step);
        let by_water = (rho(300.0, 266.7 + step) - rho(300.0, 266.7 - step)) / (2.0 * step);
        let both = (by_air * by_air + by_water * by_water).sqrt() * readable;
        assert!((WEIGHING.spread().unwrap() - both).abs() < 1e-6);
    }
}
