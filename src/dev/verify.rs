//! `cargo verify`: runs every check, cheapest first, and stops at the first failure.

use std::process::ExitCode;
use std::time::Instant;

use crate::audit;
use crate::browser;
use crate::engines;
use crate::one_file;
use crate::pack;
use crate::paths;
use crate::program::{cargo, run};
use crate::site;
use crate::tools;
use crate::trouble::Fallible;

/// How much to check.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Extent {
    /// Everything.
    Whole,
    /// Everything that runs without a browser.
    Quick,
}

struct Check {
    name: &'static str,
    needs_browser: bool,
    /// Why the check cannot be made on this machine, if it cannot.
    obstacle: fn() -> Option<String>,
    run: fn() -> Fallible<()>,
}

const STEPS: [Check; 12] = [
    step("format", format),
    step("crates and licences", audit::audit),
    step("lints, native", lints_native),
    step("lints, wasm", lints_wasm),
    step("scripts", browser::check_scripts),
    step("documentation", documentation),
    step("tests", tests),
    step("site", site::build),
    step("sizes", sizes),
    step("one file", one_file::make),
    Check {
        needs_browser: true,
        ..step("browser", browser::test)
    },
    Check {
        needs_browser: true,
        obstacle: engines::obstacle,
        ..step("every engine", engines::test)
    },
];

const fn step(name: &'static str, run: fn() -> Fallible<()>) -> Check {
    Check {
        name,
        needs_browser: false,
        obstacle: || None,
        run,
    }
}

/// Runs the steps, prints the time each takes, and ends with a line of counts.
pub(crate) fn verify(extent: Extent) -> ExitCode {
    let steps: Vec<&Check> = STEPS
        .iter()
        .filter(|step| extent == Extent::Whole || !step.needs_browser)
        .collect();
    let mut passed = 0;
    let mut failed = 0;
    for (index, step) in steps.iter().enumerate() {
        println!("== {} of {}: {}", index + 1, steps.len(), step.name);
        if let Some(why) = (step.obstacle)() {
            println!("== {}: SKIPPED: {why}\n", step.name);
            continue;
        }
        let begun = Instant::now();
        let outcome = (step.run)();
        let seconds = begun.elapsed().as_secs_f64();
        match outcome {
            Ok(()) => {
                passed += 1;
                println!("== {}: passed in {seconds:.1} s\n", step.name);
            }
            Err(trouble) => {
                failed += 1;
                println!("== {}: FAILED after {seconds:.1} s\n{trouble}\n", step.name);
                break;
            }
        }
    }
    println!("{}", summary(passed, failed, STEPS.len() - passed - failed));
    if failed == 0 {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

fn summary(passed: usize, failed: usize, skipped: usize) -> String {
    let counted = format!("{passed} passed, {failed} failed");
    if skipped == 0 {
        counted
    } else {
        format!("{counted}, {skipped} skipped")
    }
}

fn format() -> Fallible<()> {
    tools::lint_components()?;
    run(cargo().args(["fmt", "--all", "--check"]))
        .map_err(|trouble| trouble.cured_by("run `cargo fmt --all`."))
}

fn lints_native() -> Fallible<()> {
    run(cargo()
        .args(["clippy", "--quiet", "--workspace", "--all-targets"])
        .args(["--", "-D", "warnings"]))
}

fn lints_wasm() -> Fallible<()> {
    tools::wasm_target()?;
    run(cargo()
        .args(["clippy", "--quiet", "--lib", "--bins"])
        .args([
            "--package",
            "leavewell",
            "--package",
            "leavewell-model",
            "--package",
            "leavewell-worker",
        ])
        .args(["--target", "wasm32-unknown-unknown"])
        .args(["--", "-D", "warnings"]))
}

fn documentation() -> Fallible<()> {
    run(cargo()
        .args(["doc", "--quiet", "--workspace", "--no-deps"])
        .env("RUSTDOCFLAGS", "-D warnings"))
}

fn tests() -> Fallible<()> {
    run(cargo().args(["test", "--quiet", "--workspace"]))
}

fn sizes() -> Fallible<()> {
    pack::pack(&paths::dist())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_summary_counts_every_step() {
        assert_eq!(summary(8, 0, 0), "8 passed, 0 failed");
        assert_eq!(summary(2, 1, 5), "2 passed, 1 failed, 5 skipped");
    }
}
