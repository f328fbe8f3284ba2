//! Whether the piece may hold food or drink: the six display-only reasons, the limits for a laboratory's
//! results, and why passing an old criterion says little.

use super::as_typed::as_typed;
use super::ask::{NumberField, number};
use super::bench_inputs::Bench;
use super::block::{Block, Choice, Table, Tone};
use super::caution_blocks;
use super::happened::problem_at;
use super::number_text::figures;
use super::sources_fold::sources_fold;
use super::wording::food as words;
use leavewell_model::ledger::{FigureId, Tag, caution};
use leavewell_model::terms::{Treatment, capital, the_pieces};
use leavewell_model::treatment::Release;

/// Metals with a release limit: figure, name, and whether a field asks for the laboratory's result.
const METALS: [(&str, &str, FigureId); 16] = [
    ("Pb", words::LEAD, FigureId::FOOD_LIMIT_PB),
    ("Cd", words::CADMIUM, FigureId::FOOD_LIMIT_CD),
    ("As", words::ARSENIC, FigureId::FOOD_LIMIT_AS),
    ("Hg", words::MERCURY, FigureId::FOOD_LIMIT_HG),
    ("Cu", words::COPPER, FigureId::FOOD_LIMIT_CU),
    ("Ni", words::NICKEL, FigureId::FOOD_LIMIT_NI),
    ("Ag", words::SILVER, FigureId::FOOD_LIMIT_AG),
    ("Sn", words::TIN, FigureId::FOOD_LIMIT_SN),
    ("Sb", words::ANTIMONY, FigureId::FOOD_LIMIT_SB),
    ("Zn", words::ZINC, FigureId::FOOD_LIMIT_ZN),
    ("Fe", words::IRON, FigureId::FOOD_LIMIT_FE),
    ("Al", words::ALUMINIUM, FigureId::FOOD_LIMIT_AL),
    ("Co", words::COBALT, FigureId::FOOD_LIMIT_CO),
    ("Cr", words::CHROMIUM, FigureId::FOOD_LIMIT_CR),
    ("Mn", words::MANGANESE, FigureId::FOOD_LIMIT_MN),
    ("Tl", words::THALLIUM, FigureId::FOOD_LIMIT_TL),
];

/// Builds the section.
pub(super) fn section(bench: &Bench<'_>) -> Block {
    let situation = bench.solved.situation();
    let (triggers, release) = (situation.triggers(), situation.release());
    let food = bench.case.aim.food || bench.case.aim.store_food;
    let (fields, tested) = results(bench);
    let mut blocks = vec![Block::said(
        Tone::Answer,
        sentence(triggers.len(), release, food),
    )];
    blocks.push(Block::Table(trigger_table(&triggers)));
    blocks.extend(label(!triggers.is_empty()));
    blocks.extend(caution_blocks::named("caution.child"));
    blocks.extend(verdict(bench, &tested));
    blocks.push(Block::fold("bench.food.results", words::RESULTS, fields));
    blocks.push(Block::Table(limits(bench)));
    blocks.extend(legacy(bench));
    blocks.extend(caution_blocks::of_treatment(Treatment::TestLead));
    blocks.push(sources_fold(
        "bench.food.sources",
        bench.ledger,
        &[
            FigureId::FOOD_LIMIT_PB,
            FigureId::FOOD_LIMIT_CU,
            FigureId::FOOD_LIMIT_NI,
            FigureId::FOOD_LIMIT_AG,
            FigureId::FOOD_LIMIT_SN,
            FigureId::FOOD_LIMIT_SB,
            FigureId::FOOD_LEGACY_ADULT,
            FigureId::FOOD_LEGACY_CHILD,
            FigureId::FOOD_DAILY_ADULT,
            FigureId::FOOD_DAILY_CHILD,
            FigureId::FOOD_CODE_PEWTER,
            FigureId::FOOD_CODE_SOLDER,
            FigureId::GUARD_FOOD_YEAR,
        ],
    ));
    Block::section("bench.food", words::FOOD, blocks)
}

fn sentence(reasons: usize, release: Release, food: bool) -> String {
    let answer = match reasons {
        0 if release.passed() => words::NOTHING_AND_TESTED.to_owned(),
        0 => words::NOTHING_YET.to_owned(),
        1 => words::ONE_REASON.to_owned(),
        n => words::reasons(n),
    };
    if food && reasons > 0 {
        words::have_it_tested(&answer)
    } else {
        answer
    }
}

