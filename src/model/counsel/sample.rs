//! The block of points that all courses share, and the columns drawn from it.
//!
//! Every uncertain input has a separate dimension, so two courses, or two runs that differ in one input, are
//! compared on the same draws. Columns are cached between calls; this affects speed, never a result.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use super::column::Column;
use super::draws::{Before, FactorScale};
use crate::ledger::{Figure, Shape};
use crate::maths::{
    Beta, SobolBlock, StudentT, TwoPiece, Z5, Z10, pert_shapes, probit, student_of_beta,
};
use crate::silver::shown_share;
use crate::value::Factor;

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
    /// Where below the least visible share the silver is, when nothing shows.
    Within = 31,
    HazardDents = 32,
    HazardFilling = 33,
    HazardFix = 34,
    HazardTin = 35,
    HazardPart = 36,
    HazardCoat = 37,
    FillingFactor = 38,
    LooseFactor = 39,
    MissingFactor = 40,
    LiningFactor = 41,
    LacquerFactor = 42,
    AfterWork = 43,
    Patch = 44,
    Tin = 45,
    /// What several pieces gain by belonging together.
    Premium = 46,
    /// Luck with one piece beside luck with another.
    Pieces = 47,
}

/// The distribution of a column.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Law {
    /// The same in every draw.
    Point(f64),
    /// PERT: least, most likely, greatest.
    Between([f64; 3]),
    /// Two-piece: low, middle, high, and the z of low and high.
    Spread([f64; 3], f64),
}

impl Law {
    /// The distribution of a figure, by its shape.
    pub(super) fn of(figure: &Figure) -> Self {
        let points = [figure.low, figure.value, figure.high];
        if figure.high <= figure.low {
            return Self::Point(figure.value);
        }
        match figure.shape {
            Shape::Point => Self::Point(figure.value),
            Shape::PertEnds => Self::Between(points),
            Shape::P5P50P95 => Self::Spread(points, Z5),
            Shape::P10P50P90 => Self::Spread(points, Z10),
        }
    }

    /// A range as users enter it: 10th, 50th and 90th percentile.
    pub(super) fn entered(low: f64, likely: f64, high: f64) -> Self {
        Self::Spread([low, likely, high], Z10)
    }
}

/// A scrambled block with its columns, which are made on first use.
pub(super) struct Sample {
    points: (u32, u32),
    block: SobolBlock,
    columns: RefCell<Vec<Kept>>,
    /// The number of requests for columns so far.
    asked: Cell<u64>,
    /// The last results made draw by draw, for reuse.
    pub(super) before: RefCell<Before>,
}

/// A cached column.
struct Kept {
    key: Key,
    /// The request at which it was last used.
    asked: u64,
    column: Column,
}

/// What a cached column holds.
#[derive(Clone, Copy, PartialEq)]
enum Key {
    Uniform(Dim),
    LogUniform(Dim),
    Normal(Dim),
    /// Beta distribution, by its shapes.
    Beta(Dim, f64, f64),
    /// Student's t, by its degrees of freedom and the share cut off at each end.
    Student(Dim, f64, f64),
    Drawn(Dim, Law),
    /// A drawn column times the first number plus the second.
    Moved(Dim, Law, f64, f64),
    /// exp of a standard normal times this number.
    Multiplier(Dim, f64),
    /// A factor or its logarithm.
    Factor(Dim, Factor, FactorScale),
    /// What is kept where something goes wrong with a chance, or its logarithm.
    Mishap(Dim, usize, [Factor; 2], FactorScale),
    /// Natural logarithm of the uniform column of one of several pieces.
    LogUniformOf(Dim, usize),
    /// A range of bare shares.
    Shares(Dim, [f64; 3]),
    /// Standard normal quantiles of a range of shares, as [`Sample::quantiles`] makes them, identified by the
    /// range and the transformation.
    Quantiles(Dim, [f64; 3], u64),
}

thread_local! {
    static SHARED: RefCell<Vec<Rc<Sample>>> = const { RefCell::new(Vec::new()) };
}

/// The most samples kept: one for the answer, one for the search for what would change it, and eight
/// scrambles for the pages that tell a small worth from noise.
const KEPT: usize = 12;

