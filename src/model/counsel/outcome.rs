//! What a course comes to in every draw: money, and the attributes a keeper cares about.

use std::rc::Rc;

use super::column::Column;
use super::course::{Course, after};
use super::draws::Draws;
use crate::identity::{ByKind, Family, Kind};
use crate::maths::{at_least, at_most, mean};
use crate::record::{Aim, Dents, Goal, Joint, Route};
use crate::treatment::{LeadStatus, Reversibility, Situation, Treatment};

/// A course over the sample.
pub(super) struct Outcome {
    /// Money after everything: proceeds for a seller, value kept for a keeper, less the cost.
    pub(super) net: Column,
    /// What is compared: money for a seller, else the weighted attributes in 0 to 1.
    pub(super) score: Column,
    pub(super) cost: Column,
    /// Mean hammer-level value, before fees and costs.
    pub(super) value: f64,
    pub(super) originality: f64,
    pub(super) fitness: f64,
    pub(super) stability: f64,
    /// How much later choice it leaves, 0 to 1: the worst step decides.
    pub(super) retreatability: f64,
}

/// Weights of the attributes for a goal; they sum to 1. Rank-order centroids on the goal's order of
/// importance (Barron & Barrett 1996): the j-th of n weighs (1/n) times the sum of 1/k, k from j to n.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Weights {
    originality: f64,
    fitness: f64,
    stability: f64,
    cost: f64,
    retreatability: f64,
}

impl Weights {
    /// The weights of a keeper's aim; `None` for a seller, to whom only money counts: originality is
    /// in the price already. Points of one's own stand in for those of the order, the greatest of
    /// which has 100; what does not count for a goal never does.
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

    /// Points of score for one unit of cost, on the fixed cost scale: what turns points into money.
    pub(super) fn points_per_money(&self, cost_scale: f64) -> f64 {
        self.cost / cost_scale
    }
}

/// The cost at which a course has used up all the cost attribute: half the median undamaged value,
/// but not less than the ledger's least. Fixed, so that adding an option never changes the weights.
pub(super) fn cost_scale(situation: &Situation, median_undamaged: f64) -> f64 {
    let ledger = situation.ledger;
    (ledger.value("attribute.cost.share") * median_undamaged)
        .max(ledger.value("attribute.cost.least"))
        .max(1.0)
}

/// How a piece stands when a course is over, as far as its price and its looks go: what several
/// courses have in common.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
// Four independent facts about the piece at the end.
#[allow(clippy::struct_excessive_bools)]
struct End {
    cleaned: bool,
    replated: bool,
    open_mended: bool,
    grey_mended: bool,
    /// What was done that can go wrong.
    risked: Vec<Treatment>,
}

/// What an end comes to in every draw.
struct EndColumns {
    /// Hammer-level value.
    value: Column,
    /// Proceeds for a seller, value kept for a keeper, before the cost.
    kept: Column,
    /// How well it shows, 0 to 1; none where the goal does not ask.
    shows: Option<Column>,
}

/// What cleaning and replating leave of originality and later choice in every draw, each 0 to 1.
struct LeftColumns {
    originality: Column,
    choice: Column,
}

/// Something in every draw.
#[derive(Clone)]
enum Level {
    /// The same in all.
    Same(f64),
    Drawn(Column),
}

impl Level {
    fn at(&self, i: usize) -> f64 {
        match self {
            Self::Same(x) => *x,
            Self::Drawn(column) => column[i],
        }
    }

    fn mean(&self) -> f64 {
        match self {
            Self::Same(x) => *x,
            Self::Drawn(column) => column.mean(),
        }
    }

    #[allow(clippy::float_cmp)] // only what is exactly the same need not be told apart
    fn is(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Same(a), Self::Same(b)) => a == b,
            (Self::Drawn(a), Self::Drawn(b)) => a.is(b),
            _ => false,
        }
    }

    /// Each draw made into another.
    fn map(&self, of: impl Fn(f64) -> f64) -> Self {
        match self {
            Self::Same(x) => Self::Same(of(*x)),
            Self::Drawn(column) => Self::Drawn(column.iter().map(|x| of(*x)).collect()),
        }
    }
}

/// What one side of a test leads to, or a course without a test.
struct Side {
    value: Column,
    net: Column,
    cost: Column,
    score: Column,
    originality: Level,
    fitness: Level,
    stability: f64,
    choice: Level,
}

