//! What would change the answer: each main input is moved alone until the advice flips.

use super::course::Course;
use super::what_if::WhatIf;
use super::wording::change as words;
use crate::report::{ChangeReport, MOST_MOVED};
use crate::terms::Input;

/// Steps to each end of the range, log-spaced: 33 values including the present one.
const STEPS: u32 = 16;
/// Steps taken at a time until something flips. A flip that is reversed within one stride is missed; nothing
/// else is.
const STRIDE: u32 = 4;
/// Bisections of the bracket; the flip is then known to within half a percent of its size.
const HALVINGS: u32 = 7;

/// The inputs to move, with the largest factor tried on each side of the present value.
const INPUTS: [(Input, f64); 4] = [
    (Input::Value, 20.0),
    (Input::Cost, 20.0),
    (Input::Bleed, 100.0),
    (Input::Fused, 1000.0),
];

/// The present value of each input, and how it is written.
pub(super) struct Now {
    pub(super) value: f64,
    pub(super) cost: f64,
    pub(super) bleed: f64,
    /// Probability of fused plate with its original silver.
    pub(super) fused: f64,
}

/// For each input, the nearest value at which the advice (given the move) leaves the group of the present
/// advice. The search uses the same draws: strides of log-spaced steps, nearest first, then single steps
/// within the stride that flipped, then bisection.
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
                Input::Value => (now.value, words::VALUE),
                Input::Cost => (now.cost, words::COST),
                Input::Bleed => (now.bleed, words::BLEED),
                Input::Fused => (now.fused, words::FUSED),
            };
            let flips = |factor: f64| {
                let course = advised(&what_if(input, factor));
                (course.group() != group).then_some(course)
            };
            let found = if value > 0.0 {
                nearest_flip(reach, STRIDE, &flips)
            } else {
                None
            };
            let mut change = ChangeReport {
                input,
                name: name.to_owned(),
                now: value,
                flips_at: found
                    .as_ref()
                    .map(|(factor, _)| moved(input, value, *factor)),
                to_steps: found.map_or_else(Vec::new, |(_, c)| c.steps),
                text: String::new(),
            };
            change.text = words(&change);
            change
        })
        .collect()
}

/// The factor for this many of [`MOST_MOVED`] steps. Equal steps are equal ratios, and the last step covers
/// the whole range searched for a value or a cost.
pub(super) fn step_factor(step: i8) -> f64 {
    let share = f64::from(step.clamp(-MOST_MOVED, MOST_MOVED)) / f64::from(MOST_MOVED);
    libm::exp(share * libm::log(INPUTS[0].1))
}

impl Now {
    /// The present value of an input.
    pub(super) fn of(&self, input: Input) -> f64 {
        match input {
            Input::Value => self.value,
            Input::Cost => self.cost,
            Input::Bleed => self.bleed,
            Input::Fused => self.fused,
        }
    }
}

pub(super) fn what_if(input: Input, factor: f64) -> WhatIf {
    match input {
        Input::Value => WhatIf {
            value: factor,
            ..WhatIf::NOTHING
        },
        Input::Cost => WhatIf {
            cost: factor,
            ..WhatIf::NOTHING
        },
        Input::Bleed => WhatIf {
            bleed: factor,
            ..WhatIf::NOTHING
        },
        Input::Fused => WhatIf {
            fused_odds: factor,
            ..WhatIf::NOTHING
        },
    }
}

/// The input's value after the factor is applied: to the odds for a probability; capped at 0.99 for a share.
pub(super) fn moved(input: Input, value: f64, factor: f64) -> f64 {
    match input {
        Input::Fused => {
            let odds = value / (1.0 - value).max(1e-12) * factor;
            odds / (1.0 + odds)
        }
        Input::Bleed => (value * factor).min(0.99),
        Input::Value | Input::Cost => value * factor,
    }
}

fn nearest_flip(
    reach: f64,
    stride: u32,
    flips: &dyn Fn(f64) -> Option<Course>,
) -> Option<(f64, Course)> {
    let step = libm::log(reach) / f64::from(STEPS);
    // Steps up are positive, steps down negative.
    let factor = |steps: u32, side: f64| libm::exp(side * step * f64::from(steps));
    for far in (stride..=STEPS).step_by(stride as usize) {
        let ends = [1.0, -1.0].map(|side| (side, flips(factor(far, side))));
        // Both sides at each distance: the flip nearest on the log scale is the one reported.
        for steps in far - stride + 1..=far {
            for (side, end) in &ends {
                let Some(end) = end else { continue };
                let outer = factor(steps, *side);
                let course = if steps == far {
                    Some(end.clone())
                } else {
                    flips(outer)
                };
                if let Some(course) = course {
                    let inner = factor(steps - 1, *side);
                    return Some(bisect(inner, outer, course, flips));
                }
            }
        }
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
    fn an_unmoved_input_gives_the_original_answer() {
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
        let now = solved.moved(Input::Value, 0);
        let mut seen = 0;
        for change in what_would_change(&case) {
            let Some(flip) = change.flips_at else {
                continue;
            };
            for step in [-MOST_MOVED, MOST_MOVED] {
                let far = solved.moved(change.input, step);
                assert!(far.at.is_finite());
                if (flip > change.now) == (step > 0) && (far.at > flip * 1.3 || far.at < flip / 1.3)
                {
                    let beyond = if flip > change.now {
                        far.at > flip
                    } else {
                        far.at < flip
                    };
                    if beyond && change.input.is_money() {
                        seen += 1;
                        assert_ne!(far.steps, now.steps, "{}", change.text);
                    }
                }
            }
        }
        assert!(seen > 0, "the piece has something that flips");
    }

    #[test]
    fn strides_find_the_flip_that_single_steps_find() {
        let cases = [
            TUREEN,
            include_str!("../../../tests/cases/six_faults_teapot.json"),
            include_str!("../../../tests/cases/worn_tray.json"),
            include_str!("../../../tests/cases/leaking_teapot.json"),
        ];
        let mut flipped = 0;
        for text in cases {
            let (case, _) = Draft::parse(text).unwrap().read();
            let solved = crate::counsel::Solved::of(&case, 7);
            let own = solved.courses[solved.advice.chosen].group();
            for (input, reach) in INPUTS {
                let flips = |factor: f64| {
                    let moved = solved.with_inputs(&what_if(input, factor));
                    let course = moved.courses[moved.advice.chosen].clone();
                    (course.group() != own).then_some(course)
                };
                let [strides, steps] = [STRIDE, 1].map(|stride| {
                    nearest_flip(reach, stride, &flips).map(|(at, course)| (at, course.steps))
                });
                assert_eq!(strides, steps, "{}", input.id());
                flipped += usize::from(steps.is_some());
            }
        }
        assert!(flipped >= 4, "{flipped}");
    }

    #[test]
    fn steps_are_equal_ratios_and_end_where_the_search_ends() {
        assert!((step_factor(MOST_MOVED) - 20.0).abs() < 1e-9);
        assert!((step_factor(-MOST_MOVED) - 0.05).abs() < 1e-12);
        assert!((step_factor(3) * step_factor(2) - step_factor(5)).abs() < 1e-12);
        assert!((step_factor(i8::MAX) - 20.0).abs() < 1e-9);
    }
}
