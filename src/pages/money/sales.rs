//! Sales of similar pieces: rows to fill in, what each sale suggests, which has the most influence, and
//! which does not fit.

use super::super::block::{Block, Table, Tone};
use super::ladder::{LadderText, Rung, ladder};
use super::{MoneyInputs, with_none};
use crate::money_text::times;
use crate::wording::money::sales as words;
use leavewell_model::ledger::FigureId;
use leavewell_model::maths::StudentT;
use leavewell_model::record::COMPARED_KINDS;
use leavewell_model::terms::{BleedWord, Currency, Dents, Joint, SoldAs, Tarnish, whole_percent};
use leavewell_model::value::PriceLaw;

/// Greatest number of rows shown, including the empty one.
const MOST_ROWS: usize = 60;

/// Builds the section.
pub(super) fn sales(inputs: &MoneyInputs) -> Block {
    let mut blocks = vec![Block::para(words::HOW_TO_TYPE_THEM)];
    for place in 0..=inputs.draft.count("comparables").min(MOST_ROWS - 1) {
        blocks.extend(row(inputs, place));
    }
    blocks.extend(conclusions(inputs));
    Block::section("worth-sales", words::SALES, blocks)
}

fn row(inputs: &MoneyInputs, place: usize) -> Vec<Block> {
    let at = |field: &str| format!("comparables[{place}].{field}");
    let name = words::sale(place + 1);
    let sold: Vec<(&str, &str)> = SoldAs::ALL.iter().map(|s| (s.id(), s.label())).collect();
    let out = inputs.draft.flag(&at("left_out")) == Some(true);
    // A file may hold a JSON flag instead of the option's id.
    let ticked = inputs.draft.text(&at("left_out")) == "true";
    let summary = if out {
        words::left_out(&name)
    } else {
        words::what_it_was(&name)
    };
    let words = |items: &[(&'static str, &'static str)]| with_none(items.iter().copied());
    let dents: Vec<_> = Dents::ALL.iter().map(|d| (d.id(), d.label())).collect();
    let joints: Vec<_> = Joint::ALL.iter().map(|j| (j.id(), j.label())).collect();
    let tarnish: Vec<_> = Tarnish::ALL.iter().map(|t| (t.id(), t.label())).collect();
    let bleed: Vec<_> = BleedWord::ALL.iter().map(|b| (b.id(), b.label())).collect();
    let currency: Vec<_> = Currency::ALL.iter().map(|c| (c.id(), c.label())).collect();
    let kinds =
        COMPARED_KINDS.map(|(id, _)| (if id == "same" { "" } else { id }, words::kind_words(id)));
    vec![
        Block::Row {
            blocks: vec![
                inputs.number(&at("price"), &words::price(&name), ""),
                inputs.pick(
                    &at("what"),
                    words::WHAT_THE_PRICE_IS,
                    "",
                    &first_empty(&sold),
                ),
                inputs.field(&at("on"), words::WHEN, "", words::WHEN_HINT, "", false),
            ],
        },
        Block::fold(
            &format!("worth-sale-{place}"),
            &summary,
            vec![
                inputs.pick(&at("kind"), words::KIND, "", &kinds),
                inputs.pick(
                    &at("similar"),
                    words::HOW_LIKE,
                    words::HOW_LIKE_HINT,
                    &[
                        ("", words::VERY_LIKE),
                        ("fair", words::FAIRLY_LIKE),
                        ("loose", words::LOOSELY_LIKE),
                    ],
                ),
                inputs.pick(
                    &at("bleed"),
                    words::BLEED,
                    words::BLEED_HINT,
                    &words(&bleed),
                ),
                inputs.pick(&at("tarnish"), words::TARNISH, "", &words(&tarnish)),
                inputs.pick(&at("dents"), words::DENTS, "", &words(&dents)),
                inputs.pick(&at("joint"), words::JOINTS, "", &words(&joints)),
                inputs.pick(
                    &at("currency"),
                    words::CURRENCY,
                    words::CURRENCY_HINT,
                    &with_none(currency.into_iter()),
                ),
                inputs.field(&at("note"), words::NOTE, "", words::NOTE_HINT, "", false),
                inputs.pick(
                    &at("left_out"),
                    words::DOES_IT_COUNT,
                    words::DOES_IT_COUNT_HINT,
                    &[
                        ("", words::IT_COUNTS),
                        (if ticked { "true" } else { "yes" }, words::LEAVE_IT_OUT),
                    ],
                ),
            ],
        ),
    ]
}

