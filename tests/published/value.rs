//! Fees, condition, and what a treatment gains.
//!
//! Multipliers are judgement and come from the ledger. Prices and costs are CONSTRUCTED: invented for these checks
//! and no evidence about silver. The expected results were worked out apart from the program. A dealer's margin and the price from sales (examples 7 and 8) are in `sales.rs`.

use leavewell_model::ledger::Ledger;
use leavewell_model::value::{BUYERS, Class, ConditionTable, Fees};

use crate::{near, printed};

/// Indices of the buyers in [`BUYERS`].
const COLLECTOR: usize = 0;
const DECORATOR: usize = 1;
const USER: usize = 2;

fn figure(id: &str) -> f64 {
    Ledger::standard().find(id).unwrap().value
}

fn table(class: Class) -> ConditionTable {
    ConditionTable::of(class, Ledger::standard())
}

/// The table of a class with one buyer only, by the person's own figures for the mix.
fn table_for(class: Class, buyer: usize) -> ConditionTable {
    let mut ledger = Ledger::standard().clone();
    for (i, name) in BUYERS.iter().enumerate() {
        let share = f64::from(u8::from(i == buyer));
        let id = format!("value.mix.{}.{name}", class.tables().code());
        ledger.override_with(&id, share, "one buyer").unwrap();
    }
    ConditionTable::of(class, &ledger)
}

/// Common terms of a UK auction: 15 % with a minimum of 20, VAT, lot fee, insurance, all sold.
pub(crate) fn fees() -> Fees {
    Fees {
        commission: figure("fee.commission"),
        above: figure("fee.above"),
        commission_above: figure("fee.commission_above"),
        minimum: figure("fee.minimum"),
        vat: figure("fee.vat"),
        lot: figure("fee.lot"),
        insurance: figure("fee.insurance"),
        transport: figure("fee.transport"),
        sold: 1.0,
        reoffer: figure("fee.reoffer"),
        unsold: figure("fee.unsold"),
    }
}

/// Mean effect of what can go wrong: with probability p only the share `kept` of the value remains.
fn mean_effect(treatment: &str, group: &str) -> f64 {
    let p = figure(&format!("hazard.{treatment}.{group}.p"));
    let kept = figure(&format!("hazard.{treatment}.{group}.kept"));
    1.0 - p + p * kept
}

/// Share of the hammer price that a seller keeps above the minimum commission: 1 - c (1 + v) - i, with the
/// commission of 15 %, tax of 20 % and insurance of 1 % of the examples.
const NET_SHARE: f64 = 0.81;

/// Multiplier once fully replated, mishaps included.
fn replated(class: Class, group: &str) -> f64 {
    table(class).replated(0.0) * figure("value.detail_after_replate") * mean_effect("T14a", group)
}

/// The undamaged value above which a treatment pays: its cost over the net share of
/// what it adds; never when it lowers value.
fn break_even_value(cost: f64, after: f64, before: f64) -> Option<f64> {
    (after > before).then(|| cost / (NET_SHARE * (after - before)))
}

#[track_caller]
fn check_net(undamaged: f64, multiplier: f64, cost: f64, want: f64) {
    near(fees().net(undamaged * multiplier) - cost, want, 0.01);
}

/// A UK auction guide's own examples, and the same arithmetic with a minimum and with bands.
#[test]
fn fees_of_an_auction() {
    let plain = Fees {
        minimum: 0.0,
        lot: 0.0,
        insurance: 0.0,
        ..fees()
    };
    near(plain.net(1000.0), 820.0, 0.005);
    near(
        Fees {
            minimum: 20.0,
            ..plain
        }
        .net(50.0),
        26.0,
        0.005,
    );
    // Above the minimum, each further unit of price brings the net share.
    near(
        (fees().net(401.0) - fees().net(301.0)) / 100.0,
        NET_SHARE,
        1e-12,
    );
    // One re-offer at three quarters, one lot in five unsold at first.
    let resold = Fees {
        sold: 0.8,
        ..fees()
    };
    let (first, second) = (fees().net(262.17), fees().net(0.75 * 262.17));
    near(first, 202.76, 0.01);
    near(second, 149.67, 0.01);
    near(resold.expected(262.17), 190.22, 0.01);
}

#[test]
fn mean_effect_of_what_can_go_wrong() {
    near(mean_effect("T03", "A"), 0.997, 1e-12);
    near(mean_effect("T14a", "A"), 0.988, 1e-12);
    near(mean_effect("T09", "C3"), 0.86, 1e-12);
    near(mean_effect("T10a", "C3"), 0.775, 1e-12);
}

