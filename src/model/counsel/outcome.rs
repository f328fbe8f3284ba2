//! The outcome of a course in every draw: money, and the attributes that matter to a keeper.

use std::cell::RefCell;
use std::rc::Rc;

use super::column::Column;
use super::columns::Columns;
use super::course::Course;
use super::hammer::Hammer;
use super::per_draw::PerDraw;
use super::weights::Weights;
use super::work_block::WorkBlock;
use super::world::World;
use crate::ledger::{FigureId, Ledger};
use crate::maths::{at_least, at_most, mean};
use crate::record::{Goal, Interior, Joint, PartName, SellAs};
use crate::terms::TreatmentSet;
use crate::treatment::{LeadStatus, Situation, Treatment};

/// A course over the sample.
pub(super) struct CourseOutcome {
    /// Money after everything: proceeds for a seller or value kept for a keeper, minus the cost.
    pub(super) net: Column,
    /// The basis for comparison: money for a seller, otherwise the weighted attributes. A keeper's score
    /// falls below 0 if the cost is many times the scale.
    pub(super) score: Column,
    pub(super) cost: Column,
    /// Hammer-level value, before fees and costs.
    pub(super) hammer: Column,
    /// Where it goes in several lots, how many there are of each sort and what one fetches; else empty.
    pub(super) lots: Vec<(f64, Column)>,
    pub(super) originality: f64,
    pub(super) fitness: f64,
    pub(super) stability: f64,
    /// How much later choice it leaves, 0 to 1; the worst step decides.
    pub(super) retreatability: f64,
}

impl CourseOutcome {
    /// Something of each lot in every draw, summed over the lots: what is kept of it, or could be paid.
    pub(super) fn over_lots(&self, of: &dyn Fn(usize, f64) -> f64) -> Vec<f64> {
        let draws = 0..self.hammer.len();
        let in_draw = |i| sum_of_lots(&self.hammer, &self.lots, i, &|h| of(i, h));
        draws.map(in_draw).collect()
    }
}

/// Something of each lot in draw `i`, summed over the lots; of all together where there are none.
pub(super) fn sum_of_lots(
    hammer: &[f64],
    lots: &[(f64, Column)],
    i: usize,
    of: &dyn Fn(f64) -> f64,
) -> f64 {
    if lots.is_empty() {
        return of(hammer[i]);
    }
    lots.iter().map(|(count, lot)| count * of(lot[i])).sum()
}

/// The cost at which a course has used up the cost attribute: half the median undamaged value, but at least
/// the ledger's minimum. It is fixed, so that adding an option never changes the weights.
pub(super) fn cost_scale(ledger: &Ledger, median_undamaged: f64) -> f64 {
    (ledger.value(FigureId::ATTRIBUTE_COST_SHARE) * median_undamaged)
        .max(ledger.value(FigureId::ATTRIBUTE_COST_LEAST))
        .max(1.0)
}

/// Whether a set of steps is barred under a status of lead.
type Banned = ((TreatmentSet, LeadStatus), bool);

/// Courses weighed on one sample, with shared results cached.
pub(super) struct Weigher<'a> {
    pub(super) world: &'a World<'a>,
    merged: RefCell<Vec<Merged>>,
    banned: RefCell<Vec<Banned>>,
}

type Merged = ((WorkBlock, [TreatmentSet; 2], usize), Rc<Columns>);

impl<'a> Weigher<'a> {
    pub(super) fn new(world: &'a World<'a>) -> Self {
        Self {
            world,
            merged: RefCell::default(),
            banned: RefCell::default(),
        }
    }

    /// The columns of a block, choosing in each draw the side of the test that applies.
    pub(super) fn merged(
        &self,
        block: WorkBlock,
        sides: &[Vec<Treatment>; 2],
        n: usize,
    ) -> Rc<Columns> {
        let world = self.world;
        if sides[0] == sides[1] {
            return world.columns(block, &sides[0], n);
        }
        let key = (block, [0, 1].map(|side| TreatmentSet::of(&sides[side])), n);
        if let Some((_, known)) = self.merged.borrow().iter().find(|(k, _)| *k == key) {
            return Rc::clone(known);
        }
        let [clear, lead] = [0, 1].map(|side| world.columns(block, &sides[side], n));
        let columns = Columns::either(&clear, &lead, &world.draws.lead, n);
        self.merged.borrow_mut().push((key, Rc::clone(&columns)));
        columns
    }

