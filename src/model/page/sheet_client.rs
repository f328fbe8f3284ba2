//! The sheet for a client: the options in plain words, what they cost and take away, and room to
//! choose and sign.

use super::block::{Block, Table, Tone};
use super::picture::{Anchor, Ink, Mark, Picture};
use super::sheet::{Paper, head, missing};
use super::sheet_cautions::cautions_of;
use super::sheet_glossary::word_list;
use crate::case::Draft;
use crate::facts::caution;
use crate::report::{CounselReport, CourseReport, OptionReport, VerdictReport};

/// The page.
#[must_use]
pub(super) fn page(draft: &Draft) -> Vec<Block> {
    let paper = Paper::new(draft).with_changes();
    let mut blocks = head(&paper, "For the client");
    if paper.too_little() {
        blocks.push(Block::said(
            Tone::Answer,
            "Too little is recorded to advise on this piece.",
        ));
        blocks.push(Block::para(
            caution("caution.fallback").map_or("", |c| c.text),
        ));
        blocks.extend(missing(&paper, "client.missing"));
        blocks.extend(paper.history("client.done"));
    } else {
        blocks.push(answer(&paper));
        blocks.extend(missing(&paper, "client.missing"));
        blocks.push(what_it_is(&paper));
        blocks.push(options(&paper));
        blocks.push(money(&paper));
        blocks.extend(paper.history("client.done"));
        blocks.push(questions(&paper));
    }
    let child = paper.case.aim.household_child_or_pregnant;
    blocks.push(cautions_of(&paper.report, |_| true, &blocks, child));
    if !paper.too_little() {
        blocks.push(sign());
    }
    blocks.push(word_list(&blocks, &paper.ledger));
    blocks.push(Block::section(
        "client.made",
        "What this rests on",
        vec![Block::Facts {
            rows: paper.made_from(),
        }],
    ));
    blocks
}

fn answer(paper: &Paper) -> Block {
    let counsel = &paper.report.counsel;
    let mut blocks = vec![
        Block::said(Tone::Answer, &counsel.sentence),
        Block::para(paper.firmness()),
    ];
    blocks.extend(paper.against_the_screen());
    if counsel.refer {
        blocks.push(Block::said(
            Tone::Note,
            format!(
                "Let a specialist see it first. {}",
                counsel.refer_why.join(" ")
            ),
        ));
    }
    let reasons: Vec<String> = counsel.reasons.iter().map(|r| r.text.clone()).collect();
    blocks.push(Block::List { items: reasons });
    blocks.extend(listed("What keeps it from being firmer:", &counsel.doubts));
    blocks.extend(would_change(counsel));
    if paper.report.display_only.yes {
        blocks.push(Block::said(Tone::Stop, paper.report.display_only.label));
        blocks.push(Block::List {
            items: paper.report.display_only.why.clone(),
        });
    }
    Block::section("client.answer", "The answer", blocks)
}

/// A lead line with its list; nothing when the list is empty.
pub(super) fn listed(lead: &str, items: &[String]) -> Vec<Block> {
    if items.is_empty() {
        return Vec::new();
    }
    vec![
        Block::para(lead),
        Block::List {
            items: items.to_vec(),
        },
    ]
}

/// What would change the answer, as far as it was looked for.
pub(super) fn would_change(counsel: &CounselReport) -> Vec<Block> {
    let changes: Vec<String> = counsel
        .would_change
        .iter()
        .map(|c| c.text.clone())
        .collect();
    listed("What would change it:", &changes)
}

fn what_it_is(paper: &Paper) -> Block {
    let identity = &paper.report.identity;
    let mut blocks = vec![Block::para(&identity.sentence)];
    let rows: Vec<(String, String)> = identity
        .family_bars
        .iter()
        .filter(|f| paper.worth_telling(f.p))
        .map(|f| {
            (
                f.name.to_string(),
                format!("{}. {}", paper.likely(f.p), f.meaning),
            )
        })
        .collect();
    blocks.push(Block::Facts { rows });
    if let Some(dates) = &identity.dates {
        blocks.push(Block::para(format!(
            "Made between {} and {}; 1 in 20 that it is earlier, 1 in 20 that it is later.",
            dates.from, dates.to
        )));
    }
    Block::section("client.identity", "What it is", blocks)
}

