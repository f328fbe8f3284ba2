//! What an X-ray reading can and cannot tell through a layer of silver.
//!
//! Beer-Lambert attenuation along slanting paths. The trap: a layer of sterling holds copper of its
//! own, so a layer thicker than a few micrometres reads like sterling all through. A reading of 92.5 %
//! on sound silver therefore never shows that the metal below is silver.

use crate::ledger::Ledger;
use crate::record::hundredths;

/// One way through a layer: in from the tube or out to the detector.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Path {
    /// Mass attenuation of the layer at this energy, cm2/g; >= 0.
    pub attenuation: f64,
    /// Angle between the path and the surface, degrees; above 0, at most 90.
    pub angle_deg: f64,
}

impl Path {
    /// Mass attenuation lengthened by the slant: mu / sin(angle), cm2/g.
    fn slanted(self) -> f64 {
        self.attenuation / libm::sin(self.angle_deg.to_radians())
    }
}

/// Attenuation of a pair of paths per mass of layer above, cm2/g.
fn slanted(paths: &[Path]) -> f64 {
    paths.iter().map(|p| p.slanted()).sum()
}

/// Mass of layer over one square centimetre, g.
fn areal_mass(density: f64, layer_um: f64) -> f64 {
    density * layer_um.max(0.0) / 10_000.0
}

/// Share that comes through a layer along these paths: exp(-rho t sum(mu / sin angle)). Density in
/// g/cm3, thickness in micrometres; below 0 it counts as 0.
#[must_use]
pub fn transmission(paths: &[Path], density: f64, layer_um: f64) -> f64 {
    libm::exp(-slanted(paths) * areal_mass(density, layer_um))
}

/// Depth from which the share `share` of a line comes in thick metal, micrometres:
/// ln(1 / (1 - share)) / (rho sum(mu / sin angle)). Half-open: `share` from 0 to below 1.
#[must_use]
pub fn information_depth_um(paths: &[Path], density: f64, share: f64) -> f64 {
    -libm::log(1.0 - share) / (slanted(paths) * density) * 10_000.0
}

/// Thickness from how far the ratio of two lines of the core has fallen, micrometres:
/// ln(R0 / R) / (rho (mu / sin of the first, less that of the second)). Only for a layer that holds none of the core's metal:
/// with sterling on copper the ratio falls and then comes back, and this must not be used. `None`
/// where the ratios or the paths make no sense.
#[must_use]
pub fn thickness_from_ratio_um(
    bare_ratio: f64,
    ratio: f64,
    first: Path,
    second: Path,
    density: f64,
) -> Option<f64> {
    let per_um = (first.slanted() - second.slanted()) * density / 10_000.0;
    (bare_ratio > 0.0 && ratio > 0.0 && ratio <= bare_ratio && per_um > 0.0)
        .then(|| libm::log(bare_ratio / ratio) / per_um)
}

/// A layer over a core, for one line of an element both may hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layered<'a> {
    /// The element's share of the layer by mass, 0 to 1.
    pub share_in_layer: f64,
    /// Its share of the core, above 0.
    pub share_in_core: f64,
    /// In and out through the layer.
    pub layer: &'a [Path],
    /// In and out through the core.
    pub core: &'a [Path],
    /// Density of the layer, g/cm3.
    pub density: f64,
    /// Thickness of the layer, micrometres.
    pub layer_um: f64,
}

/// How strong a line is beside the bare core, for one energy in and primary fluorescence only:
/// [w (1 - T) / chi + w' T / chi'] / (w' / chi'), chi = sum(mu / sin angle), T = exp(-chi rho t)
/// (Sherman equation for a layer on a thick core: Jenkins, Gould and Gedcke, Quantitative X-ray
/// Spectrometry, 1981). A trend, not a calibration.
#[must_use]
pub fn line_beside_bare_core(x: Layered<'_>) -> f64 {
    let (chi, chi_core) = (slanted(x.layer), slanted(x.core));
    let through = transmission(x.layer, x.density, x.layer_um);
    let own = x.share_in_layer * (1.0 - through) / chi;
    own * chi_core / x.share_in_core + through
}

/// What an X-ray reading sees through silver of this thickness, in words: how much of the two lines of
/// copper below comes through, and why a reading of sterling does not show solid silver.
#[must_use]
pub fn what_shows_through(layer_um: f64, ledger: &Ledger) -> String {
    let out = |line: &str| Path {
        attenuation: ledger.value(&format!("measure.xrf.{line}")).max(0.0),
        angle_deg: ledger.value("measure.xrf.angle").clamp(1.0, 90.0),
    };
    let density = ledger.value("metal.silver.density").max(0.1);
    let (first, second) = (out("silver_ka"), out("silver_kb"));
    let percent = |line| hundredths(100.0 * transmission(&[line], density, layer_um));
    format!(
        "Through {} micrometres of pure silver {} % of copper's stronger X-ray line comes out and {} % of the weaker one; \
         99 in 100 of what the reading sees of the stronger lies within {} micrometres. Sterling holds copper of its own, so \
         a layer thicker than that reads like sterling all through: 92.5 % on sound silver does not show solid silver.",
        hundredths(layer_um),
        percent(first),
        percent(second),
        hundredths(information_depth_um(&[first], density, 0.99)),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    const OUT: Path = Path {
        attenuation: 213.0,
        angle_deg: 45.0,
    };

    #[test]
    fn no_layer_hides_nothing_and_depth_inverts_transmission() {
        assert!((transmission(&[OUT], 10.49, 0.0) - 1.0).abs() < 1e-15);
        assert!((transmission(&[OUT], 10.49, -3.0) - 1.0).abs() < 1e-15);
        let depth = information_depth_um(&[OUT], 10.49, 0.99);
        assert!((transmission(&[OUT], 10.49, depth) - 0.01).abs() < 1e-12);
    }

    #[test]
    fn a_ratio_that_cannot_be_has_no_thickness() {
        let beta = Path {
            attenuation: 162.5,
            ..OUT
        };
        assert_eq!(thickness_from_ratio_um(7.0, 8.0, OUT, beta, 10.49), None);
        assert_eq!(thickness_from_ratio_um(7.0, 0.0, OUT, beta, 10.49), None);
        assert_eq!(thickness_from_ratio_um(7.0, 3.0, beta, OUT, 10.49), None);
        assert!(
            thickness_from_ratio_um(7.0, 7.0, OUT, beta, 10.49).is_some_and(|t| t.abs() < 1e-12)
        );
    }
}
