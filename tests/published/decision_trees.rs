//! Published decision trees, solved by the tree the product uses.
//!
//! Inputs are as printed in the sources named. Results that are not printed there were computed with numpy
//! from the same inputs. CONSTRUCTED marks invented inputs, which are no evidence of anything.

use leavewell_model::decide::information;
use leavewell_model::decide::option::Waiting;
use leavewell_model::decide::tree::{Act, Branch, DecisionProblem, Next, Rolled, Tree, TreeTest};

use crate::near;

fn act(name: &str, pays: &[f64]) -> Act {
    Act {
        name: name.into(),
        pays: pays.to_vec(),
    }
}

fn test(name: &str, fee: f64, answers: &[(&str, &[f64])]) -> TreeTest {
    TreeTest {
        name: name.into(),
        fee,
        answers: answers
            .iter()
            .map(|(n, l)| ((*n).into(), l.to_vec()))
            .collect(),
        opens: None,
    }
}

fn rolled(question: &DecisionProblem, depth: usize) -> Rolled {
    question.tree(depth).rolled()
}

fn branches(rolled: &Rolled) -> &[Branch] {
    match &rolled.next {
        Next::End => &[],
        Next::Chance(branches) | Next::Decide { branches, .. } => branches,
    }
}

/// The branch with this name.
fn branch<'a>(rolled: &'a Rolled, name: &str) -> &'a Branch {
    branches(rolled).iter().find(|b| &*b.name == name).unwrap()
}

/// Number of events in the whole tree.
fn outcomes(rolled: &Rolled) -> usize {
    let here = match &rolled.next {
        Next::Chance(branches) => branches.len(),
        Next::End | Next::Decide { .. } => 0,
    };
    here + branches(rolled)
        .iter()
        .map(|b| outcomes(&b.to))
        .sum::<usize>()
}

/// Answers that name the state for certain: perfect information.
pub(crate) fn certain_answers(states: usize) -> Vec<Vec<f64>> {
    (0..states)
        .map(|s| (0..states).map(|t| f64::from(u8::from(s == t))).collect())
        .collect()
}

/// The expected value of perfect information.
pub(crate) fn perfect_information(chances: &[f64], pays: &[&[f64]]) -> f64 {
    information::of_answers(chances, pays, &certain_answers(chances.len()))
}

fn answers_of(test: &TreeTest) -> Vec<Vec<f64>> {
    test.answers.iter().map(|(_, l)| l.clone()).collect()
}

fn pays(question: &DecisionProblem) -> Vec<&[f64]> {
    question.acts.iter().map(|a| a.pays.as_slice()).collect()
}

/// The oil wildcatter (Raiffa 1968, Decision Analysis; table of the influence-diagram literature).
fn wildcatter() -> DecisionProblem {
    DecisionProblem {
        prior: vec![0.5, 0.3, 0.2],
        acts: vec![act("stop", &[0.0; 3]), act("drill", &[-70.0, 50.0, 200.0])],
        tests: vec![test(
            "sound",
            10.0,
            &[
                ("closed", &[0.1, 0.3, 0.5]),
                ("open", &[0.3, 0.4, 0.4]),
                ("diffuse", &[0.6, 0.3, 0.1]),
            ],
        )],
    }
}

#[test]
fn the_oil_wildcatter() {
    let question = wildcatter();
    let tree = rolled(&question, 1);
    near(tree.value, 22.5, 1e-9);
    near(branch(&tree, "drill").to.value, 20.0, 1e-9);
    let sounding = tree.best().unwrap();
    assert_eq!(&*sounding.name, "sound");
    // Probability of each answer, worth of drilling after it (before the fee), and what is done.
    for (name, p, drilling, best) in [
        ("closed", 0.24, 87.5, "drill"),
        ("open", 0.35, 32.857_142_857_142_86, "drill"),
        ("diffuse", 0.41, -30.487_804_878_048_78, "stop"),
    ] {
        let heard = branch(&sounding.to, name);
        near(heard.p, p, 1e-9);
        near(branch(&heard.to, "drill").to.value + 10.0, drilling, 1e-9);
        assert_eq!(&*heard.to.best().unwrap().name, best);
    }
    let answers = answers_of(&question.tests[0]);
    let rows = pays(&question);
    near(information::now(&question.prior, &rows), 20.0, 1e-9);
    near(perfect_information(&question.prior, &rows), 35.0, 1e-9);
    near(
        information::with_answers(&question.prior, &rows, &answers),
        32.5,
        1e-9,
    );
    near(
        information::of_answers(&question.prior, &rows, &answers),
        12.5,
        1e-9,
    );
}

