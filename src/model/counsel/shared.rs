//! The draws behind an answer, exposed for the pages that go into more detail. Nothing here is part of the
//! answer itself.

use crate::ledger::FigureId;
use std::rc::Rc;

use super::choice::Rulings;
use super::column::Column;
use super::course::Course;
use super::draws::FactorScale;
use super::outcome::Weigher;
use super::search::course_of;
use super::weights::Weights;
use super::{Solved, sentences};
use crate::identity::Kind;
use crate::record::Case;
use crate::record::ledger_of;
use crate::terms::TreatmentSet;
use crate::treatment::Treatment;

/// A case weighed, draw by draw.
#[derive(Clone, Debug)]
pub struct Shared {
    /// Every course weighed; leaving it alone comes first.
    pub courses: Vec<SharedCourse>,
    /// Index of the advised course.
    pub chosen: usize,
    /// Differences of score below this are noise.
    pub noise: f64,
    /// Money per unit of score: 1 for a seller, from the cost attribute for a keeper; `None` if cost does not
    /// count.
    pub money_per_score: Option<f64>,
    /// Weights of the attributes, in the order of [`crate::record::Aim::WEIGHED`]; `None` for a seller.
    pub weights: Option<[f64; 5]>,
    /// The weights from the goal's order alone.
    pub usual_weights: Option<[f64; 5]>,
    /// The worth of knowing the kind if the rules were then applied again, and the courses that this would
    /// allow and that are barred now; 0 and empty unless requested.
    pub rules_asked_again: (f64, Vec<String>),
    /// Every treatment in the names of these courses.
    pub named: TreatmentSet,
    /// Each draw's kind, as its index among all kinds.
    pub kind: Vec<usize>,
    /// Whether there is lead, in each draw.
    pub lead: Vec<bool>,
    /// The value of an undamaged piece.
    pub undamaged: Vec<f64>,
    /// Bare share, weighted by how visible each part is.
    pub shown: Vec<f64>,
    /// The cost of the work in question.
    pub cost: Vec<f64>,
    /// The treatments that go wrong, one bit each.
    pub mishap: Vec<usize>,
    /// The luck of the sale as a factor.
    pub luck: Vec<f64>,
}

/// One course over the draws.
#[derive(Clone, Debug)]
pub struct SharedCourse {
    /// In a few words.
    pub name: String,
    /// The steps that distinguish it from others.
    pub group: Vec<Treatment>,
    /// Whether no rule bars it.
    pub allowed: bool,
    /// Whether it begins with the test for lead.
    pub tests: bool,
    /// Whether anything is done to the piece itself.
    pub touches: bool,
    /// The score in each draw.
    pub score: Vec<f64>,
    /// The cost in each draw.
    pub cost: Vec<f64>,
    /// Each attribute in each draw, in the order of [`crate::record::Aim::WEIGHED`]; empty unless requested.
    pub attributes: Vec<Vec<f64>>,
}

/// Weighs a case on 2^`log2_points` points of a scramble, counted from the usual one; includes the attributes
/// if requested.
#[must_use]
pub fn shared(case: &Case, log2_points: u32, scramble: u32, attributes: bool) -> Shared {
    let mut ledger = ledger_of(case);
    if scramble > 0 {
        let seed = ledger.value(FigureId::COUNSEL_SEED) + f64::from(scramble);
        // This fails only if the seed is not a number; the usual seed then applies.
        let _ = ledger
            .to_mut()
            .override_with("counsel.seed", seed, "another scramble");
    }
    let (case, ledger) = (Rc::new(case.clone()), Rc::new(ledger));
    let solved = Solved::new(&case, &ledger, log2_points);
    let situation = solved.situation();
    let draws = &solved.draws;
    let weights = Weights::of(&case.aim);
    let world = solved.world(draws, &situation, weights);
    let weigher = Weigher::new(&world);
    let columns = |course: &Course| -> Vec<Vec<f64>> {
        if attributes {
            weigher.each_attribute(course, draws.n).to_vec()
        } else {
            Vec::new()
        }
    };
    // Leaving alone first, then the courses shown to the user.
    let mut places = vec![0];
    places.extend(solved.shown.iter().copied().filter(|i| *i != 0));
    let courses = places
        .iter()
        .map(|i| (&solved.courses[*i], &solved.outcomes[*i]))
        .map(|(c, o)| SharedCourse {
            name: sentences::course_name(c),
            group: c.group(),
            allowed: c.can_be_advised(),
            tests: c.steps.first() == Some(&Treatment::TestLead),
            touches: c.touches(),
            score: o.score.to_vec(),
            cost: o.cost.to_vec(),
            attributes: columns(c),
        })
        .collect();
    let in_question = places
        .iter()
        .map(|i| TreatmentSet::of(&solved.courses[*i].steps));
    let (worth, opens, opened) = if attributes {
        solved.rules_asked_again()
    } else {
        (0.0, Vec::new(), TreatmentSet::default())
    };
    let asked = solved.course_in_question();
    let mut mishap = vec![0; draws.n];
    for (bit, t) in [
        Treatment::Clean,
        Treatment::Solder,
        Treatment::RemoveLead,
        Treatment::Replate,
    ]
    .into_iter()
    .enumerate()
    {
        let Some(column) = world.mishap(t, FactorScale::Factor) else {
            continue;
        };
        for (m, kept) in mishap.iter_mut().zip(column.iter()) {
            *m |= usize::from(*kept < 1.0) << bit;
        }
    }
    Shared {
        chosen: places
            .iter()
            .position(|i| *i == solved.advice.chosen)
            .unwrap_or(0),
        noise: solved.advice.noise,
        money_per_score: match weights {
            None => Some(1.0),
            Some(_) => Some(solved.money_of(1.0)).filter(|m| *m > 0.0),
        },
        weights: weights.map(|w| w.each()),
        usual_weights: Weights::by_order(solved.goal).map(|w| w.each()),
        rules_asked_again: (worth, opens),
        named: in_question.fold(opened, TreatmentSet::or),
        kind: draws.kind.iter().map(|k| k.index()).collect(),
        lead: draws.lead.clone(),
        undamaged: draws.undamaged.to_vec(),
        shown: draws.shown.to_vec(),
        cost: asked.map_or_else(Vec::new, |i| solved.outcomes[i].cost.to_vec()),
        mishap,
        luck: draws
            .level
            .iter()
            .zip(draws.undamaged.iter())
            .map(|(l, v)| if *v > 0.0 { l / v } else { 1.0 })
            .collect(),
        courses,
    }
}

