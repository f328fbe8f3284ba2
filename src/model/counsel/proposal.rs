//! The user's proposal: a set of steps, each on the parts, at the price and by the hands it names, weighed
//! against leaving the piece alone.

use super::Solved;
use super::choice::{Rulings, Tested, not_needed};
use super::column::Column;
use super::course::Course;
use super::member::Member;
use super::outcome::{CourseOutcome, Weigher};
use super::search::{Tally, course_of};
use super::steps_alone::{conflicts, with_companions};
use super::weighed::steps_left_out;
use super::weights::Weights;
use super::wording::proposal as words;
use super::world::World;
use crate::ledger::Ground;
use crate::record::{Case, PartName};
use crate::report::ProposalReport;
use crate::terms::small;
use crate::treatment::{Outcome, Treatment, Verdict, answer_to, work, worst};

impl Solved {
    /// The proposal weighed at its own prices; `None` where there is none.
    pub(super) fn proposal(&self) -> Option<ProposalReport> {
        if self.case.proposal.steps.is_empty() {
            return None;
        }
        let mut case = (*self.case).clone();
        case.aim.doer_of = (case.proposal.steps.iter())
            .filter_map(|step| Some((step.treatment, step.who?)))
            .collect();
        let members = Member::wanted_as(&self.members, &case);
        let situation = self.situation_for(&case, &members);
        let mut world = self.world_of_one(&self.draws, &situation, Weights::of(&case.aim));
        world.case = &case;
        world.prices = world.prices.of(&case).of_proposal();
        let world = world
            .with_members(&members, &self.sample)
            .only_on(&parts_named(&case));
        let Proposed {
            course,
            outcome,
            leave,
            without,
            problems,
        } = weigh(&world);
        let nets = outcome.net.iter().zip(leave.net.iter());
        let gain: Column = nets.map(|(a, b)| a - b).collect();
        Some(ProposalReport {
            course: self.course_report(&course, &outcome, &gain, (0.0, 0.0), &without),
            problems,
        })
    }
}

/// The result of weighing a proposal.
struct Proposed {
    course: Course,
    outcome: CourseOutcome,
    /// Leaving alone, at the same prices.
    leave: CourseOutcome,
    without: Vec<(Treatment, f64)>,
    /// What was left out of it and why, or what a rule requires first.
    problems: Vec<String>,
}

/// The parts named for each work. If any step names no parts for a work, the work is for all parts.
fn parts_named(case: &Case) -> Vec<(Treatment, Vec<PartName>)> {
    let mut named: Vec<(Treatment, Vec<PartName>)> = Vec::new();
    for step in &case.proposal.steps {
        match named.iter_mut().find(|(t, _)| *t == step.treatment) {
            Some((_, parts)) if parts.is_empty() || step.parts.is_empty() => parts.clear(),
            Some((_, parts)) => parts.extend(&step.parts),
            None => named.push((step.treatment, step.parts.clone())),
        }
    }
    named.retain(|(_, parts)| !parts.is_empty());
    named
}

