//! Every treatment there is, with what the rules say of it for this piece, what is lost for good, who
//! may do it, what to ask, and its cautions beside it.

use super::ask::choice;
use super::block::{Block, Table, Tone};
use super::caution_blocks;
use super::say::figures;
use crate::case::Draft;
use crate::counsel::caution_list::cautions_for;
use crate::counsel::course::not_needed;
use crate::counsel::situated;
use crate::facts::{Risk, catalogue_text, guard_text, guard_texts, soft_rule, soft_rules, source};
use crate::identity::Kind;
use crate::small::capital;
use crate::treatment::{
    Circumstances, Outcome, QUESTIONS, Situation, Treatment, Verdict, check_fully, worst,
};

/// The five that people ask about, first.
const FIRST: [Treatment; 5] = [
    Treatment::Leave,
    Treatment::Clean,
    Treatment::Solder,
    Treatment::RemoveLead,
    Treatment::Replate,
];

/// The page.
pub(super) fn page(draft: &Draft) -> Vec<Block> {
    let (case, _) = draft.read();
    let circumstances = Circumstances::of(draft);
    situated(&case, |s| blocks(draft, s, circumstances))
}

fn blocks(draft: &Draft, s: &Situation, c: Circumstances) -> Vec<Block> {
    let verdicts: Vec<(Treatment, Vec<Verdict>)> = Treatment::ALL
        .into_iter()
        .map(|t| (t, check_fully(t, s, &c)))
        .collect();
    let mut blocks = vec![Block::said(Tone::Answer, summary(&verdicts))];
    if !verdicts
        .iter()
        .any(|(t, v)| touches(*t) && worst(v).can_be_advised())
    {
        blocks.extend(caution_blocks::named("caution.fallback"));
    }
    blocks.push(questions(draft));
    blocks.push(hazards(s, c));
    let entry = |t: &Treatment| {
        let (_, v) = verdicts.iter().find(|(known, _)| known == t)?;
        Some(treatment(*t, v, s))
    };
    blocks.extend(FIRST.iter().filter_map(entry));
    let rest: Vec<Block> = Treatment::ALL
        .iter()
        .filter(|t| !FIRST.contains(t))
        .filter_map(entry)
        .collect();
    blocks.push(Block::fold(
        "catalogue.rest",
        "Everything else that could be done",
        rest,
    ));
    blocks.push(rules());
    blocks.extend(caution_blocks::foot("catalogue"));
    blocks
}

/// Whether anything is done to the piece itself.
fn touches(t: Treatment) -> bool {
    !matches!(
        t,
        Treatment::Leave | Treatment::Keeping | Treatment::TestLead
    )
}

fn summary(verdicts: &[(Treatment, Vec<Verdict>)]) -> String {
    let count =
        |wanted: fn(Outcome) -> bool| verdicts.iter().filter(|(_, v)| wanted(worst(v))).count();
    let open = count(Outcome::can_be_advised);
    let first = count(|o| matches!(o, Outcome::NeedsCheck | Outcome::NeedsOpinion));
    let barred = count(|o| o == Outcome::Barred);
    format!(
        "Of {} things that could be done to it, {open} are open, {first} want a check or an opinion first, and {barred} \
         are out. Leaving it alone and keeping it better are always open; so is asking a conservator.",
        verdicts.len()
    )
}

fn questions(draft: &Draft) -> Block {
    let fields = QUESTIONS
        .iter()
        .map(|(path, label)| {
            choice(
                draft,
                path,
                label,
                "",
                &[("", "Not known"), ("yes", "Yes"), ("no", "No")],
            )
            .0
        })
        .collect();
    Block::fold(
        "catalogue.questions",
        "A few things no other screen asks",
        fields,
    )
}

/// Cautions for everybody and for what is recorded, whatever is done.
fn hazards(s: &Situation, c: Circumstances) -> Block {
    // The catalogue names what can bring lead, cyanide and solvent, so children come first, always.
    let mut ids = vec!["caution.child".to_owned()];
    ids.extend(cautions_for(&[], s).into_iter().map(|c| c.id));
    for (holds, id) in [
        (c.hard_repair, "caution.cadmium"),
        (c.insulator, "caution.asbestos"),
        (c.fire_gilding, "caution.mercury"),
        (c.ammonia, "caution.ammonia"),
    ] {
        if holds == Some(true) && !ids.iter().any(|known| known == id) {
            ids.push(id.to_owned());
        }
    }
    if !s.triggers().is_empty() {
        ids.push("caution.display_only".to_owned());
    }
    Block::section(
        "catalogue.hazards",
        "Whatever is done",
        ids.iter()
            .filter_map(|id| caution_blocks::named(id))
            .collect(),
    )
}

