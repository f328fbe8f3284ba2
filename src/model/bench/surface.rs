//! The surface area of a piece, from its form and a few dimensions. Lengths are in mm, areas in cm2.
//!
//! Plain solid geometry: cylinder, cone, and the slant side of a frustum. Negative lengths count as 0, so
//! an area is never negative.

use core::f64::consts::PI;

const MM2_PER_CM2: f64 = 100.0;

/// One face of the side of a body of revolution: the sum, over the frusta between neighbouring stations,
/// of pi (r1 + r2) sqrt((r1 - r2)^2 + (z1 - z2)^2). `profile` lists radius and height in mm from one end
/// to the other; fewer than two stations give 0.
#[must_use]
pub fn turned_cm2(profile: &[(f64, f64)]) -> f64 {
    profile
        .windows(2)
        .map(|pair| {
            let [(r1, z1), (r2, z2)] = [pair[0], pair[1]];
            let (r1, r2) = (r1.max(0.0), r2.max(0.0));
            let slant = ((r1 - r2) * (r1 - r2) + (z1 - z2) * (z1 - z2)).sqrt();
            PI * (r1 + r2) * slant
        })
        .sum::<f64>()
        / MM2_PER_CM2
}

/// One face of a flat disk or oval: pi times both semi-axes.
#[must_use]
pub fn oval_cm2(length_mm: f64, width_mm: f64) -> f64 {
    PI * length_mm.max(0.0) / 2.0 * width_mm.max(0.0) / 2.0 / MM2_PER_CM2
}

/// One face of a flat rectangle.
#[must_use]
pub fn rectangle_cm2(length_mm: f64, width_mm: f64) -> f64 {
    length_mm.max(0.0) * width_mm.max(0.0) / MM2_PER_CM2
}

/// The six outer faces of a box: 2 (lw + lh + wh).
#[must_use]
pub fn box_cm2(length_mm: f64, width_mm: f64, height_mm: f64) -> f64 {
    2.0 * (rectangle_cm2(length_mm, width_mm)
        + rectangle_cm2(length_mm, height_mm)
        + rectangle_cm2(width_mm, height_mm))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(got: f64, want: f64) {
        assert!(
            (got - want).abs() < 1e-9 * want.abs().max(1.0),
            "{got} is not {want}"
        );
    }

    #[test]
    fn areas_of_simple_solids_match_their_formulas() {
        // A cylinder of radius 5 cm and height 10 cm: 2 pi r h.
        near(turned_cm2(&[(50.0, 0.0), (50.0, 100.0)]), 2.0 * PI * 50.0);
        // A cone of radius 3 cm and height 4 cm: pi r s with s = 5.
        near(turned_cm2(&[(0.0, 0.0), (30.0, 40.0)]), PI * 15.0);
        // A ball of radius 4 cm in many frusta: 4 pi r^2.
        let ball: Vec<(f64, f64)> = (0..=400)
            .map(|i| {
                let t = PI * f64::from(i) / 400.0;
                (40.0 * libm::sin(t), 40.0 * libm::cos(t))
            })
            .collect();
        assert!((turned_cm2(&ball) / (4.0 * PI * 16.0) - 1.0).abs() < 1e-4);
        near(oval_cm2(200.0, 200.0), PI * 100.0);
        near(box_cm2(10.0, 20.0, 30.0), 22.0);
    }

    #[test]
    fn missing_or_negative_dimensions_give_no_area() {
        near(turned_cm2(&[]), 0.0);
        near(turned_cm2(&[(10.0, 0.0)]), 0.0);
        near(box_cm2(-5.0, 10.0, 10.0), 2.0);
        near(oval_cm2(-1.0, 10.0), 0.0);
    }
}
