//! Two records of one piece side by side: where they differ, who changed what, and one made of both.
//!
//! Invariants: choosing every "mine" gives mine and every "theirs" gives theirs; swapping the two
//! records and every choice gives the same record (each but for the order of lists whose order has
//! no meaning, those of `KEYED`). The one exception: of two predictions of one event the earlier stays.

use serde_json::{Map, Value};

use super::schema::{Field, field};
use super::{Draft, typed_text};

/// A list whose entries are identified by a field.
struct Keyed {
    /// The path of the list; `*` matches any one name.
    path: &'static [&'static str],
    /// The field that identifies an entry.
    key: &'static str,
    /// Another field that does, where an entry has no `key`.
    or: Option<&'static str>,
    /// Whether two entries are compared field by field or as a whole.
    compared: Compared,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Compared {
    ByField,
    Whole,
    /// Entries are written once: where both records have one, the earlier stays and nobody is asked.
    KeptEarlier,
}

const fn keyed(path: &'static [&'static str], key: &'static str, compared: Compared) -> Keyed {
    Keyed {
        path,
        key,
        or: None,
        compared,
    }
}

const KEYED: [Keyed; 11] = [
    keyed(&["findings"], "id", Compared::Whole),
    keyed(&["parts"], "part", Compared::ByField),
    Keyed {
        or: Some("treatment"),
        ..keyed(&["quotes"], "id", Compared::Whole)
    },
    keyed(&["tests"], "id", Compared::ByField),
    keyed(&["done"], "id", Compared::ByField),
    keyed(&["marks"], "id", Compared::ByField),
    keyed(&["proposal", "steps"], "id", Compared::ByField),
    keyed(&["parts", "*", "spots"], "id", Compared::ByField),
    keyed(&["predicted"], "event", Compared::KeptEarlier),
    keyed(&["pieces", "each"], "no", Compared::ByField),
    keyed(&["pieces", "each", "*", "parts"], "part", Compared::ByField),
];

impl Keyed {
    fn at(path: &[String]) -> Option<&'static Self> {
        KEYED.iter().find(|list| {
            list.path.len() == path.len()
                && list.path.iter().zip(path).all(|(a, b)| *a == "*" || a == b)
        })
    }

    /// The identifier of an entry, as text.
    fn id_of(&self, entry: &Map<String, Value>) -> Option<String> {
        let text = |key: &'static str| match entry.get(key)? {
            Value::String(id) if key != "no" => Some(id.clone()),
            Value::Number(no) if key == "no" => Some(no.to_string()),
            _ => None,
        };
        match self.or {
            Some(or) if !entry.contains_key(self.key) => text(or),
            _ => text(self.key),
        }
    }
}

/// Fields that say what the file is, not what the piece is.
const OF_THE_FILE: [&str; 3] = ["format", "version", "kept"];

/// One place where two records differ.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// Path as names; list entries are named by their subject.
    pub path: Vec<String>,
    /// The value in the first record.
    pub mine: Option<Value>,
    /// The value in the second record.
    pub theirs: Option<Value>,
}

impl Difference {
    /// The schema's entry of the field that differs; `None` for a whole entry or section, and for a
    /// field the schema does not have.
    #[must_use]
    pub fn field(&self) -> Option<&'static Field> {
        let mut path = String::new();
        let mut is_id = false;
        for (at, name) in self.path.iter().enumerate() {
            if !is_id {
                if !path.is_empty() {
                    path.push('.');
                }
                path.push_str(name);
            }
            is_id = !is_id && Keyed::at(&self.path[..=at]).is_some();
            if is_id {
                path.push_str("[]");
            }
        }
        field(&path)
    }
}

/// Who changed a place since both records were the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChangedBy {
    /// Only the first record.
    Mine,
    /// Only the second.
    Theirs,
    /// Both, or it is not known.
    Both,
}