/// Weighs courses over one sample. What they share is worked out once: the ends they come to, what
/// the steps cost together, what is left after both, and what cleaning and replating leave.
pub(super) struct Weigher<'a> {
    situation: &'a Situation<'a>,
    draws: &'a Draws,
    goal: Goal,
    weights: Option<Weights>,
    cost_scale: f64,
    doses: Doses,
    ends: Vec<(End, Rc<EndColumns>)>,
    bills: Vec<(Vec<Treatment>, Column)>,
    /// What is kept less what is paid, by both.
    nets: Vec<([Column; 2], Column)>,
    /// By whether it is cleaned, and whether it is replated.
    left: Vec<((bool, bool), Rc<LeftColumns>)>,
}

impl<'a> Weigher<'a> {
    /// For this goal, with these weights, and the cost at which the cost attribute is used up.
    pub(super) fn new(
        situation: &'a Situation<'a>,
        draws: &'a Draws,
        goal: Goal,
        weights: Option<Weights>,
        cost_scale: f64,
    ) -> Self {
        Self {
            situation,
            draws,
            goal,
            weights,
            cost_scale,
            doses: Doses::new(situation),
            ends: Vec::new(),
            bills: Vec::new(),
            nets: Vec::new(),
            left: Vec::new(),
        }
    }

    /// What the piece as it is would fetch in every draw, and what is kept of that.
    pub(super) fn as_it_is(&mut self) -> (Column, Column) {
        let end = self.end(End::default());
        (end.value.clone(), end.kept.clone())
    }

    /// Weighs one course over the sample.
    pub(super) fn weigh(&mut self, course: &Course) -> Outcome {
        let clear = self.side(&course.if_clear, LeadStatus::Absent);
        // Without a test there is but one side.
        let tested = course.if_clear.contains(&Treatment::TestLead);
        let lead = (tested || course.if_lead != course.if_clear)
            .then(|| self.side(&course.if_lead, LeadStatus::Present));
        let Some(lead) = lead else {
            return Outcome {
                value: clear.value.mean(),
                originality: clear.originality.mean(),
                fitness: clear.fitness.mean(),
                stability: clear.stability,
                retreatability: clear.choice.mean(),
                net: clear.net,
                score: clear.score,
                cost: clear.cost,
            };
        };
        let found = &self.draws.lead;
        let either = |of: fn(&Side) -> &Column| -> Column {
            let (clear, lead) = (of(&clear), of(&lead));
            if clear.is(lead) {
                return clear.clone();
            }
            let draws = found.iter().zip(clear.iter()).zip(lead.iter());
            draws
                .map(|((found, clear), lead)| if *found { *lead } else { *clear })
                .collect()
        };
        let share = found.iter().filter(|found| **found).count() as f64 / found.len() as f64;
        let mean = |of: fn(&Side) -> &Level| -> f64 {
            let (clear, lead) = (of(&clear), of(&lead));
            if clear.is(lead) {
                return clear.mean();
            }
            if let (Level::Same(clear), Level::Same(lead)) = (clear, lead) {
                return clear + share * (lead - clear);
            }
            let draws = found.iter().enumerate();
            let sum: f64 = draws
                .map(|(i, found)| if *found { lead.at(i) } else { clear.at(i) })
                .sum();
            sum / found.len() as f64
        };
        Outcome {
            net: either(|s| &s.net),
            score: either(|s| &s.score),
            cost: either(|s| &s.cost),
            value: either(|s| &s.value).mean(),
            originality: mean(|s| &s.originality),
            fitness: mean(|s| &s.fitness),
            stability: clear.stability + share * (lead.stability - clear.stability),
            retreatability: mean(|s| &s.choice),
        }
    }

