//! Every treatment: what the rules say about it for this piece, what it loses for good, who may do it, what
//! to ask, and its cautions.

use super::Subject;
use super::ask::choice;
use super::block::{Block, Table, Tone};
use super::caution_blocks;
use super::number_text::figures;
use super::standing::Standing;
use super::wording::catalogue as words;
use leavewell_model::counsel::caution_list::{cautions_for, hazards_of};
use leavewell_model::counsel::{Solved, mishap_figures};
use leavewell_model::ledger::{
    FigureId, Lifts, Risk, catalogue_text, guard_texts, soft_rules, source,
};
use leavewell_model::record::{Draft, QUESTIONS, is_enough_to_advise};
use leavewell_model::report::Report;
use leavewell_model::terms::Kind;
use leavewell_model::terms::Treatment;
use leavewell_model::terms::{any_of, capital};
use leavewell_model::treatment::{Outcome, Situation, Verdict, check, worst};
use leavewell_model::value::Class;

/// The five treatments people ask about most. They come first.
const FIRST: [Treatment; 5] = [
    Treatment::Leave,
    Treatment::Clean,
    Treatment::Solder,
    Treatment::RemoveLead,
    Treatment::Replate,
];

/// Builds the page.
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    blocks(subject.draft(), subject.solved(), subject.report())
}

fn blocks(draft: &Draft, solved: &Solved, report: &Report) -> Vec<Block> {
    let s = &solved.situation();
    let verdicts: Vec<(Treatment, Vec<Verdict>)> = Treatment::ALL
        .into_iter()
        .map(|t| (t, check(t, s)))
        .collect();
    let mut blocks = vec![Block::said(Tone::Answer, summary(report))];
    if !verdicts
        .iter()
        .any(|(t, v)| touches(*t) && worst(v).can_be_advised())
    {
        blocks.extend(caution_blocks::named("caution.fallback"));
    }
    blocks.push(questions(draft));
    blocks.push(hazards(s));
    let entry = |t: &Treatment| {
        let (_, v) = verdicts.iter().find(|(known, _)| known == t)?;
        Some(treatment(*t, v, solved, report))
    };
    blocks.extend(FIRST.iter().filter_map(entry));
    let rest: Vec<Block> = Treatment::ALL
        .iter()
        .filter(|t| !FIRST.contains(t))
        .filter_map(entry)
        .collect();
    blocks.push(Block::fold("catalogue.rest", words::EVERYTHING_ELSE, rest));
    blocks.push(rules());
    blocks.extend(caution_blocks::foot("catalogue"));
    blocks
}

/// Whether the treatment changes the piece itself.
fn touches(t: Treatment) -> bool {
    !matches!(
        t,
        Treatment::Leave | Treatment::Keeping | Treatment::TestLead
    )
}

/// How many treatments stand where, by the word each of them carries below.
fn summary(report: &Report) -> String {
    let standings: Vec<Standing> = report
        .options
        .iter()
        .map(|option| Standing::of(option, report))
        .collect();
    let count = |wanted: &[Standing]| standings.iter().filter(|s| wanted.contains(s)).count();
    words::summary(
        standings.len(),
        count(&[Standing::Advised, Standing::Possible]),
        count(&[Standing::NeedsCheck, Standing::NeedsOpinion]),
        count(&[Standing::Barred, Standing::Never]),
        count(&[Standing::NotNeeded]),
    )
}

fn questions(draft: &Draft) -> Block {
    let fields = QUESTIONS
        .iter()
        .map(|(path, label)| choice(draft, path, label, "", &words::ANSWERS).0)
        .collect();
    Block::fold("catalogue.questions", words::QUESTIONS, fields)
}

/// Cautions that hold whatever is done: for everyone, and for what is recorded.
fn hazards(s: &Situation) -> Block {
    // The catalogue names work that can involve lead, cyanide and solvents, so the child block always comes
    // first.
    let mut ids = vec!["caution.child".to_owned()];
    ids.extend(cautions_for(&[], s).into_iter().map(|c| c.id));
    if !s.triggers().is_empty() {
        ids.push("caution.display_only".to_owned());
    }
    Block::section(
        "catalogue.hazards",
        words::WHATEVER_IS_DONE,
        ids.iter()
            .filter_map(|id| caution_blocks::named(id))
            .collect(),
    )
}

