//! How much each thing counts for a keeper, and how much the answer hangs on it.

use super::ask::{Question, number};
use super::risk::leaders;
use super::worth_knowing::Deep;
use super::worth_knowing_draw::small;
use super::{Block, Table, Tone};
use crate::case::{Aim, Draft};
use crate::decide::weights::{acceptability, confidence, simplex};
use crate::maths::mean;

/// What each attribute is on screen, and its swing from worst to best, in the order of
/// [`Aim::WEIGHED`].
const SAID: [(&str, &str); 5] = [
    (
        "Keeping what is original",
        "From all of it lost to all of it kept.",
    ),
    (
        "How well it serves your purpose",
        "From not at all to as well as such a piece can.",
    ),
    (
        "How well it will last",
        "From still getting worse to sound for good.",
    ),
    (
        "What it costs",
        "From a great sum for such a piece to nothing.",
    ),
    (
        "What can still be done later",
        "From nothing left to choose to every choice open.",
    ),
];

/// Weights drawn: 2^12.
const WEIGHTS_LOG2: u32 = 12;
/// Ranks shown; what comes after is added up.
const RANKS: usize = 3;

pub(super) fn section(deep: &Deep, draft: &Draft) -> Block {
    let (Some(now), Some(usual)) = (deep.shown.weights, deep.shown.usual_weights) else {
        return Block::section(
            "deeper-weights",
            "What counts for how much",
            vec![Block::para(
                "You want to sell, so only money counts. What is original is in the price already: buyers pay for it. Weighing it once more would count it twice.",
            )],
        );
    };
    let top = usual.iter().copied().fold(f64::MIN_POSITIVE, f64::max);
    let counted: Vec<usize> = (0..5).filter(|a| usual[*a] > 0.0).collect();
    let mut blocks = vec![Block::para(
        "Think of each as a swing from the worst to the best that may be. Give 100 to the swing you would choose first, and to each other one points beside that. Empty ones keep the usual points for your aim.",
    )];
    for a in &counted {
        let path = format!("aim.weights.{}", Aim::WEIGHED[*a]);
        let (field, _) = number(
            draft,
            Question {
                path: &path,
                label: SAID[*a].0,
                unit: "points",
                hint: SAID[*a].1,
                range: (0.0, 100.0),
                stand_in: Some((100.0 * usual[*a] / top).round()),
            },
        );
        blocks.push(field);
    }
    blocks.extend(ranks(deep, &counted, &now));
    Block::section("deeper-weights", "What counts for how much", blocks)
}

/// How the courses rank over all weights that keep the order of those held now.
fn ranks(deep: &Deep, counted: &[usize], now: &[f64; 5]) -> Vec<Block> {
    let courses = leaders(deep);
    // The order one's weights are in; the simplex's weights fall in that order.
    let mut order = counted.to_vec();
    crate::small::sort_short(&mut order, |a, b| now[*b].total_cmp(&now[*a]));
    let draws: Vec<Vec<&[f64]>> = courses
        .iter()
        .map(|c| order.iter().map(|a| c.attributes[*a].as_slice()).collect())
        .collect();
    let values: Vec<Vec<f64>> = draws
        .iter()
        .map(|c| c.iter().map(|column| mean(column)).collect())
        .collect();
    let over = simplex(order.len(), WEIGHTS_LOG2, true, 1);
    let all = acceptability(&values, &over);
    let sure = confidence(&draws, &all.central);
    let hundred = |p: f64| format!("{:.0}", 100.0 * p);
    let mut listed: Vec<usize> = (0..courses.len()).collect();
    let holistic = all.holistic();
    crate::small::sort_short(&mut listed, |a, b| holistic[*b].total_cmp(&holistic[*a]));
    let rows = listed
        .iter()
        .map(|i| {
            let row = &all.ranks[*i];
            let mut cells = vec![courses[*i].name.clone()];
            cells.extend((0..RANKS).map(|r| hundred(row.get(r).copied().unwrap_or(0.0))));
            cells.push(hundred(row.iter().skip(RANKS).fold(0.0, |s, r| s + r)));
            cells.push(if all.central[*i].is_some() {
                hundred(sure[*i])
            } else {
                "never first".to_owned()
            });
            cells
        })
        .collect();
    let first = |i: usize| all.ranks[i].first().copied().unwrap_or(0.0);
    let leader = (0..courses.len()).fold(0, |l, i| if first(i) > first(l) { i } else { l });
    let sentence = format!(
        "Over all weights in keeping with your order, this comes first in {} of 100: {}.",
        hundred(first(leader)),
        small(&courses[leader].name)
    );
    let mut blocks = vec![
        Block::said(Tone::Answer, sentence),
        Block::Table(Table {
            caption:
                "Out of 100 sets of weights in your order, how often each course has each place"
                    .to_owned(),
            columns: [
                "Course",
                "First",
                "Second",
                "Third",
                "Later",
                "How often first at its own typical weights",
            ]
            .map(str::to_owned)
            .to_vec(),
            rows,
        }),
    ];
    let typical: Vec<Vec<String>> = listed
        .iter()
        .filter_map(|i| {
            let central = all.central[*i].as_ref()?;
            let mut cells = vec![courses[*i].name.clone()];
            cells.extend(counted.iter().map(|a| {
                order
                    .iter()
                    .position(|b| a == b)
                    .map_or_else(String::new, |at| hundred(central[at]))
            }));
            Some(cells)
        })
        .collect();
    let mut columns = vec!["Course".to_owned()];
    columns.extend(counted.iter().map(|a| SAID[*a].0.to_owned()));
    blocks.push(Block::fold(
        "deeper-weights-typical",
        "Who would choose which: typical weights behind each first place",
        vec![
            Block::Table(Table {
                caption: "Mean of the weights, out of 100, that put each course first".to_owned(),
                columns,
                rows: typical,
            }),
            Block::said(
                Tone::Quiet,
                "What a rule bars is not in the table: no weight can buy it. A course may be a good second for nearly everybody and first for few.",
            ),
        ],
    ));
    blocks
}
