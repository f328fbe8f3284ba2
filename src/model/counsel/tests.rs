//! A person's own figures never switch a rule of safety off, over all worked examples.

use std::collections::BTreeMap;

use super::solved::Solved;
use crate::ledger::{FigureId, Ledger, SafeRange, read_during, safe_range};
use crate::record::{Case, Draft, Override};
use crate::terms::Treatment;
use crate::treatment::{Outcome, check};

/// Points of the sample: the rules read few draws.
const LOG2_POINTS: u32 = 6;

const EXAMPLES: [(&str, &str); 15] = [
    (
        "broken_lacquer_pot",
        include_str!("../../../tests/cases/broken_lacquer_pot.json"),
    ),
    (
        "cake_basket",
        include_str!("../../../tests/cases/cake_basket.json"),
    ),
    (
        "copper_reproduction_tureen",
        include_str!("../../../tests/cases/copper_reproduction_tureen.json"),
    ),
    (
        "daily_teapot",
        include_str!("../../../tests/cases/daily_teapot.json"),
    ),
    (
        "dented_tray",
        include_str!("../../../tests/cases/dented_tray.json"),
    ),
    (
        "hallmarked_candlesticks",
        include_str!("../../../tests/cases/hallmarked_candlesticks.json"),
    ),
    (
        "leaking_teapot",
        include_str!("../../../tests/cases/leaking_teapot.json"),
    ),
    (
        "loose_candlestick",
        include_str!("../../../tests/cases/loose_candlestick.json"),
    ),
    (
        "pair_of_candlesticks",
        include_str!("../../../tests/cases/pair_of_candlesticks.json"),
    ),
    (
        "replated_coffee_pot",
        include_str!("../../../tests/cases/replated_coffee_pot.json"),
    ),
    (
        "rusted_snuffers_tray",
        include_str!("../../../tests/cases/rusted_snuffers_tray.json"),
    ),
    (
        "six_faults_teapot",
        include_str!("../../../tests/cases/six_faults_teapot.json"),
    ),
    (
        "teapot_without_knob",
        include_str!("../../../tests/cases/teapot_without_knob.json"),
    ),
    (
        "untinned_sauceboat",
        include_str!("../../../tests/cases/untinned_sauceboat.json"),
    ),
    (
        "worn_tray",
        include_str!("../../../tests/cases/worn_tray.json"),
    ),
];

/// The worked examples, and two pieces on which the rules of heat and of food speak.
fn cases() -> Vec<(&'static str, Case)> {
    let mut texts = EXAMPLES
        .map(|(name, text)| (name, text.to_owned()))
        .to_vec();
    for (name, body) in [
        (
            "a spout six millimetres from a joint",
            r#","piece":{"form":"teapot","rare":true},"findings":[{"id":"C01","answer":"seen"}],"parts":[{"part":"spout","joint":"leaking","joint_distance_mm":6},{"part":"body","bleed":"some"},{"part":"border","fill":"lead"},{"part":"handle","fill":"sealed","hollow":"yes"}],"aim":{"goal":"keep_use","food":true}"#,
        ),
        (
            "a spout thirty millimetres from a joint",
            r#","piece":{"form":"teapot"},"findings":[{"id":"C01","answer":"seen"}],"parts":[{"part":"spout","joint":"leaking","joint_distance_mm":30},{"part":"body","bleed":"slight"}],"aim":{"goal":"keep_use","food":true}"#,
        ),
        ("nothing known", ""),
    ] {
        let text = format!(r#"{{"format":"leavewell-case","version":1{body}}}"#);
        texts.push((name, text));
    }
    texts
        .into_iter()
        .map(|(name, text)| (name, Draft::parse(&text).unwrap().read().0))
        .collect()
}

/// The gravest outcome of each rule on each treatment, and whether each trigger for display only applies.
type Spoken = BTreeMap<(&'static str, String), Option<Outcome>>;

fn spoken(case: &Case) -> Spoken {
    let solved = Solved::of(case, LOG2_POINTS);
    let s = solved.situation();
    let mut all = Spoken::new();
    for t in Treatment::ALL {
        for v in check(t, &s) {
            let of = all
                .entry((t.id(), v.ground.text().to_owned()))
                .or_insert(None);
            *of = (*of).max(Some(v.outcome));
        }
    }
    for (number, _) in s.triggers() {
        all.insert(("display", number.to_string()), None);
    }
    all
}

/// The values at the ends of what a figure accepts.
fn extremes(id: FigureId, range: SafeRange) -> [f64; 2] {
    let shipped = Ledger::standard().figure(id);
    let most = if shipped.unit == "share" {
        1.0
    } else {
        f64::MAX
    };
    let least = if shipped.low < 0.0 { f64::MIN } else { 0.0 };
    [range.least.unwrap_or(least), range.most.unwrap_or(most)]
}

#[test]
fn no_accepted_own_figure_loosens_a_rule() {
    let mut loosened = Vec::new();
    for (name, case) in cases() {
        let (before, read) = read_during(|| spoken(&case));
        for id in read.into_iter().filter_map(FigureId::parse) {
            let Some(range) = safe_range(id) else {
                continue;
            };
            for value in extremes(id, range) {
                assert!(
                    Ledger::standard()
                        .clone()
                        .override_with(id.text(), value, "")
                        .is_ok()
                );
                let mut own = case.clone();
                own.overrides = vec![Override {
                    figure: id.text().to_owned(),
                    value,
                    reason: String::new(),
                }];
                let after = spoken(&own);
                for (rule, outcome) in &before {
                    if after.get(rule).is_none_or(|now| now < outcome) {
                        loosened.push(format!(
                            "{name}: {id} = {value} makes {rule:?} {:?} instead of {outcome:?}",
                            after.get(rule)
                        ));
                    }
                }
            }
        }
    }
    assert!(loosened.is_empty(), "{}", loosened.join("\n"));
}