/// Every place where two records differ, in the order of the record.
#[must_use]
pub fn differences(mine: &Draft, theirs: &Draft) -> Vec<Difference> {
    let mut found = Vec::new();
    walk(
        &mut Vec::new(),
        Pair(&mine.root, &theirs.root),
        &mut |path, mine, theirs| {
            found.push(Difference {
                path: path.to_vec(),
                mine: mine.cloned(),
                theirs: theirs.cloned(),
            });
            false
        },
    );
    found
}

/// One record of two: where they differ, theirs where `take` says so, in the order of
/// [`differences`], else mine. Places beyond the end of `take` stay mine.
#[must_use]
pub fn merge(mine: &Draft, theirs: &Draft, take: &[bool]) -> Draft {
    let mut choices = take.iter().copied();
    let (mut taken, mut kept) = (false, false);
    let root = walk(
        &mut Vec::new(),
        Pair(&mine.root, &theirs.root),
        &mut |_, _, _| {
            let take = choices.next().unwrap_or(false);
            taken |= take;
            kept |= !take;
            take
        },
    );
    let mut merged = Draft { root };
    // The version goes with what is in the record: that of each side from which something comes.
    let version = |draft: &Draft| draft.root.get("version").and_then(Value::as_u64);
    let from_mine = version(mine).filter(|_| kept || !taken);
    let from_theirs = version(theirs).filter(|_| taken);
    if let Some(version) = from_mine.max(from_theirs) {
        merged.root.insert("version".to_owned(), version.into());
    }
    merged.raise_version();
    merged
}

/// Who changed each of these differences since both records were `base`.
#[must_use]
pub fn changed_by(
    base: &Draft,
    mine: &Draft,
    theirs: &Draft,
    differences: &[Difference],
) -> Vec<ChangedBy> {
    let (mine, theirs) = (
        self::differences(base, mine),
        self::differences(base, theirs),
    );
    let touches = |changes: &[Difference], path: &[String]| {
        changes
            .iter()
            .any(|c| c.path.starts_with(path) || path.starts_with(&c.path))
    };
    differences
        .iter()
        .map(
            |d| match (touches(&mine, &d.path), touches(&theirs, &d.path)) {
                (true, false) => ChangedBy::Mine,
                (false, true) => ChangedBy::Theirs,
                _ => ChangedBy::Both,
            },
        )
        .collect()
}

/// Two objects in the same place.
struct Pair<'a>(&'a Map<String, Value>, &'a Map<String, Value>);

/// What is asked at each difference: whether theirs is taken.
type Choose<'a> = dyn FnMut(&[String], Option<&Value>, Option<&Value>) -> bool + 'a;

/// The two merged; every difference is put to `choose` once, in the order of the names.
fn walk(
    path: &mut Vec<String>,
    Pair(mine, theirs): Pair,
    choose: &mut Choose,
) -> Map<String, Value> {
    let mut merged = Map::new();
    for name in names(mine, theirs) {
        let (a, b) = (mine.get(name), theirs.get(name));
        if path.is_empty() && OF_THE_FILE.contains(&name.as_str()) {
            if let Some(kept) = a.or(b) {
                merged.insert(name.clone(), kept.clone());
            }
            continue;
        }
        path.push(name.clone());
        if let Some(value) = one(path, a, b, choose) {
            merged.insert(name.clone(), value);
        }
        path.pop();
    }
    merged
}

/// One place of the two.
fn one(
    path: &mut Vec<String>,
    a: Option<&Value>,
    b: Option<&Value>,
    choose: &mut Choose,
) -> Option<Value> {
    if a == b {
        return a.cloned();
    }
    if let Some(pair) = objects(a, b) {
        let merged = walk(path, pair, choose);
        return kept(merged.is_empty(), a, b, Value::Object(merged));
    }
    if let Some(list) = Keyed::at(path)
        && let Some((mine, theirs)) = keyed_lists(a, b, list)
    {
        let merged = entries(path, (&mine, &theirs), list, choose);
        return kept(merged.is_empty(), a, b, Value::Array(merged));
    }
    if choose(path, a, b) { b } else { a }.cloned()
}

