//! The standard normal distribution: density, distribution function and quantile.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

/// Density of N(0, 1) at `z`.
#[must_use]
pub fn phi(z: f64) -> f64 {
    libm::exp(-0.5 * z * z) / (2.0 * PI).sqrt()
}

/// P(Z <= z) for N(0, 1) by the complementary error function, accurate in both tails.
#[must_use]
pub fn probability(z: f64) -> f64 {
    0.5 * libm::erfc(-z * FRAC_1_SQRT_2)
}

/// The z with P(Z <= z) = p, by algorithm AS 241, PPND16 (Wichura 1988, Applied Statistics 37:477), with a
/// relative error of about 1e-16. `p` is clamped to [1e-300, 1 - 1e-16], so the result is finite.
#[must_use]
pub fn probit(p: f64) -> f64 {
    let p = p.clamp(1e-300, 1.0 - 1.110_223_024_625_156_5e-16);
    let q = p - 0.5;
    if q.abs() <= 0.425 {
        let r = 0.180_625 - q * q;
        return q * horner(&A, r) / horner(&B, r);
    }
    let tail = if q < 0.0 { p } else { 1.0 - p };
    let r = (-libm::log(tail)).sqrt();
    let z = if r <= 5.0 {
        horner(&C, r - 1.6) / horner(&D, r - 1.6)
    } else {
        horner(&E, r - 5.0) / horner(&F, r - 5.0)
    };
    if q < 0.0 { -z } else { z }
}

fn horner(coefficients: &[f64; 8], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}

// The digits are those of the publication; the compiler takes the nearest double.
#[allow(clippy::excessive_precision)]
const A: [f64; 8] = [
    3.387_132_872_796_366_608,
    133.141_667_891_784_377_45,
    1_971.590_950_306_551_442_7,
    13_731.693_765_509_461_125,
    45_921.953_931_549_871_457,
    67_265.770_927_008_700_853,
    33_430.575_583_588_128_105,
    2_509.080_928_730_122_672_7,
];
#[allow(clippy::excessive_precision)]
const B: [f64; 8] = [
    1.0,
    42.313_330_701_600_911_252,
    687.187_007_492_057_908_3,
    5_394.196_021_424_751_107_7,
    21_213.794_301_586_595_867,
    39_307.895_800_092_710_61,
    28_729.085_735_721_942_674,
    5_226.495_278_852_854_561,
];
#[allow(clippy::excessive_precision)]
const C: [f64; 8] = [
    1.423_437_110_749_683_577_34,
    4.630_337_846_156_545_295_9,
    5.769_497_221_460_691_405_5,
    3.647_848_324_763_204_605_04,
    1.270_458_252_452_368_382_58,
    0.241_780_725_177_450_611_77,
    0.022_723_844_989_269_184_583_3,
    7.745_450_142_783_414_076_4e-4,
];
#[allow(clippy::excessive_precision)]
const D: [f64; 8] = [
    1.0,
    2.053_191_626_637_758_821_87,
    1.676_384_830_183_803_849_4,
    0.689_767_334_985_100_004_55,
    0.148_103_976_427_480_074_59,
    0.015_198_666_563_616_457_196_6,
    5.475_938_084_995_344_946e-4,
    1.050_750_071_644_416_843_24e-9,
];
#[allow(clippy::excessive_precision)]
const E: [f64; 8] = [
    6.657_904_643_501_103_777_2,
    5.463_784_911_164_114_369_9,
    1.784_826_539_917_291_335_8,
    0.296_560_571_828_504_891_23,
    0.026_532_189_526_576_123_093,
    0.001_242_660_947_388_078_438_6,
    2.711_555_568_743_487_578_15e-5,
    2.010_334_399_292_288_132_65e-7,
];
#[allow(clippy::excessive_precision)]
const F: [f64; 8] = [
    1.0,
    0.599_832_206_555_887_937_69,
    0.136_929_880_922_735_805_31,
    0.014_875_361_290_850_615_025,
    7.868_691_311_456_132_591e-4,
    1.846_318_317_510_054_681_8e-5,
    1.421_511_758_316_445_888_7e-7,
    2.044_263_103_389_939_785_64e-15,
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_quantile_inverts_the_distribution_function() {
        for i in 1..1000 {
            let p = f64::from(i) / 1000.0;
            assert!((probability(probit(p)) - p).abs() < 1e-14, "{p}");
        }
    }

    #[test]
    fn quantiles_of_impossible_probabilities_are_finite() {
        for p in [0.0, 1.0, -1.0, 2.0, f64::MIN_POSITIVE] {
            assert!(probit(p).is_finite());
        }
    }
}
