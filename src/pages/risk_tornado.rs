//! A tornado chart: which input moves the lead of the advised course over the next best.

use super::closer_look::CloserLook;
use super::risk::leaders;
use super::wording::risk_tornado as words;
use super::worth_knowing_draw::{WIDTH, bar};
use super::{Anchor, Block, Ink, Mark, Picture, Table, Tone};
use leavewell_model::counsel::Shared;
use leavewell_model::decide::sensitivity::{Bar, sorted};
use leavewell_model::terms::small;
use leavewell_model::terms::{Family, Kind};

/// An input, the names of its ends, and its value in each draw.
struct TornadoInput {
    name: &'static str,
    ends: (&'static str, &'static str),
    /// One number per draw. The low end is the lowest fifth, the high end the highest.
    draws: fn(&Shared) -> Vec<f64>,
}

fn yes(flags: impl Iterator<Item = bool>) -> Vec<f64> {
    flags.map(|f| f64::from(u8::from(f))).collect()
}

const INPUTS: [TornadoInput; 7] = [
    TornadoInput {
        name: words::UNDAMAGED,
        ends: (words::LITTLE, words::MUCH),
        draws: |s| s.undamaged.clone(),
    },
    TornadoInput {
        name: words::LUCK,
        ends: (words::BAD, words::GOOD),
        draws: |s| s.luck.clone(),
    },
    TornadoInput {
        name: words::COST,
        ends: (words::LITTLE, words::MUCH),
        draws: |s| s.cost.clone(),
    },
    TornadoInput {
        name: words::BLEED,
        ends: (words::LITTLE, words::MUCH),
        draws: |s| s.shown.clone(),
    },
    TornadoInput {
        name: words::FUSED,
        ends: (words::NO, words::YES),
        draws: |s| {
            yes(s
                .kind
                .iter()
                .map(|k| Kind::ALL[*k].family() == Family::Fused))
        },
    },
    TornadoInput {
        name: words::LEAD,
        ends: (words::NONE, words::PRESENT),
        draws: |s| yes(s.lead.iter().copied()),
    },
    TornadoInput {
        name: words::MISHAP,
        ends: (words::NO, words::YES),
        draws: |s| yes(s.mishap.iter().map(|m| *m > 0)),
    },
];

/// The draws at the low end and at the high end: the lowest and the highest fifth by rank, or for a
/// yes-or-no input the draws of each answer. `None` if all draws are equal.
fn ends(column: &[f64]) -> Option<(Vec<usize>, Vec<usize>)> {
    let n = column.len();
    let is = |a: f64, b: f64| a.to_bits() == b.to_bits();
    let of = |x: f64| -> Vec<usize> { (0..n).filter(|i| is(column[*i], x)).collect() };
    let two = column.iter().all(|x| is(*x, 0.0) || is(*x, 1.0));
    let (low, high) = if two {
        (of(0.0), of(1.0))
    } else {
        let mut order: Vec<usize> = (0..n).collect();
        order.sort_by(|a, b| column[*a].total_cmp(&column[*b]).then(a.cmp(b)));
        let (first, last) = (*order.first()?, *order.last()?);
        if is(column[first], column[last]) {
            return None;
        }
        (order[..n / 5].to_vec(), order[n - n / 5..].to_vec())
    };
    (!low.is_empty() && !high.is_empty()).then_some((low, high))
}

/// Mean lead of the first of `acts` over the best of the others, over these draws.
fn lead(acts: &[&[f64]], draws: &[usize]) -> f64 {
    let over = |a: &[f64]| draws.iter().map(|i| a[*i]).sum::<f64>() / draws.len() as f64;
    let others = acts[1..]
        .iter()
        .map(|a| over(a))
        .fold(f64::NEG_INFINITY, f64::max);
    over(acts[0]) - others
}