    /// The side of a test on which this is done, the test having found this about lead.
    fn side(&mut self, done: &[Treatment], lead: LeadStatus) -> Side {
        let has = |t| done.contains(&t);
        let mut end = self.situation.clone();
        if has(Treatment::TestLead) {
            end.lead = lead;
        }
        for step in done {
            end = after(&end, *step);
        }
        let stability = self.stability(done, &end);
        let fit_for_use = self.fitness_for_use(&end);
        let state = End {
            cleaned: end.cleaned && !end.replated,
            replated: end.replated,
            open_mended: has(Treatment::Solder) || has(Treatment::LowMelt),
            grey_mended: has(Treatment::RemoveLead),
            risked: done
                .iter()
                .copied()
                .filter(|t| self.draws.ln_mishap(*t).is_some())
                .collect(),
        };
        let (end, cost) = (self.end(state), self.bill(done));
        let (originality, choice) = self.kept_of(done);
        let fitness = match (self.goal, &end.shows) {
            (Goal::Study, _) => originality.clone(),
            (_, Some(shows)) => Level::Drawn(shows.clone()),
            _ => Level::Same(fit_for_use),
        };
        let net = self.net(&end.kept, &cost);
        let score = match self.weights {
            None => net.clone(),
            Some(w) => {
                let scale = self.cost_scale;
                let paid = Level::Drawn(cost.clone()).map(|c| 1.0 - at_most(c / scale, 1.0));
                weighted_sum(
                    self.draws.n,
                    &[
                        (w.originality, &originality),
                        (w.fitness, &fitness),
                        (w.stability, &Level::Same(stability)),
                        (w.cost, &paid),
                        (w.retreatability, &choice),
                    ],
                )
            }
        };
        Side {
            value: end.value.clone(),
            net,
            cost,
            score,
            originality,
            fitness,
            stability,
            choice,
        }
    }

    /// How well a piece that ends like this will keep, 0 to 1.
    fn stability(&self, done: &[Treatment], end: &Situation) -> f64 {
        let of = |what: &str| {
            let id = format!("attribute.stability.{what}");
            self.situation.ledger.value(&id)
        };
        let base = of(if self.situation.active_corrosion() {
            "corrosion"
        } else {
            joint_at(end)
        });
        let doubling = of("double")
            * if end.replated {
                0.0
            } else {
                self.draws.p_doubles
            };
        let keeping = if done.contains(&Treatment::Keeping) {
            of("keeping")
        } else {
            0.0
        };
        let near_heat = if done.contains(&Treatment::Solder) {
            of("near_heat") * self.situation.near_heat()
        } else {
            0.0
        };
        (base - doubling - near_heat + keeping).clamp(0.0, 1.0)
    }

    /// Fitness for use, 0 to 1: 0 where food is wanted and it is for display only.
    fn fitness_for_use(&self, end: &Situation) -> f64 {
        let banned = self.situation.case.aim.food && !end.display_only().is_empty();
        match joint_at(end) {
            _ if banned => 0.0,
            "open" => 0.0,
            "grey" => self.situation.ledger.value("attribute.use.grey"),
            _ => 1.0,
        }
    }

    /// What these steps leave of originality and of later choice.
    fn kept_of(&mut self, done: &[Treatment]) -> (Level, Level) {
        let (mut originality, mut choice) = (1.0, 1.0_f64);
        for step in done {
            let rev = step.reversibility();
            let dose = self.doses.steady(*step);
            originality *= 1.0 - self.doses.weight[rev as usize] * dose;
            // What cannot be undone takes as much choice as there is of it. Of the rest the code
            // decides, but steps that do nothing to the object leave every choice open.
            choice = choice.min(match rev {
                Reversibility::V0 => 1.0 - dose,
                _ if *step == Treatment::Wash => 1.0,
                _ => self.doses.retreat[rev as usize],
            });
        }
        let has = |t| done.contains(&t);
        let Some(left) = self.left(has(Treatment::Clean), has(Treatment::Replate)) else {
            return (Level::Same(originality), Level::Same(choice));
        };
        #[allow(clippy::float_cmp)] // exactly this takes nothing
        let part = |column: &Column, steady: f64, of: fn(f64, f64) -> f64| {
            let all = Level::Drawn(column.clone());
            if steady == 1.0 {
                all
            } else {
                all.map(|x| of(x, steady))
            }
        };
        (
            part(&left.originality, originality, |x, steady| x * steady),
            // The worst step decides.
            part(&left.choice, choice, at_most),
        )
    }

