//! The sheet for the file: everything on record, so that someone else can continue from it.
//!
//! It follows EN 16095 for condition reports: identification, description, condition by part, images, date,
//! examiner, recommendations.

use leavewell_model::terms::small;
use serde_json::{Map, Value};

use super::Subject;
use super::as_typed::as_typed;
use super::block::{Block, Table, Tone};
use super::field_words::{self, value_words};
use super::sheet::listed;
use super::sheet::{Paper, head, missing, part_name, plain};
use super::sheet_buyer::{is_of_the_piece, quoted_mark};
use super::sheet_cautions::cautions_of;
use super::sheet_client::{course_table, unconfirmed, verdicts, who, would_change};
use super::sheet_glossary::word_list;
use super::sheet_photos::{of_parts, of_piece};
use super::sheet_places::{lines_of, pictures, placed};
use super::sheet_proposal::proposed;
use super::wording::sheet::part_of;
use super::wording::sheet_client::outcome;
use super::wording::sheet_file as words;
use leavewell_model::ledger::Ledger;
use leavewell_model::record::bears_on_hazards;
use leavewell_model::record::schema::bare_share;
use leavewell_model::report::{CautionReport, OptionOutcome, OptionReport, PartReport};
use leavewell_model::terms::PartName;
use leavewell_model::terms::{percent, the_pieces};

/// Builds the page.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let paper = Paper::new(subject).with_changes();
    let mut blocks = head(&paper, &paper.name(), words::FOR_THE_FILE);
    blocks.push(Block::section(
        "file.identification",
        words::IDENTIFICATION,
        identification(&paper),
    ));
    blocks.push(Block::section(
        "file.examination",
        words::EXAMINATION,
        examination(&paper),
    ));
    blocks.push(Block::section(
        "file.description",
        words::DESCRIPTION,
        description(&paper),
    ));
    blocks.push(Block::section("file.parts", words::PARTS, parts(&paper)));
    blocks.push(Block::section("file.images", words::IMAGES, images(&paper)));
    blocks.extend(missing(&paper, "file.missing"));
    blocks.extend(paper.history("file.done"));
    if paper.too_little() {
        blocks.push(Block::section(
            "file.recommendations",
            words::RECOMMENDATIONS,
            vec![
                Block::para(words::TOO_LITTLE),
                Block::para(
                    leavewell_model::ledger::caution("caution.fallback").map_or("", |c| c.text),
                ),
            ],
        ));
    } else {
        blocks.push(Block::section("file.kinds", words::KINDS, kinds(&paper)));
        blocks.push(Block::section("file.value", words::VALUE, value(&paper)));
        blocks.push(Block::section(
            "file.recommendations",
            words::RECOMMENDATIONS,
            recommendations(&paper),
        ));
        blocks.extend(proposed(&paper, "file.proposal"));
        blocks.push(Block::section(
            "file.options",
            words::TREATMENTS,
            options(&paper),
        ));
        blocks.push(Block::section(
            "file.courses",
            words::COURSES,
            courses(&paper),
        ));
    }
    blocks.push(Block::section(
        "file.figures",
        words::FIGURES,
        figures(&paper),
    ));
    blocks.extend(rest(&paper));
    let child = paper.case.aim.household_child_or_pregnant;
    let wanted = |c: &CautionReport| bears_on_hazards(paper.case) || is_of_the_piece(c);
    blocks.push(cautions_of(&paper.report, wanted, paper.named(), child));
    blocks.push(word_list(&blocks, paper.ledger));
    blocks
}

fn or_not(text: String) -> String {
    if text.is_empty() {
        words::NOT_RECORDED.to_owned()
    } else {
        text
    }
}

fn fact(name: &str, words: String) -> (String, String) {
    (name.to_owned(), or_not(words))
}