/// Weighs the proposal of the world's case. A step with nothing to do, a second step that undoes the first,
/// and a step that a rule bars are reported; the rest is weighed.
fn weigh(world: &World) -> Proposed {
    let rulings = Rulings::new(world);
    let weigher = Weigher::new(world);
    let mut problems = Vec::new();
    // The verdicts that these problems already quote.
    let mut quoted: Vec<Verdict> = Vec::new();
    let mut kept: Vec<Treatment> = Vec::new();
    for step in &world.case.proposal.steps {
        let t = step.treatment;
        if t == Treatment::Leave || kept.contains(&t) {
            continue;
        }
        let name = t.name();
        let verdicts = rulings.granted(t, None);
        if work(t).is_none() {
            let why = verdicts.first().map_or("", |v| v.reason.as_str());
            problems.push(words::step_out(name, why));
            quoted.extend(verdicts.first().cloned());
            continue;
        }
        if let Some(why) = not_needed(t, world) {
            problems.push(words::step_out(name, why));
            continue;
        }
        if meets_nothing(t, world) {
            problems.push(words::step_out(name, words::NOT_ON_THESE_PARTS));
            continue;
        }
        let more: Vec<Treatment> = kept.iter().copied().chain([t]).collect();
        if conflicts(&more) {
            problems.push(words::step_out(name, words::UNDOES_ANOTHER));
            continue;
        }
        if let Some(v) = verdicts
            .first()
            .filter(|_| !worst(&verdicts).can_be_advised())
        {
            quoted.push(v.clone());
            if v.outcome == Outcome::Barred {
                problems.push(words::step_out(name, &v.reason));
                continue;
            }
            problems.push(words::step_waits(name, &v.reason, &v.lifted_by));
        }
        problems.extend(parts_said(t, world));
        kept.push(t);
    }
    let tested = if kept.contains(&Treatment::TestLead) {
        Tested::First
    } else {
        Tested::AsRecorded
    };
    let steps = with_companions(&kept, world, false);
    let course = course_of(&steps, tested, &rulings);
    for v in course.barred.iter().filter(|v| v.ground == Ground::Need) {
        if !quoted.contains(v) {
            problems.push(format!("{} {}", v.reason, v.lifted_by));
            quoted.push(v.clone());
        }
    }
    let n = world.draws.n;
    let mut tally = Tally {
        weigher: &weigher,
        rulings: &rulings,
        n,
        courses: Vec::new(),
        outcomes: Vec::new(),
    };
    let place = tally.place(course.clone());
    let without = steps_left_out(&tally, place);
    let leave = weigher.weigh(&course_of(&[], Tested::AsRecorded, &rulings), n);
    let outcome = tally.outcomes.swap_remove(place);
    Proposed {
        course,
        outcome,
        leave,
        without,
        problems,
    }
}

/// The faults that this work answers, each divided into what it answers on the parts named and what it
/// leaves.
fn divided<'a>(
    t: Treatment,
    world: &'a World,
) -> impl Iterator<Item = [Option<crate::treatment::Found>; 2]> + 'a {
    let answered = move |fault| answer_to(fault, &[t]) == Some(t);
    let faults = world.faults.0.iter().filter(move |f| answered(f.fault));
    faults.map(move |f| world.met_by(t, f))
}

/// Whether none of the parts named has a fault that this work answers.
fn meets_nothing(t: Treatment, world: &World) -> bool {
    let mut any = divided(t, world).peekable();
    any.peek().is_some() && any.all(|[met, _]| met.is_none())
}

/// The message about the parts named for a work.
fn parts_said(t: Treatment, world: &World) -> Option<String> {
    world.only_on.iter().find(|(named, _)| *named == t)?;
    let mut any = divided(t, world).peekable();
    if any.peek().is_none() {
        return Some(words::on_the_whole(t.name()));
    }
    let mut left: Vec<PartName> = Vec::new();
    for part in any.filter_map(|[_, left]| left).flat_map(|f| f.parts) {
        if !left.contains(&part) {
            left.push(part);
        }
    }
    let names: Vec<String> = left.iter().map(|p| small(p.label())).collect();
    (!left.is_empty()).then(|| words::left_on(t.name(), &names.join(", ")))
}

#[cfg(test)]
mod tests {
    use crate::weigh_json;
    use serde_json::{Value, json};

    /// A proposal with these steps for a nickel tray with deep dents on its body and small ones on its
    /// border.
    fn proposal(steps: &Value) -> Value {
        let [body, border] = ["moderate", "minor"].map(
            |dents| json!({"dents": dents, "bleed": "none", "tarnish": "bright", "joint": "sound"}),
        );
        of_tray(steps, &[("body", body), ("border", border)])
    }

