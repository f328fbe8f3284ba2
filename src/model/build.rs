//! Turns the first column of `ledger/data/figures.psv` into constants, so that a look-up of a figure
//! that does not exist fails to compile.

use std::fmt::Write as _;
use std::path::Path;
use std::{env, fs};

const FIGURES: &str = "ledger/data/figures.psv";
const MEANINGS: &str = "ledger/data/meanings.psv";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    println!("cargo::rerun-if-changed={FIGURES}");
    println!("cargo::rerun-if-changed={MEANINGS}");
    let figures = fs::read_to_string(FIGURES)?;
    let meanings = fs::read_to_string(MEANINGS)?;
    let meaning_of = |id: &str| {
        first_columns(&meanings)
            .find(|(known, _)| *known == id)
            .map_or("", |(_, rest)| rest)
            .to_owned()
    };
    // The first row is the header.
    let mut ids: Vec<&str> = first_columns(&figures).skip(1).map(|(id, _)| id).collect();
    ids.sort_unstable();
    let mut code = String::new();
    writeln!(code, "const IDS: [&str; {}] = {ids:?};", ids.len())?;
    writeln!(code, "impl FigureId {{")?;
    for (place, id) in ids.iter().enumerate() {
        // Brackets would be read as links by the documentation.
        let meaning = meaning_of(id).replace('[', "\\[").replace(']', "\\]");
        writeln!(code, "    /// `{id}`: {meaning}")?;
        writeln!(
            code,
            "    pub const {}: Self = Self({place});",
            constant(id)
        )?;
    }
    writeln!(code, "}}")?;
    fs::write(Path::new(&env::var("OUT_DIR")?).join("figure_ids.rs"), code)?;
    Ok(())
}

/// The rows of a data file, each as its first column and the rest.
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