fn identification(paper: &Paper) -> Vec<Block> {
    let piece = &paper.case.piece;
    let years = match (piece.from_year, piece.to_year) {
        (None, None) => String::new(),
        (Some(from), None) => words::from(from),
        (None, Some(to)) => words::until(to),
        (Some(from), Some(to)) => words::between(from, to),
    };
    let dates = paper
        .report
        .identity
        .dates
        .as_ref()
        .filter(|_| !paper.too_little())
        .map(|d| words::probably(&d.in_words(), d.is_open(), d.is_conditional))
        .unwrap_or_default();
    let counts_the_stated = paper
        .report
        .identity
        .dates
        .as_ref()
        .is_some_and(|d| d.given.is_some());
    let found = if counts_the_stated {
        words::YEARS_FOUND_WITH_STATED
    } else {
        words::YEARS_FOUND
    };
    let yes = |flag: bool| if flag { words::YES } else { words::NO }.to_owned();
    let sentence = if paper.too_little() {
        String::new()
    } else {
        paper.report.identity.sentence.clone()
    };
    let mut blocks = vec![Block::Facts {
        rows: vec![
            fact(words::CALLED, as_typed(&piece.name)),
            fact(words::NUMBER, paper.typed("looked.number")),
            fact(
                words::FORM,
                if paper.case.pieces.are_several() {
                    paper.public_name()
                } else {
                    piece.form.map_or("", |f| f.label()).to_owned()
                },
            ),
            fact(words::SIZE, paper.size()),
            fact(words::WHAT_IT_IS, sentence),
            fact(words::YEARS_TOLD, years),
            fact(found, dates),
            fact(words::RARE, yes(piece.rare)),
            fact(words::DOCUMENTED, yes(piece.documented)),
        ],
    }];
    if let Some(dates) = paper
        .report
        .identity
        .dates
        .as_ref()
        .filter(|_| !paper.too_little())
    {
        blocks.extend(listed(words::DATES_REST_ON, &dates.reasons));
    }
    blocks.extend(listed(
        words::AGAINST_YEARS_TOLD,
        &paper.report.identity.date_conflicts,
    ));
    blocks.extend(unconfirmed(paper));
    blocks
}

fn examination(paper: &Paper) -> Vec<Block> {
    let day = paper.typed("looked.on");
    let day = if day.is_empty() {
        paper.day().unwrap_or_default()
    } else {
        day
    };
    vec![Block::Facts {
        rows: vec![
            fact(words::DATE, day),
            fact(words::EXAMINER, paper.typed("looked.by")),
            fact(words::LIGHT, paper.typed("looked.light")),
            fact(words::AIDS, paper.typed("looked.aids")),
            fact(words::REASON, paper.typed("looked.why")),
            fact(words::KEPT_AT, paper.typed("looked.where")),
        ],
    }]
}

fn description(paper: &Paper) -> Vec<Block> {
    let mut blocks = Vec::new();
    let described = paper.typed("looked.described");
    if !described.is_empty() {
        blocks.push(Block::para(described));
    }
    let marks: Vec<String> = paper.case.marks.iter().map(quoted_mark).collect();
    blocks.extend(listed(words::MARKS, &marks));
    let rows: Vec<Vec<String>> = paper
        .case
        .findings
        .iter()
        .map(|answer| {
            vec![
                answer.id.fact().title.to_owned(),
                answer.seen.label().to_owned(),
                answer
                    .part
                    .map_or(words::THE_PIECE, |p| p.label())
                    .to_owned(),
            ]
        })
        .collect();
    if rows.is_empty() {
        blocks.push(Block::para(words::NO_FINDING));
    } else {
        blocks.push(Block::Table(Table {
            caption: words::FINDINGS.to_owned(),
            columns: words::FINDING_COLUMNS.map(str::to_owned).to_vec(),
            rows,
        }));
    }
    let clashes: Vec<String> = paper
        .report
        .identity
        .contradictions
        .iter()
        .map(|c| c.text.clone())
        .collect();
    blocks.extend(listed(words::CLASHES, &clashes));
    blocks
}

/// The label of a part's field; unknown fields keep their name in the file.
fn label(field: &str) -> String {
    words::part_field(field)
        .or_else(|| field_words::label(&["parts[].", field].concat()))
        .map_or_else(|| spaced(field), str::to_owned)
}

fn spaced(id: &str) -> String {
    let words = id.replace(['_', '.'], " ");
    let mut chars = words.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(chars).collect()
    })
}

/// The value of a part's field in words.
fn said(field: &str, value: &Value) -> String {
    if let Some(interval) = value.as_object() {
        let ends: Vec<String> = interval
            .iter()
            .map(|(name, value)| format!("{} {}", as_typed(name), plain(value)))
            .collect();
        return ends.join(", ");
    }
    if let Some(list) = value.as_array() {
        return list.iter().map(plain).collect::<Vec<_>>().join(", ");
    }
    match (field, bare_share(&plain(value))) {
        ("bleed", Some(share)) => percent(share),
        _ => value_words(&["parts[].", field].concat(), value),
    }
}

