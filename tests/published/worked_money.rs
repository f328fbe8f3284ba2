//! The worked examples on money, run through the answer itself.
//!
//! Prices and costs are CONSTRUCTED: invented for these checks and no evidence about silver. The results were
//! computed independently. To make all draws equal, the user's own figures replace every figure of value,
//! fees and mishaps by its middle, leave one kind possible, let the piece have no part except its body, take
//! no silver off in a cleaning, and replace the chance of a mishap by its mean effect. Every draw then equals
//! the example, and the answer agrees to a hundredth.

use leavewell_model::ledger::Ledger;
use leavewell_model::weigh_json;
use serde_json::{Map, Value, json};

use crate::near;

/// A piece of one kind on which everything is known, with an undamaged value.
struct Known {
    kind: &'static str,
    piece: Value,
    body: Value,
    undamaged: f64,
    quotes: Value,
    /// Own figures in addition to those that make all draws equal.
    own: &'static [(&'static str, f64)],
}

fn own_figures(known: &Known) -> Value {
    let ledger = Ledger::standard();
    let mut own = Map::new();
    let mut put = |id: &str, value: f64| {
        own.insert(
            id.to_owned(),
            json!({"value": value, "reason": "held still"}),
        );
    };
    for figure in ledger.figures() {
        let middle = figure.value;
        match figure.id.split_once('.') {
            Some(("value" | "fee", _)) if figure.low < figure.high => put(figure.id, middle),
            Some(("hazard", row)) => {
                // A mishap always happens, and then the mean effect is kept: 1 - p + p kept.
                let of = |what: &str| {
                    let row = row.rsplit_once('.').map_or(row, |(row, _)| row);
                    ledger.find(&format!("hazard.{row}.{what}"))
                };
                match (of("p"), of("kept")) {
                    (Some(p), Some(_)) if p.id == figure.id => put(figure.id, 1.0),
                    (Some(p), Some(kept)) if kept.id == figure.id => {
                        put(figure.id, 1.0 - p.value + p.value * kept.value);
                    }
                    _ => put(figure.id, middle),
                }
            }
            Some(("identity", row)) => {
                if let Some(kind) = row.strip_prefix("prior.") {
                    put(figure.id, f64::from(u8::from(kind == known.kind)));
                }
            }
            Some(("silver", row)) if row.starts_with("loss.") => put(figure.id, 0.0),
            _ => {}
        }
    }
    put("value.sale_sd", 0.0);
    put("fee.commission", 0.15);
    put("fee.lot", 9.6);
    put("fee.sold", 1.0);
    // The examples include no cost for washing.
    put("cost.T02", 0.0);
    for (id, value) in known.own {
        put(id, *value);
    }
    Value::Object(own)
}

/// Money kept with these treatments; the draws must all agree.
#[track_caller]
fn check(known: &Known, kept: &[(&[&str], f64)]) {
    let value = known.undamaged;
    let case = json!({
        "format": "leavewell-case",
        "version": 1,
        "piece": known.piece,
        "parts": [known.body],
        "market": {"low": value, "likely": value, "high": value, "route": "auction"},
        "quotes": known.quotes,
        "aim": {"goal": "sell"},
        "overrides": own_figures(known),
    });
    let report: Value = serde_json::from_str(&weigh_json(&case.to_string())).unwrap();
    assert_eq!(report["problems"], json!([]), "{}", report["problems"]);
    for (steps, want) in kept {
        let courses = report["courses"].as_array().unwrap();
        let course = courses.iter().find(|c| c["steps"] == json!(steps));
        let net = &course.unwrap_or_else(|| {
            panic!(
                "no course {steps:?} in {:?}",
                courses
                    .iter()
                    .map(|c| c["steps"].to_string())
                    .collect::<Vec<_>>()
            )
        })["net"];
        for what in ["p10", "mean", "p90"] {
            near(net[what].as_f64().unwrap(), *want, 0.01);
        }
    }
}

fn body(bleed: f64, more: &Value) -> Value {
    let mut part = json!({
        "part": "body",
        "bleed": {"low": bleed, "likely": bleed, "high": bleed},
    });
    let (part_map, more) = (part.as_object_mut().unwrap(), more.as_object().unwrap());
    part_map.extend(more.clone());
    part
}

