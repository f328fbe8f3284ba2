//! The probability that an old joint or filling lets go beside a new joint, over the unknown inputs.

use super::heat_field::{HeatField, Spread};
use crate::maths::{Beta, pert_shapes};

/// Integration steps over heat loss, thickness and letting-go temperature. The midpoint of a step stands
/// for it; the integrand is smooth in all three, so a few steps are enough.
const STEPS: [u32; 3] = [24, 12, 16];

/// The unknown inputs, each as a band. A band with low = high is a known number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatBands {
    /// Heat loss per face, W/(m2 K), > 0: log-uniform.
    pub loss: (f64, f64),
    /// Thickness, mm, > 0: minimum, mode and maximum of a PERT distribution.
    pub thickness_mm: (f64, f64, f64),
    /// Temperature of the hot spot, C: uniform.
    pub joint_c: (f64, f64),
    /// Temperature at which the joint or filling lets go, C: uniform.
    pub lets_go_c: (f64, f64),
    /// Conductivity, W/(m K), > 0.
    pub conductivity: f64,
    /// Temperature of the air, C.
    pub ambient_c: f64,
}

/// Probability, 0 to 1, that a joint or filling at `distance_mm` from the edge of the hot spot reaches
/// its letting-go temperature. `length` gives the decay length in mm for conductivity, thickness (or
/// diameter) and heat loss. The result never rises with distance. It is 0 when no joint temperature in the
/// band exceeds the letting-go band or the air, and for input that makes no sense.
///
/// For each step of loss and thickness, the share f of the excess temperature that remains there is known.
/// The joint would need to be at Ta + (Tc - Ta) / f; the probability of that follows from its band.
#[must_use]
pub fn chance_lets_go(
    bands: &HeatBands,
    spread: Spread,
    length: fn(f64, f64, f64) -> f64,
    distance_mm: f64,
) -> f64 {
    let (thin, likely, thick) = bands.thickness_mm;
    let (quiet, windy) = bands.loss;
    let holds = [
        thin,
        likely,
        thick,
        quiet,
        windy,
        bands.joint_c.0,
        bands.joint_c.1,
        bands.lets_go_c.0,
        bands.lets_go_c.1,
        bands.conductivity,
        bands.ambient_c,
        distance_mm,
    ]
    .iter()
    .all(|v| v.is_finite())
        && thin > 0.0
        && thin <= likely
        && likely <= thick
        && quiet > 0.0
        && quiet <= windy
        && bands.conductivity > 0.0;
    if !holds {
        return 0.0;
    }
    let thicknesses = pert_middles(thin, likely, thick);
    let mut sum = 0.0;
    for i in 0..STEPS[0] {
        let loss = quiet * libm::exp(middle(i, STEPS[0]) * libm::log(windy / quiet));
        for t in &thicknesses {
            let field = HeatField {
                length_mm: length(bands.conductivity, *t, loss),
                spread,
            };
            let left = field.left(distance_mm);
            for j in 0..STEPS[2] {
                let lets_go = between(bands.lets_go_c, middle(j, STEPS[2]));
                sum += chance_of_joint(bands, left, lets_go);
            }
        }
    }
    sum / STEPS.map(f64::from).iter().product::<f64>()
}

/// Probability that the joint is hot enough for `lets_go` C to be reached where the share `left` of its
/// excess temperature remains.
fn chance_of_joint(bands: &HeatBands, left: f64, lets_go: f64) -> f64 {
    if left <= 0.0 {
        return f64::from(u8::from(lets_go <= bands.ambient_c));
    }
    let needed = bands.ambient_c + (lets_go - bands.ambient_c) / left;
    let (low, high) = bands.joint_c;
    if high > low {
        ((high - needed) / (high - low)).clamp(0.0, 1.0)
    } else {
        f64::from(u8::from(low >= needed))
    }
}

/// Midpoint of the `i`-th of `n` equal steps of 0 to 1.
fn middle(i: u32, n: u32) -> f64 {
    (f64::from(i) + 0.5) / f64::from(n)
}

fn between((low, high): (f64, f64), u: f64) -> f64 {
    low + (high - low) * u
}

/// Values of the PERT distribution at the midpoints of equal steps of probability.
fn pert_middles(low: f64, likely: f64, high: f64) -> Vec<f64> {
    let steps = 0..STEPS[1];
    if high <= low {
        return steps.map(|_| likely).collect();
    }
    let (a, b) = pert_shapes((likely - low) / (high - low));
    let law = Beta::new(a, b);
    let mut start = 0.5;
    steps
        .map(|i| {
            start = law.quantile(middle(i, STEPS[1]), start);
            between((low, high), start)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::sheet_length_mm;

    const SOFT: HeatBands = HeatBands {
        loss: (10.0, 50.0),
        thickness_mm: (0.4, 0.8, 1.0),
        joint_c: (241.0, 271.0),
        lets_go_c: (183.0, 183.0),
        conductivity: 401.0,
        ambient_c: 20.0,
    };

    const BODY: Spread = Spread::Disk {
        patch_mm: 5.0,
        end_mm: 100.0,
    };

    #[test]
    fn the_chance_is_certain_at_the_patch_and_never_rises_with_distance() {
        let at = |d| chance_lets_go(&SOFT, BODY, sheet_length_mm, d);
        assert!((at(0.0) - 1.0).abs() < 1e-12);
        let mut last = 1.0;
        for d in 1..100 {
            let now = at(f64::from(d));
            assert!(now <= last, "{d}: {now} after {last}");
            last = now;
        }
    }

    #[test]
    fn a_cold_joint_or_senseless_input_gives_no_chance() {
        let cold = HeatBands {
            joint_c: (100.0, 150.0),
            ..SOFT
        };
        assert!(chance_lets_go(&cold, BODY, sheet_length_mm, 1.0).abs() < 1e-12);
        let none = HeatBands {
            thickness_mm: (0.0, 0.0, 0.0),
            ..SOFT
        };
        assert!(chance_lets_go(&none, BODY, sheet_length_mm, 1.0).abs() < 1e-12);
    }

    #[test]
    fn exact_inputs_give_zero_or_one() {
        // Copper .8 mm, h 10: 230 C falls to 183 C at 32.09 mm along a long strip.
        let known = HeatBands {
            loss: (10.0, 10.0),
            thickness_mm: (0.8, 0.8, 0.8),
            joint_c: (230.0, 230.0),
            ..SOFT
        };
        let strip = Spread::Strip { end_mm: 5_000.0 };
        assert!((chance_lets_go(&known, strip, sheet_length_mm, 32.0) - 1.0).abs() < 1e-12);
        assert!(chance_lets_go(&known, strip, sheet_length_mm, 32.2).abs() < 1e-12);
    }
}