fn options(paper: &Paper) -> Block {
    let mut blocks = Vec::new();
    let mut idle = Vec::new();
    let mut never = Vec::new();
    for option in &paper.report.options {
        match &*option.outcome {
            "not_needed" => idle.push(format!(
                "{}: {}",
                option.name,
                option.not_needed.clone().unwrap_or_default()
            )),
            "never" => never.push(option.name.to_string()),
            _ => blocks.push(Block::section(
                &format!("client.option.{}", option.treatment),
                &option.name,
                option_blocks(paper, option),
            )),
        }
    }
    blocks.extend(listed("Not needed here:", &idle));
    blocks.extend(listed("Never for pieces like this:", &never));
    Block::section("client.options", "What could be done", blocks)
}

fn option_blocks(paper: &Paper, option: &OptionReport) -> Vec<Block> {
    let band = paper.money_band(option.cost);
    let cost = if option.quoted {
        format!("{band}, by the price you were given")
    } else if option.cost.p90 < 0.5 {
        band
    } else {
        format!("{band}; nobody has given a price")
    };
    let mut rows = vec![
        (
            "Can it be done".to_owned(),
            outcome(&option.outcome).to_owned(),
        ),
        ("Cost".to_owned(), cost),
        ("Lost for good".to_owned(), option.lost.to_string()),
        (
            "Can it be undone".to_owned(),
            option.reversibility_words.to_string(),
        ),
        ("Who may do it".to_owned(), who(&option.who)),
    ];
    rows.extend(verdicts(&option.verdicts));
    vec![Block::para(option.plain), Block::Facts { rows }]
}

/// What the guards say: why, and what would lift it.
pub(super) fn verdicts(list: &[VerdictReport]) -> Vec<(String, String)> {
    list.iter()
        .map(|v| {
            let text = if v.lifted_by.is_empty() {
                v.reason.clone()
            } else {
                format!("{} What would lift it: {}", v.reason, v.lifted_by)
            };
            (outcome(&v.outcome).to_owned(), text)
        })
        .collect()
}

/// What the guards say of a treatment, in words.
pub(super) fn outcome(id: &str) -> &'static str {
    match id {
        "allowed" => "Yes",
        "conditional" => "On conditions",
        "needs_check" => "A check comes first",
        "needs_opinion" => "A conservator's opinion comes first",
        "barred" => "Not for this piece",
        "not_needed" => "Not needed",
        _ => "Never for these pieces",
    }
}

/// Who may do it, from the letters of the catalogue.
pub(super) fn who(letters: &str) -> String {
    let words: Vec<&str> = letters
        .split('/')
        .map(|letter| match letter {
            "O" => "the owner",
            "S" => "a silversmith or plater",
            "C" => "a conservator",
            "P" => "a permitted plating works",
            "L" => "a laboratory",
            _ => "nobody",
        })
        .collect();
    words.join(" or ")
}

fn money(paper: &Paper) -> Block {
    let value = &paper.report.value;
    let mut blocks = vec![
        Block::Facts {
            rows: vec![
                (
                    "Undamaged it might fetch".to_owned(),
                    paper.money_band(value.undamaged),
                ),
                (
                    "As it is it might fetch".to_owned(),
                    paper.money_band(value.as_it_is),
                ),
                (
                    "Of that a seller keeps".to_owned(),
                    paper.money_band(value.net_as_it_is),
                ),
            ],
        },
        Block::said(Tone::Quiet, value.label),
    ];
    let shown: Vec<&CourseReport> = paper
        .report
        .courses
        .iter()
        .filter(|c| c.barred.is_empty())
        .take(6)
        .collect();
    if shown.len() > 1 {
        blocks.push(Block::Picture(picture(paper, &shown)));
    }
    blocks.push(Block::Table(course_table(paper, &shown)));
    Block::section("client.money", "What it comes to", blocks)
}

