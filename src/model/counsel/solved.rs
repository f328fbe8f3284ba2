//! A case taken through every phase up to the advice.

use std::borrow::Cow;
use std::rc::Rc;

use super::SEARCH_LOG2;
use super::advise::Advice;
use super::change;
use super::choice;
use super::column::Column;
use super::contrast::Contrast;
use super::course::Course;
use super::draws::Draws;
use super::explain::Explained;
use super::looked_at::looked_at;
use super::member::Member;
use super::outcome::{CourseOutcome, cost_scale};
use super::prices::Prices;
use super::sample::Sample;
use super::weighed::{Depth, Weighed, weigh_courses};
use super::weights::Weights;
use super::what_if::WhatIf;
use super::wording::report as words;
use super::world::World;
use crate::bench::{BaseMetal, SolderReach, solder_reach};
use crate::identity::{
    Dating, Evidence, InformationGain, Interval, JudgedReading, Kind, Posterior, Turn,
    information_gain, interval_with, readings,
};
use crate::ledger::{FigureId, Ledger, signs};
use crate::record::{Asked, Case, Goal, PartName, ledger_of};
use crate::report::MovedReport;
use crate::silver::bleed_range;
use crate::terms::Input;
use crate::terms::TreatmentSet;
use crate::treatment::{Faults, LeadStatus, Situation, Treatment};

/// A case taken through every phase up to the advice.
pub struct Solved {
    pub(super) case: Rc<Case>,
    pub(super) ledger: Rc<Cow<'static, Ledger>>,
    pub(super) log2_points: u32,
    pub(super) looked: Rc<Looked>,
    pub(super) dating: Rc<Dating>,
    /// What the piece probably is, with the `moved_by` applied.
    pub(super) posterior: Posterior,
    pub(super) draws: Draws,
    pub(super) faults: Faults,
    /// The pieces where there are several; none for one.
    pub(super) members: Vec<Member>,
    pub(super) sample: Rc<Sample>,
    pub(super) moved_by: WhatIf,
    pub(super) heat_reach: SolderReach,
    pub(super) courses: Vec<Course>,
    pub(super) outcomes: Vec<CourseOutcome>,
    /// What the piece as it is would fetch, what is kept of that, and what a seller keeps.
    pub(super) as_it_is: [Column; 3],
    pub(super) advice: Advice,
    pub(super) contrast: Option<Contrast>,
    /// The indices of the courses shown to the user.
    pub(super) shown: Vec<usize>,
    /// For each course shown and each of its steps, the effect on the score of leaving the step out.
    pub(super) without: Vec<(usize, Vec<(Treatment, f64)>)>,
    pub(super) goal: Goal,
    pub(super) cost_scale: f64,
    pub(super) seed: u32,
    pub(super) next: Vec<InformationGain>,
    /// Whether it is early, marked or rare, for the value class.
    pub(super) early: bool,
}

/// The findings, read once per case, because moving an input does not change them.
pub(super) struct Looked {
    pub(super) readings: Vec<JudgedReading>,
    pub(super) interval: Interval,
    /// The dates, using the probabilities of the kinds as found.
    pub(super) dating: Rc<Dating>,
}

impl Looked {
    pub(super) fn at(case: &Case, ledger: &Ledger) -> Self {
        let readings = readings(case, ledger);
        let interval = interval_with(&Evidence::of(case, &readings), ledger);
        Self {
            dating: Rc::new(Dating::new(case, &interval.base, ledger)),
            readings,
            interval,
        }
    }
}

impl Solved {
    pub(super) fn of(case: &Case, log2_points: u32) -> Self {
        let ledger = Rc::new(ledger_of(case));
        Self::new(&Rc::new(case.clone()), &ledger, log2_points)
    }

    pub(super) fn new(
        case: &Rc<Case>,
        ledger: &Rc<Cow<'static, Ledger>>,
        log2_points: u32,
    ) -> Self {
        let looked = Rc::new(Looked::at(case, ledger));
        Self::weighed(case, ledger, &looked, &WhatIf::NOTHING, log2_points)
    }

    /// The same case on the same sample with inputs moved.
    pub(super) fn with_inputs(&self, moved_by: &WhatIf) -> Self {
        Self::weighed(
            &self.case,
            &self.ledger,
            &self.looked,
            moved_by,
            self.log2_points,
        )
    }

