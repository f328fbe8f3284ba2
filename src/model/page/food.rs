//! May it hold food or drink? The six display-only reasons, what a laboratory's figures are held
//! against, and why passing an old criterion says little.

use super::ask::{Question, number};
use super::bench::Bench;
use super::block::{Block, Table, Tone};
use super::caution_blocks;
use super::say::figures;
use super::sources_fold::sources_fold;
use crate::counsel::situated;
use crate::facts::{Tag, caution};
use crate::treatment::{LeadStatus, Treatment};

/// The six reasons, by number.
const TRIGGERS: [&str; 6] = [
    "Lead solder, lead filling or leaded metal on the wet side, or nobody has tested an old soldered piece",
    "Bare copper, brass or nickel metal on the wet side, with anything sour in it",
    "A lining of lacquer, wax or glue, a low-melting repair, or fresh plating not yet checked",
    "Old gilding that may hold mercury, cadmium solder, hollows that were dipped, asbestos pads, a leaking double wall",
    "A child, or someone pregnant or breast-feeding, would use it",
    "Food or drink standing in it for hours, or something hot in a loaded or closed part",
];

/// Metals with a release limit: figure, name, whether a field asks for the laboratory's result.
const METALS: [(&str, &str, bool); 16] = [
    ("Pb", "Lead", true),
    ("Cd", "Cadmium", false),
    ("As", "Arsenic", false),
    ("Hg", "Mercury", false),
    ("Cu", "Copper", true),
    ("Ni", "Nickel", true),
    ("Ag", "Silver", true),
    ("Sn", "Tin", true),
    ("Sb", "Antimony", true),
    ("Zn", "Zinc", true),
    ("Fe", "Iron", false),
    ("Al", "Aluminium", false),
    ("Co", "Cobalt", false),
    ("Cr", "Chromium", false),
    ("Mn", "Manganese", false),
    ("Tl", "Thallium", false),
];

/// The instrument.
pub(super) fn section(bench: &Bench<'_>) -> Block {
    let (triggers, lead, food) = situated(&bench.case, |s| {
        (
            s.triggers(),
            s.lead,
            s.case.aim.food || s.case.aim.store_food,
        )
    });
    let (fields, tested) = results(bench);
    let mut blocks = vec![Block::said(
        Tone::Answer,
        sentence(triggers.len(), lead, food),
    )];
    blocks.push(Block::Table(trigger_table(&triggers)));
    blocks.extend(label(!triggers.is_empty()));
    blocks.extend(caution_blocks::named("caution.child"));
    blocks.extend(verdict(bench, &tested));
    blocks.push(Block::fold(
        "bench.food.results",
        "Hold a laboratory's release test against the limits",
        fields,
    ));
    blocks.push(Block::Table(limits(bench)));
    blocks.extend(legacy(bench));
    blocks.extend(caution_blocks::of_treatment(Treatment::TestLead));
    blocks.push(sources_fold(
        "bench.food.sources",
        &bench.ledger,
        &[
            "food.limit.Pb",
            "food.limit.Cu",
            "food.limit.Ni",
            "food.limit.Ag",
            "food.limit.Sn",
            "food.limit.Sb",
            "food.legacy_adult",
            "food.legacy_child",
            "food.daily_adult",
            "food.daily_child",
            "food.code_pewter",
            "food.code_solder",
            "guard.food_year",
        ],
    ));
    Block::section("bench.food", "Food and drink", blocks)
}

fn sentence(reasons: usize, lead: LeadStatus, food: bool) -> String {
    let answer = match reasons {
        0 if lead == LeadStatus::Absent => {
            "Nothing recorded keeps it for display, and a release test passed: for what was tested, as it was tested."
                .to_owned()
        }
        0 => "Nothing recorded keeps it for display only. That is not yet a test: only a release test answers for lead."
            .to_owned(),
        1 => "For display only, for one reason.".to_owned(),
        n => format!("For display only, for {n} reasons."),
    };
    if food && reasons > 0 {
        format!("{answer} You want it for food or drink: have it tested first.")
    } else {
        answer
    }
}

