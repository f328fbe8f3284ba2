//! From outcomes to advice: which course is best, by how much, and how certain that is.

use super::course::Course;
use super::draws::Draws;
use super::outcome::{CourseOutcome, stretches};
use super::prices::Prices;
use super::wording::advise as words;
use super::work_block::WorkBlock;
use crate::identity::{ByKind, Kind, Posterior};
use crate::ledger::{FigureId, Ledger};
use crate::maths::{at_least, mean};
use crate::record::{Case, Currency, Goal};
use crate::terms::{Firmness, ShortSort};
use crate::treatment::Treatment;

/// The advice and the quantities it is based on.
pub(super) struct Advice {
    /// Index of the advised course among the courses.
    pub(super) chosen: usize,
    /// The best course that can be advised and is not in the advised course's group.
    pub(super) runner_up: Option<usize>,
    pub(super) firmness: Firmness,
    /// Differences below this are noise, in units of score.
    pub(super) noise: f64,
    /// For each course, the share of draws in which its group is best within the noise.
    pub(super) p_best: Vec<f64>,
    /// Greatest regret of each course, and mean of its worst tenth, in units of score.
    pub(super) regret: Vec<f64>,
    /// What keeps the advice from being firmer.
    pub(super) doubts: Vec<String>,
}

/// The index of the advised course, and the noise. Among the courses whose mean is within the noise of the
/// best, the advised one leaves the most choice for later.
pub(super) fn choose(
    courses: &[Course],
    outcomes: &[CourseOutcome],
    draws: &Draws,
    goal: Goal,
    ledger: &Ledger,
) -> (usize, f64) {
    let open: Vec<usize> = (0..courses.len())
        .filter(|i| courses[*i].can_be_advised())
        .collect();
    let means: Vec<f64> = outcomes.iter().map(|o| o.score.mean()).collect();
    // Leaving alone comes first and is never barred.
    let best = open
        .iter()
        .copied()
        .fold(0, |b, i| if means[i] > means[b] { i } else { b });
    let noise = noise(&open, best, &means, outcomes, draws, goal, ledger);
    let within = open
        .iter()
        .copied()
        .filter(|i| means[*i] >= means[best] - noise);
    let chosen = within.fold(best, |c, i| {
        if gentler(&outcomes[i], means[i], &outcomes[c], means[c]) {
            i
        } else {
            c
        }
    });
    (chosen, noise)
}

/// The smallest difference that counts, whatever the sample: money for a seller, score for others.
pub(super) fn least_noise(as_it_is_net: f64, undamaged: f64, goal: Goal, ledger: &Ledger) -> f64 {
    if goal == Goal::Sell {
        (ledger.value(FigureId::COUNSEL_NOISE_NET) * as_it_is_net.abs())
            .max(ledger.value(FigureId::COUNSEL_NOISE_VALUE) * undamaged)
    } else {
        ledger.value(FigureId::COUNSEL_NOISE_POINTS)
    }
}

/// The basis of the choice and how firm it is.
///
/// noise = max(5 % of |median net as it is|, 2 % of the median undamaged value, the standard error of the
/// leading difference over eight stretches of the sample) for a seller; in points of score, the ledger's
/// figure replaces the first two. p is the lesser of two shares of draws: those in which no other group beats
/// the chosen one by more than the noise, and those in which the sum of the best changes in every block gains
/// no more than the noise. `changes` are the courses that differ from the chosen one in one block.
#[allow(clippy::too_many_arguments)] // one judgement with all its inputs
pub(super) fn advise(
    (chosen, noise): (usize, f64),
    courses: &[Course],
    outcomes: &[CourseOutcome],
    changes: &[(WorkBlock, usize)],
    draws: &Draws,
    case: &Case,
    ledger: &Ledger,
    posterior: &Posterior,
    prices: &Prices,
) -> Advice {
    let open: Vec<usize> = (0..courses.len())
        .filter(|i| courses[*i].can_be_advised())
        .collect();
    let means: Vec<f64> = outcomes.iter().map(|o| o.score.mean()).collect();
    let groups = groups(&open, courses, &means, chosen);
    let (p_of_group, regret_of) = chances(&groups, outcomes, noise, draws.n);
    let group_of = |i: usize| groups.iter().position(|g| g.members.contains(&i));
    let p_best: Vec<f64> = (0..courses.len())
        .map(|i| group_of(i).map_or(0.0, |g| p_of_group[g]))
        .collect();
    let regret: Vec<f64> = outcomes.iter().map(|o| regret_of(&o.score)).collect();
    let own = group_of(chosen);
    let runner_up = groups
        .iter()
        .enumerate()
        .filter(|(g, _)| Some(*g) != own)
        .map(|(_, g)| g.leader)
        .fold(None, |top: Option<usize>, i| {
            if top.is_none_or(|t| means[i] > means[t]) {
                Some(i)
            } else {
                top
            }
        });
    let mut p_best = p_best;
    let p = p_best[chosen].min(stands_in_every_block(
        chosen, courses, outcomes, changes, noise, draws.n,
    ));
    p_best[chosen] = p;
    let mut firmness = if p >= ledger.value(FigureId::COUNSEL_CLEAR) {
        Firmness::Clear
    } else if p >= ledger.value(FigureId::COUNSEL_LEANING) {
        Firmness::Leaning
    } else {
        Firmness::Open
    };
    let mut doubts = Vec::new();
    if let Some(measure) = disagreeing(chosen, own, &groups, outcomes, &regret, noise, ledger) {
        doubts.push(words::another_does_better(measure));
    }
    if posterior.top_family().1 < ledger.value(FigureId::COUNSEL_FAMILY)
        && courses[chosen].touches()
    {
        doubts.push(words::KIND_NOT_SETTLED.to_owned());
    }
    doubts.extend(money_doubts(&courses[chosen], draws, case, prices));
    // Any one of these doubts keeps the answer from being clear.
    if !doubts.is_empty() {
        firmness = firmness.min(Firmness::Leaning);
    }
    if case.market.currency == Some(Currency::Other) {
        doubts.push(words::OTHER_CURRENCY.to_owned());
    }
    Advice {
        chosen,
        runner_up,
        firmness,
        noise,
        p_best,
        regret,
        doubts,
    }
}

