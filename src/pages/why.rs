//! How the answers changed the odds of the leading family: a bridge in log-odds from before looking to now,
//! one step per answer.

use super::Subject;
use super::block::{Block, Table, Tone};
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::why as words;
use leavewell_model::identity::{Evidence, JudgedReading, interval_with, pushes, readings};
use leavewell_model::ledger::{EvidenceId, Ledger};
use leavewell_model::record::Answer;
use leavewell_model::record::ledger_of;
use leavewell_model::terms::Family;
use leavewell_model::terms::Seen;

const WIDTH: f64 = 320.0;
const LEFT: f64 = 8.0;
const RIGHT: f64 = 312.0;
const TOP: f64 = 40.0;
const ROW: f64 = 36.0;
/// Probabilities labelled along the top.
const NAMED: [(f64, &str); 5] = [
    (0.001, words::ONE_IN_1000),
    (0.02, words::ONE_IN_50),
    (0.5, words::EVEN),
    (0.98, words::ALL_BUT_ONE_IN_50),
    (0.999, words::ALL_BUT_ONE_IN_1000),
];

/// Builds the page: the bridge for the family that leads now.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    match picture(subject) {
        None => vec![Block::para(words::NOTHING_ANSWERED)],
        Some(picture) => vec![
            Block::Picture(picture),
            Block::said(Tone::Quiet, words::HOW_TO_READ),
        ],
    }
}

/// The bridge for the family that leads now; `None` before anything has been answered.
pub(super) fn picture(subject: &Subject) -> Option<Picture> {
    let case = subject.case();
    let ledger = ledger_of(case);
    let readings = readings(case, &ledger);
    let bridge = Bridge::new(&Evidence::of(case, &readings), &ledger);
    (!bridge.steps.is_empty()).then(|| bridge.picture())
}

/// One answer and its effect.
struct Step {
    title: String,
    seen: bool,
    after: f64,
}

struct Bridge {
    family: Family,
    before: f64,
    steps: Vec<Step>,
}

impl Bridge {
    /// Adds the answers one at a time, those that move the leading family most first.
    fn new(all: &Evidence, ledger: &Ledger) -> Self {
        let (family, _) = interval_with(all, ledger).base.top_family();
        let log_odds = |answers: &[Answer], readings: &[JudgedReading]| {
            let some = Evidence {
                answers,
                readings,
                ..*all
            };
            let p = interval_with(&some, ledger).base.family(family);
            let p = p.clamp(1e-9, 1.0 - 1e-9);
            libm::log(p / (1.0 - p))
        };
        let (mut answered, mut read) = (Vec::new(), Vec::new());
        let before = log_odds(&answered, &read);
        let steps = pushes(all, ledger, family)
            .into_iter()
            .map(|push| {
                match push.id {
                    EvidenceId::Finding(id) => {
                        answered.extend(all.answers.iter().filter(|a| a.id == id).cloned());
                    }
                    EvidenceId::Reading(of) => {
                        read.extend(all.readings.iter().filter(|r| r.of == of).cloned());
                    }
                }
                Step {
                    title: push.title.to_owned(),
                    seen: push.seen == Seen::Yes,
                    after: log_odds(&answered, &read),
                }
            })
            .collect();
        Self {
            family,
            before,
            steps,
        }
    }

    fn picture(&self) -> Picture {
        let levels = || {
            std::iter::once(self.before)
                .chain(self.steps.iter().map(|s| s.after))
                .chain(std::iter::once(0.0))
        };
        let low = levels().fold(f64::INFINITY, f64::min) - 0.5;
        let high = levels().fold(f64::NEG_INFINITY, f64::max) + 0.5;
        let x = |level: f64| tenths(LEFT + (RIGHT - LEFT) * (level - low) / (high - low));
        let height = TOP + ROW * count(self.steps.len() + 2);
        let mut marks = Vec::new();
        let mut last = f64::NEG_INFINITY;
        for (p, name) in NAMED {
            let at = x(libm::log(p / (1.0 - p)));
            if !(LEFT..=RIGHT).contains(&at) {
                continue;
            }
            marks.push(Mark::path(Ink::Rule, format!("M{at} 24V{height}")));
            // A label only where there is room for it.
            if at - last > 84.0 && (LEFT + 40.0..=RIGHT - 44.0).contains(&at) {
                marks.push(Mark::text(Ink::Axis, Anchor::Middle, (at, 16.0), name));
                last = at;
            }
        }
        let mut from = self.before;
        let mut row = |at: usize, words: String, to: f64| {
            let y = TOP + ROW * count(at);
            let (a, b) = (x(from), x(to));
            marks.push(Mark::text(
                Ink::Outline,
                Anchor::Start,
                (LEFT, y + 4.0),
                words,
            ));
            let bar = y + 16.0;
            if (a - b).abs() < 1.0 {
                marks.push(Mark::path(Ink::Middle, format!("M{b} {}v12", bar - 6.0)));
            } else {
                let tip = if b > a { b - 5.0 } else { b + 5.0 };
                marks.push(Mark::path(Ink::Middle, format!("M{a} {bar}H{b}")));
                marks.push(Mark::path(
                    Ink::Outline,
                    format!("M{tip} {}L{b} {bar}L{tip} {}", bar - 5.0, bar + 5.0),
                ));
            }
            from = to;
        };
        row(0, words::BEFORE.to_owned(), self.before);
        for (at, step) in self.steps.iter().enumerate() {
            row(at + 1, step.words(), step.after);
        }
        row(self.steps.len() + 1, words::NOW.to_owned(), self.now());
        Picture {
            id: "why-bridge".to_owned(),
            title: words::picture_title(
                &in_odds(self.before),
                &in_odds(self.now()),
                self.family.name(),
            ),
            description: words::DESCRIPTION.to_owned(),
            width: WIDTH,
            height,
            marks,
            table: self.table(),
        }
    }

