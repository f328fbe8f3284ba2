//! The sheet for a client: the options in plain words, what they cost and take away, and room to choose and
//! sign.

use super::Subject;
use super::block::{Block, Table, Tone};
use super::sentence::and;
use super::sheet::{Paper, head, listed, missing};
use super::sheet_buyer::{is_of_the_piece, quoted_mark};
use super::sheet_cautions::cautions_of;
use super::sheet_glossary::word_list;
use super::sheet_photos::{of_parts, of_piece};
use super::sheet_places::{placed, summed};
use super::sheet_proposal::proposed;
use super::wording::sheet_buyer::marked;
use super::wording::sheet_client as words;
use leavewell_model::ledger::caution;
use leavewell_model::record::bears_on_hazards;
use leavewell_model::report::{
    CautionReport, ChangeReport, CounselReport, CourseReport, OptionOutcome, OptionReport, Text,
    VerdictReport,
};
use leavewell_model::terms::{Currency, Outcome, Treatment, small, sum};
use leavewell_model::terms::{any_of, capital};

/// Builds the page: what is signed in front, and behind it everything it rests on.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let paper = Paper::new(subject).with_changes();
    let mut blocks = head(&paper, &paper.name(), words::FOR_THE_CLIENT);
    if paper.too_little() {
        blocks.push(Block::said(Tone::Answer, words::TOO_LITTLE));
        blocks.push(Block::para(
            caution("caution.fallback").map_or("", |c| c.text),
        ));
        blocks.extend(marks_as_read(&paper));
        blocks.extend(missing(&paper, "client.missing"));
        blocks.extend(paper.history("client.done"));
    } else {
        blocks.push(the_piece(&paper));
        blocks.extend(condition(&paper));
        blocks.push(advice(&paper));
        blocks.extend(proposed(&paper, "client.proposal"));
        blocks.extend(steps(&paper, "client.steps"));
        blocks.push(sign(&paper));
        blocks.push(Block::section(
            "client.behind",
            words::BEHIND,
            vec![Block::para(words::BEHIND_MEANS)],
        ));
        blocks.extend(more_photos(&paper));
        blocks.push(reasons(&paper));
        blocks.extend(missing(&paper, "client.missing"));
        blocks.push(what_it_is(&paper));
        blocks.push(options(&paper));
        blocks.push(money(&paper));
        blocks.extend(paper.history("client.done"));
        blocks.push(questions(&paper));
    }
    let child = paper.case.aim.household_child_or_pregnant;
    let wanted = |c: &CautionReport| bears_on_hazards(paper.case) || is_of_the_piece(c);
    blocks.push(cautions_of(&paper.report, wanted, paper.named(), child));
    blocks.push(word_list(&blocks, paper.ledger));
    blocks.push(Block::section(
        "client.made",
        words::RESTS_ON,
        vec![Block::Facts {
            rows: paper.made_from(),
        }],
    ));
    blocks
}

/// What the piece is, in a few lines.
fn the_piece(paper: &Paper) -> Block {
    let mut rows = vec![(words::FORM.to_owned(), paper.public_name())];
    rows.push((
        words::WHAT_IT_IS.to_owned(),
        paper.report.identity.sentence.clone(),
    ));
    let marks: Vec<String> = paper.case.marks.iter().map(quoted_mark).collect();
    let mut add = |name: &str, text: String| {
        if !text.is_empty() {
            rows.push((name.to_owned(), text));
        }
    };
    add(words::MARKS, and(&marks));
    add(words::SIZE, paper.size());
    let mut blocks = vec![Block::Facts { rows }];
    // One photograph leads the sheet; the rest stand behind, so that what is signed stays on two pages.
    blocks.splice(0..0, of_piece(paper, "client.photo", 0..1));
    Block::section("client.piece", words::THE_PIECE, blocks)
}

/// The photographs that do not lead the sheet; `None` where there is none.
fn more_photos(paper: &Paper) -> Option<Block> {
    let mut blocks = of_piece(paper, "client.photos", 1..usize::MAX);
    blocks.extend(of_parts(paper, "client.photos"));
    (!blocks.is_empty()).then(|| Block::section("client.pictures", words::PHOTOS, blocks))
}

