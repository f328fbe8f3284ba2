//! Which plans there are, and what the rules say of each.

use super::wording::course as words;
use crate::record::Joint;
use crate::small::sort_short;
use crate::treatment::{LeadStatus, Reversibility, Situation, Treatment, Verdict, check, worst};

/// A plan: at most three steps in the order they would be done. With a test for lead it is a policy:
/// what follows depends on the result.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Course {
    pub(super) steps: Vec<Treatment>,
    /// What is really done if no lead is found, and if lead is.
    pub(super) if_clear: Vec<Treatment>,
    pub(super) if_lead: Vec<Treatment>,
    /// Why it cannot be advised; empty when it can.
    pub(super) barred: Vec<Verdict>,
    /// Conditions that go with it.
    pub(super) conditions: Vec<Verdict>,
}

impl Course {
    pub(super) fn can_be_advised(&self) -> bool {
        self.barred.is_empty()
    }

    /// Steps that tell it from others when one asks what is best: keeping and washing do not.
    pub(super) fn group(&self) -> Vec<Treatment> {
        self.steps
            .iter()
            .copied()
            .filter(|t| !matches!(t, Treatment::Leave | Treatment::Keeping | Treatment::Wash))
            .collect()
    }

    /// Whether anything is done to the piece itself.
    pub(super) fn touches(&self) -> bool {
        self.steps.iter().any(|t| {
            !matches!(
                t,
                Treatment::Leave | Treatment::Keeping | Treatment::TestLead
            )
        })
    }

    /// Worst reversibility of its steps.
    pub(super) fn reversibility(&self) -> Reversibility {
        self.steps
            .iter()
            .map(|t| t.reversibility())
            .min()
            .unwrap_or(Reversibility::V4)
    }
}

/// Why a treatment has nothing to do in this situation; `None` when it has.
pub fn not_needed(treatment: Treatment, s: &Situation) -> Option<&'static str> {
    let open = matches!(s.joint, Some(Joint::Open | Joint::Leaking));
    match treatment {
        Treatment::TestLead if !s.lead_test_would_tell() => Some(words::TESTED),
        Treatment::Clean if s.cleaned => Some(words::CLEAN),
        Treatment::Clean => match super::draws::tarnish_of(s.case) {
            None => Some(words::NO_TARNISH),
            Some(crate::record::Tarnish::Bright) => Some(words::BRIGHT),
            Some(_) => None,
        },
        Treatment::Solder | Treatment::LowMelt if !open => Some(words::NO_OPEN_JOINT),
        Treatment::RemoveLead if !s.any_joint(&[Joint::GreyRepair]) => Some(words::NO_GREY_REPAIR),
        // Somebody who holds a quote is asking about it, and gets an answer.
        Treatment::Replate
            if s.case.quote(treatment).is_none()
                && s.body_bleed < s.ledger.value("silver.f_none")
                && s.covered_area > 0.99 =>
        {
            Some(words::HARDLY_ANY_BLEED)
        }
        _ => None,
    }
}

/// The situation after a step.
pub(super) fn after<'a>(s: &Situation<'a>, step: Treatment) -> Situation<'a> {
    let mut next = s.clone();
    match step {
        Treatment::Solder | Treatment::LowMelt => {
            next.joint = Some(if s.any_joint(&[Joint::GreyRepair]) {
                Joint::GreyRepair
            } else {
                Joint::NeatRepair
            });
            next.low_melt |= step == Treatment::LowMelt;
        }
        // The rework that goes with it closes the joint it was in; another open one stays open.
        Treatment::RemoveLead if !matches!(s.joint, Some(Joint::Open | Joint::Leaking)) => {
            next.joint = Some(Joint::NeatRepair);
        }
        Treatment::LacquerOff => next.lacquer_off = true,
        // Tin for food is tested before it is used.
        Treatment::Tinning => next.lining_tested = true,
        Treatment::Clean => next.cleaned = true,
        Treatment::Replate => {
            next.replated = true;
            next.cleaned = true;
        }
        _ => {}
    }
    next
}

/// Every plan worth weighing: all that can be advised, and each weighed treatment by itself even if
/// barred, so that a person sees why. Leaving alone and better keeping are always there.
pub(super) fn courses(start: &Situation) -> Vec<Course> {
    let mut found: Vec<Course> = Vec::new();
    for steps in plans() {
        if let Some(course) = walk(&steps, start)
            && (course.can_be_advised() || is_single(&course))
            && !found
                .iter()
                .any(|c| c.if_clear == course.if_clear && c.if_lead == course.if_lead)
        {
            found.push(course);
        }
    }
    found
}

