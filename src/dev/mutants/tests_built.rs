//! A copy of the project with the changes in it, its tests built, and which test reaches which change.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use super::read;
use super::rewrite::{rewritten, switch};
use super::site::Mutation;
use crate::paths;
use crate::program::{answer, cannot_start, command};
use crate::trouble::{Fallible, Trouble};

/// The switch, written into the copy of the model.
const SWITCH: &str = include_str!("switch.rs.txt");
/// What takes minutes comes last, when few changes are left.
const SLOW: [&str; 2] = ["hazards", "laws"];
/// Checks of the house and its words, which no change of the sample can touch, and what runs on request.
const NOT_OF_THE_MODEL: [&str; 2] = ["tidy", "learning_simulation"];

/// The test programs, with a place to run them in.
pub(super) struct Built {
    /// The model's own tests come first, the slow ones last.
    pub(super) programs: Vec<Program>,
    /// The changes that compile, by number.
    pub(super) compiled: BTreeSet<usize>,
}

/// One test program.
pub(super) struct Program {
    pub(super) name: String,
    file: PathBuf,
    folder: PathBuf,
    /// How long all its tests take without any change.
    took: Duration,
    /// The tests that reach each change.
    pub(super) reached: BTreeMap<usize, BTreeSet<String>>,
}

/// What became of some tests with a change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ran {
    Passed,
    Failed,
    /// They ran on past their time, as code does that never ends.
    Hung,
}

impl Built {
    /// Copies the project, writes the changes into the copy, and builds its tests.
    pub(super) fn of(changes: &[Mutation]) -> Fallible<Self> {
        let tree = paths::root().join("target/mutants/tree");
        copy_project(&tree)?;
        let mut compiled: BTreeSet<usize> = (0..changes.len()).collect();
        loop {
            write_changes(&tree, changes, &compiled)?;
            let wrong = not_compiling(&tree)?;
            if wrong.is_empty() {
                break;
            }
            for number in wrong {
                if !compiled.remove(&number) {
                    return Err(Trouble::new(
                        "the copy of the model does not compile, and not because of a change",
                        "run `cargo test --no-run` in target/mutants/tree, which says more.",
                    ));
                }
            }
        }
        let mut programs = build(&tree)?;
        programs.sort_by_key(|p| {
            let slow = SLOW.iter().position(|name| *name == p.name);
            (slow, p.name != "leavewell_model", p.name.clone())
        });
        Ok(Self { programs, compiled })
    }
}

impl Program {
    /// Runs all tests without any change, to see that they pass, how long they take, and what they reach.
    pub(super) fn run_unchanged(&mut self) -> Fallible<()> {
        let list = self.file.with_extension("reached");
        let _ = fs::remove_file(&list);
        let start = Instant::now();
        let mut tests = self.command(&[]);
        tests.env("LEAVEWELL_MUTANTS_REACHED", &list);
        let output = tests.output().map_err(|e| cannot_start(&tests, &e))?;
        self.took = start.elapsed();
        if !output.status.success() {
            let text = String::from_utf8_lossy(&output.stdout);
            let failed = text.lines().filter(|l| l.ends_with("FAILED"));
            return Err(Trouble::new(
                format!(
                    "tests of {} fail without any change: {}",
                    self.name,
                    failed.collect::<Vec<_>>().join(", ")
                ),
                "mend them first: `cargo verify --quick`.",
            ));
        }
        // A program whose tests reach no change writes no list.
        for line in fs::read_to_string(&list).unwrap_or_default().lines() {
            if let Some((number, test)) = line.split_once(' ')
                && let Ok(number) = number.parse()
            {
                self.reached
                    .entry(number)
                    .or_default()
                    .insert(test.to_owned());
            }
        }
        println!(
            "{}: all pass in {:.0} s and reach {} changes",
            self.name,
            self.took.as_secs_f64(),
            self.reached.len()
        );
        Ok(())
    }

    /// Runs these tests with a change.
    pub(super) fn run_changed(&self, number: usize, tests: &[String]) -> Fallible<Ran> {
        let mut tests = self.command(tests);
        tests
            .env("LEAVEWELL_MUTANT", number.to_string())
            .env("PROPTEST_MAX_SHRINK_ITERS", "0")
            .stdout(Stdio::null())
            .stderr(Stdio::null());
        let mut running = tests.spawn().map_err(|e| cannot_start(&tests, &e))?;
        let start = Instant::now();
        let longest = self.took * 4 + Duration::from_secs(20);
        loop {
            match running.try_wait() {
                Ok(Some(status)) if status.success() => return Ok(Ran::Passed),
                Ok(Some(_)) => return Ok(Ran::Failed),
                Ok(None) if start.elapsed() > longest => {
                    let _ = running.kill();
                    let _ = running.wait();
                    return Ok(Ran::Hung);
                }
                Ok(None) => std::thread::sleep(Duration::from_millis(20)),
                Err(error) => return Err(cannot_start(&tests, &error)),
            }
        }
    }

