//! Which input moves an answer most.

use super::information::bins;
use crate::maths::mean;
use crate::terms::ShortSort;

/// Share of the variance of `output` that `input` explains on its own, from draws: the variance of the means
/// of bins of equal size, minus the contribution of noise within the bins (Pearson's correlation ratio). From
/// 0 to 1; `None` when the output is constant.
#[must_use]
pub fn share_explained(input: &[f64], output: &[f64]) -> Option<f64> {
    share_of_groups(&bins(input), output)
}

/// The same for an input with few distinct values: `group` holds the group of each draw, counted from 0.
#[must_use]
pub fn share_of_groups(group: &[usize], output: &[f64]) -> Option<f64> {
    let n = group.len().min(output.len());
    let groups = group.iter().max().map_or(0, |g| g + 1);
    let (mut sum, mut count) = (vec![0.0; groups], vec![0.0; groups]);
    for (g, y) in group.iter().zip(output) {
        sum[*g] += y;
        count[*g] += 1.0;
    }
    let centre = mean(output.get(..n)?);
    let total: f64 = output[..n]
        .iter()
        .map(|y| (y - centre) * (y - centre))
        .sum();
    if n == 0 || total <= 1e-24 * centre.abs().max(f64::MIN_POSITIVE) {
        return None;
    }
    let used = count.iter().filter(|c| **c > 0.0).count() as f64;
    let between: f64 = sum
        .iter()
        .zip(&count)
        .filter(|(_, c)| **c > 0.0)
        .map(|(s, c)| c * (s / c - centre) * (s / c - centre))
        .sum();
    let within = (total - between).max(0.0);
    let noise = (used - 1.0) * within / (n as f64 - used).max(1.0);
    Some(((between - noise) / total).clamp(0.0, 1.0))
}

/// One bar of a tornado chart: the result with one input at its low and at its high end and all other inputs
/// at their usual values (Howard 1988, Management Science 34:679).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Index of the input.
    pub input: usize,
    /// Result at the low end of the input.
    pub at_low: f64,
    /// Result at the high end of the input.
    pub at_high: f64,
}

impl Bar {
    /// Length of the bar.
    #[must_use]
    pub fn swing(&self) -> f64 {
        (self.at_high - self.at_low).abs()
    }

    /// Whether `line` lies strictly inside the bar, so that this input alone takes the result across.
    #[must_use]
    pub fn crosses(&self, line: f64) -> bool {
        (self.at_low - line) * (self.at_high - line) < 0.0
    }
}

/// Sorts bars by length, longest first. Bars that differ only by rounding keep the order of their
/// inputs.
pub fn sorted(bars: &mut [Bar]) {
    let scale = bars.iter().map(Bar::swing).fold(0.0, f64::max);
    // Lengths are compared on a grid, because "equal within rounding" is not a consistent order on raw
    // floats.
    let step = 1e-9 * scale.max(f64::MIN_POSITIVE);
    bars.order_by(|a, b| {
        let length = |bar: &Bar| (bar.swing() / step).round();
        length(b).total_cmp(&length(a)).then(a.input.cmp(&b.input))
    });
}
