//! `speed`: measures how long an answer takes, natively and in Chromium on the site in `dist`.
//!
//! It prints times and sets no limits, because machines differ. Compare figures within one run only.

use leavewell_model::ledger::FindingId;
use std::fs;
use std::time::Instant;

use leavewell_model::Draft;
use leavewell_model::counsel::weigh_at_once;

use crate::browser;
use crate::paths;
use crate::program::{cargo, run};
use crate::trouble::{Fallible, Trouble};

/// How many times the case is weighed, each time with a different answer to a finding.
const TIMES: usize = 40;
/// The case weighed, both natively and in the browser.
const CASE: &str = "tests/cases/daily_teapot.json";

/// Runs the model's benchmarks, then prints the median time natively and the times in Chromium.
pub(crate) fn speed() -> Fallible<()> {
    let file = paths::root().join(CASE);
    let text = fs::read_to_string(&file).map_err(|error| {
        Trouble::new(
            format!("{} cannot be read: {error}", file.display()),
            "restore the file from the repository.",
        )
    })?;
    // The model's benchmarks come first, so that one run gives every figure.
    run(cargo().args(["bench", "--quiet", "--package", "leavewell-model"]))?;
    let native = weighed_natively(&text);
    println!(
        "natively, with the model built as for its tests: median {native:.1} ms of {TIMES} runs"
    );
    browser::script(
        "speed.mjs",
        &[("CASE", text), ("NATIVE_MS", native.to_string())],
    )
}

/// The median time to weigh the case after one answer changes, in milliseconds.
fn weighed_natively(text: &str) -> f64 {
    let mut draft = Draft::parse(text).unwrap_or_default();
    let mut times: Vec<f64> = (0..TIMES)
        .map(|i| {
            let finding = [
                FindingId::S01,
                FindingId::S02,
                FindingId::M02,
                FindingId::C02,
                FindingId::S05,
            ][i % 5];
            let answer = ["seen", "absent", "unsure"][(i % 5 + i / 5) % 3];
            draft.set_answer(finding, answer, "");
            let text = draft.to_json();
            let start = Instant::now();
            let (case, problems) = Draft::parse(&text).unwrap_or_default().read();
            let report = weigh_at_once(&case, problems);
            let took = start.elapsed().as_secs_f64() * 1_000.0;
            // Keeps the optimiser from removing the work.
            std::hint::black_box(report);
            took
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[TIMES / 2]
}
