//! A solved case as the plain data of its report.

use super::advise::{score_by_kind, worth_of};
use super::column::Column;
use super::contrast::Contrast;
use super::course::Course;
use super::member::Member;
use super::outcome::CourseOutcome;
use super::part_silver::PartDraws;
use super::per_draw::PerDraw;
use super::steps_alone::is_left;
use super::wording::pieces;
use super::wording::report as words;
use super::world::World;
use super::{Solved, caution_list, choice, prices, sentences};
use crate::identity::Kind;
use crate::ledger::{FigureId, LEDGER_VERSION, Offered, caution};
use crate::record::{Currency, Goal, PartName, Problem};
use crate::report::{
    Band, BandMean, ContrastReport, CounselReport, CourseReport, DisplayOnly, FaultReport,
    OptionOutcome, OptionReport, PartReport, Report, SilverReport, StepReport, ValueReport,
    VerdictReport,
};
use crate::terms::ShortSort;
use crate::terms::{percent, the_pieces};
use crate::treatment::{Treatment, Verdict, check, work, worst};

impl Solved {
    /// The report. `problems` are those found when reading the case; `would_change` is empty.
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
                steps: self.courses[self.advice.chosen].steps.clone(),
                firmness: self.advice.firmness,
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
                    part: p.part,
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
    fn parts_in_each_state(&self) -> Vec<(&PartDraws, String)> {
        let is_reported = |p: &&PartDraws| p.looked || p.part == PartName::Body;
        if self.members.is_empty() {
            let parts = self.draws.parts.iter().filter(is_reported);
            return parts.map(|p| (p, p.name.into())).collect();
        }
        let mut all = Vec::new();
        for (at, member) in self.members.iter().enumerate() {
            for p in member.draws.parts.iter().filter(is_reported) {
                let silver = |m: &Member| {
                    let part = m.case.part(p.part);
                    part.map(|part| (part.bleed, part.readings.clone()))
                };
                let on = |m: &Member| silver(m) == silver(member);
                if self.members[..at].iter().any(on) {
                    continue;
                }
                let numbers = self.numbers_of(&on);
                let name = if numbers.len() == usize::from(self.case.pieces.count) {
                    p.name.into()
                } else {
                    pieces::part_of(p.name, &the_pieces(&numbers))
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
            currency: self.case.market.currency.unwrap_or(Currency::Other),
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
                    (Offered::Never, _) => OptionOutcome::Never,
                    (_, Some(_)) => OptionOutcome::NotNeeded,
                    _ => worst(&verdicts).into(),
                };
                let text = t.text();
                let cost = work(t).and_then(|_| self.cost_of(t, &world));
                OptionReport {
                    treatment: t,
                    name: text.name.into(),
                    plain: text.plain.into(),
                    outcome,
                    needed: idle.is_none() && t.offered() != Offered::Never,
                    not_needed: idle.map(str::to_owned),
                    verdicts: verdicts.iter().map(verdict_report).collect(),
                    lost: text.lost.into(),
                    ask: text.ask.into(),
                    who: text.who.into(),
                    reversibility: t.reversibility(),
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
            PerDraw::Drawn(column) => Some(column),
            PerDraw::Same(_) => None,
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
                fault: f.fault,
                name: self.fault_name(f.fault),
                parts: f.parts.clone(),
                large: f.size == crate::treatment::Size::Large,
                price_left: world.price_with(f, self.draws.n),
                answers: crate::treatment::answers_to(f.fault)
                    .into_iter()
                    .filter(|t| choice::not_needed(*t, &world).is_none())
                    .collect(),
                left: is_left(advised, f.fault),
            })
            .collect()
    }

    /// The remaining fields of a course's report; the caller supplies `p_best` and the greatest regret.
    pub(super) fn course_report(
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
            steps: course.steps.clone(),
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
            reversibility: course.reversibility(),
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
                    step: *t,
                    without: *change,
                })
                .collect(),
        }
    }

    fn course_reports(&self) -> Vec<CourseReport> {
        let leave = &self.outcomes[0];
        let mut order = self.shown.clone();
        let means: Vec<f64> = self.outcomes.iter().map(|o| o.score.mean()).collect();
        order.order_by(|a, b| {
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

fn contrast_report(c: &Contrast) -> ContrastReport {
    ContrastReport {
        kind: c.about.id().into(),
        steps: c.steps.clone(),
        price: c.price,
        quoted: c.quoted,
        test: c.test,
        gain: c.gain,
        points: c.points,
        verdict: c.verdict.as_ref().map(verdict_report),
        sentence: c.sentence.clone(),
    }
}

pub(super) fn verdict_report(v: &Verdict) -> VerdictReport {
    VerdictReport {
        ground: v.ground,
        outcome: v.outcome,
        reason: v.reason.clone(),
        lifted_by: v.lifted_by.clone(),
    }
}

pub(super) fn band(column: &Column) -> Band {
    let [p10, p50, p90] = column.deciles();
    Band { p10, p50, p90 }
}

pub(super) fn band_mean(column: &Column) -> BandMean {
    let b = band(column);
    BandMean {
        p10: b.p10,
        p50: b.p50,
        p90: b.p90,
        mean: column.mean(),
    }
}
