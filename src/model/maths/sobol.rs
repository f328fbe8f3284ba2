//! Sobol' points with nested uniform scrambling.
//!
//! Invariant: a block always holds 2^m points including the first, so every net property holds; no point is
//! skipped.

/// Number of dimensions with direction numbers.
pub const MAX_DIMENSIONS: usize = 48;

/// Primitive polynomial (coefficients as bits, including the leading and the constant term) and first
/// direction integers of dimensions 2 to 48 (Joe & Kuo 2008, SIAM J. Sci. Comput. 30:2635, table
/// new-joe-kuo-6).
const DIRECTIONS: [(u32, &[u32]); MAX_DIMENSIONS - 1] = [
    (3, &[1]),
    (7, &[1, 3]),
    (11, &[1, 3, 1]),
    (13, &[1, 1, 1]),
    (19, &[1, 1, 3, 3]),
    (25, &[1, 3, 5, 13]),
    (37, &[1, 1, 5, 5, 17]),
    (41, &[1, 1, 5, 5, 5]),
    (47, &[1, 1, 7, 11, 19]),
    (55, &[1, 1, 5, 1, 1]),
    (59, &[1, 1, 1, 3, 11]),
    (61, &[1, 3, 5, 5, 31]),
    (67, &[1, 3, 3, 9, 7, 49]),
    (91, &[1, 1, 1, 15, 21, 21]),
    (97, &[1, 3, 1, 13, 27, 49]),
    (103, &[1, 1, 1, 15, 7, 5]),
    (109, &[1, 3, 1, 15, 13, 25]),
    (115, &[1, 1, 5, 5, 19, 61]),
    (131, &[1, 3, 7, 11, 23, 15, 103]),
    (137, &[1, 3, 7, 13, 13, 15, 69]),
    (143, &[1, 1, 3, 13, 7, 35, 63]),
    (145, &[1, 3, 5, 9, 1, 25, 53]),
    (157, &[1, 3, 1, 13, 9, 35, 107]),
    (167, &[1, 3, 1, 5, 27, 61, 31]),
    (171, &[1, 1, 5, 11, 19, 41, 61]),
    (185, &[1, 3, 5, 3, 3, 13, 69]),
    (191, &[1, 1, 7, 13, 1, 19, 1]),
    (193, &[1, 3, 7, 5, 13, 19, 59]),
    (203, &[1, 1, 3, 9, 25, 29, 41]),
    (211, &[1, 3, 5, 13, 23, 1, 55]),
    (213, &[1, 3, 7, 3, 13, 59, 17]),
    (229, &[1, 3, 1, 3, 5, 53, 69]),
    (239, &[1, 1, 5, 5, 23, 33, 13]),
    (241, &[1, 1, 7, 7, 1, 61, 123]),
    (247, &[1, 1, 7, 9, 13, 61, 49]),
    (253, &[1, 3, 3, 5, 3, 55, 33]),
    (285, &[1, 3, 1, 15, 31, 13, 49, 245]),
    (299, &[1, 3, 5, 15, 31, 59, 63, 97]),
    (301, &[1, 3, 1, 11, 11, 11, 77, 249]),
    (333, &[1, 3, 1, 11, 27, 43, 71, 9]),
    (351, &[1, 1, 7, 15, 21, 11, 81, 45]),
    (355, &[1, 3, 7, 3, 25, 31, 65, 79]),
    (357, &[1, 3, 1, 1, 19, 11, 3, 205]),
    (361, &[1, 1, 5, 9, 19, 21, 29, 157]),
    (369, &[1, 3, 7, 11, 1, 33, 89, 185]),
    (391, &[1, 3, 3, 3, 15, 9, 79, 71]),
    (397, &[1, 3, 7, 11, 15, 39, 119, 27]),
];

/// Coordinate `dimension` (0-based) of point `index` of the unscrambled sequence, in natural order,
/// as a 32-bit fraction.
///
/// # Panics
/// When `dimension` is not below [`MAX_DIMENSIONS`].
#[must_use]
pub fn sobol_u32(index: u32, dimension: usize) -> u32 {
    let directions = directions(dimension);
    (0..32)
        .filter(|bit| index >> bit & 1 == 1)
        .fold(0, |x, bit| x ^ directions[bit])
}

fn directions(dimension: usize) -> [u32; 32] {
    let mut v = [0_u32; 32];
    if dimension == 0 {
        for (i, v) in v.iter_mut().enumerate() {
            *v = 1 << (31 - i);
        }
        return v;
    }
    let (polynomial, initial) = DIRECTIONS[dimension - 1];
    let degree = initial.len();
    for i in 0..32 {
        v[i] = if i < degree {
            initial[i] << (31 - i)
        } else {
            let mut value = v[i - degree] ^ (v[i - degree] >> degree);
            for k in 1..degree {
                if polynomial >> (degree - k) & 1 == 1 {
                    value ^= v[i - k];
                }
            }
            value
        };
    }
    v
}