/// The faults with their parts, and the parts nobody looked at; `None` if nothing is recorded of either.
fn condition(paper: &Paper) -> Option<Block> {
    let mut rows: Vec<(String, String)> = paper
        .report
        .faults
        .iter()
        .map(|fault| {
            let parts: Vec<String> = fault.parts.iter().map(|part| small(part.label())).collect();
            let parts = if parts.is_empty() {
                words::THE_WHOLE.to_owned()
            } else {
                and(&parts)
            };
            (fault.name.clone(), parts)
        })
        .collect();
    let shown = summed(&placed(paper.case));
    if !shown.is_empty() {
        rows.push((words::PLACED.to_owned(), shown.join("; ")));
    }
    let unseen: Vec<String> = paper
        .parts_not_looked_at()
        .iter()
        .map(|p| small(p))
        .collect();
    if !paper.case.parts.is_empty() && !unseen.is_empty() {
        rows.push((words::NOT_LOOKED_AT.to_owned(), and(&unseen)));
    }
    (!rows.is_empty()).then(|| {
        Block::section(
            "client.condition",
            words::CONDITION,
            vec![Block::Facts { rows }],
        )
    })
}

/// The advice, and what the piece may not be used for.
fn advice(paper: &Paper) -> Block {
    let counsel = &paper.report.counsel;
    let mut blocks = vec![
        Block::said(Tone::Answer, &counsel.sentence),
        Block::para(counsel.firmness_words.clone()),
    ];
    blocks.extend(paper.against_the_screen());
    if counsel.refer {
        blocks.push(Block::said(
            Tone::Note,
            words::specialist_first(&counsel.refer_why.join(" ")),
        ));
    }
    if paper.report.display_only.yes {
        blocks.push(Block::said(Tone::Stop, paper.report.display_only.label));
    }
    Block::section("client.answer", words::ANSWER, blocks)
}

/// The steps advised, each with price, time, loss and risk; empty where nothing is to be done.
pub(super) fn steps(paper: &Paper, id: &str) -> Option<Block> {
    let advised = &paper.report.counsel.steps;
    let of = |step: &Treatment| paper.report.options.iter().find(|o| o.treatment == *step);
    let chosen: Vec<&OptionReport> = advised
        .iter()
        .filter_map(of)
        .filter(|option| option.treatment != Treatment::Leave)
        .collect();
    if chosen.is_empty() {
        return None;
    }
    let mut rows = Vec::new();
    let mut risks = Vec::new();
    for option in &chosen {
        let mut quotes = paper.case.quotes.iter();
        let quote = quotes.find(|quote| quote.treatments.contains(&option.treatment));
        let hours = quote.and_then(|quote| quote.hours);
        rows.push(vec![
            option.name.to_string(),
            price(paper, option),
            hours.map_or_else(|| words::NOT_SAID.to_owned(), |hours| sum("", hours)),
            option.lost.to_string(),
            who(&option.who),
        ]);
        risks.extend(
            option
                .verdicts
                .iter()
                .map(|verdict| words::of_step(&option.name, &verdict.reason, &verdict.lifted_by)),
        );
    }
    let mut blocks = vec![Block::Table(Table {
        caption: words::STEPS.to_owned(),
        columns: words::STEP_COLUMNS.map(str::to_owned).to_vec(),
        rows,
    })];
    blocks.extend(listed(words::CONDITIONS, &risks));
    Some(Block::section(id, words::STEPS_TITLE, blocks))
}

/// What a treatment costs, and whether that was quoted.
fn price(paper: &Paper, option: &OptionReport) -> String {
    let band = paper.money_band(option.cost);
    let quote = paper.case.quote(option.treatment);
    if let Some(quote) = quote.filter(|_| option.quoted) {
        let sign = paper.case.market.currency.unwrap_or(Currency::Other).sign();
        let asked = match (quote.low, quote.high) {
            (Some(low), Some(high)) => words::from_to(&sum(sign, low), &sum(sign, high)),
            _ => sum(sign, quote.likely),
        };
        if quote.fixed {
            words::as_quoted_fixed(&asked)
        } else {
            let [low, high] = [option.cost.p10, option.cost.p90].map(|x| paper.money(x));
            words::as_quoted(&asked, &words::from_to(&low, &high))
        }
    } else if option.quoted {
        words::from_a_quote(&band)
    } else if option.cost.p90 < 0.5 {
        band
    } else {
        words::not_quoted(&band)
    }
}

