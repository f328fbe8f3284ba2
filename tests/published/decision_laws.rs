//! Laws that hold for every decision, whatever the numbers.

use leavewell_model::decide::information as info;
use leavewell_model::decide::option::Waiting;
use leavewell_model::decide::risk::{certain, dominance, regrets, worst};
use leavewell_model::decide::sensitivity::share_explained;
use leavewell_model::decide::tree::{Act, DecisionProblem, TreeTest};
use leavewell_model::decide::weights::{Order, acceptability, shares, simplex};
use proptest::prelude::*;

use crate::decision_trees::{certain_answers, perfect_information};

/// Four states with their chances.
fn chances() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(0.01..1.0_f64, 4).prop_map(|p| shares(&p))
}

fn pays(acts: usize) -> impl Strategy<Value = Vec<Vec<f64>>> {
    prop::collection::vec(prop::collection::vec(-1000.0..1000.0_f64, 4), acts)
}

/// A test with two answers.
fn answers() -> impl Strategy<Value = Vec<Vec<f64>>> {
    prop::collection::vec(0.0..=1.0_f64, 4)
        .prop_map(|p| vec![p.clone(), p.iter().map(|p| 1.0 - p).collect()])
}

fn rows(pays: &[Vec<f64>]) -> Vec<&[f64]> {
    pays.iter().map(Vec::as_slice).collect()
}

/// Both tests asked at once.
fn both(a: &[Vec<f64>], b: &[Vec<f64>]) -> Vec<Vec<f64>> {
    a.iter()
        .flat_map(|p| {
            b.iter()
                .map(move |q| p.iter().zip(q).map(|(p, q)| p * q).collect())
        })
        .collect()
}

fn question(prior: &[f64], pays: &[Vec<f64>], tests: &[(&Vec<Vec<f64>>, f64)]) -> DecisionProblem {
    DecisionProblem {
        prior: prior.to_vec(),
        acts: pays
            .iter()
            .enumerate()
            .map(|(i, pays)| Act {
                name: format!("act {i}").into(),
                pays: pays.clone(),
            })
            .collect(),
        tests: tests
            .iter()
            .enumerate()
            .map(|(i, (answers, fee))| TreeTest {
                name: format!("test {i}").into(),
                fee: *fee,
                answers: answers
                    .iter()
                    .enumerate()
                    .map(|(j, l)| (format!("answer {j}").into(), l.clone()))
                    .collect(),
                opens: None,
            })
            .collect(),
    }
}

fn value(question: &DecisionProblem, depth: usize) -> f64 {
    question.tree(depth).rolled().value
}

fn order() -> impl Strategy<Value = Order> {
    prop_oneof![Just(Order::Free), Just(Order::Falling)]
}