/// The same firm, asked whether to drill now or to sound first: drilling now is worth 20; after the
/// sounding 32.5, so that learning adds 12.5; knowing the ground for certain would be worth 55.
#[test]
fn drilling_now_or_sounding_first() {
    let question = wildcatter();
    let waiting = Waiting {
        gain_now: 0.0,
        chances: question.prior.clone(),
        acted: question.acts[1].pays.clone(),
        kept: question.acts[0].pays.clone(),
    };
    let sounding = waiting.worth_with(&answers_of(&question.tests[0]));
    near(sounding.act_now, 20.0, 1e-9);
    near(sounding.open_loop, 20.0, 1e-9);
    near(sounding.closed_loop, 32.5, 1e-9);
    near(sounding.quasi_option, 12.5, 1e-9);
    near(sounding.break_even, 12.5, 1e-9);
    let certain = waiting.worth_with(&certain_answers(3));
    near(certain.closed_loop, 55.0, 1e-9);
}

/// The prototype example of an oil firm (Hillier & Lieberman, Introduction to Operations Research,
/// ch. 15).
#[test]
fn the_prototype_oil_firm() {
    let question = DecisionProblem {
        prior: vec![0.25, 0.75],
        acts: vec![act("sell", &[90.0, 90.0]), act("drill", &[700.0, -100.0])],
        tests: vec![test(
            "survey",
            30.0,
            &[("favourable", &[0.6, 0.2]), ("unfavourable", &[0.4, 0.8])],
        )],
    };
    let tree = rolled(&question, 1);
    near(tree.value, 123.0, 1e-9);
    near(branch(&tree, "drill").to.value, 100.0, 1e-9);
    let survey = &branch(&tree, "survey").to;
    let (good, bad) = (branch(survey, "favourable"), branch(survey, "unfavourable"));
    near(good.p, 0.3, 1e-9);
    near(bad.p, 0.7, 1e-9);
    near(branch(&good.to, "drill").to.value + 30.0, 300.0, 1e-9);
    near(branch(&bad.to, "drill").to.value + 30.0, 100.0 / 7.0, 1e-9);
    assert_eq!(&*bad.to.best().unwrap().name, "sell");
    let rows = pays(&question);
    near(perfect_information(&question.prior, &rows), 142.5, 1e-9);
    let answers = answers_of(&question.tests[0]);
    near(
        information::of_answers(&question.prior, &rows, &answers),
        53.0,
        1e-9,
    );
}

/// The stock-market example (Clemen, Making Hard Decisions).
#[test]
fn the_stock_market() {
    let question = DecisionProblem {
        prior: vec![0.5, 0.3, 0.2],
        acts: vec![
            act("savings", &[500.0; 3]),
            act("high", &[1500.0, 100.0, -1000.0]),
            act("low", &[1000.0, 200.0, -100.0]),
        ],
        tests: vec![test(
            "forecast",
            0.0,
            &[
                ("up", &[0.8, 0.15, 0.2]),
                ("flat", &[0.1, 0.7, 0.2]),
                ("down", &[0.1, 0.15, 0.6]),
            ],
        )],
    };
    let tree = rolled(&question, 1);
    near(tree.value, 822.0, 1e-9);
    for (name, value) in [("high", 580.0), ("low", 540.0), ("savings", 500.0)] {
        near(branch(&tree, name).to.value, value, 1e-9);
    }
    let rows = pays(&question);
    near(perfect_information(&question.prior, &rows), 420.0, 1e-9);
    let answers = answers_of(&question.tests[0]);
    near(
        information::of_answers(&question.prior, &rows, &answers),
        242.0,
        1e-9,
    );
}

/// The used-car buyer (Howard; as in the documentation of DecisionProgramming.jl).
#[test]
fn the_used_car_buyer() {
    let question = DecisionProblem {
        prior: vec![0.2, 0.8],
        acts: vec![
            act("do not buy", &[0.0, 0.0]),
            act("plain", &[-100.0, 60.0]),
            act("guarantee", &[40.0, 20.0]),
        ],
        tests: vec![test(
            "test",
            25.0,
            &[("lemon", &[1.0, 0.0]), ("peach", &[0.0, 1.0])],
        )],
    };
    let tree = rolled(&question, 1);
    near(tree.value, 31.0, 1e-9);
    near(branch(&tree, "plain").to.value, 28.0, 1e-9);
    near(branch(&tree, "guarantee").to.value, 24.0, 1e-9);
    let tested = &tree.best().unwrap().to;
    for (answer, does, value) in [("lemon", "guarantee", 15.0), ("peach", "plain", 35.0)] {
        let then = &branch(tested, answer).to;
        near(then.value, value, 1e-9);
        assert_eq!(&*then.best().unwrap().name, does);
    }
}

