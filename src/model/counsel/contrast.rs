//! The one contrast shown with the advice: what was asked about or quoted, or else the answer to the most
//! serious fault left, or else the runner-up.

use super::advise::Advice;
use super::choice::not_needed;
use super::course::Course;
use super::search::{Menu, Tally};
use super::sentences::{as_quoted, money, phrase};
use super::steps_alone::{conflicts, is_left, place_alone};
use super::wording::contrast as words;
use crate::ledger::FigureId;
use crate::ledger::Ground;
use crate::record::Goal;
use crate::terms::ShortSort;
use crate::treatment::{Fault, Outcome, Treatment, Verdict, answers_to, as_found, work};

/// What the contrast is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum About {
    /// What was asked about or quoted is not in the advice.
    Asked,
    /// What was asked about is in the advice.
    Advised,
    /// Leaving the piece, where work is advised.
    Leaving,
    /// The answer to the most serious fault left.
    Fault,
    /// The next best course.
    RunnerUp,
    /// What was asked about cannot be done.
    Barred,
    /// What was asked about has nothing to do.
    NotNeeded,
    /// What was asked about never suits these pieces.
    Never,
}

impl About {
    pub(super) fn id(self) -> &'static str {
        match self {
            Self::Asked => "asked",
            Self::Advised => "advised",
            Self::Leaving => "leaving",
            Self::Fault => "fault",
            Self::RunnerUp => "runner_up",
            Self::Barred => "barred",
            Self::NotNeeded => "not_needed",
            Self::Never => "never",
        }
    }
}

/// The contrast.
pub(super) struct Contrast {
    pub(super) about: About,
    /// The steps it is about, without the steps that accompany them.
    pub(super) steps: Vec<Treatment>,
    /// Its index among the courses, if it was weighed.
    pub(super) course: Option<usize>,
    /// Its cost, excluding the test for lead; as typed where quoted.
    pub(super) price: Option<f64>,
    pub(super) quoted: bool,
    /// The cost of the test for lead that would come first.
    pub(super) test: Option<f64>,
    /// Money relative to the advised course.
    pub(super) gain: f64,
    /// Points in 100 relative to the advised course.
    pub(super) points: f64,
    /// The rule that keeps it out.
    pub(super) verdict: Option<Verdict>,
    /// The sentence that states it.
    pub(super) sentence: String,
}

/// Finds the contrast to the advice.
pub(super) fn contrast(tally: &mut Tally, menu: &Menu, advice: &Advice) -> Option<Contrast> {
    let world = tally.weigher.world;
    let chosen = advice.chosen;
    let keep = tally.courses[chosen].steps.contains(&Treatment::Keeping);
    let background = [Treatment::Leave, Treatment::Keeping, Treatment::Wash];
    let mut asked = world.asked();
    if asked.is_empty() {
        asked = Treatment::ALL
            .into_iter()
            .filter(|t| world.prices.is_quoted(*t))
            .collect();
    }
    asked.retain(|t| !background.contains(t));
    if !asked.is_empty() {
        return Some(of_asked(tally, menu, advice, &asked, keep));
    }
    if tally.courses[chosen].touches() {
        let place = if keep {
            place_alone(tally, menu, &[], true)
        } else {
            0
        };
        return Some(weighed(tally, About::Leaving, place, &[], chosen));
    }
    if let Some((fault_steps, place)) = gravest_answer(tally, menu, chosen, keep) {
        return Some(weighed(tally, About::Fault, place, &fault_steps, chosen));
    }
    let worked =
        |f: &Fault| !matches!(f, Fault::BareMetal | Fault::FillingShows | Fault::Corrosion);
    if world.faults.0.iter().any(|f| worked(&f.fault)) {
        return None;
    }
    let near = world.ledger.value(FigureId::COUNSEL_CONSIDER).max(0.0) * advice.noise;
    let runner = advice.runner_up.filter(|r| {
        let gap = tally.outcomes[chosen].score.mean() - tally.outcomes[*r].score.mean();
        gap <= near && tally.courses[*r].touches()
    })?;
    let steps = named_steps(&tally.courses[runner]);
    Some(weighed(tally, About::RunnerUp, runner, &steps, chosen))
}

