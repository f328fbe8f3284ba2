//! The closer look: what knowing more is worth, the tree of tests and courses, attitude to risk, weights,
//! and which input moves the answer.

use super::Subject;
use super::closer_look::CloserLook;
use super::closer_samples::SCRAMBLES;
use super::sheet_cautions::with_cautions;
use super::wording::worth_knowing as words;
use super::worth_knowing_draw::{NamedBar, bars};
use super::{Block, Ink, Table, Tone, risk, weights, worth_knowing_tree};
use leavewell_model::counsel::{Shared, money};
use leavewell_model::decide::information::{
    of_answers_on_draws, of_everything, of_group, of_input,
};
use leavewell_model::decide::sensitivity::{share_explained, share_of_groups};
use leavewell_model::ledger::FigureId;
use leavewell_model::maths::mean;
use leavewell_model::record::is_enough_to_advise;
use leavewell_model::terms::ShortSort;
use leavewell_model::terms::Treatment;
use leavewell_model::terms::TreatmentSet;
use leavewell_model::terms::capital;
use leavewell_model::terms::{small, whole_percent};

/// Builds the page.
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    if !is_enough_to_advise(subject.case()) {
        let nothing = vec![Block::said(
            Tone::Note,
            super::wording::sheet_client::TOO_LITTLE,
        )];
        return with_cautions(subject.case(), TreatmentSet::default(), nothing);
    }
    let draft = subject.draft();
    let deep = CloserLook::new(subject);
    let mut blocks = Vec::new();
    if deep.shown.weights.is_some() {
        blocks.push(Block::said(Tone::Note, words::POINTS_AS_MONEY));
    }
    blocks.extend([
        worth_section(&deep),
        worth_knowing_tree::section(&deep),
        risk::section(&deep, draft),
        weights::section(&deep, draft),
        super::risk_tornado::section(&deep),
    ]);
    with_cautions(subject.case(), deep.shown.named, blocks)
}

/// Scores of the courses that no rule bars.
fn acts(s: &Shared) -> Vec<&[f64]> {
    s.courses
        .iter()
        .filter(|c| c.allowed)
        .map(|c| c.score.as_slice())
        .collect()
}

/// An unknown, and how its draws are grouped.
struct Unknown {
    name: &'static str,
    draws: fn(&Shared) -> InputDraws,
}

/// The draws of an input: a number or a group for each.
enum InputDraws {
    Number(Vec<f64>),
    Group(Vec<usize>),
}

const UNKNOWNS: [Unknown; 6] = [
    Unknown {
        name: words::KIND,
        draws: |s| InputDraws::Group(s.kind.clone()),
    },
    Unknown {
        name: words::UNDAMAGED,
        draws: |s| InputDraws::Number(s.undamaged.clone()),
    },
    Unknown {
        name: words::BLEED,
        draws: |s| InputDraws::Number(s.shown.clone()),
    },
    Unknown {
        name: words::LEAD,
        draws: |s| InputDraws::Group(s.lead.iter().map(|l| usize::from(*l)).collect()),
    },
    Unknown {
        name: words::COST,
        draws: |s| InputDraws::Number(s.cost.clone()),
    },
    Unknown {
        name: words::MISHAP,
        draws: |s| InputDraws::Group(s.mishap.clone()),
    },
];

impl InputDraws {
    fn worth(&self, acts: &[&[f64]]) -> f64 {
        match self {
            Self::Number(x) if x.is_empty() => 0.0,
            Self::Number(x) => of_input(acts, x),
            Self::Group(g) => of_group(acts, g),
        }
    }

    fn explains(&self, output: &[f64]) -> Option<f64> {
        match self {
            Self::Number(x) if x.is_empty() => None,
            Self::Number(x) => share_explained(x, output),
            Self::Group(g) => share_of_groups(g, output),
        }
    }
}

const SMALL: &str = words::TOO_LITTLE;

