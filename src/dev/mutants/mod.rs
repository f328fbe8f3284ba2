//! `mutants`: checks the tests by changing the model, one small change at a time, and running the tests that
//! reach the change. A change that no test notices is a gap in the tests, or changes nothing.
//!
//! All changes of a sample are compiled into one copy of the model, each behind a switch that the environment
//! variable `LEAVEWELL_MUTANT` sets, so that the tests are built once and not once for each change. A first run
//! without any change records which tests reach which change; only those are run again.

mod rewrite;
mod run;
mod site;
mod tests_built;

use std::fs;
use std::path::Path;

use crate::paths;
use crate::trouble::{Fallible, Trouble};
use site::{Mutation, changes_in};

/// The folders of the model whose code is changed.
const FOLDERS: [&str; 7] = [
    "counsel",
    "decide",
    "identity",
    "record",
    "silver",
    "treatment",
    "value",
];
/// How many changes a run tries when no number is given.
const SAMPLE: usize = 400;
const SEED: u64 = 1;

/// Reads `--sample N --seed N --folder NAME` and runs. With a folder, only what the sample holds of it is tried.
pub(crate) fn mutants(arguments: &[&str]) -> Fallible<()> {
    let (mut sample, mut seed, mut only) = (SAMPLE, SEED, None);
    for pair in arguments.chunks(2) {
        if let ["--folder", folder] = pair
            && FOLDERS.contains(folder)
        {
            only = Some(format!("src/model/{folder}/"));
            continue;
        }
        let number = pair.get(1).and_then(|text| text.parse::<u64>().ok());
        match (pair[0], number) {
            ("--sample", Some(n)) if (1..=2_000).contains(&n) => {
                sample = usize::try_from(n).unwrap_or(SAMPLE);
            }
            ("--seed", Some(n)) => seed = n,
            _ => {
                return Err(Trouble::new(
                    format!("`{}` is not understood", pair.join(" ")),
                    "give `--sample N`, with N from 1 to 2000, `--seed N`, and `--folder` with a folder of the model.",
                ));
            }
        }
    }
    let all = all_changes(&paths::root())?;
    let possible = all.len();
    let mut chosen = sample_of(all, sample, seed);
    chosen.retain(|change| {
        only.as_ref()
            .is_none_or(|only| change.file.starts_with(only))
    });
    println!("{} of {possible} changes, seed {seed}", chosen.len());
    run::run(&chosen)
}

/// Every change that can be made in the folders, in the order of the files.
fn all_changes(root: &Path) -> Fallible<Vec<Mutation>> {
    let mut all = Vec::new();
    for folder in FOLDERS {
        let top = root.join("src/model").join(folder);
        for name in paths::files_in(&top)? {
            let is_code = name.strip_suffix(".rs").is_some_and(|stem| {
                // Tests, and words, of which no sentence is a rule.
                !stem.ends_with("tests") && !stem.contains("wording/")
            });
            if !is_code {
                continue;
            }
            let file = format!("src/model/{folder}/{name}");
            let text = read(&root.join(&file))?;
            all.extend(changes_in(&file, &text)?);
        }
    }
    Ok(all)
}

fn read(path: &Path) -> Fallible<String> {
    fs::read_to_string(path).map_err(|error| {
        Trouble::new(
            format!("{} cannot be read: {error}", path.display()),
            "restore the file from the repository.",
        )
    })
}

/// `count` of the changes, chosen by the seed, in the order of the files.
fn sample_of(all: Vec<Mutation>, count: usize, seed: u64) -> Vec<Mutation> {
    let mut state = seed;
    let mut keyed: Vec<(u64, usize, Mutation)> = all
        .into_iter()
        .enumerate()
        .map(|(place, change)| (random(&mut state), place, change))
        .collect();
    keyed.sort_by_key(|(key, ..)| *key);
    keyed.truncate(count);
    keyed.sort_by_key(|(_, place, _)| *place);
    keyed.into_iter().map(|(.., change)| change).collect()
}

/// `SplitMix64` (Steele, Lea and Flood 2014).
fn random(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sample_depends_on_its_seed_alone() {
        let all = || all_changes(&paths::root()).unwrap();
        let lines = |seed| -> Vec<String> {
            let chosen = sample_of(all(), 30, seed);
            chosen.iter().map(Mutation::to_string).collect()
        };
        assert_eq!(lines(1).len(), 30);
        assert_eq!(lines(1), lines(1));
        assert_ne!(lines(1), lines(2));
    }

    #[test]
    fn the_random_numbers_are_the_published_ones() {
        // The first outputs for the seed 1234567, as given by the authors' reference code.
        let mut state = 1_234_567;
        assert_eq!(random(&mut state), 6_457_827_717_110_365_317);
        assert_eq!(random(&mut state), 3_203_168_211_198_807_973);
    }
}