/// The uncertainties about money: the value, or the price of the advised work.
fn money_doubts(chosen: &Course, draws: &Draws, case: &Case, prices: &Prices) -> Vec<String> {
    let mut doubts = Vec::new();
    if !draws.value_entered {
        doubts.push(words::NO_VALUE.to_owned());
    }
    let unquoted = chosen
        .steps
        .iter()
        .find(|t| is_paid(**t, case) && !prices.is_quoted(**t));
    if let Some(step) = unquoted {
        let name = step.name().to_ascii_lowercase();
        doubts.push(words::no_quote(&name));
    }
    doubts
}

/// Whether anyone is paid for it.
fn is_paid(treatment: Treatment, case: &Case) -> bool {
    match treatment {
        Treatment::Leave | Treatment::Wash | Treatment::Keeping | Treatment::Foam => false,
        Treatment::Clean => case.aim.who_does(treatment) == Some(crate::record::Doer::Workshop),
        _ => true,
    }
}

fn noise(
    open: &[usize],
    best: usize,
    means: &[f64],
    outcomes: &[CourseOutcome],
    draws: &Draws,
    goal: Goal,
    ledger: &Ledger,
) -> f64 {
    // The leave course comes first among the plans and is never barred.
    let leave = &outcomes[open[0]];
    let rival = open
        .iter()
        .copied()
        .filter(|i| *i != best)
        .max_by(|a, b| means[*a].total_cmp(&means[*b]))
        .unwrap_or(best);
    let (a, b) = (
        stretches(&outcomes[best].score),
        stretches(&outcomes[rival].score),
    );
    let gaps: [f64; 8] = std::array::from_fn(|i| a[i] - b[i]);
    let centre = mean(&gaps);
    let variance = gaps
        .iter()
        .map(|g| (g - centre) * (g - centre))
        .sum::<f64>()
        / 7.0;
    let standard_error = (variance / 8.0).sqrt();
    let least = least_noise(leave.net.median(), draws.undamaged.median(), goal, ledger);
    least.max(standard_error)
}

/// Whether `a` leaves more later choice than `b`, or the same with a better mean.
pub(super) fn gentler(a: &CourseOutcome, mean_a: f64, b: &CourseOutcome, mean_b: f64) -> bool {
    const SAME: f64 = 1e-9;
    let gap = a.retreatability - b.retreatability;
    gap > SAME || (gap.abs() <= SAME && mean_a > mean_b)
}

/// Courses that count as one for the question of which is best, led by the one with the best mean.
struct Group {
    key: Vec<Treatment>,
    members: Vec<usize>,
    leader: usize,
}

/// The most groups compared: those with the best means, and the chosen course's group.
const MOST_GROUPS: usize = 40;

fn groups(open: &[usize], courses: &[Course], means: &[f64], chosen: usize) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for i in open {
        let key = courses[*i].group();
        match groups.iter_mut().find(|g| g.key == key) {
            Some(g) => {
                g.members.push(*i);
                if means[*i] > means[g.leader] {
                    g.leader = *i;
                }
            }
            None => groups.push(Group {
                key,
                members: vec![*i],
                leader: *i,
            }),
        }
    }
    let own = courses[chosen].group();
    groups.order_by(|a, b| {
        (b.key == own)
            .cmp(&(a.key == own))
            .then(means[b.leader].total_cmp(&means[a.leader]))
    });
    groups.truncate(MOST_GROUPS);
    groups
}

