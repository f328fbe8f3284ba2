//! How much each thing one cares about counts, and how much the answer hangs on it.

use super::{expected, greatest};
use crate::maths::SobolBlock;

/// Rank-order centroid: the mean of all weights that fall in this order; the j-th of n weighs (1/n)
/// times the sum of 1/k, k from j to n (Barron & Barrett 1996, Management Science 42:1515).
#[must_use]
pub fn by_order(n: usize) -> Vec<f64> {
    (1..=n)
        .map(|j| (j..=n).map(|k| 1.0 / k as f64).sum::<f64>() / n as f64)
        .collect()
}

/// Rank sum: in proportion to n + 1 - j (Stillwell, Seaver & Edwards 1981, OBHP 28:62).
#[must_use]
pub fn by_rank_sum(n: usize) -> Vec<f64> {
    shares(&(1..=n).map(|j| (n + 1 - j) as f64).collect::<Vec<_>>())
}

/// Rank reciprocal: in proportion to 1/j (the same).
#[must_use]
pub fn by_rank_reciprocal(n: usize) -> Vec<f64> {
    shares(&(1..=n).map(|j| 1.0 / j as f64).collect::<Vec<_>>())
}

/// Swing points as weights: in proportion to the points, summing to 1 (von Winterfeldt & Edwards 1986).
/// Points below 0 count as 0; with no points at all, equal weights. Weights belong to the ranges that
/// were swung: another range, another weight.
#[must_use]
pub fn shares(points: &[f64]) -> Vec<f64> {
    let held: Vec<f64> = points
        .iter()
        .map(|p| if p.is_finite() { p.max(0.0) } else { 0.0 })
        .collect();
    let sum: f64 = held.iter().sum();
    if sum > 0.0 {
        held.iter().map(|p| p / sum).collect()
    } else {
        vec![1.0 / points.len().max(1) as f64; points.len()]
    }
}

/// Value of a place `z` in 0 to 1 on an exponential scale, 0 to 1: (1 - exp(-z/r))/(1 - exp(-1/r))
/// (Kirkwood 1997, Strategic Decision Making, ch. 4). `r` above 0 bends up, below 0 down; where it is 0
/// or very great, `z` itself.
#[must_use]
pub fn exponential_value(z: f64, r: f64) -> f64 {
    let z = z.clamp(0.0, 1.0);
    if r == 0.0 || !r.is_finite() || r.abs() > 1e8 {
        return z;
    }
    libm::expm1(-z / r) / libm::expm1(-1.0 / r)
}

