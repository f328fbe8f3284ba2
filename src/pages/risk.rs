//! How the answer holds up for someone averse to risk, in the worst tenth of outcomes, and by regret.

use super::ask::{NumberField, number};
use super::closer_look::CloserLook;
use super::wording::risk as words;
use super::{Block, Table, Tone};
use leavewell_model::counsel::SharedCourse;
use leavewell_model::decide::risk::{
    certain, dominance, judged, regrets, tolerance_from_even_bet, worst,
};
use leavewell_model::ledger::FigureId;
use leavewell_model::maths::mean;
use leavewell_model::record::Draft;
use leavewell_model::terms::small;

/// The best course of each group that may be advised. The advised course comes first, so that it wins ties.
pub(super) fn leaders<'a>(deep: &'a CloserLook) -> Vec<&'a SharedCourse> {
    let s = &deep.shown;
    let mut found: Vec<&SharedCourse> = s.courses.get(s.chosen).into_iter().collect();
    for c in s.courses.iter().filter(|c| c.allowed) {
        match found
            .iter_mut()
            .enumerate()
            .find(|(_, f)| f.group == c.group)
        {
            Some((at, known)) if at > 0 && mean(&c.score) > mean(&known.score) => *known = c,
            Some(_) => {}
            None => found.push(c),
        }
    }
    found
}

pub(super) fn section(deep: &CloserLook, draft: &Draft) -> Block {
    let stand_in = deep.ledger.value(FigureId::COUNSEL_EVEN_BET);
    let (field, stake) = number(
        draft,
        NumberField {
            path: "aim.even_bet",
            label: words::STAKE,
            unit: "",
            hint: words::STAKE_HINT,
            stand_in: Some(stand_in),
        },
    );
    let tolerance = tolerance_from_even_bet(stake.unwrap_or(stand_in));
    let courses = leaders(deep);
    // Judged in money where possible. For a keeper to whom cost does not matter, it is judged on points.
    let rate = deep.shown.money_per_score.unwrap_or(0.0);
    let scale = if rate > 0.0 { rate } else { 1.0 };
    let columns: Vec<Vec<f64>> = courses
        .iter()
        .map(|c| c.score.iter().map(|x| x * scale).collect())
        .collect();
    let acts: Vec<&[f64]> = columns.iter().map(Vec::as_slice).collect();
    let tail = deep.ledger.value(FigureId::COUNSEL_TAIL).clamp(0.01, 1.0);
    let tolerance = if rate > 0.0 { tolerance } else { f64::INFINITY };
    let ways = judged(&acts, tolerance, tail);
    let regret: Vec<f64> = regrets(&acts)
        .iter()
        .map(|r| r.iter().copied().fold(0.0, f64::max))
        .collect();
    let measures: [(&str, usize, Vec<f64>); 4] = [
        (
            words::ON_AVERAGE,
            ways.mean,
            acts.iter().map(|a| mean(a)).collect(),
        ),
        (
            words::MINDING_RISK,
            ways.certain,
            acts.iter().map(|a| certain(a, &[], tolerance)).collect(),
        ),
        (
            words::WORST_TENTH,
            ways.worst,
            acts.iter().map(|a| worst(a, &[], tail).1).collect(),
        ),
        (
            words::REGRET,
            ways.regret,
            regret.iter().map(|r| -r).collect(),
        ),
    ];
    let noise = deep.shown.noise * scale;
    // The advised course comes first.
    let against: Vec<(&str, &str)> = measures
        .iter()
        .filter(|(_, first, values)| values[*first] > values[0] + noise)
        .map(|(way, first, _)| (*way, courses[*first].name.as_str()))
        .collect();
    let rows = measures
        .iter()
        .map(|(way, first, values)| {
            let gap = (values[*first] - values[0]) / scale;
            vec![
                (*way).to_owned(),
                courses[*first].name.clone(),
                if *first == 0 {
                    String::new()
                } else if gap * scale <= noise {
                    words::LEVEL.to_owned()
                } else {
                    deep.signed(gap)
                },
            ]
        })
        .collect();
    let advised = courses.first().map_or("", |c| c.name.as_str());
    let mut blocks = vec![
        Block::said(Tone::Answer, agreement(advised, &against)),
        field,
        Block::Table(Table {
            caption: words::CAPTION.to_owned(),
            columns: words::COLUMNS.map(str::to_owned).to_vec(),
            rows,
        }),
    ];
    blocks.extend(dominating(&courses, &acts));
    if rate <= 0.0 {
        blocks.push(Block::said(Tone::Quiet, words::COST_COUNTS_FOR_NOTHING));
    }
    Block::section("deeper-risk", words::RISK, blocks)
}

fn agreement(advised: &str, against: &[(&str, &str)]) -> String {
    if against.is_empty() {
        return words::all_agree(&small(advised));
    }
    let others: Vec<String> = against
        .iter()
        .map(|(way, first)| words::another(way, &small(first)))
        .collect();
    words::advised(&small(advised), &others.join(" "))
}

/// Stochastic dominance: courses at least as good whatever the attitude to risk, reported for the advised
/// course only.
fn dominating(courses: &[&SharedCourse], acts: &[&[f64]]) -> Option<Block> {
    let own = acts.first()?;
    let mut items = Vec::new();
    for (c, other) in courses.iter().zip(acts).skip(1) {
        let (over, under) = (dominance(own, other), dominance(other, own));
        let name = small(&c.name);
        if over.first {
            items.push(words::at_every_level(&name));
        } else if over.second {
            items.push(words::nobody_would_rather(&name));
        } else if under.first {
            items.push(words::dominated_by(&name));
        }
    }
    (!items.is_empty()).then(|| {
        Block::fold(
            "deeper-risk-dominance",
            words::DOMINATES,
            vec![Block::List { items }],
        )
    })
}