fn treatment(t: Treatment, verdicts: &[Verdict], s: &Situation) -> Block {
    let text = t.text();
    let mut blocks = vec![
        Block::said(Tone::Answer, verdict_words(worst(verdicts))),
        Block::para(text.plain),
    ];
    if let Some(why) = not_needed(t, s) {
        blocks.push(Block::said(
            Tone::Quiet,
            format!("It has nothing to do here as far as recorded. {why}"),
        ));
    }
    if !verdicts.is_empty() {
        blocks.push(Block::List {
            items: verdicts.iter().map(told).collect(),
        });
    }
    blocks.extend(caution_blocks::of_treatment(t));
    // What decides stands open; the rest is for whoever looks closer.
    let mut rows = facts(t, s);
    let rest = rows.split_off(rows.len().min(3));
    blocks.push(Block::Facts { rows });
    blocks.push(Block::fold(
        &format!("catalogue.{}.more", t.id()),
        "Effort, what it needs, what changes, what can go wrong",
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
        "What to ask whoever would do it",
        vec![Block::List { items: ask }],
    ));
    let against: Vec<String> = more
        .iter()
        .flat_map(|m| &m.soft)
        .filter_map(|id| soft_rule(id))
        .map(|rule| rule.words.to_owned())
        .collect();
    if !against.is_empty() {
        blocks.push(Block::fold(
            &format!("catalogue.{}.against", t.id()),
            "What else counts for or against it",
            vec![Block::List { items: against }],
        ));
    }
    Block::section(&format!("catalogue.{}", t.id()), text.name, blocks)
}

fn verdict_words(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Allowed => "Open: no rule speaks against it.",
        Outcome::Conditional => "Open, on conditions.",
        Outcome::NeedsCheck => "Not yet: a check comes first.",
        Outcome::NeedsOpinion => "Not yet: a conservator's written opinion comes first.",
        Outcome::Barred => "Out, for this piece as recorded.",
    }
}

fn told(v: &Verdict) -> String {
    let rule = guard_text(v.guard).map_or_else(String::new, |g| format!(" ({})", g.id));
    let lead = match v.outcome {
        Outcome::Conditional => "On condition: ",
        Outcome::Barred => "What would change that: ",
        // Those say by themselves what comes first.
        Outcome::Allowed | Outcome::NeedsCheck | Outcome::NeedsOpinion => "",
    };
    format!("{}{rule} {lead}{}", v.reason, v.lifted_by)
}

fn facts(t: Treatment, s: &Situation) -> Vec<(String, String)> {
    let text = t.text();
    let mut rows = vec![
        ("Lost for good".to_owned(), format!("{}.", text.lost)),
        (
            "Can it be undone".to_owned(),
            format!(
                "{} ({}).",
                capital(t.reversibility().words()),
                t.reversibility().code()
            ),
        ),
        ("Who may do it".to_owned(), who(text.who)),
        ("Effort".to_owned(), effort(text.effort).to_owned()),
        (
            "Sort of work".to_owned(),
            format!("{}.", capital(text.class)),
        ),
    ];
    let Some(more) = catalogue_text(t.id()) else {
        return rows;
    };
    for (name, words) in [
        ("What it needs first", more.needs),
        ("What it may not meet", more.not_with),
        ("What changes", more.does),
        ("What can go wrong", more.bad),
        ("Bear in mind", more.care),
    ] {
        rows.push((name.to_owned(), words.to_owned()));
    }
    for line in risks(t, &more.risks, s) {
        rows.push(("Chance of a bad result".to_owned(), line));
    }
    rows
}

