//! The differences between two records of one piece, in words. Used when a piece was edited in two places,
//! and to see what has changed since an earlier look.

use serde::Serialize;
use serde_json::Value;

use super::field_words::value_words;
use super::record_fields::{FIELDS, Record};
use super::wording::compare as words;
use leavewell_model::ledger::FindingId;
use leavewell_model::record::difference::{ChangedBy, Difference, changed_by, differences, merge};
use leavewell_model::record::schema;
use leavewell_model::record::{Draft, typed_text};
use leavewell_model::terms::Treatment;
use leavewell_model::terms::{PartName, Seen};

/// Compares two records. The question is JSON text: `{"mine", "theirs"}`, each a record, and optionally
/// - `"base"`: the record both started from, so that the answer can say who changed what;
/// - `"take"`: for each difference, whether to take theirs; the answer is then the merged record;
/// - `"earlier": n`, in place of `theirs`: the n-th earlier condition record in `mine`.
///
/// The answer is JSON text: `{"differences": [{name, mine, theirs, by}], "earlier": [words]}` or
/// `{"record": text}`. If a record cannot be read it is `{"failure": words}`.
#[must_use]
pub fn compare_json(question: &str) -> String {
    let answer = match compare(question) {
        Ok(answer) => serde_json::to_string(&answer),
        Err(failure) => serde_json::to_string(&Failure { failure }),
    };
    answer.unwrap_or_default()
}

#[derive(Serialize)]
struct Failure {
    failure: String,
}

#[derive(Serialize)]
#[serde(rename_all = "snake_case", untagged)]
enum ComparedRecords {
    Made {
        record: String,
    },
    Found {
        differences: Vec<DifferenceLine>,
        earlier: Vec<String>,
    },
}

/// One difference in words. A missing value is empty.
#[derive(Serialize)]
struct DifferenceLine {
    name: String,
    mine: String,
    theirs: String,
    by: &'static str,
}

fn compare(question: &str) -> Result<ComparedRecords, String> {
    let question: Value = serde_json::from_str(question).map_err(|fault| fault.to_string())?;
    let record = |name: &str| -> Result<Option<Draft>, String> {
        match question.get(name) {
            None | Some(Value::Null) => Ok(None),
            Some(record) => Draft::parse(&record.to_string())
                .map(Some)
                .map_err(|fault| fault.problem().message),
        }
    };
    let mut mine = record("mine")?.unwrap_or_default();
    let records = mine.earlier();
    let at = question
        .get("earlier")
        .and_then(Value::as_u64)
        .and_then(|n| usize::try_from(n).ok());
    let theirs = match at {
        Some(at) => {
            let earlier = records
                .get(at)
                .ok_or(words::NO_LONGER_THERE)?
                .condition_only();
            mine = mine.condition_only();
            earlier
        }
        None => record("theirs")?.unwrap_or_default(),
    };
    if let Some(take) = question.get("take").and_then(Value::as_array) {
        let take: Vec<bool> = take.iter().map(|v| v.as_bool() == Some(true)).collect();
        let record = merge(&mine, &theirs, &take).to_json();
        return Ok(ComparedRecords::Made { record });
    }
    let found = differences(&mine, &theirs);
    let by = match record("base")? {
        Some(base) => changed_by(&base, &mine, &theirs, &found),
        None => vec![ChangedBy::Both; found.len()],
    };
    let (my_words, their_words) = (Record::new(&mine), Record::new(&theirs));
    let lines = found
        .iter()
        .zip(by)
        .map(|(difference, by)| DifferenceLine {
            name: name(difference),
            mine: said(&my_words, difference, difference.mine.as_ref()),
            theirs: said(&their_words, difference, difference.theirs.as_ref()),
            by: match by {
                ChangedBy::Mine => "mine",
                ChangedBy::Theirs => "theirs",
                ChangedBy::Both => "both",
            },
        })
        .collect();
    let earlier = records.iter().map(earlier_name).collect();
    Ok(ComparedRecords::Found {
        differences: lines,
        earlier,
    })
}

