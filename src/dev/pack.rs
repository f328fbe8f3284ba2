//! The size of the finished site as a visitor downloads it, and its budget.

use std::path::Path;

use crate::finish;
use crate::paths;
use crate::trouble::{Fallible, Trouble};

// 1 KB is 1,000 bytes here, the stricter reading.
const FIRST_VISIT_BUDGET: usize = 420_000;
/// The worker program, fetched after the first screen has appeared.
const WORKER_BUDGET: usize = 620_000;
/// Everything the service worker caches after the first screen has appeared, so that the site works offline.
const COPY_BUDGET: usize = 1_150_000;
const WORKER_PROGRAM: &str = "leavewell-worker_bg.wasm";

/// Files that a first visit does not request, with the reason. A browser test checks each of them.
const FETCHED_LATER: [(&str, &str); 18] = [
    ("looks.svg", LOOKS),
    ("pictures.js", SOON),
    ("shelf.js", SOON),
    ("plan.js", SOON),
    ("terms.js", SOON),
    ("said.js", SOON),
    ("type.css", TYPE),
    ("brygada-1918.woff2", TYPE),
    (
        "brygada-1918-licence.md",
        "read by people, not by visitors' browsers",
    ),
    ("worker.js", WORKER),
    ("leavewell-worker.js", WORKER),
    (WORKER_PROGRAM, WORKER),
    ("offline.js", COPY),
    ("sw.js", COPY),
    ("icon-192.png", ICON),
    ("icon-512.png", ICON),
    ("icon-maskable.png", ICON),
    ("_headers", "read by servers, not by visitors"),
];
const LOOKS: &str = "drawings of the findings: requested when the Look screen opens";
const SOON: &str = "what no first screen needs: requested after it has appeared";
const WORKER: &str = "the worker program: started when a screen first needs an answer";
const COPY: &str = "the offline copy: made after the first screen has appeared";
const TYPE: &str = "the typeface: used from the second visit on, from the offline copy";
const ICON: &str = "requested when a visitor installs the site";

/// Prints the sizes of all files in a built site, and fails if they exceed the budget.
pub(crate) fn pack(dist: &Path) -> Fallible<()> {
    let weights = weigh_all(dist)?;
    print!("{}", table(&weights));
    within_budget(&weights)
}

/// One file of the site.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Weight {
    name: String,
    raw: usize,
    /// Bytes sent: compressed, unless compression gains nothing.
    sent: usize,
}

fn weigh_all(dist: &Path) -> Fallible<Vec<Weight>> {
    paths::files_in(dist)?
        .into_iter()
        .map(|name| {
            let path = dist.join(&name);
            weigh(name, &paths::read(&path)?).map_err(|error| {
                Trouble::new(
                    format!("{} cannot be compressed: {error}", path.display()),
                    "free some memory and run the command again.",
                )
            })
        })
        .collect()
}

fn weigh(name: String, bytes: &[u8]) -> std::io::Result<Weight> {
    let mut compressed = Vec::new();
    let highest = brotli::enc::BrotliEncoderParams {
        quality: 11,
        ..Default::default()
    };
    brotli::BrotliCompress(&mut &bytes[..], &mut compressed, &highest)?;
    Ok(Weight {
        name,
        raw: bytes.len(),
        sent: compressed.len().min(bytes.len()),
    })
}

fn within_budget(weights: &[Weight]) -> Fallible<()> {
    let is_wasm = |weight: &&Weight| Path::new(&weight.name).extension() == Some("wasm".as_ref());
    if !weights.iter().any(|weight| is_wasm(&weight)) {
        return Err(Trouble::new(
            "the site holds no wasm file",
            "build the site first: cargo run -p leavewell-dev -- build",
        ));
    }
    let worker = weights
        .iter()
        .filter(|weight| weight.name == WORKER_PROGRAM);
    check("the worker program", sent(worker), WORKER_BUDGET)?;
    check(
        "the first visit",
        sent(weights.iter().filter(|weight| !is_later(weight))),
        FIRST_VISIT_BUDGET,
    )?;
    check("the offline copy", sent(kept(weights)), COPY_BUDGET)
}

fn check(what: &str, sent: usize, budget: usize) -> Fallible<()> {
    if sent <= budget {
        return Ok(());
    }
    Err(Trouble::new(
        format!(
            "{what} takes {} bytes compressed, {} over its budget of {}",
            grouped(sent),
            grouped(sent - budget),
            grouped(budget)
        ),
        "compare the table with the last good build to find what grew, then shrink it or remove it.",
    ))
}

fn is_later(weight: &Weight) -> bool {
    FETCHED_LATER.iter().any(|(name, _)| *name == weight.name)
}