/// Why, what keeps the answer from being firmer, and what would change it.
fn reasons(paper: &Paper) -> Block {
    let counsel = &paper.report.counsel;
    let reasons: Vec<String> = counsel.reasons.iter().map(|r| r.text.clone()).collect();
    let mut blocks = vec![Block::List { items: reasons }];
    blocks.extend(listed(words::DOUBTS, &counsel.doubts));
    blocks.extend(would_change(counsel));
    if paper.report.display_only.yes {
        blocks.extend(listed(
            words::WHY_DISPLAY_ONLY,
            &paper.report.display_only.why,
        ));
    }
    Block::section("client.reasons", words::REASONS, blocks)
}

/// What would change the answer, if this was worked out.
pub(super) fn would_change(counsel: &CounselReport) -> Vec<Block> {
    let (turn, idle): (Vec<&ChangeReport>, Vec<&ChangeReport>) =
        (counsel.would_change.iter()).partition(|c| c.flips_at.is_some());
    let mut changes: Vec<String> = turn.iter().map(|c| c.text.clone()).collect();
    let idle: Vec<String> = idle.iter().map(|c| c.name.clone()).collect();
    if !idle.is_empty() {
        let names = any_of(&idle);
        changes.push(words::changes_nothing(&names));
    }
    listed(words::WOULD_CHANGE, &changes)
}

fn what_it_is(paper: &Paper) -> Block {
    let identity = &paper.report.identity;
    let mut blocks = vec![Block::para(&identity.sentence)];
    let rows: Vec<(String, String)> = identity
        .family_bars
        .iter()
        .filter(|f| paper.worth_telling(f.p) && !identity.nothing_found)
        .map(|f| {
            (
                f.name.to_string(),
                format!("{}. {}", capital(paper.in_words(f.p)), f.meaning),
            )
        })
        .collect();
    if !rows.is_empty() {
        blocks.push(Block::Facts { rows });
    }
    if let Some(dates) = &identity.dates {
        blocks.push(Block::para(words::made_in(
            &dates.in_words(),
            dates.given.map(Text::get),
            &words::outside_the_years(dates.is_open(), dates.is_conditional),
        )));
    }
    blocks.extend(marks_as_read(paper));
    Block::section("client.identity", words::WHAT_IT_IS, blocks)
}

/// The marks as typed, and which of their words nobody has confirmed.
fn marks_as_read(paper: &Paper) -> Vec<Block> {
    let mut blocks = Vec::new();
    let marks: Vec<String> = paper.case.marks.iter().map(quoted_mark).collect();
    if !marks.is_empty() {
        blocks.push(Block::para(marked(&and(&marks))));
    }
    blocks.extend(unconfirmed(paper));
    blocks
}

/// Which words of the marks count for nothing until they are confirmed.
pub(super) fn unconfirmed(paper: &Paper) -> Option<Block> {
    let waiting = &paper.report.identity.unconfirmed;
    (!waiting.is_empty()).then(|| Block::said(Tone::Note, words::unconfirmed(waiting)))
}

/// What could be done, side by side, and in a line each what is advised against. What is not needed and what never
/// suits such pieces is only named.
fn options(paper: &Paper) -> Block {
    let (mut rows, mut conditions, mut against) = (Vec::new(), Vec::new(), Vec::new());
    let (mut idle, mut never) = (Vec::new(), Vec::new());
    for option in &paper.report.options {
        let of_step = |v: &VerdictReport| words::of_step(&option.name, &v.reason, &v.lifted_by);
        let verdicts = &option.verdicts;
        match option.outcome {
            OptionOutcome::NotNeeded => idle.push(small(&option.name)),
            OptionOutcome::Never => never.push(small(&option.name)),
            OptionOutcome::Barred => {
                let bars = verdicts.iter().filter(|v| v.outcome == Outcome::Barred);
                against.extend(bars.map(|v| {
                    let lifted = if v.lifted_by.is_empty() {
                        v.reason.clone()
                    } else {
                        words::lifted_by(&v.reason, &v.lifted_by)
                    };
                    words::of_step(&option.name, &lifted, "")
                }));
            }
            _ => {
                rows.push(vec![
                    words::of_step(&option.name, option.plain.get(), ""),
                    price(paper, option),
                    option.lost.to_string(),
                    option.reversibility_words.to_string(),
                    who(&option.who),
                ]);
                conditions.extend(verdicts.iter().map(of_step));
            }
        }
    }
    let mut blocks = vec![Block::Table(Table {
        caption: words::CAN_BE_DONE.to_owned(),
        columns: words::OPTION_COLUMNS.map(str::to_owned).to_vec(),
        rows,
    })];
    blocks.extend(listed(words::CONDITIONS, &conditions));
    blocks.extend(listed(words::AGAINST, &against));
    for (lead, names) in [(words::NOT_NEEDED, idle), (words::NEVER, never)] {
        if !names.is_empty() {
            blocks.push(Block::para(words::of_step(
                lead,
                &[and(&names), ".".to_owned()].concat(),
                "",
            )));
        }
    }
    Block::section("client.options", words::OPTIONS, blocks)
}

