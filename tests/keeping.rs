//! Storage: saved records load again, two records merge without loss, and no broken file stops the reader.
//! Every record and file here is CONSTRUCTED.
//!
//! `LEAVEWELL_FUZZ=1000000 cargo test --release --test keeping broken` reads that many files instead of the
//! few thousand of an ordinary run.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use leavewell_model::record::difference::{ChangedBy, changed_by, differences, merge};
use leavewell_model::record::schema::FIELDS;
use leavewell_model::record::shelf_file::{SHELF_VERSION, open, open_json};
use leavewell_model::record::{CASE_VERSION, Draft};
use leavewell_model::terms::Ending;
use leavewell_pages::compare::compare_json;
use proptest::prelude::*;
use proptest::test_runner::{Config, FileFailurePersistence, RngSeed};
use serde_json::{Map, Number, Value, json};

fn config(cases: u32) -> Config {
    Config {
        cases,
        // A fixed seed, so that a fault can be reproduced.
        rng_seed: RngSeed::Fixed(20_240_511),
        failure_persistence: Some(Box::new(FileFailurePersistence::Off)),
        ..Config::default()
    }
}

/// Numbers in any notation a user may type. Their text must survive.
fn number() -> impl Strategy<Value = Value> {
    prop::sample::select(vec![
        "0",
        "-0",
        "1.50",
        "1e3",
        "12345678901234567890123",
        "0.1000",
        "-7",
        "1e999",
    ])
    .prop_map(|text| Value::Number(serde_json::from_str::<Number>(text).unwrap()))
}

fn leaf() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::Bool),
        number(),
        prop::sample::select(vec!["", "seen", "</script>", "\u{0}\u{7f}é漢🥄", "\"\\"])
            .prop_map(Value::from),
    ]
}

/// Few names, so that two records often share one.
fn name() -> impl Strategy<Value = String> {
    prop::sample::select(vec!["part", "id", "note", "a.b", "x[0]", "", "treatment"])
        .prop_map(str::to_owned)
}

fn value() -> impl Strategy<Value = Value> {
    leaf().prop_recursive(3, 12, 3, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..3).prop_map(Value::Array),
            prop::collection::btree_map(name(), inner, 0..3)
                .prop_map(|fields| Value::Object(fields.into_iter().collect())),
        ]
    })
}

/// A list keyed by a field, sometimes with a duplicate or an invalid entry.
fn keyed(key: &'static str) -> impl Strategy<Value = Value> {
    let entry = (
        prop::sample::select(vec!["foot", "body", "C01", "T09"]),
        prop::collection::btree_map(name(), leaf(), 0..3),
    )
        .prop_map(move |(id, fields)| {
            let mut entry: Map<String, Value> = fields.into_iter().collect();
            entry.insert(key.to_owned(), id.into());
            Value::Object(entry)
        });
    prop_oneof![
        8 => prop::collection::vec(entry, 0..4).prop_map(Value::Array),
        1 => value(),
    ]
}

/// The pieces of a set with their parts, and a proposal: nested lists.
fn nested() -> impl Strategy<Value = (Value, Value)> {
    let piece = (1_u8..4, keyed("part")).prop_map(|(no, parts)| json!({"no": no, "parts": parts}));
    (
        prop::collection::vec(piece, 0..3).prop_map(|each| json!({"each": each})),
        keyed("id").prop_map(|steps| json!({"steps": steps})),
    )
}

fn record() -> impl Strategy<Value = Draft> {
    let field = |of: BoxedStrategy<Value>| prop::option::of(of);
    (
        field(value().boxed()),
        field(keyed("id").boxed()),
        field(keyed("part").boxed()),
        field(keyed("treatment").boxed()),
        field(value().boxed()),
        prop::option::of(nested()),
    )
        .prop_map(|(piece, findings, parts, quotes, later, nested)| {
            let mut root = json!({"format": "leavewell-case", "version": 2});
            let (pieces, proposal) = nested.unzip();
            let fields = [
                ("piece", piece),
                ("findings", findings),
                ("parts", parts),
                ("quotes", quotes),
                ("later", later),
                ("pieces", pieces),
                ("proposal", proposal),
            ];
            for (name, value) in fields {
                if let Some(value) = value {
                    root[name] = value;
                }
            }
            Draft::parse(&root.to_string()).unwrap()
        })
}

