//! The mathematics the model needs: the normal, beta (PERT) and Student's t distributions, two-piece
//! distributions for ranges, Sobol' points, point counts, and order statistics.
//!
//! Invariant: every function is total on its stated domain and returns a finite number there.

mod beta;
mod extremes;
mod normal;
mod point_count;
mod quantiles;
mod range;
mod sobol;
mod student;
mod symmetric;

pub use beta::{Beta, beta_quantile, pert_shapes};
pub use extremes::{at_least, at_most};
pub use normal::{phi, probability, probit};
pub use point_count::{CountFault, PointCount, exact_interval, exact_interval_within, point_count};
pub use quantiles::{Ordered, deciles, mean, median, quantile_of, tail_mean};
pub use range::{TwoPiece, Z5, Z10, two_piece_slopes};
pub use sobol::{MAX_DIMENSIONS, SobolBlock, sobol_u32};
pub use student::{StudentT, standard as student_of_beta, student_two_sided};
pub use symmetric::{Cholesky, SquareMatrix};