/// The most columns cached in one sample: more than twice what one case needs. The least recently used one is
/// dropped first.
const COLUMNS: usize = 400;

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
                asked: Cell::new(0),
                before: RefCell::default(),
            });
            shared.push(Rc::clone(&fresh));
            fresh
        })
    }

    pub(super) fn len(&self) -> usize {
        self.block.len()
    }

    /// The column from the cache, or else made by `make` and cached.
    fn keep(&self, key: Key, make: &dyn Fn() -> Vec<f64>) -> Column {
        let asked = self.asked.get() + 1;
        self.asked.set(asked);
        let mut columns = self.columns.borrow_mut();
        if let Some(kept) = columns.iter_mut().find(|kept| kept.key == key) {
            kept.asked = asked;
            return kept.column.clone();
        }
        // Making it requests other columns.
        drop(columns);
        let column: Column = make().into();
        let mut columns = self.columns.borrow_mut();
        if columns.len() >= COLUMNS
            && let Some(oldest) = (0..columns.len()).min_by_key(|at| columns[*at].asked)
        {
            columns.swap_remove(oldest);
        }
        columns.push(Kept {
            key,
            asked,
            column: column.clone(),
        });
        column
    }

    /// Uniform column.
    pub(super) fn u(&self, dim: Dim) -> Column {
        self.keep(Key::Uniform(dim), &|| self.block.column(dim as usize))
    }

    /// Natural logarithm of the uniform column.
    fn ln_u(&self, dim: Dim) -> Column {
        self.keep(Key::LogUniform(dim), &|| {
            self.u(dim).iter().map(|u| libm::log(*u)).collect()
        })
    }

    /// The same for the piece at `place` of several: u + place v modulo 1, with v the dimension of the
    /// pieces. Any two of these are independent and uniform.
    fn ln_u_of(&self, dim: Dim, place: usize) -> Column {
        if place == 0 {
            return self.ln_u(dim);
        }
        self.keep(Key::LogUniformOf(dim, place), &|| {
            let (u, v) = (self.u(dim), self.u(Dim::Pieces));
            let each = u.iter().zip(v.iter());
            each.map(|(u, v)| {
                let sum = u + place as f64 * v;
                libm::log((sum - libm::floor(sum)).max(f64::MIN_POSITIVE))
            })
            .collect()
        })
    }

    /// Standard normal column.
    pub(super) fn z(&self, dim: Dim) -> Column {
        self.keep(Key::Normal(dim), &|| {
            self.u(dim).iter().map(|u| probit(*u)).collect()
        })
    }

    /// Standard PERT column, in 0 to 1, with the mode at the fraction `mode`.
    fn pert(&self, dim: Dim, mode: f64) -> Column {
        let (a, b) = pert_shapes(mode);
        self.beta(dim, a, b)
    }

    /// Standard t column with `df` degrees of freedom, cut off at the share `tail` of each end.
    pub(super) fn student(&self, dim: Dim, df: f64, tail: f64) -> Column {
        self.keep(Key::Student(dim, df, tail), &|| {
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
        })
    }

    /// Beta column with these shapes.
    fn beta(&self, dim: Dim, a: f64, b: f64) -> Column {
        self.keep(Key::Beta(dim, a, b), &|| {
            let u = self.u(dim);
            let law = Beta::new(a, b);
            // In ascending order, so that each search starts near its answer. Each cell of a scrambled column
            // holds one point, so the cell number is the rank.
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
    pub(super) fn draw(&self, figure: &Figure, dim: Dim) -> Column {
        self.by_law(Law::of(figure), dim)
    }

    /// Draws from a distribution.
    pub(super) fn by_law(&self, law: Law, dim: Dim) -> Column {
        self.keep(Key::Drawn(dim, law), &|| match law {
            Law::Point(value) => vec![value; self.len()],
            Law::Between([low, value, high]) => {
                let column = self.pert(dim, ((value - low) / (high - low)).clamp(0.0, 1.0));
                column.iter().map(|x| low + (high - low) * x).collect()
            }
            Law::Spread([low, middle, high], z_end) => {
                let law = TwoPiece::new(low, middle, high, z_end);
                self.z(dim).iter().map(|z| law.at(*z)).collect()
            }
        })
    }

    /// Draws from a distribution, each times one number plus another.
    #[allow(clippy::float_cmp)] // exactly these leave it as it is
    pub(super) fn moved(&self, law: Law, dim: Dim, times: f64, plus: f64) -> Column {
        let drawn = self.by_law(law, dim);
        if times == 1.0 && plus == 0.0 {
            return drawn;
        }
        self.keep(Key::Moved(dim, law, times, plus), &|| {
            drawn.iter().map(|x| x * times + plus).collect()
        })
    }

    /// exp(`sd` z): a lognormal multiplier with median 1.
    pub(super) fn multiplier(&self, dim: Dim, sd: f64) -> Column {
        self.keep(Key::Multiplier(dim, sd), &|| {
            self.z(dim).iter().map(|z| libm::exp(sd * z)).collect()
        })
    }

    /// A factor in each draw.
    pub(super) fn factor(&self, dim: Dim, factor: Factor, scale: FactorScale) -> Column {
        self.keep(Key::Factor(dim, factor, scale), &|| {
            let z = self.z(dim);
            let ln = z.iter().map(|z| factor.ln_at(*z));
            match scale {
                FactorScale::Ln => ln.collect(),
                FactorScale::Factor => ln.map(libm::exp).collect(),
            }
        })
    }

    /// `kept` in the draws in which something that happens with chance `p` goes wrong, else no effect, with
    /// the piece at `place` of several.
    pub(super) fn mishap(
        &self,
        (dim, place): (Dim, usize),
        p: Factor,
        kept: Factor,
        scale: FactorScale,
    ) -> Column {
        self.keep(Key::Mishap(dim, place, [p, kept], scale), &|| {
            if scale == FactorScale::Factor {
                let ln = self.mishap((dim, place), p, kept, FactorScale::Ln);
                // No exponential where nothing goes wrong.
                let factor = |ln: &f64| if *ln < 0.0 { libm::exp(*ln) } else { 1.0 };
                return ln.iter().map(factor).collect();
            }
            let (z_p, z_kept) = (self.z(Dim::HazardScale), self.z(Dim::HazardKept));
            let points = self.ln_u_of(dim, place);
            let points = points.iter().zip(z_p.iter()).zip(z_kept.iter());
            // Compared on the log scale, for the same reason.
            points
                .map(|((ln_u, z_p), z_kept)| {
                    if *ln_u < p.ln_at(*z_p) {
                        kept.ln_at(*z_kept).min(0.0)
                    } else {
                        0.0
                    }
                })
                .collect()
        })
    }

    /// Draws from a range of bare shares, in the form used in calculations.
    pub(super) fn shares(&self, [low, likely, high]: [f64; 3], dim: Dim) -> Column {
        self.keep(Key::Shares(dim, [low, likely, high]), &|| {
            let shares = self.by_law(Law::entered(low, likely, high), dim);
            shares.iter().map(|f| shown_share(*f)).collect()
        })
    }

    /// Standard normal quantiles of the draws of a range of shares, each share first transformed by `made`;
    /// `what` identifies the transformation. A share that is not between 0 and 1 gives the quantile of the
    /// end it is beyond.
    pub(super) fn quantiles(
        &self,
        [low, likely, high]: [f64; 3],
        dim: Dim,
        what: u64,
        made: &dyn Fn(f64) -> f64,
    ) -> Column {
        self.keep(Key::Quantiles(dim, [low, likely, high], what), &|| {
            let shares = self.by_law(Law::entered(low, likely, high), dim);
            shares.iter().map(|f| probit(made(*f))).collect()
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::Ledger;

    #[test]
    fn a_pert_column_has_the_mean_of_its_distribution() {
        // Mean of PERT(low, mode, high) is (low + 4 mode + high)/6.
        let sample = Sample::shared(12, 1);
        let figure = Ledger::standard().figure(crate::ledger::FigureId::SILVER_T0_FPD);
        let draws = sample.draw(figure, Dim::T0);
        let mean = draws.iter().sum::<f64>() / draws.len() as f64;
        assert!((mean - (10.0 + 80.0 + 45.0) / 6.0).abs() < 0.01, "{mean}");
        assert!(draws.iter().all(|d| (10.0..=45.0).contains(d)));
    }

    #[test]
    fn all_goes_well_with_the_product_of_the_chances() {
        // A quarter goes wrong with each of three pieces: all well in (3/4)^3, any two in (3/4)^2.
        let sample = Sample::shared(12, 1);
        let ledger = Ledger::standard();
        let quarter = Factor::of(ledger.figure(crate::ledger::FigureId::LEARN_LEVEL_GUESS));
        let of =
            |place| sample.mishap((Dim::HazardDents, place), quarter, quarter, FactorScale::Ln);
        let pieces = [of(0), of(1), of(2)];
        let well = |of: &[&Column]| {
            let all = (0..sample.len()).filter(|i| of.iter().all(|c| c[*i] >= 0.0));
            all.count() as f64 / sample.len() as f64
        };
        let [a, b, c] = &pieces;
        for (of, chance) in [
            (&[a][..], 0.75),
            (&[b], 0.75),
            (&[c], 0.75),
            (&[a, b], 0.5625),
            (&[a, c], 0.5625),
            (&[b, c], 0.5625),
        ] {
            assert!((well(of) - chance).abs() < 0.01, "{}", well(of));
        }
        assert!((well(&[a, b, c]) - 0.4219).abs() < 0.08);
    }

    #[test]
    fn entered_ranges_keep_their_percentiles() {
        let sample = Sample::shared(12, 1);
        let mut draws = sample
            .by_law(Law::entered(110.0, 220.0, 500.0), Dim::CostReplate)
            .to_vec();
        draws.sort_by(f64::total_cmp);
        assert!((draws[2048] - 220.0).abs() < 1.0);
        assert!((draws[409] - 110.0).abs() < 1.0 && (draws[3686] - 500.0).abs() < 2.0);
    }
}