    /// What is kept less what is paid.
    fn net(&mut self, kept: &Column, paid: &Column) -> Column {
        let known = self
            .nets
            .iter()
            .find(|([k, p], _)| k.is(kept) && p.is(paid));
        if let Some((_, known)) = known {
            return known.clone();
        }
        let net: Column = if paid.iter().all(|paid| *paid == 0.0) {
            kept.clone()
        } else {
            kept.iter().zip(paid.iter()).map(|(k, p)| k - p).collect()
        };
        self.nets.push(([kept.clone(), paid.clone()], net.clone()));
        net
    }

    /// What a cleaning and a replating leave, each by its dose in every draw; none where neither is
    /// done.
    fn left(&mut self, cleaned: bool, replated: bool) -> Option<Rc<LeftColumns>> {
        let of = (cleaned, replated);
        if of == (false, false) {
            return None;
        }
        if let Some((_, known)) = self.left.iter().find(|(o, _)| *o == of) {
            return Some(Rc::clone(known));
        }
        let takes = |step: Treatment, done: bool| {
            let rev = step.reversibility();
            let choice = f64::from(u8::from(done && rev == Reversibility::V0));
            let weight = if done {
                self.doses.weight[rev as usize]
            } else {
                0.0
            };
            (weight, choice)
        };
        let (clean, replate) = (
            takes(Treatment::Clean, cleaned),
            takes(Treatment::Replate, replated),
        );
        let draws = self.draws;
        let n = draws.n;
        let [mut originality, mut choice] = [(); 2].map(|()| Vec::with_capacity(n));
        for (dose, kind) in draws.cleaning_dose.iter().zip(&draws.kind) {
            let cleaning = dose.clamp(0.0, 1.0);
            let replating = self.doses.replate[kind.index()];
            originality.push((1.0 - clean.0 * cleaning) * (1.0 - replate.0 * replating));
            choice.push(at_most(
                1.0 - clean.1 * cleaning,
                1.0 - replate.1 * replating,
            ));
        }
        let left = LeftColumns {
            originality: originality.into(),
            choice: choice.into(),
        };
        let left = Rc::new(left);
        self.left.push((of, Rc::clone(&left)));
        Some(left)
    }

    /// What these steps cost together, in each draw.
    fn bill(&mut self, done: &[Treatment]) -> Column {
        let draws = self.draws;
        let paid: Vec<Treatment> = done
            .iter()
            .copied()
            .filter(|t| draws.cost(*t).is_some())
            .collect();
        if let Some((_, known)) = self.bills.iter().find(|(steps, _)| *steps == paid) {
            return known.clone();
        }
        let mut costs = paid.iter().filter_map(|t| draws.cost(*t));
        let sum = match (costs.next(), costs.next()) {
            (None, _) => vec![0.0; draws.n].into(),
            (Some(only), None) => only.clone(),
            (Some(first), Some(second)) => {
                let mut sum = first.to_vec();
                for column in std::iter::once(second).chain(costs) {
                    sum.iter_mut().zip(column.iter()).for_each(|(s, c)| *s += c);
                }
                sum.into()
            }
        };
        self.bills.push((paid, sum.clone()));
        sum
    }

    fn end(&mut self, end: End) -> Rc<EndColumns> {
        if let Some((_, known)) = self.ends.iter().find(|(e, _)| *e == end) {
            return Rc::clone(known);
        }
        let columns = Rc::new(self.end_columns(&end));
        self.ends.push((end, Rc::clone(&columns)));
        columns
    }

    fn end_columns(&self, end: &End) -> EndColumns {
        let draws = self.draws;
        let floor = self.situation.ledger.value("value.floor").clamp(0.0, 1.0);
        let factors = Factors::at(end, draws);
        let value: Column = (draws.level.iter().enumerate())
            .map(|(i, level)| level * factors.multiplier(i, floor))
            .collect();
        let kept = match (self.goal, draws.route) {
            (Goal::Sell, Route::Auction) => (value.iter().enumerate())
                .map(|(i, v)| draws.fees.at(i).expected(*v))
                .collect(),
            #[allow(clippy::float_cmp)] // exactly this leaves it as it is
            _ if draws.insure_factor == 1.0 => value.clone(),
            _ => value.iter().map(|v| v * draws.insure_factor).collect(),
        };
        let shows = match self.goal {
            Goal::Study | Goal::KeepUse => None,
            _ => Some(self.shows(end)),
        };
        EndColumns { value, kept, shows }
    }