/// The record with every unordered list sorted, inner lists first.
fn in_order(draft: &Draft) -> Value {
    fn sort(list: Option<&mut Value>) {
        if let Some(entries) = list.and_then(Value::as_array_mut) {
            entries.sort_by_key(Value::to_string);
        }
    }
    let mut root: Value = serde_json::from_str(&draft.to_json()).unwrap();
    let each = root
        .pointer_mut("/pieces/each")
        .and_then(Value::as_array_mut);
    for piece in each.into_iter().flatten() {
        sort(piece.get_mut("parts"));
    }
    for list in [
        "/pieces/each",
        "/proposal/steps",
        "/findings",
        "/parts",
        "/quotes",
    ] {
        sort(root.pointer_mut(list));
    }
    root
}

proptest! {
    #![proptest_config(config(400))]

    #[test]
    fn saving_then_loading_changes_nothing(draft in record()) {
        let text = draft.to_json();
        let loaded = Draft::parse(&text).unwrap();
        prop_assert_eq!(&loaded, &draft);
        prop_assert_eq!(loaded.to_json(), text.clone(), "byte for byte");
        let mut named = draft.clone();
        named.set("kept.id", "a-1");
        let opened = open(&named.to_json()).unwrap();
        prop_assert_eq!(&opened.cases[0].text, &text);
        prop_assert_eq!(&opened.cases[0].id, "a-1");
        let shelf = format!(
            "{{\"format\":\"leavewell-shelf\",\"version\":1,\"cases\":[\n{{\"id\":\"a-1\",\"revision\":1,\"case\":{text}}}\n]}}"
        );
        let opened = open(&shelf).unwrap();
        prop_assert_eq!(&opened.cases[0].text, &text);
    }

    #[test]
    fn typed_text_is_preserved_and_never_stops_the_reader(
        place in 0..FIELDS.len(),
        text in prop_oneof![
            any::<String>(),
            "[£€$]?[-0-9., ½¼¾%e]{1,9}".prop_map(String::from),
            prop::sample::select(vec!["seen", "foot", "T08 T12", "proposal", "yes", "2026-11"])
                .prop_map(str::to_owned),
        ],
    ) {
        let path = FIELDS[place].path.replace("[]", "[0]");
        let mut draft = Draft::default();
        draft.set(&path, &text);
        prop_assert_eq!(draft.text(&path), text.clone());
        let loaded = Draft::parse(&draft.to_json()).unwrap();
        prop_assert_eq!(loaded.text(&path), text);
        let (_, problems) = loaded.read();
        prop_assert!(problems.iter().all(|p| p.message.ends_with('.')), "{:?}", problems);
        if let Err(problem) = loaded.number(&path) {
            prop_assert!(problem.remedy.ends_with('.'), "{:?}", problem);
        }
    }

    #[test]
    fn two_records_merge_without_loss(mine in record(), theirs in record(), pick in any::<u64>()) {
        let found = differences(&mine, &theirs);
        let all = |take: bool| vec![take; found.len()];
        prop_assert_eq!(in_order(&merge(&mine, &theirs, &all(false))), in_order(&mine));
        prop_assert_eq!(in_order(&merge(&mine, &theirs, &all(true))), in_order(&theirs));
        // Swapping both the records and the choices gives the same record.
        let take: Vec<bool> = (0..found.len()).map(|n| pick >> (n % 64) & 1 == 1).collect();
        let other: Vec<bool> = take.iter().map(|t| !t).collect();
        let made = merge(&mine, &theirs, &take);
        prop_assert_eq!(in_order(&made), in_order(&merge(&theirs, &mine, &other)));
        // The result differs from each record only where the other one was chosen.
        let chosen = take.iter().filter(|t| **t).count();
        prop_assert!(differences(&made, &mine).len() <= chosen.max(1) * 4);
        prop_assert_eq!(differences(&made, &made).len(), 0);
    }

    #[test]
    fn differences_are_the_same_from_either_side(a in record(), b in record()) {
        let (there, back) = (differences(&a, &b), differences(&b, &a));
        prop_assert_eq!(there.len(), back.len());
        for (x, y) in there.iter().zip(&back) {
            prop_assert_eq!(&x.path, &y.path);
            prop_assert_eq!(&x.mine, &y.theirs);
        }
        let by = changed_by(&a, &a, &b, &there);
        prop_assert!(by.iter().all(|by| *by == ChangedBy::Theirs), "{:?}", by);
    }

    #[test]
    fn every_pair_of_records_can_be_shown(a in record(), b in record()) {
        let question = format!("{{\"mine\":{},\"theirs\":{}}}", a.to_json(), b.to_json());
        let answer: Value = serde_json::from_str(&compare_json(&question)).unwrap();
        let lines = answer["differences"].as_array().unwrap();
        prop_assert_eq!(lines.len(), differences(&a, &b).len());
        prop_assert!(lines.iter().all(|line| !line["name"].as_str().unwrap().is_empty()));
    }
}

