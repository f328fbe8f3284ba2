//! The block of points all courses share, and columns drawn from it.
//!
//! Every uncertain thing has its own dimension, so that two courses, or two runs with one input
//! changed, meet the same luck. Columns that do not depend on the case are kept between calls; that
//! changes speed, never a result.

use std::cell::RefCell;
use std::rc::Rc;

use crate::facts::{Figure, Shape};
use crate::maths::{
    Beta, SobolBlock, StudentT, TwoPiece, Z5, Z10, pert_shapes, probit, student_of_beta,
};

/// What each dimension draws.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Dim {
    Kind = 0,
    Value = 1,
    Sale = 2,
    T0 = 3,
    Unevenness = 4,
    Bleed = 5,
    Tarnish = 6,
    Wear = 7,
    Replated = 8,
    TarnishFactor = 9,
    JointFactor = 10,
    DentFactor = 11,
    ShieldFactor = 12,
    RustFactor = 13,
    AfterRepair = 14,
    Detail = 15,
    HazardClean = 16,
    HazardRepair = 17,
    HazardRemove = 18,
    HazardReplate = 19,
    HazardScale = 20,
    HazardKept = 21,
    CostClean = 22,
    CostRepair = 23,
    CostRemove = 24,
    CostReplate = 25,
    Overrun = 26,
    Loss = 27,
    Fees = 28,
    Sold = 29,
    Lead = 30,
    Spare = 31,
}

/// A scrambled block with its columns, made when first asked for.
pub(super) struct Sample {
    points: (u32, u32),
    block: SobolBlock,
    columns: RefCell<Vec<(Column, Rc<[f64]>)>>,
}

/// What a kept column holds.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Column {
    Uniform(Dim),
    LogUniform(Dim),
    Normal(Dim),
    /// Beta distributed, with the bits of the shapes.
    Beta(Dim, u64, u64),
    /// A range, with the bits of its three points and of the z of its ends.
    Spread(Dim, [u64; 4]),
    /// A range between fixed ends, with the bits of its three points.
    Between(Dim, [u64; 3]),
    /// Standard normal quantiles of a range of shares, as [`Sample::quantiles`] makes them, with the
    /// bits of the range and what else was asked.
    Quantiles(Dim, [u64; 3], u64),
}

impl Column {
    /// Whether what a person puts in can ask for ever new ones.
    fn is_of_a_case(self) -> bool {
        matches!(
            self,
            Self::Spread(..) | Self::Between(..) | Self::Quantiles(..)
        )
    }
}

fn bits<const N: usize>(points: [f64; N]) -> [u64; N] {
    points.map(f64::to_bits)
}

thread_local! {
    static SHARED: RefCell<Vec<Rc<Sample>>> = const { RefCell::new(Vec::new()) };
}

/// Samples kept at most: one for the answer, one for the search of what would change it, and eight
/// scrambles for the pages that tell a small worth from noise.
const KEPT: usize = 12;

/// Columns of cases kept at most in one sample: several times what one case asks for.
const COLUMNS_OF_CASES: usize = 160;

impl Sample {
    /// The sample of 2^`log2_points` points with this seed.
    pub(super) fn shared(log2_points: u32, seed: u32) -> Rc<Self> {
        SHARED.with(|shared| {
            let mut shared = shared.borrow_mut();
            if let Some(known) = shared.iter().find(|s| s.points == (log2_points, seed)) {
                return Rc::clone(known);
            }
            if shared.len() >= KEPT {
                shared.clear();
            }
            let fresh = Rc::new(Self {
                points: (log2_points, seed),
                block: SobolBlock::new(log2_points, seed),
                columns: RefCell::default(),
            });
            shared.push(Rc::clone(&fresh));
            fresh
        })
    }

    pub(super) fn len(&self) -> usize {
        self.block.len()
    }

    /// The column if it is kept, else made by `make` and kept.
    fn keep(&self, column: Column, make: &dyn Fn() -> Vec<f64>) -> Rc<[f64]> {
        let known = self
            .columns
            .borrow()
            .iter()
            .find(|(c, _)| *c == column)
            .map(|(_, values)| Rc::clone(values));
        known.unwrap_or_else(|| {
            let values: Rc<[f64]> = make().into();
            let mut columns = self.columns.borrow_mut();
            if column.is_of_a_case() {
                let of_cases = columns.iter().filter(|(c, _)| c.is_of_a_case()).count();
                if of_cases >= COLUMNS_OF_CASES {
                    columns.retain(|(c, _)| !c.is_of_a_case());
                }
            }
            columns.push((column, Rc::clone(&values)));
            values
        })
    }

    /// Uniform column.
    pub(super) fn u(&self, dim: Dim) -> Rc<[f64]> {
        self.keep(Column::Uniform(dim), &|| self.block.column(dim as usize))
    }

    /// Natural logarithm of the uniform column.
    pub(super) fn ln_u(&self, dim: Dim) -> Rc<[f64]> {
        self.keep(Column::LogUniform(dim), &|| {
            self.u(dim).iter().map(|u| libm::log(*u)).collect()
        })
    }

