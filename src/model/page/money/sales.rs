//! Sales of like pieces: the rows to fill, what each says, which pulls and which does not fit.

use super::super::block::{Block, Table, Tone};
use super::ladder::{Rung, Told, ladder};
use super::words::{percent, times};
use super::{Desk, with_none};
use crate::case::{BleedWord, COMPARED_KINDS, Currency, Dents, Joint, SoldAs, Tarnish};
use crate::maths::StudentT;
use crate::value::PriceLaw;

/// Rows shown at most, the empty one included.
const MOST_ROWS: usize = 60;

/// The section.
pub(super) fn sales(desk: &Desk) -> Block {
    let mut blocks = vec![Block::para(
        "Type sales of pieces like it, one a row; there is always an empty row at the end. Each is \
         brought to what an undamaged one would have been knocked down for at auction.",
    )];
    for place in 0..=desk.draft.count("comparables").min(MOST_ROWS - 1) {
        blocks.extend(row(desk, place));
    }
    blocks.extend(told(desk));
    Block::section("worth-sales", "Sales of pieces like it", blocks)
}

fn row(desk: &Desk, place: usize) -> Vec<Block> {
    let at = |field: &str| format!("comparables[{place}].{field}");
    let name = format!("Sale {}", place + 1);
    let sold: Vec<(&str, &str)> = SoldAs::ALL.iter().map(|s| (s.id(), s.label())).collect();
    // A file may hold it as a tick.
    let ticked = desk.draft.flag(&at("left_out")) == Some(true);
    let out = ticked || desk.draft.text(&at("left_out")) == "yes";
    let summary = if out {
        format!("{name}: left out")
    } else {
        format!("{name}: what it was and its condition")
    };
    let words = |items: &[(&'static str, &'static str)]| with_none(items.iter().copied());
    let dents: Vec<_> = Dents::ALL.iter().map(|d| (d.id(), d.label())).collect();
    let joints: Vec<_> = Joint::ALL.iter().map(|j| (j.id(), j.label())).collect();
    let tarnish: Vec<_> = Tarnish::ALL.iter().map(|t| (t.id(), t.label())).collect();
    let bleed: Vec<_> = BleedWord::ALL.iter().map(|b| (b.id(), b.label())).collect();
    let currency: Vec<_> = Currency::ALL.iter().map(|c| (c.id(), c.label())).collect();
    let kinds = COMPARED_KINDS.map(|(id, _)| (if id == "same" { "" } else { id }, kind_words(id)));
    vec![
        Block::Row {
            blocks: vec![
                desk.number(&at("price"), &format!("{name}: price"), ""),
                desk.pick(&at("what"), "What the price is", "", &first_empty(&sold)),
                desk.field(&at("on"), "When", "", "A year is enough.", "", false),
            ],
        },
        Block::fold(
            &format!("worth-sale-{place}"),
            &summary,
            vec![
                desk.pick(&at("kind"), "What it was", "", &kinds),
                desk.pick(
                    &at("similar"),
                    "How like yours",
                    "Form, size, age and quality.",
                    &[
                        ("", "Very like it"),
                        ("fair", "Fairly like it"),
                        ("loose", "Loosely like it"),
                    ],
                ),
                desk.pick(
                    &at("bleed"),
                    "Base metal showing",
                    "What is not said is taken as sound.",
                    &words(&bleed),
                ),
                desk.pick(&at("tarnish"), "Tarnish", "", &words(&tarnish)),
                desk.pick(&at("dents"), "Dents", "", &words(&dents)),
                desk.pick(&at("joint"), "Joints", "", &words(&joints)),
                desk.pick(
                    &at("currency"),
                    "Currency",
                    "Only if it differs; such a sale cannot be counted.",
                    &with_none(currency.into_iter()),
                ),
                desk.field(&at("note"), "Note", "", "Where you found it.", "", false),
                desk.pick(
                    &at("left_out"),
                    "Does it count?",
                    "Left out, it stays here.",
                    &[
                        ("", "It counts"),
                        (if ticked { "true" } else { "yes" }, "Leave it out"),
                    ],
                ),
            ],
        ),
    ]
}

/// The first choice is what holds while nothing is chosen.
fn first_empty<'a>(options: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    options
        .iter()
        .enumerate()
        .map(|(i, (id, label))| (if i == 0 { "" } else { *id }, *label))
        .collect()
}

fn kind_words(id: &str) -> &'static str {
    match id {
        "fused" => "Fused plate (old Sheffield plate)",
        "replated" => "Fused plate, electroplated later",
        "close" => "Close plate",
        "electroplate" => "Electroplate on nickel silver",
        "britannia" => "Electroplate on Britannia metal",
        "copper" => "Electroplate on copper",
        "silver" => "Solid silver",
        _ => "The same as yours",
    }
}

/// The 10th, 50th and 90th percentile of the price under a law of its logarithm.
pub(super) fn band_of(law: StudentT) -> [f64; 3] {
    [0.1, 0.5, 0.9].map(|u| libm::exp(law.quantile(u)))
}

fn spread(law: &PriceLaw) -> f64 {
    let [low, _, high] = band_of(law.next());
    (high / low).sqrt()
}

