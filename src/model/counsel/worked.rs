//! The 25 worked situations of the catalogue: the advice for each and what it is held against.
//!
//! The inputs and the expected advice were computed beforehand with a prototype of the search, apart
//! from this program. The pieces are CONSTRUCTED.

use crate::weigh_json;
use serde_json::Value;

fn situations() -> Vec<Value> {
    serde_json::from_str(include_str!(
        "../../../tests/published/catalogue_cases.json"
    ))
    .unwrap()
}

fn steps(report: &Value) -> Vec<String> {
    report["counsel"]["steps"]
        .as_array()
        .unwrap()
        .iter()
        .map(|s| s.as_str().unwrap().to_owned())
        .filter(|s| s != "T02")
        .collect()
}

#[test]
fn print_them() {
    for s in situations() {
        let report: Value = serde_json::from_str(&weigh_json(&s["case"].to_string())).unwrap();
        let expected: Vec<String> = s["expected"]["steps"]
            .as_array()
            .unwrap()
            .iter()
            .map(|s| s.as_str().unwrap().to_owned())
            .collect();
        let got = steps(&report);
        let c = &report["counsel"];
        println!(
            "{} {}\n   {:?} exp {:?}\n   {} {} exp {} {}\n   {}\n   {:?}",
            if got == expected { "ok " } else { "DIFF" },
            s["name"].as_str().unwrap(),
            got,
            expected,
            c["firmness"],
            report["courses"][0]["p_best"],
            s["expected"]["firmness"],
            s["expected"]["p"],
            c["sentence"].as_str().unwrap(),
            report["problems"]
                .as_array()
                .unwrap()
                .iter()
                .map(|p| p["message"].as_str().unwrap().to_owned())
                .collect::<Vec<_>>()
        );
    }
}
