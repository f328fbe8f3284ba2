//! From a number of the counsel back to what it is made of: the formula in words, the figures that
//! go into it, and their sources.

use super::block::{Block, Tone};
use super::ledger::{Book, figure_table};
use super::sheet_cautions::with_cautions;
use crate::case::Draft;
use crate::counsel::money;
use crate::facts::{Figure, source};
use crate::report::Band;
use crate::small::{percent, share};

/// One number: what it is called, how it is made in words, and the groups of figures it reads.
struct Made {
    id: &'static str,
    name: &'static str,
    formula: &'static str,
    entered: &'static str,
    reads: &'static [&'static str],
}

/// The main numbers of a counsel. Which of the figures named here a case really read is not kept by
/// hand: the record of what was looked up decides.
const MADE: [Made; 5] = [
    Made {
        id: "value",
        name: "What it is worth as it is",
        formula: "The undamaged value, times what the wear leaves of it for the buyers there are, times a factor for each other \
                  fault found (tarnish, joints, dents, corrosion and the like); never less than the least share that is always \
                  left. Draw by draw over what it may be, then the lowest tenth, the middle and the highest tenth.",
        entered: "Your low, likely and high value, the form, the years, the condition of each part.",
        reads: &["value.", "place.show.", "silver.bleed."],
    },
    Made {
        id: "net",
        name: "What the advised course leaves",
        formula: "The value after the work, in each way the work may turn out, less the fees of selling when it is to be sold, \
                  less the cost of the work. A seller's figure counts the chance that it does not sell.",
        entered: "Your quotes, the way it would be sold, the aim.",
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
        name: "How much silver is left on the body",
        formula: "Silver as made wears unevenly, so the thickness at a point is spread round a mean. The bare share tells how far \
                  the mean has come down: the share of points at or below nothing. What is left is the mean of the part of that \
                  spread above nothing, and a cleaning takes its loss from all of it.",
        entered: "The bare share of each part, or a count of points.",
        reads: &["silver.", "place.area."],
    },
    Made {
        id: "best",
        name: "How likely nothing else does noticeably better",
        formula: "The share of the draws in which no other group of courses beats the advised one by more than the noise. The \
                  noise is the least difference that counts.",
        entered: "Everything that goes into the other numbers.",
        reads: &["counsel."],
    },
    Made {
        id: "originality",
        name: "How much of what is original it keeps",
        formula: "What is original now, less what each step of the course takes, by its dose and by how far it can be undone, \
                  averaged over what the piece may be.",
        entered: "The findings, and the condition of each part.",
        reads: &["attribute.dose.", "attribute.show.", "identity.prior."],
    },
];

/// The page of its own, with the cautions for what it names.
#[must_use]
pub(super) fn page(draft: &Draft) -> Vec<Block> {
    let blocks = trace(&Book::new(draft));
    with_cautions(draft, blocks)
}

/// A section for each number.
pub(super) fn trace(book: &Book) -> Vec<Block> {
    let mut blocks = Vec::new();
    for made in &MADE {
        let figures: Vec<&Figure> = inputs(book, made);
        let mut cited: Vec<&str> = figures
            .iter()
            .filter_map(|f| source(f.source))
            .map(|s| s.citation)
            .collect();
        cited.sort_unstable();
        cited.dedup();
        blocks.push(Block::section(
            &format!("trace.{}", made.id),
            made.name,
            vec![
                Block::said(Tone::Answer, number(book, made.id)),
                Block::para(made.formula),
                Block::para(format!("From you: {}", made.entered)),
                Block::fold(
                    &format!("trace.{}.figures", made.id),
                    &format!("Figures that go into it: {}", figures.len()),
                    vec![
                        // Ids are told in words here, so that the ledger lists each figure once.
                        Block::List {
                            items: figure_table("", &figures)
                                .rows
                                .into_iter()
                                .map(|row| match row.as_slice() {
                                    [what, value, band, known, _, id] => format!(
                                        "{what}: {value} (band {band}; {known}; figure \"{id}\")"
                                    ),
                                    _ => row.join("; "),
                                })
                                .collect(),
                        },
                        Block::para("Sources:"),
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
        let [low, middle, high] = [band.p10, band.p50, band.p90].map(|x| money(&book.case, x));
        format!("{low} to {high}, middle {middle}.")
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
                (Some(left), Some(fraction)) => format!(
                    "{} to {} um, middle {} um; {} of the first.",
                    super::sheet_file::figure(left.p10),
                    super::sheet_file::figure(left.p90),
                    super::sheet_file::figure(left.p50),
                    percent(fraction)
                ),
                _ => body.words.clone(),
            },
            None => "No part is recorded.".to_owned(),
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
        _ => "There is no course to show.".to_owned(),
    }
}
