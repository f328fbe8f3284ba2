//! Decision analysis on plain numbers: rolling back trees, the value of information, the value of keeping a
//! choice open, weights, attitude to risk, sensitivity to inputs, and planning for a whole stock.
//!
//! Nothing here knows about silver. Two invariants: every function is total (unusual input gives a
//! defined answer; finite input never gives a panic or a NaN), and a tie goes to whichever came first.

pub mod information;
pub mod option;
pub mod risk;
pub mod sensitivity;
pub mod stock;
pub mod tree;
pub mod weights;

/// Sum of products over the common length. This is an expectation when `chances` sum to 1.
pub(crate) fn expected(chances: &[f64], values: &[f64]) -> f64 {
    chances.iter().zip(values).map(|(p, x)| p * x).sum()
}

/// Index and value of the greatest value, the first one on a tie. `(0, 0)` for an empty list.
pub(crate) fn greatest(values: impl IntoIterator<Item = f64>) -> (usize, f64) {
    let mut top: Option<(usize, f64)> = None;
    for (i, v) in values.into_iter().enumerate() {
        if top.is_none_or(|(_, best)| v > best + TIE * best.abs().max(1.0)) {
            top = Some((i, v));
        }
    }
    top.unwrap_or((0, 0.0))
}

/// Relative differences below this are rounding error and count as a tie.
const TIE: f64 = 1e-12;
