//! Order statistics of a sample.

use super::extremes::{at_least, at_most};

/// Mean of a sample; 0 for an empty one. Summed in order, so the result is bit-identical on every machine.
#[must_use]
pub fn mean(sample: &[f64]) -> f64 {
    if sample.is_empty() {
        0.0
    } else {
        sample.iter().sum::<f64>() / sample.len() as f64
    }
}

/// The `p` quantile, linear between order statistics (Hyndman & Fan 1996, type 7); 0 for an empty
/// sample.
#[must_use]
pub fn quantile_of(sample: &[f64], p: f64) -> f64 {
    quantiles(sample, [p]).0[0]
}

/// 10th, 50th and 90th percentile, equal to those of [`quantile_of`], at about the cost of one call.
#[must_use]
pub fn deciles(sample: &[f64]) -> [f64; 3] {
    Ordered::of(sample).deciles
}

/// The deciles of a sample, with the adjacent draws, which often mark the end of a tail.
#[derive(Clone, Debug)]
pub struct Ordered {
    /// 10th, 50th and 90th percentile.
    pub deciles: [f64; 3],
    /// Known draws by rank.
    known: Vec<(usize, f64)>,
}

impl Ordered {
    /// The deciles of a sample; all 0 for an empty one.
    #[must_use]
    pub fn of(sample: &[f64]) -> Self {
        let (deciles, known) = quantiles(sample, [0.1, 0.5, 0.9]);
        Self { deciles, known }
    }

    /// [`tail_mean`] of the same sample, faster where the tail ends at a known draw.
    #[must_use]
    pub fn tail_mean(&self, sample: &[f64], alpha: f64) -> f64 {
        tail_mean_by(sample, alpha, |rank| {
            let known = self.known.iter().find(|(known, _)| *known == rank);
            known.map_or_else(|| smallest(sample, &[rank])[0], |(_, draw)| *draw)
        })
    }
}

/// Median of a sample.
#[must_use]
pub fn median(sample: &[f64]) -> f64 {
    quantile_of(sample, 0.5)
}

/// Number of cells that a sample is counted into.
const CELLS: usize = 1 << 10;
/// With fewer draws, counting costs more than it saves.
const FEW: usize = 256;

/// Quantiles of a sample at these shares, given in rising order, and the adjacent draws by rank. All 0 for an
/// empty sample.
fn quantiles<const N: usize>(sample: &[f64], shares: [f64; N]) -> ([f64; N], Vec<(usize, f64)>) {
    let n = sample.len();
    if n == 0 {
        return ([0.0; N], Vec::new());
    }
    let at = shares.map(|p| p.clamp(0.0, 1.0) * (n - 1) as f64);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within 0..n
    let below = at.map(|at| at as usize);
    let mut ranks = Vec::with_capacity(2 * N);
    for i in below {
        ranks.extend([i, (i + 1).min(n - 1)]);
    }
    let found = smallest(sample, &ranks);
    let quantiles = std::array::from_fn(|q| {
        let (low, high) = (found[2 * q], found[2 * q + 1]);
        low + (at[q] - below[q] as f64) * (high - low)
    });
    (quantiles, ranks.into_iter().zip(found).collect())
}

