//! The treatment and bench pages over random cases: no recipe, no treatment without its cautions, no invalid
//! number, and no hazard that loosens a verdict. The cases are CONSTRUCTED.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

#[path = "laws/random.rs"]
#[allow(dead_code)]
mod random;

use leavewell_model::Draft;
use leavewell_model::ledger::{FindingId, caution, guard_texts};
use leavewell_model::record::QUESTIONS;
use leavewell_model::terms::Treatment;
use leavewell_pages::{Block, PageName, Subject, Tone};
use random::{Tape, case_file};
use serde_json::Value;

/// Pages that name treatments.
const NAMING: [PageName; 2] = [PageName::Bench, PageName::Catalogue];

/// The number of random cases: more in a release build. `LEAVEWELL_CASES` sets another number, such as 10000.
const CASES: u64 = if cfg!(debug_assertions) { 120 } else { 2_000 };

fn cases() -> u64 {
    let asked = std::env::var("LEAVEWELL_CASES").ok();
    asked.and_then(|n| n.parse().ok()).unwrap_or(CASES)
}

/// Words that a recipe needs and a caution does not, in lower case.
const RECIPE: [&str; 39] = [
    "grams per",
    "grammes per",
    "g per litre",
    "ml per",
    "g/l",
    "mol/l",
    "% solution",
    "% acid",
    "amps",
    "volts",
    "voltage",
    "bath at",
    "in a bath of",
    "current density of",
    "torch setting",
    "flame setting",
    "heat it to",
    "heat the joint",
    "mix one",
    "mix with",
    "mix the",
    "parts of water",
    "parts water",
    "add the acid",
    "add water",
    "dissolve the",
    "dissolve in",
    "neutralise with",
    "neutralize with",
    "soak in",
    "leave it in the",
    "dip it in",
    "step 1",
    "step one",
    "for ten minutes",
    "until it melts",
    "then rinse in",
    "hydrochloric",
    "sodium cyanide",
];

/// Sample recipes. The list must catch each of them.
const RECIPES: [&str; 5] = [
    "Heat to 230 C and feed the solder in.",
    "Mix one spoon of soda with hot water.",
    "Soak in vinegar overnight, then rinse in water.",
    "A bath at 25 C, two volts, 30 g per litre.",
    "Dissolve the lead in 10 % acid and neutralise with soda.",
];

/// The recipe words in a lower-case text, if any: one of the list, or "heat to" with a number.
fn recipe_in(lowered: &str) -> Option<&str> {
    let to_number = lowered
        .match_indices("heat to ")
        .find(|(at, found)| lowered[at + found.len()..].starts_with(|c: char| c.is_ascii_digit()));
    RECIPE
        .into_iter()
        .find(|word| lowered.contains(word))
        .or(to_number.map(|(_, found)| found))
}

fn walk<'a>(blocks: &'a [Block], see: &mut dyn FnMut(&'a Block)) {
    for block in blocks {
        see(block);
        match block {
            Block::Section { blocks, .. } | Block::Fold { blocks, .. } | Block::Row { blocks } => {
                walk(blocks, see);
            }
            _ => {}
        }
    }
}

/// The whole text of a page, without the user's input.
fn said(name: PageName, draft: &Draft) -> (Vec<Block>, String) {
    let blocks = name.blocks(&Subject::new(draft.clone()));
    let text = serde_json::to_string(&blocks).unwrap();
    (blocks, text)
}

fn paragraphs(blocks: &[Block]) -> Vec<(&str, Tone)> {
    let mut found = Vec::new();
    walk(blocks, &mut |b| {
        if let Block::Para { text, tone } = b {
            found.push((text.as_str(), *tone));
        }
    });
    found
}

fn draft_of(file: &Value) -> Draft {
    Draft::parse(&file.to_string()).expect("a random file opens")
}

