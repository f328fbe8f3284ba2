//! Traces the main numbers back to their origin: the formula in words, the figures behind it, and their
//! sources.

use super::Subject;
use super::block::{Block, Tone};
use super::ledger_book::{Book, figure_table, named_by};
use super::sheet_cautions::with_cautions;
use super::wording::ledger_trace as words;
use leavewell_model::counsel::money;
use leavewell_model::ledger::{Figure, source};
use leavewell_model::report::Band;
use leavewell_model::terms::ShortSort;
use leavewell_model::terms::{percent, share};

/// One number: its name, its formula in words, and the groups of figures it reads.
struct Made {
    id: &'static str,
    name: &'static str,
    formula: &'static str,
    entered: &'static str,
    reads: &'static [&'static str],
}

/// The main numbers. The record of what was looked up decides which figures of these groups the case really
/// read.
const MADE: [Made; 5] = [
    Made {
        id: "value",
        name: words::VALUE,
        formula: words::VALUE_FORMULA,
        entered: words::VALUE_ENTERED,
        reads: &["value.", "place.show.", "silver.bleed."],
    },
    Made {
        id: "net",
        name: words::NET,
        formula: words::NET_FORMULA,
        entered: words::NET_ENTERED,
        reads: &[
            "cost.",
            "fee.",
            "hazard.",
            "value.replated.",
            "value.after_repair",
        ],
    },
    Made {
        id: "silver",
        name: words::SILVER,
        formula: words::SILVER_FORMULA,
        entered: words::SILVER_ENTERED,
        reads: &["silver.", "place.area."],
    },
    Made {
        id: "best",
        name: words::BEST,
        formula: words::BEST_FORMULA,
        entered: words::BEST_ENTERED,
        reads: &["counsel."],
    },
    Made {
        id: "originality",
        name: words::ORIGINALITY,
        formula: words::ORIGINALITY_FORMULA,
        entered: words::ORIGINALITY_ENTERED,
        reads: &["attribute.dose.", "attribute.show.", "identity.prior."],
    },
];

/// Builds the separate page, with cautions for the treatments it names.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let book = Book::new(subject);
    let figures = MADE.iter().flat_map(|made| inputs(&book, made));
    let named = named_by(figures).or(book.report.counsel.named());
    with_cautions(subject.case(), named, trace(&book))
}

/// One section for each number.
pub(super) fn trace(book: &Book) -> Vec<Block> {
    let mut blocks = Vec::new();
    for made in &MADE {
        let figures: Vec<&Figure> = inputs(book, made);
        let mut cited: Vec<&str> = figures
            .iter()
            .filter_map(|f| source(f.source))
            .map(|s| s.citation)
            .collect();
        cited.order_by(Ord::cmp);
        cited.dedup();
        blocks.push(Block::section(
            &format!("trace.{}", made.id),
            made.name,
            vec![
                Block::said(Tone::Answer, number(book, made.id)),
                Block::para(made.formula),
                Block::para(words::from_you(made.entered)),
                Block::fold(
                    &format!("trace.{}.figures", made.id),
                    &words::figures(figures.len()),
                    vec![
                        // Ids appear only as text here, so that the ledger lists each figure once.
                        Block::List {
                            items: figure_table("", &figures, &book.case.taught)
                                .rows
                                .into_iter()
                                .map(|row| match row.as_slice() {
                                    [what, value, band, known, _, id] => {
                                        words::figure(what, value, band, known, id)
                                    }
                                    _ => row.join("; "),
                                })
                                .collect(),
                        },
                        Block::para(words::SOURCES),
                        Block::List {
                            items: cited.into_iter().map(str::to_owned).collect(),
                        },
                    ],
                ),
            ],
        ));
    }
    blocks
}

fn inputs<'a>(book: &'a Book, made: &Made) -> Vec<&'a Figure> {
    book.ledger
        .figures()
        .filter(|f| book.used.contains(f.id))
        .filter(|f| made.reads.iter().any(|start| f.id.starts_with(start)))
        .collect()
}

fn number(book: &Book, id: &str) -> String {
    let amount = |band: Band| {
        let [low, middle, high] = [band.p10, band.p50, band.p90].map(|x| money(book.case, x));
        words::range(&low, &high, &middle)
    };
    let report = &book.report;
    let advised = report
        .courses
        .iter()
        .find(|c| c.steps == report.counsel.steps);
    match (id, advised) {
        ("value", _) => amount(report.value.as_it_is),
        ("silver", _) => match report.silver.parts.first() {
            Some(body) => match (body.left_um, body.left_fraction) {
                (Some(left), Some(fraction)) => words::silver(
                    &super::sheet_file::figure(left.p10),
                    &super::sheet_file::figure(left.p90),
                    &super::sheet_file::figure(left.p50),
                    &percent(fraction),
                ),
                _ => body.words.clone(),
            },
            None => words::NO_PART.to_owned(),
        },
        ("net", Some(c)) => format!(
            "{}: {}",
            c.name,
            amount(Band {
                p10: c.net.p10,
                p50: c.net.p50,
                p90: c.net.p90,
            })
        ),
        ("best", Some(c)) => format!("{}: {}.", c.name, share(c.p_best)),
        ("originality", Some(c)) => format!("{}: {}.", c.name, percent(c.originality)),
        _ => words::NO_COURSE.to_owned(),
    }
}
