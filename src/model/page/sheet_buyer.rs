//! The sheet for a buyer: an honest description, short for a ticket and long for a catalogue.

use super::block::{Block, Tone};
use super::sheet::{Paper, and, head, missing, small};
use super::sheet_cautions::cautions_of;
use super::sheet_disclosure::{Told, told};
use super::sheet_glossary::word_list;
use crate::case::{Draft, Seen};
use crate::facts::Place;
use crate::small::capital;

/// The page.
#[must_use]
pub(super) fn page(draft: &Draft) -> Vec<Block> {
    let paper = Paper::new(draft);
    let told = told(&paper);
    let mut blocks = head(&paper, "For a buyer");
    blocks.push(Block::section(
        "buyer.ticket",
        "For a ticket",
        vec![Block::para(ticket(&paper, &told))],
    ));
    blocks.push(Block::section(
        "buyer.catalogue",
        "For a catalogue",
        vec![Block::para(catalogue(&paper, &told))],
    ));
    if !told.is_empty() {
        let items = told.iter().map(|t| t.catalogue.clone()).collect();
        blocks.push(Block::section(
            "buyer.told",
            "What is disclosed",
            vec![
                Block::para("Keep each of these in whatever you write."),
                Block::List { items },
            ],
        ));
    }
    blocks.extend(missing(&paper, "buyer.missing"));
    blocks.push(Block::said(
        Tone::Quiet,
        "A description at sale has to be true where it is sold: check the law there. This one says only what the record \
         says and what follows from it; read it against the piece.",
    ));
    let child = paper.case.aim.household_child_or_pregnant;
    // Of what lies in the piece, not of work nobody is offering the buyer.
    let of_the_piece = |c: &crate::report::CautionReport| {
        matches!(
            c.id.as_str(),
            "caution.lead" | "caution.corrosion" | "caution.sealed" | "caution.mercury"
        )
    };
    blocks.push(cautions_of(&paper.report, of_the_piece, &blocks, child));
    blocks.push(word_list(&blocks, &paper.ledger));
    blocks
}

/// Form and years first, then what it is, then all that is to be told.
fn ticket(paper: &Paper, told: &[Told]) -> String {
    let mut pieces = vec![what(paper)];
    if paper.too_little() {
        pieces
            .push("Not examined: what it is made of, repairs and re-plating not known".to_owned());
    } else {
        pieces.push(identity_short(paper));
    }
    pieces.extend(told.iter().map(|t| t.ticket.clone()));
    let mut text: String = pieces
        .iter()
        .map(|piece| capital(piece) + ". ")
        .collect::<String>()
        .trim_end()
        .to_owned();
    if paper.report.display_only.yes {
        text.push(' ');
        text.push_str(&paper.report.display_only.label);
    }
    text
}

/// The form, and years if they are told or can be given.
fn what(paper: &Paper) -> String {
    let piece = &paper.case.piece;
    let form = piece
        .form
        .map_or("A piece whose form is not recorded", |f| f.label())
        .to_owned();
    let told = match (piece.from_year, piece.to_year) {
        (None, None) => None,
        (Some(from), None) => Some(format!("told to be from {from} or later")),
        (None, Some(to)) => Some(format!("told to be from {to} or earlier")),
        (Some(from), Some(to)) => Some(format!("told to be from {from} to {to}")),
    };
    let found = paper
        .report
        .identity
        .dates
        .as_ref()
        .filter(|_| !paper.too_little())
        .map(|d| format!("probably {} to {}", d.from, d.to));
    match found.or(told) {
        Some(years) => format!("{form}, {years}"),
        None => form,
    }
}

fn identity_short(paper: &Paper) -> String {
    match paper.report.identity.family_bars.first() {
        Some(top) => format!("{}: {}", capital(&top.name), paper.likely(top.p)),
        None => "What it is made of is not known".to_owned(),
    }
}

/// Whole sentences, in the order of a catalogue entry: what, what it is, marks, size, condition, what
/// was done, what is not known, use.
fn catalogue(paper: &Paper, told: &[Told]) -> String {
    let mut text = vec![format!("{}.", what(paper))];
    let name = paper.name();
    if !paper.case.piece.name.trim().is_empty() {
        text.push(format!("Called \"{name}\" by its owner."));
    }
    if let Some(height) = paper.case.piece.height_mm {
        text.push(format!("Height {height} mm."));
    }
    if paper.too_little() {
        text.push(
            "It has not been examined: what it is made of, and whether it was repaired, re-plated or has replaced parts, \
             is not known."
                .to_owned(),
        );
    } else {
        text.push(paper.report.identity.sentence.clone());
        let other: Vec<String> = paper
            .report
            .identity
            .family_bars
            .iter()
            .filter(|f| paper.worth_telling(f.p))
            .map(|f| format!("{} {}", f.name, paper.likely(f.p)))
            .collect();
        if other.len() > 1 {
            text.push(format!(
                "As far as the findings tell: {}.",
                other.join("; ")
            ));
        }
        text.push(marks(paper));
    }
    text.extend(told.iter().map(|t| t.catalogue.clone()));
    for clash in &paper.report.identity.date_conflicts {
        text.push(clash.clone());
    }
    if paper.done.is_empty() {
        text.push("No earlier work is on record; that is not to say there was none.".to_owned());
    } else {
        let history: Vec<String> = paper
            .done
            .iter()
            .map(|d| {
                let rest: Vec<String> = [d.when_and_who(), small(&d.materials_words())]
                    .into_iter()
                    .filter(|t| !t.is_empty())
                    .collect();
                if rest.is_empty() {
                    d.in_sentence()
                } else {
                    format!("{} ({})", d.in_sentence(), rest.join("; "))
                }
            })
            .collect();
        text.push(format!("On record: {}.", history.join("; ")));
    }
    if paper.case.piece.documented {
        text.push("Its history is documented.".to_owned());
    }
    let unseen = paper.parts_not_looked_at();
    if !paper.case.parts.is_empty() && !unseen.is_empty() {
        let names: Vec<String> = unseen.iter().map(|p| small(p)).collect();
        text.push(format!("Not looked at: {}.", and(&names)));
    }
    if paper.report.display_only.yes {
        text.push(paper.report.display_only.label.to_string());
    }
    text.join(" ")
}

fn marks(paper: &Paper) -> String {
    let of = |seen: Seen| -> Vec<String> {
        paper
            .case
            .findings
            .iter()
            .filter(|a| a.seen == seen)
            .filter_map(|a| crate::facts::finding(a.id))
            .filter(|f| f.place == Place::Marks && f.id != "M10")
            .map(|f| small(f.title))
            .collect()
    };
    let seen = of(Seen::Yes);
    if !seen.is_empty() {
        format!("Marked: {}.", and(&seen))
    } else if paper.case.has_seen("M10") {
        "It bears no mark.".to_owned()
    } else {
        "Marks are not recorded.".to_owned()
    }
}
