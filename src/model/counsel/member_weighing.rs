//! The pieces of a record of several, each weighed as if it were alone, and then together.

use std::rc::Rc;

use super::choice::not_needed;
use super::column::Column;
use super::columns::Columns;
use super::hammer::Hammer;
use super::member::Member;
use super::outcome::Weigher;
use super::per_draw::PerDraw;
use super::prices::answered;
use super::sample::Sample;
use super::work_block::WorkBlock;
use super::world::{MemberWorld, World};
use crate::ledger::FigureId;
use crate::maths::at_most;
use crate::record::SellAs;
use crate::terms::{PartName, Treatment};
use crate::treatment::Situation;
use crate::value::{Belonging, Unit};

impl<'a> World<'a> {
    /// The same world for a record of several pieces.
    pub(super) fn with_members(mut self, members: &'a [Member], sample: &'a Sample) -> Self {
        let situation: &'a Situation<'a> = self.situation;
        let each = members.iter().zip(&situation.each).enumerate();
        self.members = each
            .map(|(place, (member, situation))| {
                let prices = self.prices.for_one_of_several(&member.case);
                let mut world = World::new(
                    &member.case,
                    self.ledger,
                    sample,
                    &member.draws,
                    situation,
                    &member.faults,
                    prices,
                    self.weights,
                    self.cost_scale,
                );
                world.place = place;
                MemberWorld { member, world }
            })
            .collect();
        self
    }

    /// The same world, with work done only on the parts that are named for it.
    pub(super) fn only_on(mut self, named: &[(Treatment, Vec<PartName>)]) -> Self {
        for member in &mut self.members {
            member.world.only_on = named.to_vec();
        }
        self.only_on = named.to_vec();
        self
    }

    /// What of this work is done to this piece: what has something to do there. A piece on which nothing else
    /// is done needs no test for lead, unless food is wanted from it.
    pub(super) fn needed(&self, done: &[Treatment]) -> Vec<Treatment> {
        let of = done.iter().copied();
        let mut needed: Vec<Treatment> = of.filter(|t| not_needed(*t, self).is_none()).collect();
        let works = |of: &[Treatment]| {
            let quiet = [Treatment::TestLead, Treatment::Keeping, Treatment::Wash];
            of.iter().any(|t| !quiet.contains(t))
        };
        if !self.case.aim.food && works(done) && !works(&needed) {
            needed.retain(|t| *t != Treatment::TestLead);
        }
        needed
    }

    /// What one treatment costs in a block of work by its own price: once for one piece; for several the sum
    /// less what is saved on all but the dearest, or the price that was quoted for the record.
    pub(super) fn own_cost(&self, t: Treatment, done: &[Treatment], n: usize) -> PerDraw {
        if self.members.is_empty() {
            let served = match t {
                Treatment::Keeping => answered(t, self.faults),
                _ => self.served(t, done),
            };
            let column = self.prices.cost(t, &served);
            return column.map_or(PerDraw::Same(0.0), PerDraw::Drawn);
        }
        let takers: Vec<(f64, PerDraw)> = self
            .members
            .iter()
            .filter_map(|m| {
                let needed = m.world.needed(done);
                let count = m.member.numbers.len() as f64;
                needed
                    .contains(&t)
                    .then(|| (count, m.world.own_cost(t, &needed, n)))
            })
            .collect();
        if let Some(quoted) = self.prices.quote(t).filter(|_| !takers.is_empty()) {
            return PerDraw::Drawn(self.prices.of_quote(quoted));
        }
        let mut sum = PerDraw::Same(0.0);
        let mut dearest = PerDraw::Same(0.0);
        for (count, cost) in &takers {
            sum = sum.and(cost, n, &|a, b| a + count * b);
            dearest = dearest.and(cost, n, &f64::max);
        }
        let saved = self
            .ledger
            .value(FigureId::COST_MORE_PIECES)
            .clamp(0.0, 1.0);
        sum.and(&dearest, n, &|sum, most| {
            crate::value::less_saved(sum, most, saved)
        })
    }

    /// What one treatment costs in a course in every draw; `None` when it is free.
    pub(super) fn drawn_cost(&self, t: Treatment, done: &[Treatment]) -> Option<Column> {
        if self.members.is_empty() {
            return self.prices.cost(t, &self.served(t, done));
        }
        match self.own_cost(t, done, self.draws.n) {
            PerDraw::Drawn(column) => Some(column),
            PerDraw::Same(_) => None,
        }
    }

