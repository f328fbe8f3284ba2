//! Symmetric positive definite matrices: solving and inverting by Cholesky factorisation.

/// A square matrix, row by row.
#[derive(Clone, Debug, PartialEq)]
pub struct SquareMatrix {
    n: usize,
    cells: Vec<f64>,
}

impl SquareMatrix {
    /// A matrix of `n` rows, with each cell computed from its row and column.
    #[must_use]
    pub fn from_cells(n: usize, cell: impl Fn(usize, usize) -> f64) -> Self {
        let cells = (0..n * n).map(|at| cell(at / n, at % n)).collect();
        Self { n, cells }
    }

    /// The cell in row `i` and column `j`, both below the number of rows.
    #[must_use]
    pub fn at(&self, i: usize, j: usize) -> f64 {
        self.cells[i * self.n + j]
    }

    /// Adds to one cell.
    pub fn add(&mut self, i: usize, j: usize, x: f64) {
        self.cells[i * self.n + j] += x;
    }

    /// x' A x for a sparse x, given as (index, value).
    #[must_use]
    pub fn quadratic(&self, x: &[(usize, f64)]) -> f64 {
        let row = |i: usize| x.iter().map(|(j, v)| v * self.at(i, *j)).sum::<f64>();
        x.iter().map(|(i, v)| v * row(*i)).sum()
    }

    /// The lower triangular L with L L' = A, by Cholesky's method (Golub & Van Loan 2013, Matrix
    /// Computations, section 4.2). Rounding can make a pivot of a nearly singular matrix 0 or negative; it
    /// then counts as the smallest positive number, so that every result is a number.
    #[must_use]
    pub fn cholesky(&self) -> Cholesky {
        let n = self.n;
        let mut l = self.cells.clone();
        for j in 0..n {
            let (before, row) = l.split_at_mut(j * n);
            for i in 0..j {
                let above = &before[i * n..i * n + i];
                let sum: f64 = above.iter().zip(&row[..i]).map(|(a, b)| a * b).sum();
                row[i] = (row[i] - sum) / before[i * n + i];
            }
            let squares: f64 = row[..j].iter().map(|x| x * x).sum();
            row[j] = (row[j] - squares).max(f64::MIN_POSITIVE).sqrt();
        }
        Cholesky { n, l }
    }
}

/// Cholesky's factor of a matrix.
#[derive(Clone, Debug)]
pub struct Cholesky {
    n: usize,
    /// Row by row; cells above the diagonal are not read.
    l: Vec<f64>,
}

impl Cholesky {
    /// The x with A x = b. `b` has one number per row of the matrix.
    #[must_use]
    pub fn solve(&self, b: &[f64]) -> Vec<f64> {
        let mut x = self.forward(b);
        for i in (0..self.n).rev() {
            x[i] /= self.l[i * self.n + i];
            let solved = x[i];
            let row = &self.l[i * self.n..i * self.n + i];
            for (earlier, l) in x.iter_mut().zip(row) {
                *earlier -= l * solved;
            }
        }
        x
    }

    /// The x with L x = b.
    fn forward(&self, b: &[f64]) -> Vec<f64> {
        let mut x = b.to_vec();
        for i in 0..self.n {
            let row = &self.l[i * self.n..=i * self.n + i];
            let sum: f64 = row[..i].iter().zip(&x).map(|(l, x)| l * x).sum();
            x[i] = (x[i] - sum) / row[i];
        }
        x
    }

    /// The inverse of the matrix.
    #[must_use]
    pub fn inverse(&self) -> SquareMatrix {
        let n = self.n;
        let mut inverse = SquareMatrix {
            n,
            cells: vec![0.0; n * n],
        };
        let mut unit = vec![0.0; n];
        for j in 0..n {
            unit[j] = 1.0;
            for (i, x) in self.solve(&unit).into_iter().enumerate() {
                inverse.cells[i * n + j] = x;
            }
            unit[j] = 0.0;
        }
        inverse
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_inverse_of_a_hilbert_matrix_matches_its_closed_form() {
        // The inverse of the Hilbert matrix of order 4 is known in closed form.
        let hilbert = SquareMatrix::from_cells(4, |i, j| 1.0 / (i + j + 1) as f64);
        let known = [
            [16.0, -120.0, 240.0, -140.0],
            [-120.0, 1200.0, -2700.0, 1680.0],
            [240.0, -2700.0, 6480.0, -4200.0],
            [-140.0, 1680.0, -4200.0, 2800.0],
        ];
        let inverse = hilbert.cholesky().inverse();
        for (i, row) in known.iter().enumerate() {
            for (j, x) in row.iter().enumerate() {
                assert!((inverse.at(i, j) / x - 1.0).abs() < 1e-10);
            }
        }
        let x = hilbert.cholesky().solve(&[1.0, 0.0, 0.0, 1.0]);
        assert!((x[0] - (16.0 - 140.0)).abs() < 1e-8);
        assert!((hilbert.quadratic(&[(0, 2.0), (3, 1.0)]) - (4.0 + 1.0 + 1.0 / 7.0)).abs() < 1e-12);
    }

    #[test]
    fn a_singular_matrix_still_gives_numbers() {
        let singular = SquareMatrix::from_cells(2, |_, _| 1.0);
        let x = singular.cholesky().solve(&[1.0, 1.0]);
        assert!(x.iter().all(|x| x.is_finite()), "{x:?}");
        assert!(
            SquareMatrix::from_cells(0, |_, _| 0.0)
                .cholesky()
                .solve(&[])
                .is_empty()
        );
    }
}
