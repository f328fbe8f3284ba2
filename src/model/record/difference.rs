//! Two records of one piece side by side: where they differ, who changed what, and one made of both.
//!
//! Invariants: choosing every "mine" gives mine and every "theirs" gives theirs; swapping the two
//! records and every choice gives the same record (each but for the order of lists whose order has
//! no meaning: findings, parts, quotes).

use serde_json::{Map, Value};

use super::Draft;

/// Lists whose entries are told apart by a field, whether the entries are compared field by field,
/// and that field.
const KEYED: [(&str, bool, &str); 3] = [
    ("findings", false, "id"),
    ("parts", true, "part"),
    ("quotes", false, "treatment"),
];

/// Fields that say what the file is, not what the piece is.
const OF_THE_FILE: [&str; 3] = ["format", "version", "kept"];

/// One place where two records differ.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// The names that lead there; an entry of a list goes by what it is about.
    pub path: Vec<String>,
    /// What stands there in the first record.
    pub mine: Option<Value>,
    /// What stands there in the second.
    pub theirs: Option<Value>,
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
    let root = walk(
        &mut Vec::new(),
        Pair(&mine.root, &theirs.root),
        &mut |_, _, _| choices.next().unwrap_or(false),
    );
    Draft { root }
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
    let keyed = KEYED
        .iter()
        .find(|(list, _, _)| path.len() == 1 && path[0] == *list);
    if let Some((_, by_field, key)) = keyed
        && let Some((mine, theirs)) = keyed_lists(a, b, key)
    {
        let merged = entries(path, (&mine, &theirs), (*by_field, key), choose);
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
    (by_field, key): (bool, &str),
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
            fields.remove(key);
            fields
        };
        let value = if by_field && a != b {
            let (a_fields, b_fields) = (fields(a), fields(b));
            if a_fields.is_empty() && b_fields.is_empty() {
                whole(path, a, b, choose)
            } else {
                let mut left = walk(path, Pair(&a_fields, &b_fields), choose);
                let both = a.is_some() && b.is_some();
                (!left.is_empty() || both).then(|| {
                    left.insert(key.to_owned(), id.as_str().into());
                    Value::Object(left)
                })
            }
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

/// Both as lists of objects that a key tells apart; `None` where that does not hold, or where one is
/// missing and the other empty.
fn keyed_lists(a: Option<&Value>, b: Option<&Value>, key: &str) -> Option<(Entries, Entries)> {
    let read = |list: Option<&Value>| -> Option<Entries> {
        let mut found = Entries {
            ids: Vec::new(),
            of: Map::new(),
        };
        if let Some(list) = list {
            for entry in list.as_array()? {
                let id = entry.as_object()?.get(key)?.as_str()?;
                if found.of.insert(id.to_owned(), entry.clone()).is_some() {
                    return None;
                }
                found.ids.push(id.to_owned());
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
        assert_eq!(some.answer("C07").0, "seen");
        assert_eq!(some.part_text("foot", "lead"), "none");
        assert_eq!(some.part_text("foot", "note"), "worn");
        assert_eq!(some.text("piece.form"), "teapot");
        assert!(some.to_json().contains("fee.commission"));
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
