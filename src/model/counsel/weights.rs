//! How much each attribute counts for a keeper.

use crate::record::{Aim, Goal};

/// Weights of the attributes for a goal; they sum to 1. Rank-order centroids on the goal's order of
/// importance (Barron & Barrett 1996): the j-th of n weighs (1/n) times the sum of 1/k, k from j to n.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Weights {
    pub(super) originality: f64,
    pub(super) fitness: f64,
    pub(super) stability: f64,
    pub(super) cost: f64,
    pub(super) retreatability: f64,
}

impl Weights {
    /// The weights of a keeper's aim; `None` for a seller, to whom only money counts, because the price
    /// already reflects originality. The user's points replace those of the order, the greatest of which has
    /// 100; a criterion that does not count for a goal never does.
    pub(super) fn of(aim: &Aim) -> Option<Self> {
        let mut weights = Self::by_order(aim.goal_or_default())?;
        if aim.weights.iter().any(Option::is_some) {
            let each = weights.each();
            let top = each.iter().copied().fold(0.0, f64::max);
            let mut points = each.map(|w| 100.0 * w / top);
            for (point, own) in points.iter_mut().zip(aim.weights) {
                if *point > 0.0 {
                    *point = own.unwrap_or(*point);
                }
            }
            let sum: f64 = points.iter().sum();
            if sum > 0.0 {
                weights = Self::from(points.map(|p| p / sum));
            }
        }
        Some(weights)
    }

    /// In the order of [`Aim::WEIGHED`].
    pub(super) fn each(&self) -> [f64; 5] {
        [
            self.originality,
            self.fitness,
            self.stability,
            self.cost,
            self.retreatability,
        ]
    }

    /// Weights in the order of [`Aim::WEIGHED`].
    pub(super) fn from([originality, fitness, stability, cost, retreatability]: [f64; 5]) -> Self {
        Self {
            originality,
            fitness,
            stability,
            cost,
            retreatability,
        }
    }

    pub(super) fn by_order(goal: Goal) -> Option<Self> {
        let w = |n: u32, j: u32| (j..=n).map(|k| 1.0 / f64::from(k)).sum::<f64>() / f64::from(n);
        let zero = Self {
            originality: 0.0,
            fitness: 0.0,
            stability: 0.0,
            cost: 0.0,
            retreatability: 0.0,
        };
        match goal {
            Goal::Sell => None,
            Goal::KeepShow => Some(Self {
                originality: w(5, 1),
                fitness: w(5, 2),
                stability: w(5, 3),
                cost: w(5, 4),
                retreatability: w(5, 5),
            }),
            Goal::KeepUse => Some(Self {
                fitness: w(5, 1),
                stability: w(5, 2),
                originality: w(5, 3),
                cost: w(5, 4),
                retreatability: w(5, 5),
            }),
            Goal::Study => Some(Self {
                originality: w(4, 1),
                retreatability: w(4, 2),
                stability: w(4, 3),
                cost: w(4, 4),
                ..zero
            }),
            Goal::Insure => Some(Self {
                originality: w(3, 1),
                stability: w(3, 2),
                cost: w(3, 3),
                ..zero
            }),
        }
    }

    /// Points of score per unit of cost, on the fixed cost scale; converts points into money.
    pub(super) fn points_per_money(&self, cost_scale: f64) -> f64 {
        self.cost / cost_scale
    }
}