/// The files that the service worker caches.
fn kept(weights: &[Weight]) -> impl Iterator<Item = &Weight> {
    weights
        .iter()
        .filter(|weight| finish::is_kept(&weight.name))
}

fn sent<'a>(weights: impl IntoIterator<Item = &'a Weight>) -> usize {
    weights.into_iter().map(|weight| weight.sent).sum()
}

fn table(weights: &[Weight]) -> String {
    let width = weights
        .iter()
        .map(|weight| weight.name.len())
        .max()
        .unwrap_or(0)
        .max("offline copy".len());
    let line =
        |name: &str, raw: &str, sent: &str| format!("  {name:width$} {raw:>11} {sent:>11}\n");
    let mut text = line("file", "bytes", "brotli");
    let (later, first): (Vec<&Weight>, Vec<&Weight>) =
        weights.iter().partition(|weight| is_later(weight));
    for weight in &first {
        text += &line(&weight.name, &grouped(weight.raw), &grouped(weight.sent));
    }
    let raw = first.iter().map(|weight| weight.raw).sum();
    text += &line("first visit", &grouped(raw), &grouped(sent(first)));
    for weight in later {
        text += &line(&weight.name, &grouped(weight.raw), &grouped(weight.sent));
        for (_, why) in FETCHED_LATER
            .iter()
            .filter(|(name, _)| *name == weight.name)
        {
            text.push_str("    fetched later: ");
            text.push_str(why);
            text.push('\n');
        }
    }
    let raw = kept(weights).map(|weight| weight.raw).sum();
    text += &line("offline copy", &grouped(raw), &grouped(sent(kept(weights))));
    text
}

/// A count with commas between groups of three digits.
fn grouped(count: usize) -> String {
    let digits = count.to_string();
    let mut text = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(name: &str, sent: usize) -> Weight {
        Weight {
            name: name.to_owned(),
            raw: 3 * sent,
            sent,
        }
    }

    #[test]
    fn commas_separate_thousands() {
        assert_eq!(grouped(0), "0");
        assert_eq!(grouped(999), "999");
        assert_eq!(grouped(1_000), "1,000");
        assert_eq!(grouped(1_234_567), "1,234,567");
    }

    const APP: usize = 300_000;

    #[test]
    fn one_byte_over_the_budget_fails() {
        let rest = FIRST_VISIT_BUDGET - APP;
        assert!(within_budget(&[file("a.wasm", APP), file("a.js", rest)]).is_ok());
        assert!(within_budget(&[file("a.wasm", APP), file("a.js", rest + 1)]).is_err());
        let worker = |sent| [file("a.wasm", APP), file(WORKER_PROGRAM, sent)];
        assert!(within_budget(&worker(WORKER_BUDGET)).is_ok());
        assert!(within_budget(&worker(WORKER_BUDGET + 1)).is_err());
    }

    #[test]
    fn later_files_are_listed_but_not_counted_in_the_first_visit() {
        let wasm = file("a.wasm", APP);
        let rest = file("a.js", FIRST_VISIT_BUDGET - APP);
        let later = file("looks.svg", 20_000);
        assert!(within_budget(&[wasm.clone(), rest.clone(), later.clone()]).is_ok());
        assert!(within_budget(&[wasm.clone(), rest, file("other.svg", 1)]).is_err());

        let table = table(&[later, wasm]);
        let at = |words: &str| {
            table
                .find(words)
                .unwrap_or_else(|| panic!("{words}: {table}"))
        };
        assert!(at("first visit") < at("looks.svg"));
        assert!(at("looks.svg") < at("fetched later: drawings"));
        assert!(table.contains(&format!("{:>11}", grouped(APP))));
    }

    #[test]
    fn the_offline_copy_has_a_separate_budget() {
        let wasm = file("a.wasm", APP);
        let later = |sent| file("looks.svg", sent);
        let rest = COPY_BUDGET - APP;
        assert!(within_budget(&[wasm.clone(), later(rest)]).is_ok());
        assert!(within_budget(&[wasm.clone(), later(rest + 1)]).is_err());
        let site = [wasm, later(rest), file("sw.js", 1_000)];
        assert!(
            within_budget(&site).is_ok(),
            "the service worker itself is not counted"
        );
        let last = table(&site);
        let last = last.lines().last().unwrap_or_default();
        assert!(last.contains("offline copy") && last.ends_with(&grouped(COPY_BUDGET)));
    }

    #[test]
    fn a_site_without_wasm_is_refused() {
        assert!(within_budget(&[file("index.html", 1)]).is_err());
    }
}