    /// The columns of a block of work over all members: costs together, attributes by their shares, the
    /// price as the search gauges it, and the columns of each.
    pub(super) fn of_members(&self, block: WorkBlock, done: &[Treatment], n: usize) -> Columns {
        let each: Vec<Rc<Columns>> = self
            .members
            .iter()
            .map(|m| m.world.columns(block, &m.world.needed(done), n))
            .collect();
        let mut all = Columns::nothing();
        let mut cost = PerDraw::Same(0.0);
        let own = done
            .iter()
            .filter(|t| WorkBlock::of_treatment(**t) == Some(block));
        for t in own {
            cost = cost.and(&self.own_cost(*t, done, n), n, &|a, b| a + b);
        }
        if done.contains(&Treatment::Tinning) && self.case.aim.food {
            // Each new lining has its own release test.
            let test = self.own_cost(Treatment::TestLead, &[Treatment::TestLead], n);
            cost = cost.and(&test, n, &|a, b| a + b);
        }
        all.cost = cost;
        let by_share = |of: fn(&Columns) -> &PerDraw| {
            let mut sum = PerDraw::Same(0.0);
            for (m, columns) in self.members.iter().zip(&each) {
                sum = sum.and(of(columns), n, &|a, b| a + m.member.share * b);
            }
            sum
        };
        let least = |of: fn(&Columns) -> &PerDraw| {
            let mut least = PerDraw::Same(1.0);
            for columns in &each {
                least = least.and(of(columns), n, &at_most);
            }
            least
        };
        all.value = by_share(|c| &c.value);
        if each.iter().all(|c| c.damped.is_some()) {
            let of = |k: usize| {
                let mut sum = PerDraw::Same(0.0);
                for (m, columns) in self.members.iter().zip(&each) {
                    if let Some(damped) = &columns.damped {
                        sum = sum.and(&damped[k], n, &|a, b| a + m.member.share * b);
                    }
                }
                sum
            };
            all.damped = Some([of(0), of(1), of(2)]);
        }
        all.originality = by_share(|c| &c.originality);
        all.fitness = by_share(|c| &c.fitness);
        all.extra = by_share(|c| &c.extra);
        all.keeps = least(|c| &c.keeps);
        all.choice = least(|c| &c.choice);
        all.each = each;
        all
    }

    /// How the pieces belong together in draw `i`.
    pub(super) fn belonging(&self, i: usize) -> Belonging {
        let premium = self.draws.premium.as_ref().map_or(1.0, |column| column[i]);
        Belonging::of(&self.case.pieces, premium, self.ledger)
    }
}

impl Weigher<'_> {
    /// What condition leaves of each member in every draw, with this done: never below `floor`.
    pub(super) fn member_multipliers(
        &self,
        blocks: &[Rc<Columns>],
        n: usize,
        floor: f64,
    ) -> Vec<Vec<f64>> {
        (0..self.world.members.len())
            .map(|k| {
                let of: Vec<Rc<Columns>> = blocks
                    .iter()
                    .filter_map(|b| b.each.get(k).map(Rc::clone))
                    .collect();
                let mut multiplier = self.multiplier(&of, n);
                for m in &mut multiplier {
                    *m = m.max(floor);
                }
                multiplier
            })
            .collect()
    }

    /// What several pieces fetch, as one lot or each by itself.
    pub(super) fn hammer_of_several(
        &self,
        multipliers: &[Vec<f64>],
        sell: SellAs,
        n: usize,
    ) -> Hammer {
        let world = self.world;
        let level = &world.draws.level;
        let mut units: Vec<Unit> = world.members.iter().map(|m| m.member.unit(1.0)).collect();
        let apart = sell == SellAs::Apart;
        let mut hammer = Hammer {
            all: vec![0.0; n],
            lots: Vec::new(),
        };
        if apart {
            hammer.lots = units
                .iter()
                .map(|unit| (unit.count as f64, vec![0.0; n]))
                .collect();
        }
        for i in 0..n {
            for (unit, multiplier) in units.iter_mut().zip(multipliers) {
                unit.multiplier = multiplier[i];
            }
            let belonging = world.belonging(i);
            if apart {
                for (unit, (count, lot)) in units.iter().zip(&mut hammer.lots) {
                    lot[i] = level[i] * belonging.alone(unit);
                    hammer.all[i] += *count * lot[i];
                }
            } else {
                hammer.all[i] = level[i] * belonging.lot(&units);
            }
        }
        hammer
    }
}
