//! Learning from closed pieces: what it may move and what it never does.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use std::fs;

use leavewell_model::counsel::{weigh, weigh_at_once};
use leavewell_model::ledger::{FigureId, Ledger};
use leavewell_model::record::{Case, Draft, TaughtFigure, TaughtFigures, is_teachable, ledger_of};
use leavewell_model::report::Report;

/// The worked examples, each with its name.
fn examples() -> Vec<(String, Case)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases");
    let mut found: Vec<(String, Case)> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| {
            let path = entry.unwrap().path();
            let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
            let text = fs::read_to_string(&path).unwrap();
            (name, Draft::parse(&text).unwrap().read().0)
        })
        .collect();
    found.sort_by(|a, b| a.0.cmp(&b.0));
    assert!(found.len() > 10);
    found
}

/// A layer in which every figure that may be taught is made of its shipped range.
fn layer(of: impl Fn([f64; 3]) -> [f64; 3]) -> TaughtFigures {
    let ledger = Ledger::standard();
    let figures = FigureId::all().filter(|id| is_teachable(*id)).map(|id| {
        let shipped = ledger.figure(id);
        let [low, value, high] = of([shipped.low, shipped.value, shipped.high]);
        TaughtFigure {
            figure: id,
            low,
            value,
            high,
        }
    });
    TaughtFigures::new(figures.collect(), 40)
}

fn json(report: &Report) -> String {
    serde_json::to_string(report).unwrap()
}

#[test]
fn with_nothing_taught_every_answer_is_byte_for_byte_what_it_was() {
    let as_shipped = layer(|range| range);
    assert!(!as_shipped.is_empty());
    for (name, case) in examples() {
        assert!(case.taught.is_empty(), "no file holds what was taught");
        let before = json(&weigh(&case, Vec::new()));
        for taught in [TaughtFigures::new(Vec::new(), 40), as_shipped.clone()] {
            let with = Case {
                taught,
                ..case.clone()
            };
            assert!(json(&weigh(&with, Vec::new())) == before, "{name}");
        }
        let figures = ledger_of(&case);
        let own = !case.overrides.is_empty() || !case.market.terms.is_empty();
        assert_eq!(
            matches!(figures, std::borrow::Cow::Owned(_)),
            own,
            "{name}: the shipped figures are not copied for nothing"
        );
    }
}

/// Ids and outcomes of every verdict on every treatment, and what it takes to lift them.
fn verdicts(report: &Report) -> Vec<String> {
    let mut all = Vec::new();
    for option in &report.options {
        for verdict in &option.verdicts {
            let id = [
                option.treatment.get(),
                verdict.guard.get(),
                verdict.outcome.get(),
            ];
            all.push(id.join(" "));
        }
    }
    all
}

#[test]
fn nothing_taught_moves_a_verdict_a_hazard_or_what_a_piece_is() {
    let layers = [
        layer(|[low, _, _]| [low * 0.2, low * 0.2, low * 0.2]),
        layer(|[_, _, high]| [high * 5.0, high * 5.0, high * 5.0]),
    ];
    let mut moved = 0;
    for (name, case) in examples() {
        let before = weigh_at_once(&case, Vec::new());
        for taught in &layers {
            let with = Case {
                taught: taught.clone(),
                ..case.clone()
            };
            let after = weigh_at_once(&with, Vec::new());
            assert_eq!(verdicts(&after), verdicts(&before), "{name}");
            assert_eq!(after.identity.kinds, before.identity.kinds, "{name}");
            assert_eq!(after.silver, before.silver, "{name}");
            assert_eq!(after.display_only, before.display_only, "{name}");
            let texts = |report: &Report| -> Vec<String> {
                report.cautions.iter().map(|c| c.id.to_owned()).collect()
            };
            assert_eq!(texts(&after), texts(&before), "{name}");
            moved += usize::from(after.value != before.value);
        }
    }
    assert!(
        moved > 20,
        "the layers are heard where they may be: {moved}"
    );
}

#[test]
fn a_persons_own_figure_stands_above_what_was_taught() {
    let (_, mut case) = examples().into_iter().next().unwrap();
    case.taught = layer(|[low, value, high]| [low, value.midpoint(high), high]);
    case.overrides = vec![leavewell_model::record::Override {
        figure: "cost.T14a".to_owned(),
        value: 77.0,
        reason: "the bill".to_owned(),
    }];
    let ledger = ledger_of(&case);
    let cost = ledger.figure(FigureId::COST_T14A);
    assert_eq!([cost.low, cost.value, cost.high], [77.0; 3]);
    let taught = ledger.figure(FigureId::COST_T09);
    assert!(taught.value > Ledger::standard().value(FigureId::COST_T09));
    assert!(taught.low < taught.high && taught.own_reason.is_none());
}
