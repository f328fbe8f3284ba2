//! What would change the answer: each main input moved by itself until the advice flips.

use super::course::Course;
use super::tweak::Tweak;
use crate::report::ChangeReport;

/// Values tried on each side of now, log-spaced, before bisection: 33 with now itself.
const TRIED: u32 = 16;
/// Halvings of the bracket; the flip is then known to better than 1 % of its size.
const HALVINGS: u32 = 10;

/// The inputs moved, with the range of factors tried on each side of now.
const INPUTS: [(&str, f64); 4] = [
    ("value", 20.0),
    ("cost", 20.0),
    ("bleed", 100.0),
    ("fused", 1000.0),
];

/// Where an input stands now and how it is written.
pub(super) struct Now {
    pub(super) value: f64,
    pub(super) cost: f64,
    pub(super) bleed: f64,
    /// Probability of fused plate with its own silver.
    pub(super) fused: f64,
}

/// For each input, the nearest value at which `advised` (given the tweak) leaves its group, searched
/// on the same draws: 33 log-spaced values, nearest first, then bisection.
pub(super) fn changes(
    now: &Now,
    chosen: &Course,
    advised: &dyn Fn(&Tweak) -> Course,
    words: &dyn Fn(&ChangeReport) -> String,
) -> Vec<ChangeReport> {
    let group = chosen.group();
    INPUTS
        .into_iter()
        .map(|(input, reach)| {
            let (value, name) = match input {
                "value" => (now.value, "what an undamaged one fetches"),
                "cost" => (now.cost, "what the work costs"),
                "bleed" => (now.bleed, "how much base metal shows"),
                _ => (
                    now.fused,
                    "the chance that it is fused plate with its own silver",
                ),
            };
            let flips = |factor: f64| {
                let course = advised(&tweak(input, factor));
                (course.group() != group).then_some(course)
            };
            let found = if value > 0.0 {
                nearest_flip(reach, &flips)
            } else {
                None
            };
            let mut change = ChangeReport {
                input: input.into(),
                name: name.to_owned(),
                now: value,
                flips_at: found
                    .as_ref()
                    .map(|(factor, _)| moved(input, value, *factor)),
                to_steps: found.map_or_else(Vec::new, |(_, c)| {
                    c.steps.iter().map(|t| t.id().into()).collect()
                }),
                text: String::new(),
            };
            change.text = words(&change);
            change
        })
        .collect()
}

fn tweak(input: &str, factor: f64) -> Tweak {
    match input {
        "value" => Tweak {
            value: factor,
            ..Tweak::NONE
        },
        "cost" => Tweak {
            cost: factor,
            ..Tweak::NONE
        },
        "bleed" => Tweak {
            bleed: factor,
            ..Tweak::NONE
        },
        _ => Tweak {
            fused_odds: factor,
            ..Tweak::NONE
        },
    }
}

/// The input's value once the factor is applied: on the odds for a chance, at most 0.99 for a share.
fn moved(input: &str, value: f64, factor: f64) -> f64 {
    match input {
        "fused" => {
            let odds = value / (1.0 - value).max(1e-12) * factor;
            odds / (1.0 + odds)
        }
        "bleed" => (value * factor).min(0.99),
        _ => value * factor,
    }
}

fn nearest_flip(reach: f64, flips: &dyn Fn(f64) -> Option<Course>) -> Option<(f64, Course)> {
    let step = libm::exp(libm::log(reach) / f64::from(TRIED));
    let mut last = 1.0;
    for _ in 0..TRIED {
        let far = last * step;
        // Both sides at each distance: the nearest flip on the log scale is the one that counts.
        for (inner, outer) in [(last, far), (1.0 / last, 1.0 / far)] {
            if let Some(course) = flips(outer) {
                return Some(bisect(inner, outer, course, flips));
            }
        }
        last = far;
    }
    None
}

fn bisect(
    inner: f64,
    outer: f64,
    course: Course,
    flips: &dyn Fn(f64) -> Option<Course>,
) -> (f64, Course) {
    let (mut inner, mut outer, mut course) = (inner, outer, course);
    for _ in 0..HALVINGS {
        let middle = (inner * outer).sqrt();
        match flips(middle) {
            Some(c) => {
                outer = middle;
                course = c;
            }
            None => inner = middle,
        }
    }
    (outer, course)
}
