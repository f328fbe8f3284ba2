//! The sheet for a buyer: an honest description, short for a ticket and long for a catalogue.

use super::Subject;
use super::block::{Block, Tone};
use super::sheet::{Paper, and, head, missing};
use super::sheet_cautions::cautions_of;
use super::sheet_disclosure::{Disclosure, disclosures};
use super::sheet_glossary::word_list;
use super::wording::sheet_buyer as words;
use leavewell_model::ledger::Place;
use leavewell_model::record::StruckMark;
use leavewell_model::terms::Seen;
use leavewell_model::terms::capital;
use leavewell_model::terms::small;

/// Builds the page.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let paper = Paper::new(subject);
    let disclosures = disclosures(&paper);
    let mut blocks = head(&paper, words::FOR_A_BUYER);
    blocks.push(Block::section(
        "buyer.ticket",
        words::TICKET,
        vec![Block::para(ticket(&paper, &disclosures))],
    ));
    blocks.push(Block::section(
        "buyer.catalogue",
        words::CATALOGUE,
        vec![Block::para(catalogue(&paper, &disclosures))],
    ));
    if !disclosures.is_empty() {
        let items = disclosures.iter().map(|t| t.catalogue.clone()).collect();
        blocks.push(Block::section(
            "buyer.told",
            words::DISCLOSED,
            vec![Block::para(words::KEEP_EACH), Block::List { items }],
        ));
    }
    blocks.extend(missing(&paper, "buyer.missing"));
    blocks.push(Block::said(Tone::Quiet, words::LAW_OF_THE_PLACE));
    let child = paper.case.aim.household_child_or_pregnant;
    // Cautions about the piece itself, not about work that nobody is offering the buyer.
    let of_the_piece = |c: &leavewell_model::report::CautionReport| {
        matches!(
            c.id.as_str(),
            "caution.lead" | "caution.corrosion" | "caution.sealed" | "caution.mercury"
        )
    };
    blocks.push(cautions_of(&paper.report, of_the_piece, &blocks, child));
    blocks.push(word_list(&blocks, paper.ledger));
    blocks
}

/// The ticket: form and years, then what the piece is, then every disclosure.
fn ticket(paper: &Paper, disclosures: &[Disclosure]) -> String {
    let mut pieces = vec![what(paper)];
    if paper.too_little() {
        pieces.push(words::NOT_EXAMINED.to_owned());
    } else {
        pieces.push(identity_short(paper));
    }
    pieces.extend(disclosures.iter().map(|t| t.ticket.clone()));
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

/// The form, and the years if stated or estimated.
fn what(paper: &Paper) -> String {
    let piece = &paper.case.piece;
    let form = piece.form.map_or(words::NO_FORM, |f| f.label()).to_owned();
    let stated = match (piece.from_year, piece.to_year) {
        (None, None) => None,
        (Some(from), None) => Some(words::stated_from(from)),
        (None, Some(to)) => Some(words::stated_until(to)),
        (Some(from), Some(to)) => Some(words::stated_between(from, to)),
    };
    let found = paper
        .report
        .identity
        .dates
        .as_ref()
        .filter(|_| !paper.too_little());
    let counts_the_stated = found.is_some_and(|d| d.given.is_some());
    let found = found.map(|d| words::probably(&d.in_words()));
    let years = match (found, stated) {
        (Some(found), Some(stated)) if counts_the_stated => {
            Some(words::stated_and_found(&stated, &found))
        }
        (Some(found), Some(stated)) => Some(words::found_and_stated(&found, &stated)),
        (found, stated) => found.or(stated),
    };
    match years {
        Some(years) => words::form_and_years(&form, &years),
        None => form,
    }
}

fn identity_short(paper: &Paper) -> String {
    if paper.report.identity.nothing_found {
        return words::UNKNOWN_METAL.to_owned();
    }
    match paper.report.identity.family_bars.first() {
        Some(top) => format!("{}: {}", capital(&top.name), paper.likely(top.p)),
        None => words::UNKNOWN_METAL.to_owned(),
    }
}

/// The catalogue entry in full sentences: form, material, marks, size, condition, past work, unknowns, use.
fn catalogue(paper: &Paper, disclosures: &[Disclosure]) -> String {
    let mut text = vec![format!("{}.", what(paper))];
    let name = paper.name();
    if !paper.case.piece.name.trim().is_empty() {
        text.push(words::called(&name));
    }
    if let Some(height) = paper.case.piece.height_mm {
        text.push(words::height(height));
    }
    if paper.too_little() {
        text.push(words::NOT_EXAMINED_SENTENCE.to_owned());
        if !paper.case.marks.is_empty() {
            text.push(marks(paper));
        }
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
        if other.len() > 1 && !paper.report.identity.nothing_found {
            text.push(words::as_found(&other.join("; ")));
        }
        text.push(marks(paper));
    }
    text.extend(disclosures.iter().map(|t| t.catalogue.clone()));
    for clash in &paper.report.identity.date_conflicts {
        text.push(clash.clone());
    }
    if paper.done.is_empty() {
        text.push(words::NO_EARLIER_WORK.to_owned());
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
        text.push(words::on_record(&history.join("; ")));
    }
    if paper.case.piece.documented {
        text.push(words::DOCUMENTED.to_owned());
    }
    let unseen = paper.parts_not_looked_at();
    if !paper.case.parts.is_empty() && !unseen.is_empty() {
        let names: Vec<String> = unseen.iter().map(|p| small(p)).collect();
        text.push(words::not_looked_at(&and(&names)));
    }
    if paper.report.display_only.yes {
        text.push(paper.report.display_only.label.to_string());
    }
    text.join(" ")
}

/// A mark as read, with the part that carries it.
pub(super) fn quoted_mark(mark: &StruckMark) -> String {
    words::quoted(
        &mark.text,
        mark.part.map(|part| small(part.label())).as_deref(),
    )
}

fn marks(paper: &Paper) -> String {
    let of = |seen: Seen| -> Vec<String> {
        paper
            .case
            .findings
            .iter()
            .filter(|a| a.seen == seen)
            .filter_map(|a| leavewell_model::ledger::finding(a.id))
            .filter(|f| f.place == Place::Marks && f.id != "M10")
            .filter(|f| !paper.case.marks.iter().any(|m| m.findings.contains(&f.id)))
            .map(|f| small(f.title))
            .collect()
    };
    // A mark that was typed is quoted, and what was made of it is not said a second time.
    let mut seen: Vec<String> = paper.case.marks.iter().map(quoted_mark).collect();
    seen.extend(of(Seen::Yes));
    if !seen.is_empty() {
        words::marked(&and(&seen))
    } else if paper.case.has_seen("M10") {
        words::NO_MARK.to_owned()
    } else {
        words::MARKS_NOT_RECORDED.to_owned()
    }
}
