//! Why: the reasons, the contrast, what would change it, and when to refer. Reads results, computes
//! nothing but differences of them.

use super::advise::{Advice, Firmness};
use super::course::Course;
use super::draws::Draws;
use super::outcome::Outcome;
use super::wording::{advice_sentence, course_name, money};
use crate::case::{Case, Goal};
use crate::facts::Ledger;
use crate::identity::{Family, Kind};
use crate::maths::{mean, median};
use crate::report::{ChangeReport, ReasonReport, Text};
use crate::small::{capital, percent, share};
use crate::treatment::{Situation, Treatment};

/// Everything the explanation looks at.
pub(super) struct Explained<'a> {
    pub(super) case: &'a Case,
    pub(super) ledger: &'a Ledger,
    pub(super) situation: &'a Situation<'a>,
    pub(super) courses: &'a [Course],
    pub(super) outcomes: &'a [Outcome],
    pub(super) draws: &'a Draws,
    pub(super) advice: &'a Advice,
    /// In the case's currency, whatever the goal.
    pub(super) worth_of_kind: f64,
}

impl Explained<'_> {
    fn chosen(&self) -> &Course {
        &self.courses[self.advice.chosen]
    }

    fn find(&self, wanted: Treatment) -> Option<usize> {
        self.courses.iter().position(|c| c.group() == [wanted])
    }

    /// Mean money of a course against leaving it.
    fn gain(&self, course: usize) -> f64 {
        mean(&self.outcomes[course].net) - mean(&self.outcomes[0].net)
    }

    /// The answer in one sentence, with the plainest reason against what was not chosen.
    pub(super) fn sentence(&self) -> String {
        let mut answer = advice_sentence(self.chosen(), self.case);
        if self.chosen().touches() {
            return answer;
        }
        let tests = self.chosen().steps.contains(&Treatment::TestLead);
        if self.case.aim.food && !tests && !self.situation.display_only().is_empty() {
            answer.push_str(" Do not use it for food or drink.");
        }
        let contrast = self.find(Treatment::Replate).filter(|r| {
            self.case.quote(Treatment::Replate).is_some()
                || !self.courses[*r].can_be_advised()
                || self.advice.runner_up == Some(*r)
        });
        match contrast {
            Some(r) => {
                let cost = median(&self.outcomes[r].cost);
                let loss = if self.situation.original_fused() >= 0.5 {
                    "take away the very surface a buyer pays for"
                } else if self.situation.posterior.of(Kind::Sil) >= 0.5 {
                    "plate over solid silver"
                } else if self.courses[r].can_be_advised() && self.gain(r) < 0.0 {
                    "not earn that back"
                } else {
                    "be work that cannot be undone"
                };
                format!(
                    "{answer} Replating would cost about {} and {loss}.",
                    money(self.case, cost)
                )
            }
            None => answer,
        }
    }

    /// How firmly, in one sentence.
    pub(super) fn firmness_words(&self) -> String {
        let p = share(self.advice.p_best[self.advice.chosen]);
        match self.advice.firmness {
            Firmness::Clear => format!(
                "Clear: in {p} of the ways things may be, nothing else does noticeably better."
            ),
            Firmness::Leaning => format!(
                "Leaning this way: in {p} of the ways things may be, nothing else does noticeably better."
            ),
            Firmness::Open => format!(
                "Open: only in {p} of the ways things may be does nothing else do noticeably better. Of the courses that come out level, this one keeps most choice for later."
            ),
        }
    }

    /// The reasons, the weightiest first.
    pub(super) fn reasons(&self) -> Vec<ReasonReport> {
        let mut reasons = Vec::new();
        let mut say = |code: &'static str, text, amount| {
            reasons.push(ReasonReport {
                code: code.into(),
                text,
                amount,
            });
        };
        let chosen = self.advice.chosen;
        let own = &self.outcomes[chosen];
        self.identity_reason(&mut say);
        if self.case.aim.food && !self.situation.display_only().is_empty() {
            let text = if self.chosen().steps.contains(&Treatment::TestLead) {
                "You want to serve food or drink from it. Until a test says no lead is released, it is for display."
            } else {
                "You want to serve food or drink from it, but as it stands it is for display only."
            };
            say("food", text.to_owned(), None);
        }
        if self.situation.active_corrosion() {
            say(
                "corrosion",
                "Something is still corroding. Keeping it dry comes before anything else."
                    .to_owned(),
                None,
            );
        }
        if chosen == 0 || !self.chosen().touches() {
            self.reasons_to_leave(&mut say);
        } else {
            self.bridge(chosen, &mut say);
            let kept = own.originality;
            if kept < 0.995 {
                say(
                    "originality",
                    format!("It keeps {} of what is original.", percent(kept)),
                    None,
                );
            }
        }
        if let Some(rival) = self.advice.runner_up {
            let gap = self.gain(rival) - self.gain(chosen);
            let name = course_name(&self.courses[rival]).to_ascii_lowercase();
            let text = if self.case.aim.goal_or_default() == Goal::Sell {
                if gap < 0.0 {
                    format!(
                        "The next best, {name}, leaves about {} less on average.",
                        money(self.case, -gap)
                    )
                } else {
                    format!(
                        "The next best, {name}, leaves about {} more on average: within the noise, or harder to undo.",
                        money(self.case, gap)
                    )
                }
            } else {
                let points = 100.0 * (mean(&own.score) - mean(&self.outcomes[rival].score));
                match points.round().abs() {
                    0.0..1.0 => {
                        format!("The next best, {name}, comes out level for what you want.")
                    }
                    n => format!(
                        "The next best, {name}, scores {n:.0} point{} in 100 {} for what you want.",
                        if n < 2.0 { "" } else { "s" },
                        if points >= 0.0 { "lower" } else { "higher" }
                    ),
                }
            };
            say("runner_up", text, Some(gap));
        }
        reasons
    }

    fn identity_reason(&self, say: &mut dyn FnMut(&'static str, String, Option<f64>)) {
        let (family, p) = self.situation.posterior.top_family();
        let original = self.situation.original_fused();
        let covered = self.situation.covered_area;
        if original >= self.ledger.value("guard.h14.p")
            && covered > self.ledger.value("guard.h14.area")
        {
            let how = if original >= 0.8 {
                "It is very probably"
            } else {
                "It may well be"
            };
            say(
                "original_silver",
                format!(
                    "{how} fused plate (old Sheffield plate), and its own silver may still cover {} of it. That surface cannot be put back.",
                    percent(covered)
                ),
                None,
            );
        } else {
            say(
                "identity",
                format!("It is most likely {} ({}).", family.name(), share(p)),
                None,
            );
            if family == Family::ReplatedFused {
                say(
                    "replated",
                    "The silver now on it was put there later, so a collector has less to lose."
                        .to_owned(),
                    None,
                );
            }
        }
    }

    /// Leaving alone: what each thing one might have done would have brought.
    fn reasons_to_leave(&self, say: &mut dyn FnMut(&'static str, String, Option<f64>)) {
        for (wanted, code) in [
            (Treatment::Clean, "clean"),
            (Treatment::Replate, "replate"),
            (Treatment::Solder, "repair"),
            (Treatment::LowMelt, "repair"),
        ] {
            let Some(i) = self.find(wanted) else { continue };
            let (gain, cost) = (self.gain(i), median(&self.outcomes[i].cost));
            let name = wanted.name();
            let text = if !self.courses[i].can_be_advised() {
                let why = self.courses[i]
                    .barred
                    .first()
                    .map_or("", |v| v.reason.as_str());
                format!("{name}: not this. {why}")
            } else if gain < 0.0 && cost < 0.5 {
                format!(
                    "{name} costs little, but leaves you about {} worse off: it can go wrong, and it takes some silver.",
                    money(self.case, -gain)
                )
            } else if gain < 0.0 {
                format!(
                    "{name} would cost about {} and leave you about {} worse off.",
                    money(self.case, cost),
                    money(self.case, -gain)
                )
            } else {
                format!(
                    "{name} would leave you about {} better off in money, which is too little, or too hard to undo, to be worth it.",
                    money(self.case, gain)
                )
            };
            say(code, text, Some(gain));
        }
    }

    /// From "as it is" to "after", by cause: value, fees, cost. The amounts add up to the gain.
    fn bridge(&self, chosen: usize, say: &mut dyn FnMut(&'static str, String, Option<f64>)) {
        let (before, after) = (&self.outcomes[0], &self.outcomes[chosen]);
        let value = (after.value - before.value) * self.draws.insure_factor;
        let cost = mean(&after.cost);
        let gain = self.gain(chosen);
        let fees = gain - value + cost;
        let verb = if value >= 0.0 { "raises" } else { "lowers" };
        say(
            "value",
            format!(
                "The work {verb} what it would fetch by about {} on average, mishaps included.",
                money(self.case, value.abs())
            ),
            Some(value),
        );
        if fees.abs() >= 0.5 {
            say(
                "fees",
                format!(
                    "Selling charges take about {} of the change.",
                    money(self.case, fees.abs())
                ),
                Some(fees),
            );
        }
        say(
            "cost",
            format!("The work costs about {}.", money(self.case, cost)),
            Some(-cost),
        );
        let sum = if gain >= 0.0 { "better" } else { "worse" };
        say(
            "gain",
            format!(
                "Together that leaves you about {} {sum} off than leaving it.",
                money(self.case, gain.abs())
            ),
            Some(gain),
        );
    }

    /// What would change the answer, in words.
    pub(super) fn change_words(&self, change: &ChangeReport) -> String {
        let to = steps_in_words(&change.to_steps);
        let at = |x: f64| match &*change.input {
            "value" | "cost" => money(self.case, x),
            "bleed" => percent(x),
            _ => share(x),
        };
        let Some(flip) = change.flips_at else {
            return format!(
                "{}: no value we tried changes the answer.",
                capital(&change.name)
            );
        };
        let side = if flip > change.now {
            "more than"
        } else {
            "less than"
        };
        let subject = match &*change.input {
            "value" => format!("If an undamaged one fetched {side} {}", at(flip)),
            "cost" => format!("If the work cost {side} {}", at(flip)),
            "bleed" => format!("If base metal showed on {side} {} of it", at(flip)),
            _ => format!(
                "If the chance of fused plate with its own silver were {side} {}",
                at(flip)
            ),
        };
        format!("{subject}, the answer would be: {to}.")
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
            Treatment::Replate,
        ];
        if delicate >= 0.5 && self.chosen().steps.iter().any(|t| serious.contains(t)) {
            why.push("This work on this kind of piece is for somebody who knows it.".to_owned());
        }
        if self.advice.firmness == Firmness::Open {
            why.push("The figures do not settle it.".to_owned());
        }
        if self.situation.active_corrosion() {
            why.push("It is corroding now.".to_owned());
        }
        if self.case.aim.food
            && self.situation.lead == crate::treatment::LeadStatus::Unknown
            && self.situation.case.is_soldered()
        {
            why.push(
                "Food is wanted from it and nobody knows whether it releases lead.".to_owned(),
            );
        }
        let fee = self.ledger.value("cost.opinion");
        if self.worth_of_kind > fee {
            why.push(format!(
                "Knowing for certain what it is could be worth up to about {}, more than an opinion usually costs.",
                money(self.case, self.worth_of_kind)
            ));
        }
        why
    }
}

/// Treatment ids as a list of what is done.
fn steps_in_words(steps: &[Text]) -> String {
    let names: Vec<String> = steps
        .iter()
        .filter(|id| !(*id == "T02" && steps.iter().any(|other| other == "T03")))
        .filter_map(|id| Treatment::parse(id))
        .map(|t| t.name().to_ascii_lowercase())
        .collect();
    names.join(", then ")
}
