//! Trees of choices and chances, rolled back from the ends.

use std::rc::Rc;

use super::{expected, greatest};
use crate::decide::risk::certain;

/// A tree before it is rolled back.
#[derive(Clone, Debug, PartialEq)]
pub enum Tree {
    /// An end, with what it is worth.
    End(f64),
    /// What happens, each with its probability; they sum to 1.
    Chance(Vec<(Rc<str>, f64, Self)>),
    /// What one may do.
    Decide(Vec<(Rc<str>, Self)>),
}

/// A tree rolled back.
#[derive(Clone, Debug, PartialEq)]
pub struct Rolled {
    /// Worth of standing here and choosing best from here on.
    pub value: f64,
    /// What comes next.
    pub next: Next,
}

/// What comes next in a tree rolled back.
#[derive(Clone, Debug, PartialEq)]
pub enum Next {
    /// Nothing.
    End,
    /// What may happen.
    Chance(Vec<Branch>),
    /// What one may do; all but the chosen one lose.
    Decide {
        /// The choices in the order given.
        branches: Vec<Branch>,
        /// Place of the best, the first on a tie.
        chosen: usize,
    },
}

/// A branch with its number, losing or not.
#[derive(Clone, Debug, PartialEq)]
pub struct Branch {
    /// What is done or happens.
    pub name: Rc<str>,
    /// Probability; 1 for a choice.
    pub p: f64,
    /// Where it leads.
    pub to: Rolled,
}

/// How a chance is valued.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Attitude {
    /// By its mean.
    Neutral,
    /// By its certainty equivalent at this constant risk tolerance, in units of the ends. Under it
    /// the certainty equivalent of certainty equivalents is that of the whole (Howard 1968, IEEE
    /// Trans. SSC-4:211, the delta property), so rolling back stays exact.
    Tolerance(f64),
}

impl Tree {
    /// Rolls the tree back: a chance counts by `attitude`, a choice by its best branch.
    #[must_use]
    pub fn rolled(&self, attitude: Attitude) -> Rolled {
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
                        to: tree.rolled(attitude),
                    })
                    .collect();
                let chances: Vec<f64> = branches.iter().map(|b| b.p).collect();
                let values: Vec<f64> = branches.iter().map(|b| b.to.value).collect();
                Rolled {
                    value: match attitude {
                        Attitude::Neutral => expected(&chances, &values),
                        Attitude::Tolerance(r) => certain(&values, &chances, r),
                    },
                    next: Next::Chance(branches),
                }
            }
            Self::Decide(choices) => {
                let branches: Vec<Branch> = choices
                    .iter()
                    .map(|(name, tree)| Branch {
                        name: Rc::clone(name),
                        p: 1.0,
                        to: tree.rolled(attitude),
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
    /// The branches from here: none at an end.
    #[must_use]
    pub fn branches(&self) -> &[Branch] {
        match &self.next {
            Next::End => &[],
            Next::Chance(branches) | Next::Decide { branches, .. } => branches,
        }
    }

    /// The branch of this name.
    #[must_use]
    pub fn branch(&self, name: &str) -> Option<&Branch> {
        self.branches().iter().find(|b| &*b.name == name)
    }

    /// The best choice from here; `None` where nothing is chosen.
    #[must_use]
    pub fn best(&self) -> Option<&Branch> {
        match &self.next {
            Next::Decide { branches, chosen } => branches.get(*chosen),
            _ => None,
        }
    }

    /// How many outcomes of chance the whole tree holds.
    #[must_use]
    pub fn outcomes(&self) -> usize {
        let here = match &self.next {
            Next::Chance(branches) => branches.len(),
            _ => 0,
        };
        here + self
            .branches()
            .iter()
            .map(|b| b.to.outcomes())
            .sum::<usize>()
    }
}

/// Something that ends the search: what it brings in each state.
#[derive(Clone, Debug, PartialEq)]
pub struct Act {
    /// Its name.
    pub name: Rc<str>,
    /// What it brings, by state.
    pub pays: Vec<f64>,
}

/// Something one may ask before acting.
#[derive(Clone, Debug, PartialEq)]
pub struct Test {
    /// Its name.
    pub name: Rc<str>,
    /// What asking costs, harm done by it included.
    pub fee: f64,
    /// Each answer with its probability by state; over the answers they sum to 1 in every state.
    pub answers: Vec<(Rc<str>, Vec<f64>)>,
    /// What one may do once it has been asked, where that differs; `None` leaves it as it was.
    pub opens: Option<Vec<Act>>,
}

/// A state nobody sees, acts whose worth depends on it, and tests that tell of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// Probability of each state.
    pub prior: Vec<f64>,
    /// What one may do.
    pub acts: Vec<Act>,
    /// What one may ask first; each at most once.
    pub tests: Vec<Test>,
}

impl Question {
    /// The whole tree: at every point act, or ask one of the tests not asked yet, at most `depth`
    /// of them. Acts stand before tests and so win ties. An act's end is its mean over the states.
    #[must_use]
    pub fn tree(&self, depth: usize) -> Tree {
        self.grown(&self.prior, &self.acts, &[], depth, 0.0, false)
    }

    /// The same with every act a chance over the states, for an attitude that is not neutral.
    #[must_use]
    pub fn tree_in_full(&self, depth: usize) -> Tree {
        self.grown(&self.prior, &self.acts, &[], depth, 0.0, true)
    }

    /// `weights` are prior times likelihood so far, so that an answer needs no division before the
    /// end (Raiffa & Schlaifer 1961, extensive form).
    fn grown(
        &self,
        weights: &[f64],
        acts: &[Act],
        asked: &[usize],
        depth: usize,
        fees: f64,
        in_full: bool,
    ) -> Tree {
        let total: f64 = weights.iter().sum();
        let share = |w: f64| if total > 0.0 { w / total } else { 0.0 };
        let mut choices: Vec<(Rc<str>, Tree)> = acts
            .iter()
            .map(|act| {
                let end = if in_full {
                    Tree::Chance(
                        weights
                            .iter()
                            .zip(&act.pays)
                            .map(|(w, x)| (Rc::from(""), share(*w), Tree::End(x - fees)))
                            .collect(),
                    )
                } else {
                    Tree::End(share(expected(weights, &act.pays)) - fees)
                };
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
                        // An answer that cannot come leads nowhere.
                        (p > 0.0).then(|| {
                            let tree =
                                self.grown(&then, after, &more, depth, fees + test.fee, in_full);
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
    fn nothing_to_do_is_worth_nothing() {
        let rolled = Tree::Decide(Vec::new()).rolled(Attitude::Neutral);
        assert!(rolled.value.abs() < 1e-12 && rolled.best().is_none());
    }

    #[test]
    fn a_tie_goes_to_what_was_named_first() {
        let tree = Tree::Decide(vec![
            ("leave".into(), Tree::End(5.0)),
            ("act".into(), Tree::End(5.0)),
        ]);
        assert_eq!(
            &*tree.rolled(Attitude::Neutral).best().unwrap().name,
            "leave"
        );
    }
}