/// What is left of an object or a list: nothing, where one side had none and nothing was taken over.
fn kept(empty: bool, a: Option<&Value>, b: Option<&Value>, merged: Value) -> Option<Value> {
    (!empty || (a.is_some() && b.is_some())).then_some(merged)
}

/// A list whose entries are told apart: the ids in their order, and each entry by its id.
struct Entries {
    ids: Vec<String>,
    of: Map<String, Value>,
}

fn entries(
    path: &mut Vec<String>,
    (mine, theirs): (&Entries, &Entries),
    list: &Keyed,
    choose: &mut Choose,
) -> Vec<Value> {
    let mut merged = Map::new();
    // Asked in the order of the ids, so that it does not matter which record is whose.
    for id in names(&mine.of, &theirs.of) {
        let (a, b) = (mine.of.get(id), theirs.of.get(id));
        path.push(id.clone());
        let fields = |entry: Option<&Value>| {
            let mut fields = entry
                .and_then(Value::as_object)
                .cloned()
                .unwrap_or_default();
            fields.remove(list.key);
            fields
        };
        let value = if list.compared == Compared::ByField && a != b {
            let (a_fields, b_fields) = (fields(a), fields(b));
            if a_fields.is_empty() && b_fields.is_empty() {
                whole(path, a, b, choose)
            } else {
                let mut left = walk(path, Pair(&a_fields, &b_fields), choose);
                let both = a.is_some() && b.is_some();
                (!left.is_empty() || both).then(|| {
                    if let Some(held) = a.or(b).and_then(|entry| entry.get(list.key)) {
                        left.insert(list.key.to_owned(), held.clone());
                    }
                    Value::Object(left)
                })
            }
        } else if let (Compared::KeptEarlier, Some(a), Some(b)) = (list.compared, a, b) {
            Some(earlier(a, b).clone())
        } else {
            whole(path, a, b, choose)
        };
        path.pop();
        if let Some(value) = value {
            merged.insert(id.clone(), value);
        }
    }
    // Mine keep their order; theirs that are new come after, in theirs.
    let order = mine.ids.iter().chain(&theirs.ids);
    order.filter_map(|id| merged.remove(id)).collect()
}

/// The entry with the earlier day in `on`; of two with the same day, the one whose text comes first.
fn earlier<'a>(a: &'a Value, b: &'a Value) -> &'a Value {
    // A year or a month comes before the days in it, and an entry without a day after all others.
    let when = |entry: &Value| {
        let on = entry.get("on").map(typed_text).unwrap_or_default();
        (on.is_empty(), on, entry.to_string())
    };
    if when(b) < when(a) { b } else { a }
}

/// An entry that is compared as a whole.
fn whole(
    path: &[String],
    a: Option<&Value>,
    b: Option<&Value>,
    choose: &mut Choose,
) -> Option<Value> {
    if a != b && choose(path, a, b) { b } else { a }.cloned()
}

/// Both as objects, where one may be missing but neither is empty: an empty one has no field to ask
/// about.
fn objects<'a>(a: Option<&'a Value>, b: Option<&'a Value>) -> Option<Pair<'a>> {
    static NONE: std::sync::LazyLock<Map<String, Value>> = std::sync::LazyLock::new(Map::new);
    let (mine, theirs) = (a.map(Value::as_object), b.map(Value::as_object));
    match (mine, theirs) {
        (Some(Some(mine)), Some(Some(theirs))) => Some(Pair(mine, theirs)),
        (Some(Some(mine)), None) if !mine.is_empty() => Some(Pair(mine, &NONE)),
        (None, Some(Some(theirs))) if !theirs.is_empty() => Some(Pair(&NONE, theirs)),
        _ => None,
    }
}

