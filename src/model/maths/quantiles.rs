//! Order statistics of a sample.

/// Mean of a sample; 0 for an empty one. Summed in order, so the bits do not depend on the machine.
#[must_use]
pub fn mean(sample: &[f64]) -> f64 {
    if sample.is_empty() { 0.0 } else { sample.iter().sum::<f64>() / sample.len() as f64 }
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
    let (_, low, rest) = sample.select_nth_unstable_by(i, f64::total_cmp);
    let low = *low;
    let high = rest.iter().copied().min_by(f64::total_cmp).unwrap_or(low);
    low + (at - i as f64) * (high - low)
}

/// Median of a sample. Reorders it.
#[must_use]
pub fn median(sample: &mut [f64]) -> f64 {
    quantile_of(sample, 0.5)
}

/// Mean of the worst share `alpha` of a sample (lower-tail conditional value at risk), the boundary
/// draw counted in part. `alpha` in (0, 1]. Reorders the sample.
#[must_use]
pub fn tail_mean(sample: &mut [f64], alpha: f64) -> f64 {
    if sample.is_empty() {
        return 0.0;
    }
    let take = alpha.clamp(0.0, 1.0) * sample.len() as f64;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within 0..len
    let whole = (take as usize).min(sample.len() - 1);
    let (worst, boundary, _) = sample.select_nth_unstable_by(whole, f64::total_cmp);
    worst.sort_unstable_by(f64::total_cmp);
    (worst.iter().sum::<f64>() + (take - whole as f64) * *boundary) / take.max(f64::MIN_POSITIVE)
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
    fn the_tail_counts_the_boundary_in_part() {
        // Ten draws 1 to 10; the worst quarter is 1, 2 and half of 3.
        let mut sample: Vec<f64> = (1..=10).rev().map(f64::from).collect();
        assert!((tail_mean(&mut sample, 0.25) - (1.0 + 2.0 + 1.5) / 2.5).abs() < 1e-12);
        assert!((tail_mean(&mut sample, 1.0) - 5.5).abs() < 1e-12);
    }
}