/// The options with the empty id in place of the first, so that the first one applies while nothing is
/// chosen.
fn first_empty<'a>(options: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    options
        .iter()
        .enumerate()
        .map(|(i, (id, label))| (if i == 0 { "" } else { *id }, *label))
        .collect()
}

/// 10th, 50th and 90th percentile of a price whose logarithm follows this distribution.
pub(super) fn band_of(law: StudentT) -> [f64; 3] {
    [0.1, 0.5, 0.9].map(|u| libm::exp(law.quantile(u)))
}

fn spread(law: &PriceLaw) -> f64 {
    let [low, _, high] = band_of(law.next());
    (high / low).sqrt()
}

/// The conclusions from the sales; empty without sales.
fn conclusions(inputs: &MoneyInputs) -> Vec<Block> {
    let c = &inputs.worth.comparison;
    if c.sales.is_empty() {
        return vec![Block::said(Tone::Quiet, words::NO_SALE)];
    }
    let format = inputs.format;
    let name = |place: usize| words::sale(place + 1);
    let misfit = inputs.worth.ledger.value(FigureId::VALUE_COMPARABLE_MISFIT);
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
            format.amount(libm::exp(s.ln) * s.condition * s.channel * s.drift),
            times(1.0 / (s.condition * s.channel * s.drift)),
            format.amount(libm::exp(s.ln)),
            whole_percent(s.weight),
            change(pull),
            if fits { words::YES } else { words::NO }.to_owned(),
        ]);
    }
    let mut blocks = vec![Block::Table(Table {
        caption: words::EACH_SALE.to_owned(),
        columns: words::COLUMNS.map(str::to_owned).to_vec(),
        rows,
    })];
    let mut sentences = Vec::new();
    if let Some((i, _)) = most {
        let s = c.sales[i];
        sentences.push(words::pulls_most(
            &name(s.place),
            &format.amount(libm::exp(c.without(i).mu)),
            &format.amount(libm::exp(c.after.mu)),
        ));
    }
    for i in stray {
        sentences.push(words::does_not_fit(
            &name(c.sales[i].place),
            &words_of_chance(c.fit(i)),
        ));
    }
    let (before, after) = (spread(&c.before), spread(&c.after));
    sentences.push(if after <= before {
        words::narrower(before, after)
    } else {
        words::wider(before, after)
    });
    blocks.push(Block::List { items: sentences });
    blocks.push(picture(inputs));
    blocks.push(Block::said(Tone::Quiet, words::HOW_THEY_COUNT));
    blocks
}

fn words_of_chance(p: f64) -> String {
    let hundred = 100.0 * p;
    if hundred < 1.0 {
        words::LESS_THAN_1.to_owned()
    } else {
        format!("{hundred:.0}")
    }
}

fn change(ratio: f64) -> String {
    let percent = 100.0 * (ratio - 1.0);
    if percent.abs() < 0.5 {
        words::HARDLY.to_owned()
    } else {
        format!(
            "{}{:.0} %",
            if percent > 0.0 { "+" } else { "−" },
            percent.abs()
        )
    }
}

fn picture(inputs: &MoneyInputs) -> Block {
    let c = &inputs.worth.comparison;
    let (before, after) = (band_of(c.before.next()), band_of(c.after.next()));
    let mut rungs = vec![
        Rung::Name(words::BEFORE.to_owned()),
        Rung::Other(before),
        Rung::Name(words::EACH.to_owned()),
    ];
    let format = inputs.format;
    let mut rows = vec![
        vec![words::BEFORE.to_owned(), format.band(before)],
        vec![words::WITH.to_owned(), format.band(after)],
    ];
    for s in &c.sales {
        let value = libm::exp(s.ln);
        let words = words::sale(s.place + 1);
        rows.push(vec![words.clone(), format.amount(value)]);
        rungs.push(Rung::Point(value, words));
    }
    rungs.push(Rung::Name(words::WITH.to_owned()));
    rungs.push(Rung::Band(after));
    Block::Picture(ladder(
        LadderText {
            id: "worth-sales-band",
            title: words::picture_title(&format.amount(after[1])),
            description: words::PICTURE.to_owned(),
            ratios: true,
            label: &|v| format.amount(v),
            table: Table {
                caption: words::CAPTION.to_owned(),
                columns: vec![words::RESTS_ON.to_owned(), words::PRICE.to_owned()],
                rows,
            },
        },
        &rungs,
    ))
}