fn treatment(t: Treatment, verdicts: &[Verdict], solved: &Solved, report: &Report) -> Block {
    let s = &solved.situation();
    let text = t.text();
    let standing = report
        .options
        .iter()
        .find(|option| option.treatment == t)
        .map_or("", |option| match Standing::of(option, report) {
            Standing::Advised if !is_enough_to_advise(solved.case()) => Standing::Possible.word(),
            standing => standing.word(),
        });
    let mut blocks = vec![
        Block::said(Tone::Answer, format!("{standing}.")),
        Block::para(text.plain),
    ];
    if let Some(why) = solved.not_needed(t) {
        blocks.push(Block::said(Tone::Quiet, words::nothing_to_do(why)));
    }
    if !verdicts.is_empty() {
        blocks.push(Block::List {
            items: verdicts.iter().map(verdict_text).collect(),
        });
    }
    blocks.extend(caution_blocks::of_treatment(t));
    blocks.extend(
        hazards_of(t, s)
            .into_iter()
            .filter_map(caution_blocks::named),
    );
    // Facts that decide are always visible; the rest is folded.
    let mut rows = facts(t, s);
    let rest = rows.split_off(rows.len().min(3));
    blocks.push(Block::Facts { rows });
    blocks.push(Block::fold(
        &format!("catalogue.{}.more", t.id()),
        words::MORE,
        vec![Block::Facts { rows: rest }],
    ));
    let more = catalogue_text(t.id());
    let mut ask = vec![text.ask.to_owned()];
    ask.extend(
        more.iter()
            .flat_map(|m| &m.ask)
            .map(|question| (*question).to_owned()),
    );
    blocks.push(Block::fold(
        &format!("catalogue.{}.ask", t.id()),
        words::ASK,
        vec![Block::List { items: ask }],
    ));
    let against: Vec<String> = more
        .iter()
        .flat_map(|m| &m.soft)
        .map(|rule| rule.words.to_owned())
        .collect();
    if !against.is_empty() {
        blocks.push(Block::fold(
            &format!("catalogue.{}.against", t.id()),
            words::AGAINST,
            vec![Block::List { items: against }],
        ));
    }
    Block::section(&format!("catalogue.{}", t.id()), text.name, blocks)
}

fn verdict_text(v: &Verdict) -> String {
    let rule = v
        .ground
        .rule()
        .map_or_else(String::new, |id| format!(" ({id})"));
    let lead = match v.outcome {
        Outcome::Conditional => words::ON_CONDITION,
        Outcome::Barred => words::WOULD_CHANGE,
        // These outcomes already say what comes first.
        Outcome::Allowed | Outcome::NeedsCheck | Outcome::NeedsOpinion => "",
    };
    format!("{}{rule} {lead}{}", v.reason, v.lifted_by)
}

fn facts(t: Treatment, s: &Situation) -> Vec<(String, String)> {
    let text = t.text();
    let mut rows = vec![
        (words::LOST.to_owned(), format!("{}.", text.lost)),
        (
            words::CAN_IT_BE_UNDONE.to_owned(),
            format!(
                "{} ({}).",
                capital(t.reversibility().words()),
                t.reversibility().code()
            ),
        ),
        (words::WHO.to_owned(), who(text.who)),
        (
            words::EFFORT.to_owned(),
            words::effort(text.effort).to_owned(),
        ),
        (
            words::SORT_OF_WORK.to_owned(),
            format!("{}.", capital(text.class)),
        ),
    ];
    let Some(more) = catalogue_text(t.id()) else {
        return rows;
    };
    for (name, words) in [
        (words::NEEDS, more.needs),
        (words::NOT_WITH, more.not_with),
        (words::CHANGES, more.does),
        (words::CAN_GO_WRONG, more.bad),
        (words::CARE, more.care),
    ] {
        rows.push((name.to_owned(), words.to_owned()));
    }
    for line in risks(t, &more.risks, s) {
        rows.push((words::BAD_RESULT.to_owned(), line));
    }
    rows
}

