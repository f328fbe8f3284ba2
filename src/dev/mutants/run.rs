//! Runs the tests that reach each change, and says which changes no test noticed.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicUsize, Ordering::Relaxed};

use super::site::Mutation;
use super::tests_built::{Built, Program, Ran};
use crate::trouble::Fallible;

/// What became of a change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Fate {
    Caught,
    /// No test failed.
    Missed,
    /// No test runs that code.
    NotReached,
    DoesNotCompile,
}

/// Tries the changes and prints what became of them. Each program of tests is run with all the changes that those
/// before it did not catch, so the slow ones have few left.
pub(super) fn run(changes: &[Mutation]) -> Fallible<()> {
    let mut built = Built::of(changes)?;
    let compiled = |number: usize| built.compiled.contains(&number);
    let mut fates: Vec<Fate> = (0..changes.len())
        .map(|number| {
            if compiled(number) {
                Fate::NotReached
            } else {
                Fate::DoesNotCompile
            }
        })
        .collect();
    for program in &mut built.programs {
        program.run_unchanged()?;
        let left: Vec<usize> = (0..changes.len())
            .filter(|number| matches!(fates[*number], Fate::Missed | Fate::NotReached))
            .filter(|number| program.reached.contains_key(number))
            .collect();
        for (number, caught) in try_all(&left, changes, program)? {
            fates[number] = if caught { Fate::Caught } else { Fate::Missed };
        }
        let open = |fate: &&Fate| matches!(fate, Fate::Missed | Fate::NotReached);
        let open = fates.iter().filter(open).count();
        println!("{}: {open} not caught so far", program.name);
    }
    print!("{}", summary(changes, &fates));
    Ok(())
}

/// Runs a program's tests with each of these changes; says whether one failed.
fn try_all(
    left: &[usize],
    changes: &[Mutation],
    program: &Program,
) -> Fallible<Vec<(usize, bool)>> {
    let next = AtomicUsize::new(0);
    let work = || -> Fallible<Vec<(usize, bool)>> {
        let mut done = Vec::new();
        while let Some(number) = left.get(next.fetch_add(1, Relaxed)) {
            let change = &changes[*number];
            let caught = is_caught(*number, change, program)?;
            // At once, so that a run that is stopped leaves what it found.
            let fate = if caught { "caught" } else { "missed" };
            println!("{}: {fate}  {change}", program.name);
            done.push((*number, caught));
        }
        Ok(done)
    };
    let at_once = std::thread::available_parallelism().map_or(1, usize::from);
    std::thread::scope(|scope| {
        let workers: Vec<_> = (0..at_once).map(|_| scope.spawn(work)).collect();
        let mut all = Vec::new();
        for worker in workers {
            all.extend(worker.join().unwrap_or_else(|_| Ok(Vec::new()))?);
        }
        Ok(all)
    })
}

/// Runs the tests that reach a change until one fails: first those that stand in its file, then those of its
/// folder, then the rest.
fn is_caught(number: usize, change: &Mutation, program: &Program) -> Fallible<bool> {
    let module = change
        .file
        .trim_start_matches("src/model/")
        .trim_end_matches(".rs")
        .trim_end_matches("/mod")
        .replace('/', "::");
    let folder = module.split("::").next().unwrap_or_default().to_owned();
    let nearness = |test: &String| {
        let in_folder = test.starts_with(&format!("{folder}::"));
        u8::from(!test.starts_with(&format!("{module}::"))) + u8::from(!in_folder)
    };
    let mut batches: BTreeMap<u8, Vec<String>> = BTreeMap::new();
    let tests = program.reached.get(&number).into_iter().flatten();
    for test in tests.clone() {
        batches
            .entry(nearness(test))
            .or_default()
            .push(test.clone());
    }
    // A thread without a name belongs to an unknown test, so all are run.
    if tests.clone().any(String::is_empty) {
        batches = BTreeMap::from([(0, Vec::new())]);
    }
    for batch in batches.values() {
        if program.run_changed(number, batch)? != Ran::Passed {
            return Ok(true);
        }
    }
    Ok(false)
}

/// How many were caught, by folder, and every change that was not.
fn summary(changes: &[Mutation], fates: &[Fate]) -> String {
    let folder = |change: &Mutation| change.file.split('/').nth(2).unwrap_or_default().to_owned();
    let mut of_folder: BTreeMap<String, (u32, u32)> = BTreeMap::new();
    for (change, fate) in changes.iter().zip(fates) {
        if *fate != Fate::DoesNotCompile {
            let (caught, all) = of_folder.entry(folder(change)).or_default();
            *caught += u32::from(*fate == Fate::Caught);
            *all += 1;
        }
    }
    let mut lines = Vec::new();
    for (change, fate) in changes.iter().zip(fates) {
        match fate {
            Fate::Missed => lines.push(format!("missed       {change}")),
            Fate::NotReached => lines.push(format!("not reached  {change}")),
            Fate::Caught | Fate::DoesNotCompile => {}
        }
    }
    for (folder, (caught, all)) in &of_folder {
        lines.push(format!("{folder}: {caught} of {all} caught"));
    }
    let (caught, all) = of_folder
        .values()
        .fold((0, 0), |sum, of| (sum.0 + of.0, sum.1 + of.1));
    let share = 100.0 * f64::from(caught) / f64::from(all.max(1));
    let uncompiled = fates.iter().filter(|fate| **fate == Fate::DoesNotCompile);
    lines.push(format!(
        "{caught} of {all} caught ({share:.1} %); {} more do not compile\n",
        uncompiled.count()
    ));
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mutants::site::changes_in;

    #[test]
    fn the_summary_counts_what_compiles_and_names_what_was_missed() {
        let text = "fn f() -> bool { a % b }";
        let changes = changes_in("src/model/silver/f.rs", text).unwrap();
        assert_eq!(
            summary(
                &changes,
                &[Fate::Caught, Fate::Missed, Fate::DoesNotCompile]
            ),
            "missed       src/model/silver/f.rs:1 in f: it returns `false`\n\
             silver: 1 of 2 caught\n\
             1 of 2 caught (50.0 %); 1 more do not compile\n"
        );
    }
}
