//! The monetary side of the sample, for a page about worth: the effect of each single treatment on the hammer
//! price in every draw, before fees.

use super::caution_list::cautions_for;
use super::choice::{Rulings, Tested, not_needed};
use super::column::Column;
use super::draws::{Draws, shares};
use super::outcome::{Weigher, sum_of_lots};
use super::search::course_of;
use super::steps_alone::with_companions;
use super::{SEARCH_LOG2, Solved};
use crate::ledger::Ledger;
use crate::record::{Case, Goal, Route};
use crate::report::CautionReport;
use crate::treatment::Treatment;
use crate::value::{BUYERS, Class, Comparison, Fees, Selling};

/// One treatment over the sample, or leaving it alone.
pub struct Plan {
    /// The treatment.
    pub treatment: Treatment,
    /// Hammer price after it, in each draw: of all lots together where several pieces are sold one by one.
    pub hammer: Vec<f64>,
    /// How many lots of each sort there are, and what one fetches; empty where all is one lot.
    lots: Vec<(f64, Column)>,
    /// The cost in each draw.
    pub cost: Vec<f64>,
    /// Why it cannot be advised; empty when it can.
    pub barred: String,
}

impl Plan {
    /// Something of each lot in draw `i`, summed over the lots, where every price is `times` what it is. Each lot has
    /// separate charges.
    #[must_use]
    pub fn over_lots(&self, i: usize, times: f64, of: &dyn Fn(f64) -> f64) -> f64 {
        sum_of_lots(&self.hammer, &self.lots, i, &|h| of(times * h))
    }
}

/// The data for a page about worth.
pub struct WorthDraws {
    /// The hammer price of an undamaged piece, in each draw.
    pub undamaged: Vec<f64>,
    /// A seller's terms at auction, in each draw.
    pub fees: Vec<Fees>,
    /// The terms of every other way of selling.
    pub selling: Selling,
    /// Leaving alone first, then each treatment that has something to do.
    pub plans: Vec<Plan>,
    /// The comparison with sales.
    pub comparison: Comparison,
    /// The likeliest value class.
    pub class: Class,
    /// The ledger with the user's own figures.
    pub ledger: Ledger,
    /// Cautions for the treatments named.
    pub cautions: Vec<CautionReport>,
}

impl WorthDraws {
    /// For the buyers given in the case or the ledger, on the draws of the answer.
    #[must_use]
    pub fn new(solved: &Solved) -> Self {
        Self::on(solved, &solved.draws)
    }

    /// The same on fewer draws.
    #[must_use]
    pub fn quick(case: &Case) -> Self {
        Self::new(&Solved::of(case, SEARCH_LOG2))
    }

    /// The same for buyers in these shares (collector, decorator, user): the undamaged value of `usual`,
    /// which is [`WorthDraws::quick`], with only their view of condition changed.
    #[must_use]
    pub fn seen_by(case: &Case, usual: &Self, shares: [f64; 3]) -> Self {
        let mut only = case.clone();
        for class in Class::ALL {
            for (name, share) in BUYERS.iter().zip(shares) {
                only.market
                    .terms
                    .push((format!("value.mix.{}.{name}", class.code()), share));
            }
        }
        Self::seen_as(&only, usual)
    }

    /// As the buyers of a route see it; `None` where they are those of `usual`, which is
    /// [`WorthDraws::quick`].
    #[must_use]
    pub fn sold_by(case: &Case, usual: &Self, route: Route) -> Option<Self> {
        let only = case.as_sold(route)?;
        Some(Self::seen_as(&only, usual))
    }

    /// The undamaged value of `usual` with how another case's buyers see condition.
    fn seen_as(only: &Case, usual: &Self) -> Self {
        let mut seen = Self::quick(only);
        // What the sales tell rests on how the usual buyers see those pieces.
        for plan in &mut seen.plans {
            let times = |h: &f64, i: usize| {
                h * usual.undamaged[i] / seen.undamaged[i].max(f64::MIN_POSITIVE)
            };
            let scaled = |prices: &[f64]| -> Vec<f64> {
                let each = prices.iter().enumerate();
                each.map(|(i, h)| times(h, i)).collect()
            };
            plan.hammer = scaled(&plan.hammer);
            for (_, lot) in &mut plan.lots {
                *lot = scaled(lot).into();
            }
        }
        seen.undamaged.clone_from(&usual.undamaged);
        seen.comparison = usual.comparison.clone();
        seen
    }

    fn on(solved: &Solved, draws: &Draws) -> Self {
        let (case, ledger, situation) = (solved.case(), solved.ledger(), solved.situation());
        let classes = class_shares(solved);
        let class = Class::ALL
            .into_iter()
            .zip(classes)
            .fold(
                (Class::A2, 0.0),
                |top, (c, p)| {
                    if p > top.1 { (c, p) } else { top }
                },
            )
            .0;
        let mut world = solved.world(draws, &situation, None);
        world.goal = Goal::Sell;
        let weigher = Weigher::new(&world);
        let rulings = Rulings::new(&world);
        // Each on its own, whatever the rules say about it. A test and better keeping change no price.
        let plans: Vec<Plan> = Treatment::WEIGHED
            .into_iter()
            .filter(|t| !matches!(t, Treatment::TestLead | Treatment::Keeping))
            .filter(|t| not_needed(*t, &world).is_none())
            .map(|t| {
                let steps = with_companions(&[t], &world, false);
                let course = course_of(&steps, Tested::AsRecorded, &rulings);
                let out = weigher.weigh(&course, draws.n);
                Plan {
                    treatment: t,
                    hammer: out.hammer.to_vec(),
                    lots: out.lots.clone(),
                    cost: out.cost.to_vec(),
                    barred: course
                        .barred
                        .first()
                        .map(|v| v.reason.clone())
                        .unwrap_or_default(),
                }
            })
            .collect();
        let named: Vec<Treatment> = plans.iter().map(|p| p.treatment).collect();
        Self {
            undamaged: draws.level.to_vec(),
            fees: (0..draws.n).map(|i| draws.fees.at(i)).collect(),
            selling: draws.selling,
            plans,
            comparison: Comparison::new(case, ledger, &classes),
            class,
            cautions: cautions_for(&named, &situation),
            ledger: ledger.clone(),
        }
    }
}

/// The chance of each value class, from the kinds drawn.
fn class_shares(solved: &Solved) -> [f64; 8] {
    let class: Vec<Class> = solved
        .draws
        .kind
        .iter()
        .map(|k| Class::of(*k, solved.early, solved.case.piece.documented))
        .collect();
    shares(&class)
}