/// The K of a multiplicative value function, 1 + K = product of (1 + K k(j)), not 0 (Keeney & Raiffa
/// 1976, ch. 6): below 0 where the k sum to more than 1, above where to less. `None` where they sum
/// to 1 (then it is a sum), or where a k is not strictly between 0 and 1 or there are fewer than two.
#[must_use]
pub fn multiplicative_k(k: &[f64]) -> Option<f64> {
    let sum: f64 = k.iter().sum();
    let inside = k.iter().all(|k| *k > 0.0 && *k < 1.0);
    if k.len() < 2 || !inside || (sum - 1.0).abs() < 1e-12 {
        return None;
    }
    let gap = |big: f64| k.iter().map(|k| 1.0 + big * k).product::<f64>() - 1.0 - big;
    // The wanted root lies between -1 and 0, or above 0; at 0 there is always another.
    let (mut low, mut high) = if sum > 1.0 {
        (-1.0, -1e-12)
    } else {
        (1e-12, 1.0)
    };
    while sum < 1.0 && gap(high) < 0.0 && high < 1e15 {
        high *= 2.0;
    }
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        // Below the root the gap is above 0 on the left side of 0, below 0 on the right.
        if (gap(middle) > 0.0) == (sum > 1.0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(0.5 * (low + high))
}

/// Places of the options that no other beats on both value and cost, in their order.
#[must_use]
pub fn efficient(values: &[f64], costs: &[f64]) -> Vec<usize> {
    let all: Vec<(f64, f64)> = values.iter().copied().zip(costs.iter().copied()).collect();
    (0..all.len())
        .filter(|i| {
            let (v, c) = all[*i];
            !all.iter()
                .any(|(w, d)| *w >= v && *d <= c && (*w > v || *d < c))
        })
        .collect()
}

/// The weight of the first of two things at which two options come out level: `None` where no weight
/// in 0 to 1 does.
#[must_use]
pub fn switch_point(u: [f64; 2], v: [f64; 2]) -> Option<f64> {
    let (first, second) = (u[0] - v[0], u[1] - v[1]);
    let at = second / (second - first);
    (at.is_finite() && (0.0..=1.0).contains(&at)).then_some(at)
}

/// How options rank over all weights (SMAA-2; Lahdelma & Salminen 2001, Oper. Res. 49:444).
#[derive(Clone, Debug, PartialEq)]
pub struct Acceptability {
    /// Share of the weights that give the option this rank: `[option][rank]`. Rows sum to 1, and so do
    /// columns but for ties.
    pub ranks: Vec<Vec<f64>>,
    /// Mean of the weights that put it first; `None` for one that never is.
    pub central: Vec<Option<Vec<f64>>>,
    /// Share of the weights under which the row is better than the column: `[option][other]`.
    pub beats: Vec<Vec<f64>>,
}

impl Acceptability {
    /// One number for a row of ranks: from 1 for the first rank down to 0 for the last, evenly.
    #[must_use]
    pub fn holistic(&self) -> Vec<f64> {
        self.ranks
            .iter()
            .map(|row| {
                let last = (row.len() as f64 - 1.0).max(1.0);
                row.iter()
                    .enumerate()
                    .map(|(r, b)| b * (1.0 - r as f64 / last))
                    .sum()
            })
            .collect()
    }
}

/// Points spread evenly over all weights of `n` things, or over those that fall in order, the first
/// the greatest: gaps between sorted coordinates of a scrambled net, sorted downward for an order.
/// At most 2^16 points; `n` from 1 to 20.
#[must_use]
pub fn simplex(n: usize, log2_points: u32, in_order: bool, seed: u32) -> Vec<Vec<f64>> {
    let n = n.clamp(1, 20);
    let block = SobolBlock::new(log2_points.min(16), seed);
    let columns: Vec<Vec<f64>> = (0..n - 1).map(|d| block.column(d)).collect();
    (0..block.len())
        .map(|i| {
            let mut cuts: Vec<f64> = columns.iter().map(|c| c[i]).collect();
            cuts.push(0.0);
            cuts.push(1.0);
            cuts.sort_by(f64::total_cmp);
            let mut weights: Vec<f64> = cuts.windows(2).map(|w| w[1] - w[0]).collect();
            if in_order {
                weights.sort_by(|a, b| b.total_cmp(a));
            }
            weights
        })
        .collect()
}

/// Acceptability over given weights, each counting the same. `values` is `[option][thing]`. An
/// option's rank is 1 more than the number of options better than it.
#[must_use]
pub fn acceptability(values: &[Vec<f64>], weights: &[Vec<f64>]) -> Acceptability {
    let n = values.len();
    let things = values.first().map_or(0, Vec::len);
    let each = 1.0 / weights.len().max(1) as f64;
    let mut ranks = vec![vec![0.0; n]; n];
    let mut beats = vec![vec![0.0; n]; n];
    let mut sums = vec![vec![0.0; things]; n];
    for w in weights {
        let scores: Vec<f64> = values.iter().map(|v| expected(w, v)).collect();
        for i in 0..n {
            let mut better = 0;
            for j in 0..n {
                if scores[j] > scores[i] {
                    better += 1;
                } else if scores[i] > scores[j] {
                    beats[i][j] += each;
                }
            }
            ranks[i][better] += each;
            if better == 0 {
                for (s, w) in sums[i].iter_mut().zip(w) {
                    *s += w * each;
                }
            }
        }
    }
    let central = sums
        .into_iter()
        .zip(&ranks)
        .map(|(sum, row)| {
            let first = row.first().copied().unwrap_or(0.0);
            (first > 0.0).then(|| sum.into_iter().map(|s| s / first).collect())
        })
        .collect();
    Acceptability {
        ranks,
        central,
        beats,
    }
}

/// Confidence: the share of draws in which each option is first at its own central weights; 0 for one
/// that has none. `draws` is `[option][thing]`, each the values of all draws.
#[must_use]
pub fn confidence(draws: &[Vec<&[f64]>], central: &[Option<Vec<f64>>]) -> Vec<f64> {
    let n = draws
        .iter()
        .flat_map(|o| o.iter().map(|c| c.len()))
        .min()
        .unwrap_or(0);
    central
        .iter()
        .enumerate()
        .map(|(own, weights)| {
            let Some(weights) = weights else { return 0.0 };
            let first = (0..n)
                .filter(|i| {
                    let score = |o: &Vec<&[f64]>| -> f64 {
                        weights.iter().zip(o).map(|(w, c)| w * c[*i]).sum()
                    };
                    greatest(draws.iter().map(score)).0 == own
                })
                .count();
            first as f64 / n.max(1) as f64
        })
        .collect()
}

/// A piece of the triangle of three weights, by its corners (first and second weight).
type Polygon = Vec<[f64; 2]>;

/// Most options [`exact_acceptability`] takes: it looks at every order of them.
const MOST_EXACT: usize = 6;

/// Acceptability over all weights of two or three things, without sampling: every order of the options
/// is a piece of the triangle of weights, cut out by straight lines, and its share is its area. With
/// `in_order` the first thing weighs most. `None` for other numbers of things or more than six options.
#[must_use]
pub fn exact_acceptability(values: &[Vec<f64>], in_order: bool) -> Option<Acceptability> {
    let (n, things) = (values.len(), values.first()?.len());
    if n > MOST_EXACT || !(2..=3).contains(&things) || values.iter().any(|v| v.len() != things) {
        return None;
    }
    // Two things are three of which the third always weighs nothing: a segment, as a thin triangle
    // would lose digits; so it is lifted to a strip on which the second coordinate says nothing.
    let whole: Polygon = match (things, in_order) {
        (2, false) => vec![[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]],
        (2, true) => vec![[0.5, 0.0], [1.0, 0.0], [1.0, 1.0], [0.5, 1.0]],
        (_, false) => vec![[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]],
        (_, true) => vec![[1.0, 0.0], [0.5, 0.5], [1.0 / 3.0, 1.0 / 3.0]],
    };
    // Score as a + b x + c y of the two free coordinates.
    let lines: Vec<[f64; 3]> = values
        .iter()
        .map(|v| {
            if things == 2 {
                [v[1], v[0] - v[1], 0.0]
            } else {
                [v[2], v[0] - v[2], v[1] - v[2]]
            }
        })
        .collect();
    let total = area(&whole);
    let mut result = Acceptability {
        ranks: vec![vec![0.0; n]; n],
        central: vec![None; n],
        beats: vec![vec![0.0; n]; n],
    };
    let mut moments = vec![[0.0; 2]; n];
    for order in orders(n) {
        let piece = order.windows(2).fold(whole.clone(), |piece, pair| {
            let (a, b) = (lines[pair[0]], lines[pair[1]]);
            cut(&piece, [a[0] - b[0], a[1] - b[1], a[2] - b[2]])
        });
        let share = area(&piece) / total;
        if share <= 0.0 {
            continue;
        }
        for (rank, option) in order.iter().enumerate() {
            result.ranks[*option][rank] += share;
            for other in &order[rank + 1..] {
                result.beats[*option][*other] += share;
            }
        }
        let [x, y] = centre(&piece);
        moments[order[0]][0] += share * x;
        moments[order[0]][1] += share * y;
    }
    for (i, m) in moments.iter().enumerate() {
        let first = result.ranks[i][0];
        if first > 0.0 {
            let (x, y) = (m[0] / first, m[1] / first);
            result.central[i] = Some(if things == 2 {
                vec![x, 1.0 - x]
            } else {
                vec![x, y, 1.0 - x - y]
            });
        }
    }
    Some(result)
}

/// All orders of `n` things.
fn orders(n: usize) -> Vec<Vec<usize>> {
    (0..n).fold(vec![Vec::new()], |shorter, new| {
        shorter
            .iter()
            .flat_map(|order: &Vec<usize>| {
                (0..=order.len()).map(move |at| {
                    let mut longer = order.clone();
                    longer.insert(at, new);
                    longer
                })
            })
            .collect()
    })
}

/// The part of a convex polygon where a + b x + c y is not below 0 (Sutherland & Hodgman 1974).
fn cut(piece: &Polygon, [a, b, c]: [f64; 3]) -> Polygon {
    let side = |p: &[f64; 2]| a + b * p[0] + c * p[1];
    let mut kept = Vec::new();
    for (i, here) in piece.iter().enumerate() {
        let next = &piece[(i + 1) % piece.len()];
        let (s, t) = (side(here), side(next));
        if s >= 0.0 {
            kept.push(*here);
        }
        if (s > 0.0 && t < 0.0) || (s < 0.0 && t > 0.0) {
            let along = s / (s - t);
            kept.push([
                here[0] + along * (next[0] - here[0]),
                here[1] + along * (next[1] - here[1]),
            ]);
        }
    }
    kept
}

/// Twice-signed pieces of a polygon seen from its first corner: area, and centre.
fn fan(piece: &Polygon) -> (f64, [f64; 2]) {
    let Some(&o) = piece.first() else {
        return (0.0, [0.0, 0.0]);
    };
    let (mut area, mut centre) = (0.0, [0.0, 0.0]);
    for pair in piece[1..].windows(2) {
        let (p, q) = (pair[0], pair[1]);
        let part = 0.5 * ((p[0] - o[0]) * (q[1] - o[1]) - (p[1] - o[1]) * (q[0] - o[0])).abs();
        area += part;
        for (d, c) in centre.iter_mut().enumerate() {
            *c += part * (o[d] + p[d] + q[d]) / 3.0;
        }
    }
    (area, centre)
}

fn area(piece: &Polygon) -> f64 {
    fan(piece).0
}

fn centre(piece: &Polygon) -> [f64; 2] {
    let (area, sum) = fan(piece);
    sum.map(|s| s / area.max(f64::MIN_POSITIVE))
}
