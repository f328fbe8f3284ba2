//! One case weighed: the courses worth comparing, found and weighed on one sample, the advice, and its
//! contrast.

use super::advise::{Advice, advise, choose, least_noise};
use super::choice::{Rulings, Tested, not_needed};
use super::column::Column;
use super::contrast::{Contrast, contrast};
use super::course::Course;
use super::outcome::{CourseOutcome, Weigher};
use super::search::{Menu, Tally, changes_of, course_of, improve, search};
use super::steps_alone::{conflicts, place_alone, with_companions};
use super::wording::advise as words;
use super::world::World;
use crate::identity::Posterior;
use crate::maths::mean;
use crate::terms::ShortSort;
use crate::treatment::{Treatment, work};

/// How much a weighing covers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Depth {
    /// The advice alone: for the search for what would change it.
    AdviceOnly,
    /// Also each treatment alone, the contrast, each step left out, and the user's proposal.
    Whole,
}

/// The result of a weighing.
pub(super) struct Weighed {
    /// Leaving alone first, better keeping second.
    pub(super) courses: Vec<Course>,
    pub(super) outcomes: Vec<CourseOutcome>,
    pub(super) advice: Advice,
    /// What the piece as it is would fetch, what is kept of that, and what a seller keeps.
    pub(super) as_it_is: [Column; 3],
    pub(super) contrast: Option<Contrast>,
    /// The indices of the courses shown to the user, before they are sorted.
    pub(super) shown: Vec<usize>,
    /// For each course shown and each of its steps, the score without the step minus the score with it.
    pub(super) without: Vec<(usize, Vec<(Treatment, f64)>)>,
}

/// The most courses shown.
pub(super) const MOST_SHOWN: usize = 16;
/// Draws on which the effect of leaving out a step is estimated.
const GAUGE: usize = 512;

/// Weighs a case.
pub(super) fn weigh_courses(world: &World, posterior: &Posterior, depth: Depth) -> Weighed {
    let n = world.draws.n;
    let rulings = Rulings::new(world);
    let weigher = Weigher::new(world);
    let menu = Menu::new(&rulings, &weigher);
    let mut tally = Tally {
        weigher: &weigher,
        rulings: &rulings,
        n,
        courses: Vec::new(),
        outcomes: Vec::new(),
    };
    let leave = tally.place(course_of(&[], Tested::AsRecorded, &rulings));
    let keep = tally.place(course_of(
        &[Treatment::Keeping],
        Tested::AsRecorded,
        &rulings,
    ));
    let as_it_is = weigher.as_it_is();
    let least = least_noise(
        tally.outcomes[leave].net.median(),
        world.draws.undamaged.median(),
        world.goal,
        world.ledger,
    );
    let cut = search(&mut tally, &menu, least);
    improve(&mut tally, &menu);
    let mut wanted = Vec::new();
    if depth == Depth::Whole {
        wanted = alone(&mut tally, &menu);
        improve(&mut tally, &menu);
    }
    let choice = choose(
        &tally.courses,
        &tally.outcomes,
        world.draws,
        world.goal,
        world.ledger,
    );
    let changes = changes_of(&mut tally, &menu, choice.0);
    // A change that is gentler and within the noise may turn out to be the advice.
    let choice = choose(
        &tally.courses,
        &tally.outcomes,
        world.draws,
        world.goal,
        world.ledger,
    );
    let changes = if depth == Depth::Whole {
        changes_of(&mut tally, &menu, choice.0)
    } else {
        changes
    };
    let judge = |tally: &Tally| {
        advise(
            choice,
            &tally.courses,
            &tally.outcomes,
            &changes,
            world.draws,
            world.case,
            world.ledger,
            posterior,
            &world.prices,
        )
    };
    let mut advice = judge(&tally);
    let (mut contrasted, mut shown, mut without) = (None, Vec::new(), Vec::new());
    if depth == Depth::Whole {
        contrasted = contrast(&mut tally, &menu, &advice);
        if tally.courses.len() > advice.p_best.len() {
            // The contrast weighs further courses if nothing weighed so far answers the fault.
            advice = judge(&tally);
        }
        shown = to_show(
            &tally,
            &advice,
            &[leave, keep],
            &wanted,
            contrasted.as_ref(),
        );
        without = shown
            .iter()
            .filter(|i| !matches!(tally.courses[**i].steps.as_slice(), [_]))
            .map(|i| (*i, steps_left_out(&tally, *i)))
            .collect();
    }
    if cut {
        advice.doubts.push(words::NOT_EVERY_COURSE.to_owned());
    }
    Weighed {
        advice,
        as_it_is,
        contrast: contrasted,
        shown,
        without,
        courses: tally.courses,
        outcomes: tally.outcomes,
    }
}