    pub(super) fn weighed(
        shared_case: &Rc<Case>,
        figures: &Rc<Cow<'static, Ledger>>,
        looked: &Rc<Looked>,
        moved_by: &WhatIf,
        log2_points: u32,
    ) -> Self {
        let case: &Case = shared_case;
        let ledger: &Ledger = figures;
        let base = looked.interval.base;
        let fused = [Kind::Fps, Kind::Fpd, Kind::Fpn];
        let (posterior, dating) = if moved_by.fused_odds.to_bits() == 1.0_f64.to_bits() {
            (base, Rc::clone(&looked.dating))
        } else {
            let moved = base.with_odds_scaled(&fused, moved_by.fused_odds);
            (moved, Rc::new(Dating::new(case, &moved, ledger)))
        };
        let early =
            case.piece.rare || case.has_seen_any(&signs::EARLY_MARKS) || dating.is_early(ledger);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        // clamped to the range of u32
        let seed = ledger
            .value(FigureId::COUNSEL_SEED)
            .clamp(0.0, f64::from(u32::MAX)) as u32;
        let sample: Rc<Sample> = Sample::shared(log2_points, seed);
        let draws = Draws::new(case, ledger, &posterior, early, &sample, moved_by);
        let next = if *moved_by == WhatIf::NOTHING {
            information_gain(&Evidence::of(case, &looked.readings), &posterior, ledger)
        } else {
            Vec::new()
        };
        let heat_reach = solder_reach(
            BaseMetal::best_conductor(|kind| posterior.of(kind), ledger),
            ledger,
        );
        let members = Member::all(case, ledger, &posterior, early, &sample, moved_by);
        let situation = situation_of(
            (case, ledger),
            posterior,
            (&draws, &members),
            &next,
            moved_by,
            heat_reach,
        );
        let goal = case.aim.goal_or_default();
        let scale = cost_scale(ledger, draws.undamaged.median());
        let faults = Faults::of(case, ledger);
        let depth = if log2_points > SEARCH_LOG2 {
            Depth::Whole
        } else {
            Depth::AdviceOnly
        };
        let Weighed {
            courses,
            outcomes,
            advice,
            as_it_is,
            contrast,
            shown,
            without,
        } = {
            let mut prices = Prices::new(case, ledger, &sample, moved_by.cost);
            if case.aim.asked == Some(Asked::Proposal) {
                prices = prices.of_proposal();
            }
            let weights = Weights::of(&case.aim);
            let world = World::new(
                case, ledger, &sample, &draws, &situation, &faults, prices, weights, scale,
            )
            .with_members(&members, &sample);
            weigh_courses(&world, &posterior, depth)
        };
        Self {
            case: Rc::clone(shared_case),
            ledger: Rc::clone(figures),
            log2_points,
            looked: Rc::clone(looked),
            dating,
            posterior,
            draws,
            faults,
            members,
            sample,
            moved_by: *moved_by,
            heat_reach,
            courses,
            outcomes,
            advice,
            contrast,
            shown,
            without,
            goal,
            as_it_is,
            cost_scale: scale,
            seed,
            next,
            early,
        }
    }

    /// The case that was solved.
    #[must_use]
    pub fn case(&self) -> &Case {
        &self.case
    }

    /// The figures it was solved with: the shipped ones with the case's own values applied.
    #[must_use]
    pub fn ledger(&self) -> &Ledger {
        &self.ledger
    }