fn trigger_table(found: &[(u8, &'static str)]) -> Table {
    let rows = words::TRIGGERS
        .iter()
        .zip(1_u8..)
        .map(|(what, n)| {
            let why: Vec<&str> = found
                .iter()
                .filter(|(number, _)| *number == n)
                .map(|(_, why)| *why)
                .collect();
            let holds = if why.is_empty() {
                words::NOT_RECORDED.to_owned()
            } else {
                why.join(" ")
            };
            let lifted = match n {
                1 | 2 => words::LIFTED_BY_PASS,
                5 => words::LIFTED_BY_LABORATORY,
                _ => words::NEVER_LIFTED,
            };
            vec![(*what).to_owned(), holds, lifted.to_owned()]
        })
        .collect();
    Table {
        caption: words::TRIGGERS_CAPTION.to_owned(),
        columns: words::TRIGGERS_COLUMNS.map(str::to_owned).to_vec(),
        rows,
    }
}

fn label(display_only: bool) -> Vec<Block> {
    let Some(text) = caution("caution.display_only").filter(|_| display_only) else {
        return Vec::new();
    };
    vec![
        Block::said(Tone::Stop, text.text),
        Block::said(Tone::Quiet, words::TIE_TO_THE_PIECE),
    ]
}

/// A laboratory's result for one metal: its name, the figure of its limit, and mg/kg.
type Tested = (&'static str, FigureId, f64);

/// Fields for a laboratory's results, and the results entered.
fn results(bench: &Bench<'_>) -> (Vec<Block>, Vec<Tested>) {
    const PATHS: [(&str, &str); 7] = [
        ("Pb", "bench.food.pb"),
        ("Cu", "bench.food.cu"),
        ("Ni", "bench.food.ni"),
        ("Ag", "bench.food.ag"),
        ("Sn", "bench.food.sn"),
        ("Sb", "bench.food.sb"),
        ("Zn", "bench.food.zn"),
    ];
    let mut fields = Vec::new();
    let mut given = Vec::new();
    for (id, path) in PATHS {
        let Some((_, name, limit)) = METALS.iter().find(|(known, ..)| *known == id) else {
            continue;
        };
        let (field, value) = number(
            bench.draft,
            NumberField {
                path,
                label: name,
                unit: "mg/kg",
                hint: "",
                stand_in: None,
            },
        );
        fields.push(field);
        if let Some(value) = value {
            given.push((*name, *limit, value));
        }
    }
    let mut blocks = vec![Block::para(words::RESULTS_HINT)];
    blocks.extend(which_piece(bench));
    blocks.push(Block::Row { blocks: fields });
    (blocks, given)
}

/// Of which of several pieces the results are.
fn which_piece(bench: &Bench<'_>) -> Option<Block> {
    const PATH: &str = "bench.food.of";
    let pieces = &bench.case.pieces;
    if !pieces.are_several() {
        return None;
    }
    let chosen = bench.draft.text(PATH);
    let mut options = vec![(String::new(), words::OF_EACH.to_owned())];
    options.extend((1..=pieces.count).map(|no| (no.to_string(), capital(&the_pieces(&[no])))));
    if !options.iter().any(|(id, _)| *id == chosen) {
        // Several of them, as a file may say.
        options.push((chosen.clone(), as_typed(&chosen)));
    }
    let problem = problem_at(bench.problems, PATH);
    Some(Block::Choice(Choice {
        path: PATH.to_owned(),
        label: words::WHICH_PIECE.to_owned(),
        hint: [words::WHICH_PIECE_HINT, &problem]
            .join(" ")
            .trim_end()
            .to_owned(),
        options,
        chosen,
    }))
}

fn verdict(bench: &Bench<'_>, given: &[Tested]) -> Vec<Block> {
    if given.is_empty() {
        return Vec::new();
    }
    let over: Vec<String> = given
        .iter()
        .filter_map(|(name, limit, value)| {
            let limit = bench.ledger.value(*limit);
            (*value > limit)
                .then(|| words::against(&name.to_lowercase(), &figures(*value), &figures(limit)))
        })
        .collect();
    let lead = given
        .iter()
        .any(|(_, limit, _)| *limit == FigureId::FOOD_LIMIT_PB);
    if over.is_empty() {
        let mut blocks = vec![Block::para(if lead {
            words::NONE_OVER
        } else {
            words::NONE_OVER_WITHOUT_LEAD
        })];
        let mut tests = bench.case.tests.iter();
        let of = tests.find(|test| test.id == "bench.food").map(|t| &t.of);
        let left = |of: &&Vec<u16>| (1..=bench.case.pieces.count).any(|no| !of.contains(&no));
        let some = of.filter(|of| lead && !of.is_empty() && left(of));
        blocks.extend(some.map(|of| Block::said(Tone::Care, words::only_of(&the_pieces(of)))));
        blocks
    } else {
        vec![Block::said(Tone::Stop, words::over(&over.join("; ")))]
    }
}

fn limits(bench: &Bench<'_>) -> Table {
    let rows = METALS
        .iter()
        .map(|(_, name, limit)| {
            let figure = bench.ledger.figure(*limit);
            if figure.tag == Tag::Memory && figure.own_reason.is_none() {
                vec![
                    (*name).to_owned(),
                    words::THERE_IS_ONE.to_owned(),
                    words::CHECK_CURRENT.to_owned(),
                ]
            } else {
                vec![
                    (*name).to_owned(),
                    format!("{} mg/kg", figures(figure.value)),
                    figure.tag.words().to_owned(),
                ]
            }
        })
        .collect();
    Table {
        caption: words::LIMITS.to_owned(),
        columns: words::LIMITS_COLUMNS.map(str::to_owned).to_vec(),
        rows,
    }
}

/// Shows in terms of one cup why the old American criterion is no sign of safety.
fn legacy(bench: &Bench<'_>) -> Vec<Block> {
    let v = |id: FigureId| bench.ledger.value(id);
    let (cup_field, cup) = number(
        bench.draft,
        NumberField {
            path: "bench.food.cup_ml",
            label: words::ONE_CUP,
            unit: "mL",
            hint: "",
            stand_in: Some(v(FigureId::FOOD_CUP)),
        },
    );
    let mut blocks = Vec::new();
    if let Some(cup) = cup {
        let (old, limit) = (v(FigureId::FOOD_LEGACY_ADULT), v(FigureId::FOOD_LIMIT_PB));
        let (adult, child) = (v(FigureId::FOOD_DAILY_ADULT), v(FigureId::FOOD_DAILY_CHILD));
        let micrograms = old * cup;
        let times = |x: f64, of: f64| {
            if of > 0.0 {
                figures((x / of).round())
            } else {
                words::NOT_KNOWN_HOW_MANY.to_owned()
            }
        };
        blocks.push(Block::para(words::old_criterion(
            &figures(old),
            &figures(cup),
            &figures(micrograms),
            &times(micrograms, adult),
            &times(old * 1000.0, limit * 1000.0),
            &figures(limit * cup),
            &figures(child),
        )));
    }
    blocks.push(Block::Row {
        blocks: vec![cup_field],
    });
    blocks.push(Block::said(
        Tone::Quiet,
        words::food_code(
            &figures(v(FigureId::FOOD_CODE_PEWTER)),
            &figures(v(FigureId::FOOD_CODE_SOLDER)),
        ),
    ));
    blocks
}

#[cfg(test)]
mod tests {
    use super::super::bench::page;
    use super::super::{PageName, Subject};
    use super::*;
    use leavewell_model::record::Draft;

    /// The choice of the piece that was tested, and all the words of the page.
    fn asked(pieces: &str, of: &str) -> (Option<Choice>, String) {
        let text = format!(
            r#"{{"format":"leavewell-case","version":2,"piece":{{"form":"sauceboat"}},"pieces":{pieces},
            "parts":[{{"part":"interior","bleed":"some"}}],"aim":{{"goal":"keep_use","food":true}}}}"#
        );
        let mut draft = Draft::parse(&text).unwrap();
        draft.set("bench.food.pb", "0.001");
        draft.set("bench.food.of", of);
        let subject = Subject::new(draft);
        let mut found = None;
        let mut left = page(&subject);
        while let Some(block) = left.pop() {
            match block {
                Block::Choice(choice) if choice.path == "bench.food.of" => found = Some(choice),
                Block::Section { blocks, .. }
                | Block::Fold { blocks, .. }
                | Block::Row { blocks } => {
                    left.extend(blocks);
                }
                _ => {}
            }
        }
        let pages = [PageName::Bench, PageName::SheetForFile].map(|page| page.blocks(&subject));
        (found, format!("{pages:?}"))
    }

    #[test]
    fn of_several_pieces_the_one_that_was_tested_is_asked_and_clears_no_other() {
        let pair = r#"{"relation":"pair"}"#;
        assert_eq!(asked("{}", "").0, None);
        let (each, cleared) = asked(pair, "");
        let each = each.unwrap();
        let labels: Vec<&str> = each.options.iter().map(|(_, label)| &**label).collect();
        assert_eq!(labels, [words::OF_EACH, "The first", "The second"]);
        let (first, not_cleared) = asked(pair, "1");
        assert_eq!(first.unwrap().chosen, "1");
        let bare = "Bare copper, brass, nickel silver or Britannia metal shows";
        assert!(!cleared.contains(bare) && not_cleared.contains(bare));
        assert!(not_cleared.contains(&words::only_of("the first")));
        let not_each = "not every one of them is tested";
        assert!(!cleared.contains(not_each) && not_cleared.contains(not_each));
        let (both, both_cleared) = asked(pair, "1 2");
        assert!(!both_cleared.contains("of no other"));
        assert_eq!(both.unwrap().chosen, "1 2");
        assert!(!both_cleared.contains(bare));
        let (third, of_none) = asked(pair, "3");
        assert!(third.unwrap().hint.contains("There is no piece number 3"));
        assert!(of_none.contains(bare));
    }
}
