//! A number for every draw that may be the same in all of them.

use super::column::Column;

/// A value for every draw.
#[derive(Clone)]
pub(super) enum PerDraw {
    /// The same in all.
    Same(f64),
    /// One for each draw.
    Drawn(Column),
}

impl PerDraw {
    pub(super) fn at(&self, i: usize) -> f64 {
        match self {
            Self::Same(x) => *x,
            Self::Drawn(column) => column[i],
        }
    }

    #[allow(clippy::float_cmp)] // only exactly equal values need no choice between them
    pub(super) fn is(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Same(a), Self::Same(b)) => a == b,
            (Self::Drawn(a), Self::Drawn(b)) => a.is(b),
            _ => false,
        }
    }

    /// Combines two values draw by draw.
    pub(super) fn with(&self, other: &Self, n: usize, of: impl Fn(f64, f64) -> f64) -> Self {
        match (self, other) {
            (Self::Same(a), Self::Same(b)) => Self::Same(of(*a, *b)),
            (Self::Drawn(a), Self::Drawn(b)) => Self::Drawn(
                a.iter()
                    .zip(b.iter())
                    .take(n)
                    .map(|(a, b)| of(*a, *b))
                    .collect(),
            ),
            _ => Self::Drawn((0..n).map(|i| of(self.at(i), other.at(i))).collect()),
        }
    }

    /// The same, for what is seldom asked: one piece of code for all of it.
    #[inline(never)]
    pub(super) fn and(&self, other: &Self, n: usize, of: &dyn Fn(f64, f64) -> f64) -> Self {
        self.with(other, n, of)
    }

    /// This times a factor in every draw; no effect times a factor is the factor itself.
    #[allow(clippy::float_cmp)] // only exactly 1 has no effect
    pub(super) fn times(&self, factor: &Column, n: usize) -> Self {
        match self {
            Self::Same(x) if *x == 1.0 => Self::Drawn(factor.clone()),
            _ => self.with(&Self::Drawn(factor.clone()), n, |a, b| a * b),
        }
    }

    /// Folds the value into an accumulator, draw by draw.
    pub(super) fn fold_into(&self, sum: &mut [f64], of: impl Fn(f64, f64) -> f64) {
        match self {
            Self::Same(x) => sum.iter_mut().for_each(|s| *s = of(*s, *x)),
            Self::Drawn(column) => {
                let each = sum.iter_mut().zip(column.iter());
                each.for_each(|(s, x)| *s = of(*s, *x));
            }
        }
    }

    /// Multiplies an accumulator by the value, draw by draw.
    #[allow(clippy::float_cmp)] // only exactly 1 has no effect
    pub(super) fn multiply_into(&self, product: &mut [f64]) {
        if !matches!(self, Self::Same(x) if *x == 1.0) {
            self.fold_into(product, |a, b| a * b);
        }
    }

    /// Adds the value to an accumulator, draw by draw.
    #[allow(clippy::float_cmp)] // only exactly 0 adds nothing
    pub(super) fn add_into(&self, sum: &mut [f64]) {
        if !matches!(self, Self::Same(x) if *x == 0.0) {
            self.fold_into(sum, |a, b| a + b);
        }
    }

    /// This value where `there` is false, the other where it is true.
    pub(super) fn either(&self, other: &Self, there: &[bool], n: usize) -> Self {
        if self.is(other) {
            return self.clone();
        }
        let each = there.iter().take(n).enumerate();
        Self::Drawn(
            each.map(|(i, there)| if *there { other.at(i) } else { self.at(i) })
                .collect(),
        )
    }
}