    /// The value of the piece as it is in every draw, what is kept of it, and what a seller keeps.
    pub(super) fn as_it_is(&self) -> [Column; 3] {
        let n = self.world.draws.n;
        let none: Vec<Rc<Columns>> = WorkBlock::ALL
            .iter()
            .map(|b| self.world.columns(*b, &[], n))
            .collect();
        let value = self.value(&none, n);
        let kept: Column = self.kept(&value).into();
        let sold = match self.world.goal {
            Goal::Sell => kept.clone(),
            _ => self.sold(&value).into(),
        };
        [value.all.into(), kept, sold]
    }

    /// Hammer-level value: the level of the sale times the condition, never below the floor.
    pub(super) fn value(&self, blocks: &[Rc<Columns>], n: usize) -> Hammer {
        let draws = self.world.draws;
        let floor = self.floor();
        if !self.world.members.is_empty() {
            let multipliers = self.member_multipliers(blocks, n, floor);
            let sell = self.world.case.pieces.sell.unwrap_or(SellAs::Together);
            return self.hammer_of_several(&multipliers, sell, n);
        }
        let multiplier = self.multiplier(blocks, n);
        let each = multiplier.iter().zip(draws.level.iter());
        Hammer {
            all: each.map(|(m, level)| level * at_least(*m, floor)).collect(),
            lots: Vec::new(),
        }
    }

    /// The least that condition leaves of a piece.
    fn floor(&self) -> f64 {
        let floor = self.world.ledger.value(FigureId::VALUE_FLOOR);
        floor.clamp(0.0, 1.0)
    }

    /// What condition leaves of each of several pieces in every draw, once a course is done.
    pub(super) fn members_after(&self, course: &Course, n: usize) -> Vec<Vec<f64>> {
        self.member_multipliers(&self.blocks(course, n), n, self.floor())
    }

    /// What condition leaves of one piece in every draw.
    pub(super) fn multiplier(&self, blocks: &[Rc<Columns>], n: usize) -> Vec<f64> {
        let draws = self.world.draws;
        let mut multiplier = vec![1.0; n];
        if draws.damping < 1.0 {
            let [mut sum, mut least, mut mishap] = [(); 3].map(|()| vec![0.0; n]);
            for columns in blocks {
                if let Some([s, l, m]) = &columns.damped {
                    s.fold_into(&mut sum, |a, b| a + b);
                    l.fold_into(&mut least, at_most);
                    m.fold_into(&mut mishap, |a, b| a + b);
                }
            }
            for (i, m) in multiplier.iter_mut().enumerate() {
                // The worst fault counts in full, the others to the power of the damping.
                let ln = least[i] + draws.damping * (sum[i] - least[i]) + mishap[i];
                *m = libm::exp(ln);
            }
        } else {
            for columns in blocks {
                columns.value.multiply_into(&mut multiplier);
            }
        }
        multiplier
    }

    /// Proceeds for a seller, value kept for anybody else.
    pub(super) fn kept(&self, value: &Hammer) -> Vec<f64> {
        if self.world.goal == Goal::Sell {
            return self.sold(value);
        }
        let factor = self.world.draws.insure_factor;
        value.all.iter().map(|v| v * factor).collect()
    }

    /// What a seller keeps, lot by lot.
    pub(super) fn sold(&self, value: &Hammer) -> Vec<f64> {
        let draws = self.world.draws;
        if value.lots.is_empty() {
            let each = value.all.iter().enumerate();
            return each.map(|(i, v)| draws.kept(i, *v)).collect();
        }
        let mut sum = vec![0.0; value.all.len()];
        for (count, lot) in &value.lots {
            for (i, (sum, v)) in sum.iter_mut().zip(lot).enumerate() {
                *sum += count * draws.kept(i, *v);
            }
        }
        sum
    }