/// The verdicts of the rules: the reason, and what would lift it or what it asks for.
pub(super) fn verdicts(list: &[VerdictReport]) -> Vec<(String, String)> {
    list.iter()
        .map(|v| {
            let text = if v.lifted_by.is_empty() {
                v.reason.clone()
            } else if v.outcome == Outcome::Barred {
                words::lifted_by(&v.reason, &v.lifted_by)
            } else {
                words::asked_for(&v.reason, &v.lifted_by)
            };
            (words::outcome(v.outcome.into()).to_owned(), text)
        })
        .collect()
}

/// Who may do it, from the letters in the catalogue.
pub(super) fn who(letters: &str) -> String {
    let words: Vec<&str> = letters.split('/').map(words::doer).collect();
    any_of(&words)
}

fn money(paper: &Paper) -> Block {
    let value = &paper.report.value;
    let mut blocks = vec![
        Block::Facts {
            rows: vec![
                (
                    words::UNDAMAGED.to_owned(),
                    paper.money_band(value.undamaged),
                ),
                (words::AS_IT_IS.to_owned(), paper.money_band(value.as_it_is)),
                (
                    words::SELLER_KEEPS.to_owned(),
                    paper.money_band(value.net_as_it_is),
                ),
            ]
            .into_iter()
            .chain(paper.pieces_rows())
            .collect(),
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
    blocks.push(Block::Table(course_table(paper, &shown)));
    if paper.report.has_oftener_unbeaten_plan() {
        blocks.push(Block::said(Tone::Quiet, words::MORE_OFTEN));
    }
    Block::section("client.money", words::MONEY, blocks)
}

/// One row per course: what is left after costs, the gain over leaving it, and the chance that nothing does
/// better.
pub(super) fn course_table(paper: &Paper, courses: &[&CourseReport]) -> Table {
    let rows = courses
        .iter()
        .map(|c| {
            let net = leavewell_model::report::Band {
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
                leavewell_model::terms::percent(c.originality),
            ]
        })
        .collect();
    Table {
        caption: words::COURSES.to_owned(),
        columns: words::COURSE_COLUMNS.map(str::to_owned).to_vec(),
        rows,
    }
}

fn questions(paper: &Paper) -> Block {
    let asked = paper
        .report
        .options
        .iter()
        .filter(|o| o.outcome < OptionOutcome::NotNeeded)
        .map(|o| format!("{}: {}", o.name, o.ask))
        .collect();
    Block::section(
        "client.questions",
        words::QUESTIONS,
        vec![
            Block::List { items: asked },
            Block::para(words::FOR_ANY_WORK),
        ],
    )
}

/// The place to sign. It stands whole on one page.
fn sign(paper: &Paper) -> Block {
    let lines = |label: &str, count| Block::Lines {
        label: label.to_owned(),
        count,
    };
    let day = paper.day().unwrap_or_else(|| words::NOT_SAID.to_owned());
    Block::section(
        "client.sign",
        words::SIGN,
        vec![
            Block::para(words::valid(&day)),
            lines(words::CHOICE, 2),
            lines(words::NOT_WANTED, 1),
            Block::para(words::LOSS_EXPLAINED),
            lines(words::OWNER, 1),
            lines(words::WORKSHOP, 1),
        ],
    )
}