const FIXTURES: [&str; 3] = [
    include_str!("files/case-1.json"),
    include_str!("files/case-2.json"),
    include_str!("files/shelf-1.json"),
];

/// A record of version 1 with every finding of that version, each still known and still answered.
#[test]
fn every_finding_of_the_first_version_is_still_read_and_answered() {
    let draft = Draft::parse(include_str!("files/findings-1.json")).unwrap();
    let (case, problems) = draft.read();
    assert!(problems.is_empty(), "{problems:?}");
    assert_eq!(case.findings.len(), 57);
    assert_eq!(draft.to_json().matches("\"version\": 1").count(), 1);
    let ledger = leavewell_model::ledger::Ledger::standard();
    for answer in &case.findings {
        let alone = leavewell_model::record::Case {
            findings: vec![answer.clone()],
            ..leavewell_model::record::Case::default()
        };
        let found = leavewell_model::identity::identify(&alone, ledger);
        assert!(!found.sentence.is_empty(), "{}", answer.id);
        // Every one of them is evidence on what the piece is.
        assert_eq!(found.pushes.len(), 1, "{}", answer.id);
    }
}

#[test]
fn the_second_version_is_read_completely() {
    let (case, problems) = Draft::parse(FIXTURES[1]).unwrap().read();
    assert!(problems.is_empty(), "{problems:?}");
    assert_eq!(case.market.likely, Some(1150.0));
    assert_eq!(case.quotes[0].hours, Some(2.5));
    assert_eq!(
        (case.parts.len(), case.tests.len(), case.done.len()),
        (3, 1, 1),
        "the stem is in one state on the first piece and in another on the second"
    );
    assert!(case.aim.assume_lead && case.proposal.steps[0].agreed);
    assert!(case.has_flaw("part_missing_minor"));
    assert_eq!(case.closed.outcome, Some(Ending::Sold));
    assert_eq!(case.closed.sale.price, Some(1260.0));
    assert_eq!(
        case.predicted[0].shipped.price,
        Some([610.0, 1120.0, 1990.0])
    );
}

#[test]
fn a_file_of_every_version_opens() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/files");
    let kinds = [("case", CASE_VERSION), ("shelf", SHELF_VERSION)];
    for (kind, newest) in kinds {
        for version in 1..=newest {
            let name = format!("{folder}/{kind}-{version}.json");
            let text = std::fs::read_to_string(&name).expect("a file is kept for every version");
            let opened = open(&text).unwrap();
            assert!(opened.damage.is_none() && opened.lost == 0, "{name}");
            assert_eq!(opened.shelf, kind == "shelf", "{name}");
            assert!(
                opened.cases.iter().all(|case| case.problem.is_none()),
                "{name}"
            );
            assert!(
                opened.cases.iter().all(|case| !case.name.is_empty()),
                "{name}"
            );
            let newer = text.replacen(
                &format!("\"version\": {version}"),
                &format!("\"version\": {}", newest + 1),
                1,
            );
            let newer = newer.replacen(
                &format!("\"version\":{version}"),
                &format!("\"version\":{}", newest + 1),
                1,
            );
            let refused = open(&newer).unwrap_err();
            assert!(refused.message.contains("reads up to"), "{refused:?}");
        }
    }
}