    /// What several treatments cost less together than each by its own price, as quoted; negative where
    /// together is dearer.
    fn rebate(&self, done: &[Treatment]) -> Option<PerDraw> {
        let n = self.world.draws.n;
        let prices = &self.world.prices;
        let mut rebate = PerDraw::Same(0.0);
        let mut any = false;
        let mut covered: Vec<Treatment> = Vec::new();
        for quoted in prices.bundles() {
            let taken = quoted.treatments.iter().any(|t| covered.contains(t));
            if taken || !quoted.treatments.iter().all(|t| done.contains(t)) {
                continue;
            }
            let mut members = quoted.treatments.clone();
            if quoted.with_cleaning {
                let cleaning = [Treatment::Wash, Treatment::Clean, Treatment::Foam];
                let with = cleaning.into_iter().filter(|t| done.contains(t));
                members.extend(with);
            }
            for t in &members {
                let own = self.world.own_cost(*t, done, n);
                rebate = rebate.with(&own, n, |a, b| a + b);
            }
            let together = PerDraw::Drawn(prices.of_quote(quoted));
            rebate = rebate.with(&together, n, |a, b| a - b);
            covered.extend(members);
            any = true;
        }
        any.then_some(rebate)
    }

    /// Whether food must not touch the piece after these steps, with this status of lead.
    fn is_banned(&self, done: &[Treatment], lead: LeadStatus) -> bool {
        let world = self.world;
        if !world.case.aim.food {
            return false;
        }
        let key = (TreatmentSet::of(done), lead);
        if let Some((_, known)) = self.banned.borrow().iter().find(|(k, _)| *k == key) {
            return *known;
        }
        let banned = !triggers_after(world.situation, done, lead).is_empty();
        self.banned.borrow_mut().push((key, banned));
        banned
    }

    /// Weighs one course on the first `n` draws.
    pub(super) fn weigh(&self, course: &Course, n: usize) -> CourseOutcome {
        let blocks = self.blocks(course, n);
        let cost = self.cost(course, &blocks, n);
        let value = self.value(&blocks, n);
        let net: Column = self.net(&value, &cost).into();
        let attributes = self.attributes(course, &blocks, n);
        let score = match self.world.weights {
            None => net.clone(),
            Some(weights) => self.weighted(&weights, &attributes, &cost).into(),
        };
        let [originality, fitness, stability, choice] = &attributes;
        CourseOutcome {
            hammer: value.all.into(),
            lots: (value.lots.into_iter())
                .map(|(count, lot)| (count, lot.into()))
                .collect(),
            originality: mean(originality),
            fitness: mean(fitness),
            stability: mean(stability),
            retreatability: mean(choice),
            net,
            score,
            cost: cost.into(),
        }
    }

    /// The score of one course on the first `n` draws, without its other outcomes.
    pub(super) fn score(&self, course: &Course, n: usize) -> Vec<f64> {
        let blocks = self.blocks(course, n);
        let cost = self.cost(course, &blocks, n);
        match self.world.weights {
            None => self.net(&self.value(&blocks, n), &cost),
            Some(weights) => self.weighted(&weights, &self.attributes(course, &blocks, n), &cost),
        }
    }

    /// The columns of a course's choices, and of a test that comes first.
    fn blocks(&self, course: &Course, n: usize) -> Vec<Rc<Columns>> {
        let mut blocks: Vec<Rc<Columns>> = course
            .choices
            .iter()
            .map(|c| self.merged(c.block, &c.sides, n))
            .collect();
        if course.steps.contains(&Treatment::TestLead) {
            // Of several pieces only those that are worked on are tested.
            let tested = if self.world.members.is_empty() {
                &[Treatment::TestLead][..]
            } else {
                &course.steps
            };
            blocks.push(self.world.columns(WorkBlock::Test, tested, n));
        }
        blocks
    }

