//! The ledger as a page: every figure with its value, band, unit, tag and source, the figures this case
//! used, and fields for your own value and reason.
//!
//! "Used" means looked up while this case was weighed. A figure that was not looked up cannot change the
//! answer; one that was looked up may.

use super::Subject;
use super::as_typed::as_typed;
use super::block::{Block, EntryField, Table, Tone};
use super::learning::taught_sentence;
use super::ledger_book::{Book, band, cited, figure_table, named_by, shown_unit, value, words};
use super::ledger_trace::trace;
use super::sheet_cautions::with_cautions;
use super::wording::ledger as words;
use leavewell_model::counsel::weigh_at_once;
use leavewell_model::ledger::{Figure, FigureId, Ledger, Tag, safe_range};
use leavewell_model::terms::{Treatment, TreatmentSet, share};

/// Greatest number of figures shown with fields at a time.
const MOST_OPEN: usize = 25;
/// Path of the search text.
const SEARCH: &str = "ledger.search";

/// Builds the page.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let book = Book::new(subject);
    let draft = subject.draft();
    let search = draft.text(SEARCH);
    // Without a search the page lists every figure, and so names every treatment.
    let mut named: TreatmentSet = Treatment::ALL.into_iter().collect();
    let mut blocks = vec![Block::Field(EntryField {
        path: SEARCH.to_owned(),
        label: words::FIND.to_owned(),
        unit: String::new(),
        hint: words::FIND_HINT.to_owned(),
        text: search.clone(),
        stand_in: String::new(),
        problem: String::new(),
        number: false,
    })];
    if search.trim().is_empty() {
        blocks.push(share_of_judgement(&book));
        blocks.extend(own(&book));
        blocks.push(Block::section(
            "ledger.used",
            words::LOOKED_UP,
            groups(&book, "ledger.used", |f| {
                book.used.contains(f.id) && f.own_reason.is_none()
            }),
        ));
        blocks.push(Block::fold("ledger.trace", words::MADE, trace(&book)));
        blocks.push(Block::section(
            "ledger.rest",
            words::NOT_LOOKED_UP,
            groups(&book, "ledger.rest", |f| {
                !book.used.contains(f.id) && f.own_reason.is_none()
            }),
        ));
    } else {
        let hits = hits(&book, &search);
        named = named_by(hits.iter().copied());
        blocks.push(found(&book, &hits));
    }
    with_cautions(subject.case(), named, blocks)
}

/// How many of the figures behind this advice rest on each kind of knowledge.
fn share_of_judgement(book: &Book) -> Block {
    let used: Vec<&Figure> = book
        .ledger
        .figures()
        .filter(|f| book.used.contains(f.id))
        .collect();
    let count = |wanted: &dyn Fn(&Figure) -> bool| used.iter().filter(|f| wanted(f)).count();
    let mut rows = Vec::new();
    let mine = count(&|f| f.own_reason.is_some());
    let mut say = |name: &str, n: usize| {
        if n > 0 {
            let part = share(n as f64 / used.len().max(1) as f64);
            rows.push((name.to_owned(), words::count_and_part(n, &part)));
        }
    };
    for (tag, name) in TAGS {
        say(name, count(&|f| f.tag == tag && f.own_reason.is_none()));
    }
    say(words::YOUR_OWN, mine);
    let judged = count(&|f| f.own_reason.is_none() && !matches!(f.tag, Tag::Read | Tag::Computed));
    Block::section(
        "ledger.share",
        words::RESTS_ON,
        vec![
            Block::said(Tone::Answer, words::looked_up(used.len(), judged)),
            Block::Facts { rows },
            Block::said(Tone::Quiet, words::COUNTED_NOT_WEIGHED),
        ],
    )
}

const TAGS: [(Tag, &str); 6] = [
    (Tag::Read, words::READ),
    (Tag::Secondary, words::SECONDARY),
    (Tag::Computed, words::COMPUTED),
    (Tag::Judgement, words::JUDGEMENT),
    (Tag::Practice, words::PRACTICE),
    (Tag::Memory, words::MEMORY),
];