fn earlier_name(record: &Draft) -> String {
    let (on, note) = (record.text("looked.on"), record.text("note"));
    match (on.is_empty(), note.is_empty()) {
        (true, true) => words::UNDATED.to_owned(),
        (true, false) => note,
        (false, true) => on,
        (false, false) => format!("{on}, {note}"),
    }
}

/// A path in the record as words. Labels come from the schema; a field that it lacks is named by its
/// own name, made readable.
fn name(difference: &Difference) -> String {
    let path = &difference.path;
    let label = difference.field().map(|field| field.label);
    match path.as_slice() {
        [list, id] if list == "findings" => {
            FindingId::parse(id).map_or_else(|| words::look(id), |id| id.fact().title.to_owned())
        }
        [list, id] if list == "quotes" => {
            let what = Treatment::parse(id).map_or(id.clone(), |t| t.name().to_owned());
            words::price_asked(&what)
        }
        [list, id, rest @ ..] if list == "parts" => {
            let part = PartName::parse(id).map_or_else(|| readable(id), |p| p.label().to_owned());
            match (label, rest) {
                (_, []) => part,
                (Some(label), _) => words::of_part(&part, label),
                (None, rest) => words::of_part(&part, &readable(&rest.join(", "))),
            }
        }
        [list, id, ..] if list == "overrides" => words::own_figure(id),
        [list, id, _] if let (Some(list), Some(label)) = (schema::section_label(list), label) => {
            words::of_entry(list, id, label)
        }
        _ => label
            .or_else(|| schema::section_label(&path.join(".")))
            .map_or_else(|| readable(&path.join(", ")), str::to_owned),
    }
}

/// A field name as words: `heat, thickness_mm` becomes "Heat, thickness (mm)".
fn readable(name: &str) -> String {
    let mut words = name.replace('_', " ");
    for unit in ["mm", "um", "g", "c"] {
        if let Some(bare) = words.strip_suffix(&format!(" {unit}")) {
            words = format!("{bare} ({})", if unit == "um" { "µm" } else { unit });
            break;
        }
    }
    let mut letters = words.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => words::UNNAMED_FIELD.to_owned(),
    }
}

/// The value at a path in words; empty if there is none.
fn said(record: &Record, difference: &Difference, value: Option<&Value>) -> String {
    let Some(value) = value else {
        return String::new();
    };
    let path: Vec<&str> = difference.path.iter().map(String::as_str).collect();
    let text = typed_text(value);
    let label = match path[..] {
        ["parts", part, field] => PartName::parse(part)
            .zip(FIELDS.iter().find(|known| known.id == field))
            .and_then(|(part, field)| record.said(part, field)),
        ["findings", _] => value.as_object().map(|answer| {
            let word = |name: &str| answer.get(name).map(typed_text).unwrap_or_default();
            let said = Seen::parse(&word("answer"))
                .map_or_else(|| word("answer"), |s| s.label().to_owned());
            match PartName::parse(&word("part")) {
                Some(part) => format!("{said}, {}", part.label().to_lowercase()),
                None => said,
            }
        }),
        ["quotes", _] => value.as_object().map(|quote| {
            let prices: Vec<String> = ["low", "likely", "high"]
                .iter()
                .filter_map(|field| quote.get(*field).map(typed_text))
                .collect();
            prices.join(words::TO)
        }),
        _ => None,
    };
    label.unwrap_or_else(|| match difference.field() {
        Some(field) if value.is_string() => value_words(field.path, value),
        _ => plain(value, &text),
    })
}