/// The steps by which a person would name a course.
fn named_steps(course: &Course) -> Vec<Treatment> {
    let group = course.group();
    group
        .into_iter()
        .filter(|t| *t != Treatment::TestLead)
        .collect()
}

fn of_asked(
    tally: &mut Tally,
    menu: &Menu,
    advice: &Advice,
    asked: &[Treatment],
    keep: bool,
) -> Contrast {
    let world = tally.weigher.world;
    let chosen = advice.chosen;
    let advised = tally.courses[chosen].steps.clone();
    if asked.iter().all(|t| advised.contains(t)) {
        return weighed(tally, About::Advised, chosen, asked, chosen);
    }
    let open: Vec<Treatment> = asked
        .iter()
        .copied()
        .filter(|t| work(*t).is_some() && not_needed(*t, world).is_none())
        .collect();
    if open.len() == asked.len() && !conflicts(&open) {
        let place = place_alone(tally, menu, &open, keep);
        if tally.courses[place].can_be_advised() {
            return weighed(tally, About::Asked, place, &open, chosen);
        }
    }
    // The best part of the request that can be done.
    let mut best: Option<(usize, Vec<Treatment>)> = None;
    for part in parts_of(&open) {
        if conflicts(&part) || part.iter().all(|t| advised.contains(t)) {
            continue;
        }
        let place = place_alone(tally, menu, &part, keep);
        let score = |i: usize| tally.outcomes[i].score.mean();
        if tally.courses[place].can_be_advised()
            && best.as_ref().is_none_or(|(b, _)| score(place) > score(*b))
        {
            best = Some((place, part));
        }
    }
    if let Some((place, part)) = best {
        return weighed(tally, About::Asked, place, &part, chosen);
    }
    let Some(first) = asked.iter().copied().find(|t| !advised.contains(t)) else {
        return weighed(tally, About::Advised, chosen, asked, chosen);
    };
    if work(first).is_none() {
        return out(tally, About::Never, first, None, None);
    }
    if let Some(why) = not_needed(first, world) {
        let verdict = Verdict {
            ground: Ground::Need,
            outcome: Outcome::Barred,
            reason: why.to_owned(),
            lifted_by: String::new(),
        };
        return out(tally, About::NotNeeded, first, Some(verdict), None);
    }
    let place = place_alone(tally, menu, &[first], keep);
    let verdict = tally.courses[place].barred.first().cloned();
    out(tally, About::Barred, first, verdict, Some(place))
}

/// Parts of what was asked about: each by itself, and all but one.
fn parts_of(open: &[Treatment]) -> Vec<Vec<Treatment>> {
    let mut parts: Vec<Vec<Treatment>> = open.iter().map(|t| vec![*t]).collect();
    if open.len() > 2 {
        for out in open {
            parts.push(open.iter().copied().filter(|t| t != out).collect());
        }
    }
    parts
}