/// The user's own figures, with the answer as it would be without them.
fn own(book: &Book) -> Vec<Block> {
    let mine: Vec<&Figure> = book
        .ledger
        .figures()
        .filter(|f| f.own_reason.is_some())
        .collect();
    // A rejected entry keeps its field here, so that it can be corrected.
    let refused = book
        .problems
        .iter()
        .filter(|p| p.field.starts_with("overrides"));
    let mut blocks: Vec<Block> = refused
        .map(|p| {
            Block::said(
                Tone::Note,
                as_typed(&format!("{}: {} {}", p.field, p.message, p.remedy)),
            )
        })
        .collect();
    if mine.is_empty() && blocks.is_empty() {
        return Vec::new();
    }
    if !mine.is_empty() {
        blocks.push(without(book, &mine));
    }
    for figure in &mine {
        blocks.push(with_fields(book, figure));
    }
    vec![Block::section("ledger.own", words::OWN, blocks)]
}

/// The answer with the user's own figures, without each of them, and without any.
fn without(book: &Book, mine: &[&Figure]) -> Block {
    let weighed = |keep: &dyn Fn(&str) -> bool| {
        let mut case = book.case.clone();
        case.overrides.retain(|o| keep(&o.figure));
        weigh_at_once(&case, Vec::new()).counsel
    };
    let row = |name: String, counsel: &leavewell_model::report::CounselReport| {
        vec![
            name,
            counsel.sentence.clone(),
            counsel.firmness.id().to_owned(),
        ]
    };
    let now = &book.report.counsel;
    let none = weighed(&|_| false);
    let mut rows = vec![
        row(words::WITH_ALL.to_owned(), now),
        row(words::WITH_NONE.to_owned(), &none),
    ];
    if mine.len() > 1 && mine.len() <= 6 {
        for figure in mine {
            let counsel = weighed(&|id| id != figure.id);
            rows.push(row(words::without(words(figure)), &counsel));
        }
    }
    let same = none.steps == now.steps && none.firmness == now.firmness;
    Block::section(
        "ledger.without",
        if same { words::SAME } else { words::OTHER },
        vec![Block::Table(Table {
            caption: words::WITHOUT_CAPTION.to_owned(),
            columns: words::WITHOUT_COLUMNS.map(str::to_owned).to_vec(),
            rows,
        })],
    )
}

/// One figure with fields for the user's own value and reason.
fn with_fields(book: &Book, figure: &Figure) -> Block {
    let shipped = Ledger::standard().find(figure.id).unwrap_or(figure);
    let mut rows = vec![
        (words::AS_SHIPPED.to_owned(), value(shipped)),
        (words::BAND.to_owned(), band(shipped)),
        (words::KNOWN.to_owned(), figure.tag.words().to_owned()),
        (words::SOURCE.to_owned(), cited(figure)),
        (words::ID.to_owned(), figure.id.to_owned()),
    ];
    if let Some(taught) = book.case.taught.of(figure.id) {
        let text = taught_sentence(shipped, taught, book.case.taught.pieces);
        rows.insert(2, (words::TAUGHT.to_owned(), text));
    }
    if let Some(range) = FigureId::parse(figure.id).and_then(safe_range) {
        rows.push((words::SAFETY.to_owned(), words::safe_values(range)));
    }
    let place = format!("overrides.{{{}}}", figure.id);
    let text = |path: &str| book.draft.text(path);
    // A file may give only the number, without a reason.
    let bare = text(&place);
    let bare = if bare.starts_with('{') {
        String::new()
    } else {
        bare
    };
    let field = |path: String, label: &str, hint: &str, number| {
        Block::Field(EntryField {
            text: text(&path),
            label: label.to_owned(),
            unit: if number {
                shown_unit(figure).to_owned()
            } else {
                String::new()
            },
            hint: hint.to_owned(),
            stand_in: if number {
                shipped.value.to_string()
            } else {
                String::new()
            },
            problem: if number {
                problem(book, figure.id)
            } else {
                String::new()
            },
            number,
            path,
        })
    };
    let fields = if bare.is_empty() {
        vec![
            field(
                format!("{place}.value"),
                words::OWN_VALUE,
                words::OWN_VALUE_HINT,
                true,
            ),
            field(
                format!("{place}.reason"),
                words::REASON,
                words::REASON_HINT,
                false,
            ),
        ]
    } else {
        vec![field(place, words::OWN_VALUE, words::REFUSED_HINT, true)]
    };
    Block::section(
        &format!("ledger.figure.{}", figure.id),
        words(figure),
        vec![Block::Facts { rows }, Block::Row { blocks: fields }],
    )
}