fn worth_section(deep: &CloserLook) -> Block {
    let s = &deep.shown;
    let everything = deep.worth(&|s| of_everything(&acts(s)));
    let spread = &s.courses[s.chosen].score;
    let mut rows = Vec::new();
    let mut drawn = Vec::new();
    let mut kind_worth = None;
    for (i, u) in UNKNOWNS.iter().enumerate() {
        let worth = deep.worth(&|s| (u.draws)(s).worth(&acts(s)));
        if i == 0 {
            kind_worth = worth;
        }
        let explains = (u.draws)(s).explains(spread).unwrap_or(0.0);
        let share = if explains < 0.01 {
            words::ABOUT_NONE.to_owned()
        } else {
            whole_percent(explains)
        };
        rows.push(vec![u.name.to_owned(), worth_text(deep, worth), share]);
        drawn.push((u.name, worth));
    }
    rows.push(vec![
        words::ALL_AT_ONCE.to_owned(),
        worth_text(deep, everything),
        String::new(),
    ]);
    let (look_rows, any_pays) = looks_table(deep);
    let table = Table {
        caption: words::KNOWN_CAPTION.to_owned(),
        columns: words::KNOWN_COLUMNS.map(str::to_owned).to_vec(),
        rows,
    };
    let fee = deep.ledger.value(FigureId::COST_OPINION);
    let mut blocks = vec![Block::said(
        Tone::Answer,
        kind_sentence(deep, kind_worth, fee),
    )];
    let (again, opens) = &s.rules_asked_again;
    if !opens.is_empty() && *again > s.noise && deep.in_units(*again) >= 0.5 {
        let names: Vec<String> = opens.iter().map(|n| small(n)).collect();
        blocks.push(Block::para(words::rules_asked_again(
            &deep.amount(*again),
            &names.join("; "),
        )));
    }
    blocks.push(known_picture(deep, &drawn, table));
    blocks.push(Block::Table(Table {
        caption: words::LOOKS_CAPTION.to_owned(),
        columns: words::LOOKS_COLUMNS.map(str::to_owned).to_vec(),
        rows: look_rows,
    }));
    if lead_fee(s).is_some() && any_pays {
        blocks.push(Block::para(words::LEAD_TEST_ALLOWS));
    }
    blocks.push(Block::para(if any_pays {
        words::GREATEST_FIRST
    } else {
        words::NONE_PAYS
    }));
    blocks.push(Block::fold(
        "deeper-worth-how",
        words::METHOD,
        vec![Block::said(Tone::Quiet, words::method(SCRAMBLES))],
    ));
    Block::section("deeper-worth", words::WORTH_OF_KNOWING, blocks)
}

