//! What a course comes to in every draw: money, and the attributes a keeper cares about.

use super::course::{Course, after};
use super::draws::{Draws, tarnish_of};
use crate::case::{Aim, Dents, Goal, Joint, Route};
use crate::identity::{Family, Kind};
use crate::maths::mean;
use crate::treatment::{LeadStatus, Reversibility, Situation, Treatment};

/// A course over the sample.
pub(super) struct Outcome {
    /// Money after everything: proceeds for a seller, value kept for a keeper, less the cost.
    pub(super) net: Vec<f64>,
    /// What is compared: money for a seller, else the weighted attributes in 0 to 1.
    pub(super) score: Vec<f64>,
    pub(super) cost: Vec<f64>,
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

/// What each side of a test leads to.
// Four independent facts about the piece at the end.
#[allow(clippy::struct_excessive_bools)]
struct Side<'a> {
    done: Vec<(Treatment, Reversibility)>,
    costs: Vec<&'a [f64]>,
    mishaps: Vec<&'a [f64]>,
    cleaned: bool,
    replated: bool,
    open_mended: bool,
    grey_mended: bool,
    stability: f64,
    /// Fitness for use: 0 where food is wanted and it is for display only.
    use_fitness: f64,
}

impl<'a> Side<'a> {
    fn new(done: &[Treatment], situation: &Situation, lead: LeadStatus, draws: &'a Draws) -> Self {
        let has = |t| done.contains(&t);
        let mut end = situation.clone();
        if has(Treatment::TestLead) {
            end.lead = lead;
        }
        for step in done {
            end = after(&end, *step);
        }
        let ledger = situation.ledger;
        let joint = match end.joint {
            None | Some(Joint::Sound) => "sound",
            Some(Joint::NeatRepair) => "neat",
            Some(Joint::GreyRepair) => "grey",
            Some(Joint::Open | Joint::Leaking) => "open",
        };
        let base = ledger.value(&format!(
            "attribute.stability.{}",
            if situation.active_corrosion() {
                "corrosion"
            } else {
                joint
            }
        ));
        let doubles = if end.replated { 0.0 } else { draws.p_doubles };
        let keeping = if has(Treatment::Keeping) {
            ledger.value("attribute.stability.keeping")
        } else {
            0.0
        };
        let near_heat = if has(Treatment::Solder) {
            ledger.value("attribute.stability.near_heat") * situation.near_heat()
        } else {
            0.0
        };
        let doubling = ledger.value("attribute.stability.double") * doubles;
        let stability = (base - doubling - near_heat + keeping).clamp(0.0, 1.0);
        let banned = situation.case.aim.food && !end.display_only().is_empty();
        let use_fitness = match joint {
            _ if banned => 0.0,
            "open" => 0.0,
            "grey" => ledger.value("attribute.use.grey"),
            _ => 1.0,
        };
        Self {
            done: done.iter().map(|t| (*t, t.reversibility())).collect(),
            costs: done
                .iter()
                .map(|t| draws.cost(*t))
                .filter(|c| !c.is_empty())
                .collect(),
            mishaps: done
                .iter()
                .map(|t| draws.ln_mishap(*t))
                .filter(|m| !m.is_empty())
                .collect(),
            cleaned: end.cleaned && !end.replated,
            replated: end.replated,
            open_mended: has(Treatment::Solder) || has(Treatment::LowMelt),
            grey_mended: has(Treatment::RemoveLead),
            stability,
            use_fitness,
        }
    }
}

