//! Broken, hostile and careless files: no file stops the program, each fault is reported with its field and
//! what to do, and the valid rest is used. Every file here is CONSTRUCTED.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use leavewell_model::counsel::weigh_at_once;
use leavewell_model::record::{MAX_BYTES, MAX_FINDINGS};
use leavewell_model::{Draft, Problem, weigh_json};
use serde_json::{Value, json};

const EXAMPLES: [&str; 3] = [
    include_str!("cases/worn_tray.json"),
    include_str!("cases/daily_teapot.json"),
    include_str!("cases/rusted_snuffers_tray.json"),
];

fn file(body: &str) -> String {
    format!("{{\"format\":\"leavewell-case\",\"version\":1{body}}}")
}

/// The problems of a file that can be opened.
fn problems(body: &str) -> Vec<Problem> {
    Draft::parse(&file(body)).unwrap().read().1
}

fn check_words(p: &Problem) {
    assert!(!p.field.is_empty(), "{p:?}");
    assert!(p.message.len() > 10 && p.message.ends_with('.'), "{p:?}");
    assert!(p.remedy.len() > 5 && p.remedy.ends_with('.'), "{p:?}");
}

/// Checks for one problem at `field`, with `hint` in its remedy.
#[track_caller]
fn check_fault(body: &str, field: &str, hint: &str) {
    let found = problems(body);
    assert_eq!(found.len(), 1, "{body}: {found:?}");
    let p = &found[0];
    check_words(p);
    assert_eq!(p.field, field, "{p:?}");
    assert!(p.remedy.contains(hint), "{p:?}");
}

/// The reason why a file is refused.
#[track_caller]
fn check_refused(text: &str, field: &str, hint: &str) {
    let said: Value = serde_json::from_str(&weigh_json(text)).unwrap();
    let refused: Problem = {
        let r = &said["refused"];
        let of = |name: &str| r[name].as_str().unwrap_or_default().to_owned();
        Problem {
            field: of("field"),
            message: of("message"),
            remedy: of("remedy"),
        }
    };
    check_words(&refused);
    assert_eq!(refused.field, field, "{refused:?}");
    assert!(
        format!("{} {}", refused.message, refused.remedy).contains(hint),
        "{refused:?}"
    );
}

