//! Order statistics of a sample.

use crate::small::sort_short;

/// Mean of a sample; 0 for an empty one. Summed in order, so the bits do not depend on the machine.
#[must_use]
pub fn mean(sample: &[f64]) -> f64 {
    if sample.is_empty() {
        0.0
    } else {
        sample.iter().sum::<f64>() / sample.len() as f64
    }
}

/// The `p` quantile, linear between order statistics (Hyndman & Fan 1996, type 7); 0 for an empty
/// sample. Reorders `sample`.
#[must_use]
pub fn quantile_of(sample: &mut [f64], p: f64) -> f64 {
    if sample.is_empty() {
        return 0.0;
    }
    let at = p.clamp(0.0, 1.0) * (sample.len() - 1) as f64;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within 0..len
    let i = at as usize;
    let low = part(sample, i);
    let high = least(&sample[i + 1..]).unwrap_or(low);
    low + (at - i as f64) * (high - low)
}

/// 10th, 50th and 90th percentile, as [`quantile_of`] gives them, at about the price of one. Reorders
/// `sample`.
#[must_use]
pub fn deciles(sample: &mut [f64]) -> [f64; 3] {
    let n = sample.len();
    if n < 16 {
        return [0.1, 0.5, 0.9].map(|p| quantile_of(sample, p));
    }
    let mut found = [0.0; 3];
    let mut from = 0;
    for (slot, p) in found.iter_mut().zip([0.1, 0.5, 0.9]) {
        let at = p * (n - 1) as f64;
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within 0..n
        let i = at as usize;
        // Everything before `from` is already known to be no greater than what follows.
        let rest = &mut sample[from..];
        let low = part(rest, i - from);
        let high = least(&rest[i - from + 1..]).unwrap_or(low);
        *slot = low + (at - i as f64) * (high - low);
        from = i;
    }
    found
}

/// Median of a sample. Reorders it.
#[must_use]
pub fn median(sample: &mut [f64]) -> f64 {
    quantile_of(sample, 0.5)
}

/// Mean of the worst share `alpha` of a sample (lower-tail conditional value at risk), the boundary
/// draw counted in part. `alpha` in (0, 1]. The sum runs in the order of the sample, so its bits do
/// not depend on how the boundary was found.
#[must_use]
pub fn tail_mean(sample: &[f64], alpha: f64) -> f64 {
    if sample.is_empty() {
        return 0.0;
    }
    let take = (alpha.clamp(0.0, 1.0) * sample.len() as f64).max(f64::MIN_POSITIVE);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within 0..len
    let whole = (take as usize).min(sample.len() - 1);
    let boundary = part(&mut sample.to_vec(), whole);
    let (sum, n) = sample
        .iter()
        .filter(|x| **x < boundary)
        .fold((0.0, 0_usize), |(s, n), x| (s + x, n + 1));
    (sum + (take - n as f64) * boundary) / take
}

/// Moves the `i`-th smallest to its place, with smaller ones before and greater ones after, and
/// returns it. By hand (Hoare's selection, 1961, split at the middle one of three): the library's
/// selection brings 4 KB of code against a worst case that draws never are.
#[inline(never)]
fn part(sample: &mut [f64], i: usize) -> f64 {
    let (mut from, mut to) = (0, sample.len());
    while to - from > 1 {
        let middle = usize::midpoint(from, to);
        let mut three = [sample[from], sample[middle], sample[to - 1]];
        sort_short(&mut three, f64::total_cmp);
        let pivot = three[1];
        let (mut left, mut right) = (from, to);
        while left < right {
            // What equals the pivot stops both, so that many equal draws are split in half.
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
        // Nothing before `left` is greater than the pivot, nothing from `right` on is smaller.
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

fn least(sample: &[f64]) -> Option<f64> {
    sample.iter().copied().reduce(f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_interpolate() {
        let sample = [4.0, 1.0, 3.0, 2.0];
        let at = |p| quantile_of(&mut sample.to_vec(), p);
        assert!((at(0.0) - 1.0).abs() < 1e-12 && (at(1.0) - 4.0).abs() < 1e-12);
        assert!((at(0.5) - 2.5).abs() < 1e-12 && (at(0.1) - 1.3).abs() < 1e-12);
        assert!(quantile_of(&mut [], 0.5).abs() < 1e-12);
    }

    #[test]
    fn the_ith_smallest_parts_the_sample() {
        // A fixed mixed-up sequence; the modulus decides how many are equal.
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
    fn the_tail_counts_the_boundary_in_part() {
        // Ten draws 1 to 10; the worst quarter is 1, 2 and half of 3.
        let sample: Vec<f64> = (1..=10).rev().map(f64::from).collect();
        assert!((tail_mean(&sample, 0.25) - (1.0 + 2.0 + 1.5) / 2.5).abs() < 1e-12);
        assert!((tail_mean(&sample, 1.0) - 5.5).abs() < 1e-12);
        assert!((tail_mean(&[2.0; 7], 0.3) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn three_quantiles_at_once_are_those_taken_singly() {
        let sample: Vec<f64> = (0..997)
            .map(|i| f64::from((i * 7919) % 997) + f64::from(i % 3))
            .collect();
        let single = [0.1, 0.5, 0.9].map(|p| quantile_of(&mut sample.clone(), p));
        let together = deciles(&mut sample.clone());
        for (a, b) in single.iter().zip(together) {
            assert!((a - b).abs() < 1e-12);
        }
        assert!((deciles(&mut [1.0, 2.0, 3.0])[1] - 2.0).abs() < 1e-12);
    }
}
