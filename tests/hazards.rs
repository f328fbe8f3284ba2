//! Every recorded hazard takes effect everywhere: for each hazard and each treatment, the weighing, the page
//! of all treatments, the sheets, the food page and the plan agree. The pieces are CONSTRUCTED.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use leavewell_model::Draft;
use leavewell_model::counsel::offer::offer;
use leavewell_model::counsel::{Solved, solve};
use leavewell_model::ledger::{Ledger, RuleId, caution};
use leavewell_model::report::Report;
use leavewell_model::road::{self, Damage, RoadQuestion, RoadWalk, UNSURE};
use leavewell_model::terms::{Joint, Lead, PartName, Treatment};
use leavewell_model::treatment::{Fault, Faults, Outcome, Verdict, check, worst};
use leavewell_pages::{Block, PageName, Subject};

/// The record of a piece before any hazard.
const PIECES: [(&str, &str); 4] = [
    (
        "fused teapot",
        r#","piece":{"form":"teapot"},"findings":[{"id":"C01","answer":"seen"},{"id":"C07","answer":"seen"},{"id":"C08","answer":"seen"}],"parts":[{"part":"body","bleed":"slight","tarnish":"brown","joint":"leaking"}],"market":{"low":200,"likely":350,"high":600,"currency":"GBP"}"#,
    ),
    (
        "nickel-silver tray",
        r#","piece":{"form":"tray"},"findings":[{"id":"M01","answer":"seen"},{"id":"S04","answer":"seen"}],"parts":[{"part":"body","bleed":"some","tarnish":"black","dents":"minor"}]"#,
    ),
    (
        "candlestick",
        r#","piece":{"form":"candlestick"},"findings":[{"id":"C06","answer":"seen"}],"parts":[{"part":"body","bleed":"slight"},{"part":"base","joint":"open"}]"#,
    ),
    (
        "sauceboat with a grey repair",
        r#","piece":{"form":"sauceboat"},"findings":[{"id":"M09","answer":"seen"}],"parts":[{"part":"body","joint":"grey_repair"},{"part":"interior","interior":"tinned"}],"aim":{"goal":"keep_use"}"#,
    ),
];

/// Hazards that may loosen a verdict because they are also a reason for work, with the treatments for which
/// they are a reason. Lead that was found answers the question of H16 everywhere.
const REASONS: [(&str, &[Treatment]); 5] = [
    ("green corrosion", &[Treatment::RemoveLead]),
    ("rust", &[Treatment::RemoveLead]),
    ("white powder", &[Treatment::RemoveLead]),
    ("food", &[Treatment::RemoveLead]),
    ("a failing filling", &[Treatment::RemoveFill]),
];