/// A barred plan is shown when it is one treatment, with the wash that goes before cleaning.
fn is_single(course: &Course) -> bool {
    course.group().len() == 1 && !course.steps.contains(&Treatment::Keeping)
}

/// All ordered plans of at most three steps, before any rule has looked at them.
fn plans() -> Vec<Vec<Treatment>> {
    use Treatment as T;
    let slots: [&[T]; 7] = [
        &[T::TestLead],
        &[T::Wash],
        &[T::RemoveLead],
        &[T::Solder, T::LowMelt],
        &[T::Clean],
        &[T::Replate],
        &[T::Keeping],
    ];
    let mut plans: Vec<Vec<T>> = vec![vec![]];
    for slot in slots {
        let mut longer = Vec::new();
        for plan in plans.iter().filter(|p| p.len() < 3) {
            for t in slot {
                let mut next = plan.clone();
                next.push(*t);
                longer.push(next);
            }
        }
        plans.extend(longer);
    }
    plans.retain(|p| {
        let has = |t| p.contains(&t);
        // A wash is only done to clean, and cleaning only after a wash; plating makes cleaning idle.
        has(T::Wash) == has(T::Clean) && !(has(T::Clean) && has(T::Replate))
    });
    plans[0] = vec![T::Leave];
    // Shorter plans first, so that of two that come to the same the simpler one is kept.
    sort_short(&mut plans, |a, b| a.len().cmp(&b.len()));
    plans
}

/// Takes a plan step by step through the rules; `None` when a step has nothing to do.
fn walk(steps: &[Treatment], start: &Situation) -> Option<Course> {
    if steps.first() == Some(&Treatment::TestLead) {
        if not_needed(Treatment::TestLead, start).is_some() {
            return None;
        }
        return walk_after_test(steps, start);
    }
    let mut course = Course {
        steps: steps.to_vec(),
        if_clear: steps.to_vec(),
        if_lead: steps.to_vec(),
        barred: Vec::new(),
        conditions: Vec::new(),
    };
    let mut now = start.clone();
    for step in steps {
        if not_needed(*step, &now).is_some() {
            return None;
        }
        for verdict in check(*step, &now) {
            note(&mut course, verdict);
        }
        now = after(&now, *step);
    }
    Some(course)
}

/// A plan that begins with the test. After each result the rules are asked again; a step barred by
/// one result is left out on that side only. Barred when the result makes no step possible.
fn walk_after_test(steps: &[Treatment], start: &Situation) -> Option<Course> {
    let mut course = Course {
        steps: steps.to_vec(),
        if_clear: vec![Treatment::TestLead],
        if_lead: vec![Treatment::TestLead],
        barred: Vec::new(),
        conditions: Vec::new(),
    };
    let mut refused: [Vec<Verdict>; 2] = [Vec::new(), Vec::new()];
    for (side, status) in [LeadStatus::Absent, LeadStatus::Present]
        .into_iter()
        .enumerate()
    {
        let mut now = start.clone();
        now.lead = status;
        for step in &steps[1..] {
            if not_needed(*step, &now).is_some() {
                return None;
            }
            let verdicts = check(*step, &now);
            if worst(&verdicts).can_be_advised() {
                for verdict in verdicts {
                    note(&mut course, verdict);
                }
                if side == 0 {
                    course.if_clear.push(*step);
                } else {
                    course.if_lead.push(*step);
                }
                now = after(&now, *step);
            } else {
                refused[side].extend(verdicts.into_iter().filter(|v| !v.outcome.can_be_advised()));
            }
        }
    }
    // A step that neither result allows bars the plan: it is not the plan that was named.
    for step in &steps[1..] {
        if !course.if_clear.contains(step) && !course.if_lead.contains(step) {
            let [clear, _] = refused;
            for verdict in clear {
                note(&mut course, verdict);
            }
            break;
        }
    }
    Some(course)
}

fn note(course: &mut Course, verdict: Verdict) {
    let list = if verdict.outcome.can_be_advised() {
        &mut course.conditions
    } else {
        &mut course.barred
    };
    if !list.contains(&verdict) {
        list.push(verdict);
        sort_short(list, |a, b| b.outcome.cmp(&a.outcome));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plans_are_short_ordered_and_never_repeat() {
        let plans = plans();
        assert!(
            plans.contains(&vec![Treatment::Leave]) && plans.contains(&vec![Treatment::Keeping])
        );
        for p in &plans {
            assert!((1..=3).contains(&p.len()));
            let mut once = p.clone();
            once.dedup();
            assert_eq!(&once, p);
        }
        let three = [Treatment::TestLead, Treatment::Solder, Treatment::Replate];
        assert!(plans.iter().any(|p| p == &three));
    }
}
