//! Checks the project's dependencies: where each crate comes from, its licence, and that none of them is a
//! network client. It reads `cargo metadata`, so it needs no network and takes a second.

use std::collections::BTreeMap;
use std::env;
use std::path::{Path, PathBuf};

use serde_json::Value;

use crate::program::{answer, cargo, command, run};
use crate::trouble::{Fallible, Trouble};

/// Licences that let anyone use and redistribute this project as it is. Any other needs a decision.
const LICENCES: [&str; 8] = [
    "0BSD",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "MIT",
    "Unicode-3.0",
    "Zlib",
];

/// Network clients, which nothing here needs. `yew` depends on `gloo-net` but does not call it; the browser
/// tests check that the finished programs make no network call.
const BANNED: [&str; 8] = [
    "curl",
    "hyper",
    "isahc",
    "native-tls",
    "openssl-sys",
    "reqwest",
    "rustls",
    "ureq",
];

/// Checks every crate in the lock file, and its known vulnerabilities if the advisory list is installed.
pub(crate) fn audit() -> Fallible<()> {
    let text = answer(cargo().args(["metadata", "--format-version", "1", "--locked"]))
        .ok_or_else(|| {
            Trouble::new(
                "cargo cannot list the project's dependencies",
                "run `cargo metadata --format-version 1 --locked` to see why; after changing dependencies, build once to update Cargo.lock.",
            )
        })?;
    let crates = read(&text);
    let faults = faults(&crates);
    if !faults.is_empty() {
        return Err(Trouble::new(
            format!(
                "{} faults in the crates of the lock file:\n  {}",
                faults.len(),
                faults.join("\n  ")
            ),
            "remove the crate, or allow it in src/dev/audit.rs and give the reason there.",
        ));
    }
    println!(
        "{} crates: all from the default registry or this project, all licences allowed, no network client",
        crates.len()
    );
    println!("in more than one version: {}", doubled(&crates).join(", "));
    known_faults()
}

#[derive(Debug, Clone, PartialEq, Eq)]
struct Crate {
    name: String,
    version: String,
    licence: Option<String>,
    /// `None` for a crate of this project.
    source: Option<String>,
    /// Registries other than the default that its dependencies name.
    registries: Vec<String>,
}

fn read(metadata: &str) -> Vec<Crate> {
    let metadata: Value = serde_json::from_str(metadata).unwrap_or_default();
    let text = |value: &Value| value.as_str().map(str::to_owned);
    let packages = metadata["packages"].as_array();
    packages
        .into_iter()
        .flatten()
        .map(|package| Crate {
            name: text(&package["name"]).unwrap_or_default(),
            version: text(&package["version"]).unwrap_or_default(),
            licence: text(&package["license"]),
            source: text(&package["source"]),
            registries: package["dependencies"]
                .as_array()
                .into_iter()
                .flatten()
                .filter_map(|dependency| text(&dependency["registry"]))
                .collect(),
        })
        .collect()
}

fn faults(crates: &[Crate]) -> Vec<String> {
    let mut faults = Vec::new();
    if crates.is_empty() {
        faults.push("no crate was found at all".to_owned());
    }
    for it in crates {
        let mut fault = |what: &str| faults.push(format!("{} {}: {what}", it.name, it.version));
        // Cargo marks git repositories and outside folders in `source`, and names any registry but the default.
        if it.source.as_ref().is_some_and(|source| {
            !source.starts_with("registry+") && !source.starts_with("sparse+")
        }) {
            fault("it does not come from a registry");
        }
        if let Some(registry) = it.registries.first() {
            fault(&format!(
                "it depends on crates from another registry, {registry}"
            ));
        }
        match &it.licence {
            None => fault("it states no licence"),
            Some(licence) if !is_allowed(licence) => {
                fault(&format!("its licence, {licence}, is not allowed"));
            }
            Some(_) => {}
        }
        if BANNED.contains(&it.name.as_str()) {
            fault("it is a network client");
        }
    }
    faults
}

fn doubled(crates: &[Crate]) -> Vec<&str> {
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for it in crates {
        *counts.entry(&it.name).or_default() += 1;
    }
    counts.retain(|_, count| *count > 1);
    counts.into_keys().collect()
}

/// Whether a licence expression (SPDX; older crates write `/` for `OR`) offers an allowed licence.
fn is_allowed(expression: &str) -> bool {
    let spaced = expression
        .replace('/', " OR ")
        .replace('(', " ( ")
        .replace(')', " ) ");
    let words: Vec<&str> = spaced.split_whitespace().collect();
    let mut at = 0;
    either(&words, &mut at) == Some(true) && at == words.len()
}

fn either(words: &[&str], at: &mut usize) -> Option<bool> {
    let mut allowed = both(words, at)?;
    while words.get(*at) == Some(&"OR") {
        *at += 1;
        allowed |= both(words, at)?;
    }
    Some(allowed)
}

