//! The decision tree of tests and courses, rolled back and drawn, and the value of keeping the choice open.

use super::picture::wrapped;
use leavewell_model::terms::ShortSort;
use leavewell_model::terms::small;
use std::rc::Rc;

use super::closer_look::CloserLook;
use super::wording::worth_knowing_tree as words;
use super::worth_knowing_draw::WIDTH;
use super::{Anchor, Block, Ink, Mark, Picture, Table, Tone};
use leavewell_model::counsel::{Shared, SharedCourse};
use leavewell_model::decide::information::of_answers;
use leavewell_model::decide::option::{Waiting, Worth};
use leavewell_model::decide::tree::{Act, DecisionProblem, Next, Rolled, TreeTest};
use leavewell_model::maths::mean;
use leavewell_model::terms::Kind;
use leavewell_model::terms::Treatment;
use leavewell_model::terms::{capital, share};

/// Greatest number of tests in a row.
const DEPTH: usize = 3;
/// Number of states: every kind, each without and with lead.
const STATES: usize = 2 * Kind::ALL.len();

pub(super) fn section(deep: &CloserLook) -> Block {
    let question = question(deep);
    let rolled = question.tree(DEPTH).rolled();
    let mut rows = Vec::new();
    listed(deep, &rolled, 0, &mut rows);
    let best = rolled
        .best()
        .map_or_else(String::new, |b| b.name.to_string());
    let title = match rolled.best().map(|b| &b.to.next) {
        Some(Next::Chance(_)) => words::begin_with(&small(&best)),
        _ => words::ask_nothing(&small(&best)),
    };
    let blocks = vec![
        Block::said(Tone::Answer, waiting_sentence(deep, &question)),
        drawn(&title, &rows),
        Block::said(Tone::Quiet, words::HOW_TO_READ),
        Block::fold(
            "deeper-tree-waiting",
            words::ACT_OR_WAIT,
            waiting_table(deep, &question),
        ),
    ];
    Block::section("deeper-tree", words::ASK_THEN_DO, blocks)
}

/// Sum over the draws of each state, divided by the number of all draws: prior times mean.
fn by_state(s: &Shared, column: &[f64]) -> [f64; STATES] {
    let mut sums = [0.0; STATES];
    for (i, x) in column.iter().enumerate() {
        sums[2 * s.kind[i] + usize::from(s.lead[i])] += x;
    }
    sums.map(|x| x / s.len() as f64)
}

/// The decision as a tree problem. The state is the kind and whether there is lead.
fn question(deep: &CloserLook) -> DecisionProblem {
    let s = &deep.shown;
    let prior = by_state(s, &vec![1.0; s.len()]);
    let leave = s.courses.first().map_or(0.0, |c| mean(&c.score));
    let acts = |tests: bool| -> Vec<Act> {
        leaders(s, tests)
            .into_iter()
            .map(|c| {
                let sums = by_state(s, &c.score);
                Act {
                    name: Rc::from(after_test(&c.name, tests).as_str()),
                    pays: sums
                        .iter()
                        .zip(&prior)
                        .map(|(x, p)| if *p > 0.0 { x / p - leave } else { 0.0 })
                        .collect(),
                }
            })
            .collect()
    };
    let mut tests: Vec<TreeTest> = deep
        .looks()
        .into_iter()
        .map(|look| TreeTest {
            name: Rc::from(look.name),
            fee: deep.score_of(look.fee),
            answers: look
                .answers
                .iter()
                .map(|(name, l)| {
                    let by_state = (0..STATES).map(|i| l[i / 2]).collect();
                    (Rc::from(name.as_str()), by_state)
                })
                .collect(),
            opens: None,
        })
        .collect();
    let after_test = acts(true);
    if !after_test.is_empty() {
        let lead: Vec<f64> = (0..STATES)
            .map(|i| f64::from(u8::from(i % 2 == 1)))
            .collect();
        tests.push(TreeTest {
            name: Rc::from(words::LEAD_TEST),
            // The courses that begin with this test carry its cost.
            fee: 0.0,
            answers: vec![
                (
                    Rc::from(words::PASSES),
                    lead.iter().map(|l| 1.0 - l).collect::<Vec<f64>>(),
                ),
                (Rc::from(words::LEAD_FOUND), lead),
            ],
            opens: Some(after_test),
        });
    }
    DecisionProblem {
        prior: prior.to_vec(),
        acts: acts(false),
        tests,
    }
}