fn problem(book: &Book, id: &str) -> String {
    let start = format!("overrides.{id}");
    book.problems
        .iter()
        .filter(|p| p.field == start || p.field == format!("{start}.value"))
        .map(|p| format!("{} {}", p.message, p.remedy))
        .collect::<Vec<_>>()
        .join(" ")
}

/// The figures that match every search word.
fn hits<'a>(book: &Book<'a>, search: &str) -> Vec<&'a Figure> {
    let wanted: Vec<String> = search
        .to_lowercase()
        .split_whitespace()
        .take(8)
        .map(str::to_owned)
        .collect();
    book.ledger
        .figures()
        .filter(|f| {
            let text = [f.id, " ", words(f), " ", &cited(f), " ", f.tag.words()]
                .concat()
                .to_lowercase();
            wanted.iter().all(|w| text.contains(w.as_str()))
        })
        .collect()
}

/// These figures, the first of them with fields.
fn found(book: &Book, hits: &[&Figure]) -> Block {
    let all = book.ledger.figures().count();
    let (open, closed) = hits.split_at(hits.len().min(MOST_OPEN));
    let mut blocks = vec![Block::para(match hits.len() {
        0 => words::none_found(all),
        n => words::found(n, all),
    })];
    blocks.extend(open.iter().map(|f| with_fields(book, f)));
    if !closed.is_empty() {
        blocks.push(Block::para(words::MORE));
        blocks.push(Block::Table(figure_table(
            words::MORE_CAPTION,
            closed,
            &book.case.taught,
        )));
    }
    Block::section("ledger.found", words::FOUND, blocks)
}

/// The figures that match `wanted`, in one fold per group.
fn groups(book: &Book, id: &str, wanted: impl Fn(&Figure) -> bool) -> Vec<Block> {
    let mut blocks: Vec<Block> = Vec::new();
    let mut held: Vec<(&str, Vec<&Figure>)> = Vec::new();
    for figure in book.ledger.figures().filter(|f| wanted(f)) {
        let group = figure.id.split('.').next().unwrap_or_default();
        match held.last_mut() {
            Some((last, figures)) if *last == group => figures.push(figure),
            _ => held.push((group, vec![figure])),
        }
    }
    if held.is_empty() {
        return vec![Block::para(words::NONE)];
    }
    for (group, figures) in held {
        let name = words::group_words(group);
        blocks.push(Block::fold(
            &format!("{id}.{group}"),
            &words::group(&name, figures.len()),
            vec![Block::Table(figure_table(
                &name,
                &figures,
                &book.case.taught,
            ))],
        ));
    }
    blocks
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_carries_every_treatment_that_its_words_name() {
        for figure in Ledger::standard().figures() {
            let text = format!(
                " {} ",
                words(figure)
                    .to_lowercase()
                    .replace([',', ':', ';', '.'], " ")
            );
            for treatment in Treatment::ALL {
                if text.contains(&format!(" {} ", treatment.name().to_lowercase())) {
                    assert!(
                        named_by([figure]).iter().any(|named| named == treatment),
                        "{}: {}",
                        figure.id,
                        treatment.name()
                    );
                }
            }
        }
    }
}