fn who(letters: &str) -> String {
    let named: Vec<&str> = letters.split('/').filter_map(words::doer).collect();
    if named.is_empty() {
        words::NOBODY.to_owned()
    } else {
        format!("{}.", capital(&any_of(&named)))
    }
}

/// Chance and size of a bad result, one line for each sort of piece that this one may well be.
fn risks(t: Treatment, by_sort: &[Risk; 5], s: &Situation) -> Vec<String> {
    let least = s.ledger.value(FigureId::GUARD_KIND_CHECK);
    let mut lines = Vec::new();
    for (sort, (name, kinds)) in SORTS.iter().enumerate() {
        if s.posterior.of_any(kinds) < least {
            continue;
        }
        let risk = by_sort.get(sort).copied().unwrap_or(Risk::None);
        let found = match risk {
            Risk::None => {
                lines.push(words::no_risk(name));
                continue;
            }
            Risk::Class(chance, size) => s
                .ledger
                .find(&format!("hazard.class.{chance}.p"))
                .zip(s.ledger.find(&format!("hazard.class.{size}.kept"))),
            Risk::Ledger => mishap_figures(t, likeliest_class(kinds, s))
                .map(|(p, kept)| (s.ledger.figure(p), s.ledger.figure(kept))),
        };
        lines.extend(found.map(|(p, kept)| {
            words::risk(
                name,
                &figures(100.0 * p.value),
                &figures(100.0 * p.low),
                &figures(100.0 * p.high),
                100.0 * kept.value,
                &capital(p.tag.words()),
            )
        }));
    }
    lines
}

/// The class of value of the likeliest of these kinds, whose figures the weighing uses.
fn likeliest_class(kinds: &[Kind], s: &Situation) -> Class {
    let most = kinds
        .iter()
        .copied()
        .max_by(|a, b| s.posterior.of(*a).total_cmp(&s.posterior.of(*b)));
    // Early and later pieces go wrong alike.
    Class::of(most.unwrap_or(Kind::Out), false, s.case.piece.documented)
}

/// Sorts of piece that share their risks.
const SORTS: [(&str, &[Kind]); 5] = [
    (words::FUSED, &[Kind::Fps, Kind::Fpd, Kind::Fpn, Kind::Rfp]),
    (words::CLOSE, &[Kind::Clp, Kind::Frp]),
    (words::NICKEL_SILVER, &[Kind::Ens, Kind::Est]),
    (words::BRITANNIA, &[Kind::Ebm]),
    (
        words::OTHER,
        &[
            Kind::Ecu,
            Kind::Rep,
            Kind::Ucu,
            Kind::Uns,
            Kind::Ubm,
            Kind::Ncp,
            Kind::Out,
            Kind::Sil,
            Kind::Wst,
        ],
    ),
];

/// All rules, with the sources they rest on.
fn rules() -> Block {
    let hard = guard_texts()
        .iter()
        .map(|g| {
            vec![
                g.id.text().to_owned(),
                g.rule.to_owned(),
                match g.lifts {
                    Lifts::Knowledge => words::A_TEST,
                    Lifts::Work => words::WORK_FIRST,
                    Lifts::Opinion => words::AN_OPINION,
                    Lifts::Consent => words::CONSENT,
                    Lifts::Nothing => words::NOTHING,
                }
                .to_owned(),
                source(g.source).map_or("", |s| s.citation).to_owned(),
            ]
        })
        .collect();
    let soft = soft_rules()
        .iter()
        .map(|r| {
            vec![
                r.words.to_owned(),
                if r.weighed {
                    words::WEIGHED
                } else {
                    words::SAID_ONLY
                }
                .to_owned(),
                source(r.source).map_or("", |s| s.citation).to_owned(),
            ]
        })
        .collect();
    Block::fold(
        "catalogue.rules",
        words::RULES,
        vec![
            Block::para(words::HOW_RULES_WORK),
            Block::Table(Table {
                caption: words::HARD.to_owned(),
                columns: words::HARD_COLUMNS.map(str::to_owned).to_vec(),
                rows: hard,
            }),
            Block::Table(Table {
                caption: words::SOFT.to_owned(),
                columns: words::SOFT_COLUMNS.map(str::to_owned).to_vec(),
                rows: soft,
            }),
        ],
    )
}
