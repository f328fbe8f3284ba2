//! The counsel: every fault and every treatment weighed on one shared sample, and the advice explained.
//!
//! Phases: posterior → draws → situation → faults → choices in each block → courses → outcomes → advice →
//! contrast → report. Each is a function of the ones before; nothing is fed back. The same case gives the
//! same bytes on every machine.

mod advise;
pub mod caution_list;
mod change;
mod choice;
mod column;
mod columns;
mod contrast;
mod course;
mod draws;
mod expected;
mod explain;
mod looked_at;
mod member;
pub mod offer;
mod outcome;
mod part_silver;
mod per_draw;
mod pieces;
mod prices;
mod proposal;
mod sample;
mod sampled_part;
mod search;
mod selling;
mod sentences;
mod shared;
mod wear;
mod weighed;
mod what_if;
mod wording;
#[cfg(test)]
mod worked;
mod worth;

pub use sampled_part::{SampledPart, UncertainInput};

use std::borrow::Cow;
use std::rc::Rc;

pub use change::Input;
pub use expected::{ExpectedOne, ExpectedPiece, ExpectedWork, bill_figure, mishap_figures};
pub use offer::work_hours;
pub use shared::{Shared, SharedCourse, shared};
pub use worth::{Plan, WorthDraws};

use advise::{Advice, score_by_kind, worth_of};
use column::Column;
use columns::World;
use contrast::Contrast;
use course::Course;
use draws::Draws;
use explain::Explained;
use member::Member;
use outcome::{CourseOutcome, Weights, cost_scale};
use prices::Prices;
use sample::Sample;
use weighed::{Depth, Weighed, is_left, weigh_courses};
use what_if::WhatIf;
use wording::report as words;

pub use sentences::money;

use self::looked_at::looked_at;
use crate::bench::{BaseMetal, SolderReach, solder_reach};
use crate::identity::{
    ASKED_FIRST, ByKind, Cluster, Dating, Evidence, Found, Interval, Kind, Posterior, Reading,
    Turn, information_gain, interval_with, open_in_words, parting, readings,
};
use crate::ledger::{
    FigureId, FindingFact, LEDGER_VERSION, Ledger, Offered, Requires, caution, finding, signs,
};
use crate::record::ledger_of;
use crate::record::{Asked, Case, Currency, Goal, Instrument, PartName, Problem, TaughtFigures};
use crate::report::{
    AfterLook, Band, BandMean, ContrastReport, CounselReport, CourseReport, DisplayOnly,
    FaultReport, IdentityReport, MovedReport, NextLook, OptionReport, PartReport, PartingReport,
    Report, SilverReport, StepReport, Text, ValueReport, VerdictReport,
};
use crate::terms::{percent, the_pieces};
use crate::treatment::{Faults, LeadStatus, Situation, Treatment, Verdict, check, work, worst};

/// Points of the answer: 2^12.
pub const ANSWER_LOG2: u32 = 12;
/// Points of a printed sheet: 2^14.
pub const SHEET_LOG2: u32 = 14;
/// Points of the search for what would change it: 2^9, the same scrambled sequence cut short.
const SEARCH_LOG2: u32 = 9;
/// The chance of a finding by its letter, most likely first.
const LETTER_STEP: [FigureId; 5] =
    FigureId::family("identity.ladder.base.", crate::identity::Letter::CODES, "");

/// What a look costs in effort, by how invasive it is.
const LOOK_EFFORT: [FigureId; 4] = FigureId::family("look.effort.", ["0", "1", "2", "3"], "");

/// Looks offered.
const LOOKS: usize = 12;

/// Weighs a case. `problems` are those met when reading it, passed on to the report.
#[must_use]
pub fn weigh(case: &Case, problems: Vec<Problem>) -> Report {
    let mut report = weigh_at_once(case, problems);
    report.counsel.would_change = what_would_change(case);
    report
}

/// Weighs a case without the search for what would change the answer, which is most of the work: for
/// a screen that answers while one types. `would_change` is empty.
#[must_use]
pub fn weigh_at_once(case: &Case, problems: Vec<Problem>) -> Report {
    solve(case).report(problems)
}