/// What is recorded of a part, field by field. Places and photographs are shown elsewhere.
pub(super) fn part_rows(part: &Map<String, Value>) -> Vec<(String, String)> {
    part.iter()
        .filter(|(field, _)| !matches!(field.as_str(), "part" | "spots" | "photos"))
        .map(|(field, value)| fact(&as_typed(&label(field)), said(field, value)))
        .collect()
}

fn parts(paper: &Paper) -> Vec<Block> {
    let faults = placed(paper.case);
    let mut blocks = pictures(paper, &faults);
    for (place, (no, part)) in paper.raw_parts().into_iter().enumerate() {
        let mut rows = part_rows(part);
        let id = part.get("part").map(plain).unwrap_or_default();
        let known = PartName::parse(&id);
        let on: Vec<u16> = no.into_iter().collect();
        let title = part_of(&part_name(part), &the_pieces(&on));
        let of_part = |p: &&PartReport| known.is_some_and(|k| k == p.part);
        let mut told = paper.report.silver.parts.iter().filter(of_part);
        let worked_out = match no {
            None => told.next(),
            Some(_) => told.find(|p| p.name == title),
        };
        if let Some(p) = worked_out.filter(|_| !paper.too_little()) {
            rows.push(fact(words::SILVER, p.words.clone()));
            if let Some(left) = p.left_um {
                rows.push(fact(
                    words::SILVER_LEFT,
                    words::left(
                        &figure(left.p10),
                        &figure(left.p90),
                        &figure(left.p50),
                        &p.left_fraction
                            .map_or_else(String::new, |f| words::of_the_first(&percent(f))),
                    ),
                ));
            }
        }
        let mut of_it = vec![Block::Facts { rows }];
        let shown = lines_of(&faults, known);
        of_it.extend(listed(words::PLACED, &shown));
        blocks.push(Block::section(&format!("file.part.{place}"), &title, of_it));
    }
    if blocks.is_empty() {
        blocks.push(Block::para(words::NO_PART));
    }
    let unseen: Vec<String> = paper.parts_not_looked_at().into_iter().map(small).collect();
    if !unseen.is_empty() {
        blocks.push(Block::said(
            Tone::Quiet,
            words::not_looked_at(&unseen.join(", ")),
        ));
    }
    blocks
}

/// A number to two figures.
pub(super) fn figure(x: f64) -> String {
    if x == 0.0 || !x.is_finite() {
        return if x == 0.0 {
            "0"
        } else {
            words::BEYOND_RECKONING
        }
        .to_owned();
    }
    let digits = (2.0 - libm::floor(libm::log10(x.abs())) - 1.0).clamp(-12.0, 9.0);
    let unit = libm::pow(10.0, digits);
    let rounded = (x * unit).round() / unit;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to 0 to 9
    let shown = digits.max(0.0) as usize;
    format!("{rounded:.shown$}")
}

fn images(paper: &Paper) -> Vec<Block> {
    let log = |label: &str, count| Block::Lines {
        label: label.to_owned(),
        count,
    };
    let mut blocks = of_piece(paper, "file.photos", 0..usize::MAX);
    blocks.extend(of_parts(paper, "file.photos"));
    if blocks.is_empty() {
        blocks.push(Block::para(words::NO_IMAGE));
    }
    blocks.push(log(words::IMAGE_LIST, 4));
    blocks
}

fn kinds(paper: &Paper) -> Vec<Block> {
    let identity = &paper.report.identity;
    let rows = identity
        .kinds
        .iter()
        .map(|k| {
            vec![
                k.name.to_string(),
                paper.likely(k.p),
                leavewell_model::terms::share(k.low),
                leavewell_model::terms::share(k.high),
            ]
        })
        .collect();
    vec![
        Block::para(format!(
            "{} {}",
            identity.body.sentence, identity.skin.sentence
        )),
        Block::Table(Table {
            caption: if identity.nothing_found {
                words::EVERY_KIND_BEFORE_LOOKING.to_owned()
            } else {
                words::EVERY_KIND.to_owned()
            },
            columns: words::KIND_COLUMNS.map(str::to_owned).to_vec(),
            rows,
        }),
    ]
}