fn trigger_table(found: &[(u8, &'static str)]) -> Table {
    let rows = TRIGGERS
        .iter()
        .zip(1_u8..)
        .map(|(what, n)| {
            let why: Vec<&str> = found
                .iter()
                .filter(|(number, _)| *number == n)
                .map(|(_, why)| *why)
                .collect();
            let holds = if why.is_empty() {
                "not as far as recorded".to_owned()
            } else {
                why.join(" ")
            };
            let lifted = match n {
                1 | 2 => "a release test that passes, for what was tested",
                5 => "a laboratory release test that passes, and nothing else",
                _ => "no test: only a change to the piece or its use",
            };
            vec![(*what).to_owned(), holds, lifted.to_owned()]
        })
        .collect();
    Table {
        caption: "The six reasons to keep a piece for display; one is enough".to_owned(),
        columns: ["Reason", "On this piece", "What lifts it"]
            .map(str::to_owned)
            .to_vec(),
        rows,
    }
}

fn label(display_only: bool) -> Vec<Block> {
    let Some(text) = caution("caution.display_only") else {
        return Vec::new();
    };
    let mut blocks = vec![Block::said(Tone::Stop, text.text)];
    if display_only {
        blocks.push(Block::said(
            Tone::Quiet,
            "Print or copy that line and tie it to the piece, so that nobody who comes after has to ask.",
        ));
    }
    blocks
}

/// Fields for a laboratory's results, and what was given: metal and milligrams for each kilogram.
fn results(bench: &Bench<'_>) -> (Vec<Block>, Vec<(&'static str, &'static str, f64)>) {
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
        let Some((_, name, _)) = METALS.iter().find(|(known, ..)| *known == id) else {
            continue;
        };
        let (field, value) = number(
            bench.draft,
            Question {
                path,
                label: name,
                unit: "mg/kg",
                hint: "",
                range: (0.0, 100_000.0),
                stand_in: None,
            },
        );
        fields.push(field);
        if let Some(value) = value {
            given.push((id, *name, value));
        }
    }
    (
        vec![
            Block::para(
                "From a release test with an acid liquid that stands for food, in milligrams for each kilogram of it.",
            ),
            Block::Row { blocks: fields },
        ],
        given,
    )
}

fn verdict(bench: &Bench<'_>, given: &[(&'static str, &'static str, f64)]) -> Vec<Block> {
    if given.is_empty() {
        return Vec::new();
    }
    let over: Vec<String> = given
        .iter()
        .filter_map(|(id, name, value)| {
            let limit = bench.ledger.value(&format!("food.limit.{id}"));
            (*value > limit).then(|| {
                format!(
                    "{} {} against {} mg/kg",
                    name.to_lowercase(),
                    figures(*value),
                    figures(limit)
                )
            })
        })
        .collect();
    let lead = given.iter().any(|(id, ..)| *id == "Pb");
    if over.is_empty() {
        vec![Block::para(if lead {
            "None of these results is over its limit. That lifts the reasons about lead and bare metal, for the place, \
             the liquid and the time tested; the other reasons stand. Put it on record with the part: tested, no lead \
             released."
        } else {
            "None of these results is over its limit, but lead is not among them, and lead is the question."
        })]
    } else {
        vec![Block::said(
            Tone::Stop,
            format!("Over the limit: {}. Keep it for display.", over.join("; ")),
        )]
    }
}

fn limits(bench: &Bench<'_>) -> Table {
    let rows = METALS
        .iter()
        .map(|(id, name, _)| {
            let figure = bench.ledger.figure(&format!("food.limit.{id}"));
            if figure.tag == Tag::Memory && figure.own_reason.is_none() {
                vec![
                    (*name).to_owned(),
                    "there is one".to_owned(),
                    "check the current figure with the regulator".to_owned(),
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
        caption: "What may come off into a kilogram of food: Council of Europe guide of 2024, not itself a law"
            .to_owned(),
        columns: ["Metal", "Limit", "How known"].map(str::to_owned).to_vec(),
        rows,
    }
}

/// Why the old American criterion is no sign of safety, in numbers of a cup.
fn legacy(bench: &Bench<'_>) -> Vec<Block> {
    let v = |id: &str| bench.ledger.value(id);
    let (cup_field, cup) = number(
        bench.draft,
        Question {
            path: "bench.food.cup_ml",
            label: "One cup",
            unit: "mL",
            hint: "",
            range: (1.0, 5000.0),
            stand_in: Some(v("food.cup")),
        },
    );
    let mut blocks = Vec::new();
    if let Some(cup) = cup {
        let (old, limit) = (v("food.legacy_adult"), v("food.limit.Pb"));
        let (adult, child) = (v("food.daily_adult"), v("food.daily_child"));
        let micrograms = old * cup;
        let times = |x: f64, of: f64| {
            if of > 0.0 {
                figures((x / of).round())
            } else {
                "not known how many".to_owned()
            }
        };
        blocks.push(Block::para(format!(
            "An old American criterion seizes plated ware at {} µg of lead in each mL (quoted second hand: check the \
             current text). It is no sign of safety. A cup of {} mL at that level holds {} µg of lead, {} times what an \
             adult who may bear children should take in with all food in a day, and {} times today's European release \
             limit. Even at that limit a cup carries {} µg, against {} µg a day for a child.",
            figures(old),
            figures(cup),
            figures(micrograms),
            times(micrograms, adult),
            times(old * 1000.0, limit * 1000.0),
            figures(limit * cup),
            figures(child),
        )));
    }
    blocks.push(Block::Row {
        blocks: vec![cup_field],
    });
    blocks.push(Block::said(
        Tone::Quiet,
        format!(
            "One mL is taken as one gram. The American model food code keeps pewter with more than {} % of lead and \
             solder with more than {} % away from food.",
            figures(v("food.code_pewter")),
            figures(v("food.code_solder"))
        ),
    ));
    blocks
}