/// A block of 2^m scrambled points, stored by dimension.
#[derive(Clone, Debug)]
pub struct SobolBlock {
    log2_points: u32,
    seed: u32,
}

impl SobolBlock {
    /// A block of 2^`log2_points` points, at most 2^20. The seed chooses the scramble.
    #[must_use]
    pub fn new(log2_points: u32, seed: u32) -> Self {
        Self {
            log2_points: log2_points.min(20),
            seed,
        }
    }

    /// Number of points.
    #[must_use]
    pub fn len(&self) -> usize {
        1 << self.log2_points
    }

    /// Always false: a block has at least one point.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        false
    }

    /// One coordinate of every point. Each is the midpoint of its 2^-32 cell, so it lies in (0, 1) and a
    /// quantile function never receives 0 or 1.
    ///
    /// # Panics
    /// When `dimension` is not below [`MAX_DIMENSIONS`].
    #[must_use]
    pub fn column(&self, dimension: usize) -> Vec<f64> {
        let directions = directions(dimension);
        #[allow(clippy::cast_possible_truncation)] // below MAX_DIMENSIONS
        let seed = mix(self.seed ^ mix(dimension as u32 + 1));
        let mut x = 0_u32;
        let mut column = vec![0.0; self.len()];
        for i in 0..1_u32 << self.log2_points {
            // Gray-code order needs one exclusive-or per point; `place` maps back to the natural order.
            if i > 0 {
                x ^= directions[i.trailing_zeros() as usize];
            }
            let place = (i ^ (i >> 1)) as usize;
            column[place] = (f64::from(scramble(x, seed)) + 0.5) / 4_294_967_296.0;
        }
        column
    }
}

/// Nested uniform (Owen) scrambling of one coordinate by hashing from the highest bit down
/// (Laine & Karras 2011; Burley 2020, Journal of Computer Graphics Techniques 9(4)).
fn scramble(x: u32, seed: u32) -> u32 {
    let mut x = x.reverse_bits();
    x = x.wrapping_add(seed);
    x ^= x.wrapping_mul(0x6c50_b47c);
    x ^= x.wrapping_mul(0xb82f_1e52);
    x ^= x.wrapping_mul(0xc7af_e638);
    x ^= x.wrapping_mul(0x8d22_f6e6);
    x.reverse_bits()
}

/// A 32-bit finaliser that turns neighbouring seeds into unrelated ones.
fn mix(mut x: u32) -> u32 {
    x ^= x >> 16;
    x = x.wrapping_mul(0x7feb_352d);
    x ^= x >> 15;
    x = x.wrapping_mul(0x846c_a68b);
    x ^ (x >> 16)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_interval_of_every_dimension_holds_one_point() {
        for m in [4_u32, 8, 12] {
            for seed in [0, 7, 20_240_511] {
                let block = SobolBlock::new(m, seed);
                for d in 0..MAX_DIMENSIONS {
                    let mut seen = vec![false; block.len()];
                    for u in block.column(d) {
                        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
                        let cell = (u * block.len() as f64) as usize;
                        assert!(!seen[cell], "dimension {d}, m {m}");
                        seen[cell] = true;
                    }
                }
            }
        }
    }

    #[test]
    fn the_first_two_dimensions_fill_every_elementary_box() {
        let m = 12_u32;
        let block = SobolBlock::new(m, 20_240_511);
        let (x, y) = (block.column(0), block.column(1));
        for k in 0..=m {
            let (across, down) = (1_usize << k, 1_usize << (m - k));
            let mut count = vec![0; block.len()];
            for (x, y) in x.iter().zip(&y) {
                #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
                let cell = (x * across as f64) as usize * down + (y * down as f64) as usize;
                count[cell] += 1;
            }
            assert!(count.iter().all(|c| *c == 1), "boxes {across} by {down}");
        }
    }

    #[test]
    fn the_seed_determines_the_block() {
        let column = |seed| SobolBlock::new(6, seed).column(3);
        assert_eq!(
            column(5).iter().map(|u| u.to_bits()).collect::<Vec<_>>(),
            column(5).iter().map(|u| u.to_bits()).collect::<Vec<_>>()
        );
        assert_ne!(
            column(5).iter().map(|u| u.to_bits()).collect::<Vec<_>>(),
            column(6).iter().map(|u| u.to_bits()).collect::<Vec<_>>()
        );
    }
}
