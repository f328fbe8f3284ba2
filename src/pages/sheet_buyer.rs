//! The sheet for a buyer: an honest description, short for a ticket and long for a catalogue.

use super::Subject;
use super::as_typed::as_typed;
use super::block::{Block, Tone};
use super::sentence::and;
use super::sheet::{Paper, head, missing, part_label};
use super::sheet_cautions::cautions_of;
use super::sheet_disclosure::{Disclosure, disclosures};
use super::sheet_photos::{of_parts, of_piece};
use super::wording::sheet_buyer as words;
use leavewell_model::ledger::{FigureId, FindingId, Place};
use leavewell_model::record::StruckMark;
use leavewell_model::report::{CautionReport, DateReport, FamilyDates};
use leavewell_model::terms::small;
use leavewell_model::terms::{Currency, Kind, Seen, sum};
use leavewell_model::terms::{any_of, capital};

/// Builds the page. It fits on one sheet of paper, so nothing is said twice but what a ticket repeats.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let paper = Paper::new(subject);
    let disclosures = disclosures(&paper);
    let stock = &paper.case.stock;
    let mut blocks = head(&paper, &paper.public_name(), words::FOR_A_BUYER);
    let mut offer = Vec::new();
    let mut fact = |name: &str, text: String| {
        if !text.is_empty() {
            offer.push((name.to_owned(), text));
        }
    };
    fact(words::STOCK_NUMBER, as_typed(&stock.number));
    if stock.show_price
        && let Some(asking) = stock.asking
    {
        let currency = paper.case.market.currency.unwrap_or(Currency::Other);
        fact(words::PRICE, sum(currency.sign(), asking));
    }
    fact(words::SELLER, as_typed(&stock.seller));
    if !offer.is_empty() {
        blocks.push(Block::Facts { rows: offer });
    }
    blocks.push(Block::section(
        "buyer.ticket",
        words::TICKET,
        vec![Block::para(ticket(&paper, &disclosures))],
    ));
    let mut entry = vec![Block::para(catalogue(&paper, &disclosures))];
    let own = paper.typed("looked.described");
    if !own.is_empty() {
        entry.push(Block::para(own));
    }
    if !disclosures.is_empty() {
        entry.push(Block::said(Tone::Quiet, words::KEEP_EACH));
    }
    blocks.push(Block::section("buyer.catalogue", words::CATALOGUE, entry));
    if stock.show_photos {
        blocks.extend(of_piece(&paper, "buyer.photos", 0..usize::MAX));
        blocks.extend(of_parts(&paper, "buyer.photos"));
    }
    blocks.extend(missing(&paper, "buyer.missing"));
    let law = paper.case.law_of_sale();
    if !law.is_empty() {
        let law = law.into_iter().map(|words| Block::said(Tone::Care, words));
        blocks.push(Block::section("buyer.law", words::LAW, law.collect()));
    }
    blocks.push(Block::said(Tone::Quiet, words::LAW_OF_THE_PLACE));
    let child = paper.case.aim.household_child_or_pregnant;
    // Not about work that nobody is offering the buyer.
    blocks.push(cautions_of(
        &paper.report,
        is_of_the_piece,
        paper.named_done(),
        child,
    ));
    blocks
}

/// Whether a caution is about the piece itself and not about work on it.
pub(super) fn is_of_the_piece(caution: &CautionReport) -> bool {
    matches!(
        caution.id.as_str(),
        "caution.lead" | "caution.corrosion" | "caution.sealed" | "caution.mercury"
    )
}

