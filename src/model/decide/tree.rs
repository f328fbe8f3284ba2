//! Decision trees: choices and chances, rolled back from the ends.

use std::rc::Rc;

use super::{expected, greatest};

/// A tree before it is rolled back.
#[derive(Clone, Debug, PartialEq)]
pub enum Tree {
    /// An end, with its value.
    End(f64),
    /// Possible events, each with its probability; these sum to 1.
    Chance(Vec<(Rc<str>, f64, Self)>),
    /// Possible choices.
    Decide(Vec<(Rc<str>, Self)>),
}

/// A tree after it is rolled back.
#[derive(Clone, Debug, PartialEq)]
pub struct Rolled {
    /// Mean value of being here and choosing the best from here on.
    pub value: f64,
    /// What comes next.
    pub next: Next,
}

/// What comes next in a rolled-back tree.
#[derive(Clone, Debug, PartialEq)]
pub enum Next {
    /// Nothing.
    End,
    /// Possible events.
    Chance(Vec<Branch>),
    /// Possible choices, one of them chosen.
    Decide {
        /// The choices, in the order given.
        branches: Vec<Branch>,
        /// Index of the best, the first one on a tie.
        chosen: usize,
    },
}

/// A branch of a rolled-back tree, chosen or not.
#[derive(Clone, Debug, PartialEq)]
pub struct Branch {
    /// What is done or happens.
    pub name: Rc<str>,
    /// Probability; 1 for a choice.
    pub p: f64,
    /// Where it leads.
    pub to: Rolled,
}

impl Tree {
    /// Rolls the tree back: a chance counts by its mean, a choice by its best branch.
    #[must_use]
    pub fn rolled(&self) -> Rolled {
        match self {
            Self::End(value) => Rolled {
                value: *value,
                next: Next::End,
            },
            Self::Chance(outcomes) => {
                let branches: Vec<Branch> = outcomes
                    .iter()
                    .map(|(name, p, tree)| Branch {
                        name: Rc::clone(name),
                        p: *p,
                        to: tree.rolled(),
                    })
                    .collect();
                let chances: Vec<f64> = branches.iter().map(|b| b.p).collect();
                let values: Vec<f64> = branches.iter().map(|b| b.to.value).collect();
                Rolled {
                    value: expected(&chances, &values),
                    next: Next::Chance(branches),
                }
            }
            Self::Decide(choices) => {
                let branches: Vec<Branch> = choices
                    .iter()
                    .map(|(name, tree)| Branch {
                        name: Rc::clone(name),
                        p: 1.0,
                        to: tree.rolled(),
                    })
                    .collect();
                let (chosen, value) = greatest(branches.iter().map(|b| b.to.value));
                Rolled {
                    value,
                    next: Next::Decide { branches, chosen },
                }
            }
        }
    }
}

impl Rolled {
    /// The best choice from here; `None` where there is no choice.
    #[must_use]
    pub fn best(&self) -> Option<&Branch> {
        match &self.next {
            Next::Decide { branches, chosen } => branches.get(*chosen),
            Next::End | Next::Chance(_) => None,
        }
    }
}

/// A final act: its value in each state.
#[derive(Clone, Debug, PartialEq)]
pub struct Act {
    /// Its name.
    pub name: Rc<str>,
    /// Its value, by state.
    pub pays: Vec<f64>,
}

/// A test that can be made before acting.
#[derive(Clone, Debug, PartialEq)]
pub struct TreeTest {
    /// Its name.
    pub name: Rc<str>,
    /// What it costs, including any harm it does.
    pub fee: f64,
    /// Each answer with its probability by state. In every state these sum to 1 over the answers.
    pub answers: Vec<(Rc<str>, Vec<f64>)>,
    /// The acts that are possible after the test, where they differ; `None` leaves them as they were.
    pub opens: Option<Vec<Act>>,
}

/// An unknown state, acts whose value depends on it, and tests that tell something about it.
#[derive(Clone, Debug, PartialEq)]
pub struct DecisionProblem {
    /// Probability of each state.
    pub prior: Vec<f64>,
    /// The possible acts.
    pub acts: Vec<Act>,
    /// The possible tests; each is made at most once.
    pub tests: Vec<TreeTest>,
}

impl DecisionProblem {
    /// The whole tree: at every point either act, or make one of the remaining tests, at most `depth` of
    /// them. Acts come before tests and so win ties. The end of an act is its mean over the states.
    #[must_use]
    pub fn tree(&self, depth: usize) -> Tree {
        self.grown(&self.prior, &self.acts, &[], depth, 0.0)
    }

    /// `weights` is prior times likelihood so far, so answers need no division until the ends (Raiffa &
    /// Schlaifer 1961, extensive form).
    fn grown(
        &self,
        weights: &[f64],
        acts: &[Act],
        asked: &[usize],
        depth: usize,
        fees: f64,
    ) -> Tree {
        let total: f64 = weights.iter().sum();
        let share = |w: f64| if total > 0.0 { w / total } else { 0.0 };
        let mut choices: Vec<(Rc<str>, Tree)> = acts
            .iter()
            .map(|act| {
                let end = Tree::End(share(expected(weights, &act.pays)) - fees);
                (Rc::clone(&act.name), end)
            })
            .collect();
        if asked.len() < depth {
            for (i, test) in self.tests.iter().enumerate() {
                if asked.contains(&i) {
                    continue;
                }
                let mut more = asked.to_vec();
                more.push(i);
                let after = test.opens.as_deref().unwrap_or(acts);
                let answers = test
                    .answers
                    .iter()
                    .filter_map(|(name, likelihood)| {
                        let then: Vec<f64> =
                            weights.iter().zip(likelihood).map(|(w, l)| w * l).collect();
                        let p = share(then.iter().sum());
                        // An impossible answer leads nowhere.
                        (p > 0.0).then(|| {
                            let tree = self.grown(&then, after, &more, depth, fees + test.fee);
                            (Rc::clone(name), p, tree)
                        })
                    })
                    .collect();
                choices.push((Rc::clone(&test.name), Tree::Chance(answers)));
            }
        }
        Tree::Decide(choices)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_decision_without_choices_is_worth_nothing() {
        let rolled = Tree::Decide(Vec::new()).rolled();
        assert!(rolled.value.abs() < 1e-12 && rolled.best().is_none());
    }

    #[test]
    fn a_tie_goes_to_the_first_choice() {
        let tree = Tree::Decide(vec![
            ("leave".into(), Tree::End(5.0)),
            ("act".into(), Tree::End(5.0)),
        ]);
        assert_eq!(&*tree.rolled().best().unwrap().name, "leave");
    }
}
