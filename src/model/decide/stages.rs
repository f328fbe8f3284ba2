//! Choices one after another while the state moves: what it is worth to look, and to remember what
//! one saw.

use super::{expected, greatest};

/// One round: something is seen, then something is done.
#[derive(Clone, Debug, PartialEq)]
pub struct Stage {
    /// Probability of each sight by state: `[sight][state]`; over the sights they sum to 1.
    pub sights: Vec<Vec<f64>>,
    /// What one may do.
    pub moves: Vec<Move>,
}

/// What one may do in a round. What cannot be undone is a move after which other states no longer
/// come: the choice shrinks, and no penalty is needed.
#[derive(Clone, Debug, PartialEq)]
pub struct Move {
    /// What it brings at once, by state.
    pub pays: Vec<f64>,
    /// Probability of the next state: `[from][to]`.
    pub to: Vec<Vec<f64>>,
}

/// Rounds after one another and what the last state is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Stages {
    /// Probability of each state at the start.
    pub prior: Vec<f64>,
    /// The rounds.
    pub stages: Vec<Stage>,
    /// Worth of each state at the end.
    pub end: Vec<f64>,
}

/// Fixed rules tried at most; beyond it [`Stages::by_last_sight`] gives up.
const MOST_RULES: usize = 1 << 20;

impl Stages {
    /// Worth when every sight so far is remembered: expectation over sights of the best move, by
    /// recursion on the belief (Bellman 1957; Sondik 1971).
    #[must_use]
    pub fn remembering(&self) -> f64 {
        self.from(&self.prior, 0)
    }

    /// `weights`: prior times likelihood of what was seen, so the sum over sights needs no division.
    fn from(&self, weights: &[f64], at: usize) -> f64 {
        let Some(stage) = self.stages.get(at) else {
            return expected(weights, &self.end);
        };
        stage
            .sights
            .iter()
            .map(|likelihood| {
                let seen: Vec<f64> = weights.iter().zip(likelihood).map(|(w, l)| w * l).collect();
                greatest(stage.moves.iter().map(|m| {
                    expected(&seen, &m.pays) + self.from(&moved(&seen, m, self.end.len()), at + 1)
                }))
                .1
            })
            .sum()
    }

    /// Worth, and the rule `[stage][sight]`, when each choice knows only the sight of its own round
    /// (a limited-memory influence diagram; Lauritzen & Nilsson 2001, Management Science 47:1235).
    /// Every rule is tried; `None` beyond about a million of them.
    #[must_use]
    pub fn by_last_sight(&self) -> Option<(f64, Vec<Vec<usize>>)> {
        let shape: Vec<usize> = self
            .stages
            .iter()
            .flat_map(|s| s.sights.iter().map(|_| s.moves.len()))
            .collect();
        let mut rule = vec![0; shape.len()];
        let mut best: Option<(f64, Vec<usize>)> = None;
        for tried in 0.. {
            if tried >= MOST_RULES || shape.contains(&0) {
                return None;
            }
            let value = self.under(&rule);
            if best.as_ref().is_none_or(|(v, _)| value > v + 1e-12) {
                best = Some((value, rule.clone()));
            }
            // The next rule, counting up.
            let mut carried = true;
            for (r, n) in rule.iter_mut().zip(&shape) {
                *r += 1;
                carried = *r == *n;
                if !carried {
                    break;
                }
                *r = 0;
            }
            if carried {
                break;
            }
        }
        best.map(|(value, flat)| {
            let mut flat = flat.into_iter();
            let rule = self
                .stages
                .iter()
                .map(|s| flat.by_ref().take(s.sights.len()).collect())
                .collect();
            (value, rule)
        })
    }

    fn under(&self, rule: &[usize]) -> f64 {
        let mut weights = self.prior.clone();
        let (mut value, mut at) = (0.0, 0);
        for stage in &self.stages {
            let mut next = vec![0.0; self.end.len()];
            for likelihood in &stage.sights {
                let seen: Vec<f64> = weights.iter().zip(likelihood).map(|(w, l)| w * l).collect();
                if let Some(m) = rule.get(at).and_then(|r| stage.moves.get(*r)) {
                    value += expected(&seen, &m.pays);
                    for (n, w) in next.iter_mut().zip(moved(&seen, m, self.end.len())) {
                        *n += w;
                    }
                }
                at += 1;
            }
            weights = next;
        }
        value + expected(&weights, &self.end)
    }

    /// Worth when nothing is seen: the best fixed plan.
    #[must_use]
    pub fn unseeing(&self) -> f64 {
        let blind = Self {
            stages: self
                .stages
                .iter()
                .map(|s| Stage {
                    sights: vec![vec![1.0; self.prior.len().max(self.end.len())]],
                    moves: s.moves.clone(),
                })
                .collect(),
            ..self.clone()
        };
        // With one sight that tells nothing, remembering it is knowing nothing.
        blind.remembering()
    }
}

fn moved(weights: &[f64], by: &Move, states: usize) -> Vec<f64> {
    let mut next = vec![0.0; states];
    for (w, row) in weights.iter().zip(&by.to) {
        for (n, p) in next.iter_mut().zip(row) {
            *n += w * p;
        }
    }
    next
}