/// Any value as words that fit on one line.
fn plain(value: &Value, text: &str) -> String {
    let entries = |n: usize| match n {
        1 => words::ONE_ENTRY.to_owned(),
        n => words::entries(n),
    };
    match value {
        Value::Bool(true) => words::YES.to_owned(),
        Value::Bool(false) => words::NO.to_owned(),
        Value::Null => words::NOTHING.to_owned(),
        Value::Array(list) => entries(list.len()),
        Value::Object(fields) => entries(fields.len()),
        _ if text.chars().count() > 200 => text.chars().take(200).chain(['…']).collect(),
        _ => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn record(body: &Value) -> Value {
        let mut record = json!({"format": "leavewell-case", "version": 1});
        for (name, value) in body.as_object().unwrap() {
            record[name] = value.clone();
        }
        record
    }

    fn ask(question: &Value) -> Value {
        serde_json::from_str(&compare_json(&question.to_string())).unwrap()
    }

    #[test]
    fn differences_are_described_in_words() {
        let mine = record(&json!({
            "piece": {"form": "tray", "rare": true, "mystery_mm": 3},
            "findings": [{"id": "C07", "answer": "seen", "part": "border"}],
            "parts": [{"part": "foot", "tarnish": "black"}],
            "quotes": [{"treatment": "T09", "low": 10, "high": 20}],
        }));
        let theirs = record(&json!({"piece": {"form": "teapot"}}));
        let answer = ask(&json!({"mine": mine, "theirs": theirs, "base": theirs}));
        let lines = answer["differences"].as_array().unwrap();
        let told: Vec<[&str; 3]> = lines
            .iter()
            .map(|l| ["name", "mine", "theirs"].map(|f| l[f].as_str().unwrap()))
            .collect();
        assert_eq!(told[0][0], FindingId::C07.fact().title);
        assert_eq!(told[0][2], "");
        assert!(told[0][1].contains("border"), "{told:?}");
        assert_eq!(told[1][0], "Foot: Tarnish");
        assert_eq!(told[2], ["What it is", "Tray or salver", "Teapot"]);
        assert_eq!(told[3], ["Piece, mystery (mm)", "3", ""]);
        assert_eq!(told[4], ["Rare", "Yes", ""]);
        assert_eq!(told[5][1], "10 to 20");
        assert!(lines.iter().all(|l| l["by"] == "mine"));
    }

    #[test]
    fn a_word_that_a_list_or_a_field_holds_is_given_by_its_label() {
        let mine = record(&json!({
            "piece": {"form": "tray", "came_from": "household"},
            "aim": {"goal": "keep_use", "asked": "T14a T08"},
            "stock": {"status": "for_sale", "number": "A_7"},
            "tests": [{"id": "t1", "kind": "release", "by": "laboratory", "part": "interior"}],
            "done": [{"id": "d1", "what": "T12"}],
        }));
        let answer = ask(&json!({"mine": mine, "theirs": record(&json!({}))}));
        let lines = answer["differences"].as_array().unwrap();
        assert!(lines.len() >= 8, "{lines:?}");
        for line in lines {
            let (name, said) = (
                line["name"].as_str().unwrap(),
                line["mine"].as_str().unwrap(),
            );
            let is_code = said.contains('_')
                || said.starts_with('T') && said[1..].starts_with(char::is_numeric);
            assert!(!is_code || said == "A_7", "{name}: {said}");
            assert!(
                !["laboratory", "release", "interior", "household", "tray"].contains(&said),
                "{name}: {said}"
            );
        }
    }

    #[test]
    fn two_records_merge_into_one() {
        let mine = record(&json!({"piece": {"name": "Pot", "rare": true}}));
        let theirs = record(&json!({"piece": {"name": "Old pot"}}));
        let answer = ask(&json!({"mine": mine, "theirs": theirs, "take": [true, false]}));
        let made = Draft::parse(answer["record"].as_str().unwrap()).unwrap();
        assert_eq!(made.text("piece.name"), "Old pot");
        assert_eq!(made.flag("piece.rare"), Some(true));
    }

    #[test]
    fn comparing_an_earlier_condition_record_looks_at_condition_only() {
        let mine = record(&json!({
            "piece": {"name": "Pot"},
            "parts": [{"part": "foot", "note": "worn"}],
            "earlier": [{"on": "2020-01-02", "parts": [{"part": "foot", "note": "sound"}]}],
        }));
        let answer = ask(&json!({"mine": mine, "earlier": 0}));
        assert_eq!(answer["earlier"], json!(["2020-01-02"]));
        let names: Vec<&str> = answer["differences"]
            .as_array()
            .unwrap()
            .iter()
            .map(|l| l["name"].as_str().unwrap())
            .collect();
        assert!(names.contains(&"Foot: Note"), "{names:?}");
        assert!(!names.contains(&"What you call it"));
        assert!(ask(&json!({"mine": mine, "earlier": 1}))["failure"].is_string());
    }
}