fn who(letters: &str) -> String {
    let named: Vec<&str> = letters
        .split('/')
        .filter_map(|letter| {
            Some(match letter {
                "O" => "the owner",
                "S" => "an experienced silversmith or plater",
                "C" => "a conservator of a professional body",
                "P" => "a permitted plating works",
                "L" => "an accredited laboratory",
                _ => return None,
            })
        })
        .collect();
    if named.is_empty() {
        "Nobody.".to_owned()
    } else {
        format!("{}.", capital(&named.join(", or ")))
    }
}

fn effort(code: &str) -> &'static str {
    match code {
        "E0" => "Minutes.",
        "E1" => "Under an hour.",
        "E2" => "One to four hours.",
        "E3" => "About a day.",
        _ => "Several days.",
    }
}

/// Chance and size of a bad result on the kinds that this piece may well be: one line for each sort.
fn risks(t: Treatment, by_sort: &[Risk; 5], s: &Situation) -> Vec<String> {
    let least = s.ledger.value("guard.kind_check");
    let mut lines = Vec::new();
    for (sort, (name, kinds)) in SORTS.iter().enumerate() {
        if s.posterior.of_any(kinds) < least {
            continue;
        }
        let risk = by_sort.get(sort).copied().unwrap_or(Risk::None);
        let ids = match risk {
            Risk::None => None,
            Risk::Class(chance, size) => Some((
                format!("hazard.class.{chance}.p"),
                format!("hazard.class.{size}.kept"),
            )),
            Risk::Ledger => {
                let group = GROUPS.get(sort).copied().unwrap_or("C4");
                Some((
                    format!("hazard.{}.{group}.p", t.id()),
                    format!("hazard.{}.{group}.kept", t.id()),
                ))
            }
        };
        let found = ids.and_then(|(p, kept)| s.ledger.find(&p).zip(s.ledger.find(&kept)));
        lines.push(match found {
            None => format!("If {name}: none to speak of."),
            Some((p, kept)) => format!(
                "If {name}: about {} in 100 ({} to {}), and then about {:.0} % of the worth is left. {}.",
                figures(100.0 * p.value),
                figures(100.0 * p.low),
                figures(100.0 * p.high),
                100.0 * kept.value,
                capital(p.tag.words())
            ),
        });
    }
    lines
}

/// Sorts of piece as far as what goes wrong is concerned.
const SORTS: [(&str, &[Kind]); 5] = [
    ("fused plate", &[Kind::Fps, Kind::Fpd, Kind::Fpn, Kind::Rfp]),
    ("close or French plate", &[Kind::Clp, Kind::Frp]),
    ("electroplated nickel silver", &[Kind::Ens]),
    ("electroplated Britannia metal", &[Kind::Ebm]),
    (
        "other electroplate",
        &[Kind::Ecu, Kind::Rep, Kind::Out, Kind::Sil],
    ),
];

/// Groups of the ledger's hazard figures for those sorts.
const GROUPS: [&str; 5] = ["A", "B", "C2", "C3", "C4"];

/// All rules with what they rest on.
fn rules() -> Block {
    let hard = guard_texts()
        .iter()
        .map(|g| {
            vec![
                g.id.to_owned(),
                g.rule.to_owned(),
                match g.lifts {
                    "knowledge" => "a test, a look or a measurement",
                    "work" => "something done first",
                    "opinion" => "a conservator's written opinion",
                    "consent" => "consent, photographs, the truth at sale",
                    _ => "nothing",
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
                    "weighed in the answer"
                } else {
                    "said here only"
                }
                .to_owned(),
                source(r.source).map_or("", |s| s.citation).to_owned(),
            ]
        })
        .collect();
    Block::fold(
        "catalogue.rules",
        "All the rules, what lifts each, and where they come from",
        vec![
            Block::para(
                "The letters in brackets above name a rule here. First people and law, then whether the piece would destroy itself, then ethics and evidence, then \
                 food. Rules only take away: their order changes which reason is told first, not what is left.",
            ),
            Block::Table(Table {
                caption: "Hard rules".to_owned(),
                columns: ["Rule", "What it says", "What lifts it", "Rests on"]
                    .map(str::to_owned)
                    .to_vec(),
                rows: hard,
            }),
            Block::Table(Table {
                caption: "What counts without barring".to_owned(),
                columns: ["What", "Where it counts", "Rests on"]
                    .map(str::to_owned)
                    .to_vec(),
                rows: soft,
            }),
        ],
    )
}