fn value(paper: &Paper) -> Vec<Block> {
    let value = &paper.report.value;
    vec![
        Block::Facts {
            rows: vec![
                fact(words::UNDAMAGED, paper.money_band(value.undamaged)),
                fact(words::AS_IT_IS, paper.money_band(value.as_it_is)),
                fact(words::SELLER_KEEPS, paper.money_band(value.net_as_it_is)),
            ]
            .into_iter()
            .chain(paper.pieces_rows())
            .chain([
                fact(
                    words::RESTS_ON,
                    if value.assumed {
                        words::TYPICAL_VALUES
                    } else {
                        words::RECORDED_FIGURES
                    }
                    .to_owned(),
                ),
                fact(words::CURRENCY, value.currency.id().to_owned()),
            ])
            .collect(),
        },
        Block::said(Tone::Quiet, value.label),
    ]
}

fn recommendations(paper: &Paper) -> Vec<Block> {
    let counsel = &paper.report.counsel;
    let mut blocks = vec![
        Block::said(Tone::Answer, &counsel.sentence),
        Block::para(paper.report.counsel.firmness_words.clone()),
    ];
    blocks.extend(paper.against_the_screen());
    let reasons: Vec<String> = counsel.reasons.iter().map(|r| r.text.clone()).collect();
    blocks.extend(listed(words::WHY, &reasons));
    blocks.extend(listed(words::DOUBTS, &counsel.doubts));
    blocks.extend(listed(words::SPECIALIST_FIRST, &counsel.refer_why));
    blocks.extend(would_change(counsel));
    let looks: Vec<String> = paper
        .report
        .identity
        .next_looks
        .iter()
        .map(|l| format!("{}. {}", l.title, l.how))
        .collect();
    blocks.extend(listed(words::NEXT_LOOKS, &looks));
    if paper.report.display_only.yes {
        blocks.push(Block::said(Tone::Stop, paper.report.display_only.label));
        blocks.push(Block::List {
            items: paper.report.display_only.why.clone(),
        });
    }
    blocks
}

fn options(paper: &Paper) -> Vec<Block> {
    let row = |o: &OptionReport| {
        let rules = verdicts(&o.verdicts)
            .into_iter()
            .map(|(verdict, why)| words::verdict(&verdict, &why));
        let mut told = vec![words::sentence(outcome(o.outcome))];
        told.extend(o.not_needed.clone());
        told.extend(rules);
        // What is never done has no price and nobody to do it.
        let (cost, by) = if o.outcome == OptionOutcome::Never {
            (String::new(), String::new())
        } else {
            (paper.money_band(o.cost), who(&o.who))
        };
        vec![
            o.name.to_string(),
            told.join(" "),
            words::lost(&o.lost, &o.reversibility_words),
            cost,
            by,
        ]
    };
    vec![Block::Table(Table {
        caption: words::EVERY_TREATMENT.to_owned(),
        columns: words::TREATMENT_COLUMNS.map(str::to_owned).to_vec(),
        rows: paper.report.options.iter().map(row).collect(),
    })]
}

fn courses(paper: &Paper) -> Vec<Block> {
    let all: Vec<_> = paper.report.courses.iter().collect();
    let barred: Vec<String> = all
        .iter()
        .filter(|c| !c.barred.is_empty())
        .map(|c| {
            let why: Vec<&str> = c.barred.iter().map(|v| v.reason.as_str()).collect();
            format!("{}: {}", c.name, why.join(" "))
        })
        .collect();
    let mut blocks = vec![Block::Table(course_table(paper, &all))];
    blocks.extend(listed(words::BARRED, &barred));
    blocks
}

fn figures(paper: &Paper) -> Vec<Block> {
    let mut blocks = vec![Block::Facts {
        rows: paper.made_from(),
    }];
    let rows: Vec<Vec<String>> = paper
        .case
        .overrides
        .iter()
        .filter_map(|own| {
            let shipped = Ledger::standard().find(&own.figure)?;
            Some(vec![
                leavewell_model::ledger::meaning(shipped.id)
                    .unwrap_or_default()
                    .to_owned(),
                own.value.to_string(),
                shipped.value.to_string(),
                shipped.unit.to_owned(),
                or_not(as_typed(&own.reason)),
            ])
        })
        .collect();
    if !rows.is_empty() {
        blocks.push(Block::Table(Table {
            caption: words::OWN_FIGURES.to_owned(),
            columns: words::OWN_COLUMNS.map(str::to_owned).to_vec(),
            rows,
        }));
    }
    blocks.extend(listed(words::UNUSABLE, &paper.problems()));
    blocks
}