fn quote(treatment: &str, cost: f64) -> Value {
    json!([{"treatment": treatment, "low": cost, "likely": cost, "high": cost}])
}

/// Example 1: a pair of candlesticks of ordinary fused plate, a little copper, heavy tarnish. Undamaged
/// 400, of which .948 x .92 is left; a clean for 40 leaves .948 x .997.
#[test]
fn a_clean_of_tarnished_candlesticks_through_the_answer() {
    check(
        &Known {
            kind: "FPD",
            piece: json!({"form": "other"}),
            body: body(0.01, &json!({"tarnish": "black"})),
            undamaged: 400.0,
            quotes: quote("T03", 40.0),
            own: &[],
        },
        &[(&["T00"], 272.98), (&["T02", "T03"], 256.63)],
    );
}

/// Example 2: a worn tray of fused plate, undamaged 600, .45 left; replating for 500 leaves .628862.
#[test]
fn replating_a_worn_tray_through_the_answer() {
    check(
        &Known {
            kind: "FPD",
            piece: json!({"form": "other"}),
            body: body(0.18, &json!({})),
            undamaged: 600.0,
            quotes: quote("T14a", 500.0),
            own: &[],
        },
        &[(&["T00"], 209.10), (&["T14a"], -203.97)],
    );
}

/// Example 3: an early coffee pot, undamaged 3000, .735 left; replating for 260 leaves .403598.
#[test]
fn replating_an_early_coffee_pot_through_the_answer() {
    check(
        &Known {
            kind: "FPD",
            piece: json!({"form": "other", "rare": true}),
            body: body(0.05, &json!({})),
            undamaged: 3000.0,
            quotes: quote("T14a", 260.0),
            own: &[],
        },
        &[(&["T00"], 1776.45), (&["T14a"], 711.14)],
    );
}

/// Example 4: a teapot of electroplate on nickel silver too cheap to consign, undamaged 60, .351 left. The
/// minimum commission applies on both sides; replating for 150, after a test for lead that costs nothing,
/// leaves .933907.
#[test]
fn a_cheap_teapot_through_the_answer() {
    check(
        &Known {
            kind: "ENS",
            piece: json!({"form": "other"}),
            body: body(0.18, &json!({})),
            undamaged: 60.0,
            quotes: quote("T14a", 150.0),
            own: &[("cost.T17", 0.0)],
        },
        &[(&["T00"], -12.75), (&["T17", "T14a"], -128.13)],
    );
}

/// Example 5: a documented coffee pot with an old lead repair and small dents, undamaged 500, .7125 left; taking the
/// repair out for 140 leaves .853024.
#[test]
fn taking_a_lead_repair_out_through_the_answer() {
    check(
        &Known {
            kind: "ECU",
            piece: json!({"form": "other", "documented": true}),
            body: body(0.0, &json!({"joint": "grey_repair", "dents": "minor"})),
            undamaged: 500.0,
            quotes: quote("T10a", 140.0),
            own: &[],
        },
        &[(&["T00"], 278.96), (&["T10a"], 195.87)],
    );
}

/// Example 6: a leaking pot of Britannia metal, undamaged 80, .595 left; mending it for 70 leaves .67252.
#[test]
fn mending_a_leak_through_the_answer() {
    check(
        &Known {
            kind: "EBM",
            piece: json!({"form": "other"}),
            body: body(0.01, &json!({"joint": "leaking"})),
            undamaged: 80.0,
            quotes: quote("T09", 70.0),
            own: &[],
        },
        &[(&["T00"], 13.52), (&["T09"], -50.34)],
    );
}

/// Example 8: a worn and tarnished dish, undamaged 395.793. One lot in five is offered again at three quarters, with
/// a charge of 9.60 for the lot that did not sell; a clean for 40.
#[test]
fn a_lot_that_may_be_offered_again_through_the_answer() {
    check(
        &Known {
            kind: "FPD",
            piece: json!({"form": "other"}),
            body: body(0.05, &json!({"tarnish": "black"})),
            undamaged: 395.792_998,
            quotes: quote("T03", 40.0),
            own: &[("fee.sold", 0.8), ("fee.unsold", 0.0)],
        },
        &[(&["T00"], 190.22), (&["T02", "T03"], 167.11)],
    );
}