    /// How well a piece shows in each draw: bare metal, tarnish and damage each take from 1. A little
    /// copper on fused plate is what its buyers expect to see.
    fn shows(&self, end: &End) -> Column {
        let (draws, ledger) = (self.draws, self.situation.ledger);
        let bleed_full = ledger.value("attribute.show.bleed_full").max(1e-6);
        let patina = ledger.value("attribute.show.fused_patina");
        let parts = &self.situation.case.parts;
        let dented = parts.iter().filter_map(|p| p.dents).max();
        let damage = if dented.is_some_and(|d| d >= Dents::Moderate) {
            ledger.value("attribute.show.damaged")
        } else {
            1.0
        };
        let tarnish = (draws.ln_tarnish.as_ref()).filter(|_| !end.cleaned && !end.replated);
        let shown = match end {
            End { replated: true, .. } => None,
            End { cleaned: true, .. } => Some(&draws.shown_cleaned),
            _ => Some(&draws.shown),
        };
        (0..draws.n)
            .map(|i| {
                let shown = shown.map_or(0.0, |s| s[i]);
                let bare = if shown <= patina && draws.kind[i].family() == Family::Fused {
                    1.0
                } else {
                    1.0 - at_most(shown / bleed_full, 1.0)
                };
                let tarnish = tarnish.map_or(1.0, |ln| libm::exp(ln[i]));
                bare * tarnish * damage
            })
            .collect()
    }
}

/// How the joints stand at an end, as the ledger's ids say it.
fn joint_at(end: &Situation) -> &'static str {
    match end.joint {
        None | Some(Joint::Sound) => "sound",
        Some(Joint::NeatRepair) => "neat",
        Some(Joint::GreyRepair) => "grey",
        Some(Joint::Open | Joint::Leaking) => "open",
    }
}

/// The sum of levels, each times its weight, in every draw.
fn weighted_sum(n: usize, parts: &[(f64, &Level)]) -> Column {
    let steady = parts.iter().map(|(w, level)| match level {
        Level::Same(x) => w * x,
        Level::Drawn(_) => 0.0,
    });
    let mut sum = vec![steady.sum(); n];
    for (w, level) in parts {
        if let Level::Drawn(column) = level {
            for (sum, x) in sum.iter_mut().zip(column.iter()) {
                *sum += w * x;
            }
        }
    }
    sum.into()
}

/// What makes up the condition multiplier at an end.
struct Factors<'a> {
    wear: &'a Column,
    /// ln of the factors beside wear; those no treatment changes are one here.
    ln: [Option<&'a Column>; 5],
    ln_mishaps: Vec<&'a Column>,
    /// How much each fault counts beside the worst, 0 to 1.
    damping: f64,
}

impl<'a> Factors<'a> {
    fn at(end: &End, draws: &'a Draws) -> Self {
        let mended = |mended: bool, before: &'a Option<Column>| {
            if mended {
                Some(&draws.ln_repaired)
            } else {
                before.as_ref()
            }
        };
        Self {
            wear: match end {
                End { replated: true, .. } => &draws.wear.replated,
                End { cleaned: true, .. } => &draws.wear.cleaned,
                _ => &draws.wear.as_it_is,
            },
            ln: [
                draws.ln_fixed.as_ref(),
                (draws.ln_tarnish.as_ref()).filter(|_| !end.cleaned && !end.replated),
                mended(end.open_mended, &draws.ln_open),
                mended(end.grey_mended, &draws.ln_mended),
                Some(&draws.ln_detail).filter(|_| end.replated),
            ],
            ln_mishaps: (end.risked.iter())
                .filter_map(|t| draws.ln_mishap(*t))
                .collect(),
            damping: draws.damping,
        }
    }

    /// The condition multiplier in one draw.
    fn multiplier(&self, i: usize, floor: f64) -> f64 {
        let wear = self.wear[i];
        let each = self.ln.map(|column| column.map_or(0.0, |ln| ln[i]));
        let mut ln = together(wear, each, self.damping);
        for mishap in &self.ln_mishaps {
            ln += mishap[i];
        }
        at_least(wear * if ln == 0.0 { 1.0 } else { libm::exp(ln) }, floor)
    }
}