/// One row for each course: what is kept, against leaving it, and how likely it is the best.
pub(super) fn course_table(paper: &Paper, courses: &[&CourseReport]) -> Table {
    let rows = courses
        .iter()
        .map(|c| {
            let net = crate::report::Band {
                p10: c.net.p10,
                p50: c.net.p50,
                p90: c.net.p90,
            };
            vec![
                c.name.clone(),
                paper.money_band(c.cost),
                paper.money_band(net),
                paper.money(c.net_gain.mean),
                paper.likely(c.p_best),
                crate::small::percent(c.originality),
            ]
        })
        .collect();
    Table {
        caption: "What each course comes to".to_owned(),
        columns: [
            "Course",
            "Cost",
            "Kept after everything",
            "On average, against leaving it",
            "Nothing else does noticeably better",
            "Of what is original, kept",
        ]
        .map(str::to_owned)
        .to_vec(),
        rows,
    }
}

const LEFT: f64 = 8.0;
const RIGHT: f64 = 312.0;
const TOP: f64 = 8.0;
const ROW: f64 = 36.0;

/// A bar for each course from its lowest to its highest tenth, with a line at the middle.
fn picture(paper: &Paper, courses: &[&CourseReport]) -> Picture {
    let low = courses
        .iter()
        .map(|c| c.net.p10)
        .fold(f64::INFINITY, f64::min);
    let high = courses
        .iter()
        .map(|c| c.net.p90)
        .fold(f64::NEG_INFINITY, f64::max);
    let span = if high > low { high - low } else { 1.0 };
    let x = |v: f64| tenths(LEFT + (RIGHT - LEFT) * (v - low) / span);
    let mut marks = Vec::new();
    for (at, course) in courses.iter().enumerate() {
        let y = TOP + ROW * at as f64;
        let (a, b, middle) = (x(course.net.p10), x(course.net.p90), x(course.net.p50));
        marks.push(Mark::path(
            Ink::Band,
            format!("M{a} {}H{b}V{}H{a}Z", y + 14.0, y + 26.0),
        ));
        marks.push(Mark::path(
            Ink::Middle,
            format!("M{middle} {}V{}", y + 11.0, y + 29.0),
        ));
        marks.push(Mark::text(
            Ink::Outline,
            Anchor::Start,
            (LEFT, y + 9.0),
            format!("{}: {}", course.name, paper.money(course.net.p50)),
        ));
    }
    let first = courses.first().map_or("", |c| c.name.as_str());
    Picture {
        id: "client-outcomes".to_owned(),
        title: format!("What is kept after everything; {} is advised", super::sheet::small(first)),
        description: "One bar for each course, from the amount that one way in ten stays below to the amount that one in \
                      ten goes above; the line in it is the middle."
            .to_owned(),
        width: 320.0,
        height: TOP + ROW * courses.len() as f64,
        marks,
        table: Table {
            caption: "Kept after everything".to_owned(),
            columns: ["Course", "1 in 10 less", "Middle", "1 in 10 more"]
                .map(str::to_owned)
                .to_vec(),
            rows: courses
                .iter()
                .map(|c| {
                    vec![
                        c.name.clone(),
                        paper.money(c.net.p10),
                        paper.money(c.net.p50),
                        paper.money(c.net.p90),
                    ]
                })
                .collect(),
        },
    }
}

fn tenths(x: f64) -> f64 {
    (10.0 * x).round() / 10.0
}

fn questions(paper: &Paper) -> Block {
    let asked = paper
        .report
        .options
        .iter()
        .filter(|o| !matches!(&*o.outcome, "not_needed" | "never" | "barred"))
        .map(|o| format!("{}: {}", o.name, o.ask))
        .collect();
    Block::section(
        "client.questions",
        "Questions to ask whoever would do the work",
        vec![
            Block::List { items: asked },
            Block::para(
                "For any work: who does it, what is written down before and after, what is given back, and what you \
                 would have to tell a buyer.",
            ),
        ],
    )
}

fn sign() -> Block {
    let lines = |label: &str, count| Block::Lines {
        label: label.to_owned(),
        count,
    };
    Block::section(
        "client.sign",
        "Choose and sign",
        vec![
            lines("What I choose", 2),
            lines("What I have been told is lost for good by it", 2),
            lines("What I do not want done", 1),
            lines("Photographs taken before the work, by whom", 1),
            lines("Owner, with date", 1),
            lines("Workshop, with date", 1),
        ],
    )
}
