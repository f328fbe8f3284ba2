//! Rooms: which folder may use which, and each type name once.

use std::collections::{BTreeMap, BTreeSet};

use super::files;

/// The folders of the model, lowest first. A folder may use those on floors below its own and itself.
const FLOORS: [&[&str]; 9] = [
    &["terms"],
    &["maths", "ledger"],
    &["decide", "record"],
    &["bench", "silver"],
    &["identity"],
    &["road", "value"],
    &["treatment"],
    &["counsel"],
    &["learn"],
];

/// The crates, lowest first, each with the crates it may use.
const CRATES: [(&str, &[&str]); 5] = [
    ("src/model/", &[]),
    ("src/pages/", &["leavewell_model"]),
    (
        "src/worker/",
        &["leavewell_model", "leavewell_pages", "leavewell_worker"],
    ),
    (
        "src/app/",
        &["leavewell_model", "leavewell_pages", "leavewell_worker"],
    ),
    (
        "src/dev/",
        &["leavewell_model", "leavewell_pages", "leavewell_worker"],
    ),
];

fn floor_of(folder: &str) -> Option<usize> {
    FLOORS.iter().position(|floor| floor.contains(&folder))
}

/// The part of a file before its tests, without comments: tests may use what they like.
fn product(text: &str) -> String {
    let code = text.split("#[cfg(test)]\nmod ").next().unwrap_or_default();
    code.lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .collect::<Vec<_>>()
        .join("\n")
}

/// The names that follow `prefix` in a text: with `crate::`, the folders a file names.
fn names_after<'a>(text: &'a str, prefix: &str) -> BTreeSet<&'a str> {
    text.split(prefix)
        .skip(1)
        .map(|rest| {
            let end = rest
                .find(|c: char| !c.is_ascii_alphanumeric() && c != '_')
                .unwrap_or(rest.len());
            &rest[..end]
        })
        .collect()
}

#[test]
fn folders_of_the_model_use_only_what_stands_below_them() {
    let mut faults = Vec::new();
    let mut edges = 0;
    for (name, text) in files("src/model", &["rs"]) {
        let rest = name.trim_start_matches("src/model/");
        let Some((folder, _)) = rest.split_once('/') else {
            continue;
        };
        // Benchmarks stand outside the model.
        if folder == "benches" {
            continue;
        }
        let Some(floor) = floor_of(folder) else {
            faults.push(format!("{name}: {folder} has no floor"));
            continue;
        };
        for used in names_after(&product(&text), "crate::") {
            if used == folder {
                continue;
            }
            match floor_of(used) {
                Some(below) if below < floor => edges += 1,
                Some(_) => faults.push(format!("{name} uses {used}, which is not below {folder}")),
                None => {}
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(edges > 50, "only {edges} uses were found");
}

#[test]
fn crates_use_only_crates_below_them() {
    let mut faults = Vec::new();
    for (folder, below) in CRATES {
        for (name, text) in files(folder, &["rs"]) {
            if name.contains("/benches/") {
                continue;
            }
            for used in names_after(&product(&text), "leavewell_") {
                let used = format!("leavewell_{used}");
                let known = CRATES.iter().any(|(_, all)| all.contains(&used.as_str()));
                if known && !below.contains(&used.as_str()) {
                    faults.push(format!("{name} uses {used}"));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn a_type_name_is_defined_once_in_the_workspace() {
    let mut defined: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for (name, text) in files("src", &["rs"]) {
        for line in product(&text).lines() {
            let line = line.trim_start();
            let line = line
                .strip_prefix("pub(crate) ")
                .or_else(|| line.strip_prefix("pub(super) "))
                .or_else(|| line.strip_prefix("pub "))
                .unwrap_or(line);
            let Some(rest) = ["struct ", "enum ", "trait "]
                .iter()
                .find_map(|word| line.strip_prefix(word))
            else {
                continue;
            };
            let end = rest
                .find(|c: char| !c.is_ascii_alphanumeric())
                .unwrap_or(rest.len());
            defined
                .entry(rest[..end].to_owned())
                .or_default()
                .insert(name.clone());
        }
    }
    let twice: Vec<_> = defined
        .iter()
        .filter(|(_, files)| files.len() > 1)
        .collect();
    assert!(twice.is_empty(), "{twice:#?}");
    assert!(defined.len() > 100);
}