/// The name of a course once its first test is done.
fn after_test(name: &str, tests: bool) -> String {
    let rest = if tests {
        name.strip_prefix(Treatment::TestLead.name())
    } else {
        None
    };
    match rest {
        None => name.to_owned(),
        Some("") => Treatment::Leave.name().to_owned(),
        Some(rest) => capital(rest.trim_start_matches(words::THEN)),
    }
}

/// The best course of each group that may be advised.
fn leaders(s: &Shared, tests: bool) -> Vec<&SharedCourse> {
    let mut found: Vec<&SharedCourse> = Vec::new();
    for c in s.courses.iter().filter(|c| c.allowed && c.tests == tests) {
        match found.iter_mut().find(|f| f.group == c.group) {
            Some(known) if mean(&c.score) > mean(&known.score) => *known = c,
            Some(_) => {}
            None => found.push(c),
        }
    }
    found
}

/// One line of the drawn tree.
struct TreeLine {
    level: usize,
    /// Whether this is a choice rather than a chance outcome.
    choice: bool,
    wins: bool,
    text: String,
    number: String,
    p: f64,
}

/// Number of losing choices shown at a square: more at the root.
const LOSERS: [usize; 2] = [5, 1];

fn listed(deep: &CloserLook, at: &Rolled, level: usize, lines: &mut Vec<TreeLine>) {
    match &at.next {
        Next::End => {}
        Next::Chance(branches) => {
            for b in branches {
                lines.push(TreeLine {
                    level,
                    choice: false,
                    wins: true,
                    text: format!("{} ({})", b.name, share(b.p)),
                    number: deep.signed(b.to.value),
                    p: b.p,
                });
                listed(deep, &b.to, level + 1, lines);
            }
        }
        Next::Decide { branches, chosen } => {
            if let Some(best) = branches.get(*chosen) {
                lines.push(TreeLine {
                    level,
                    choice: true,
                    wins: true,
                    text: best.name.to_string(),
                    number: deep.signed(best.to.value),
                    p: 1.0,
                });
                listed(deep, &best.to, level + 1, lines);
            }
            let mut losers: Vec<_> = branches
                .iter()
                .enumerate()
                .filter(|(i, _)| i != chosen)
                .map(|(_, b)| b)
                .collect();
            losers.order_by(|a, b| b.to.value.total_cmp(&a.to.value));
            for b in losers.iter().take(LOSERS[usize::from(level > 0)]) {
                lines.push(TreeLine {
                    level,
                    choice: true,
                    wins: false,
                    text: b.name.to_string(),
                    number: deep.signed(b.to.value),
                    p: 1.0,
                });
            }
        }
    }
}

const STEP: f64 = 14.0;
const ROW: f64 = 17.0;

fn drawn(title: &str, lines: &[TreeLine]) -> Block {
    let mut marks = Vec::new();
    let mut y = 4.0;
    let mut rows = Vec::new();
    // Position of the last mark at each level, for the line from a branch to its root.
    let mut stems: Vec<f64> = Vec::new();
    for line in lines {
        let x = STEP * line.level as f64;
        let ink = if line.wins { Ink::Outline } else { Ink::Quiet };
        let words = wrapped(&line.text, 38_usize.saturating_sub(2 * line.level).max(16));
        let middle = y + ROW - 4.0;
        if line.level > 0
            && let Some(from) = stems.get(line.level - 1)
        {
            let stem = x - STEP + 4.0;
            marks.push(Mark::path(
                Ink::Detail,
                format!("M{stem:.1} {from:.1}V{middle:.1}H{x:.1}"),
            ));
        }
        marks.push(Mark::path(
            ink,
            if line.choice {
                format!("M{x:.1} {:.1}h8v8h-8z", middle - 4.0)
            } else {
                format!("M{x:.1} {middle:.1}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z")
            },
        ));
        stems.truncate(line.level);
        stems.resize(line.level, middle + 4.0);
        stems.push(middle + 4.0);
        for (i, text) in words.iter().enumerate() {
            y += ROW;
            marks.push(Mark::text(ink, Anchor::Start, (x + 13.0, y), text.clone()));
            if i == 0 {
                marks.push(Mark::text(
                    ink,
                    Anchor::End,
                    (WIDTH, y),
                    line.number.clone(),
                ));
            }
        }
        y += 3.0;
        rows.push(vec![
            format!("{}{}", "– ".repeat(line.level), line.text),
            match (line.choice, line.wins) {
                (true, true) => words::DO_THIS,
                (true, false) => words::LOSES,
                (false, _) => words::MAY_HAPPEN,
            }
            .to_owned(),
            share(line.p),
            line.number.clone(),
        ]);
    }
    for row in &mut rows {
        if row[1] != words::MAY_HAPPEN {
            row[2] = String::new();
        }
    }
    Block::Picture(Picture {
        id: "deeper-tree-picture".to_owned(),
        title: title.to_owned(),
        description: words::DESCRIPTION.to_owned(),
        width: WIDTH,
        height: y + 8.0,
        marks,
        table: Table {
            caption: words::CAPTION.to_owned(),
            columns: [words::STEP, "", words::HOW_LIKELY, words::AGAINST_LEAVING]
                .map(str::to_owned)
                .to_vec(),
            rows,
        },
    })
}