/// Solves a case on the sample of the answer. The report and every page about the case read the result,
/// so that a record is solved once.
#[must_use]
pub fn solve(case: &Case) -> Solved {
    Solved::of(case, ANSWER_LOG2)
}

/// Solves a case on the finer sample of a printed sheet.
#[must_use]
pub fn solve_finely(case: &Case) -> Solved {
    Solved::of(case, SHEET_LOG2)
}

/// Where figures were taught and the shipped ones would advise something else: what they would advise,
/// in a sentence.
#[must_use]
pub fn otherwise_as_shipped(solved: &Solved) -> Option<String> {
    let case = solved.case();
    if case.taught.is_empty() {
        return None;
    }
    let shipped = Solved::of(
        &Case {
            taught: TaughtFigures::default(),
            ..case.clone()
        },
        solved.log2_points,
    );
    let advised = |of: &Solved| of.courses[of.advice.chosen].steps.clone();
    (advised(&shipped) != advised(solved)).then(|| {
        let course = &shipped.courses[shipped.advice.chosen];
        words::otherwise_as_shipped(&sentences::course_name(course), case.taught.pieces)
    })
}

/// What would change the answer: each main input moved by itself until the advice flips.
#[must_use]
pub fn what_would_change(case: &Case) -> Vec<crate::report::ChangeReport> {
    let solved = Solved::of(case, SEARCH_LOG2);
    let explained = solved.explained(0.0);
    let now = solved.now();
    let advised = |moved_by: &WhatIf| {
        let moved = solved.with_inputs(moved_by);
        moved.courses[moved.advice.chosen].clone()
    };
    let chosen = &solved.courses[solved.advice.chosen];
    change::changes(&now, chosen, &advised, &|c| explained.change_words(c))
}

/// A case taken through every phase up to the advice.
pub struct Solved {
    case: Rc<Case>,
    ledger: Rc<Cow<'static, Ledger>>,
    log2_points: u32,
    looked: Rc<Looked>,
    dating: Rc<Dating>,
    /// What the piece probably is, with the `moved_by` applied.
    posterior: Posterior,
    draws: Draws,
    faults: Faults,
    /// The pieces where there are several; none for one.
    members: Vec<Member>,
    sample: Rc<Sample>,
    moved_by: WhatIf,
    heat_reach: SolderReach,
    courses: Vec<Course>,
    outcomes: Vec<CourseOutcome>,
    /// What the piece as it is would fetch, what is kept of that, and what a seller keeps.
    as_it_is: [Column; 3],
    advice: Advice,
    contrast: Option<Contrast>,
    /// The places of the courses a person is shown.
    shown: Vec<usize>,
    /// For each course shown and each of its steps, what leaving it out does to the score.
    without: Vec<(usize, Vec<(Treatment, f64)>)>,
    goal: Goal,
    cost_scale: f64,
    seed: u32,
    next: Vec<crate::identity::InformationGain>,
    /// Made early, marked or rare, for the value class.
    early: bool,
}

/// What was found, read once for a case: moving an input does not change it.
struct Looked {
    readings: Vec<Reading>,
    interval: Interval,
    /// The dates by the chances of the kinds as found.
    dating: Rc<Dating>,
}