#[test]
fn an_unknown_name_gets_the_nearest_known_one() {
    check_fault(
        r#","findings":[{"id":"CO1","answer":"seen"}]"#,
        "findings[0].id",
        "C01",
    );
    check_fault(
        r#","findings":[{"id":"C01","answer":"sene"}]"#,
        "findings[0].answer",
        "seen",
    );
    check_fault(
        r#","findings":[{"id":"C01","answer":"seen","part":"spouts"}]"#,
        "findings[0].part",
        "spout",
    );
    check_fault(
        r#","quotes":[{"treatment":"T14A","likely":5}]"#,
        "quotes[0].treatment",
        "T14a",
    );
    check_fault(r#","parts":[{"part":"boddy"}]"#, "parts[0].part", "body");
    check_fault(r#","piece":{"form":"teepot"}"#, "piece.form", "teapot");
    check_fault(r#","aim":{"goal":"sel"}"#, "aim.goal", "sell");
    check_fault(r#","market":{"currency":"GPB"}"#, "market.currency", "GBP");
    check_fault(
        r#","overrides":{"fee.comission":0.2}"#,
        "overrides.fee.comission",
        "fee.commission",
    );
}

#[test]
fn impossible_numbers_are_reported() {
    let part = |bleed: &str| format!(",\"parts\":[{{\"part\":\"body\",\"bleed\":{bleed}}}]");
    check_fault(&part("\"140 %\""), "parts[0].bleed", "0 to 100 %");
    check_fault(&part("1.4"), "parts[0].bleed", "from 0 to 1");
    check_fault(&part("-0.1"), "parts[0].bleed", "from 0 to 1");
    check_fault(&part("\"1e999\""), "parts[0].bleed", "digits");
    check_fault(&part("\"lots\""), "parts[0].bleed", "slight");
    check_fault(
        &part(r#"{"low":0.5,"likely":0.2,"high":0.6}"#),
        "parts[0].bleed",
        "small to large",
    );
    let market = |likely: &str| format!(",\"market\":{{\"likely\":{likely}}}");
    check_fault(&market("-5"), "market.likely", "from 0");
    check_fault(&market("0"), "market.likely", "undamaged");
    check_fault(&market("\"NaN\""), "market.likely", "digits");
    check_fault(&market("\"1e999\""), "market.likely", "digits");
    check_fault(&market("1e999"), "market.likely", "digits");
    check_fault(&market("\"infinity\""), "market.likely", "digits");
    check_fault(&market("1e300"), "market.likely", "from 0");
    check_fault(
        r#","market":{"low":500,"likely":100,"high":50}"#,
        "market.likely",
        "small to large",
    );
    check_fault(
        r#","quotes":[{"treatment":"T09","likely":-1}]"#,
        "quotes[0].likely",
        "from 0",
    );
    check_fault(
        r#","quotes":[{"treatment":"T09"}]"#,
        "quotes[0].likely",
        "price",
    );
    check_fault(
        r#","piece":{"from_year":3000}"#,
        "piece.from_year",
        "1700 to 2100",
    );
    check_fault(
        r#","piece":{"from_year":1699}"#,
        "piece.from_year",
        "1700 to 2100. If it is right",
    );
    check_fault(
        r#","piece":{"to_year":"about"}"#,
        "piece.to_year",
        "such as 1790",
    );
    check_fault(
        r#","measures":{"density":{"in_air_g":300}}"#,
        "measures.density.in_water_g",
        "Type it too",
    );
    check_fault(
        r#","measures":{"density":8.9}"#,
        "measures.density",
        "left out",
    );
    check_fault(
        r#","piece":{"to_year":1800.5}"#,
        "piece.to_year",
        "four digits",
    );
    check_fault(
        r#","piece":{"from_year":1850,"to_year":1800}"#,
        "piece.from_year",
        "Correct one",
    );
    check_fault(r#","piece":{"height_mm":-3}"#, "piece.height_mm", "from 1");
    check_fault(r#","asked_on":"3000-01-01""#, "asked_on", "2026-05-31");
    check_fault(r#","asked_on":"2025-02-30""#, "asked_on", "2026-05-31");
}

#[test]
fn safety_limits_cannot_be_loosened() {
    for (id, value) in [
        ("guard.h14.area", 0.6),
        ("guard.h14.p", 0.5),
        ("guard.h06", 80.0),
        ("guard.h11", 200.0),
        ("guard.h13", 99.0),
        ("guard.h07.margin", 10.0),
    ] {
        let body = format!(",\"overrides\":{{\"{id}\":{value}}}");
        check_fault(&body, &format!("overrides.{id}"), "loosest");
    }
}

#[test]
fn duplicates_are_reported() {
    check_fault(
        r#","parts":[{"part":"foot","bleed":"none"},{"part":"foot","bleed":"much"}]"#,
        "parts[1].part",
        "first",
    );
    check_fault(
        r#","findings":[{"id":"C01","answer":"seen"},{"id":"C01","answer":"absent"}]"#,
        "findings[1].answer",
        "first",
    );
    // The same answer twice is allowed.
    assert!(
        problems(r#","findings":[{"id":"C01","answer":"seen"},{"id":"C01","answer":"seen"}]"#)
            .is_empty()
    );
}

/// An interval with a missing number cannot be used, and that is reported.
#[test]
fn half_an_interval_is_reported() {
    for bleed in ["{}", r#"{"low":0.1}"#, r#"{"low":0.1,"likely":0.2}"#] {
        let found = problems(&format!(
            ",\"parts\":[{{\"part\":\"body\",\"bleed\":{bleed}}}]"
        ));
        assert_eq!(found.len(), 1, "{bleed}: {found:?}");
        check_words(&found[0]);
    }
}

#[test]
fn files_that_are_not_cases_are_refused() {
    check_refused("", "file", "whole");
    check_refused("null", "format", "leavewell-case");
    check_refused("[]", "format", "leavewell-case");
    check_refused("{}", "format", "leavewell-case");
    check_refused(r#"{"format":"other","version":1}"#, "format", "Leavewell");
    check_refused("hello", "file", "line 1");
    check_refused("\u{0}\u{1}\u{2}", "file", "line 1");
    check_refused(&file(",\"market\":{\"likely\":NaN}"), "file", "line 1");
    check_refused(
        &file(",\"market\":{\"likely\":-Infinity}"),
        "file",
        "line 1",
    );
    for version in ["0", "-1", "1.5", "\"1\"", "null", "[1]"] {
        let text = format!("{{\"format\":\"leavewell-case\",\"version\":{version}}}");
        check_refused(&text, "version", "whole number");
    }
    check_refused(
        "{\"format\":\"leavewell-case\",\"version\":3}",
        "version",
        "Update",
    );
    check_refused("{\"format\":\"leavewell-case\"}", "version", "whole number");
}

#[test]
fn oversized_files_are_refused_at_once() {
    check_refused(&" ".repeat(100 * 1024 * 1024), "file", "100 MB");
    let long = file(&format!(",\"note\":\"{}\"", "x".repeat(MAX_BYTES)));
    check_refused(&long, "file", "8 MB");
    for brackets in ["[", "{\"a\":"] {
        let deep = file(&format!(",\"x\":{}", brackets.repeat(100_000)));
        check_refused(&deep, "file", "deep");
    }
    let many = vec![r#"{"id":"C01","answer":"seen"}"#; MAX_FINDINGS + 1].join(",");
    check_refused(
        &file(&format!(",\"findings\":[{many}]")),
        "findings",
        "5000",
    );
}

#[test]
fn a_hundred_thousand_keys_are_read_and_kept() {
    let keys: Vec<String> = (0..100_000).map(|i| format!("\"k{i}\":{i}")).collect();
    let keys = keys.join(",");
    for body in [format!(",{keys}"), format!(",\"piece\":{{{keys}}}")] {
        let draft = Draft::parse(&file(&body)).unwrap();
        assert!(draft.read().1.is_empty());
        assert!(draft.to_json().contains("\"k99999\""));
    }
    // Unknown figures are reported one by one, up to a limit.
    let found = problems(&format!(",\"overrides\":{{{keys}}}"));
    assert!(!found.is_empty() && found.len() < 1000, "{}", found.len());
    found.iter().for_each(check_words);
}

/// Entries beyond the limit are not ignored silently.
#[test]
fn too_many_entries_are_reported() {
    let part = r#"{"part":"body"}"#;
    let found = problems(&format!(",\"parts\":[{}]", vec![part; 500].join(",")));
    assert!(
        found.iter().any(|p| p.field == "parts"),
        "{:?}",
        found.first()
    );
    let figures: Vec<String> = leavewell_model::ledger::Ledger::standard()
        .figures()
        .filter(|f| !f.id.starts_with("guard."))
        .map(|f| format!("\"{}\":{}", f.id, f.value))
        .collect();
    let draft = Draft::parse(&file(&format!(",\"overrides\":{{{}}}", figures.join(",")))).unwrap();
    let (case, found) = draft.read();
    assert!(
        case.overrides.len() == figures.len() || !found.is_empty(),
        "{} figures given, {} taken, and nothing is said",
        figures.len(),
        case.overrides.len()
    );
    found.iter().for_each(check_words);
}

/// A file truncated at any byte is refused, with the place of the cut.
#[test]
fn a_truncated_file_is_refused_with_the_place_of_the_cut() {
    let text = EXAMPLES[0].trim_end();
    for end in 0..text.len() {
        if !text.is_char_boundary(end) {
            continue;
        }
        let fault = Draft::parse(&text[..end]).expect_err("half a file is no file");
        let p = fault.problem();
        check_words(&p);
        assert_eq!(p.field, "file", "cut at {end}: {p:?}");
    }
    assert!(Draft::parse(text).is_ok());
}

/// With any byte of a file replaced, the reader opens or refuses it and never stops.
#[test]
fn a_damaged_byte_never_stops_the_reader() {
    let text = EXAMPLES[2];
    for at in 0..text.len() {
        for byte in ["\"", "{", "]", "9", "\\", "\u{1}"] {
            let damaged = format!("{}{byte}{}", &text[..at], &text[at + 1..]);
            match Draft::parse(&damaged) {
                Ok(draft) => draft.read().1.iter().for_each(check_words),
                Err(fault) => check_words(&fault.problem()),
            }
        }
    }
}

/// The paths of every value in a document.
fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    match value {
        Value::Object(fields) => {
            for (name, v) in fields {
                let at = format!("{at}/{name}");
                found.push(at.clone());
                places(v, &at, found);
            }
        }
        Value::Array(list) => {
            for (i, v) in list.iter().enumerate() {
                let at = format!("{at}/{i}");
                found.push(at.clone());
                places(v, &at, found);
            }
        }
        _ => {}
    }
}

fn sort_of(value: &Value) -> u8 {
    match value {
        Value::Null => 0,
        Value::Bool(_) => 1,
        Value::Number(_) => 2,
        Value::String(_) => 3,
        Value::Array(_) => 4,
        Value::Object(_) => 5,
    }
}

/// Puts a value of another type in every place of a worked example. Nothing stops, and each change of type is
/// reported, except `null` (no value), the piece's name (any text will do), and an empty list or object in
/// place of a non-empty one.
#[test]
fn values_of_a_wrong_type_are_reported() {
    let swaps = [
        json!("swapped"),
        json!(7),
        json!(-1.5e9),
        json!([]),
        json!(["swapped"]),
        json!({}),
        json!({"swapped": 1}),
        json!(null),
        json!(true),
    ];
    let mut silent = Vec::new();
    for text in EXAMPLES {
        let whole: Value = serde_json::from_str(text).unwrap();
        let mut found = Vec::new();
        places(&whole, "", &mut found);
        for at in found
            .iter()
            .filter(|at| !["/format", "/version"].contains(&at.as_str()))
        {
            let before = whole.pointer(at).unwrap();
            for swap in &swaps {
                let mut file = whole.clone();
                *file.pointer_mut(at).unwrap() = swap.clone();
                let draft = Draft::parse(&file.to_string()).unwrap();
                let (_, problems) = draft.read();
                problems.iter().for_each(check_words);
                let harmless = swap.is_null()
                    || at == "/piece/name"
                    || sort_of(swap) == sort_of(before)
                    || problems_are_about_nothing(swap, before);
                if !harmless && problems.is_empty() {
                    silent.push(format!("{at} became {swap}"));
                }
            }
        }
    }
    assert!(silent.is_empty(), "nothing was said of: {silent:#?}");
}

/// An empty list of parts, findings or quotes counts as none.
fn problems_are_about_nothing(swap: &Value, before: &Value) -> bool {
    before.is_object() && swap.as_object().is_some_and(serde_json::Map::is_empty)
}

/// The same changes, weighed in full: each gives an answer.
#[test]
fn values_of_a_wrong_type_still_give_an_answer() {
    let whole: Value = serde_json::from_str(EXAMPLES[1]).unwrap();
    let mut found = Vec::new();
    places(&whole, "", &mut found);
    for (i, at) in found
        .iter()
        .filter(|at| !["/format", "/version"].contains(&at.as_str()))
        .enumerate()
    {
        let swaps = [json!("swapped"), json!(-7), json!([1]), json!({"x": []})];
        let mut file = whole.clone();
        *file.pointer_mut(at).unwrap() = swaps[i % swaps.len()].clone();
        let (case, problems) = Draft::parse(&file.to_string()).unwrap().read();
        let report = weigh_at_once(&case, problems);
        assert!(!report.counsel.steps.is_empty(), "{at}");
    }
}

/// Unknown fields are kept for a program that knows them.
#[test]
fn unknown_fields_are_kept() {
    let text = file(r#","later":{"x":[1,2]},"piece":{"form":"tray","glaze":"blue"}"#);
    let draft = Draft::parse(&text).unwrap();
    assert!(draft.read().1.is_empty());
    let saved: Value = serde_json::from_str(&draft.to_json()).unwrap();
    assert_eq!(saved, serde_json::from_str::<Value>(&text).unwrap());
}