/// A random case with random answers on the two pages, both sensible and absurd.
fn random_draft(seed: u64) -> Draft {
    let mut tape = Tape::numbered(seed);
    let mut draft = draft_of(&case_file(&mut tape));
    for (path, _) in QUESTIONS {
        let answer = ["", "yes", "no", "perhaps"][tape.below(4)];
        draft.set(path, answer);
    }
    let numbers = [
        "", "", "0", "-3", "1e300", "0.8", "12,5", "250", "thick", "NaN", "inf", "1e-300", "183",
        "700", "1999", "-49", "20",
    ];
    for path in [
        "bench.heat.thickness_mm",
        "bench.heat.joint_c",
        "bench.heat.air_c",
        "bench.heat.patch_mm",
        "bench.heat.extent_mm",
        "bench.heat.distance_mm",
        "bench.plating.height_mm",
        "bench.plating.top_mm",
        "bench.plating.widest_mm",
        "bench.plating.foot_mm",
        "bench.plating.length_mm",
        "bench.plating.width_mm",
        "bench.plating.extra_pct",
        "bench.plating.thickness_um",
        "bench.plating.price_per_g",
        "bench.plating.bill",
        "bench.food.pb",
        "bench.food.cu",
        "bench.food.cup_ml",
        "bench.heat.long_mm",
    ] {
        draft.set(path, numbers[tape.below(numbers.len())]);
    }
    for (path, choices) in [
        ("bench.heat.form", &["disk", "strip", "rod", "cone"][..]),
        (
            "bench.heat.metal",
            &["copper", "brass", "nickel_silver", "steel", "tin"],
        ),
        (
            "bench.heat.solder",
            &[
                "any", "sn_ag", "bi_sn", "BAg-7", "BAg-8", "sn_pb_60", "glue",
            ],
        ),
        (
            "bench.heat.next",
            &["soft", "pitch", "lead", "bismuth_lead", "x"],
        ),
        ("bench.plating.shape", &["turned", "flat", "box", "ring"]),
        ("bench.plating.sides", &["outside", "both"]),
        ("bench.heat.on_part", &["", "foot", "handle", "lid"]),
    ] {
        draft.set(path, choices[tape.below(choices.len())]);
    }
    draft
}

#[test]
fn recipe_words_are_detected() {
    for recipe in RECIPES {
        let lowered = recipe.to_lowercase();
        assert!(recipe_in(&lowered).is_some(), "{recipe}");
    }
}

#[test]
fn no_data_file_reads_like_a_recipe() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/model/ledger/data");
    let mut read = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap().to_lowercase();
        read += 1;
        for line in text.lines().filter(|l| !l.starts_with('#')) {
            assert_eq!(recipe_in(line), None, "{}: {line}", path.display());
        }
    }
    assert!(read >= 10);
}

/// Over random cases: no recipe, no invalid number, and every named treatment has its cautions and the deferral
/// line.
#[test]
fn pages_give_cautions_and_no_instructions() {
    let deferral = caution("caution.deferral").unwrap().text;
    for seed in 0..cases() {
        let draft = random_draft(seed);
        for name in NAMING {
            let (blocks, text) = said(name, &draft);
            let lowered = text.to_lowercase();
            assert_eq!(recipe_in(&lowered), None, "{name:?}, case {seed}");
            let mut shown = Vec::new();
            walk(&blocks, &mut |b| match b {
                Block::Para { text, .. } => shown.push(text.clone()),
                Block::List { items } => shown.extend(items.iter().cloned()),
                Block::Facts { rows } => {
                    shown.extend(rows.iter().map(|(a, b)| format!("{a} {b}")));
                }
                Block::Table(t) => shown.extend(t.rows.iter().map(|r| r.join(" "))),
                Block::Picture(p) => {
                    shown.push(format!("{} {}", p.title, p.description));
                    shown.extend(p.table.rows.iter().map(|r| r.join(" ")));
                    let marks = serde_json::to_string(&p.marks).unwrap();
                    for bad in ["NaN", "inf", "null"] {
                        assert!(!marks.contains(bad), "{name:?}, case {seed}: {marks}");
                    }
                }
                Block::HeatOnPiece(h) => {
                    shown.push(format!("{} {}", h.title, h.description));
                    shown.extend(h.table.rows.iter().map(|r| r.join(" ")));
                    shown.extend(h.zones.iter().map(|z| format!("{} {}", z.at, z.reach)));
                    assert!((1.0..=3000.0).contains(&h.size_mm) && h.hot_mm >= 0.0);
                    let known = |mm: Option<f64>| mm.is_none_or(|mm| mm.is_finite() && mm >= 0.0);
                    for zone in &h.zones {
                        assert!(known(zone.most_mm), "case {seed}");
                    }
                }
                Block::Field(f) => shown.push(f.problem.clone()),
                _ => {}
            });
            for words in &shown {
                // Compares whole words, because "infant" contains "inf" and "nan".
                for word in words.split([' ', ',', ';', '.', '(', ')']) {
                    assert!(
                        !["NaN", "inf", "-inf", "-0"].contains(&word),
                        "{name:?}, case {seed}: {words}"
                    );
                }
            }
            let paras = paragraphs(&blocks);
            assert_eq!(
                paras.last().map(|(text, _)| *text),
                Some(deferral),
                "{name:?}, case {seed}"
            );
            check_cautions(&blocks, &format!("{name:?}, case {seed}"));
        }
    }
}

