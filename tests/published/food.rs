//! Food and drink: limits as published, and what a cup at the old criterion holds.

use leavewell_model::ledger::{Ledger, Tag};

use crate::near;

/// EDQM technical guide on metals and alloys, 2nd ed., 2024, supplementing CM/Res(2020)9, as
/// summarised; lead as in the 1st ed., thallium from a certification body's summary.
#[test]
fn release_limits() {
    let ledger = Ledger::standard();
    for (metal, limit) in [
        ("Ag", 0.08),
        ("Cu", 4.0),
        ("Ni", 0.14),
        ("Sn", 100.0),
        ("Zn", 5.0),
        ("Sb", 0.04),
        ("Fe", 40.0),
        ("Al", 5.0),
        ("Co", 0.02),
        ("Cr", 1.0),
        ("Mn", 0.55),
        ("Pb", 0.010),
        ("Tl", 0.001),
    ] {
        let figure = ledger.figure(&format!("food.limit.{metal}"));
        near(figure.value, limit, 1e-12);
        assert_ne!(figure.tag, Tag::Memory, "{metal}");
    }
    // Recalled, so shown without a number.
    for metal in ["Cd", "As", "Hg"] {
        assert_eq!(
            ledger.figure(&format!("food.limit.{metal}")).tag,
            Tag::Memory
        );
    }
}

/// FDA, Compliance Policy Guide 545.500 (Nov 2005), 7 ug/mL for adults' ware and .5 for children's;
/// interim reference levels 2.2 and 8.8 ug a day. A cup of 250 mL: 1750 ug, 199 days' worth, 700 times
/// the European limit; at that limit 2.5 ug, still over a child's day.
#[test]
fn the_old_criterion_is_far_from_safe() {
    let ledger = Ledger::standard();
    let v = |id: &str| ledger.value(id);
    near(v("food.legacy_adult"), 7.0, 1e-12);
    near(v("food.legacy_child"), 0.5, 1e-12);
    let cup = v("food.cup") * v("food.legacy_adult");
    near(cup, 1750.0, 1e-9);
    near(cup / v("food.daily_adult"), 198.9, 0.1);
    near(v("food.legacy_adult") / v("food.limit.Pb"), 700.0, 0.1);
    let at_limit = v("food.cup") * v("food.limit.Pb");
    near(at_limit, 2.5, 1e-9);
    assert!(at_limit > v("food.daily_child"));
}

/// Food Code 4-101.13 as WAC 246-215-04110.
#[test]
fn pewter_and_solder_near_food() {
    near(Ledger::standard().value("food.code_pewter"), 0.05, 1e-12);
    near(Ledger::standard().value("food.code_solder"), 0.2, 1e-12);
}
