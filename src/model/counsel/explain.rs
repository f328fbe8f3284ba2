//! The explanation: the reasons, the contrast, what would change the answer, and when to refer. It reads
//! results and computes nothing but differences between them.

use super::advise::Advice;
use super::contrast::Contrast;
use super::course::Course;
use super::draws::Draws;
use super::outcome::CourseOutcome;
use super::sentences::{advice_sentence, course_name, money};
use super::wording::explain as words;
use crate::identity::{Family, Kind};
use crate::ledger::{FigureId, Ledger};
use crate::record::{Case, Goal};
use crate::report::{ChangeReport, ReasonReport};
use crate::terms::{Firmness, Input, TreatmentSet, capital, percent, share, share_of_cases};
use crate::treatment::{Situation, Treatment};

/// Adds a reason: its code, its text, its amount, the treatments it names.
type Say<'a> = dyn FnMut(&'static str, String, Option<f64>, &[Treatment]) + 'a;

/// The inputs of the explanation.
pub(super) struct Explained<'a> {
    pub(super) case: &'a Case,
    pub(super) ledger: &'a Ledger,
    pub(super) situation: Situation<'a>,
    pub(super) courses: &'a [Course],
    pub(super) outcomes: &'a [CourseOutcome],
    pub(super) draws: &'a Draws,
    pub(super) advice: &'a Advice,
    pub(super) contrast: Option<&'a Contrast>,
    /// In the case's currency, whatever the goal.
    pub(super) worth_of_kind: f64,
}