/// Bars of what knowing each thing for certain is worth.
fn known_picture(deep: &CloserLook, drawn: &[(&'static str, Option<f64>)], table: Table) -> Block {
    let known: Vec<NamedBar> = drawn
        .iter()
        .map(|(name, w)| NamedBar {
            label: (*name).to_owned(),
            value: w.map_or(0.0, |w| deep.in_units(w)),
            text: worth_text(deep, *w),
            ink: if w.is_some() { Ink::Silver } else { Ink::Quiet },
        })
        .collect();
    let top = drawn.iter().filter_map(|(n, w)| w.map(|w| (*n, w))).fold(
        None,
        |top: Option<(&str, f64)>, x| {
            if top.is_none_or(|t| x.1 > t.1) {
                Some(x)
            } else {
                top
            }
        },
    );
    let title = top.map_or_else(
        || words::NOTHING_COUNTS.to_owned(),
        |(name, w)| words::pays_most(name, &deep.amount(w)),
    );
    bars("deeper-worth-picture", &title, &known, table)
}

fn worth_text(deep: &CloserLook, worth: Option<f64>) -> String {
    worth.map_or_else(|| SMALL.to_owned(), |w| deep.amount(w))
}

fn kind_sentence(deep: &CloserLook, worth: Option<f64>, fee: f64) -> String {
    let opinion = money(deep.case, fee);
    match (worth, deep.shown.money_per_score) {
        (None, _) => words::kind_does_not_count(&opinion),
        (Some(w), Some(rate)) if w * rate > fee => words::opinion_pays(&deep.amount(w), &opinion),
        (Some(w), Some(_)) => words::opinion_does_not_pay(&deep.amount(w), &opinion),
        (Some(w), None) => words::cost_counts_for_nothing(&deep.amount(w)),
    }
}

/// Table rows of the looks, best first, and whether any pays.
fn looks_table(deep: &CloserLook) -> (Vec<Vec<String>>, bool) {
    // Name, worth before the fee as a score, and fee in money.
    let mut found: Vec<(String, Option<f64>, f64)> = deep
        .looks()
        .iter()
        .map(|look| {
            let worth = deep.worth(&|s| {
                let answers: Vec<Vec<f64>> = look
                    .answers
                    .iter()
                    .map(|(_, l)| s.kind.iter().map(|k| l[*k]).collect())
                    .collect();
                of_answers_on_draws(&acts(s), &answers)
            });
            (look.name.to_owned(), worth, look.fee)
        })
        .collect();
    if let Some(fee) = lead_fee(&deep.shown) {
        let worth = deep.worth(&|s| {
            let fee = lead_fee(s).unwrap_or(0.0);
            let best = |tests: bool| {
                s.courses
                    .iter()
                    .filter(|c| c.allowed && c.tests == tests)
                    .map(|c| mean(&c.score))
                    .fold(f64::NEG_INFINITY, f64::max)
            };
            (best(true) - best(false) + deep.score_of(fee)).max(0.0)
        });
        found.push((words::LEAD_TEST.to_owned(), worth, fee));
    }
    let net = |(_, worth, fee): &(String, Option<f64>, f64)| {
        worth.map_or(f64::NEG_INFINITY, |w| w - deep.score_of(*fee))
    };
    found.order_by(|a, b| net(b).total_cmp(&net(a)));
    let pays = found.iter().any(|f| net(f) > 0.0);
    let rows = found
        .iter()
        .map(|f| {
            let (worth, left) = f.1.map_or_else(
                || (SMALL.to_owned(), words::NOTHING.to_owned()),
                |w| (deep.amount(w), deep.signed(net(f))),
            );
            vec![capital(&f.0), worth, money(deep.case, f.2), left]
        })
        .collect();
    (rows, pays)
}

/// Average cost of the lead test; `None` if it can tell nothing or is barred.
fn lead_fee(s: &Shared) -> Option<f64> {
    s.courses
        .iter()
        .find(|c| c.allowed && c.group == [Treatment::TestLead])
        .map(|c| mean(&c.cost))
}

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::record::Draft;

    /// Invented pieces, from the same files as the worked examples.
    const CASES: [&str; 8] = [
        include_str!("../../tests/cases/cake_basket.json"),
        include_str!("../../tests/cases/copper_reproduction_tureen.json"),
        include_str!("../../tests/cases/daily_teapot.json"),
        include_str!("../../tests/cases/hallmarked_candlesticks.json"),
        include_str!("../../tests/cases/leaking_teapot.json"),
        include_str!("../../tests/cases/replated_coffee_pot.json"),
        include_str!("../../tests/cases/rusted_snuffers_tray.json"),
        include_str!("../../tests/cases/worn_tray.json"),
    ];

    fn page(draft: &Draft) -> Vec<Block> {
        super::page(&Subject::new(draft.clone()))
    }

    fn page_of(text: &str, set: &[(&str, &str)]) -> String {
        let mut draft = Draft::parse(text).unwrap();
        for (path, typed) in set {
            draft.set(path, typed);
        }
        serde_json::to_string(&page(&draft)).unwrap()
    }

    /// Checks that pictures keep their marks in the box and their labels readable, that tables are
    /// rectangular, and that no number is NaN.
    fn check(blocks: &[Block], ids: &mut Vec<String>) {
        let rectangle = |t: &Table| t.rows.iter().all(|r| r.len() == t.columns.len());
        for block in blocks {
            match block {
                Block::Section { id, blocks, .. } | Block::Fold { id, blocks, .. } => {
                    ids.push(id.clone());
                    check(blocks, ids);
                }
                Block::Row { blocks } => check(blocks, ids),
                Block::Table(t) => assert!(rectangle(t), "{}", t.caption),
                Block::Picture(p) => {
                    ids.push(p.id.clone());
                    assert!(rectangle(&p.table) && !p.description.is_empty());
                    for mark in &p.marks {
                        match mark {
                            super::super::Mark::Text { x, y, text, .. } => {
                                assert!((0.0..=p.width).contains(x), "{text} at {x}");
                                assert!((0.0..=p.height).contains(y), "{text} at {y}");
                            }
                            super::super::Mark::Path { d, .. } => {
                                assert!(!d.contains("NaN"), "{d}");
                            }
                        }
                    }
                }
                _ => {}
            }
        }
    }

    #[test]
    fn every_example_has_a_valid_page() {
        for text in CASES {
            let blocks = page(&Draft::parse(text).unwrap());
            let mut ids = Vec::new();
            check(&blocks, &mut ids);
            let all = ids.len();
            ids.sort();
            ids.dedup();
            assert_eq!(ids.len(), all, "an id twice");
            let sections = blocks
                .iter()
                .filter(|block| matches!(block, Block::Section { .. }));
            // Worth, tree, risk, weights and inputs, plus the cautions for the treatments named.
            assert_eq!(sections.count(), 6);
            assert!(ids.contains(&"sheet.cautions".to_owned()));
            let shown = serde_json::to_string(&blocks).unwrap();
            assert!(!shown.contains("\"-0\""));
            let mut words = shown.split(|c: char| !c.is_alphanumeric());
            assert_eq!(words.find(|word| ["NaN", "inf"].contains(word)), None);
        }
    }

    #[test]
    fn an_empty_record_has_a_page_too() {
        let mut ids = Vec::new();
        check(&page(&Draft::default()), &mut ids);
        // Nothing is advised, so there is nothing to look at more closely.
        assert!(!ids.contains(&"deeper-worth".to_owned()));
    }

    #[test]
    fn the_tree_begins_with_the_test_if_the_advice_does() {
        // A pot in daily use: the advice is to test first.
        let page = page_of(CASES[2], &[]);
        assert!(page.contains("The best first step: release test for lead"));
        // A worn tray for sale: the advice is to leave it.
        let page = page_of(CASES[7], &[]);
        assert!(page.contains("No further test is needed for the best choice: leave it alone"));
        assert!(page.contains("weighing it again would count it twice"));
    }

    #[test]
    fn the_users_points_reach_the_page_and_the_answer() {
        let plain = page_of(CASES[0], &[]);
        let own = page_of(
            CASES[0],
            &[
                ("aim.weights.originality", "0"),
                ("aim.weights.fitness", "100"),
            ],
        );
        assert_ne!(plain, own);
        let bad = page_of(CASES[0], &[("aim.weights.cost", "lots")]);
        assert!(bad.contains("is not a number."));
        // If cost does not count, points cannot be converted into money, and the page says so.
        let free = page_of(CASES[0], &[("aim.weights.cost", "0")]);
        assert!(free.contains("Cost has no weight in your aims"));
    }

    #[test]
    fn the_users_stake_is_read() {
        let page = page_of(CASES[7], &[("aim.even_bet", "0")]);
        assert!(page.contains("Use a number from 1 to 100000000."));
    }

    #[test]
    fn the_answers_of_every_look_are_probabilities() {
        let subject = Subject::new(Draft::default());
        for look in CloserLook::new(&subject).looks() {
            for k in 0..leavewell_model::identity::Kind::ALL.len() {
                let sum: f64 = look.answers.iter().map(|(_, l)| l[k]).sum();
                assert!((sum - 1.0).abs() < 1e-9, "{}", look.name);
                assert!(
                    look.answers
                        .iter()
                        .all(|(_, l)| (0.0..=1.0).contains(&l[k]))
                );
            }
        }
    }
}