    /// What a course costs in every draw.
    fn cost(&self, course: &Course, blocks: &[Rc<Columns>], n: usize) -> Vec<f64> {
        let world = self.world;
        let mut cost = vec![0.0; n];
        for columns in blocks {
            columns.cost.add_into(&mut cost);
        }
        if world.prices.bundles().next().is_some() {
            for (side, (done, _)) in course.sides(world.situation.lead).iter().enumerate() {
                let Some(rebate) = self.rebate(done) else {
                    continue;
                };
                let on_side = |i: usize| {
                    course.if_clear == course.if_lead && side == 0
                        || course.if_clear != course.if_lead && world.draws.lead[i] == (side == 1)
                };
                for (i, cost) in cost.iter_mut().enumerate() {
                    if on_side(i) {
                        *cost = at_least(*cost - rebate.at(i), 0.0);
                    }
                }
            }
        }
        cost
    }

    /// What is kept of a value once the work is paid.
    fn net(&self, value: &Hammer, cost: &[f64]) -> Vec<f64> {
        let kept = self.kept(value);
        kept.iter().zip(cost).map(|(k, c)| k - c).collect()
    }

    /// A keeper's score: the attributes by their weights.
    fn weighted(
        &self,
        weights: &Weights,
        [originality, fitness, stability, choice]: &[Vec<f64>; 4],
        cost: &[f64],
    ) -> Vec<f64> {
        let [wo, wf, ws, wc, wr] = weights.each();
        let each = originality.iter().zip(fitness).zip(stability);
        each.zip(choice.iter().zip(cost))
            .map(|(((o, f), s), (r, c))| {
                wo * o + wf * f + ws * s + wc * (1.0 - c / self.world.cost_scale) + wr * r
            })
            .collect()
    }

    /// Each attribute in every draw, in the order of [`Aim::WEIGHED`].
    pub(super) fn each_attribute(&self, course: &Course, n: usize) -> [Vec<f64>; 5] {
        let blocks = self.blocks(course, n);
        let cost = self.cost(course, &blocks, n);
        let [originality, fitness, stability, choice] = self.attributes(course, &blocks, n);
        let scale = self.world.cost_scale;
        let cost = cost.iter().map(|c| 1.0 - c / scale).collect();
        [originality, fitness, stability, cost, choice]
    }

    /// Originality, fitness, stability and later choice in every draw.
    fn attributes(&self, course: &Course, blocks: &[Rc<Columns>], n: usize) -> [Vec<f64>; 4] {
        let world = self.world;
        let [mut originality, mut fitness, mut keeps, mut choice] = [(); 4].map(|()| vec![1.0; n]);
        let mut extra = vec![0.0; n];
        for columns in blocks {
            columns.originality.multiply_into(&mut originality);
            columns.fitness.multiply_into(&mut fitness);
            columns.keeps.fold_into(&mut keeps, at_most);
            columns.extra.add_into(&mut extra);
            columns.choice.fold_into(&mut choice, at_most);
        }
        for (k, e) in keeps.iter_mut().zip(&extra) {
            *k = (*k + e).clamp(0.0, 1.0);
        }
        match world.goal {
            Goal::Study => fitness.clone_from(&originality),
            Goal::KeepUse => self.food(course, &mut fitness),
            _ => {}
        }
        [originality, fitness, keeps, choice]
    }

    /// If the aim includes food, a display-only piece serves nothing, and a new tin lining serves if it
    /// passes its test.
    fn food(&self, course: &Course, fitness: &mut [f64]) {
        let world = self.world;
        if !world.case.aim.food {
            return;
        }
        let passes = world.sample.draw(
            world.ledger.figure(FigureId::ATTRIBUTE_USE_TIN_PASSES),
            super::sample::Dim::Tin,
        );
        let factor = course.sides(world.situation.lead).map(|(done, lead)| {
            if self.is_banned(done, lead) {
                None
            } else {
                Some(done.contains(&Treatment::Tinning))
            }
        });
        for (i, f) in fitness.iter_mut().enumerate() {
            *f *= match factor[usize::from(world.draws.lead[i])] {
                None => 0.0,
                Some(true) => passes[i].clamp(0.0, 1.0),
                Some(false) => 1.0,
            };
        }
    }
}

