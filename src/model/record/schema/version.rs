//! Since when a record can be read: the version it needs to be saved as.

use serde_json::{Map, Value};

use super::field;
use crate::ledger::FindingId;
use crate::record::draft::typed_text;

/// Words that exist since version 2, by the field they stand in.
const NEW_WORDS: [(&str, &[&str]); 11] = [
    (
        "piece.form",
        &[
            "cutlery",
            "snuffers",
            "cruet",
            "inkstand",
            "salts",
            "coaster",
            "urn",
            "water_dish",
            "candelabrum",
        ],
    ),
    ("parts[].part", NEW_PARTS),
    ("findings[].part", NEW_PARTS),
    ("measures.iacs.where", NEW_PARTS),
    ("bench.heat.on_part", NEW_PARTS),
    ("care.part", NEW_PARTS),
    ("parts[].lead", &["not_found"]),
    ("quotes[].treatment", NEW_TREATMENTS),
    ("done[].what", NEW_TREATMENTS),
    ("aim.asked", NEW_TREATMENTS),
    ("market.route", &["shop", "trade", "fair"]),
];
const NEW_PARTS: &[&str] = &[
    "nozzle", "pan", "stem", "branch", "frame", "bottle", "blade", "liner", "fitting",
];
const NEW_TREATMENTS: &[&str] = &["T02b", "T15b", "proposal"];
/// The findings of version 1, by their letter and the numbers from 1 up; all others are since 2.
const OLD_FINDINGS: [(char, u8); 4] = [('C', 19), ('S', 10), ('M', 13), ('P', 14)];
/// Names of the whole record that exist since version 2.
const NEW_SECTIONS: [&str; 9] = [
    "tests",
    "proposal",
    "pieces",
    "lot",
    "stock",
    "closed",
    "predicted",
    "marks",
    "comparables[].of",
];

/// The version a record has to be saved as: 2 when anything in it is since 2, else 1.
pub(in crate::record) fn version_needed(root: &Map<String, Value>) -> u64 {
    let mut path = String::new();
    if object_has_new(&mut path, root) {
        2
    } else {
        1
    }
}

fn object_has_new(path: &mut String, object: &Map<String, Value>) -> bool {
    object.iter().any(|(name, value)| {
        let before = path.len();
        if !path.is_empty() {
            path.push('.');
        }
        path.push_str(name);
        let new = is_new(path, value);
        path.truncate(before);
        new
    })
}

fn is_new(path: &mut String, value: &Value) -> bool {
    if NEW_SECTIONS.contains(&path.as_str()) || field(path).is_some_and(|f| f.since > 1) {
        return true;
    }
    match value {
        Value::Object(fields) => object_has_new(path, fields),
        Value::Array(entries) => {
            let before = path.len();
            path.push_str("[]");
            let new = entries.iter().any(|entry| match entry {
                Value::Object(fields) => object_has_new(path, fields),
                _ => false,
            });
            path.truncate(before);
            new
        }
        Value::String(_) | Value::Number(_) => has_new_word(path, &typed_text(value)),
        Value::Null | Value::Bool(_) => false,
    }
}

/// Whether a finding is since 2. `M01b` is of version 1 too.
fn is_new_finding(id: &str) -> bool {
    let known = OLD_FINDINGS.iter().any(|(letter, last)| {
        id.strip_prefix(*letter)
            .and_then(|number| number.parse::<u8>().ok())
            .is_some_and(|number| (1..=*last).contains(&number))
    });
    !known && id != "M01b" && FindingId::parse(id).is_some()
}

fn has_new_word(path: &str, text: &str) -> bool {
    if path == "findings[].id" {
        return is_new_finding(text);
    }
    let Some((_, new)) = NEW_WORDS.iter().find(|(field, _)| *field == path) else {
        return false;
    };
    let mut words = text.split_whitespace();
    // One word, or several ids where version 1 knew one only.
    words.clone().any(|word| new.contains(&word)) || (path == "aim.asked" && words.nth(1).is_some())
}