impl Shared {
    /// Number of draws.
    #[must_use]
    pub fn len(&self) -> usize {
        self.kind.len()
    }

    /// Always false: there is at least one draw.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.kind.is_empty()
    }
}

/// Odds used for certainty.
const CERTAIN: f64 = 1e12;

impl Solved {
    /// The worth of knowing the kind when a rule that depends on the kind is applied again for each kind, and
    /// the courses that are best for some kind but barred now. A rule that then bars the best course reduces
    /// the worth, so the worth is floored at 0.
    fn rules_asked_again(&self) -> (f64, Vec<String>, TreatmentSet) {
        let n = self.draws.n as f64;
        let weights = Weights::of(&self.case.aim);
        let situation = self.situation();
        let world = self.world(&self.draws, &situation, weights);
        let weigher = Weigher::new(&world);
        let mut made: Vec<(Course, Column)> = self
            .courses
            .iter()
            .cloned()
            .zip(self.outcomes.iter().map(|o| o.score.clone()))
            .collect();
        let same = |a: &Course, b: &Course| a.if_clear == b.if_clear && a.if_lead == b.if_lead;
        let open = |course: &Course| {
            self.courses
                .iter()
                .any(|c| c.can_be_advised() && c.group() == course.group())
        };
        let now = self
            .courses
            .iter()
            .zip(&self.outcomes)
            .filter(|(c, _)| c.can_be_advised())
            .map(|(_, o)| o.score.mean())
            .fold(f64::NEG_INFINITY, f64::max);
        let mut with = 0.0;
        let mut opens: Vec<String> = Vec::new();
        let mut named = TreatmentSet::default();
        for kind in Kind::ALL {
            let of_kind = |score: &[f64]| -> f64 {
                self.draws
                    .kind
                    .iter()
                    .zip(score)
                    .filter(|(k, _)| **k == kind)
                    .map(|(_, s)| s)
                    .sum()
            };
            if !self.draws.kind.contains(&kind) {
                continue;
            }
            let mut known = situation.clone();
            known.change_all(&|s| s.posterior = s.posterior.with_odds_scaled(&[kind], CERTAIN));
            let mut best: Option<(f64, Course)> = None;
            let world = self.world(&self.draws, &known, weights);
            let rulings = Rulings::new(&world);
            // The courses weighed, with the rules applied again for this kind.
            for weighed in &self.courses {
                let course = course_of(&weighed.steps, weighed.tested, &rulings);
                if !course.can_be_advised() {
                    continue;
                }
                let at = made.iter().position(|(c, _)| same(c, &course));
                let at = at.unwrap_or_else(|| {
                    let outcome = weigher.weigh(&course, self.draws.n);
                    made.push((course.clone(), outcome.score));
                    made.len() - 1
                });
                let sum = made.get(at).map_or(0.0, |(_, score)| of_kind(score));
                if best.as_ref().is_none_or(|(b, _)| sum > *b) {
                    best = Some((sum, course));
                }
            }
            if let Some((sum, course)) = best {
                with += sum / n;
                let name = sentences::course_name(&course);
                if !open(&course) && !opens.contains(&name) {
                    opens.push(name);
                    named = named.or(TreatmentSet::of(&course.steps));
                }
            }
        }
        ((with - now).max(0.0), opens, named)
    }
}