impl Looked {
    fn at(case: &Case, ledger: &Ledger) -> Self {
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
    fn of(case: &Case, log2_points: u32) -> Self {
        let ledger = Rc::new(ledger_of(case));
        Self::new(&Rc::new(case.clone()), &ledger, log2_points)
    }

    fn new(case: &Rc<Case>, ledger: &Rc<Cow<'static, Ledger>>, log2_points: u32) -> Self {
        let looked = Rc::new(Looked::at(case, ledger));
        Self::weighed(case, ledger, &looked, &WhatIf::NOTHING, log2_points)
    }

    /// The same case on the same sample with inputs moved.
    fn with_inputs(&self, moved_by: &WhatIf) -> Self {
        Self::weighed(
            &self.case,
            &self.ledger,
            &self.looked,
            moved_by,
            self.log2_points,
        )
    }

    fn weighed(
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

    /// The figures it was solved with: the shipped ones with the case's own laid over them.
    #[must_use]
    pub fn ledger(&self) -> &Ledger {
        &self.ledger
    }

    /// The situation in which the rules are asked before anything is done to the piece.
    #[must_use]
    pub fn situation(&self) -> Situation<'_> {
        self.situation_for(&self.case, &self.members)
    }

    /// The same, for a case that differs from its own in who would do the work.
    fn situation_for<'a>(&'a self, case: &'a Case, members: &'a [Member]) -> Situation<'a> {
        situation_of(
            (case, &self.ledger),
            self.posterior,
            (&self.draws, members),
            &self.next,
            &self.moved_by,
            self.heat_reach,
        )
    }

    /// Everything a course of this case is weighed with, on the draws given.
    fn world<'a>(
        &'a self,
        draws: &'a Draws,
        situation: &'a Situation<'a>,
        weights: Option<Weights>,
    ) -> World<'a> {
        let world = self.world_of_one(draws, situation, weights);
        world.with_members(&self.members, &self.sample)
    }

    /// The same, before it knows of several pieces.
    fn world_of_one<'a>(
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

    /// The answer with one input moved by so many steps, everything else as it is and on the same draws.
    #[must_use]
    pub fn moved(&self, input: Input, step: i8) -> MovedReport {
        let factor = change::step_factor(step);
        let moved = self.with_inputs(&change::what_if(input, factor));
        MovedReport {
            input: input.id().into(),
            step,
            at: change::moved(input, self.now().of(input), factor),
            steps: ids(&moved.courses[moved.advice.chosen]),
            sentence: moved.explained(0.0).sentence(),
            firmness: moved.advice.firmness.id().into(),
        }
    }

    /// Score into the case's currency: itself for a seller, by the cost scale for a keeper.
    fn money_of(&self, score: f64) -> f64 {
        Weights::of(&self.case.aim).map_or(score, |w| {
            let rate = w.points_per_money(self.cost_scale);
            if rate > 0.0 { score / rate } else { 0.0 }
        })
    }

    /// The cost a person is thinking about: of what is advised if that touches the piece, else of what
    /// the contrast is about, else of the next best course.
    fn cost_in_question(&self) -> f64 {
        self.course_in_question()
            .map_or(0.0, |i| self.outcomes[i].cost.median())
    }

    /// The course whose cost a person is thinking about.
    fn course_in_question(&self) -> Option<usize> {
        let chosen = Some(self.advice.chosen).filter(|i| self.courses[*i].touches());
        let contrast = self.contrast.as_ref().and_then(|c| c.course);
        chosen.or(contrast).or(self.advice.runner_up)
    }

    /// Where the inputs stand that are moved to see what would change the answer.
    fn now(&self) -> change::Now {
        change::Now {
            value: self.draws.undamaged.median(),
            cost: self.cost_in_question(),
            bleed: self.draws.shown.median(),
            fused: self.posterior.original_fused(),
        }
    }

    fn explained(&self, worth_of_kind: f64) -> Explained<'_> {
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

    /// The report. `problems` are those met when reading the case; `would_change` is empty.
    #[must_use]
    pub fn report(&self, problems: Vec<Problem>) -> Report {
        let by_kind = score_by_kind(&self.courses, &self.outcomes, &self.draws);
        let each_kind = Kind::ALL.map(|k| Kind::ALL.map(|j| f64::from(u8::from(j == k))));
        let worth_of_kind = self.money_of(worth_of(&each_kind, &self.posterior, &by_kind));
        let explained = self.explained(worth_of_kind);
        let refer_why = explained.referrals();
        let options = self.options();
        let named = Treatment::ALL;
        let why = self.situation().display_only();
        let pieces = self.pieces();
        let selling = self.selling(pieces.as_ref().map_or("", |p| p.sentence.as_str()));
        Report {
            identity: self.identity(&by_kind),
            silver: self.silver(),
            value: self.value(),
            options,
            courses: self.course_reports(),
            faults: self.fault_reports(),
            proposal: self.proposal(),
            pieces,
            counsel: CounselReport {
                steps: ids(&self.courses[self.advice.chosen]),
                firmness: self.advice.firmness.id().into(),
                sentence: explained.sentence(),
                contrast: self.contrast.as_ref().map(contrast_report),
                firmness_words: explained.firmness_words(),
                reasons: explained.reasons(),
                doubts: self.advice.doubts.clone(),
                would_change: Vec::new(),
                refer: !refer_why.is_empty(),
                refer_why,
                worth_of_kind,
                noise: self.advice.noise,
                selling,
            },
            cautions: caution_list::cautions_for(&named, &self.situation()),
            display_only: DisplayOnly {
                yes: !why.is_empty(),
                why,
                label: caution("caution.display_only")
                    .map_or("", |c| c.text)
                    .into(),
            },
            problems,
            seed: self.seed,
            ledger_version: LEDGER_VERSION.to_owned(),
        }
    }

    fn identity(&self, by_kind: &[ByKind]) -> IdentityReport {
        let found = Found {
            case: &self.case,
            ledger: &self.ledger,
            readings: &self.looked.readings,
            interval: &self.looked.interval,
            dating: &self.dating,
        };
        let parted = parting(
            &Evidence::of(&self.case, &self.looked.readings),
            &self.case.instruments,
            &self.ledger,
        );
        // Before anything has been looked at no family is named, not even as one of two.
        let open =
            open_in_words(&parted, &self.looked.interval.base).filter(|_| !found.nothing_found());
        IdentityReport {
            open,
            parting: parted
                .looks
                .iter()
                .map(|look| PartingReport {
                    finding: look.finding.id.into(),
                    title: look.finding.title.into(),
                    how: look.finding.how.into(),
                    if_seen: after_look(&look.if_seen, &self.looked.interval.base),
                    if_absent: after_look(&look.if_absent, &self.looked.interval.base),
                })
                .collect(),
            next_looks: self.next_looks(by_kind),
            ..found.report()
        }
    }

    fn next_looks(&self, by_kind: &[ByKind]) -> Vec<NextLook> {
        let out = [FigureId::IDENTITY_OUT_FINDING, FigureId::IDENTITY_OUT_MARK]
            .map(|id| self.ledger.value(id));
        let steps = LETTER_STEP.map(|id| self.ledger.value(id));
        let mut looks: Vec<NextLook> = self
            .next
            .iter()
            .map(|g| {
                let f = g.finding;
                let seen = Kind::ALL.map(|k| {
                    f.letter(k)
                        .map_or(out[usize::from(f.cluster == Cluster::Mark)], |l| {
                            steps[l as usize]
                        })
                });
                let absent = seen.map(|p| 1.0 - p);
                let effort = self
                    .ledger
                    .value(LOOK_EFFORT[effort_of(f, &self.case.instruments)]);
                let worth = self.money_of(worth_of(&[seen, absent], &self.posterior, by_kind));
                // Differences of rounding are not worth anything.
                let worth = if worth < 0.5 { 0.0 } else { worth };
                NextLook {
                    finding: f.id.into(),
                    worth: worth - effort,
                    bits: g.bits,
                    title: f.title.into(),
                    how: f.how.into(),
                    needs: f.needs.into(),
                    if_seen: after_look(&g.if_seen, &self.posterior),
                    if_absent: after_look(&g.if_absent, &self.posterior),
                }
            })
            .collect();
        looks.sort_by(|a, b| {
            b.worth
                .total_cmp(&a.worth)
                .then(b.bits.total_cmp(&a.bits))
                .then_with(|| a.finding.cmp(&b.finding))
        });
        // What tells next to nothing and is worth nothing is no advice.
        let least = self.ledger.value(FigureId::LOOK_LEAST_BITS);
        looks.retain(|l| l.worth > 0.0 || l.bits >= least);
        // Nor is what leaves the same family in front, whatever it shows, and changes no choice.
        let settled = self.ledger.value(FigureId::COUNSEL_FAMILY);
        looks.retain(|l| {
            let same = l.if_seen.family == l.if_absent.family;
            l.worth > 0.0 || !same || l.if_seen.p.min(l.if_absent.p) < settled
        });
        let turn =
            |l: &NextLook| finding(l.finding.get()).map(|f| Turn::of(f, &self.case.instruments));
        looks.sort_by_key(turn);
        if self.case.findings.is_empty() && self.looked.readings.is_empty() {
            let place = |l: &NextLook| ASKED_FIRST.iter().position(|id| l.finding == *id);
            looks.sort_by_key(|l| place(l).unwrap_or(ASKED_FIRST.len()));
        }
        // A close-plater's mark calls for the magnet: the mark alone loses to commoner kinds.
        if self.case.has_seen("M12")
            && let Some(magnet) = looks.iter().position(|l| l.finding == "P01")
        {
            looks[..=magnet].rotate_right(1);
        }
        looks.truncate(LOOKS);
        looks
    }

    fn silver(&self) -> SilverReport {
        let parts = self
            .parts_in_each_state()
            .into_iter()
            .map(|(p, name)| {
                let silver = &p.silver;
                let known = silver.left_um.numbers();
                let let_in = crate::silver::let_in(&self.case, p.id);
                let plated = known.len() * 2 >= self.draws.n && !let_in;
                let times = silver.to_double.numbers();
                let bleed = silver.bleed.median();
                let to_double = (plated && times.len() * 2 >= self.draws.n).then(|| band(&times));
                PartReport {
                    part: p.id.into(),
                    name,
                    left_um: plated.then(|| band(&known)),
                    left_fraction: plated.then(|| silver.left_share.numbers().median()),
                    bleed,
                    words: if let_in {
                        words::SHIELD.to_owned()
                    } else {
                        silver_words(plated, bleed, to_double)
                    },
                    cleanings_to_double: to_double,
                }
            })
            .collect();
        SilverReport {
            parts,
            covered_area: self.draws.covered_area,
            looked_area: self.situation().looked_at,
        }
    }

    /// The silver of each part that was looked at, in every state it is in on several pieces, with its name.
    fn parts_in_each_state(&self) -> Vec<(&part_silver::PartDraws, String)> {
        let told = |p: &&part_silver::PartDraws| p.looked || p.part == PartName::Body;
        if self.members.is_empty() {
            let parts = self.draws.parts.iter().filter(told);
            return parts.map(|p| (p, p.name.into())).collect();
        }
        let mut all = Vec::new();
        for (at, member) in self.members.iter().enumerate() {
            for p in member.draws.parts.iter().filter(told) {
                let on = |m: &Member| m.case.part(p.part) == member.case.part(p.part);
                if self.members[..at].iter().any(on) {
                    continue;
                }
                let numbers = self.numbers_of(&on);
                let name = if numbers.len() == usize::from(self.case.pieces.count) {
                    p.name.into()
                } else {
                    wording::pieces::part_of(p.name, &the_pieces(&numbers))
                };
                all.push((p, name));
            }
        }
        all
    }

    fn value(&self) -> ValueReport {
        let [hammer, _, net] = &self.as_it_is;
        ValueReport {
            undamaged: band(&self.draws.level),
            as_it_is: band(hammer),
            net_as_it_is: band(net),
            assumed: !self.draws.value_entered,
            currency: self
                .case
                .market
                .currency
                .unwrap_or(Currency::Other)
                .id()
                .into(),
            label: words::INDICATIVE.into(),
        }
    }

    fn options(&self) -> Vec<OptionReport> {
        let situation = self.situation();
        let world = self.world(&self.draws, &situation, None);
        Treatment::ALL
            .into_iter()
            .map(|t| {
                let verdicts = check(t, &situation);
                let idle = if t.offered() == Offered::Never {
                    None
                } else {
                    choice::not_needed(t, &world)
                };
                let outcome = match (t.offered(), idle) {
                    (Offered::Never, _) => "never",
                    (_, Some(_)) => "not_needed",
                    _ => worst(&verdicts).id(),
                };
                let text = t.text();
                let cost = work(t).and_then(|_| self.cost_of(t, &world));
                OptionReport {
                    treatment: t.id().into(),
                    name: text.name.into(),
                    plain: text.plain.into(),
                    outcome: outcome.into(),
                    needed: idle.is_none() && t.offered() != Offered::Never,
                    not_needed: idle.map(str::to_owned),
                    verdicts: verdicts.iter().map(verdict_report).collect(),
                    lost: text.lost.into(),
                    ask: text.ask.into(),
                    who: text.who.into(),
                    reversibility: t.reversibility().code().into(),
                    reversibility_words: t.reversibility().words().into(),
                    cost: cost.as_ref().map_or_else(Band::default, band),
                    quoted: world.prices.is_quoted(t),
                }
            })
            .collect()
    }

    /// What one treatment costs by itself; `None` when it is free.
    fn cost_of(&self, t: Treatment, world: &World) -> Option<Column> {
        if self.members.is_empty() {
            return world.prices.cost(t, &prices::answered(t, &self.faults));
        }
        match world.own_cost(t, &[t], self.draws.n) {
            per_draw::PerDraw::Drawn(column) => Some(column),
            per_draw::PerDraw::Same(_) => None,
        }
    }

    fn fault_reports(&self) -> Vec<FaultReport> {
        let situation = self.situation();
        let world = self.world(&self.draws, &situation, None);
        let advised = &self.courses[self.advice.chosen];
        self.faults
            .0
            .iter()
            .map(|f| FaultReport {
                fault: f.fault.id().into(),
                name: self.fault_name(f.fault),
                parts: f.parts.iter().map(|p| p.id().into()).collect(),
                large: f.size == crate::treatment::Size::Large,
                price_left: world.price_with(f, self.draws.n),
                answers: contrast::answers_to(f.fault)
                    .into_iter()
                    .filter(|t| choice::not_needed(*t, &world).is_none())
                    .map(|t| t.id().into())
                    .collect(),
                left: is_left(advised, f.fault),
            })
            .collect()
    }

    /// What is left of a course as a report; `p_best` and the greatest regret come with it.
    fn course_report(
        &self,
        course: &Course,
        o: &CourseOutcome,
        gain: &Column,
        (p_best, regret): (f64, f64),
        without: &[(Treatment, f64)],
    ) -> CourseReport {
        let tail = self.ledger.value(FigureId::COUNSEL_TAIL).clamp(0.01, 1.0);
        let value_scale = self.draws.undamaged.median().max(1.0);
        let mean = o.score.mean();
        let p_loss = gain.iter().filter(|g| **g < 0.0).count() as f64 / gain.len() as f64;
        CourseReport {
            steps: ids(course),
            name: sentences::course_name(course),
            barred: course.barred.iter().map(verdict_report).collect(),
            conditions: course.conditions.iter().map(verdict_report).collect(),
            net: band_mean(&o.net),
            net_gain: band_mean(gain),
            p_best,
            p_loss,
            originality: o.originality,
            fitness: o.fitness,
            stability: o.stability,
            score: if self.goal == Goal::Sell {
                (mean / value_scale).clamp(0.0, 1.0)
            } else {
                mean
            },
            reversibility: course.reversibility().code().into(),
            reversibility_words: course.reversibility().words().into(),
            cost: band(&o.cost),
            tail_mean: gain.tail_mean(tail),
            most_to_pay: self.most_to_pay(&course.steps, o),
            regret,
            lost: course
                .steps
                .iter()
                .map(|t| t.text().lost.into())
                .filter(|l| l != words::NOTHING_LOST)
                .collect(),
            each: without
                .iter()
                .map(|(t, change)| StepReport {
                    step: t.id().into(),
                    without: *change,
                })
                .collect(),
        }
    }

    fn course_reports(&self) -> Vec<CourseReport> {
        let leave = &self.outcomes[0];
        let mut order = self.shown.clone();
        let means: Vec<f64> = self.outcomes.iter().map(|o| o.score.mean()).collect();
        order.sort_by(|a, b| {
            let barred = |i: usize| !self.courses[i].can_be_advised();
            (*b == self.advice.chosen)
                .cmp(&(*a == self.advice.chosen))
                .then(barred(*a).cmp(&barred(*b)))
                .then(means[*b].total_cmp(&means[*a]))
        });
        order
            .into_iter()
            .map(|i| {
                let o = &self.outcomes[i];
                let each = o.net.iter().zip(leave.net.iter());
                let gain: Column = each.map(|(a, b)| a - b).collect();
                let without = self.without.iter().find(|(at, _)| *at == i);
                self.course_report(
                    &self.courses[i],
                    o,
                    &gain,
                    (self.advice.p_best[i], self.advice.regret[i]),
                    without.map_or(&[][..], |(_, each)| each),
                )
            })
            .collect()
    }
}