/// A section about a treatment, or one that names it in an answer, contains that treatment's caution.
fn check_cautions(blocks: &[Block], place: &str) {
    let mut sections = 0;
    walk(blocks, &mut |b| {
        let Block::Section { id, blocks, .. } = b else {
            return;
        };
        let about = match id.as_str() {
            "bench.heat" => {
                // One of the three heat repairs, depending on the solder; it needs a valid field.
                let paras = paragraphs(blocks);
                let usable = !paras[0].0.starts_with("We cannot use one field");
                let held = ["T09", "T09b", "T11"].iter().any(|id| {
                    let text = caution(&format!("caution.{id}")).unwrap().text;
                    paras.iter().any(|(said, _)| *said == text)
                });
                assert!(held || !usable, "{place}: heat without its caution");
                return;
            }
            "bench.plating" => "T14a",
            "bench.food" => "T17",
            other => match other.strip_prefix("catalogue.") {
                Some(t) if Treatment::parse(t).is_some() => t,
                _ => return,
            },
        };
        sections += 1;
        let text = caution(&format!("caution.{about}")).unwrap().text;
        let paras = paragraphs(blocks);
        assert!(
            paras.iter().any(|(said, _)| *said == text),
            "{place}: {id} without the caution of {about}"
        );
    });
    assert!(sections >= 2, "{place}: {sections} sections");
}

#[test]
fn the_catalogue_lists_every_treatment_once() {
    let (blocks, text) = said(PageName::Catalogue, &Draft::default());
    let mut found = Vec::new();
    walk(&blocks, &mut |b| {
        if let Block::Section { id, .. } = b
            && let Some(t) = id.strip_prefix("catalogue.").and_then(Treatment::parse)
        {
            found.push(t);
        }
    });
    found.sort();
    assert_eq!(found, Treatment::ALL);
    for guard in guard_texts() {
        assert!(text.contains(guard.rule), "{}", guard.id);
    }
}

/// The catalogue's verdict on each treatment: 0 open, 1 a check or an opinion first, 2 barred.
fn verdicts(draft: &Draft) -> Vec<(Treatment, u8)> {
    let (blocks, _) = said(PageName::Catalogue, draft);
    let mut found = Vec::new();
    walk(&blocks, &mut |b| {
        if let Block::Section { id, blocks, .. } = b
            && let Some(t) = id.strip_prefix("catalogue.").and_then(Treatment::parse)
        {
            let answer = paragraphs(blocks)[0].0;
            let grade = match answer {
                a if ["Possible", "Advised", "Not needed"]
                    .iter()
                    .any(|w| a.starts_with(w)) =>
                {
                    0
                }
                a if a.starts_with("Needs") => 1,
                a if ["Barred", "Never"].iter().any(|w| a.starts_with(w)) => 2,
                other => panic!("no verdict: {other}"),
            };
            found.push((t, grade));
        }
    });
    found.sort();
    found
}

/// Every paragraph marked as a hazard.
fn cautions_of(draft: &Draft) -> Vec<String> {
    let (blocks, _) = said(PageName::Catalogue, draft);
    paragraphs(&blocks)
        .into_iter()
        .filter(|(_, tone)| matches!(tone, Tone::Stop | Tone::Care | Tone::Note))
        .map(|(text, _)| text.to_owned())
        .collect()
}

/// A hazard, the treatments for which it is also a reason, and how to record it.
type Danger = (&'static str, &'static [Treatment], fn(&mut Draft));

