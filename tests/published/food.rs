//! Food and drink: release limits, and what a cup at the old criterion holds.

use leavewell_model::ledger::FigureId;
use leavewell_model::ledger::{Ledger, Tag};

use crate::near;

/// Transcription: the ledger holds what summaries of the EDQM technical guide on metals and alloys, 2nd ed., 2024,
/// print (lead as in the 1st ed., thallium from a certification body's summary). The guide itself was not
/// seen, so this guards against a slip of the data and confirms no limit.
#[test]
fn release_limits_are_those_of_the_summaries() {
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
        let figure = ledger.find(&format!("food.limit.{metal}")).unwrap();
        near(figure.value, limit, 1e-12);
        assert_ne!(figure.tag, Tag::Memory, "{metal}");
    }
    // Only recalled, so shown without a number.
    for metal in ["Cd", "As", "Hg"] {
        assert_eq!(
            ledger.find(&format!("food.limit.{metal}")).unwrap().tag,
            Tag::Memory
        );
    }
}

/// The old criterion (FDA, Compliance Policy Guide 545.500, Nov 2005, as quoted: 7 ug/mL for ware used by adults,
/// .5 for children's) against the interim reference levels of 8.8 and 2.2 ug a day. By hand, a cup of 250 mL at
/// 7 ug/mL holds 1750 ug, which is 199 days at 8.8; the European limit of .010 mg/kg leaves 2.5 ug in it,
/// still more than the 2.2 of a child's day.
#[test]
fn the_old_criterion_is_far_from_safe() {
    let ledger = Ledger::standard();
    let v = |id: &str| ledger.find(id).unwrap().value;
    let cup = v("food.cup") * v("food.legacy_adult");
    near(cup, 1750.0, 1e-9);
    near(cup / v("food.daily_adult"), 198.9, 0.1);
    near(v("food.cup") * v("food.legacy_child"), 125.0, 1e-9);
    let at_limit = v("food.cup") * v("food.limit.Pb");
    near(at_limit, 2.5, 1e-9);
    assert!(at_limit > v("food.daily_child"));
}

/// Transcription of Food Code 4-101.13, as printed in WAC 246-215-04110.
#[test]
fn shares_of_lead_in_pewter_and_solder_near_food() {
    near(
        Ledger::standard().value(FigureId::FOOD_CODE_PEWTER),
        0.05,
        1e-12,
    );
    near(
        Ledger::standard().value(FigureId::FOOD_CODE_SOLDER),
        0.2,
        1e-12,
    );
}
