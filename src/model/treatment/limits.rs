//! The measured limits behind the hard rules, each a yes or no: true means that the rule applies.
//!
//! Temperatures in C, thicknesses in micrometres, distances in mm. Thresholds are figures of the ledger that
//! may be moved only toward safety. NaN counts as dangerous.

// Written as "not safe" so that NaN counts as dangerous.
#![allow(clippy::neg_cmp_op_on_partial_ord)]

use crate::ledger::FigureId;
use crate::ledger::Ledger;

/// H06: a closed or filled void gets hotter than the ledger's limit.
#[must_use]
pub fn bursts(process_c: f64, ledger: &Ledger) -> bool {
    !(process_c <= ledger.value(FigureId::GUARD_H06))
}

/// H07: a filler that is fully liquid at `liquid_c` needs more heat than the bond of fused plate can bear
/// with the ledger's margin (H07a lists the fillers).
#[must_use]
pub fn melts_bond(liquid_c: f64, ledger: &Ledger) -> bool {
    let most = ledger.value(FigureId::GUARD_H07_BOND) - ledger.value(FigureId::GUARD_H07_MARGIN);
    !(liquid_c <= most)
}

/// H08: hot enough for lead or tin to dissolve silver and copper, and neither metal is ruled out.
#[must_use]
pub fn pits(process_c: f64, lead_and_tin_ruled_out: bool, ledger: &Ledger) -> bool {
    !(process_c < ledger.value(FigureId::HEAT_LIMIT_PITTING)) && !lead_and_tin_ruled_out
}

/// H09: the next soft joint or filling is nearer than the reach of the heat. An equal distance is far enough.
#[must_use]
pub fn within_reach(distance_mm: f64, reach_mm: f64) -> bool {
    !(distance_mm >= reach_mm)
}

/// S06: how much a joint beyond the reach still counts, 0 to 1: 1 where the heat reaches the joint, falling
/// linearly with reach/distance to 0 at the ledger's ratio.
#[must_use]
pub fn near_reach(distance_mm: f64, reach_mm: f64, ledger: &Ledger) -> f64 {
    let free = ledger.value(FigureId::GUARD_HEAT_RAMP).clamp(0.0, 0.99);
    if distance_mm <= 0.0 {
        return 1.0;
    }
    ((reach_mm / distance_mm - free) / (1.0 - free)).clamp(0.0, 1.0)
}

/// H11: hotter than close plate or French plate can bear.
#[must_use]
pub fn lifts_foil(process_c: f64, ledger: &Ledger) -> bool {
    !(process_c <= ledger.value(FigureId::GUARD_H11))
}

/// H14, first limb: more of the area than the ledger's share still carries its own silver, on a piece
/// that is fused plate with at least the ledger's probability.
#[must_use]
pub fn own_silver(fused: f64, covered_area: f64, ledger: &Ledger) -> bool {
    fused >= ledger.value(FigureId::GUARD_H14_P)
        && covered_area > ledger.value(FigureId::GUARD_H14_AREA)
}

/// H25: hot enough to drive mercury out of old gilding.
#[must_use]
pub fn frees_mercury(process_c: f64, ledger: &Ledger) -> bool {
    !(process_c < ledger.value(FigureId::GUARD_H25))
}

/// H29: tin melts at a higher temperature than an old tin-lead joint can bear.
#[must_use]
pub fn opens_seams(process_c: f64, ledger: &Ledger) -> bool {
    process_c > ledger.value(FigureId::GUARD_HEAT_SOFT_SOLDER)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_limit_applies_on_one_side_only() {
        let l = Ledger::standard();
        assert!(!bursts(60.0, l) && bursts(61.0, l));
        assert!(!melts_bond(729.0, l) && melts_bond(730.0, l));
        assert!(!pits(259.0, false, l) && pits(260.0, false, l) && !pits(700.0, true, l));
        assert!(!within_reach(6.0, 5.63) && within_reach(5.5, 5.63));
        assert!(!lifts_foil(150.0, l) && lifts_foil(151.0, l));
        assert!(!own_silver(0.9, 0.25, l) && own_silver(0.9, 0.26, l));
        assert!(!own_silver(0.09, 0.9, l) && own_silver(0.1, 0.9, l));
        assert!(!frees_mercury(99.0, l) && frees_mercury(100.0, l));
        assert!(opens_seams(232.0, l) && !opens_seams(138.0, l));
    }

    #[test]
    fn nan_is_dangerous() {
        let l = Ledger::standard();
        assert!(bursts(f64::NAN, l) && lifts_foil(f64::NAN, l) && melts_bond(f64::NAN, l));
    }

    #[test]
    fn the_next_joint_counts_more_the_nearer_it_is() {
        let l = Ledger::standard();
        let at = |ratio: f64| near_reach(10.0, 10.0 * ratio, l);
        assert!(at(0.5).abs() < 1e-12 && at(0.4).abs() < 1e-12);
        assert!((at(0.75) - 0.5).abs() < 1e-12);
        assert!((at(1.0) - 1.0).abs() < 1e-12);
        assert!((near_reach(0.0, 5.0, l) - 1.0).abs() < 1e-12);
    }
}