/// CONSTRUCTED: making the second test only after a positive first one beats every fixed set of tests.
#[test]
fn testing_in_sequence_beats_testing_all_at_once() {
    let of = |tests: Vec<TreeTest>| DecisionProblem {
        prior: vec![0.5, 0.5],
        acts: vec![act("leave", &[0.0, 0.0]), act("treat", &[1000.0, -1500.0])],
        tests,
    };
    let first = test("first", 20.0, &[("yes", &[0.9, 0.3]), ("no", &[0.1, 0.7])]);
    let second = test(
        "second",
        150.0,
        &[("yes", &[0.95, 0.03]), ("no", &[0.05, 0.97])],
    );
    // Both at once is one test with the joint answers and both fees.
    let mut joint = Vec::new();
    for (a, p) in &first.answers {
        for (b, q) in &second.answers {
            let both: Vec<f64> = p.iter().zip(q).map(|(p, q)| p * q).collect();
            joint.push((format!("{a} {b}").into(), both));
        }
    }
    let both = TreeTest {
        name: "both".into(),
        fee: 170.0,
        answers: joint,
        opens: None,
    };
    near(rolled(&of(Vec::new()), 0).value, 0.0, 1e-9);
    for (only, name, value) in [
        (first.clone(), "first", 205.0),
        (second.clone(), "second", 302.5),
        (both, "both", 282.5),
    ] {
        let tree = rolled(&of(vec![only]), 1);
        near(branch(&tree, name).to.value, value, 1e-9);
    }
    let tree = rolled(&of(vec![first, second]), 2);
    near(tree.value, 310.75, 1e-9);
    let start = tree.best().unwrap();
    assert_eq!(&*start.name, "first");
    let (yes, no) = (branch(&start.to, "yes"), branch(&start.to, "no"));
    near(yes.p, 0.6, 1e-9);
    assert_eq!(&*no.to.best().unwrap().name, "leave");
    let again = yes.to.best().unwrap();
    assert_eq!(&*again.name, "second");
    near(branch(&again.to, "yes").p, 0.72, 1e-9);
    near(
        branch(&again.to, "yes").to.value + 170.0,
        1000.0 - 2500.0 * (1.0 - 0.989_583_333_333_333_3),
        1e-9,
    );
}

/// CONSTRUCTED: one of two tests is enough, and the tree does not ask for the other.
#[test]
fn a_second_test_is_not_made_when_one_is_enough() {
    let cheap = test("cheap", 20.0, &[("yes", &[0.8, 0.3]), ("no", &[0.2, 0.7])]);
    let good = test("good", 60.0, &[("yes", &[0.9, 0.1]), ("no", &[0.1, 0.9])]);
    let question = DecisionProblem {
        prior: vec![0.6, 0.4],
        acts: vec![act("leave", &[0.0, 0.0]), act("treat", &[1000.0, -1500.0])],
        tests: vec![cheap, good],
    };
    let tree = rolled(&question, 2);
    near(tree.value, 420.0, 1e-9);
    assert_eq!(&*tree.best().unwrap().name, "good");
    near(branch(&tree, "cheap").to.value, 400.0, 1e-9);
    let one = rolled(&question, 1);
    near(branch(&one, "cheap").to.value, 280.0, 1e-9);
    near(
        perfect_information(&question.prior, &pays(&question)),
        600.0,
        1e-9,
    );
}