/// The draws at these ranks of the sorted sample; ranks count from 0 and are below the number of draws. Draws
/// are first counted into cells of equal width, so only those in the wanted cells are sorted. An outlier
/// crowds the other draws into few cells; this costs time but does not change the result.
fn smallest(sample: &[f64], ranks: &[usize]) -> Vec<f64> {
    let (low, high) = ends(sample);
    if low >= high {
        return vec![low; ranks.len()];
    }
    let scale = (CELLS - 1) as f64 / (high - low);
    if sample.len() < FEW || !(scale.is_finite() && scale > 0.0) {
        let mut copy = sample.to_vec();
        return ranks.iter().map(|i| part(&mut copy, *i)).collect();
    }
    // The cell number never falls as the draw rises, so the draws of one cell are consecutive in sorted
    // order.
    let mut ends = [0_usize; CELLS];
    let mut cells = vec![0_u16; sample.len()];
    for (cell, x) in cells.iter_mut().zip(sample) {
        *cell = nearest((x - low) * scale);
        ends[usize::from(*cell) % CELLS] += 1;
    }
    let mut sum = 0;
    for end in &mut ends {
        sum += *end;
        *end = sum;
    }
    // The wanted cells, the number of draws before each, and its draws.
    let mut wanted: Vec<(usize, usize, Vec<f64>)> = Vec::with_capacity(ranks.len());
    let mut slots = [0_u8; CELLS];
    let mut at = Vec::with_capacity(ranks.len());
    for i in ranks {
        let cell = ends.partition_point(|end| end <= i);
        let known = wanted.iter().position(|(known, ..)| *known == cell);
        at.push(known.unwrap_or(wanted.len()));
        if known.is_none() {
            let before = cell.checked_sub(1).map_or(0, |cell| ends[cell]);
            wanted.push((cell, before, Vec::with_capacity(ends[cell] - before)));
            // At most a handful of ranks are requested.
            slots[cell] = u8::try_from(wanted.len()).unwrap_or(u8::MAX);
        }
    }
    for (cell, x) in cells.iter().zip(sample) {
        let slot = slots[usize::from(*cell) % CELLS];
        if slot > 0 {
            wanted[usize::from(slot - 1)].2.push(*x);
        }
    }
    let at = at.into_iter().zip(ranks);
    at.map(|(slot, i)| {
        let (_, before, draws) = &mut wanted[slot];
        part(draws, i - *before)
    })
    .collect()
}

/// Minimum and maximum of a sample. Two draws at a time, because in a single chain each comparison waits for
/// the one before.
fn ends(sample: &[f64]) -> (f64, f64) {
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    let (mut low_too, mut high_too) = (low, high);
    let (pairs, rest) = sample.as_chunks::<2>();
    for [x, y] in pairs {
        low = if *x < low { *x } else { low };
        high = if *x > high { *x } else { high };
        low_too = if *y < low_too { *y } else { low_too };
        high_too = if *y > high_too { *y } else { high_too };
    }
    for x in rest {
        low = if *x < low { *x } else { low };
        high = if *x > high { *x } else { high };
    }
    (at_most(low, low_too), at_least(high, high_too))
}

/// The integer nearest to `x`, for `x` from 0 to 2^16 - 1. The last bits of the sum with 2^52 are the bits of
/// that integer; a conversion would add range checks.
fn nearest(x: f64) -> u16 {
    const WHOLE: f64 = (1_u64 << 52) as f64;
    #[allow(clippy::cast_possible_truncation)] // only the last bits are wanted
    let bits = (x + WHOLE).to_bits() as u16;
    bits
}

/// Mean of the worst share `alpha` of a sample (lower-tail conditional value at risk), with the boundary draw
/// weighted by the fraction of it that belongs to the tail. `alpha` is in (0, 1]. The sum runs in the order
/// of the sample, so its bits do not depend on how the boundary was found.
#[must_use]
pub fn tail_mean(sample: &[f64], alpha: f64) -> f64 {
    tail_mean_by(sample, alpha, |rank| smallest(sample, &[rank])[0])
}

fn tail_mean_by(sample: &[f64], alpha: f64, ranked: impl Fn(usize) -> f64) -> f64 {
    if sample.is_empty() {
        return 0.0;
    }
    let take = (alpha.clamp(0.0, 1.0) * sample.len() as f64).max(f64::MIN_POSITIVE);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within 0..len
    let whole = (take as usize).min(sample.len() - 1);
    let boundary = ranked(whole);
    let (mut sum, mut below) = (0.0, 0_usize);
    for x in sample {
        if *x < boundary {
            sum += x;
            below += 1;
        }
    }
    (sum + (take - below as f64) * boundary) / take
}