const SMALL: f64 = 1e-7;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// An answer is worth at least nothing and at most perfect information; two answers are worth at least one.
    #[test]
    fn an_answer_is_worth_at_most_perfect_information(p in chances(), u in pays(3), a in answers(), b in answers()) {
        let u = rows(&u);
        let (all, one, two) = (
            perfect_information(&p, &u),
            info::of_answers(&p, &u, &a),
            info::of_answers(&p, &u, &both(&a, &b)),
        );
        prop_assert!(one >= -SMALL && one <= two + SMALL && two <= all + SMALL);
    }

    /// An answer that changes no act is worth nothing.
    #[test]
    fn an_answer_that_changes_nothing_is_worth_nothing(p in chances(), u in pays(1), gain in 0.0..100.0_f64, a in answers()) {
        let better: Vec<f64> = u[0].iter().map(|x| x + gain).collect();
        let rows: [&[f64]; 2] = [&better, &u[0]];
        prop_assert!(info::of_answers(&p, &rows, &a).abs() < SMALL);
        prop_assert!(perfect_information(&p, &rows).abs() < SMALL);
    }

    /// The least mean regret equals the value of perfect information.
    #[test]
    fn least_mean_regret_is_the_value_of_perfect_information(p in chances(), u in pays(4)) {
        let table = regrets(&rows(&u));
        let least = table
            .iter()
            .map(|row| info::now(&p, &[row]))
            .fold(f64::INFINITY, f64::min);
        prop_assert!((least - perfect_information(&p, &rows(&u))).abs() < SMALL);
    }

    /// Testing in sequence is worth at least any fixed set of tests, fees included.
    #[test]
    fn testing_in_sequence_is_at_least_any_batch(p in chances(), u in pays(3), a in answers(), b in answers(), fees in (0.0..50.0_f64, 0.0..50.0_f64)) {
        let in_turn = value(&question(&p, &u, &[(&a, fees.0), (&b, fees.1)]), 2);
        let batch = |answers: &Vec<Vec<f64>>, fee: f64| {
            info::with_answers(&p, &rows(&u), answers) - fee
        };
        for fixed in [
            info::now(&p, &rows(&u)),
            batch(&a, fees.0),
            batch(&b, fees.1),
            batch(&both(&a, &b), fees.0 + fees.1),
        ] {
            prop_assert!(in_turn >= fixed - SMALL, "{in_turn} {fixed}");
        }
    }

    /// Another act or another test never lowers the value of the best choice.
    #[test]
    fn another_choice_never_hurts(p in chances(), u in pays(4), a in answers(), fee in 0.0..50.0_f64) {
        prop_assert!(info::now(&p, &rows(&u)) >= info::now(&p, &rows(&u[..3])) - SMALL);
        let with = value(&question(&p, &u, &[(&a, fee)]), 1);
        prop_assert!(with >= value(&question(&p, &u, &[]), 1) - SMALL);
    }

    /// Another unit or origin of money changes no act and scales the value of information.
    #[test]
    fn the_unit_of_money_does_not_matter(p in chances(), u in pays(3), a in answers(), scale in 0.1..10.0_f64, shift in -500.0..500.0_f64) {
        let moved: Vec<Vec<f64>> = u
            .iter()
            .map(|row| row.iter().map(|x| scale * x + shift).collect())
            .collect();
        for (one, other) in [
            (perfect_information(&p, &rows(&u)), perfect_information(&p, &rows(&moved))),
            (info::of_answers(&p, &rows(&u), &a), info::of_answers(&p, &rows(&moved), &a)),
        ] {
            prop_assert!((scale * one - other).abs() < SMALL * scale.max(1.0));
        }
    }

    /// Waiting to learn is never worse than waiting without learning, and equal to it where learning never
    /// changes the act.
    #[test]
    fn learning_never_hurts(p in chances(), u in pays(2), now in -100.0..100.0_f64, a in answers()) {
        let waiting = Waiting { gain_now: now, chances: p.clone(), acted: u[0].clone(), kept: u[1].clone() };
        let (full, part) = (waiting.worth_with(&certain_answers(4)), waiting.worth_with(&a));
        prop_assert!(full.quasi_option >= -SMALL && part.quasi_option >= -SMALL);
        prop_assert!(part.quasi_option <= full.quasi_option + SMALL);
        prop_assert_eq!(full.acts_now(), full.act_now >= full.closed_loop);
        let never = Waiting { kept: u[0].iter().map(|x| x - 1.0).collect(), ..waiting };
        prop_assert!(never.worth_with(&certain_answers(4)).quasi_option.abs() < SMALL);
    }

    /// On draws, knowing two inputs is worth at least as much as one and at most as much as everything.
    #[test]
    fn on_draws_knowing_more_is_worth_more(values in prop::collection::vec((-9.0..9.0_f64, -9.0..9.0_f64, 0..4_usize, 0..3_usize), 30..90)) {
        let one: Vec<f64> = values.iter().map(|v| v.0).collect();
        let other: Vec<f64> = values.iter().map(|v| v.1).collect();
        let acts: [&[f64]; 2] = [&one, &other];
        let coarse: Vec<usize> = values.iter().map(|v| v.2).collect();
        let fine: Vec<usize> = values.iter().map(|v| 3 * v.2 + v.3).collect();
        let (a, b, all) = (info::of_group(&acts, &coarse), info::of_group(&acts, &fine), info::of_everything(&acts));
        prop_assert!(a >= -SMALL && a <= b + SMALL && b <= all + SMALL);
        let share = share_explained(&one, &other);
        prop_assert!(share.is_none_or(|s| (0.0..=1.0).contains(&s)));
    }

    /// Every option has some rank, and the shares of an option sum to 1.
    #[test]
    fn ranks_of_an_option_sum_to_one(u in prop::collection::vec(prop::collection::vec(0.0..1.0_f64, 3), 4), order in order()) {
        let sampled = acceptability(&u, &simplex(3, 10, order, 7));
        for row in &sampled.ranks {
            prop_assert!((row.iter().sum::<f64>() - 1.0).abs() < SMALL);
        }
        for i in 0..4 {
            for j in 0..4 {
                prop_assert!(sampled.beats[i][j] + sampled.beats[j][i] <= 1.0 + SMALL);
            }
        }
    }

    /// Sampled weights are not negative, sum to 1, and fall where an order is wanted.
    #[test]
    fn points_of_the_simplex_are_weights(n in 1..8_usize, order in order(), seed: u32) {
        for w in simplex(n, 4, order, seed) {
            prop_assert!((w.iter().sum::<f64>() - 1.0).abs() < SMALL && w.iter().all(|x| *x >= 0.0));
            prop_assert!(order == Order::Free || w.windows(2).all(|p| p[0] >= p[1]));
        }
    }

    /// The certainty equivalent lies between the minimum and the mean and rises with tolerance; the mean of
    /// the worst share rises with its size; a dominating risk is at least as good by both.
    #[test]
    fn risk_measures_keep_their_order(x in prop::collection::vec(-500.0..500.0_f64, 2..40), lift in 0.0..50.0_f64) {
        let least = x.iter().copied().fold(f64::INFINITY, f64::min);
        let mean = x.iter().sum::<f64>() / x.len() as f64;
        let mut last = least - SMALL;
        for tolerance in [1.0, 30.0, 500.0, 1e7] {
            let sure = certain(&x, &[], tolerance);
            prop_assert!(sure >= last - 1e-6 && sure <= mean + 1e-6, "{sure}");
            last = sure;
        }
        let mut last = least - SMALL;
        for alpha in [0.01, 0.1, 0.5, 1.0] {
            let (_, tail) = worst(&x, &[], alpha);
            prop_assert!(tail >= last - SMALL);
            last = tail;
        }
        prop_assert!((last - mean).abs() < 1e-6);
        let better: Vec<f64> = x.iter().map(|x| x + lift).collect();
        let d = dominance(&better, &x);
        prop_assert!(d.first && d.second && d.against.abs() < SMALL);
        prop_assert!(certain(&better, &[], 50.0) >= certain(&x, &[], 50.0) - 1e-6);
    }
}