/// Example 1: a pair of candlesticks, ordinary fused plate, a little copper, heavy tarnish.
#[test]
fn a_paid_clean_of_tarnished_candlesticks() {
    let wear = table(Class::A2).wear(0.01, 0.0);
    near(wear, 0.948, 5e-7);
    let before = wear * figure("value.factor.tarnish_heavy.A");
    let after = wear * mean_effect("T03", "A");
    near(before, 0.872_160, 5e-7);
    near(after, 0.945_156, 5e-7);
    check_net(400.0, before, 0.0, 272.98);
    check_net(400.0, after, 40.0, 256.63);
    let most_to_pay = fees().net(400.0 * after) - fees().net(400.0 * before);
    near(most_to_pay, 23.65, 0.01);
}

/// Example 2: a worn fused tray and a quote for replating it.
#[test]
fn replating_a_worn_tray() {
    let a2 = table(Class::A2);
    let (before, after) = (a2.wear(0.18, 0.0), replated(Class::A2, "A"));
    near(before, 0.450, 5e-7);
    near(a2.replated(0.0), 0.670, 5e-7);
    near(after, 0.628_862, 5e-7);
    check_net(600.0, before, 0.0, 209.10);
    check_net(600.0, after, 500.0, -203.97);
    near(
        break_even_value(500.0, after, before).unwrap(),
        3451.17,
        0.01,
    );
    let each = |buyer: usize| {
        let own = table_for(Class::A2, buyer);
        let then =
            own.replated(0.0) * figure("value.detail_after_replate") * mean_effect("T14a", "A");
        (own.wear(0.18, 0.0), then)
    };
    for (buyer, leave, plate, ratio, pays_above) in [
        (COLLECTOR, 209.10, -327.14, 0.83, None),
        (DECORATOR, 233.40, -144.67, 1.50, Some(2460.47)),
        (USER, 160.50, -76.25, 2.55, Some(1139.59)),
    ] {
        let (now, then) = each(buyer);
        check_net(600.0, now, 0.0, leave);
        check_net(600.0, then, 500.0, plate);
        printed(then / now, ratio, 2);
        match (break_even_value(500.0, then, now), pays_above) {
            (Some(got), Some(want)) => near(got, want, 0.01),
            (got, want) => assert_eq!(got, want, "{}", BUYERS[buyer]),
        }
    }
}

/// Example 3: an early coffee pot.
#[test]
fn an_early_coffee_pot() {
    let before = table(Class::A1).wear(0.05, 0.0);
    near(before, 0.735, 5e-7);
    check_net(3000.0, before, 0.0, 1776.45);
    check_net(3000.0, before * mean_effect("T03", "A"), 60.0, 1711.09);
    near(table(Class::A1).replated(0.0), 0.430, 5e-7);
    near(replated(Class::A1, "A"), 0.403_598, 5e-7);
    check_net(3000.0, replated(Class::A1, "A"), 260.0, 711.14);
}

/// Example 4: an electroplated teapot too cheap to consign.
#[test]
fn a_cheap_teapot_and_the_minimum_commission() {
    let before = table(Class::C2).wear(0.18, 0.0);
    near(before, 0.351, 5e-7);
    near(replated(Class::C2, "C2"), 0.933_907, 5e-7);
    check_net(60.0, before, 0.0, -12.75);
    check_net(60.0, replated(Class::C2, "C2"), 150.0, -128.13);
}

/// Example 5: a documented coffee pot with an old lead repair.
#[test]
fn taking_an_old_lead_repair_out() {
    let dents = figure("value.factor.dents_minor.C1");
    let before = figure("value.factor.solder_repair.C1") * dents;
    let after = figure("value.after_repair") * dents * mean_effect("T10a", "C1");
    near(before, 0.7125, 5e-7);
    near(after, 0.853_024, 5e-7);
    check_net(500.0, before, 0.0, 278.96);
    check_net(500.0, after, 140.0, 195.87);
    near(NET_SHARE * 500.0 * (after - before), 56.91, 0.01);
    near(
        break_even_value(140.0, after, before).unwrap(),
        1229.96,
        0.01,
    );
}

/// Example 6: a leaking pot of Britannia metal.
#[test]
fn mending_a_leak_in_britannia_metal() {
    let wear = table(Class::C3).wear(0.01, 0.0);
    let before = wear * figure("value.factor.leak.C2");
    let after = wear * figure("value.after_repair") * mean_effect("T09", "C3");
    near(before, 0.595, 5e-7);
    near(after, 0.672_520, 5e-7);
    check_net(80.0, before, 0.0, 13.52);
    check_net(80.0, after, 70.0, -50.34);
}