/// How much a look asks of a person, 0 to 3. With the instrument at hand a reading asks no more than
/// looking; weighing in water still wets the piece.
fn effort_of(look: &FindingFact, at_hand: &[Instrument]) -> usize {
    match look.requires {
        Requires::Instrument(i) if at_hand.contains(&i) && i != Instrument::Scales => 0,
        _ => usize::from(look.invasive.min(3)),
    }
}

/// The situation before anything is done to the piece.
fn situation_of<'a>(
    (case, ledger): (&'a Case, &'a Ledger),
    posterior: Posterior,
    (draws, members): (&Draws, &'a [Member]),
    next: &[crate::identity::InformationGain],
    moved_by: &WhatIf,
    heat_reach: SolderReach,
) -> Situation<'a> {
    let (looked_at, largest_unseen) = looked_at(case, ledger);
    let body = case.part(PartName::Body).and_then(|p| p.bleed);
    let body_bleed = crate::silver::bleed_range(body, ledger)
        .scaled(moved_by.bleed)
        .likely;
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

/// The likeliest family after a look.
fn after_look(posterior: &Posterior, now: &Posterior) -> AfterLook {
    let (family, p) = posterior.top_family();
    let moved = |k: &Kind| (posterior.of(*k) - now.of(*k)).abs() > 1e-9;
    AfterLook {
        family: family.id().into(),
        name: family.name().into(),
        p,
        tells: Kind::ALL.iter().any(moved),
    }
}