/// The best answer to the most serious fault that is left and can be answered.
fn gravest_answer(
    tally: &mut Tally,
    menu: &Menu,
    chosen: usize,
    keep: bool,
) -> Option<(Vec<Treatment>, usize)> {
    let world = tally.weigher.world;
    let n = world.draws.n;
    let mut faults: Vec<(f64, Fault)> = world
        .faults
        .0
        .iter()
        .filter(|f| f.fault != Fault::BareMetal && is_left(&tally.courses[chosen], f.fault))
        .map(|f| (world.gravity(f, n), f.fault))
        .collect();
    faults.order_by(|a, b| b.0.total_cmp(&a.0));
    for (_, fault) in faults {
        let mut best: Option<(usize, Vec<Treatment>)> = None;
        for t in answers_to(fault) {
            if not_needed(t, world).is_some() {
                continue;
            }
            let steps = match (fault, t) {
                // The metal under old lacquer is cleaned when the lacquer is removed.
                (Fault::BrokenLacquer, _) => vec![Treatment::LacquerOff, Treatment::Clean],
                _ => vec![t],
            };
            let place = place_alone(tally, menu, &steps, keep);
            let score = |i: usize| tally.outcomes[i].score.mean();
            if tally.courses[place].can_be_advised()
                && best.as_ref().is_none_or(|(b, _)| score(place) > score(*b))
            {
                best = Some((place, steps));
            }
        }
        if let Some((place, steps)) = best {
            return Some((steps, place));
        }
    }
    None
}

impl super::world::World<'_> {
    /// How serious a fault is as found: its effect on the price for a seller, or on looks, service and
    /// soundness for a keeper.
    fn gravity(&self, found: &crate::treatment::Found, n: usize) -> f64 {
        match self.weights {
            None => 1.0 - self.price_with(found, n),
            Some(w) => {
                let [_, wf, ws, _, _] = w.each();
                let state = as_found(found);
                let fit = match self.goal {
                    Goal::KeepUse => self.serves_with(state),
                    _ => self.shows_with(state),
                };
                let keeps = self.ledger.value(FigureId::ATTRIBUTE_STABILITY_SOUND)
                    - self.ledger.value(state.keeps);
                let tarnish = match found.fault {
                    Fault::Tarnish => 1.0 - self.price_with(found, n),
                    _ => 0.0,
                };
                wf * (1.0 - fit + tarnish) + ws * keeps
            }
        }
    }
}

fn weighed(
    tally: &Tally,
    about: About,
    place: usize,
    steps: &[Treatment],
    chosen: usize,
) -> Contrast {
    let world = tally.weigher.world;
    let (own, advised) = (&tally.outcomes[place], &tally.outcomes[chosen]);
    let course = &tally.courses[place];
    let (price, quoted) = price_of(tally, place, steps);
    // A test that was asked for is already in the price.
    let test = (course.steps.contains(&Treatment::TestLead)
        && !steps.contains(&Treatment::TestLead))
    .then(|| world.drawn_cost(Treatment::TestLead, &course.steps))
    .flatten()
    .map(|c| c.median());
    let mut contrast = Contrast {
        about,
        steps: steps.to_vec(),
        course: Some(place),
        price,
        quoted,
        test,
        gain: own.net.mean() - advised.net.mean(),
        points: 100.0 * (own.score.mean() - advised.score.mean()),
        verdict: None,
        sentence: String::new(),
    };
    contrast.sentence = sentence(tally, &contrast, chosen);
    contrast
}

fn out(
    tally: &Tally,
    about: About,
    t: Treatment,
    verdict: Option<Verdict>,
    place: Option<usize>,
) -> Contrast {
    let (price, quoted) = match about {
        About::Barred => place.map_or((None, false), |p| price_of(tally, p, &[t])),
        _ => (None, false),
    };
    let mut contrast = Contrast {
        about,
        steps: vec![t],
        course: place,
        price,
        quoted,
        test: None,
        gain: 0.0,
        points: 0.0,
        verdict,
        sentence: String::new(),
    };
    contrast.sentence = sentence(tally, &contrast, 0);
    contrast
}