fn both(words: &[&str], at: &mut usize) -> Option<bool> {
    let mut allowed = one(words, at)?;
    while words.get(*at) == Some(&"AND") {
        *at += 1;
        allowed &= one(words, at)?;
    }
    Some(allowed)
}

/// One licence or a bracketed expression; `None` if it is malformed. `WITH` exceptions only grant more rights.
fn one(words: &[&str], at: &mut usize) -> Option<bool> {
    let word = *words.get(*at)?;
    *at += 1;
    if word == "(" {
        let allowed = either(words, at)?;
        (words.get(*at) == Some(&")")).then_some(())?;
        *at += 1;
        return Some(allowed);
    }
    if ["AND", "OR", "WITH", ")"].contains(&word) {
        return None;
    }
    if words.get(*at) == Some(&"WITH") {
        words.get(*at + 1)?;
        *at += 2;
    }
    Some(LICENCES.contains(&word))
}

/// Checks the crates against the advisory list of cargo-audit, if both are already on this machine.
/// The list has to be downloaded, and every other check runs without a network.
fn known_faults() -> Fallible<()> {
    let there = answer(command("cargo-audit").arg("--version")).is_some();
    let list = advisories();
    if there && list.as_deref().is_some_and(Path::is_dir) {
        return run(cargo().args(["audit", "--no-fetch"]))
            .map_err(|trouble| trouble.cured_by("update the crate named, or remove it."));
    }
    println!(
        "NOT CHECKED: known vulnerabilities of these crates. To check them, install cargo-audit and run `cargo audit` once with a network connection."
    );
    Ok(())
}

/// Where cargo-audit keeps its advisory list.
fn advisories() -> Option<PathBuf> {
    let named = |name: &str| env::var_os(name).filter(|value| !value.is_empty());
    named("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| named("HOME").map(|home| Path::new(&home).join(".cargo")))
        .map(|cargo| cargo.join("advisory-db"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sound() -> Crate {
        Crate {
            name: "libm".to_owned(),
            version: "0.2.0".to_owned(),
            licence: Some("MIT".to_owned()),
            source: Some("registry+the default one".to_owned()),
            registries: Vec::new(),
        }
    }

    #[test]
    fn licence_expressions_are_read() {
        for allowed in [
            "MIT",
            "MIT OR Apache-2.0",
            "Apache-2.0/MIT",
            "Apache-2.0 / MIT",
            "MIT OR GPL-3.0-only",
            "(MIT OR Apache-2.0) AND Unicode-3.0",
            "Apache-2.0 WITH LLVM-exception OR MIT",
            "BSD-3-Clause AND MIT",
            "GPL-3.0-only OR (Zlib AND MIT)",
        ] {
            assert!(is_allowed(allowed), "{allowed}");
        }
        for not in [
            "",
            "GPL-3.0-only",
            "MIT AND GPL-3.0-only",
            "GPL-3.0-only WITH Classpath-exception-2.0",
            "(MIT OR Apache-2.0) AND GPL-2.0-only",
            "MIT OR",
            "OR MIT",
            "(MIT",
            "MIT)",
            "MIT Apache-2.0",
            "MIT WITH",
            "mitigated",
        ] {
            assert!(!is_allowed(not), "{not}");
        }
    }

    #[test]
    fn each_fault_is_reported() {
        assert_eq!(faults(&[sound()]), Vec::<String>::new());
        let own = Crate {
            source: None,
            ..sound()
        };
        assert_eq!(faults(&[own]), Vec::<String>::new());
        let bad = [
            Crate {
                source: Some("git+elsewhere".to_owned()),
                ..sound()
            },
            Crate {
                registries: vec!["elsewhere".to_owned()],
                ..sound()
            },
            Crate {
                licence: None,
                ..sound()
            },
            Crate {
                licence: Some("GPL-3.0-only".to_owned()),
                ..sound()
            },
            Crate {
                name: "reqwest".to_owned(),
                ..sound()
            },
        ];
        for it in bad {
            assert_eq!(faults(std::slice::from_ref(&it)).len(), 1, "{it:?}");
        }
        assert_eq!(faults(&[]).len(), 1, "an empty list is a fault");
    }

    #[test]
    fn cargo_metadata_is_read() {
        let text = r#"{"packages": [{"name": "a", "version": "1.0.0", "license": "MIT", "source": null,
            "dependencies": [{"name": "b", "registry": null}, {"name": "c", "registry": "elsewhere"}]}]}"#;
        let crates = read(text);
        assert_eq!(crates.len(), 1);
        assert_eq!(crates[0].registries, ["elsewhere"]);
        assert_eq!(crates[0].source, None);
        assert!(read("not json").is_empty());
        let two = [
            sound(),
            Crate {
                version: "0.3.0".to_owned(),
                ..sound()
            },
        ];
        assert_eq!(doubled(&two), ["libm"]);
        assert!(doubled(&[sound()]).is_empty());
    }
}
