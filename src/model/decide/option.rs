//! Act now, or wait until more is known: the value of keeping a choice open.
//!
//! Two different numbers are called "option value". Both are kept here, each under its own name.

use super::information::with_answers;
use super::{expected, greatest};

/// An irreversible choice that can be made now or later. All values are in one unit of money.
#[derive(Clone, Debug, PartialEq)]
pub struct Waiting {
    /// What acting now brings before the state is known.
    pub gain_now: f64,
    /// Probability of each state; they sum to 1.
    pub chances: Vec<f64>,
    /// Later value of having acted, by state.
    pub acted: Vec<f64>,
    /// Later value of not having acted, by state.
    pub kept: Vec<f64>,
}

/// What waiting is worth, and what acting now must bring to beat it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worth {
    /// Value of acting now: the gain now plus the mean value of having acted.
    pub act_now: f64,
    /// Value of waiting without learning (open loop).
    pub open_loop: f64,
    /// Value of waiting, learning, then choosing (closed loop).
    pub closed_loop: f64,
    /// Quasi-option value: closed loop minus open loop, given waiting. Never negative (Arrow & Fisher 1974,
    /// QJE 88:312; Henry 1974, AER 64:1006; Hanemann 1989, JEEM 16:23).
    pub quasi_option: f64,
    /// Option value: closed loop minus the better of acting now and waiting without learning (Dixit &
    /// Pindyck 1994, Investment under Uncertainty, ch. 2). Negative where acting now is right.
    pub option: f64,
    /// The gain now at which acting now equals waiting. Act now only if it brings at least this.
    pub break_even: f64,
    /// The same when learning is ignored. Too low whenever the quasi-option value is positive.
    pub break_even_blind: f64,
}

impl Waiting {
    /// The value of waiting for an answer about the state. `answers` is `[answer][state]`: the probability of
    /// each answer in each state, which sums to 1 over the answers. With one certain answer for each state,
    /// waiting reveals the state itself.
    ///
    /// ```
    /// use leavewell_model::decide::option::Waiting;
    ///
    /// // Acting helps in the first state and does harm in the second; waiting shows which it is.
    /// let worth = Waiting {
    ///     gain_now: 30.0,
    ///     chances: vec![0.7, 0.3],
    ///     acted: vec![100.0, -20.0],
    ///     kept: vec![60.0, 140.0],
    /// }
    /// .worth_with(&[vec![1.0, 0.0], vec![0.0, 1.0]]);
    /// assert!((worth.closed_loop - 112.0).abs() < 1e-9);
    /// assert!(!worth.acts_now());
    /// ```
    #[must_use]
    pub fn worth_with(&self, answers: &[Vec<f64>]) -> Worth {
        let closed_loop = with_answers(&self.chances, &[&self.acted, &self.kept], answers);
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
    /// Whether acting now is at least as good as waiting to learn.
    #[must_use]
    pub fn acts_now(&self) -> bool {
        self.act_now >= self.closed_loop
    }
}