type Hazard = (&'static str, fn(&mut Draft));

/// Every hazard a user can record.
const HAZARDS: [Hazard; 46] = [
    ("cadmium", |d| d.set("catalogue.hard_repair", "yes")),
    ("asbestos", |d| d.set("catalogue.insulator", "yes")),
    ("mercury gilding", |d| {
        d.set("catalogue.fire_gilding", "yes");
    }),
    ("wood or ivory", |d| d.set("catalogue.organic", "yes")),
    ("dark work", |d| d.set("catalogue.dark_work", "yes")),
    ("ammonia", |d| d.set("catalogue.ammonia", "yes")),
    ("a failing filling", |d| {
        d.set("catalogue.failing_fill", "yes");
    }),
    ("a protected part", |d| {
        d.set("catalogue.protected_part", "yes");
    }),
    ("lead found", |d| d.set_part("foot", "lead", "present")),
    ("a lead filling", |d| d.set_part("border", "fill", "lead")),
    ("a filling that shows", |d| {
        d.set_part("border", "mount", "fill_showing");
    }),
    ("a closed part", |d| d.set_part("handle", "fill", "sealed")),
    ("pitch", |d| d.set_part("handle", "fill", "pitch")),
    ("a grey repair", |d| {
        d.set_part("spout", "joint", "grey_repair");
    }),
    ("a neat repair", |d| {
        d.set_part("spout", "joint", "neat_repair");
    }),
    ("broken lacquer", |d| {
        d.set_part("cover", "lacquer", "broken");
    }),
    ("gilding", |d| d.set_part("cover", "interior", "gilt")),
    ("green corrosion", |d| {
        d.set_part("foot", "corrosion", "green");
    }),
    ("rust", |d| d.set_part("foot", "corrosion", "rust")),
    ("white powder", |d| {
        d.set_part("foot", "corrosion", "white_powder");
    }),
    ("a split", |d| d.set_part("foot", "dents", "split")),
    ("a split through the body", |d| {
        d.set_part("body", "split", "through");
    }),
    ("loaded, as weighed", |d| {
        d.set_flag("measures.density.loaded", Some(true));
    }),
    ("closed, as weighed", |d| {
        d.set_flag("measures.density.hollow_sealed", Some(true));
    }),
    ("wood or ivory, as weighed", |d| {
        d.set_flag("measures.density.organic", Some(true));
    }),
    ("filled behind, as measured", |d| {
        d.set_flag("measures.iacs.loaded", Some(true));
    }),
    ("a child", |d| {
        d.set_flag("aim.household_child_or_pregnant", Some(true));
    }),
    ("food", |d| d.set_flag("aim.food", Some(true))),
    ("standing food", |d| {
        d.set_flag("aim.store_food", Some(true));
    }),
    ("lead assumed", |d| {
        d.set_flag("aim.assume_lead", Some(true));
    }),
    ("a failed release test", |d| d.set("bench.food.pb", "5")),
    ("work at home", |d| d.set("aim.doer", "owner")),
    ("a hollow foot", |d| d.set_part("foot", "hollow", "yes")),
    ("a glass liner", |d| d.set_part("body", "liner", "glass")),
    ("a metal liner", |d| d.set_part("body", "liner", "metal")),
    ("a wooden handle", |d| {
        d.set_part("handle", "material", "wood");
    }),
    ("ivory", |d| d.set_part("finial", "material", "ivory")),
    ("composition", |d| {
        d.set_part("handle", "material", "composition");
    }),
    ("a split wooden handle", |d| {
        d.set_part("handle", "material", "wood");
        d.set_part("handle", "split", "through");
    }),
    ("gilding on a part", |d| {
        d.set_part("border", "gilding", "worn");
    }),
    ("traces of gilding", |d| {
        d.set_part("border", "gilding", "gone");
    }),
    ("candle wax", |d| d.set_part("rim", "wax", "yes")),
    ("a dishwasher", |d| d.set_flag("aim.dishwasher", Some(true))),
    ("a damp place", |d| d.set_flag("aim.damp", Some(true))),
    ("a loan", |d| d.set_flag("aim.loan", Some(true))),
    ("a date too near", |d| {
        d.set("asked_on", "2026-11-30");
        d.set("aim.until", "2026-12-02");
    }),
];

fn page(name: PageName, draft: &Draft) -> Vec<Block> {
    name.blocks(&Subject::new(draft.clone()))
}

fn draft(rest: &str) -> Draft {
    Draft::parse(&format!(
        r#"{{"format":"leavewell-case","version":1{rest}}}"#
    ))
    .unwrap()
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

/// Every piece without a hazard and with each hazard, by name.
fn records() -> Vec<(String, Draft)> {
    let mut all = Vec::new();
    for (piece, rest) in PIECES {
        let plain = draft(rest);
        for (hazard, add) in HAZARDS {
            let mut one = plain.clone();
            add(&mut one);
            all.push((format!("{piece}, {hazard}"), one));
        }
        all.push((piece.to_owned(), plain));
    }
    all
}

fn solved(draft: &Draft) -> (Solved, Report) {
    let (case, problems) = draft.read();
    assert!(problems.is_empty(), "{problems:?}");
    let solved = solve(&case);
    let report = solved.report(problems);
    (solved, report)
}

fn verdicts(solved: &Solved) -> Vec<(Treatment, Vec<Verdict>)> {
    let s = solved.situation();
    Treatment::ALL.map(|t| (t, check(t, &s))).to_vec()
}

/// The word that introduces a treatment on the page of all treatments.
fn page_word(t: Treatment, verdicts: &[Verdict], report: &Report) -> &'static str {
    let option = report.options.iter().find(|o| o.treatment == t).unwrap();
    let worst = worst(verdicts);
    let advised = report.counsel.steps.contains(&option.treatment);
    if advised {
        // A check that a step requires is the first step of the same advice.
        let tested = report
            .counsel
            .steps
            .first()
            .is_some_and(|first| *first == Treatment::TestLead);
        assert!(
            worst.can_be_advised() || worst == Outcome::NeedsCheck && tested,
            "{} is advised in spite of {verdicts:?}",
            t.id()
        );
        return "Advised";
    }
    if Treatment::NEVER.contains(&t) {
        return "Never";
    }
    if option.not_needed.is_some() {
        return "Not needed";
    }
    match worst {
        Outcome::Allowed | Outcome::Conditional => "Possible",
        Outcome::NeedsCheck => "Needs a check",
        Outcome::NeedsOpinion => "Needs an opinion",
        Outcome::Barred => "Barred",
    }
}

/// Compares all of these places for every record, and solves each case once.
#[test]
fn every_place_agrees_with_the_rule_book() {
    for (name, draft) in records() {
        let (solved, report) = solved(&draft);
        let verdicts = verdicts(&solved);
        weighing_agrees(&name, &verdicts, &report);
        page_of_treatments_agrees(&name, &verdicts, &report, &draft);
        food_page_agrees(&name, &solved, &report, &draft);
        plan_agrees(&name, &verdicts, &solved);
    }
}

fn weighing_agrees(name: &str, verdicts: &[(Treatment, Vec<Verdict>)], report: &Report) {
    for (t, verdicts) in verdicts {
        if let Some(option) = report.options.iter().find(|o| o.treatment == *t) {
            let told: Vec<&str> = option.verdicts.iter().map(|v| v.reason.as_str()).collect();
            let asked: Vec<&str> = verdicts.iter().map(|v| v.reason.as_str()).collect();
            assert_eq!(told, asked, "{name}: {}", t.id());
        }
        // A course of one step is ruled out exactly if the rule book rules the step out.
        let alone = report.courses.iter().filter(|c| c.steps == [*t]);
        for course in alone {
            assert_eq!(
                course.barred.is_empty(),
                worst(verdicts).can_be_advised(),
                "{name}: {} alone: {:?} with {verdicts:?}",
                t.id(),
                course.barred
            );
        }
        // A plan can be advised only if its first step can.
        for course in &report.courses {
            if course.barred.is_empty() && course.steps.first().is_some_and(|s| s == t) {
                assert!(
                    worst(verdicts).can_be_advised(),
                    "{name}: {:?} with {verdicts:?}",
                    course.steps
                );
            }
        }
    }
}

fn page_of_treatments_agrees(
    name: &str,
    verdicts: &[(Treatment, Vec<Verdict>)],
    report: &Report,
    draft: &Draft,
) {
    let blocks = page(PageName::Catalogue, draft);
    for (t, verdicts) in verdicts {
        let mut found = false;
        walk(&blocks, &mut |b| {
            let Block::Section { id, blocks, .. } = b else {
                return;
            };
            if id.strip_prefix("catalogue.") != Some(t.id()) {
                return;
            }
            found = true;
            let text = serde_json::to_string(blocks).unwrap();
            let Block::Para { text: answer, .. } = &blocks[0] else {
                panic!("{name}: {} begins with no answer", t.id());
            };
            let word = page_word(*t, verdicts, report);
            assert!(answer.starts_with(word), "{name}: {}: {answer}", t.id());
            for v in verdicts {
                assert!(
                    text.contains(&in_json(&v.reason)),
                    "{name}: {}: {}",
                    t.id(),
                    v.reason
                );
            }
        });
        assert!(found, "{name}: {} is not listed", t.id());
    }
}

fn food_page_agrees(name: &str, solved: &Solved, report: &Report, draft: &Draft) {
    let text = serde_json::to_string(&page(PageName::Bench, draft)).unwrap();
    let why = solved.situation().display_only();
    assert_eq!(report.display_only.why, why, "{name}");
    for reason in why {
        assert!(text.contains(&in_json(&reason)), "{name}: {reason}");
    }
}

fn plan_agrees(name: &str, verdicts: &[(Treatment, Vec<Verdict>)], solved: &Solved) {
    for choice in &offer(solved).choices {
        let Some(first) = choice.steps.first() else {
            continue;
        };
        let (_, said) = verdicts.iter().find(|(t, _)| t == first).unwrap();
        assert!(
            worst(said).can_be_advised(),
            "{name}: {:?} with {said:?}",
            choice.steps
        );
    }
}

/// Text as written inside a JSON string.
fn in_json(text: &str) -> String {
    let quoted = serde_json::to_string(text).unwrap();
    quoted.trim_matches('"').to_owned()
}

/// The sheets are slow to make, so this test uses one piece.
#[test]
fn the_sheets_carry_the_cautions_of_every_hazard() {
    let plain = draft(PIECES[1].1);
    for (hazard, add) in HAZARDS {
        let mut with = plain.clone();
        add(&mut with);
        let (_, report) = solved(&with);
        for sheet in [PageName::SheetForClient, PageName::SheetForFile] {
            let text = serde_json::to_string(&page(sheet, &with)).unwrap();
            for c in &report.cautions {
                assert!(
                    text.contains(&in_json(&c.text)),
                    "{hazard}, {sheet:?}: {}",
                    c.id
                );
            }
        }
    }
}

/// What a file of the figures says a hazard's caution belongs to, the rule book asks of: with the hazard recorded, the
/// treatment is no longer simply allowed.
#[test]
fn the_rules_speak_wherever_a_hazards_caution_does() {
    let plain = draft(PIECES[1].1);
    for (hazard, id, guard) in [
        ("asbestos", "caution.asbestos", RuleId::H17),
        ("mercury gilding", "caution.mercury", RuleId::H25),
        ("cadmium", "caution.cadmium", RuleId::H24),
    ] {
        let (_, add) = HAZARDS.iter().find(|(name, _)| *name == hazard).unwrap();
        let mut with = plain.clone();
        add(&mut with);
        let (now, _) = solved(&with);
        let verdicts = verdicts(&now);
        for t in &caution(id).unwrap().treatments {
            let (it, said) = verdicts.iter().find(|(it, _)| it.id() == *t).unwrap();
            if Treatment::NEVER.contains(it) {
                continue;
            }
            assert!(
                said.iter().any(|v| v.ground == guard),
                "{hazard}: {t} says {said:?}"
            );
        }
    }
}

#[test]
fn each_hazard_with_a_caution_shows_it() {
    let plain = draft(PIECES[1].1);
    for (hazard, id) in [
        ("cadmium", "caution.cadmium"),
        ("asbestos", "caution.asbestos"),
        ("mercury gilding", "caution.mercury"),
        ("ammonia", "caution.ammonia"),
        ("lead found", "caution.lead"),
        ("a lead filling", "caution.lead"),
        ("lead assumed", "caution.lead"),
        ("a closed part", "caution.sealed"),
        ("rust", "caution.corrosion"),
        ("a dishwasher", "caution.dishwasher"),
        ("a damp place", "caution.damp"),
        ("candle wax", "caution.wax"),
        ("ivory", "caution.ivory"),
        ("traces of gilding", "caution.mercury"),
    ] {
        let text = caution(id).unwrap().text;
        let held = |draft: &Draft| solved(draft).1.cautions.iter().any(|c| c.text == text);
        let (_, add) = HAZARDS.iter().find(|(name, _)| *name == hazard).unwrap();
        let mut with = plain.clone();
        add(&mut with);
        assert!(!held(&plain), "{id} without {hazard}");
        assert!(held(&with), "{id} with {hazard}");
    }
}

#[test]
fn another_hazard_never_loosens_a_rule() {
    for (piece, rest) in PIECES {
        let plain = draft(rest);
        let before = verdicts(&solved(&plain).0);
        for (hazard, add) in HAZARDS {
            let mut with = plain.clone();
            add(&mut with);
            let (now, _) = solved(&with);
            let reasons = REASONS
                .iter()
                .find(|(name, _)| *name == hazard)
                .map_or(&[][..], |(_, treatments)| *treatments);
            let lead_known = [
                "lead found",
                "a lead filling",
                "a filling that shows",
                "lead assumed",
            ]
            .contains(&hazard);
            for ((t, was), (_, is)) in before.iter().zip(verdicts(&now)) {
                // H16 asks whether there is lead; finding it is the answer.
                let of = |v: &[Verdict]| {
                    v.iter()
                        .filter(|v| !(lead_known && v.ground == RuleId::H16))
                        .map(|v| v.outcome)
                        .max()
                        .unwrap_or(Outcome::Allowed)
                };
                assert!(
                    of(&is) >= of(was) || reasons.contains(t),
                    "{piece}, {hazard}: {} was {was:?}, is {is:?}",
                    t.id()
                );
            }
        }
    }
}

/// Damage named on the owner's road counts wherever it is, also where the owner cannot say on which part.
#[test]
fn damage_whose_part_the_owner_does_not_know_is_weighed() {
    for (damage, fault) in [
        (Damage::Missing, Fault::PartLost),
        (Damage::Loose, Fault::LoosePart),
        (Damage::Leaking, Fault::OpenJoint),
        (Damage::Dented, Fault::Dents),
        (Damage::Repair, Fault::GreyRepair),
    ] {
        let mut draft =
            draft(r#","piece":{"form":"teapot"},"aim":{"goal":"keep_use","food":"yes"}"#);
        let named = (RoadQuestion::Trouble, damage.id());
        road::write(&mut draft, &RoadWalk::default(), named.0, named.1);
        let walk = RoadWalk::default().with(named.0, named.1);
        road::write(
            &mut draft,
            &walk,
            RoadQuestion::TroubleWhere(damage),
            UNSURE,
        );
        let (_, report) = solved(&draft);
        let faults = Faults::of(&draft.read().0, Ledger::standard());
        assert!(faults.has(fault), "{damage:?}");
        let needs = |treatment| {
            let option = report.options.iter().find(|o| o.treatment == treatment);
            option.unwrap().not_needed.is_none()
        };
        match damage {
            Damage::Loose => assert!(needs(Treatment::Mechanical)),
            Damage::Repair => assert!(needs(Treatment::RemoveLead)),
            Damage::Missing | Damage::Leaking | Damage::Dented => {}
        }
    }
}

/// Lead found on one of a pair stays on that one when the road records damage of both, and is heard.
#[test]
fn lead_of_one_piece_stays_with_it_on_the_road_and_is_heard() {
    let pair = |lead: &str| {
        let mut draft = Draft::parse(&format!(
            r#"{{"format":"leavewell-case","version":2,"piece":{{"form":"candlestick"}},"aim":{{"goal":"keep_show"}},
            "pieces":{{"relation":"pair","each":[{{"no":2,"parts":[{{"part":"foot","lead":"{lead}"}}]}}]}}}}"#
        ))
        .unwrap();
        let walk = RoadWalk::default().with(RoadQuestion::Trouble, Damage::Loose.id());
        road::write(
            &mut draft,
            &walk,
            RoadQuestion::TroubleWhere(Damage::Loose),
            "foot",
        );
        draft
    };
    let with_lead = pair("present");
    let case = with_lead.read().0;
    for (no, lead) in [(1, None), (2, Some(Lead::Present))] {
        let one = case.of_piece(no);
        let foot = one.part(PartName::Foot).unwrap();
        assert_eq!(
            (foot.joint, foot.lead),
            (Some(Joint::Open), lead),
            "piece {no}"
        );
    }
    // Fixing a loose part disturbs lead only where there is some on that part.
    let hears_lead = |draft: &Draft| {
        let found = verdicts(&solved(draft).0);
        let (_, of_it) = found
            .iter()
            .find(|(t, _)| *t == Treatment::Mechanical)
            .unwrap();
        of_it.iter().any(|verdict| verdict.reason.contains("lead"))
    };
    assert!(hears_lead(&with_lead));
    assert!(!hears_lead(&pair("not_found")));
}
