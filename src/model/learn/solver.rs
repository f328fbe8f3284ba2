//! The one solver: a robust log-linear model with a normal prior and observations that may be censored.
//!
//! y = x'b + e with b ~ N(0, S0) and e/(s kappa) ~ t4, kappa² ~ inverse gamma(3, 2) for each group of
//! observations. The posterior mode is found by iteratively reweighted least squares (Lange, Little &
//! Taylor 1989, J. Am. Statist. Ass. 84:881), and the curvature there gives the covariance. An observation
//! that says only "less than" counts with the expectations of a truncated t.
//!
//! Deterministic: sums run in the order of the observations.

use super::student4::{WIDER, below, below_with_six, density};
use crate::maths::SquareMatrix;

/// Degrees of freedom of the tails. The closed forms of [`super::student4`] hold for this number only.
const NU: f64 = 4.0;
/// Rounds of reweighting: the last step is below 1e-9 from 30 pieces.
pub const ROUNDS: usize = 40;

/// One observation.
#[derive(Clone, Debug, PartialEq)]
pub struct Observation {
    /// What it rests on: places of the shifts and how much of each, without repeats.
    pub row: Vec<(usize, f64)>,
    /// What was seen, in ln.
    pub y: f64,
    /// Its scatter before anything is learnt, in ln, > 0.
    pub sd: f64,
    /// The group whose scatter it shares.
    pub group: usize,
    /// How much it counts, 0 to 1.
    pub weight: f64,
    /// Only an upper limit was seen.
    pub censored: bool,
}

/// The tails of the observations.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tails {
    /// Student's t with four degrees of freedom; the scatter of each group is learnt.
    Student,
    /// Normal, with the scatter as given: the textbook case, against which the solver is checked.
    Normal,
}

/// What is fixed before the observations.
#[derive(Clone, Debug)]
pub struct FitSetup {
    /// Precision of the shifts: the inverse of their covariance.
    pub precision: SquareMatrix,
    /// Their number.
    pub shifts: usize,
    /// The tails.
    pub tails: Tails,
    /// Weight of the law of kappa² before anything is seen, as half a number of observations.
    pub kappa_weight: f64,
    /// The number of groups.
    pub groups: usize,
    /// Rounds of reweighting.
    pub rounds: usize,
}

/// What the observations tell.
#[derive(Clone, Debug)]
pub struct Fit {
    /// The shifts.
    pub mean: Vec<f64>,
    /// Their covariance.
    pub covariance: SquareMatrix,
    /// kappa² of each group.
    pub kappa2: Vec<f64>,
    /// The largest change of a shift in the last round.
    pub last_step: f64,
    /// For each observation its pull: what it adds to the score, and its curvature.
    pub pulls: Vec<Pull>,
}

/// How an observation pulls at the shifts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pull {
    /// Derivative of its log likelihood along x'b.
    pub score: f64,
    /// Its curvature there.
    pub curvature: f64,
}

/// Weight, working value and squared deviate of an observation at the present shifts.
struct Working {
    weight: f64,
    at: f64,
    squares: f64,
}

impl FitSetup {
    fn scale(&self, o: &Observation, kappa2: &[f64]) -> f64 {
        match self.tails {
            Tails::Student => o.sd / WIDER * kappa2[o.group].sqrt(),
            Tails::Normal => o.sd,
        }
    }

    fn working(&self, o: &Observation, eta: f64, scale: f64) -> Working {
        let d = (o.y - eta) / scale;
        if self.tails == Tails::Normal {
            return Working {
                weight: 1.0,
                at: o.y,
                squares: d * d,
            };
        }
        if o.censored {
            let share = below(d).max(1e-300);
            let weight = below_with_six(d * ((NU + 2.0) / NU).sqrt()) / share;
            return Working {
                weight,
                at: eta - scale * density(d) / share / weight,
                squares: (NU + 1.0 - NU * weight).max(0.0),
            };
        }
        let weight = (NU + 1.0) / (NU + d * d);
        Working {
            weight,
            at: o.y,
            squares: weight * d * d,
        }
    }

    fn pull(&self, o: &Observation, eta: f64, scale: f64) -> Pull {
        let d = (o.y - eta) / scale;
        if self.tails == Tails::Normal {
            return Pull {
                score: o.weight * d / scale,
                curvature: o.weight / (scale * scale),
            };
        }
        let weight = (NU + 1.0) / (NU + d * d);
        let (score, curvature) = if o.censored {
            let r = density(d) / below(d).max(1e-300);
            (-r, (r * (r + weight * d)).max(0.0))
        } else {
            (weight * d, weight * (NU + 1.0) / (NU + 3.0))
        };
        Pull {
            score: o.weight * score / scale,
            curvature: o.weight * curvature / (scale * scale),
        }
    }
}

fn along(row: &[(usize, f64)], shifts: &[f64]) -> f64 {
    row.iter().map(|(at, x)| x * shifts[*at]).sum()
}

fn add_square(matrix: &mut SquareMatrix, row: &[(usize, f64)], times: f64) {
    for (i, a) in row {
        for (j, b) in row {
            matrix.add(*i, *j, times * a * b);
        }
    }
}

/// Fits the model. Places in the rows are below `before.shifts`, groups below `before.groups`.
#[must_use]
pub fn fit(before: &FitSetup, observations: &[Observation]) -> Fit {
    let mut shifts = vec![0.0; before.shifts];
    let mut kappa2 = vec![1.0; before.groups];
    let mut last_step = 0.0;
    for _ in 0..before.rounds {
        let mut precision = before.precision.clone();
        let mut right = vec![0.0; before.shifts];
        let mut seen = vec![(0.0, 0.0); before.groups];
        for o in observations {
            let scale = before.scale(o, &kappa2);
            let working = before.working(o, along(&o.row, &shifts), scale);
            let p = o.weight * working.weight / (scale * scale);
            add_square(&mut precision, &o.row, p);
            for (at, x) in &o.row {
                right[*at] += p * x * working.at;
            }
            let (squares, count) = &mut seen[o.group];
            *squares += o.weight * working.squares;
            *count += o.weight;
        }
        let next = precision.cholesky().solve(&right);
        last_step = shifts
            .iter()
            .zip(&next)
            .map(|(a, b)| (a - b).abs())
            .fold(0.0, f64::max);
        shifts = next;
        if before.tails == Tails::Student {
            for (kappa2, (squares, count)) in kappa2.iter_mut().zip(seen) {
                let held = before.kappa_weight;
                *kappa2 =
                    (held + 0.5 * squares * *kappa2) / (held + 0.5 * count).max(f64::MIN_POSITIVE);
            }
        }
    }
    let mut precision = before.precision.clone();
    let pulls: Vec<Pull> = observations
        .iter()
        .map(|o| before.pull(o, along(&o.row, &shifts), before.scale(o, &kappa2)))
        .collect();
    for (o, pull) in observations.iter().zip(&pulls) {
        add_square(&mut precision, &o.row, pull.curvature);
    }
    Fit {
        mean: shifts,
        covariance: precision.cholesky().inverse(),
        kappa2,
        last_step,
        pulls,
    }
}

impl Fit {
    /// How far shift `at` would move were the observation left out, by one step from the fit.
    #[must_use]
    pub fn without(&self, at: usize, row: &[(usize, f64)], pull: Pull) -> f64 {
        let vx: f64 = row
            .iter()
            .map(|(j, x)| x * self.covariance.at(at, *j))
            .sum();
        let left = 1.0 - pull.curvature * self.covariance.quadratic(row);
        -vx * pull.score / left.max(1e-6)
    }
}