pub(super) fn section(deep: &CloserLook) -> Block {
    let courses = leaders(deep);
    let acts: Vec<&[f64]> = courses.iter().map(|c| c.score.as_slice()).collect();
    if acts.len() < 2 {
        return Block::section(
            "deeper-inputs",
            words::INPUTS,
            vec![Block::para(words::ONE_COURSE)],
        );
    }
    let mut bars: Vec<Bar> = INPUTS
        .iter()
        .enumerate()
        .filter_map(|(input, i)| {
            let (low, high) = ends(&(i.draws)(&deep.shown))?;
            Some(Bar {
                input,
                at_low: lead(&acts, &low),
                at_high: lead(&acts, &high),
            })
        })
        .filter(|b| deep.in_units(b.swing()) >= 0.5)
        .collect();
    sorted(&mut bars);
    if bars.is_empty() {
        return Block::section(
            "deeper-inputs",
            words::INPUTS,
            vec![Block::para(words::NONE_SEEN)],
        );
    }
    let crossing: Vec<&str> = bars
        .iter()
        .filter(|b| b.crosses(0.0))
        .map(|b| INPUTS[b.input].name)
        .collect();
    let title = if crossing.is_empty() {
        words::NONE_TURNS_IT.to_owned()
    } else {
        words::turns_it(
            &crossing
                .iter()
                .map(|n| small(n))
                .collect::<Vec<_>>()
                .join("; "),
        )
    };
    Block::section(
        "deeper-inputs",
        words::INPUTS,
        vec![
            drawn(deep, &bars, &title),
            Block::said(Tone::Quiet, words::HOW_TO_READ),
        ],
    )
}

const HALF: f64 = 150.0;

fn drawn(deep: &CloserLook, bars: &[Bar], title: &str) -> Block {
    let (least, most) = bars.iter().fold((0.0_f64, 0.0_f64), |(l, m), b| {
        (
            l.min(b.at_low).min(b.at_high),
            m.max(b.at_low).max(b.at_high),
        )
    });
    let span = (most - least).max(f64::MIN_POSITIVE);
    let x = |v: f64| 10.0 + 2.0 * HALF * (v - least) / span;
    let mut marks = Vec::new();
    let mut rows = Vec::new();
    let mut y = 18.0;
    let zero = x(0.0);
    let (anchor, at) = if zero > 160.0 {
        (Anchor::End, zero - 4.0)
    } else {
        (Anchor::Start, zero + 4.0)
    };
    marks.push(Mark::text(Ink::Axis, anchor, (at, 14.0), words::LEVEL));
    for b in bars {
        let input = &INPUTS[b.input];
        let crosses = b.crosses(0.0);
        let (low, high) = (deep.signed(b.at_low), deep.signed(b.at_high));
        y += 18.0;
        marks.push(Mark::text(
            Ink::Outline,
            Anchor::Start,
            (0.0, y),
            input.name,
        ));
        y += 6.0;
        let (from, to) = (b.at_low.min(b.at_high), b.at_low.max(b.at_high));
        marks.push(Mark::path(
            if crosses { Ink::Copper } else { Ink::Silver },
            bar(x(from), y, (x(to) - x(from)).max(1.0)),
        ));
        y += 24.0;
        marks.push(Mark::text(
            Ink::Quiet,
            Anchor::Start,
            (0.0, y),
            words::low_end(input.ends.0, &low),
        ));
        marks.push(Mark::text(
            Ink::Quiet,
            Anchor::End,
            (WIDTH, y),
            words::high_end(input.ends.1, &high),
        ));
        rows.push(vec![
            input.name.to_owned(),
            words::low_end(input.ends.0, &low),
            words::high_end(input.ends.1, &high),
            if crosses { words::YES } else { words::NO }.to_owned(),
        ]);
    }
    marks.push(Mark::path(
        Ink::Axis,
        format!("M{zero:.1} 18V{:.1}", y + 4.0),
    ));
    Block::Picture(Picture {
        id: "deeper-inputs-picture".to_owned(),
        title: title.to_owned(),
        description: words::DESCRIPTION.to_owned(),
        width: WIDTH,
        height: y + 10.0,
        marks,
        table: Table {
            caption: words::CAPTION.to_owned(),
            columns: words::COLUMNS.map(str::to_owned).to_vec(),
            rows,
        },
    })
}