impl World<'_> {
    /// The faults that a treatment serves in a course: those of which it is the first answer; for surface
    /// work, all that it answers.
    pub(super) fn served(&self, t: Treatment, done: &[Treatment]) -> Vec<&crate::treatment::Found> {
        let of_surface = WorkBlock::of_treatment(t) == Some(WorkBlock::Surface);
        super::prices::answered(t, self.faults)
            .into_iter()
            .filter(|f| of_surface || crate::treatment::answer_to(f.fault, done) == Some(t))
            .collect()
    }
}

/// The display-only triggers that apply after these steps, with this status of lead.
pub(super) fn triggers_after(
    situation: &Situation,
    done: &[Treatment],
    lead: LeadStatus,
) -> Vec<(u8, &'static str)> {
    use Treatment as T;
    let has = |t| done.contains(&t);
    if !situation.each.is_empty() {
        return situation.triggers_of_each(&|piece| triggers_after(piece, done, lead));
    }
    let mut case = situation.case.clone();
    for p in &mut case.parts {
        if has(T::Solder) || has(T::LowMelt) {
            p.mend_joints(&[Joint::Open, Joint::Leaking]);
        }
        if has(T::RemoveLead) {
            p.mend_joints(&[Joint::GreyRepair]);
        }
        if has(T::Tinning) && p.name == PartName::Interior {
            p.interior = Some(Interior::Tinned);
            p.bleed = None;
        }
    }
    let mut end = Situation {
        case: &case,
        joint: Situation::stated_joint(&case),
        lead,
        replated: situation.replated || has(T::Replate) || has(T::Overplate),
        low_melt: situation.low_melt || has(T::LowMelt),
        ..situation.clone()
    };
    // The new lining gets a separate release test; it can pass if the seams are free of lead.
    end.lining_tested |= has(T::Tinning) && end.lead_for(T::Tinning) == LeadStatus::Absent;
    end.triggers()
}

/// Mean of each of eight equal stretches of a column, from which the sample's noise is estimated.
pub(super) fn stretches(column: &[f64]) -> [f64; 8] {
    let size = (column.len() / 8).max(1);
    std::array::from_fn(|b| mean(column.get(b * size..(b + 1) * size).unwrap_or_default()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Aim;

    fn aim(goal: Goal, weights: [Option<f64>; 5]) -> Aim {
        Aim {
            goal: Some(goal),
            weights,
            ..Aim::default()
        }
    }

    #[test]
    fn without_points_the_goals_order_applies_to_the_bit() {
        for goal in [Goal::KeepShow, Goal::KeepUse, Goal::Study, Goal::Insure] {
            assert_eq!(Weights::of(&aim(goal, [None; 5])), Weights::by_order(goal));
        }
        assert_eq!(Weights::of(&aim(Goal::Sell, [Some(50.0); 5])), None);
    }

    #[test]
    fn a_users_points_replace_the_usual_ones_and_weights_sum_to_one() {
        let of = |goal, points| Weights::of(&aim(goal, points)).unwrap().each();
        let equal = of(Goal::KeepShow, [Some(100.0); 5]);
        assert!(equal.iter().all(|w| (w - 0.2).abs() < 1e-12));
        // One changed: the others keep their usual points, here 100 for originality.
        let usual = of(Goal::KeepShow, [None; 5]);
        let changed = of(Goal::KeepShow, [None, Some(0.0), None, None, None]);
        assert!(changed[1].abs() < 1e-12 && (changed.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        assert!((changed[0] / changed[2] - usual[0] / usual[2]).abs() < 1e-9);
        // A criterion that does not count for a goal never does, and all-zero weights are ignored.
        assert!(of(Goal::Insure, [Some(100.0); 5])[4].abs() < 1e-12);
        let none = of(Goal::KeepShow, [Some(0.0); 5]);
        assert_eq!(none.map(f64::to_bits), usual.map(f64::to_bits));
    }
}
