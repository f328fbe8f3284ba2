//! What would change the answer: each main input moved by itself until the advice flips.

use super::course::Course;
use super::what_if::WhatIf;
use super::wording::change as words;
use crate::report::{ChangeReport, MOST_MOVED};

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

/// For each input, the nearest value at which `advised` (given what is moved) leaves its group, searched
/// on the same draws: 33 log-spaced values, nearest first, then bisection.
pub(super) fn changes(
    now: &Now,
    chosen: &Course,
    advised: &dyn Fn(&WhatIf) -> Course,
    words: &dyn Fn(&ChangeReport) -> String,
) -> Vec<ChangeReport> {
    let group = chosen.group();
    INPUTS
        .into_iter()
        .map(|(input, reach)| {
            let (value, name) = match input {
                "value" => (now.value, words::VALUE),
                "cost" => (now.cost, words::COST),
                "bleed" => (now.bleed, words::BLEED),
                _ => (now.fused, words::FUSED),
            };
            let flips = |factor: f64| {
                let course = advised(&what_if(input, factor));
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

/// Where each input stands by itself, with the factor moved by as many of [`MOST_MOVED`] steps as the
/// number says: equal steps are equal ratios, the last of them the whole range searched for a value or
/// a cost.
pub(super) fn step_factor(step: i8) -> f64 {
    let share = f64::from(step.clamp(-MOST_MOVED, MOST_MOVED)) / f64::from(MOST_MOVED);
    libm::exp(share * libm::log(INPUTS[0].1))
}

/// The input that is moved, among those there are; the last for a word that names none.
pub(super) fn input_named(word: &str) -> &'static str {
    let known = INPUTS.iter().find(|(input, _)| *input == word);
    known.map_or(INPUTS[3].0, |(input, _)| input)
}

impl Now {
    /// Where an input stands.
    pub(super) fn of(&self, input: &str) -> f64 {
        match input {
            "value" => self.value,
            "cost" => self.cost,
            "bleed" => self.bleed,
            _ => self.fused,
        }
    }
}

pub(super) fn what_if(input: &str, factor: f64) -> WhatIf {
    match input {
        "value" => WhatIf {
            value: factor,
            ..WhatIf::NOTHING
        },
        "cost" => WhatIf {
            cost: factor,
            ..WhatIf::NOTHING
        },
        "bleed" => WhatIf {
            bleed: factor,
            ..WhatIf::NOTHING
        },
        _ => WhatIf {
            fused_odds: factor,
            ..WhatIf::NOTHING
        },
    }
}

/// The input's value once the factor is applied: on the odds for a chance, at most 0.99 for a share.
pub(super) fn moved(input: &str, value: f64, factor: f64) -> f64 {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::counsel::{solve, weigh_at_once, what_would_change};
    use crate::record::Draft;

    const TUREEN: &str = include_str!("../../../tests/cases/copper_reproduction_tureen.json");

    #[test]
    fn an_input_not_moved_gives_the_answer_itself() {
        let (case, problems) = Draft::parse(TUREEN).unwrap().read();
        let now = weigh_at_once(&case, problems).counsel;
        let solved = solve(&case);
        for (input, _) in INPUTS {
            let still = solved.moved(input, 0);
            assert_eq!(still.input, input);
            assert_eq!(still.sentence, now.sentence);
            assert_eq!(still.firmness, now.firmness);
        }
    }

    #[test]
    fn moving_an_input_beyond_its_flip_changes_the_answer() {
        let (case, _) = Draft::parse(TUREEN).unwrap().read();
        let solved = solve(&case);
        let now = solved.moved("value", 0);
        let mut seen = 0;
        for change in what_would_change(&case) {
            let Some(flip) = change.flips_at else {
                continue;
            };
            for step in [-MOST_MOVED, MOST_MOVED] {
                let far = solved.moved(&change.input, step);
                assert!(far.at.is_finite());
                if (flip > change.now) == (step > 0) && (far.at > flip * 1.3 || far.at < flip / 1.3)
                {
                    let beyond = if flip > change.now {
                        far.at > flip
                    } else {
                        far.at < flip
                    };
                    if beyond && (change.input == "value" || change.input == "cost") {
                        seen += 1;
                        assert_ne!(far.steps, now.steps, "{}", change.text);
                    }
                }
            }
        }
        assert!(seen > 0, "the piece has something that flips");
    }

    #[test]
    fn steps_are_equal_ratios_and_end_where_the_search_ends() {
        assert!((step_factor(MOST_MOVED) - 20.0).abs() < 1e-9);
        assert!((step_factor(-MOST_MOVED) - 0.05).abs() < 1e-12);
        assert!((step_factor(3) * step_factor(2) - step_factor(5)).abs() < 1e-12);
        assert!((step_factor(i8::MAX) - 20.0).abs() < 1e-9);
    }
}