/// One row of the matrix: wear at the anchors; replated; replated relative to as it is at each anchor; then cleaning
/// heavy tarnish, mending a leak and removing an old lead repair, each relative to as it is.
struct MatrixRow {
    class: Class,
    hazard: &'static str,
    wear: [f64; 4],
    replated: f64,
    replate: [f64; 4],
    clean: f64,
    mend: f64,
    remove: f64,
}

/// Class by wear by treatment, with middle figures and usual buyers, mishaps included. Worked out apart from the
/// program from the figures of the ledger: an old lead repair leaves .70 of the value of ordinary
/// electroplate and .75 of the others.
#[test]
fn the_matrix_of_classes() {
    let row = |class, hazard, wear, replated, replate, [clean, mend, remove]: [f64; 3]| MatrixRow {
        class,
        hazard,
        wear,
        replated,
        replate,
        clean,
        mend,
        remove,
    };
    let rows = [
        row(
            Class::A1,
            "A",
            [0.959, 0.735, 0.450, 0.244],
            0.430,
            [0.42, 0.55, 0.90, 1.65],
            [1.084, 1.272, 1.197],
        ),
        row(
            Class::A2,
            "A",
            [0.948, 0.720, 0.450, 0.268],
            0.670,
            [0.66, 0.87, 1.40, 2.35],
            [1.084, 1.272, 1.197],
        ),
        row(
            Class::B,
            "B",
            [0.957, 0.735, 0.455, 0.257],
            0.575,
            [0.54, 0.71, 1.14, 2.02],
            [1.071, 1.216, 1.135],
        ),
        row(
            Class::C1,
            "C1",
            [0.912, 0.660, 0.418, 0.248],
            0.868,
            [0.90, 1.24, 1.95, 3.30],
            [1.085, 1.298, 1.197],
        ),
        row(
            Class::C2,
            "C2",
            [0.850, 0.575, 0.351, 0.199],
            0.995,
            [1.10, 1.62, 2.66, 4.69],
            [1.085, 1.298, 1.283],
        ),
        row(
            Class::C3,
            "C3",
            [0.850, 0.578, 0.354, 0.201],
            0.995,
            [1.07, 1.57, 2.56, 4.51],
            [1.082, 1.130, 1.019],
        ),
        row(
            Class::C4,
            "C4",
            [0.850, 0.583, 0.360, 0.205],
            0.995,
            [1.10, 1.61, 2.60, 4.57],
            [1.085, 1.301, 1.288],
        ),
    ];
    for r in rows {
        let t = table(r.class);
        let group = r.class.group();
        near(t.wear(0.0, 0.0), 1.0, 1e-12);
        printed(t.replated(0.0), r.replated, 3);
        for (i, f) in [0.01, 0.05, 0.18, 0.45].into_iter().enumerate() {
            printed(t.wear(f, 0.0), r.wear[i], 3);
            printed(
                replated(r.class, r.hazard) / t.wear(f, 0.0),
                r.replate[i],
                2,
            );
        }
        let heavy = figure(&format!("value.factor.tarnish_heavy.{group}"));
        let leak = figure(&format!("value.factor.leak.{group}"));
        let mended = figure("value.after_repair");
        printed(mean_effect("T03", r.hazard) / heavy, r.clean, 3);
        printed(mended / leak * mean_effect("T09", r.hazard), r.mend, 3);
        let lead = figure(&format!("value.factor.solder_repair.{group}"));
        printed(mended / lead * mean_effect("T10a", r.hazard), r.remove, 3);
        near(t.mix().iter().sum(), 1.0, 1e-12);
    }
}

/// Between the anchors the logarithm is linear; beyond the last it is constant (judgement).
#[test]
fn wear_is_interpolated_between_its_anchors() {
    for buyer in [COLLECTOR, DECORATOR, USER] {
        let t = table_for(Class::A2, buyer);
        let at = |f| t.wear(f, 0.0);
        // The geometric mean half-way between two anchors.
        for (low, high) in [(0.0, 0.01), (0.01, 0.05), (0.05, 0.18), (0.18, 0.45)] {
            let half = (at(low) * at(high)).sqrt();
            near(at(f64::midpoint(low, high)), half, 1e-12);
        }
        near(at(0.9), at(0.45), 1e-12);
    }
}
