//! What a handful of sales tells about the price of the next one.

use crate::maths::StudentT;

/// What is known of the logarithm of a price: a normal law whose middle and spread are both unknown
/// (normal-inverse-gamma).
///
/// ln price ~ N(theta, s2); theta given s2 ~ N(mu, s2/kappa); s2 ~ inverse gamma(alpha, beta). All but
/// `mu` are > 0. Hoff 2009, A First Course in Bayesian Statistical Methods, section 5.3; Murphy 2007,
/// Conjugate Bayesian analysis of the Gaussian distribution, section 6.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PriceLaw {
    /// Middle of the logarithm of the price.
    pub mu: f64,
    /// How many sales the middle rests on.
    pub kappa: f64,
    /// Half the number of sales the spread rests on.
    pub alpha: f64,
    /// Half the sum of squares the spread rests on.
    pub beta: f64,
}

impl PriceLaw {
    /// After sales with logarithms y and weights w, given as (y, w). A weight of a half counts as half
    /// a sale: n is the sum of weights, mean and sum of squares are weighted. Pairs whose weight is not
    /// above 0 tell nothing.
    #[must_use]
    pub fn after(&self, sales: &[(f64, f64)]) -> Self {
        let counted = || sales.iter().filter(|(_, w)| *w > 0.0);
        let n: f64 = counted().map(|(_, w)| w).sum();
        if n <= 0.0 {
            return *self;
        }
        let mean = counted().map(|(y, w)| w * y).sum::<f64>() / n;
        let squares = counted().map(|(y, w)| w * (y - mean) * (y - mean)).sum();
        self.after_summary(n, mean, squares)
    }

    /// After `n` > 0 sales with this mean of the logarithms and this sum of squares about it.
    #[must_use]
    pub fn after_summary(&self, n: f64, mean: f64, squares: f64) -> Self {
        let kappa = self.kappa + n;
        let off = mean - self.mu;
        Self {
            mu: (self.kappa * self.mu + n * mean) / kappa,
            kappa,
            alpha: self.alpha + 0.5 * n,
            beta: self.beta + 0.5 * squares + self.kappa * n * off * off / (2.0 * kappa),
        }
    }

    /// The law of theta, the middle itself: t with 2 alpha degrees of freedom, squared scale
    /// beta/(alpha kappa).
    #[must_use]
    pub fn middle(&self) -> StudentT {
        self.student(1.0 / self.kappa)
    }

    /// The law of the logarithm of the next price: squared scale beta (kappa + 1)/(alpha kappa). The
    /// price itself, its exponential, has no mean; speak of its median and bands.
    #[must_use]
    pub fn next(&self) -> StudentT {
        self.student(1.0 + 1.0 / self.kappa)
    }

    fn student(&self, times: f64) -> StudentT {
        StudentT {
            df: 2.0 * self.alpha,
            at: self.mu,
            scale: (self.beta / self.alpha * times).sqrt(),
        }
    }
}
