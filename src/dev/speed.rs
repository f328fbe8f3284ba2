//! How long an answer takes: the model's benchmarks, then one case natively here and in Chromium on
//! the site in `dist`. It prints figures and judges none, for machines differ; compare within one run.

use std::fs;
use std::time::Instant;

use leavewell_model::Draft;
use leavewell_model::counsel::weigh_at_once;

use crate::browser;
use crate::paths;
use crate::program::{cargo, run};
use crate::trouble::{Fallible, Trouble};

/// Times a case is weighed, each time with another answer to a look.
const TIMES: usize = 40;
/// The case weighed, here as in the browser.
const CASE: &str = "tests/cases/daily_teapot.json";

/// Prints the percentiles.
pub(crate) fn speed() -> Fallible<()> {
    let file = paths::root().join(CASE);
    let text = fs::read_to_string(&file).map_err(|error| {
        Trouble::new(
            format!("{} cannot be read: {error}", file.display()),
            "restore the file from the repository.",
        )
    })?;
    // The model's own benchmarks first, so that one command tells all, in one run.
    run(cargo().args(["bench", "--quiet", "--package", "leavewell-model"]))?;
    let native = weighed_natively(&text);
    println!("natively, the model built as for its tests: {native:.1} ms in the middle of {TIMES}");
    browser::script(
        "speed.mjs",
        &[("CASE", text), ("NATIVE_MS", native.to_string())],
    )
}

/// The middle time of weighing after one look more or less, in milliseconds.
fn weighed_natively(text: &str) -> f64 {
    let mut draft = Draft::parse(text).unwrap_or_default();
    let mut times: Vec<f64> = (0..TIMES)
        .map(|i| {
            let finding = ["S01", "S02", "M02", "C02", "S05"][i % 5];
            let answer = ["seen", "absent", "unsure"][(i % 5 + i / 5) % 3];
            draft.set_answer(finding, answer, "");
            let text = draft.to_json();
            let start = Instant::now();
            let (case, problems) = Draft::parse(&text).unwrap_or_default().read();
            let report = weigh_at_once(&case, problems);
            let took = start.elapsed().as_secs_f64() * 1_000.0;
            // So that no compiler leaves the work out.
            std::hint::black_box(report);
            took
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[TIMES / 2]
}