/// Another hazard removes no caution and loosens no verdict. Two hazards are also reasons for work, so the
/// verdict on that work may change: corrosion for removing an old repair, a failing filling for removing the
/// filling.
#[test]
fn another_hazard_loosens_no_verdict() {
    let dangers: [Danger; 11] = [
        ("a closed part", &[], |d| {
            d.set_part("foot", "fill", "sealed");
        }),
        ("corrosion", &[Treatment::RemoveLead], |d| {
            d.set_part("foot", "corrosion", "green");
        }),
        ("a child", &[], |d| {
            d.set_flag("aim.household_child_or_pregnant", Some(true));
        }),
        ("gilding", &[], |d| {
            d.set_part("cover", "interior", "gilt");
        }),
        ("standing food", &[], |d| {
            d.set_flag("aim.store_food", Some(true));
        }),
        ("cadmium", &[], |d| d.set("catalogue.hard_repair", "yes")),
        ("asbestos", &[], |d| d.set("catalogue.insulator", "yes")),
        ("mercury", &[], |d| d.set("catalogue.fire_gilding", "yes")),
        ("ammonia", &[], |d| d.set("catalogue.ammonia", "yes")),
        ("wood", &[], |d| d.set("catalogue.organic", "yes")),
        ("a failing filling", &[Treatment::RemoveFill], |d| {
            d.set("catalogue.failing_fill", "yes");
        }),
    ];
    for seed in 0..cases() / 20 {
        let mut before = draft_of(&case_file(&mut Tape::numbered(seed)));
        // The part with the hazard has no other record.
        for (part, field) in [
            ("foot", "fill"),
            ("foot", "corrosion"),
            ("cover", "interior"),
        ] {
            before.set_part(part, field, "");
        }
        let (was, warned) = (verdicts(&before), cautions_of(&before));
        for (what, reasons, add) in dangers {
            let mut after = before.clone();
            add(&mut after);
            let now = verdicts(&after);
            for ((t, old), (same, new)) in was.iter().zip(&now) {
                assert_eq!(t, same);
                assert!(
                    new >= old || reasons.contains(t),
                    "case {seed}, {what}: {} from {old} to {new}",
                    t.id()
                );
            }
            let said = cautions_of(&after);
            for caution in &warned {
                let fallback = caution.starts_with("Leave it, keep it dry");
                assert!(
                    said.contains(caution) || fallback,
                    "case {seed}, {what}: {caution}"
                );
            }
        }
    }
}

/// Each hazard shows its caution.
#[test]
fn each_hazard_shows_its_caution() {
    for (path, id) in [
        ("catalogue.hard_repair", "caution.cadmium"),
        ("catalogue.insulator", "caution.asbestos"),
        ("catalogue.fire_gilding", "caution.mercury"),
        ("catalogue.ammonia", "caution.ammonia"),
    ] {
        let mut draft = Draft::default();
        let held = |draft: &Draft| {
            let (blocks, _) = said(PageName::Catalogue, draft);
            let mut found = false;
            walk(&blocks, &mut |b| {
                if let Block::Section {
                    id: section,
                    blocks,
                    ..
                } = b
                    && section == "catalogue.hazards"
                {
                    let text = caution(id).unwrap().text;
                    found |= paragraphs(blocks).iter().any(|(said, _)| *said == text);
                }
            });
            found
        };
        assert!(!held(&draft), "{id}");
        draft.set(path, "yes");
        assert!(held(&draft), "{id}");
    }
}

fn answer(draft: &Draft, section: &str) -> String {
    let (blocks, _) = said(PageName::Bench, draft);
    let mut found = String::new();
    walk(&blocks, &mut |b| {
        if let Block::Section { id, blocks, .. } = b
            && id == section
        {
            let (text, tone) = paragraphs(blocks)[0];
            assert_eq!(tone, Tone::Answer);
            text.clone_into(&mut found);
        }
    });
    found
}

#[test]
fn bad_input_and_unreachable_temperatures_are_reported() {
    let mut draft = Draft::default();
    draft.set("bench.heat.thickness_mm", "0");
    assert!(answer(&draft, "bench.heat").starts_with("We cannot use one field"));
    let (blocks, _) = said(PageName::Bench, &draft);
    let mut problem = String::new();
    walk(&blocks, &mut |b| {
        if let Block::Field(f) = b
            && f.path == "bench.heat.thickness_mm"
        {
            problem.clone_from(&f.problem);
            assert_eq!(f.text, "0");
        }
    });
    assert!(problem.contains("0.05 to 30"), "{problem}");
    for cold in ["-10", "20", "150", "183"] {
        let mut draft = Draft::default();
        draft.set("bench.heat.joint_c", cold);
        let told = answer(&draft, "bench.heat");
        assert!(
            told.contains("this sum keeps the metal around it below 183 °C"),
            "{cold}: {told}"
        );
    }
    let mut hot = Draft::default();
    hot.set("bench.heat.joint_c", "184");
    assert!(answer(&hot, "bench.heat").contains("can open"));
}

