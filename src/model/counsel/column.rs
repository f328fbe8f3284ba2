//! A shared column with a number for every draw, and cached statistics of it.

use std::cell::OnceCell;
use std::ops::Deref;
use std::rc::Rc;

use crate::maths::{Ordered, mean};

/// A column over the sample. Sharing it is free, and its order statistics, which take longer than most
/// columns take to make, are computed once for all users.
#[derive(Clone)]
pub(super) struct Column(Rc<Known>);

struct Known {
    draws: Vec<f64>,
    mean: OnceCell<f64>,
    ordered: OnceCell<Ordered>,
    /// The draws that are not NaN; `None` if all are numbers.
    numbers: OnceCell<Option<Column>>,
    exp: OnceCell<Column>,
}

impl From<Vec<f64>> for Column {
    fn from(draws: Vec<f64>) -> Self {
        Self(Rc::new(Known {
            draws,
            mean: OnceCell::new(),
            ordered: OnceCell::new(),
            numbers: OnceCell::new(),
            exp: OnceCell::new(),
        }))
    }
}

impl Deref for Column {
    type Target = [f64];

    fn deref(&self) -> &[f64] {
        &self.0.draws
    }
}

impl Column {
    /// Whether both are the same column, not merely equal ones.
    pub(super) fn is(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }

    pub(super) fn mean(&self) -> f64 {
        *self.0.mean.get_or_init(|| mean(self))
    }

    fn ordered(&self) -> &Ordered {
        self.0.ordered.get_or_init(|| Ordered::of(self))
    }

    /// The exponential of every draw.
    pub(super) fn exp(&self) -> Self {
        let all = || self.iter().map(|x| libm::exp(*x)).collect();
        self.0.exp.get_or_init(all).clone()
    }

    /// 10th, 50th and 90th percentile.
    pub(super) fn deciles(&self) -> [f64; 3] {
        self.ordered().deciles
    }

    pub(super) fn median(&self) -> f64 {
        self.deciles()[1]
    }

    /// Mean of the worst share `alpha`.
    pub(super) fn tail_mean(&self, alpha: f64) -> f64 {
        self.ordered().tail_mean(self, alpha)
    }

    /// The draws that are not NaN, in their order.
    pub(super) fn numbers(&self) -> Self {
        let some = self.0.numbers.get_or_init(|| {
            let missing = self.iter().any(|x| x.is_nan());
            let numbers = self.iter().copied().filter(|x| !x.is_nan());
            missing.then(|| numbers.collect())
        });
        some.as_ref().unwrap_or(self).clone()
    }
}

impl FromIterator<f64> for Column {
    fn from_iter<I: IntoIterator<Item = f64>>(draws: I) -> Self {
        Vec::from_iter(draws).into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::maths::tail_mean;

    #[test]
    fn cached_statistics_equal_fresh_ones() {
        let column: Column = (0..600_i32).map(|i| f64::from((i * 7919) % 601)).collect();
        for _ in 0..2 {
            assert!((column.mean() - mean(&column)).abs() < 1e-12);
            assert!((column.median() - crate::maths::median(&column)).abs() < 1e-12);
            for alpha in [0.1, 0.25, 0.1] {
                assert!((column.tail_mean(alpha) - tail_mean(&column, alpha)).abs() < 1e-12);
            }
        }
        assert!(column.is(&column.numbers()) && !column.is(&column.to_vec().into()));
    }

    #[test]
    fn nan_is_left_out_on_request() {
        let column: Column = vec![3.0, f64::NAN, 1.0, 2.0].into();
        assert_eq!(&*column.numbers(), &[3.0, 1.0, 2.0]);
        assert!((column.numbers().median() - 2.0).abs() < 1e-12);
        assert!(Column::from(vec![f64::NAN; 3]).numbers().is_empty());
    }
}