/// ln of what the factors beside wear come to. With a damping below 1 the worst of all, wear among
/// them, counts in full and the rest to that power; those no treatment changes are one factor here.
fn together(wear: f64, ln: [f64; 5], damping: f64) -> f64 {
    let sum = ln[0] + ln[1] + ln[2] + ln[3] + ln[4];
    if damping >= 1.0 {
        return sum;
    }
    let ln_wear = libm::log(at_least(wear, f64::MIN_POSITIVE));
    let worst = ln.iter().copied().fold(ln_wear, at_most);
    worst + damping * (ln_wear + sum - worst) - ln_wear
}

/// How much of each treatment's loss a course takes: dose times the weight of its reversibility.
struct Doses {
    weight: [f64; 5],
    retreat: [f64; 5],
    solder: f64,
    low_melt: f64,
    remove_lead: f64,
    replate: ByKind,
}

impl Doses {
    fn new(situation: &Situation) -> Self {
        use Reversibility::{V0, V1, V2, V3, V4};
        let ledger = situation.ledger;
        let codes = [V0, V1, V2, V3, V4].map(Reversibility::code);
        let replate = Kind::ALL.map(|k| {
            let group = match k.family() {
                Family::Fused | Family::Close | Family::French | Family::Solid => "fused",
                Family::ReplatedFused => "replated",
                Family::Electroplate | Family::Outside => "electroplate",
            };
            let dose = ledger.value(&format!("attribute.dose.T14a.{group}"));
            dose.clamp(0.0, 1.0)
        });
        Self {
            weight: codes.map(|c| ledger.value(&format!("attribute.weight.{c}"))),
            retreat: codes.map(|c| {
                if c == "V0" {
                    0.0
                } else {
                    ledger.value(&format!("attribute.retreat.{c}"))
                }
            }),
            solder: ledger.value("attribute.dose.T09"),
            low_melt: ledger.value("attribute.dose.T09b"),
            remove_lead: ledger.value("attribute.dose.T10a"),
            replate,
        }
    }

    /// The dose of a step where it is the same in every draw; 0 for cleaning and replating, whose
    /// doses are not ([`Weigher::left`]).
    fn steady(&self, step: Treatment) -> f64 {
        let dose = match step {
            Treatment::Solder => self.solder,
            Treatment::LowMelt => self.low_melt,
            Treatment::RemoveLead => self.remove_lead,
            _ => 0.0,
        };
        dose.clamp(0.0, 1.0)
    }
}

/// Mean of each of eight equal stretches of a column; the sample's own gauge of its noise.
pub(super) fn stretches(column: &[f64]) -> [f64; 8] {
    let size = (column.len() / 8).max(1);
    std::array::from_fn(|b| mean(column.get(b * size..(b + 1) * size).unwrap_or_default()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn aim(goal: Goal, weights: [Option<f64>; 5]) -> Aim {
        Aim {
            goal: Some(goal),
            weights,
            ..Aim::default()
        }
    }

    #[test]
    fn no_points_leave_the_order_of_the_goal_to_the_bit() {
        for goal in [Goal::KeepShow, Goal::KeepUse, Goal::Study, Goal::Insure] {
            assert_eq!(Weights::of(&aim(goal, [None; 5])), Weights::by_order(goal));
        }
        assert_eq!(Weights::of(&aim(Goal::Sell, [Some(50.0); 5])), None);
    }

    #[test]
    fn points_of_ones_own_stand_in_and_the_weights_still_sum_to_one() {
        let of = |goal, points| Weights::of(&aim(goal, points)).unwrap().each();
        let equal = of(Goal::KeepShow, [Some(100.0); 5]);
        assert!(equal.iter().all(|w| (w - 0.2).abs() < 1e-12));
        // One changed: the others keep their usual points, here 100 for originality.
        let usual = of(Goal::KeepShow, [None; 5]);
        let changed = of(Goal::KeepShow, [None, Some(0.0), None, None, None]);
        assert!(changed[1].abs() < 1e-12 && (changed.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        assert!((changed[0] / changed[2] - usual[0] / usual[2]).abs() < 1e-9);
        // What does not count for a goal never does, and no points at all are no answer.
        assert!(of(Goal::Insure, [Some(100.0); 5])[4].abs() < 1e-12);
        let none = of(Goal::KeepShow, [Some(0.0); 5]);
        assert_eq!(none.map(f64::to_bits), usual.map(f64::to_bits));
    }
}