/// Groups of the record that have their own section above.
const TOLD: [&str; 7] = [
    "format",
    "version",
    "findings",
    "parts",
    "done",
    "overrides",
    "ledger",
];
/// Greatest number of lines from the rest of the record.
const MOST_LINES: usize = 400;
/// Longest text of one such line, in characters.
const MOST_LETTERS: usize = 2000;

/// Everything else in the record, as stored, so that the sheet is complete.
fn rest(paper: &Paper) -> Vec<Block> {
    let mut rows = Vec::new();
    for (name, value) in paper
        .raw
        .iter()
        .filter(|(name, _)| !TOLD.contains(&name.as_str()))
    {
        flatten(name, &as_typed(name), value, &mut rows);
    }
    if rows.is_empty() {
        return Vec::new();
    }
    let more = rows.len().saturating_sub(MOST_LINES);
    rows.truncate(MOST_LINES);
    let mut blocks = vec![Block::Facts { rows }];
    if more > 0 {
        blocks.push(Block::said(Tone::Note, words::more_entries(more)));
    }
    vec![Block::section("file.rest", words::REST, blocks)]
}

/// The fields below a path, each with its name in words: the label of the schema, or for a field it lacks the
/// names on the way to it.
fn flatten(path: &str, named: &str, value: &Value, rows: &mut Vec<(String, String)>) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                let below = [path, ".", name].concat();
                let named = match field_words::label(path) {
                    Some(section) => [section, ", ", &as_typed(name)].concat(),
                    None => [named, ", ", &as_typed(name)].concat(),
                };
                flatten(&below, &named, value, rows);
            }
        }
        Value::Array(entries) => {
            let list = field_words::label(path).map_or_else(|| spaced(named), str::to_owned);
            for (at, value) in entries.iter().enumerate() {
                let entry = format!("{list} {}", at + 1);
                flatten_entry(&format!("{path}[{at}]"), &entry, value, rows);
            }
        }
        single => {
            let name = field_words::label(path).map_or_else(|| spaced(named), str::to_owned);
            push(&name, path, single, rows);
        }
    }
}

/// The fields of one entry of a list, each with the name of the entry before its own.
fn flatten_entry(path: &str, entry: &str, value: &Value, rows: &mut Vec<(String, String)>) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                let below = [path, ".", name].concat();
                let label = field_words::label(&below).map_or_else(|| spaced(name), str::to_owned);
                let named = [entry, ": ", &small(&label)].concat();
                if value.is_object() || value.is_array() {
                    flatten_entry(&below, &named, value, rows);
                } else {
                    push(&named, &below, value, rows);
                }
            }
        }
        Value::Array(entries) => {
            for (at, value) in entries.iter().enumerate() {
                flatten_entry(
                    &format!("{path}[{at}]"),
                    &format!("{entry} {}", at + 1),
                    value,
                    rows,
                );
            }
        }
        single => push(entry, path, single, rows),
    }
}

fn push(name: &str, path: &str, value: &Value, rows: &mut Vec<(String, String)>) {
    let text = value_words(path, value);
    let letters = text.chars().count();
    let text = if letters > MOST_LETTERS {
        let cut: String = text.chars().take(MOST_LETTERS).collect();
        words::cut(&cut, letters)
    } else {
        text
    };
    if !text.is_empty() {
        rows.push((as_typed(name), text));
    }
}

#[cfg(test)]
mod tests {
    use super::figure;

    #[test]
    fn numbers_have_two_figures() {
        for (x, shown) in [
            (12.34, "12"),
            (0.1234, "0.12"),
            (1.26, "1.3"),
            (987.0, "990"),
            (0.0, "0"),
            (-4.14, "-4.1"),
            (0.000_52, "0.00052"),
        ] {
            assert_eq!(figure(x), shown);
        }
        assert_eq!(figure(f64::NAN), "too large to calculate");
    }
}
