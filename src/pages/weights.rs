//! How much each thing counts for a keeper, and how much the answer depends on it.

use super::ask::{NumberField, number};
use super::closer_look::CloserLook;
use super::risk::leaders;
use super::wording::weights as words;
use super::{Block, Table, Tone};
use leavewell_model::decide::weights::{Order, acceptability, confidence, simplex};
use leavewell_model::maths::mean;
use leavewell_model::record::{Aim, Draft};
use leavewell_model::terms::ShortSort;
use leavewell_model::terms::small;

/// Number of weight sets drawn, as a power of 2.
const WEIGHTS_LOG2: u32 = 12;
/// Number of ranks shown. Later ranks are added up.
const RANKS: usize = 3;

pub(super) fn section(deep: &CloserLook, draft: &Draft) -> Block {
    let (Some(now), Some(usual)) = (deep.shown.weights, deep.shown.usual_weights) else {
        return Block::section(
            "deeper-weights",
            words::WEIGHTS,
            vec![Block::para(words::ONLY_MONEY)],
        );
    };
    let top = usual.iter().copied().fold(f64::MIN_POSITIVE, f64::max);
    let counted: Vec<usize> = (0..5).filter(|a| usual[*a] > 0.0).collect();
    let mut blocks = vec![Block::para(words::SWINGS)];
    for a in &counted {
        let path = format!("aim.weights.{}", Aim::WEIGHED[*a]);
        let (field, _) = number(
            draft,
            NumberField {
                path: &path,
                label: words::SAID[*a].0,
                unit: words::POINTS,
                hint: words::SAID[*a].1,
                stand_in: Some((100.0 * usual[*a] / top).round()),
            },
        );
        blocks.push(field);
    }
    blocks.extend(ranks(deep, &counted, &now));
    Block::section("deeper-weights", words::WEIGHTS, blocks)
}

/// How the courses rank over all weights that keep the present order of importance.
fn ranks(deep: &CloserLook, counted: &[usize], now: &[f64; 5]) -> Vec<Block> {
    let courses = leaders(deep);
    // The order of the user's weights. The weights drawn from the simplex fall in that order.
    let mut order = counted.to_vec();
    order.order_by(|a, b| now[*b].total_cmp(&now[*a]));
    let draws: Vec<Vec<&[f64]>> = courses
        .iter()
        .map(|c| order.iter().map(|a| c.attributes[*a].as_slice()).collect())
        .collect();
    let values: Vec<Vec<f64>> = draws
        .iter()
        .map(|c| c.iter().map(|column| mean(column)).collect())
        .collect();
    let over = simplex(order.len(), WEIGHTS_LOG2, Order::Falling, 1);
    let all = acceptability(&values, &over);
    let sure = confidence(&draws, &all.central);
    let hundred = |p: f64| format!("{:.0}", 100.0 * p);
    let mut listed: Vec<usize> = (0..courses.len()).collect();
    let holistic = all.holistic();
    listed.order_by(|a, b| holistic[*b].total_cmp(&holistic[*a]));
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
                words::NEVER_FIRST.to_owned()
            });
            cells
        })
        .collect();
    let first = |i: usize| all.ranks[i].first().copied().unwrap_or(0.0);
    let leader = (0..courses.len()).fold(0, |l, i| if first(i) > first(l) { i } else { l });
    let sentence = words::first_of_all(&hundred(first(leader)), &small(&courses[leader].name));
    let mut blocks = vec![
        Block::said(Tone::Answer, sentence),
        Block::Table(Table {
            caption: words::RANKS_CAPTION.to_owned(),
            columns: [
                words::COURSE,
                words::FIRST,
                words::SECOND,
                words::THIRD,
                words::LATER,
                words::CONFIDENCE,
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
    let mut columns = vec![words::COURSE_CHOSEN.to_owned()];
    columns.extend(counted.iter().map(|a| words::SAID[*a].0.to_owned()));
    blocks.push(Block::fold(
        "deeper-weights-typical",
        words::WHO_CHOOSES,
        vec![
            Block::Table(Table {
                caption: words::MEAN_WEIGHTS.to_owned(),
                columns,
                rows: typical,
            }),
            Block::said(Tone::Quiet, words::WHAT_IS_BARRED),
        ],
    ));
    blocks
}