/// Share of draws in which the sum of the best changes in every block gains no more than the noise.
fn stands_in_every_block(
    chosen: usize,
    courses: &[Course],
    outcomes: &[CourseOutcome],
    changes: &[(WorkBlock, usize)],
    noise: f64,
    n: usize,
) -> f64 {
    let own = courses[chosen].group();
    let score = &outcomes[chosen].score;
    let mut gain = vec![0.0; n];
    for block in WorkBlock::ALL.into_iter().chain([WorkBlock::Test]) {
        let rivals: Vec<&CourseOutcome> = changes
            .iter()
            .filter(|(b, i)| *b == block && courses[*i].group() != own)
            .map(|(_, i)| &outcomes[*i])
            .collect();
        if rivals.is_empty() {
            continue;
        }
        for (i, gain) in gain.iter_mut().enumerate() {
            let best = rivals
                .iter()
                .fold(0.0, |best, o| at_least(o.score[i] - score[i], best));
            *gain += best;
        }
    }
    let stands = gain.iter().filter(|g| **g <= noise).count();
    stands as f64 / n as f64
}

/// Chance of each group being best within the noise, and a function giving a course's greatest
/// regret against the best group of each draw.
fn chances<'a>(
    groups: &'a [Group],
    outcomes: &'a [CourseOutcome],
    noise: f64,
    n: usize,
) -> (Vec<f64>, impl Fn(&[f64]) -> f64 + use<'a>) {
    let mut wins = vec![0_usize; groups.len()];
    let mut top = vec![f64::NEG_INFINITY; n];
    for (i, top) in top.iter_mut().enumerate() {
        let (mut best, mut second, mut who) = (f64::NEG_INFINITY, f64::NEG_INFINITY, 0);
        for (g, group) in groups.iter().enumerate() {
            let s = outcomes[group.leader].score[i];
            if s > best {
                second = best;
                best = s;
                who = g;
            } else if s > second {
                second = s;
            }
        }
        *top = best;
        for (g, group) in groups.iter().enumerate() {
            let others = if g == who { second } else { best };
            wins[g] += usize::from(outcomes[group.leader].score[i] >= others - noise);
        }
    }
    let p = wins.iter().map(|w| *w as f64 / n as f64).collect();
    let regret = move |score: &[f64]| {
        score
            .iter()
            .zip(&top)
            .fold(0.0, |most, (s, t)| at_least(t - s, most))
    };
    (p, regret)
}

/// The first measure by which another group beats the chosen course by more than the noise.
fn disagreeing(
    chosen: usize,
    own: Option<usize>,
    groups: &[Group],
    outcomes: &[CourseOutcome],
    regret: &[f64],
    noise: f64,
    ledger: &Ledger,
) -> Option<&'static str> {
    let tail = ledger.value(FigureId::COUNSEL_TAIL).clamp(0.01, 1.0);
    let rivals = || {
        groups
            .iter()
            .enumerate()
            .filter(|(g, _)| Some(*g) != own)
            .map(|(_, g)| g.leader)
    };
    let beaten = |measure: &dyn Fn(usize) -> f64| {
        let mine = measure(chosen);
        rivals().any(|r| measure(r) > mine + noise)
    };
    if beaten(&|i| outcomes[i].score.median()) {
        return Some(words::THE_MIDDLE);
    }
    if beaten(&|i| outcomes[i].score.tail_mean(tail)) {
        return Some(words::THE_WORST_TENTH);
    }
    beaten(&|i| -regret[i]).then_some(words::THE_GREATEST_REGRET)
}

/// Mean score by kind of each course that can be advised: `[course][kind]`, NaN where the kind was never
/// drawn.
pub(super) fn score_by_kind(
    courses: &[Course],
    outcomes: &[CourseOutcome],
    draws: &Draws,
) -> Vec<ByKind> {
    courses
        .iter()
        .zip(outcomes)
        .filter(|(c, _)| c.can_be_advised())
        .map(|(_, o)| {
            let (mut sum, mut count) = ([0.0; Kind::COUNT], [0.0; Kind::COUNT]);
            for (k, s) in draws.kind.iter().zip(o.score.iter()) {
                sum[k.index()] += s;
                count[k.index()] += 1.0;
            }
            std::array::from_fn(|k| sum[k] / count[k])
        })
        .collect()
}

/// Value of knowing more about the kind: the mean over answers of the best course given the answer, minus the
/// best course now. `answers` holds the likelihood of each answer by kind. Never below 0.
pub(super) fn worth_of(answers: &[ByKind], posterior: &Posterior, by_kind: &[ByKind]) -> f64 {
    let best = |weight: &dyn Fn(Kind) -> f64| {
        by_kind
            .iter()
            .map(|row| {
                Kind::ALL
                    .iter()
                    .filter(|k| !row[k.index()].is_nan())
                    .map(|k| weight(*k) * row[k.index()])
                    .sum::<f64>()
            })
            .fold(f64::NEG_INFINITY, f64::max)
    };
    let now = best(&|k| posterior.of(k));
    let with: f64 = answers
        .iter()
        .map(|likelihood| best(&|k| posterior.of(k) * likelihood[k.index()]))
        .sum();
    (with - now).max(0.0)
}
