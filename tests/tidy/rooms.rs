//! Module structure: which folder may use which, and that each type name is defined once.

use std::collections::{BTreeMap, BTreeSet};

use super::files;

/// The folders of the model in layers, lowest first, `report` being a file. A folder may use itself and those in
/// lower layers.
const FLOORS: [&[&str]; 9] = [
    &["terms"],
    &["maths", "ledger"],
    &["decide", "record"],
    &["bench", "silver", "report"],
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

/// The part of a file before its tests, without comments; tests may use anything.
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

/// The end of the name that a text begins with.
fn name_end(text: &str) -> usize {
    text.find(|c: char| !c.is_ascii_alphanumeric() && c != '_')
        .unwrap_or(text.len())
}

/// The paths of a `use` tree after the names `before`, and the rest of the text behind it: `a::{b, c::d}` gives
/// `a::b` and `a::c::d`.
fn tree<'a>(text: &'a str, before: &[&'a str], found: &mut Vec<Vec<&'a str>>) -> &'a str {
    let mut path = before.to_vec();
    let mut rest = text;
    loop {
        if let Some(mut inside) = rest.strip_prefix('{') {
            loop {
                inside = inside.trim_start_matches([' ', '\n', ',']);
                if inside.is_empty() || inside.starts_with('}') {
                    return inside.get(1..).unwrap_or_default();
                }
                let after = tree(inside, &path, found);
                // The rest of the entry, such as a new name after `as`.
                let end = after.find([',', '}']).unwrap_or(after.len());
                inside = &after[end..];
            }
        }
        let end = name_end(rest);
        if !matches!(&rest[..end], "" | "self") {
            path.push(&rest[..end]);
        }
        rest = &rest[end..];
        match rest.strip_prefix("::") {
            Some(after) if end > 0 => rest = after,
            _ => {
                found.push(path);
                return rest;
            }
        }
    }
}

/// The module of a source file below the root of its crate: `counsel/draws.rs` is `counsel::draws`.
fn module_of(file: &str) -> Vec<&str> {
    let mut names: Vec<&str> = file.trim_end_matches(".rs").split('/').collect();
    if matches!(names.last(), Some(&("mod" | "lib" | "main"))) {
        names.pop();
    }
    names
}

/// The paths that a file of a crate names with `crate` or `super`, from the root of the crate.
fn paths_named<'a>(file: &'a str, text: &'a str) -> Vec<Vec<&'a str>> {
    let module = module_of(file);
    let mut found = Vec::new();
    for (at, _) in text.match_indices("::") {
        let start = text[..at]
            .rfind(|c: char| !c.is_ascii_alphanumeric() && c != '_')
            .map_or(0, |before| before + 1);
        let before = &text[..start];
        let mut after = &text[at + 2..];
        let root: &[&str] = match &text[start..at] {
            "crate" => &[],
            "super" if !before.ends_with("super::") => {
                let mut up = 1;
                while let Some(rest) = after.strip_prefix("super::") {
                    after = rest;
                    up += 1;
                }
                &module[..module.len().saturating_sub(up)]
            }
            _ => continue,
        };
        tree(after, root, &mut found);
    }
    found
}

#[test]
fn paths_are_read_out_of_trees_and_through_super() {
    let text =
        "use crate::{ledger::{self, Figure}, terms as t};\nlet x = super::super::maths::mean(y);";
    let found = paths_named("counsel/draws.rs", text);
    let shown: Vec<String> = found.iter().map(|path| path.join("::")).collect();
    assert_eq!(shown, ["ledger", "ledger::Figure", "terms", "maths::mean"]);
    let beside = paths_named("counsel/draws.rs", "use super::sample::Dim;");
    assert_eq!(beside, [["counsel", "sample", "Dim"]]);
    let below = paths_named("counsel/mod.rs", "use super::terms::Kind;");
    assert_eq!(below, [["terms", "Kind"]]);
}