    fn command(&self, tests: &[String]) -> Command {
        let mut command = Command::new(&self.file);
        command
            .current_dir(&self.folder)
            .stdin(Stdio::null())
            .env("CARGO_MANIFEST_DIR", &self.folder);
        if !tests.is_empty() {
            command.arg("--exact").args(tests);
        }
        command
    }
}

/// Copies the files that the repository holds. What is the same already is left, so that little is compiled
/// again.
fn copy_project(tree: &Path) -> Fallible<()> {
    let names = answer(command("git").args(["ls-files"])).ok_or_else(|| {
        Trouble::new(
            "the files of the project cannot be listed",
            "run the command in a checkout of the repository, with git installed.",
        )
    })?;
    for name in names
        .lines()
        .filter(|name| !name.starts_with("tests/browser"))
    {
        let (from, to) = (paths::root().join(name), tree.join(name));
        // A file that was removed and not committed.
        if let Ok(bytes) = fs::read(&from) {
            write(&to, &bytes)?;
        }
    }
    Ok(())
}

fn write(file: &Path, bytes: &[u8]) -> Fallible<()> {
    if fs::read(file).is_ok_and(|known| known == bytes) {
        return Ok(());
    }
    let made = file.parent().map_or(Ok(()), fs::create_dir_all);
    made.and_then(|()| fs::write(file, bytes)).map_err(|error| {
        Trouble::new(
            format!("{} cannot be written: {error}", file.display()),
            "check that there is room on the disk.",
        )
    })
}

fn write_changes(tree: &Path, changes: &[Mutation], with: &BTreeSet<usize>) -> Fallible<()> {
    let mut by_file: BTreeMap<&str, Vec<(usize, &Mutation)>> = BTreeMap::new();
    for (number, change) in changes.iter().enumerate() {
        let of_file = by_file.entry(&change.file).or_default();
        if with.contains(&number) {
            of_file.push((number, change));
        }
    }
    for (file, of_file) in by_file {
        let text = read(&paths::root().join(file))?;
        write(&tree.join(file), rewritten(&text, &of_file).as_bytes())?;
    }
    let lib = read(&paths::root().join("src/model/lib.rs"))?;
    write(&tree.join("src/model/mutant.rs"), SWITCH.as_bytes())?;
    let lib = format!("{lib}\nmod mutant;\n");
    write(&tree.join("src/model/lib.rs"), lib.as_bytes())
}

fn cargo_in(tree: &Path, arguments: &[&str]) -> Fallible<Vec<serde_json::Value>> {
    let mut cargo = crate::program::cargo();
    cargo
        .current_dir(tree)
        .args(arguments)
        .arg("--message-format=json")
        .env(
            "CARGO_TARGET_DIR",
            paths::root().join("target/mutants/build"),
        )
        .stderr(Stdio::inherit());
    let output = cargo.output().map_err(|e| cannot_start(&cargo, &e))?;
    let text = String::from_utf8_lossy(&output.stdout);
    Ok(text
        .lines()
        .filter_map(|line| serde_json::from_str(line).ok())
        .collect())
}

/// The numbers of the changes that do not compile: of each error, the last switch before its end.
fn not_compiling(tree: &Path) -> Fallible<BTreeSet<usize>> {
    let checked = ["check", "--quiet", "--package", "leavewell-model"];
    let mut wrong = BTreeSet::new();
    for message in cargo_in(tree, &checked)? {
        let message = &message["message"];
        if message["level"] != "error" {
            continue;
        }
        for span in message["spans"].as_array().into_iter().flatten() {
            let (Some(file), Some(end)) = (span["file_name"].as_str(), span["byte_end"].as_u64())
            else {
                continue;
            };
            let text = read(&tree.join(file))?;
            let end = usize::try_from(end).unwrap_or(0).min(text.len());
            let opening = switch(0);
            let opening = opening.trim_end_matches("0)");
            if let Some(at) = text[..end].rfind(opening) {
                let rest = &text[at + opening.len()..];
                let number = rest.split(')').next().and_then(|n| n.parse::<usize>().ok());
                wrong.extend(number);
            }
        }
    }
    Ok(wrong)
}

/// Builds the tests of the model and those that cross crates.
fn build(tree: &Path) -> Fallible<Vec<Program>> {
    let mut programs = Vec::new();
    for (package, which, folder) in [
        ("leavewell-model", "--lib", "src/model"),
        ("leavewell", "--tests", "."),
    ] {
        let messages = cargo_in(tree, &["test", "--no-run", "--quiet", "-p", package, which])?;
        for message in messages {
            let name = message["target"]["name"].as_str().unwrap_or_default();
            let kind = &message["target"]["kind"][0];
            let of_model = package == "leavewell-model" && kind == "lib";
            if let Some(file) = message["executable"].as_str()
                && (of_model || kind == "test")
                && !NOT_OF_THE_MODEL.contains(&name)
            {
                programs.push(Program {
                    name: name.replace('-', "_"),
                    file: file.into(),
                    folder: tree.join(folder),
                    took: Duration::ZERO,
                    reached: BTreeMap::new(),
                });
            }
        }
    }
    if programs.is_empty() {
        return Err(Trouble::new(
            "the tests could not be built with the changes in them",
            "read the compiler's messages above.",
        ));
    }
    Ok(programs)
}