    /// The situation in which the rules are applied, before anything is done to the piece.
    #[must_use]
    pub fn situation(&self) -> Situation<'_> {
        self.situation_for(&self.case, &self.members)
    }

    /// The same, for a case that differs from its own in who would do the work.
    pub(super) fn situation_for<'a>(
        &'a self,
        case: &'a Case,
        members: &'a [Member],
    ) -> Situation<'a> {
        situation_of(
            (case, &self.ledger),
            self.posterior,
            (&self.draws, members),
            &self.next,
            &self.moved_by,
            self.heat_reach,
        )
    }

    /// Everything needed to weigh a course of this case, on the given draws.
    pub(super) fn world<'a>(
        &'a self,
        draws: &'a Draws,
        situation: &'a Situation<'a>,
        weights: Option<Weights>,
    ) -> World<'a> {
        let world = self.world_of_one(draws, situation, weights);
        world.with_members(&self.members, &self.sample)
    }

    /// The same, before it knows of several pieces.
    pub(super) fn world_of_one<'a>(
        &'a self,
        draws: &'a Draws,
        situation: &'a Situation<'a>,
        weights: Option<Weights>,
    ) -> World<'a> {
        let prices = Prices::new(&self.case, &self.ledger, &self.sample, self.moved_by.cost);
        World::new(
            &self.case,
            &self.ledger,
            &self.sample,
            draws,
            situation,
            &self.faults,
            prices,
            weights,
            self.cost_scale,
        )
    }

    /// Why a treatment has nothing to do to this piece; `None` when it has.
    #[must_use]
    pub fn not_needed(&self, treatment: Treatment) -> Option<&'static str> {
        let situation = self.situation();
        let world = self.world(&self.draws, &situation, None);
        choice::not_needed(treatment, &world)
    }

    /// The answer with one input moved by this many steps, everything else unchanged and on the same draws.
    #[must_use]
    pub fn moved(&self, input: Input, step: i8) -> MovedReport {
        let factor = change::step_factor(step);
        let moved = self.with_inputs(&change::what_if(input, factor));
        MovedReport {
            input,
            step,
            at: change::moved(input, self.now().of(input), factor),
            steps: moved.courses[moved.advice.chosen].steps.clone(),
            sentence: moved.explained(0.0).sentence(),
            firmness: moved.advice.firmness,
        }
    }

    /// Converts a score into the case's currency: unchanged for a seller, by the cost scale for a keeper.
    pub(super) fn money_of(&self, score: f64) -> f64 {
        Weights::of(&self.case.aim).map_or(score, |w| {
            let rate = w.points_per_money(self.cost_scale);
            if rate > 0.0 { score / rate } else { 0.0 }
        })
    }

    /// The cost the user is considering: that of the advised course if it touches the piece, or else that of
    /// the contrast, or else that of the next best course.
    pub(super) fn cost_in_question(&self) -> f64 {
        self.course_in_question()
            .map_or(0.0, |i| self.outcomes[i].cost.median())
    }

    /// The course whose cost the user is considering.
    pub(super) fn course_in_question(&self) -> Option<usize> {
        let chosen = Some(self.advice.chosen).filter(|i| self.courses[*i].touches());
        let contrast = self.contrast.as_ref().and_then(|c| c.course);
        chosen.or(contrast).or(self.advice.runner_up)
    }

    /// The present values of the inputs that are moved to see what would change the answer.
    pub(super) fn now(&self) -> change::Now {
        change::Now {
            value: self.draws.undamaged.median(),
            cost: self.cost_in_question(),
            bleed: self.draws.shown.median(),
            fused: self.posterior.original_fused(),
        }
    }

    /// The treatments that the reasons for the advice name.
    #[must_use]
    pub fn named_in_reasons(&self) -> TreatmentSet {
        let (_, named) = self.explained(0.0).reasons_and_named();
        named
    }

    pub(super) fn explained(&self, worth_of_kind: f64) -> Explained<'_> {
        Explained {
            case: &self.case,
            ledger: &self.ledger,
            situation: self.situation(),
            courses: &self.courses,
            outcomes: &self.outcomes,
            draws: &self.draws,
            advice: &self.advice,
            contrast: self.contrast.as_ref(),
            worth_of_kind,
        }
    }
}

/// The situation before anything is done to the piece.
fn situation_of<'a>(
    (case, ledger): (&'a Case, &'a Ledger),
    posterior: Posterior,
    (draws, members): (&Draws, &'a [Member]),
    next: &[InformationGain],
    moved_by: &WhatIf,
    heat_reach: SolderReach,
) -> Situation<'a> {
    let (looked_at, largest_unseen) = looked_at(case, ledger);
    let body = case.part(PartName::Body).and_then(|p| p.bleed);
    let body_bleed = bleed_range(body, ledger).scaled(moved_by.bleed).likely;
    let of_member = |m: &'a Member| {
        let case = (&m.case, ledger);
        situation_of(case, posterior, (&m.draws, &[]), next, moved_by, heat_reach)
    };
    Situation {
        each: members.iter().map(of_member).collect(),
        case,
        ledger,
        posterior,
        body_bleed,
        covered_area: draws.covered_area,
        worn_through: draws.body().map_or(0.0, |b| b.silver.worn_through),
        next_look: next
            .iter()
            .find(|g| Turn::of(g.finding, &case.instruments) == Turn::First)
            .or(next.first())
            .map_or(words::SPECIALISTS_LOOK, |g| g.finding.title),
        looked_at,
        largest_unseen,
        heat_reach,
        lead: LeadStatus::Unknown,
        joint: Situation::stated_joint(case),
        replated: false,
        low_melt: false,
        cleaned: false,
        lacquer_off: false,
        to_be_plated: false,
        lining_tested: false,
    }
}