    fn of_tray(steps: &Value, parts: &[(&str, Value)]) -> Value {
        let parts: Vec<Value> = (parts.iter().cloned())
            .map(|(name, mut part)| {
                part["part"] = name.into();
                part
            })
            .collect();
        let case = json!({
            "format": "leavewell-case",
            "version": 2,
            "piece": {"form": "tray"},
            "findings": [
                {"id": "M01", "answer": "seen"},
                {"id": "S04", "answer": "seen"},
                {"id": "C09", "answer": "seen"}
            ],
            "parts": parts,
            "aim": {"goal": "sell"},
            "market": {"low": 600, "likely": 800, "high": 1000, "currency": "GBP"},
            "proposal": {"steps": steps},
        });
        let report: Value = serde_json::from_str(&weigh_json(&case.to_string())).unwrap();
        report["proposal"].clone()
    }

    #[test]
    fn what_a_step_needs_is_quoted_once() {
        let open = json!({"joint": "open", "bleed": "none", "tarnish": "bright"});
        let steps = json!([{"id": "1", "treatment": "T09b"}]);
        let problems = of_tray(&steps, &[("body", open)])["problems"].to_string();
        let reason = "This repair is for white metal and close plate";
        assert_eq!(problems.matches(reason).count(), 1, "{problems}");
    }

    fn fetches(proposal: &Value) -> f64 {
        let net = proposal["course"]["net"]["mean"].as_f64().unwrap();
        net + proposal["course"]["cost"]["p50"].as_f64().unwrap()
    }

    fn problems(proposal: &Value) -> String {
        proposal["problems"].to_string()
    }

    #[test]
    fn a_fault_on_a_part_that_no_step_names_still_counts() {
        let priced = |parts: &str| json!([{"id": "1", "treatment": "T08", "parts": parts, "likely": 60, "fixed": true}]);
        let (all, body, border) = (
            proposal(&priced("")),
            proposal(&priced("body")),
            proposal(&priced("border")),
        );
        assert_eq!(problems(&all), "[]");
        assert!(problems(&body).contains("stays on border"), "{body}");
        assert!(problems(&border).contains("stays on body"), "{border}");
        assert!(
            fetches(&all) > fetches(&body) + 1.0,
            "small dents stay on the border"
        );
        assert!(
            fetches(&body) > fetches(&border) + 1.0,
            "deep dents stay on the body"
        );
    }

    #[test]
    fn a_step_on_parts_without_the_fault_is_left_out() {
        let out =
            proposal(&json!([{"id": "1", "treatment": "T08", "parts": "foot", "likely": 60}]));
        assert!(
            problems(&out).contains("no fault that it would mend"),
            "{out}"
        );
        assert_eq!(out["course"]["steps"], json!(["T00"]));
    }

    #[test]
    fn the_same_work_on_two_parts_costs_both_prices() {
        let both = proposal(&json!([
            {"id": "1", "treatment": "T08", "parts": "body", "likely": 60, "fixed": true},
            {"id": "2", "treatment": "T08", "parts": "border", "likely": 45, "fixed": true},
        ]));
        assert_eq!(problems(&both), "[]");
        assert_eq!(both["course"]["cost"]["p50"], 105.0, "{both}");
    }

    #[test]
    fn the_rules_take_account_of_who_does_a_step() {
        let by = |who: &str| {
            let steps = json!([{"id": "1", "treatment": "T08", "likely": 60, "who": who}]);
            let leaded = json!({"dents": "moderate", "joint": "grey_repair", "lead": "present"});
            problems(&of_tray(&steps, &[("body", leaded)]))
        };
        assert!(by("owner").contains("left out"), "{}", by("owner"));
        assert!(!by("workshop").contains("left out"), "{}", by("workshop"));
    }

    #[test]
    fn work_on_the_whole_surface_says_that_parts_do_not_count() {
        let steps = json!([{"id": "1", "treatment": "T03", "parts": "body", "likely": 20}]);
        let cleaned = proposal(&steps);
        let problems = problems(&cleaned);
        assert!(
            problems.contains("for the whole piece") || problems.contains("left out"),
            "{cleaned}"
        );
    }
}
