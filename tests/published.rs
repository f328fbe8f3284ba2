//! Checks of the formulas and figures against sources outside the code: published tables, closed forms, an
//! independent library, or numbers computed by hand from the figures of the ledger. Each check names its
//! source.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use leavewell_model::maths::probit;
use leavewell_model::silver::{Layer, held};

#[path = "published/bench.rs"]
mod bench;
#[path = "published/condition.rs"]
mod condition;
#[path = "published/decision.rs"]
mod decision;
#[path = "published/decision_laws.rs"]
mod decision_laws;
#[path = "published/decision_trees.rs"]
mod decision_trees;
#[path = "published/decision_values.rs"]
mod decision_values;
#[path = "published/decision_worth.rs"]
mod decision_worth;
#[path = "published/food.rs"]
mod food;
#[path = "published/heat.rs"]
mod heat;
#[path = "published/identity.rs"]
mod identity;
#[path = "published/learn.rs"]
mod learn;
#[path = "published/maths.rs"]
mod maths;
#[path = "published/measure.rs"]
mod measure;
#[path = "published/plating.rs"]
mod plating;
#[path = "published/sales.rs"]
mod sales;
#[path = "published/silver.rs"]
mod silver;
#[path = "published/stock.rs"]
mod stock;
#[path = "published/value.rs"]
mod value;
#[path = "published/worked_money.rs"]
mod worked_money;

/// Fails unless `got` lies within `tolerance` of `want`.
#[track_caller]
fn near(got: f64, want: f64, tolerance: f64) {
    assert!(
        (got - want).abs() <= tolerance,
        "{got} is not {want} within {tolerance}"
    );
}

/// Fails unless `got` lies within the share `tolerance` of `want`.
#[track_caller]
fn near_share(got: f64, want: f64, tolerance: f64) {
    near(got, want, tolerance * want.abs());
}

/// A number with `places` decimals is accurate to half a unit in the last of them.
#[track_caller]
fn printed(got: f64, want: f64, places: i32) {
    let half = 0.5 / (0..places).fold(1.0, |unit, _| unit * 10.0);
    near(got, want, half * (1.0 + 1e-9));
}

/// The layer with the bare share `f`, made from the quantile of `f` as the model makes it.
fn layer_with_bleed(t0_um: f64, k: f64, floor: f64, f: f64) -> Layer {
    Layer::from_quantile(t0_um, k, floor, probit(held(f)))
}