/// Moves the `i`-th smallest draw to its place, smaller ones before it and greater ones after, and returns
/// it. This is Hoare's selection (1961), partitioned at the median of three. The standard library's selection
/// adds 4 KB of code to guard against a worst case that draws never form.
#[inline(never)]
fn part(sample: &mut [f64], i: usize) -> f64 {
    let (mut from, mut to) = (0, sample.len());
    while to - from > 1 {
        let middle = usize::midpoint(from, to);
        let mut three = [sample[from], sample[middle], sample[to - 1]];
        three.sort_by(f64::total_cmp);
        let pivot = three[1];
        let (mut left, mut right) = (from, to);
        while left < right {
            // A draw equal to the pivot stops both sides, so many equal draws are split in half.
            while sample[left].total_cmp(&pivot).is_lt() {
                left += 1;
            }
            while sample[right - 1].total_cmp(&pivot).is_gt() {
                right -= 1;
            }
            if left < right {
                right -= 1;
                sample.swap(left, right);
                left += 1;
            }
        }
        // Nothing before `left` exceeds the pivot; nothing from `right` on is below it.
        if i >= left {
            from = left;
        } else if i < right {
            to = right;
        } else {
            break;
        }
    }
    sample[i]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_interpolate_between_draws() {
        let sample = [4.0, 1.0, 3.0, 2.0];
        let at = |p| quantile_of(&sample, p);
        assert!((at(0.0) - 1.0).abs() < 1e-12 && (at(1.0) - 4.0).abs() < 1e-12);
        assert!((at(0.5) - 2.5).abs() < 1e-12 && (at(0.1) - 1.3).abs() < 1e-12);
        assert!(quantile_of(&[], 0.5).abs() < 1e-12);
    }

    #[test]
    fn selection_partitions_the_sample_at_the_ith_smallest() {
        // A fixed shuffled sequence; the modulus sets how many draws are equal.
        for (n, modulus) in [
            (1, 1),
            (2, 2),
            (3, 2),
            (17, 3),
            (100, 100),
            (257, 7),
            (400, 1),
        ] {
            let sample: Vec<f64> = (0..n)
                .map(|j: i32| f64::from((j * 7919 + j * j * 31) % modulus) - 1.5)
                .collect();
            let mut sorted = sample.clone();
            sorted.sort_by(f64::total_cmp);
            for i in 0..sample.len() {
                let mut parted = sample.clone();
                let found = part(&mut parted, i);
                assert_eq!(found.to_bits(), sorted[i].to_bits(), "{i} of {n}");
                assert!(parted[..i].iter().all(|x| *x <= found));
                assert!(parted[i..].iter().all(|x| *x >= found));
                parted.sort_by(f64::total_cmp);
                assert_eq!(parted, sorted, "nothing is lost");
            }
        }
    }

    #[test]
    fn counting_into_cells_changes_no_quantile() {
        let spread = |i: i32| f64::from((i * 7919) % 997);
        let laws: [fn(f64) -> f64; 5] = [
            |x| x,
            // A long tail, an outlier, few distinct values, and a constant.
            |x| libm::exp(x / 60.0),
            |x| if x < 1.0 { 1e15 } else { x },
            |x| (x / 300.0).floor(),
            |_| -7.5,
        ];
        for law in laws {
            let sample: Vec<f64> = (0..997).map(|i| law(spread(i)) - 3.0).collect();
            let mut sorted = sample.clone();
            sorted.sort_by(f64::total_cmp);
            for i in [0, 1, 50, 498, 700, 995, 996] {
                // At a rank, and half-way to the next.
                let at = |rank: f64| quantile_of(&sample, rank / 996.0);
                let rank = f64::from(u16::try_from(i).unwrap());
                let next = sorted[(i + 1).min(996)];
                let close = |a: f64, b: f64| (a - b).abs() <= 1e-9 * b.abs().max(1.0);
                assert!(close(at(rank), sorted[i]), "{i}");
                assert!(
                    close(at((rank + 0.5).min(996.0)), 0.5 * (sorted[i] + next)),
                    "{i}"
                );
            }
        }
    }

    #[test]
    fn the_tail_counts_the_boundary_draw_in_part() {
        // Ten draws 1 to 10; the worst quarter is 1, 2 and half of 3.
        let sample: Vec<f64> = (1..=10).rev().map(f64::from).collect();
        assert!((tail_mean(&sample, 0.25) - (1.0 + 2.0 + 1.5) / 2.5).abs() < 1e-12);
        assert!((tail_mean(&sample, 1.0) - 5.5).abs() < 1e-12);
        assert!((tail_mean(&[2.0; 7], 0.3) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn deciles_at_once_equal_quantiles_one_by_one() {
        let sample: Vec<f64> = (0..997)
            .map(|i| f64::from((i * 7919) % 997) + f64::from(i % 3))
            .collect();
        let single = [0.1, 0.5, 0.9].map(|p| quantile_of(&sample, p));
        let together = deciles(&sample);
        for (a, b) in single.iter().zip(together) {
            assert!((a - b).abs() < 1e-12);
        }
        assert!((deciles(&[1.0, 2.0, 3.0])[1] - 2.0).abs() < 1e-12);
    }
}
