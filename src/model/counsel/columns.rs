//! The effects of one block of work in every draw: on the price and the cost, and on originality, looks,
//! service, soundness and later choice.
//!
//! A course is one choice in each block; its outcome is computed from the blocks' columns only by products,
//! sums and minima. For that reason most choices can be ruled out without trying every course.

use std::rc::Rc;

use super::column::Column;
use super::per_draw::PerDraw;
use crate::maths::at_most;

/// The effects of one block.
#[derive(Clone)]
pub(super) struct Columns {
    /// Factor on the price: wear, faults and mishaps.
    pub(super) value: PerDraw,
    /// If several faults are damped: the log of wear and faults, the least of them, and mishaps.
    pub(super) damped: Option<[PerDraw; 3]>,
    pub(super) cost: PerDraw,
    pub(super) originality: PerDraw,
    /// How well it displays or serves, whichever the goal asks; 1 if the goal asks for neither.
    pub(super) fitness: PerDraw,
    /// How well it will keep; the least over the blocks counts.
    pub(super) keeps: PerDraw,
    /// An amount added to `keeps`.
    pub(super) extra: PerDraw,
    /// How much later choice is left; the least over the blocks counts.
    pub(super) choice: PerDraw,
    /// The columns of each of several pieces; empty for one.
    pub(super) each: Vec<Rc<Self>>,
}

impl Columns {
    /// A block without any effect.
    pub(super) fn nothing() -> Self {
        Self {
            value: PerDraw::Same(1.0),
            damped: None,
            cost: PerDraw::Same(0.0),
            originality: PerDraw::Same(1.0),
            fitness: PerDraw::Same(1.0),
            keeps: PerDraw::Same(1.0),
            extra: PerDraw::Same(0.0),
            choice: PerDraw::Same(1.0),
            each: Vec::new(),
        }
    }

    /// The columns of one side of a test in draws without lead, and of the other side in draws with lead.
    pub(super) fn either(clear: &Rc<Self>, lead: &Rc<Self>, there: &[bool], n: usize) -> Rc<Self> {
        if Rc::ptr_eq(clear, lead) {
            return Rc::clone(clear);
        }
        let of = |level: fn(&Self) -> &PerDraw| level(clear).either(level(lead), there, n);
        Rc::new(Self {
            value: of(|c| &c.value),
            damped: match (&clear.damped, &lead.damped) {
                (Some(a), Some(b)) => Some(std::array::from_fn(|k| a[k].either(&b[k], there, n))),
                _ => None,
            },
            cost: of(|c| &c.cost),
            originality: of(|c| &c.originality),
            fitness: of(|c| &c.fitness),
            keeps: of(|c| &c.keeps),
            extra: of(|c| &c.extra),
            choice: of(|c| &c.choice),
            each: (clear.each.iter().zip(&lead.each))
                .map(|(clear, lead)| Self::either(clear, lead, there, n))
                .collect(),
        })
    }
}

/// The factors of a block on its price, accumulated one by one.
pub(super) enum PriceFactors {
    /// All faults count in full: their product.
    Whole(PerDraw),
    /// The worst fault counts in full and the others less: the log of the faults, the least of them, and
    /// mishaps.
    Damped([Vec<f64>; 3]),
}

impl PriceFactors {
    pub(super) fn new(damped: bool, n: usize) -> Self {
        if damped {
            Self::Damped([(); 3].map(|()| vec![0.0; n]))
        } else {
            Self::Whole(PerDraw::Same(1.0))
        }
    }

    /// Adds the factor of a fault, or of what work leaves of it; its logarithm if several faults are damped.
    pub(super) fn fault(&mut self, factor: &Column, n: usize) {
        match self {
            Self::Whole(product) => *product = product.times(factor, n),
            Self::Damped([sum, least, _]) => {
                for ((sum, least), ln) in sum.iter_mut().zip(least).zip(factor.iter()) {
                    *sum += ln;
                    *least = at_most(*least, *ln);
                }
            }
        }
    }

    /// Adds the factor of a bad result in the same way.
    pub(super) fn mishap(&mut self, factor: &Column, n: usize) {
        match self {
            Self::Whole(_) => self.fault(factor, n),
            Self::Damped([_, _, mishap]) => {
                for (sum, ln) in mishap.iter_mut().zip(factor.iter()) {
                    *sum += ln;
                }
            }
        }
    }
}