/// The ticket: form and years, then what the piece is, then every disclosure.
fn ticket(paper: &Paper, disclosures: &[Disclosure]) -> String {
    let mut pieces = vec![what(paper)];
    if paper.too_little() {
        pieces.push(words::NOT_EXAMINED.to_owned());
    } else {
        pieces.push(identity_short(paper));
    }
    // What it is says already that it was electroplated later, where that is the likeliest.
    let likeliest = paper.report.identity.kinds.iter();
    let likeliest = likeliest.max_by(|a, b| a.p.total_cmp(&b.p));
    let is_said = likeliest.is_some_and(|kind| kind.kind == Kind::Rfp)
        && !paper
            .done
            .iter()
            .any(super::sheet_done::RecordedWork::plates);
    let told = disclosures
        .iter()
        .filter(|told| !(is_said && told.about == "replated"));
    pieces.extend(told.map(|told| told.ticket.clone()));
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
    let form = paper.public_name();
    let stated = match (piece.from_year, piece.to_year) {
        (None, None) => None,
        (Some(from), None) => Some(words::stated_from(from)),
        (None, Some(to)) => Some(words::stated_until(to)),
        (Some(from), Some(to)) => Some(words::stated_between(from, to)),
    };
    let dates = paper
        .report
        .identity
        .dates
        .as_ref()
        .filter(|_| !paper.too_little());
    let counts_the_stated = dates.is_some_and(|d| d.given.is_some());
    let found = dates.map(|dates| years(paper, dates));
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

/// The years as a catalogue gives them. A range so wide that its end says nothing is given by its beginning,
/// and one that says nothing at either end is undated.
fn years(paper: &Paper, dates: &DateReport) -> String {
    let wide = paper.ledger.value(FigureId::IDENTITY_DATES_WIDE);
    let of = |family: &FamilyDates| {
        let span = f64::from(family.to.saturating_sub(family.from));
        if !family.open && span <= wide {
            words::probably(&family.in_words())
        } else if family.open || span <= 2.0 * wide {
            words::later_than(family.from)
        } else {
            words::UNDATED.to_owned()
        }
    };
    if !dates.is_conditional {
        return dates.by_family.first().map_or_else(String::new, of);
    }
    let each: Vec<String> = dates
        .by_family
        .iter()
        .map(|family| {
            let names: Vec<&str> = family.names.iter().map(|name| name.get()).collect();
            words::if_it_is(&of(family), &names)
        })
        .collect();
    each.join(", ")
}

fn identity_short(paper: &Paper) -> String {
    if paper.report.identity.nothing_found || paper.report.identity.family_bars.is_empty() {
        return words::UNKNOWN_METAL.to_owned();
    }
    let sentence = &paper.report.identity.sentence;
    let first = sentence.split(". ").next().unwrap_or(sentence);
    first.trim_end_matches('.').to_owned()
}

/// The catalogue entry in the trade's order: form and date, what it is made of, how it is made and decorated,
/// marks, size, faults and repairs, past work, papers, use.
fn catalogue(paper: &Paper, disclosures: &[Disclosure]) -> String {
    let mut text = vec![format!("{}.", what(paper))];
    if paper.too_little() {
        text.push(words::NOT_EXAMINED_SENTENCE.to_owned());
        if !paper.case.marks.is_empty() {
            text.push(marks(paper));
        }
    } else {
        if !paper.report.identity.nothing_found {
            text.push(paper.report.identity.sentence.clone());
        }
        let other: Vec<String> = paper
            .report
            .identity
            .family_bars
            .iter()
            .skip(1)
            .filter(|f| paper.worth_telling(f.p))
            .map(|f| f.name.to_string())
            .collect();
        if !other.is_empty() && !paper.report.identity.nothing_found {
            text.push(words::might_also_be(&any_of(&other)));
        }
        text.extend(metal_below(paper));
        text.extend(features(paper));
        text.push(marks(paper));
    }
    text.push(paper.size());
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
    if paper.report.display_only.yes {
        text.push(paper.report.display_only.label.to_string());
    }
    text.retain(|sentence| !sentence.is_empty());
    text.join(" ")
}

/// The metal below the silver, where a mark names it or it was seen.
fn metal_below(paper: &Paper) -> Option<String> {
    // Where the findings do not agree, no metal is settled.
    let settled = paper.report.identity.contradictions.is_empty();
    words::METALS_BELOW
        .iter()
        .find(|(ids, _)| settled && paper.case.has_seen_any(ids))
        .map(|(_, sentence)| (*sentence).to_owned())
}

/// How it is made and decorated, as far as it was found.
fn features(paper: &Paper) -> Option<String> {
    let mut found: Vec<String> = words::FEATURES
        .iter()
        .filter(|(id, _)| paper.case.has_seen(*id))
        .map(|(_, feature)| (*feature).to_owned())
        .collect();
    for part in &paper.case.parts {
        if let Some(material) = part.material.and_then(words::made_of) {
            found.push(words::part_of(&part_label(part), material));
        }
    }
    (!found.is_empty()).then(|| words::made_with(&and(&found)))
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
            .map(|a| a.id.fact())
            .filter(|f| f.place == Place::Marks && f.id != FindingId::M10)
            .filter(|f| !paper.case.marks.iter().any(|m| m.findings.contains(&f.id)))
            .map(|f| small(f.title))
            .collect()
    };
    // A mark that was typed is quoted, and what was made of it is not said a second time.
    let quoted: Vec<String> = paper.case.marks.iter().map(quoted_mark).collect();
    let seen = of(Seen::Yes);
    let mut said = Vec::new();
    if !quoted.is_empty() {
        said.push(words::marked(&and(&quoted)));
    }
    if !seen.is_empty() {
        said.push(words::not_transcribed(&and(&seen)));
    }
    if !said.is_empty() {
        said.join(" ")
    } else if paper.case.has_seen(FindingId::M10) {
        words::NO_MARK.to_owned()
    } else {
        words::MARKS_NOT_RECORDED.to_owned()
    }
}