impl Explained<'_> {
    fn chosen(&self) -> &Course {
        &self.courses[self.advice.chosen]
    }

    /// The course of one treatment alone, with or without a test first.
    fn find(&self, wanted: Treatment) -> Option<usize> {
        let alone = |c: &Course| {
            let mut group = c.group();
            group.retain(|t| *t != Treatment::TestLead || wanted == Treatment::TestLead);
            group == [wanted]
        };
        let open = |c: &Course| alone(c) && c.can_be_advised();
        let open = self.courses.iter().position(open);
        open.or_else(|| self.courses.iter().position(alone))
    }

    /// Mean money of a course relative to leaving the piece.
    fn gain(&self, course: usize) -> f64 {
        self.outcomes[course].net.mean() - self.outcomes[0].net.mean()
    }

    /// The answer with its contrast: what was asked about or quoted, or else the most serious fault left.
    pub(super) fn sentence(&self) -> String {
        let mut answer = advice_sentence(self.chosen(), self.case);
        let tests = self.chosen().steps.contains(&Treatment::TestLead);
        let idle = !self.chosen().touches();
        if idle && self.case.aim.food && !tests && !self.situation.display_only().is_empty() {
            answer.push_str(words::NOT_FOR_FOOD);
        }
        match self.contrast {
            Some(contrast) => [answer.as_str(), " ", &contrast.sentence].concat(),
            None => answer,
        }
    }

    /// The firmness in one sentence.
    pub(super) fn firmness_words(&self) -> String {
        let p = self.advice.p_best[self.advice.chosen];
        let cases = share_of_cases(p);
        let clear_by_chance = p >= self.ledger.value(FigureId::COUNSEL_CLEAR);
        match self.advice.firmness {
            Firmness::Clear => words::clear(&cases),
            Firmness::Leaning if clear_by_chance => words::leaning_by_doubt(&cases),
            Firmness::Leaning => words::leaning(&cases),
            Firmness::Open => words::open(&cases),
        }
    }

    /// The reasons, the most important first.
    pub(super) fn reasons(&self) -> Vec<ReasonReport> {
        let (reasons, _) = self.reasons_and_named();
        reasons
    }

    /// The reasons, and the treatments that they name.
    pub(super) fn reasons_and_named(&self) -> (Vec<ReasonReport>, TreatmentSet) {
        let (mut reasons, mut all_named) = (Vec::new(), TreatmentSet::default());
        let mut say = |code: &'static str, text, amount, named: &[Treatment]| {
            reasons.push(ReasonReport {
                code: code.into(),
                text,
                amount,
            });
            all_named = all_named.or(TreatmentSet::of(named));
        };
        let chosen = self.advice.chosen;
        let own = &self.outcomes[chosen];
        self.identity_reason(&mut say);
        if self.case.aim.food && !self.situation.display_only().is_empty() {
            let text = if self.chosen().steps.contains(&Treatment::TestLead) {
                words::FOOD_UNTESTED
            } else {
                words::FOOD_DISPLAY
            };
            say("food", text.to_owned(), None, &[]);
        }
        if self.situation.active_corrosion() {
            say("corrosion", words::CORROSION.to_owned(), None, &[]);
        }
        if chosen == 0 || !self.chosen().touches() {
            self.reasons_to_leave(&mut say);
        } else {
            self.bridge(chosen, &mut say);
            let kept = own.originality;
            if kept < 0.995 {
                say(
                    "originality",
                    words::keeps_original(&percent(kept)),
                    None,
                    &[],
                );
            }
        }
        if let Some(rival) = self.advice.runner_up {
            let gap = self.gain(rival) - self.gain(chosen);
            let name = course_name(&self.courses[rival]).to_ascii_lowercase();
            let text = if self.case.aim.goal_or_default() == Goal::Sell {
                if gap < 0.0 {
                    words::next_leaves_less(&name, &money(self.case, -gap))
                } else {
                    words::next_leaves_more(&name, &money(self.case, gap))
                }
            } else {
                let points = 100.0 * (own.score.mean() - self.outcomes[rival].score.mean());
                match points.round().abs() {
                    0.0..1.0 => words::next_comes_level(&name),
                    n => words::next_scores(
                        &name,
                        n,
                        if n < 2.0 { words::POINT } else { words::POINTS },
                        if points >= 0.0 {
                            words::LOWER
                        } else {
                            words::HIGHER
                        },
                    ),
                }
            };
            say("runner_up", text, Some(gap), &self.courses[rival].steps);
        }
        (reasons, all_named)
    }

    fn identity_reason(&self, say: &mut Say) {
        let (family, p) = self.situation.posterior.top_family();
        let original = self.situation.original_fused();
        let covered = self.situation.covered_area;
        if original >= self.ledger.value(FigureId::GUARD_H14_P)
            && covered > self.ledger.value(FigureId::GUARD_H14_AREA)
        {
            let how = if original >= 0.8 {
                words::VERY_PROBABLY
            } else if original >= 0.5 {
                words::PROBABLY
            } else {
                words::MAY_BE
            };
            say(
                "original_silver",
                words::original_silver(how, &percent(covered)),
                None,
                &[],
            );
        } else {
            say(
                "identity",
                words::most_likely(family.name(), &share(p)),
                None,
                &[],
            );
            if family == Family::ReplatedFused {
                say("replated", words::REPLATED.to_owned(), None, &[]);
            }
        }
    }

    /// Reasons to leave it alone: what each possible work would have gained.
    fn reasons_to_leave(&self, say: &mut Say) {
        for wanted in Treatment::ALL {
            let Some(i) = self.find(wanted) else { continue };
            if self.is_contrasted(wanted) {
                continue;
            }
            let code = match wanted {
                Treatment::Clean => "clean",
                Treatment::Replate => "replate",
                Treatment::Solder | Treatment::LowMelt => "repair",
                Treatment::TestLead | Treatment::Keeping => continue,
                other => other.id(),
            };
            let (gain, cost) = (self.gain(i), self.outcomes[i].cost.median());
            let tested = self.courses[i].steps.contains(&Treatment::TestLead);
            let name = if tested {
                words::tested_first(wanted.name())
            } else {
                wanted.name().to_owned()
            };
            let name = name.as_str();
            let text = if !self.courses[i].can_be_advised() {
                let why = self.courses[i]
                    .barred
                    .first()
                    .map_or("", |v| v.reason.as_str());
                words::not_this(name, why)
            } else if gain < 0.0 && cost < 0.5 {
                words::little_cost_and_loss(name, &money(self.case, -gain))
            } else if gain < 0.0 {
                words::cost_and_loss(name, &money(self.case, cost), &money(self.case, -gain))
            } else {
                words::too_little_gain(name, &money(self.case, gain))
            };
            let test = tested.then_some(Treatment::TestLead);
            let named: Vec<Treatment> = test.into_iter().chain([wanted]).collect();
            say(code, text, Some(gain), &named);
        }
    }

    /// Whether the headline names this work at its quoted price.
    fn is_contrasted(&self, wanted: Treatment) -> bool {
        self.contrast.is_some_and(|c| {
            let mut works = c.steps.iter().filter(|t| **t != Treatment::TestLead);
            works.next() == Some(&wanted) && works.next().is_none()
        })
    }

    /// From "as it is" to "after", by cause: value, fees, cost. The amounts add up to the gain.
    fn bridge(&self, chosen: usize, say: &mut Say) {
        let (before, after) = (&self.outcomes[0], &self.outcomes[chosen]);
        let value = (after.hammer.mean() - before.hammer.mean()) * self.draws.insure_factor;
        let cost = after.cost.mean();
        let gain = self.gain(chosen);
        let fees = gain - value + cost;
        let verb = if value >= 0.0 {
            words::RAISES
        } else {
            words::LOWERS
        };
        say(
            "value",
            words::value(verb, &money(self.case, value.abs())),
            Some(value),
            &[],
        );
        if fees.abs() >= 0.5 {
            let sum = money(self.case, fees.abs());
            // A shop's price may gain more than its fees take.
            let text = if fees * value > 0.0 {
                words::place(&sum)
            } else {
                words::fees(&sum)
            };
            say("fees", text, Some(fees), &[]);
        }
        say(
            "cost",
            words::cost(&money(self.case, cost)),
            Some(-cost),
            &[],
        );
        let sum = if gain >= 0.0 {
            words::BETTER
        } else {
            words::WORSE
        };
        say(
            "gain",
            words::together(&money(self.case, gain.abs()), sum),
            Some(gain),
            &[],
        );
    }

    /// What would change the answer, in words.
    pub(super) fn change_words(&self, change: &ChangeReport) -> String {
        let to = steps_in_words(&change.to_steps);
        let at = |x: f64| match change.input {
            Input::Value | Input::Cost => money(self.case, x),
            Input::Bleed => percent(x),
            Input::Fused => share(x),
        };
        let Some(flip) = change.flips_at else {
            return words::no_value_changes(&capital(&change.name));
        };
        let side = if flip > change.now {
            words::MORE_THAN
        } else {
            words::LESS_THAN
        };
        let subject = match change.input {
            Input::Value => words::if_value(side, &at(flip)),
            Input::Cost => words::if_cost(side, &at(flip)),
            Input::Bleed => words::if_bleed(side, &at(flip)),
            Input::Fused => words::if_fused(side, &at(flip)),
        };
        words::answer_would_be(&subject, &to)
    }

    /// Reasons to let a specialist look first; empty when there are none.
    pub(super) fn referrals(&self) -> Vec<String> {
        let mut why = Vec::new();
        let posterior = &self.situation.posterior;
        let delicate = posterior.of_any(&[
            Kind::Fps,
            Kind::Fpd,
            Kind::Fpn,
            Kind::Clp,
            Kind::Frp,
            Kind::Ebm,
        ]);
        let serious = [
            Treatment::Solder,
            Treatment::LowMelt,
            Treatment::RemoveLead,
            Treatment::RemoveFill,
            Treatment::Dents,
            Treatment::Tinning,
            Treatment::Regild,
            Treatment::LocalPlate,
            Treatment::Overplate,
            Treatment::Replate,
        ];
        if delicate >= 0.5 && self.chosen().steps.iter().any(|t| serious.contains(t)) {
            why.push(words::DELICATE.to_owned());
        }
        if self.advice.firmness == Firmness::Open {
            why.push(words::NOT_SETTLED.to_owned());
        }
        if self.situation.active_corrosion() {
            why.push(words::CORRODING.to_owned());
        }
        if self.case.aim.food
            && self.situation.release() == crate::treatment::Release::Untested
            && self.situation.case.is_soldered()
        {
            why.push(words::FOOD_UNKNOWN.to_owned());
        }
        let fee = self.ledger.value(FigureId::COST_OPINION);
        if self.worth_of_kind > fee {
            why.push(words::worth_an_opinion(&money(
                self.case,
                self.worth_of_kind,
            )));
        }
        why
    }
}

/// Treatment ids as a list of what is done.
fn steps_in_words(steps: &[Treatment]) -> String {
    let names: Vec<String> = steps
        .iter()
        .filter(|t| **t != Treatment::Wash || !steps.contains(&Treatment::Clean))
        .map(|t| t.name().to_ascii_lowercase())
        .collect();
    names.join(words::NEXT)
}
