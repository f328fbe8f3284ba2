//! Steps weighed by themselves, with what has to go with them.

use super::choice::{Tested, not_needed};
use super::course::Course;
use super::search::{Menu, Tally, course_of};
use super::world::World;
use crate::ledger::RuleId;
use crate::treatment::{Fault, Treatment};

/// Weighs these steps with the steps they need, after a test for lead if only the test makes them possible.
pub(super) fn place_alone(
    tally: &mut Tally,
    menu: &Menu,
    steps: &[Treatment],
    keep: bool,
) -> usize {
    let steps = with_companions(steps, tally.weigher.world, keep);
    let plain = course_of(&steps, Tested::AsRecorded, tally.rulings);
    let only_lead = plain.barred.iter().all(|v| {
        [RuleId::H16, RuleId::H29]
            .iter()
            .any(|rule| v.ground == *rule)
    });
    if !plain.can_be_advised() && only_lead && menu.tested.is_some() {
        let tested = course_of(&steps, Tested::First, tally.rulings);
        if tested.can_be_advised() {
            return tally.place(tested);
        }
    }
    tally.place(plain)
}

/// The steps with those they cannot do without: a wash before cleaning, old lacquer removed before work on
/// the silver, a clean surface under new lacquer.
pub(super) fn with_companions(steps: &[Treatment], world: &World, keep: bool) -> Vec<Treatment> {
    use Treatment as T;
    let mut all = steps.to_vec();
    let has = |all: &[T], t: T| all.contains(&t);
    let whole = has(&all, T::Replate) || has(&all, T::Overplate);
    let cleaned = |all: &[T]| has(all, T::Clean) || has(all, T::Foam);
    if has(&all, T::Lacquer)
        && !whole
        && !cleaned(&all)
        && !world.is_bright()
        && not_needed(T::Clean, world).is_none()
    {
        all.push(T::Clean);
    }
    if has(&all, T::LacquerOff) && !whole && !cleaned(&all) {
        // The metal under old lacquer is cleaned when the lacquer is removed.
        all.push(T::Clean);
    }
    if cleaned(&all) {
        all.push(T::Wash);
    }
    if world.faults.has(Fault::BrokenLacquer) && (cleaned(&all) || whole) {
        all.push(T::LacquerOff);
    }
    if keep {
        all.push(T::Keeping);
    }
    all
}

/// Whether one of the steps undoes or hides another.
pub(super) fn conflicts(steps: &[Treatment]) -> bool {
    use Treatment as T;
    let has = |t: T| steps.contains(&t);
    let whole = has(T::Replate) || has(T::Overplate);
    has(T::Replate) && has(T::Overplate)
        || whole && (has(T::Clean) || has(T::Foam) || has(T::LocalPlate))
        || has(T::Clean) && has(T::Foam)
        || has(T::Toning) && (whole || has(T::LocalPlate) || has(T::Lacquer))
        || has(T::Solder) && has(T::LowMelt)
        || has(T::Tinning) && has(T::Regild)
}

/// Whether a course leaves this fault if no lead is found.
pub(super) fn is_left(course: &Course, fault: Fault) -> bool {
    use Treatment as T;
    let done = &course.if_clear;
    match fault {
        Fault::BareMetal => !done
            .iter()
            .any(|t| matches!(t, T::LocalPlate | T::Overplate | T::Replate | T::Toning)),
        Fault::Tarnish => !done
            .iter()
            .any(|t| matches!(t, T::Clean | T::Foam | T::Overplate | T::Replate)),
        Fault::BrokenLacquer => !done.contains(&T::LacquerOff),
        _ => crate::treatment::answer_to(fault, done).is_none(),
    }
}