/// The linear congruential generator of Knuth's MMIX.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % n.max(1)
    }
}

/// Fragments that have broken readers.
const SHARDS: [&str; 22] = [
    "{",
    "}",
    "[",
    "]",
    "\"",
    "\\",
    ",",
    ":",
    "null",
    "1e999",
    "-",
    "0",
    "\\u0000",
    "\\ud800",
    "\u{feff}",
    "</script>",
    "\n{\"id\":",
    "\n{\"case\":",
    "\"format\":\"leavewell-shelf\"",
    "[[[[[[[[",
    "{\"a\":{\"a\":",
    "\u{1F944}",
];

/// A file with a few faults.
fn broken(dice: &mut Dice) -> String {
    let mut text = FIXTURES[dice.below(FIXTURES.len())].to_owned();
    let place = |dice: &mut Dice, text: &str| {
        let mut at = dice.below(text.len() + 1);
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        at
    };
    for _ in 0..=dice.below(4) {
        let at = place(dice, &text);
        match dice.below(5) {
            0 => text.truncate(at),
            1 => text.insert_str(at, SHARDS[dice.below(SHARDS.len())]),
            2 => {
                let end = place(dice, &text).clamp(at, at.saturating_add(40).min(text.len()));
                let end = if text.is_char_boundary(end) { end } else { at };
                text.replace_range(at..end, "");
            }
            3 => {
                let end = place(dice, &text);
                let (a, b) = (at.min(end), at.max(end));
                let copied = text[a..b].chars().take(300).collect::<String>();
                text.insert_str(at, &copied);
            }
            _ => {
                let from = ["1", "\"", "{", "true", "seen", ":"][dice.below(6)];
                text = text.replacen(from, SHARDS[dice.below(SHARDS.len())], 1);
            }
        }
    }
    text
}

#[test]
fn no_broken_file_stops_the_reader() {
    let rounds = std::env::var("LEAVEWELL_FUZZ")
        .ok()
        .and_then(|n| n.parse().ok());
    let rounds: usize = rounds.unwrap_or(3_000);
    let mut dice = Dice(20_240_511);
    let (mut whole, mut salvaged, mut refused) = (0, 0, 0);
    for _ in 0..rounds {
        let text = broken(&mut dice);
        match open(&text) {
            Ok(opened) => {
                for case in opened.cases.iter().filter(|case| case.problem.is_none()) {
                    // An accepted file can be saved and opened again.
                    assert_eq!(Draft::parse(&case.text).unwrap().to_json(), case.text);
                }
                if opened.damage.is_some() {
                    salvaged += 1;
                } else {
                    whole += 1;
                }
            }
            Err(problem) => {
                assert!(
                    problem.message.ends_with('.') && problem.remedy.ends_with('.'),
                    "{problem:?}"
                );
                refused += 1;
            }
        }
        if rounds <= 3_000 {
            assert!(serde_json::from_str::<Value>(&open_json(&text)).is_ok());
        }
    }
    println!("{rounds} files: {whole} opened, {salvaged} in part, {refused} refused");
    assert!(whole > 0 && salvaged > 0 && refused > 0);
}

#[test]
fn huge_files_are_read_or_refused_quickly() {
    // A million names in one record, and in a shelf.
    let fields = (0..1_000_000).fold(String::new(), |all, n: u32| {
        all + ",\"k" + &n.to_string() + "\":0"
    });
    let case = format!("{{\"format\":\"leavewell-case\",\"version\":1{fields}}}");
    assert!(case.len() > 8 * 1024 * 1024);
    assert!(open(&case).unwrap_err().message.contains("MB"));
    let shelf = format!(
        "{{\"format\":\"leavewell-shelf\",\"version\":1,\"cases\":[{{\"id\":\"a\",\"case\":{case}}}]}}"
    );
    let opened = open(&shelf).unwrap();
    assert_eq!(opened.cases.len(), 1);
    let wide = Draft::parse(
        &case[..4_000_000]
            .rsplit_once(',')
            .map(|(a, _)| format!("{a}}}"))
            .unwrap(),
    );
    let found = differences(&wide.unwrap(), &Draft::default());
    assert!(found.len() > 100_000);
}