#[test]
fn folders_of_the_model_use_only_folders_below_them() {
    let mut faults = Vec::new();
    let mut edges = 0;
    for (name, text) in files("src/model", &["rs"]) {
        let file = name.trim_start_matches("src/model/");
        let (folder, _) = file.split_once(['/', '.']).unwrap();
        // The crate's front page, its build script and its benchmarks are not part of the model.
        if matches!(folder, "lib" | "build" | "benches") {
            continue;
        }
        let Some(floor) = floor_of(folder) else {
            faults.push(format!("{name}: {folder} has no floor"));
            continue;
        };
        let text = product(&text);
        let used: BTreeSet<&str> = paths_named(file, &text)
            .iter()
            .filter_map(|path| path.first().copied())
            .filter(|used| *used != folder)
            .collect();
        for used in used {
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

/// The sources of crates, with what the paths of each begin with.
const ROOTS: [(&str, Option<&str>); 4] = [
    ("src/model/", None),
    ("src/pages/", None),
    ("src/worker/", None),
    ("src/app/", Some("app")),
];

/// One circle stands: the sample keeps the last results that these files drew on it, so that a draw whose inputs
/// have not changed is not made again.
const SAMPLE_AND_ITS_DRAWS: [&str; 4] = [
    "counsel/draws.rs",
    "counsel/part_silver.rs",
    "counsel/sample.rs",
    "counsel/wear.rs",
];

#[test]
fn files_of_one_folder_do_not_use_each_other_in_circles() {
    let mut faults = Vec::new();
    let mut edges = 0;
    for (root, prefix) in ROOTS {
        let sources: Vec<(String, String)> = files(root, &["rs"])
            .into_iter()
            .map(|(name, text)| (name.trim_start_matches(root).to_owned(), product(&text)))
            .filter(|(name, _)| !name.starts_with("benches/"))
            .collect();
        // What a folder's own file passes on counts for no file in particular.
        let modules: BTreeMap<Vec<&str>, &str> = sources
            .iter()
            .filter(|(name, _)| {
                !["mod.rs", "lib.rs", "main.rs"]
                    .iter()
                    .any(|own| name.ends_with(own))
            })
            .map(|(name, _)| (module_of(name), name.as_str()))
            .collect();
        let folder = |name: &str| {
            name.rsplit_once('/')
                .map_or("", |(folder, _)| folder)
                .to_owned()
        };
        let mut uses: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
        for (name, text) in sources
            .iter()
            .filter(|(name, _)| modules.contains_key(&module_of(name)))
        {
            for mut path in paths_named(name, text) {
                if path.first().copied() == prefix && prefix.is_some() {
                    path.remove(0);
                }
                let used = (1..=path.len())
                    .rev()
                    .find_map(|end| modules.get(&path[..end]));
                let of_sample = |file: &str| SAMPLE_AND_ITS_DRAWS.contains(&file);
                let counts = |used: &str| {
                    let stands = of_sample(used) && of_sample(name);
                    used != name && folder(used) == folder(name) && !stands
                };
                if let Some(used) = used.filter(|used| counts(used)) {
                    uses.entry(name).or_default().insert(used);
                    edges += 1;
                }
            }
        }
        for name in uses.keys() {
            let mut reached = BTreeSet::new();
            let mut open: Vec<&str> = vec![name];
            while let Some(at) = open.pop() {
                for next in uses.get(at).into_iter().flatten() {
                    if reached.insert(*next) {
                        open.push(next);
                    }
                }
            }
            if reached.contains(name) {
                let mut circle = uses[name].iter();
                let on = circle.find(|next| **next == *name || reached.contains(*next));
                faults.push(format!(
                    "{root}{name} uses itself through others, first {on:?}"
                ));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(edges > 200, "only {edges} uses were found");
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
            // A macro's type has the name that the macro is called with.
            if rest.starts_with('$') {
                continue;
            }
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
