//! Which input moves an answer most.

use super::information::bins;
use crate::maths::{MAX_DIMENSIONS, SobolBlock, mean};

/// How much of a result's variance each input explains.
#[derive(Clone, Debug, PartialEq)]
pub struct Indices {
    /// By itself (first order).
    pub first: Vec<f64>,
    /// With all it does together with others (total).
    pub total: Vec<f64>,
}

/// First and total indices of `f` over inputs uniform on 0 to 1: first = mean(fB (fAB - fA))/V
/// (Saltelli et al. 2010, Comput. Phys. Commun. 181:259), total = mean((fA - fAB)^2)/2V (Jansen 1999),
/// V over both blocks together, on 2^`log2_points` points of one scrambled net in twice the dimensions.
/// `None` when `f` is constant, or with no input or more than half as many as the net has dimensions.
#[must_use]
pub fn indices(
    f: &dyn Fn(&[f64]) -> f64,
    inputs: usize,
    log2_points: u32,
    seed: u32,
) -> Option<Indices> {
    if inputs == 0 || 2 * inputs > MAX_DIMENSIONS {
        return None;
    }
    let block = SobolBlock::new(log2_points, seed);
    let columns: Vec<Vec<f64>> = (0..2 * inputs).map(|d| block.column(d)).collect();
    let row = |i: usize, from: usize| -> Vec<f64> {
        columns[from..from + inputs].iter().map(|c| c[i]).collect()
    };
    let n = block.len();
    let a: Vec<f64> = (0..n).map(|i| f(&row(i, 0))).collect();
    let b: Vec<f64> = (0..n).map(|i| f(&row(i, inputs))).collect();
    let centre = 0.5 * (mean(&a) + mean(&b));
    let variance = a
        .iter()
        .chain(&b)
        .map(|x| (x - centre) * (x - centre))
        .sum::<f64>()
        / (2 * n) as f64;
    if variance <= 1e-24 * centre.abs().max(f64::MIN_POSITIVE) {
        return None;
    }
    let mut found = Indices {
        first: Vec::with_capacity(inputs),
        total: Vec::with_capacity(inputs),
    };
    for input in 0..inputs {
        let (mut first, mut total) = (0.0, 0.0);
        for i in 0..n {
            let mut mixed = row(i, 0);
            mixed[input] = columns[inputs + input][i];
            let moved = f(&mixed) - a[i];
            // Taken from the centre: the same mean, less noise.
            first += (b[i] - centre) * moved;
            total += moved * moved;
        }
        found.first.push(first / n as f64 / variance);
        found.total.push(0.5 * total / n as f64 / variance);
    }
    Some(found)
}

/// Share of the variance of `output` that `input` explains by itself, from draws alone: variance of the
/// means over bins of equal number, less what noise within the bins puts there (Pearson's correlation
/// ratio). `None` when the output is constant.
#[must_use]
pub fn share_explained(input: &[f64], output: &[f64]) -> Option<f64> {
    share_of_groups(&bins(input), output)
}

/// The same for an input that takes few values, each draw's group given.
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

/// A bar of a tornado: one input at its low and its high, the others as they are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Place of the input.
    pub input: usize,
    /// Result at its low end.
    pub at_low: f64,
    /// Result at its high end.
    pub at_high: f64,
}

impl Bar {
    /// Distance between its ends.
    #[must_use]
    pub fn swing(&self) -> f64 {
        (self.at_high - self.at_low).abs()
    }

    /// Whether `line` lies strictly within it, so that the input alone takes the result across.
    #[must_use]
    pub fn crosses(&self, line: f64) -> bool {
        (self.at_low - line) * (self.at_high - line) < 0.0
    }
}

/// Bars, the longest first; equal ones in the order of the inputs (Howard 1988, Management Science
/// 34:679).
#[must_use]
pub fn tornado(f: &dyn Fn(&[f64]) -> f64, base: &[f64], low: &[f64], high: &[f64]) -> Vec<Bar> {
    let at = |input: usize, x: f64| {
        let mut moved = base.to_vec();
        moved[input] = x;
        f(&moved)
    };
    let mut bars: Vec<Bar> = (0..base.len().min(low.len()).min(high.len()))
        .map(|input| Bar {
            input,
            at_low: at(input, low[input]),
            at_high: at(input, high[input]),
        })
        .collect();
    sorted(&mut bars);
    bars
}

/// Puts the longest first; bars equal but for rounding stay in the order of the inputs.
pub fn sorted(bars: &mut [Bar]) {
    let scale = bars.iter().map(Bar::swing).fold(0.0, f64::max);
    crate::small::sort_short(bars, |a, b| {
        let gap = b.swing() - a.swing();
        if gap.abs() <= 1e-9 * scale {
            a.input.cmp(&b.input)
        } else {
            gap.total_cmp(&0.0)
        }
    });
}