    /// Standard normal column.
    pub(super) fn z(&self, dim: Dim) -> Rc<[f64]> {
        self.keep(Column::Normal(dim), &|| {
            self.u(dim).iter().map(|u| probit(*u)).collect()
        })
    }

    /// Standard PERT column, in 0 to 1, with the mode at the fraction `mode`.
    fn pert(&self, dim: Dim, mode: f64) -> Rc<[f64]> {
        let (a, b) = pert_shapes(mode);
        self.beta(dim, a, b)
    }

    /// Standard t column with `df` degrees of freedom, cut off at the share `tail` of each end.
    pub(super) fn student(&self, dim: Dim, df: f64, tail: f64) -> Vec<f64> {
        let far = StudentT {
            df,
            at: 0.0,
            scale: 1.0,
        }
        .quantile(1.0 - tail.clamp(0.0, 0.25));
        self.beta(dim, 0.5 * df, 0.5 * df)
            .iter()
            .map(|b| student_of_beta(df, *b).clamp(-far, far))
            .collect()
    }

    /// Beta column with these shapes.
    fn beta(&self, dim: Dim, a: f64, b: f64) -> Rc<[f64]> {
        self.keep(Column::Beta(dim, a.to_bits(), b.to_bits()), &|| {
            let u = self.u(dim);
            let law = Beta::new(a, b);
            // From small to large, so that each search starts beside its answer. Each cell of a
            // scrambled column holds one point, so the cell is the rank.
            let n = u.len();
            let mut order = vec![0; n];
            for (i, u) in u.iter().enumerate() {
                #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // u is in 0..1
                let cell = (u * n as f64) as usize;
                order[cell] = i;
            }
            let mut column = vec![0.0; n];
            let mut last = f64::NAN;
            for i in order {
                last = law.quantile(u[i], last);
                column[i] = last;
            }
            column
        })
    }

    /// Draws of a figure by its shape.
    pub(super) fn draw(&self, figure: &Figure, dim: Dim) -> Rc<[f64]> {
        let (low, value, high) = (figure.low, figure.value, figure.high);
        let shape = if high > low {
            figure.shape
        } else {
            Shape::Point
        };
        match shape {
            Shape::Point => vec![value; self.len()].into(),
            Shape::PertEnds => self.keep(Column::Between(dim, bits([low, value, high])), &|| {
                let column = self.pert(dim, ((value - low) / (high - low)).clamp(0.0, 1.0));
                column.iter().map(|x| low + (high - low) * x).collect()
            }),
            Shape::P5P50P95 => self.spread([low, value, high], Z5, dim),
            Shape::P10P50P90 => self.spread([low, value, high], Z10, dim),
        }
    }

    /// Draws of a range given as 10th, 50th and 90th percentile.
    pub(super) fn draw_entered(&self, low: f64, likely: f64, high: f64, dim: Dim) -> Rc<[f64]> {
        self.spread([low, likely, high], Z10, dim)
    }

    fn spread(&self, points: [f64; 3], z_end: f64, dim: Dim) -> Rc<[f64]> {
        let [low, middle, high] = points;
        let of = bits([low, middle, high, z_end]);
        self.keep(Column::Spread(dim, of), &|| {
            let law = TwoPiece::new(low, middle, high, z_end);
            self.z(dim).iter().map(|z| law.at(*z)).collect()
        })
    }

    /// Standard normal quantiles of the draws of a range of shares, each share first made into another
    /// by `made`, which `what` tells from others. A share that is not between 0 and 1 gives the end
    /// it is beyond.
    pub(super) fn quantiles(
        &self,
        [low, likely, high]: [f64; 3],
        dim: Dim,
        what: u64,
        made: &dyn Fn(f64) -> f64,
    ) -> Rc<[f64]> {
        let of = Column::Quantiles(dim, bits([low, likely, high]), what);
        self.keep(of, &|| {
            let shares = self.draw_entered(low, likely, high, dim);
            shares.iter().map(|f| probit(made(*f))).collect()
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Ledger;

    #[test]
    fn a_pert_column_has_the_mean_of_its_law() {
        // Mean of PERT(low, mode, high) is (low + 4 mode + high)/6.
        let sample = Sample::shared(12, 1);
        let figure = Ledger::standard().figure("silver.t0.FPD");
        let draws = sample.draw(figure, Dim::T0);
        let mean = draws.iter().sum::<f64>() / draws.len() as f64;
        assert!((mean - (10.0 + 80.0 + 45.0) / 6.0).abs() < 0.01, "{mean}");
        assert!(draws.iter().all(|d| (10.0..=45.0).contains(d)));
    }

    #[test]
    fn entered_ranges_keep_their_percentiles() {
        let sample = Sample::shared(12, 1);
        let mut draws = sample
            .draw_entered(110.0, 220.0, 500.0, Dim::CostReplate)
            .to_vec();
        draws.sort_by(f64::total_cmp);
        assert!((draws[2048] - 220.0).abs() < 1.0);
        assert!((draws[409] - 110.0).abs() < 1.0 && (draws[3686] - 500.0).abs() < 2.0);
    }
}