/// Weighs one course over the sample.
pub(super) fn evaluate(
    course: &Course,
    situation: &Situation,
    draws: &Draws,
    goal: Goal,
    weights: Option<Weights>,
    scale: f64,
) -> Outcome {
    let clear = Side::new(&course.if_clear, situation, LeadStatus::Absent, draws);
    let lead = Side::new(&course.if_lead, situation, LeadStatus::Present, draws);
    let doses = Doses::new(situation);
    let ledger = situation.ledger;
    let floor = ledger.value("value.floor").clamp(0.0, 1.0);
    let bleed_full = ledger.value("attribute.show.bleed_full").max(1e-6);
    let patina = ledger.value("attribute.show.fused_patina");
    let damaged = situation
        .case
        .parts
        .iter()
        .filter_map(|p| p.dents)
        .max()
        .is_some_and(|d| d >= Dents::Moderate);
    let damage = if damaged {
        ledger.value("attribute.show.damaged")
    } else {
        1.0
    };
    let tarnished = tarnish_of(situation.case).is_some();
    let n = draws.n;
    let mut out = Outcome {
        net: Vec::with_capacity(n),
        score: Vec::with_capacity(n),
        cost: Vec::with_capacity(n),
        value: 0.0,
        originality: 0.0,
        fitness: 0.0,
        stability: 0.0,
        retreatability: 0.0,
    };
    for i in 0..n {
        let side = if draws.lead[i] { &lead } else { &clear };
        let value = draws.level[i] * multiplier(side, draws, i, floor);
        let cost: f64 = side.costs.iter().map(|c| c[i]).sum();
        let kept = match (goal, draws.route) {
            (Goal::Sell, Route::Auction) => draws.fees[i].expected(value),
            _ => value * draws.insure_factor,
        };
        let (originality, retreatability) = doses.kept(&side.done, draws, i);
        let shown = if side.replated {
            0.0
        } else if side.cleaned {
            draws.shown_cleaned[i]
        } else {
            draws.shown[i]
        };
        let fitness = match goal {
            Goal::Study => originality,
            Goal::KeepUse => side.use_fitness,
            _ => {
                let patinated = draws.kind[i].family() == Family::Fused && shown <= patina;
                let bare = if patinated {
                    1.0
                } else {
                    1.0 - (shown / bleed_full).min(1.0)
                };
                let tarnish = if tarnished && !side.cleaned && !side.replated {
                    libm::exp(draws.ln_tarnish[i])
                } else {
                    1.0
                };
                bare * tarnish * damage
            }
        };
        let net = kept - cost;
        out.score.push(match weights {
            None => net,
            Some(w) => {
                w.originality * originality
                    + w.fitness * fitness
                    + w.stability * side.stability
                    + w.cost * (1.0 - (cost / scale).min(1.0))
                    + w.retreatability * retreatability
            }
        });
        out.net.push(net);
        out.cost.push(cost);
        out.value += value;
        out.originality += originality;
        out.fitness += fitness;
        out.stability += side.stability;
        out.retreatability += retreatability;
    }
    for sum in [
        &mut out.value,
        &mut out.originality,
        &mut out.fitness,
        &mut out.stability,
        &mut out.retreatability,
    ] {
        *sum /= n as f64;
    }
    out
}

/// ln of what the factors beside wear come to. With a damping below 1 the worst of all, wear among
/// them, counts in full and the rest to that power; those no treatment changes are one factor here.
pub(super) fn together(wear: f64, ln: [f64; 5], damping: f64) -> f64 {
    let sum = ln[0] + ln[1] + ln[2] + ln[3] + ln[4];
    if damping >= 1.0 {
        return sum;
    }
    let ln_wear = libm::log(wear.max(f64::MIN_POSITIVE));
    let worst = ln.iter().copied().fold(ln_wear, f64::min);
    worst + damping * (ln_wear + sum - worst) - ln_wear
}

/// The condition multiplier at the end of a side, in one draw.
fn multiplier(side: &Side, draws: &Draws, i: usize, floor: f64) -> f64 {
    let wear = if side.replated {
        draws.wear_replated[i]
    } else if side.cleaned {
        draws.wear_cleaned[i]
    } else {
        draws.wear[i]
    };
    let when = |holds: bool, column: &[f64]| if holds { column[i] } else { 0.0 };
    let factors = [
        draws.ln_fixed[i],
        when(!side.cleaned && !side.replated, &draws.ln_tarnish),
        if side.open_mended {
            draws.ln_repaired[i]
        } else {
            draws.ln_open[i]
        },
        if side.grey_mended {
            draws.ln_repaired[i]
        } else {
            draws.ln_mended[i]
        },
        when(side.replated, &draws.ln_detail),
    ];
    let mut ln = together(wear, factors, draws.damping);
    for mishap in &side.mishaps {
        ln += mishap[i];
    }
    (wear * if ln == 0.0 { 1.0 } else { libm::exp(ln) }).max(floor)
}

/// How much of each treatment's loss a course takes: dose times the weight of its reversibility.
struct Doses {
    weight: [f64; 5],
    retreat: [f64; 5],
    solder: f64,
    low_melt: f64,
    remove_lead: f64,
    replate: [f64; 12],
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
            ledger.value(&format!("attribute.dose.T14a.{group}"))
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

    fn dose(&self, step: Treatment, draws: &Draws, i: usize) -> f64 {
        match step {
            Treatment::Clean => draws.cleaning_dose[i],
            Treatment::Solder => self.solder,
            Treatment::LowMelt => self.low_melt,
            Treatment::RemoveLead => self.remove_lead,
            Treatment::Replate => self.replate[draws.kind[i].index()],
            _ => 0.0,
        }
    }

    /// Originality kept and later choice left after these steps, each 0 to 1.
    fn kept(&self, done: &[(Treatment, Reversibility)], draws: &Draws, i: usize) -> (f64, f64) {
        let (mut originality, mut retreat) = (1.0, 1.0_f64);
        for (step, rev) in done {
            let rev = *rev;
            let dose = self.dose(*step, draws, i).clamp(0.0, 1.0);
            originality *= 1.0 - self.weight[rev as usize] * dose;
            // Steps that do nothing to the object leave every choice open, whatever their code.
            let left = match rev {
                Reversibility::V0 => 1.0 - dose,
                _ if *step == Treatment::Wash => 1.0,
                _ => self.retreat[rev as usize],
            };
            retreat = retreat.min(left);
        }
        (originality, retreat)
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