/// Compares the best course that touches the piece with waiting for the most informative test. Returns
/// `None` if no such course is allowed.
fn waiting(deep: &CloserLook, question: &DecisionProblem) -> Option<(String, String, Worth)> {
    let s = &deep.shown;
    let acting = leaders(s, false).into_iter().filter(|c| c.touches).fold(
        None,
        |top: Option<&SharedCourse>, c| {
            if top.is_none_or(|t| mean(&c.score) > mean(&t.score)) {
                Some(c)
            } else {
                top
            }
        },
    )?;
    let act = question.acts.iter().find(|a| *a.name == *acting.name)?;
    let leave = question.acts.first()?;
    let rows: [&[f64]; 2] = [&act.pays, &leave.pays];
    let worth_of = |t: &TreeTest| {
        let answers: Vec<Vec<f64>> = t.answers.iter().map(|(_, l)| l.clone()).collect();
        (of_answers(&question.prior, &rows, &answers), answers)
    };
    let (name, answers) = question
        .tests
        .iter()
        .map(|t| (t.name.to_string(), worth_of(t)))
        .fold(None, |top: Option<(String, (f64, _))>, x| {
            if top.as_ref().is_none_or(|t| x.1.0 > t.1.0) {
                Some(x)
            } else {
                top
            }
        })
        .map(|(name, (_, answers))| (name, answers))?;
    let waiting = Waiting {
        gain_now: 0.0,
        chances: question.prior.clone(),
        acted: act.pays.clone(),
        kept: leave.pays.clone(),
    };
    debug_assert_eq!(question.prior.len(), 2 * Kind::ALL.len());
    Some((acting.name.clone(), name, waiting.worth_with(&answers)))
}

fn waiting_sentence(deep: &CloserLook, question: &DecisionProblem) -> String {
    let Some((act, test, worth)) = waiting(deep, question) else {
        return words::NOTHING_ALLOWED.to_owned();
    };
    let (act, test) = (small(&act), small(&test));
    if deep.in_units(worth.quasi_option) < 0.5 || worth.quasi_option < 1e-9 {
        return if worth.acts_now() || deep.in_units(worth.break_even) < 0.5 {
            words::waiting_keeps_nothing(&act)
        } else {
            words::waiting_costs_nothing(&act, &deep.amount(worth.break_even))
        };
    }
    words::waiting_keeps_a_choice(
        &deep.amount(worth.quasi_option),
        &test,
        &act,
        &deep.amount(worth.break_even),
    )
}

fn waiting_table(deep: &CloserLook, question: &DecisionProblem) -> Vec<Block> {
    let Some((act, test, worth)) = waiting(deep, question) else {
        return vec![Block::para(words::NO_COURSE)];
    };
    let row = |name: &str, score: f64| (name.to_owned(), deep.signed(score));
    vec![
        Block::para(words::act_caption(&act, &small(&test))),
        Block::Facts {
            rows: vec![
                row(words::ACT_NOW, worth.act_now),
                row(words::WAIT_BLIND, worth.open_loop),
                row(words::WAIT_AND_LEARN, worth.closed_loop),
                row(words::QUASI_OPTION, worth.quasi_option),
                row(words::OPTION, worth.option),
                row(words::WOULD_HAVE_TO_GAIN, worth.break_even),
                row(words::FORGETTING, worth.break_even_blind),
            ],
        },
        Block::said(Tone::Quiet, words::TWO_VALUES),
    ]
}