/// CONSTRUCTED: identify, test, treat, then sell or keep, against each of the 36 fixed policies.
#[test]
fn a_whole_case_agrees_with_brute_force_over_policies() {
    let prior = [0.55, 0.3, 0.15];
    let names = ["leave", "clean", "replate"];
    let costs = [0.0, 25.0, 110.0];
    let sell = [
        [300.0, 180.0, 120.0],
        [380.0, 130.0, 130.0],
        [220.0, 210.0, 190.0],
    ];
    let keep = [
        [330.0, 170.0, 60.0],
        [360.0, 150.0, 70.0],
        [150.0, 140.0, 120.0],
    ];
    let mut acts = Vec::new();
    for (exit, values) in [("sell", sell), ("keep", keep)] {
        for (i, name) in names.iter().enumerate() {
            let net: Vec<f64> = values[i].iter().map(|v| v - costs[i]).collect();
            acts.push(act(&format!("{name} and {exit}"), &net));
        }
    }
    let probe = [[0.85, 0.15, 0.25], [0.15, 0.85, 0.75]];
    let question = DecisionProblem {
        prior: prior.to_vec(),
        acts: acts.clone(),
        tests: vec![test(
            "probe",
            15.0,
            &[("thick", &probe[0]), ("thin", &probe[1])],
        )],
    };
    let tree = rolled(&question, 1);
    near(tree.value, 243.775, 1e-9);
    let probed = &tree.best().unwrap().to;
    assert_eq!(
        &*branch(probed, "thick").to.best().unwrap().name,
        "clean and sell"
    );
    assert_eq!(
        &*branch(probed, "thin").to.best().unwrap().name,
        "leave and sell"
    );
    let brute = acts
        .iter()
        .flat_map(|thick| acts.iter().map(move |thin| (thick, thin)))
        .map(|(thick, thin)| {
            (0..3)
                .map(|s| prior[s] * (probe[0][s] * thick.pays[s] + probe[1][s] * thin.pays[s]))
                .sum::<f64>()
                - 15.0
        })
        .fold(f64::NEG_INFINITY, f64::max);
    near(tree.value, brute, 1e-9);
    let rows = pays(&question);
    near(information::now(&prior, &rows), 242.5, 1e-9);
    near(perfect_information(&prior, &rows), 24.75, 1e-9);
    let answers = answers_of(&question.tests[0]);
    near(
        information::of_answers(&prior, &rows, &answers),
        16.275,
        1e-9,
    );
}

/// The number of events is the sum over i from 1 to d of T!/(T - i)! 2^i: 2,928 for eight tests with two
/// answers to depth three.
#[test]
fn eight_tests_three_deep_have_2928_events() {
    let tests = (0..8)
        .map(|i| {
            test(
                &format!("test {i}"),
                1.0,
                &[("yes", &[0.8, 0.3]), ("no", &[0.2, 0.7])],
            )
        })
        .collect();
    let question = DecisionProblem {
        prior: vec![0.5, 0.5],
        acts: vec![act("leave", &[0.0, 0.0]), act("treat", &[10.0, -10.0])],
        tests,
    };
    assert_eq!(outcomes(&rolled(&question, 3)), 2928);
}

/// CONSTRUCTED: the test with more information in bits is worth nothing here; the other one is worth
/// something.
#[test]
fn more_information_in_bits_need_not_be_worth_more() {
    let prior = [0.4, 0.4, 0.2];
    let (leave, treat) = ([50.0; 3], [90.0, 90.0, -200.0]);
    let rows: [&[f64]; 2] = [&leave, &treat];
    for (yes, worth) in [([0.95, 0.05, 0.5], 0.0), ([0.9, 0.9, 0.3], 13.8)] {
        let answers = vec![yes.to_vec(), yes.iter().map(|p| 1.0 - p).collect()];
        near(
            information::of_answers(&prior, &rows, &answers),
            worth,
            1e-9,
        );
    }
}

/// A project that can be put off for a year (Dixit & Pindyck 1994, ch. 2), given as a tree. The price is 200,
/// then 300 or 100 for ever; the cost is 1600; the discount rate is 10 % a year.
#[test]
fn a_project_that_can_wait() {
    let later = |price: f64| -1600.0 / 1.1 + price / 0.1;
    let tree = Tree::Decide(vec![
        ("now".into(), Tree::End(-1600.0 + 200.0 + 200.0 / 0.1)),
        (
            "wait".into(),
            Tree::Chance(
                [("up", 300.0), ("down", 100.0)]
                    .map(|(name, price)| {
                        let then = Tree::Decide(vec![
                            ("never".into(), Tree::End(0.0)),
                            ("invest".into(), Tree::End(later(price))),
                        ]);
                        (name.into(), 0.5, then)
                    })
                    .into(),
            ),
        ),
    ])
    .rolled();
    near(branch(&tree, "now").to.value, 600.0, 1e-9);
    near(tree.value, 772.727_272_727, 5e-9);
    assert_eq!(&*tree.best().unwrap().name, "wait");
}
