//! Decision analysis on plain numbers: trees rolled back, what knowing is worth, keeping a choice
//! open, weights, attitude to risk, which input matters, and what to do with a whole stock.
//!
//! Nothing here knows of silver. Invariants: every function is total (odd input has a defined
//! answer, never a panic or NaN from finite input), and ties go to what was named first.

pub mod information;
pub mod option;
pub mod risk;
pub mod sensitivity;
pub mod stages;
pub mod stock;
pub mod tree;
pub mod weights;

/// Sum of products over the common length: an expectation when `chances` sum to 1.
pub(crate) fn expected(chances: &[f64], values: &[f64]) -> f64 {
    chances.iter().zip(values).map(|(p, x)| p * x).sum()
}

/// Place and value of the greatest, the first on a tie; `(0, 0)` of none.
pub(crate) fn greatest(values: impl IntoIterator<Item = f64>) -> (usize, f64) {
    let mut top: Option<(usize, f64)> = None;
    for (i, v) in values.into_iter().enumerate() {
        if top.is_none_or(|(_, best)| v > best + TIE * best.abs().max(1.0)) {
            top = Some((i, v));
        }
    }
    top.unwrap_or((0, 0.0))
}

/// Differences below this share of the greater are rounding, and count as a tie.
const TIE: f64 = 1e-12;