/// Both as lists of objects, each with its key; `None` where that does not hold, or where one is
/// missing and the other empty.
fn keyed_lists(a: Option<&Value>, b: Option<&Value>, by: &Keyed) -> Option<(Entries, Entries)> {
    let read = |list: Option<&Value>| -> Option<Entries> {
        let mut found = Entries {
            ids: Vec::new(),
            of: Map::new(),
        };
        if let Some(list) = list {
            for entry in list.as_array()? {
                let id = by.id_of(entry.as_object()?)?;
                if found.of.insert(id.clone(), entry.clone()).is_some() {
                    return None;
                }
                found.ids.push(id);
            }
        }
        Some(found)
    };
    let (mine, theirs) = (read(a)?, read(b)?);
    let nothing = mine.ids.is_empty() && theirs.ids.is_empty();
    let one_missing = a.is_none() || b.is_none();
    (!(nothing && one_missing)).then_some((mine, theirs))
}

/// The names of two objects together, sorted, each once. Each object gives its own sorted.
fn names<'a>(a: &'a Map<String, Value>, b: &'a Map<String, Value>) -> Vec<&'a String> {
    let mut names = Vec::new();
    let (mut mine, mut theirs) = (a.keys().peekable(), b.keys().peekable());
    while let Some(name) = match (mine.peek(), theirs.peek()) {
        (Some(m), Some(t)) if m > t => theirs.next(),
        (Some(m), Some(t)) if m == t => {
            mine.next();
            theirs.next()
        }
        (Some(_), _) => mine.next(),
        (None, _) => theirs.next(),
    } {
        names.push(name);
    }
    names
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::FindingId;

    fn draft(body: &str) -> Draft {
        Draft::parse(&format!(
            "{{\"format\":\"leavewell-case\",\"version\":1{body}}}"
        ))
        .unwrap()
    }

    fn paths(a: &Draft, b: &Draft) -> Vec<String> {
        differences(a, b).iter().map(|d| d.path.join(".")).collect()
    }

    #[test]
    fn records_differ_field_by_field() {
        let a = draft(
            r#","piece":{"name":"Pot","form":"teapot"},"findings":[{"id":"C01","answer":"seen"}],"parts":[{"part":"foot","note":"worn"}],"overrides":{"fee.commission":0.1}"#,
        );
        let b = draft(
            r#","piece":{"name":"Pot","form":"tray"},"findings":[{"id":"C07","answer":"seen"},{"id":"C01","answer":"seen"}],"parts":[{"part":"foot","note":"worn","lead":"none"}]"#,
        );
        assert_eq!(
            paths(&a, &b),
            [
                "findings.C07",
                "overrides.fee.commission",
                "parts.foot.lead",
                "piece.form"
            ]
        );
        let some = merge(&a, &b, &[true, false, true, false]);
        assert_eq!(some.answer(FindingId::C07).0, "seen");
        assert_eq!(some.part_text("foot", "lead"), "none");
        assert_eq!(some.part_text("foot", "note"), "worn");
        assert_eq!(some.text("piece.form"), "teapot");
        assert!(some.to_json().contains("fee.commission"));
    }

    #[test]
    fn nested_lists_differ_entry_by_entry() {
        let a = draft(
            r#","pieces":{"each":[{"no":1,"parts":[{"part":"foot","bleed":"some"}]},{"no":2}]},"proposal":{"steps":[{"id":"a","likely":60}]},"quotes":[{"treatment":"T08","likely":5}]"#,
        );
        let b = draft(
            r#","pieces":{"each":[{"no":1,"parts":[{"part":"foot","bleed":"much"}]},{"no":2,"share":1}]},"proposal":{"steps":[{"id":"a","likely":70},{"id":"b"}]},"quotes":[{"id":"q","treatments":"T08 T12","likely":5}]"#,
        );
        assert_eq!(
            paths(&a, &b),
            [
                "pieces.each.1.parts.foot.bleed",
                "pieces.each.2.share",
                "proposal.steps.a.likely",
                "proposal.steps.b",
                "quotes.T08",
                "quotes.q",
            ]
        );
        assert_eq!(merge(&a, &b, &[false; 6]).read(), a.read());
        let theirs = merge(&a, &b, &[true; 6]);
        assert!(differences(&theirs, &b).is_empty());
        assert_eq!(theirs.text("version"), "2");
    }

    #[test]
    fn a_difference_finds_its_field_in_the_schema() {
        let field = |path: &[&str]| {
            let difference = Difference {
                path: path.iter().map(|name| (*name).to_owned()).collect(),
                mine: None,
                theirs: None,
            };
            difference.field().map(|field| field.path)
        };
        assert_eq!(field(&["piece", "form"]), Some("piece.form"));
        assert_eq!(field(&["parts", "foot", "lead"]), Some("parts[].lead"));
        let step = ["proposal", "steps", "a", "likely"];
        assert_eq!(field(&step), Some("proposal.steps[].likely"));
        // An id may be the name of a list.
        assert_eq!(field(&["done", "done", "bill"]), Some("done[].bill"));
        assert_eq!(field(&["parts", "foot"]), None);
        assert_eq!(field(&["later", "x"]), None);
    }

    #[test]
    fn of_two_predictions_of_one_event_the_earlier_stays() {
        let a = draft(
            r#","predicted":[{"event":"agreed","on":"2026-03-02","p":0.5},{"event":"offered","p":1}]"#,
        );
        let b = draft(r#","predicted":[{"event":"agreed","on":"2026-02-27","p":0.9}]"#);
        assert_eq!(paths(&a, &b), ["predicted.offered"]);
        for (mine, theirs, take) in [(&a, &b, false), (&b, &a, true)] {
            let merged = merge(mine, theirs, &[take]);
            let (case, _) = merged.read();
            let agreed = case.predicted.iter().find(|p| p.p == Some(0.9));
            assert!(agreed.is_some(), "{case:?}");
            assert_eq!(case.predicted.len(), 2);
        }
    }

    #[test]
    fn the_order_of_findings_is_no_difference() {
        let a = draft(r#","findings":[{"id":"C01","answer":"seen"},{"id":"C07","answer":"seen"}]"#);
        let b = draft(r#","findings":[{"id":"C07","answer":"seen"},{"id":"C01","answer":"seen"}]"#);
        assert!(differences(&a, &b).is_empty());
    }

    #[test]
    fn what_cannot_be_told_apart_is_one_place() {
        let a = draft(r#","findings":[{"id":"C01"},{"id":"C01"}],"earlier":[1]"#);
        let b = draft(r#","findings":[{"id":"C01"}],"earlier":[1,2]"#);
        assert_eq!(paths(&a, &b), ["earlier", "findings"]);
        assert_eq!(merge(&a, &b, &[true, true]), b);
        assert_eq!(merge(&a, &b, &[]), a);
    }

    #[test]
    fn what_says_which_file_it_is_is_no_difference() {
        let a = draft(r#","kept":{"id":"a"}"#);
        let b = draft("");
        assert!(differences(&a, &b).is_empty());
        assert_eq!(merge(&a, &b, &[]), a);
    }

    #[test]
    fn who_changed_a_place_is_known_from_what_both_began_with() {
        let base = draft(r#","piece":{"name":"Pot","form":"teapot"}"#);
        let mine = draft(r#","piece":{"name":"Old pot","form":"teapot","rare":true}"#);
        let theirs = draft(r#","piece":{"name":"The pot","form":"tray"}"#);
        let found = differences(&mine, &theirs);
        let by = changed_by(&base, &mine, &theirs, &found);
        let named: Vec<(&str, ChangedBy)> =
            found.iter().map(|d| d.path[1].as_str()).zip(by).collect();
        assert_eq!(
            named,
            [
                ("form", ChangedBy::Theirs),
                ("name", ChangedBy::Both),
                ("rare", ChangedBy::Mine)
            ]
        );
    }
}