#[test]
fn the_heat_answer_agrees_with_the_formulas() {
    // Copper, 0.8 mm, 230 C, a wide sheet: from 2.5 mm at h = 50 to 5.6 mm at h = 10 (closed forms, with
    // 2000 mm of metal).
    let mut draft = Draft::default();
    for (path, text) in [
        ("bench.heat.metal", "copper"),
        ("bench.heat.thickness_mm", "0.8"),
        ("bench.heat.joint_c", "230"),
        ("bench.heat.extent_mm", "2000"),
    ] {
        draft.set(path, text);
    }
    let told = answer(&draft, "bench.heat");
    assert!(told.contains("as far as 4 mm to 6 mm away"), "{told}");
}

#[test]
fn the_plating_answer_agrees_with_the_formulas() {
    let mut draft = Draft::default();
    for (path, text) in [
        ("bench.plating.shape", "flat"),
        ("bench.plating.length_mm", "500"),
        ("bench.plating.width_mm", "350"),
        ("bench.plating.thickness_um", "20"),
        ("bench.plating.price_per_g", "2"),
        ("bench.plating.bill", "600"),
    ] {
        draft.set(path, text);
    }
    // pi/4 of 50 by 35 cm is 1374 cm2. Times 0.002 cm and 10.49 g/cm3 it is 28.8 g. 57.7 of 600 is 10 %.
    let told = answer(&draft, "bench.plating");
    assert!(told.contains("1374 cm² weighs 28.8 g"), "{told}");
    assert!(told.contains("about 10 %"), "{told}");
    draft.set("bench.plating.sides", "both");
    assert!(answer(&draft, "bench.plating").contains("2749 cm² weighs 57.7 g"));
}

#[test]
fn a_release_test_is_compared_with_the_limits_and_recalled_limits_show_no_number() {
    let mut draft = Draft::default();
    draft.set("bench.food.pb", "0.010");
    let (blocks, text) = said(PageName::Bench, &draft);
    assert!(!text.contains("Over the limit"));
    draft.set("bench.food.pb", "0.011");
    assert!(
        said(PageName::Bench, &draft)
            .1
            .contains("Over the limit: lead")
    );
    let mut recalled = 0;
    walk(&blocks, &mut |b| {
        if let Block::Table(t) = b
            && t.caption.starts_with("What may come off")
        {
            for row in &t.rows {
                if ["Cadmium", "Arsenic", "Mercury"].contains(&row[0].as_str()) {
                    recalled += 1;
                    assert!(
                        !row.join(" ").chars().any(|c| c.is_ascii_digit()),
                        "{row:?}"
                    );
                    assert!(row[2].contains("check the current figure with the regulator"));
                }
            }
        }
    });
    assert_eq!(recalled, 3);
}

#[test]
fn all_six_display_only_reasons_are_listed_and_one_is_enough() {
    let mut draft = Draft::default();
    draft.set("piece.form", "teapot");
    draft.set_flag("aim.store_food", Some(true));
    let (blocks, text) = said(PageName::Bench, &draft);
    assert!(text.contains("For display only, for 2 reasons."));
    let label = caution("caution.display_only").unwrap().text;
    assert!(paragraphs(&blocks).iter().any(|(said, _)| *said == label));
    let mut reasons = 0;
    walk(&blocks, &mut |b| {
        if let Block::Table(t) = b
            && t.caption.starts_with("The six reasons")
        {
            reasons = t.rows.len();
        }
    });
    assert_eq!(reasons, 6);
}

/// The page gives the risk of the class that the weighing uses: replating keeps .70 of a documented piece of
/// nickel silver when it goes wrong, and .60 of another (ledger, `hazard.T14a.C1.kept` and `.C2.kept`).
#[test]
fn a_documented_piece_shows_the_risks_that_the_weighing_uses() {
    let shown = |documented: bool| {
        let mut draft = Draft::default();
        draft.set("piece.form", "tray");
        draft.set_answer(FindingId::M01, "seen", "");
        draft.set_answer(FindingId::S04, "seen", "");
        draft.set_flag("piece.documented", documented.then_some(true));
        let blocks = PageName::Catalogue.blocks(&Subject::new(draft));
        serde_json::to_string(&blocks).unwrap()
    };
    let line = |kept: &str| {
        format!("about 3 in 100 (1.5 to 6), leaving about {kept} % of the value when it happens")
    };
    assert!(shown(false).contains(&line("60")));
    assert!(shown(true).contains(&line("70")) && !shown(true).contains(&line("60")));
}
