//! Acting now, or waiting until more is known: what it is worth to keep a choice open.
//!
//! Two different numbers go by the name of option value, and both are kept, each under its own name.

use super::information::with_answers;
use super::{expected, greatest};

/// A choice that cannot be undone, now or later.
#[derive(Clone, Debug, PartialEq)]
pub struct Waiting {
    /// What acting now brings before the state is known.
    pub gain_now: f64,
    /// Probability of each state.
    pub chances: Vec<f64>,
    /// What having acted is worth later, by state.
    pub acted: Vec<f64>,
    /// What not having acted is worth later, by state.
    pub kept: Vec<f64>,
}

/// What waiting is worth, and what acting now must bring to beat it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worth {
    /// Acting now: the gain now and the mean of having acted.
    pub act_now: f64,
    /// Waiting without learning (open loop).
    pub open_loop: f64,
    /// Waiting and learning before choosing (closed loop).
    pub closed_loop: f64,
    /// Quasi-option value: closed less open loop, given that one waits; never below 0 (Arrow & Fisher
    /// 1974, QJE 88:312; Henry 1974, AER 64:1006; Hanemann 1989, JEEM 16:23).
    pub quasi_option: f64,
    /// Option value: closed loop less the better of acting now and waiting blind (Dixit & Pindyck
    /// 1994, Investment under Uncertainty, ch. 2). Below 0 where acting now is right.
    pub option: f64,
    /// Gain now at which acting now is as good as waiting; act now only if it brings at least this.
    pub break_even: f64,
    /// The same if one forgets that waiting teaches: too low whenever the quasi-option value is
    /// above 0.
    pub break_even_blind: f64,
}

impl Waiting {
    /// Worth when waiting shows the state itself.
    #[must_use]
    pub fn worth(&self) -> Worth {
        let closed = self
            .chances
            .iter()
            .zip(self.acted.iter().zip(&self.kept))
            .map(|(p, (a, k))| p * a.max(*k))
            .sum();
        self.worth_at(closed)
    }

    /// Worth when waiting gives an answer that only tells of the state: `[answer][state]`.
    #[must_use]
    pub fn worth_with(&self, answers: &[Vec<f64>]) -> Worth {
        self.worth_at(with_answers(
            &self.chances,
            &[&self.acted, &self.kept],
            answers,
        ))
    }

    fn worth_at(&self, closed_loop: f64) -> Worth {
        let acted = expected(&self.chances, &self.acted);
        let act_now = self.gain_now + acted;
        let open_loop = greatest([acted, expected(&self.chances, &self.kept)]).1;
        Worth {
            act_now,
            open_loop,
            closed_loop,
            quasi_option: closed_loop - open_loop,
            option: closed_loop - act_now.max(open_loop),
            break_even: closed_loop - acted,
            break_even_blind: open_loop - acted,
        }
    }
}

impl Worth {
    /// Whether to act now.
    #[must_use]
    pub fn acts_now(&self) -> bool {
        self.act_now >= self.closed_loop
    }
}

/// How many times its cost a thing must be worth before one acts, when it may be put off for ever:
/// b/(b - 1), b = 1/2 - (r - d)/s^2 + sqrt(((r - d)/s^2 - 1/2)^2 + 2r/s^2) (Dixit & Pindyck 1994,
/// ch. 5). `rate` r and `payout` d a year, `spread` s a square root of a year. Valid for r > 0, d > 0,
/// s > 0; `None` outside. An aid to explanation: the spread of one object's value cannot be observed.
#[must_use]
pub fn hurdle(rate: f64, payout: f64, spread: f64) -> Option<(f64, f64)> {
    let valid = rate > 0.0 && payout > 0.0 && spread > 0.0;
    if !(valid && rate.is_finite() && payout.is_finite() && spread.is_finite()) {
        return None;
    }
    let variance = spread * spread;
    let drift = (rate - payout) / variance;
    let b = 0.5 - drift + ((drift - 0.5) * (drift - 0.5) + 2.0 * rate / variance).sqrt();
    Some((b, b / (b - 1.0)))
}