fn silver_words(plated: bool, bleed: f64, to_double: Option<Band>) -> String {
    if !plated {
        return words::SOLID_SILVER.to_owned();
    }
    let shown = percent(bleed);
    match to_double {
        None => words::little_left(&shown),
        Some(t) => {
            let span = if t.p50 < 5.0 {
                words::A_FEW_CLEANINGS
            } else if t.p50 < 30.0 {
                words::SOME_YEARS
            } else {
                words::DECADES
            };
            words::shows_and_lasts(&shown, span)
        }
    }
}

fn ids(course: &Course) -> Vec<Text> {
    course.steps.iter().map(|t| t.id().into()).collect()
}

fn contrast_report(c: &Contrast) -> ContrastReport {
    ContrastReport {
        kind: c.about.id().into(),
        steps: c.steps.iter().map(|t| t.id().into()).collect(),
        price: c.price,
        quoted: c.quoted,
        test: c.test,
        gain: c.gain,
        points: c.points,
        verdict: c.verdict.as_ref().map(verdict_report),
        sentence: c.sentence.clone(),
    }
}

fn verdict_report(v: &Verdict) -> VerdictReport {
    VerdictReport {
        guard: v.guard.into(),
        outcome: v.outcome.id().into(),
        reason: v.reason.clone(),
        lifted_by: v.lifted_by.clone(),
    }
}

fn band(column: &Column) -> Band {
    let [p10, p50, p90] = column.deciles();
    Band { p10, p50, p90 }
}

fn band_mean(column: &Column) -> BandMean {
    let b = band(column);
    BandMean {
        p10: b.p10,
        p50: b.p50,
        p90: b.p90,
        mean: column.mean(),
    }
}