/// What the sales tell, once there are any.
fn told(desk: &Desk) -> Vec<Block> {
    let c = &desk.worth.comparison;
    if c.sales.is_empty() {
        return vec![Block::said(
            Tone::Quiet,
            "No sale counts yet, so the value rests on your guess, or on what such pieces usually fetch.",
        )];
    }
    let purse = desk.purse;
    let name = |place: usize| format!("Sale {}", place + 1);
    let misfit = desk.worth.ledger.value("value.comparable.misfit");
    let several = c.sales.len() > 1;
    let mut rows = Vec::new();
    let mut stray = Vec::new();
    let mut most: Option<(usize, f64)> = None;
    for (i, s) in c.sales.iter().enumerate() {
        let (pull, fit) = (c.pull(i), c.fit(i));
        let strength = libm::log(pull).abs();
        if several && most.is_none_or(|(_, so_far)| strength > so_far) {
            most = Some((i, strength));
        }
        let fits = fit >= misfit;
        if !fits {
            stray.push(i);
        }
        rows.push(vec![
            name(s.place),
            purse.amount(libm::exp(s.ln) * s.condition * s.channel * s.drift),
            times(1.0 / (s.condition * s.channel * s.drift)),
            purse.amount(libm::exp(s.ln)),
            percent(s.weight),
            change(pull),
            if fits { "Yes" } else { "No" }.to_owned(),
        ]);
    }
    let mut blocks = vec![Block::Table(Table {
        caption: "What each sale says".to_owned(),
        columns: [
            "Sale",
            "Price",
            "For condition, sort of price and date",
            "Undamaged, at auction",
            "Counts as",
            "Moves the middle by",
            "Fits the rest",
        ]
        .map(str::to_owned)
        .to_vec(),
        rows,
    })];
    let mut said = Vec::new();
    if let Some((i, _)) = most {
        let s = c.sales[i];
        said.push(format!(
            "{} pulls most: without it the middle would be {} instead of {}.",
            name(s.place),
            purse.amount(libm::exp(c.without(i).mu)),
            purse.amount(libm::exp(c.after.mu)),
        ));
    }
    for i in stray {
        said.push(format!(
            "{} does not fit: going by the rest, a price as far out would turn up about {} times in \
             100. Look for a slip, or for what made it different; you can leave it out.",
            name(c.sales[i].place),
            words_of_chance(c.fit(i)),
        ));
    }
    let (before, after) = (spread(&c.before), spread(&c.after));
    said.push(if after <= before {
        format!(
            "Without the sales the band was the middle times or divided by {before:.1}; with them it is \
             {after:.1}."
        )
    } else {
        format!(
            "The band grew from the middle times or divided by {before:.1} to {after:.1}, because the \
             sales lie far from each other or from where you began."
        )
    });
    blocks.push(Block::List { items: said });
    blocks.push(picture(desk));
    blocks.push(Block::said(
        Tone::Quiet,
        "The band holds 8 in 10 of what the next such piece would fetch. Prices are compared as ratios; \
         a sale counts less the older and the less alike it is. How condition moves a price is our \
         judgement, and is not made wider here.",
    ));
    blocks
}

fn words_of_chance(p: f64) -> String {
    let hundred = 100.0 * p;
    if hundred < 1.0 {
        "less than 1".to_owned()
    } else {
        format!("{hundred:.0}")
    }
}

fn change(ratio: f64) -> String {
    let percent = 100.0 * (ratio - 1.0);
    if percent.abs() < 0.5 {
        "hardly".to_owned()
    } else {
        format!(
            "{}{:.0} %",
            if percent > 0.0 { "+" } else { "−" },
            percent.abs()
        )
    }
}

fn picture(desk: &Desk) -> Block {
    let c = &desk.worth.comparison;
    let (before, after) = (band_of(c.before.next()), band_of(c.after.next()));
    let mut rungs = vec![
        Rung::Name("Before the sales".to_owned()),
        Rung::Other(before),
        Rung::Name("Each sale, brought to undamaged".to_owned()),
    ];
    let purse = desk.purse;
    let mut rows = vec![
        vec!["Before the sales".to_owned(), purse.band(before)],
        vec!["With the sales".to_owned(), purse.band(after)],
    ];
    for s in &c.sales {
        let value = libm::exp(s.ln);
        let words = format!("Sale {}", s.place + 1);
        rows.push(vec![words.clone(), purse.amount(value)]);
        rungs.push(Rung::Point(value, words));
    }
    rungs.push(Rung::Name("With the sales".to_owned()));
    rungs.push(Rung::Band(after));
    Block::Picture(ladder(
        Told {
            id: "worth-sales-band",
            title: format!(
                "Undamaged, the next one would fetch about {}",
                purse.amount(after[1])
            ),
            description:
                "A wide band before the sales, a mark for each sale, and the band with the \
                          sales, on a scale on which even steps are even ratios."
                    .to_owned(),
            ratios: true,
            label: &|v| purse.amount(v),
            table: Table {
                caption: "Undamaged, at auction: middle, and where 8 in 10 would lie".to_owned(),
                columns: vec!["What it rests on".to_owned(), "Price".to_owned()],
                rows,
            },
        },
        &rungs,
    ))
}
