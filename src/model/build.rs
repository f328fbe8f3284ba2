//! Turns the ids of the figures, the findings and the hard rules into constants, so that code with an id that does not exist
//! fails to compile. Writes the other columns of the figures in the order of the ids, each id once; the program
//! embeds that text.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;
use std::{env, fs};

const FIGURES: &str = "ledger/data/figures.psv";
/// The first column, and the other columns.
const HEADER: (&str, &str) = ("id", "value | low | high | unit | shape | tag | source");
const MEANINGS: &str = "ledger/data/meanings.psv";
const FINDINGS: &str = "ledger/data/findings.psv";
const RULES: &str = "ledger/data/guards.psv";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    for file in [FIGURES, MEANINGS, FINDINGS, RULES] {
        println!("cargo::rerun-if-changed={file}");
    }
    let out = env::var("OUT_DIR")?;
    let out = Path::new(&out);
    figures(out)?;
    let title = |row: &str| row.split(" | ").nth(1).unwrap_or_default().to_owned();
    ids("FindingId", FINDINGS, title, &out.join("finding_ids.rs"))?;
    ids("RuleId", RULES, title, &out.join("rule_ids.rs"))
}

fn figures(out: &Path) -> Result<(), Box<dyn std::error::Error>> {
    let figures = fs::read_to_string(FIGURES)?;
    let meanings = fs::read_to_string(MEANINGS)?;
    let mut lines = first_columns(&figures);
    if lines.next() != Some(HEADER) {
        return Err(format!("{FIGURES}: the header should be {HEADER:?}").into());
    }
    let mut rows: Vec<(&str, &str)> = lines.collect();
    rows.sort_unstable();
    let ids: Vec<&str> = rows.iter().map(|(id, _)| *id).collect();
    let twice = ids.windows(2).find(|pair| pair[0] == pair[1]);
    if let Some([id, _]) = twice {
        return Err(format!("{FIGURES}: {id} stands twice").into());
    }
    let rest: Vec<&str> = rows.iter().map(|(_, rest)| *rest).collect();
    fs::write(out.join("figures.psv"), rest.join("\n"))?;
    let meanings: BTreeMap<&str, &str> = first_columns(&meanings).skip(1).collect();
    let mut said = String::new();
    for id in &ids {
        let meaning = meanings.get(id);
        said += meaning.ok_or_else(|| format!("{MEANINGS}: {id} has no meaning"))?;
        said.push('\n');
    }
    if let Some(left) = meanings.keys().find(|id| ids.binary_search(id).is_err()) {
        return Err(format!("{MEANINGS}: {left} is no figure").into());
    }
    fs::write(out.join("meanings.txt"), &said)?;
    let mut code = String::new();
    writeln!(code, "const IDS: [&str; {}] = {ids:?};", ids.len())?;
    writeln!(code, "const NAMES: &str = {:?};", ids.join("\n"))?;
    writeln!(code, "impl FigureId {{")?;
    for (place, (id, meaning)) in ids.iter().zip(said.lines()).enumerate() {
        // The documentation would read brackets as links.
        let meaning = meaning.replace('[', "\\[").replace(']', "\\]");
        writeln!(code, "    /// `{id}`: {meaning}")?;
        writeln!(
            code,
            "    pub const {}: Self = Self({place});",
            constant(id)
        )?;
    }
    writeln!(code, "}}")?;
    fs::write(out.join("figure_ids.rs"), code)?;
    Ok(())
}

/// The ids of a data file in alphabetical order, and a constant of the type `name` for each, documented by
/// what `title` takes from the rest of its row.
fn ids(
    name: &str,
    file: &str,
    title: impl Fn(&str) -> String,
    out: &Path,
) -> Result<(), Box<dyn std::error::Error>> {
    let text = fs::read_to_string(file)?;
    let mut rows: Vec<(&str, &str)> = first_columns(&text).skip(1).collect();
    rows.sort_unstable();
    let ids: Vec<&str> = rows.iter().map(|(id, _)| *id).collect();
    let mut code = String::new();
    writeln!(code, "const IDS: [&str; {}] = {ids:?};", ids.len())?;
    writeln!(code, "impl {name} {{")?;
    for (place, (id, rest)) in rows.iter().enumerate() {
        writeln!(code, "    /// `{id}`: {}", title(rest))?;
        writeln!(
            code,
            "    pub const {}: Self = Self({place});",
            constant(id)
        )?;
    }
    writeln!(code, "}}")?;
    fs::write(out, code)?;
    Ok(())
}

/// The rows of a data file, each as its first column and the rest of the line.
fn first_columns(text: &str) -> impl Iterator<Item = (&str, &str)> {
    text.lines()
        .map(str::trim)
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .filter_map(|line| line.split_once(" | "))
}

/// `fee.lot` as `FEE_LOT`.
fn constant(id: &str) -> String {
    id.chars()
        .map(|c| match c {
            '.' | '-' => '_',
            c => c.to_ascii_uppercase(),
        })
        .collect()
}