/// What these steps cost, excluding the test for lead: as typed if every one of them is quoted, or else the
/// middle of the range.
fn price_of(tally: &Tally, place: usize, steps: &[Treatment]) -> (Option<f64>, bool) {
    let world = tally.weigher.world;
    if steps.is_empty() {
        return (None, false);
    }
    let mut left: Vec<Treatment> = steps
        .iter()
        .copied()
        .filter(|t| {
            !matches!(t, Treatment::LacquerOff) || steps.len() == 1 || world.prices.is_quoted(*t)
        })
        .collect();
    let mut sum = 0.0;
    for quoted in world.prices.bundles() {
        if quoted.treatments.iter().all(|t| left.contains(t)) {
            sum += quoted.total();
            left.retain(|t| {
                let cleans = matches!(t, Treatment::Clean | Treatment::Foam);
                !(quoted.treatments.contains(t) || quoted.with_cleaning && cleans)
            });
        }
    }
    let mut all = true;
    for t in left {
        match world.prices.quote(t) {
            Some(quoted) => sum += quoted.total(),
            None => all = false,
        }
    }
    if all {
        return (Some(sum), true);
    }
    // A step done after only one result of the test is priced at its cost when it is done.
    let done = &tally.courses[place].steps;
    let columns: Vec<super::column::Column> = steps
        .iter()
        .filter_map(|t| world.drawn_cost(*t, done))
        .collect();
    let sum = super::draws::sum_of(&columns).map_or(0.0, |sum| sum.median());
    (Some(sum.max(0.0)), false)
}

fn sentence(tally: &Tally, c: &Contrast, chosen: usize) -> String {
    let world = tally.weigher.world;
    let case = world.case;
    let what = phrase(&c.steps);
    let price = c.price.map(|p| {
        if c.quoted {
            as_quoted(case, p)
        } else {
            super::sentences::by_our_estimate(case, p)
        }
    });
    let first = c.test.map(|t| money(case, t));
    let seller = world.goal == Goal::Sell;
    let against = if tally.courses.get(chosen).is_some_and(Course::touches) {
        words::WHAT_IS_ADVISED
    } else {
        words::LEAVING_IT
    };
    let comes_to = || -> String {
        if seller {
            let sum = money(case, c.gain.abs());
            if c.gain.abs() < 0.5 {
                words::level_in_money(against)
            } else if c.gain < 0.0 {
                words::worse_off(&sum, against)
            } else {
                words::better_off(&sum, against)
            }
        } else {
            let points = c.points.round();
            if points.abs() < 1.0 {
                words::LEVEL.to_owned()
            } else {
                words::points(points.abs(), points < 0.0)
            }
        }
    };
    match c.about {
        About::Advised => match &price {
            Some(price) if c.quoted => words::what_you_asked(price),
            _ => words::WHAT_YOU_ASKED.to_owned(),
        },
        About::Leaving => {
            if seller {
                let sum = money(case, c.gain.abs());
                words::leaving_money(&sum, c.gain < 0.0)
            } else {
                let points = c.points.round();
                if points.abs() < 1.0 {
                    words::LEAVING_LEVEL.to_owned()
                } else {
                    words::leaving_points(points.abs(), points < 0.0)
                }
            }
        }
        About::Asked | About::Fault | About::RunnerUp => {
            let less_choice = tally.outcomes[c.course.unwrap_or(0)].retreatability
                < tally.outcomes[chosen].retreatability - 1e-9;
            let level = !seller && c.points.round().abs() < 1.0;
            let end = if level && less_choice {
                words::LEVEL_LESS_CHOICE.to_owned()
            } else {
                comes_to()
            };
            words::would_cost(
                &what,
                price.as_deref().unwrap_or(""),
                first.as_deref(),
                &end,
            )
        }
        About::Barred => {
            let (outcome, reason) = c
                .verdict
                .as_ref()
                .map_or((Outcome::Barred, ""), |v| (v.outcome, v.reason.as_str()));
            words::is_out(&what, price.as_deref(), outcome, reason)
        }
        About::NotNeeded => {
            words::nothing_to_do(&what, c.verdict.as_ref().map_or("", |v| v.reason.as_str()))
        }
        About::Never => {
            let verdicts = tally.rulings.granted(c.steps[0], None);
            let why = verdicts.first().map_or("", |v| v.reason.as_str());
            words::never(&what, why)
        }
    }
}