    fn table(&self) -> Table {
        let mut rows = vec![vec![
            words::BEFORE.to_owned(),
            String::new(),
            in_odds(self.before),
        ]];
        let mut from = self.before;
        for step in &self.steps {
            rows.push(vec![
                step.words(),
                times(step.after - from),
                in_odds(step.after),
            ]);
            from = step.after;
        }
        Table {
            caption: words::CAPTION.to_owned(),
            columns: words::COLUMNS.map(str::to_owned).to_vec(),
            rows,
        }
    }

    fn now(&self) -> f64 {
        self.steps.last().map_or(self.before, |step| step.after)
    }
}

impl Step {
    fn words(&self) -> String {
        if self.seen {
            self.title.clone()
        } else {
            words::not_there(&self.title)
        }
    }
}

/// The probability at these log-odds, as "so many in so many".
fn in_odds(log_odds: f64) -> String {
    let p = 1.0 / (1.0 + libm::exp(-log_odds));
    match p {
        p if p < 0.005 => words::HARDLY.to_owned(),
        p if p > 0.995 => words::ALL_BUT.to_owned(),
        p => words::in_100((100.0 * p).round().clamp(1.0, 99.0)),
    }
}

/// The factor by which a step multiplies the odds.
fn times(step: f64) -> String {
    let factor = libm::exp(step.abs());
    match (factor < 1.05, step > 0.0) {
        (true, _) => words::AS_THEY_WERE.to_owned(),
        (_, true) => words::times(&two_digits(factor)),
        (_, false) => words::divided_by(&two_digits(factor)),
    }
}

fn two_digits(factor: f64) -> String {
    if factor < 10.0 {
        tenths(factor).to_string()
    } else {
        factor.round().to_string()
    }
}

fn tenths(x: f64) -> f64 {
    (10.0 * x).round() / 10.0
}

fn count(n: usize) -> f64 {
    n as f64
}

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::ledger::FindingId;
    use leavewell_model::record::Draft;

    fn draft(answers: &[(&str, &str)]) -> Draft {
        let mut draft = Draft::default();
        for (id, answer) in answers {
            draft.set_answer(FindingId::parse(id).unwrap(), answer, "");
        }
        draft
    }

    #[test]
    fn with_nothing_answered_there_is_no_bridge() {
        let blocks = page(&Subject::new(draft(&[("C01", "unsure")])));
        assert!(matches!(blocks.as_slice(), [Block::Para { .. }]));
    }

    #[test]
    fn the_bridge_ends_where_the_answer_stands() {
        let draft = draft(&[("C01", "seen"), ("S03", "seen"), ("C19", "absent")]);
        let (case, _) = draft.read();
        let ledger = ledger_of(&case);
        let evidence = Evidence::of(&case, &[]);
        let bridge = Bridge::new(&evidence, &ledger);
        assert_eq!(bridge.steps.len(), 3);
        let p = interval_with(&evidence, &ledger).base.family(bridge.family);
        let now = 1.0 / (1.0 + libm::exp(-bridge.now()));
        assert!((now - p).abs() < 1e-9, "{now} {p}");
        let picture = bridge.picture();
        assert_eq!(picture.table.rows.len(), 4);
        assert!(picture.title.contains("fused"), "{}", picture.title);
    }

    #[test]
    fn odds_are_written_in_words() {
        assert_eq!(in_odds(0.0), "about 50 in 100");
        assert_eq!(in_odds(9.0), "more than 199 in 200");
        assert_eq!(times(libm::log(20.0)), "times 20");
        assert_eq!(times(-libm::log(2.5)), "divided by 2.5");
        assert_eq!(times(0.01), "unchanged");
    }
}