/// Weighs each treatment with something to do on its own, with better keeping if the best course has it, and
/// everything asked about or quoted together. Returns the indices of the latter.
fn alone(tally: &mut Tally, menu: &Menu) -> Vec<usize> {
    let world = tally.weigher.world;
    let best = tally.best();
    let keep = tally.courses[best].steps.contains(&Treatment::Keeping);
    for t in Treatment::ALL {
        if work(t).is_none()
            || matches!(t, Treatment::Keeping | Treatment::Wash)
            || not_needed(t, world).is_some()
        {
            continue;
        }
        place_alone(tally, menu, &[t], keep);
    }
    let mut wanted = Vec::new();
    let asked = world.asked();
    let mut sets: Vec<Vec<Treatment>> = world
        .prices
        .bundles()
        .map(|b| b.treatments.clone())
        .collect();
    sets.push(asked);
    sets.push(
        Treatment::ALL
            .into_iter()
            .filter(|t| world.prices.is_quoted(*t))
            .collect(),
    );
    for set in sets {
        let set: Vec<Treatment> = set
            .into_iter()
            .filter(|t| work(*t).is_some() && not_needed(*t, world).is_none())
            .collect();
        if set.is_empty() || conflicts(&set) {
            continue;
        }
        wanted.push(place_alone(tally, menu, &set, keep));
    }
    wanted
}

/// What the user is shown: the advice, leaving, keeping, what was asked about or quoted, the contrast, the
/// runner-up, each treatment alone, then the best of the rest.
fn to_show(
    tally: &Tally,
    advice: &Advice,
    always: &[usize],
    wanted: &[usize],
    contrast: Option<&Contrast>,
) -> Vec<usize> {
    let mut shown = vec![advice.chosen];
    let more = always
        .iter()
        .copied()
        .chain(wanted.iter().copied())
        .chain(contrast.and_then(|c| c.course))
        .chain(advice.runner_up);
    let singles = (0..tally.courses.len()).filter(|i| {
        let group = tally.courses[*i].group();
        group.iter().filter(|t| **t != Treatment::TestLead).count() == 1
    });
    let mut rest: Vec<usize> = (0..tally.courses.len()).collect();
    rest.order_by(|a, b| {
        let open = |i: usize| tally.courses[i].can_be_advised();
        open(*b).cmp(&open(*a)).then(
            tally.outcomes[*b]
                .score
                .mean()
                .total_cmp(&tally.outcomes[*a].score.mean()),
        )
    });
    // One course for each treatment alone comes before variants.
    let mut groups: Vec<Vec<Treatment>> = Vec::new();
    let mut first_of_group = Vec::new();
    for i in singles {
        let group = tally.courses[i].group();
        if !groups.contains(&group) {
            groups.push(group);
            first_of_group.push(i);
        }
    }
    for i in more.chain(first_of_group).chain(rest) {
        if shown.len() < MOST_SHOWN && !shown.contains(&i) {
            shown.push(i);
        }
    }
    shown
}

/// For each step of a course, the mean score without it minus the mean score with it, on the first draws.
pub(super) fn steps_left_out(tally: &Tally, of: usize) -> Vec<(Treatment, f64)> {
    let course = &tally.courses[of];
    let n = GAUGE.min(tally.n);
    let with = mean(&tally.outcomes[of].score[..n]);
    let companions = [Treatment::Wash, Treatment::LacquerOff];
    course
        .steps
        .iter()
        .filter(|t| !companions.contains(t) && **t != Treatment::TestLead)
        .map(|t| {
            let rest: Vec<Treatment> = course
                .steps
                .iter()
                .copied()
                .filter(|s| s != t && !companions.contains(s))
                .collect();
            let rest = with_companions(&rest, tally.weigher.world, false);
            let without = course_of(&rest, course.tested, tally.rulings);
            (*t, mean(&tally.weigher.score(&without, n)) - with)
        })
        .collect()
}
