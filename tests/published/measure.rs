//! Numeric readings: density, conductivity and X-ray fluorescence. Formulas are checked against handbooks and
//! a reference library; the effect of a reading on the answer, against the ladder that limits it.

use leavewell_model::Draft;
use leavewell_model::bench::{layered_density, skin_share};
use leavewell_model::counsel::weigh_at_once;
use leavewell_model::identity::{Evidence, Posterior, information_gain, interval_with, readings};
use leavewell_model::ledger::Ledger;
use leavewell_model::ledger::{EvidenceId, ReadingOf};
use leavewell_model::ledger::{FigureId, FindingId};
use leavewell_model::record::{Case, Problem};
use leavewell_model::record::{Weighing, water_density};
use leavewell_model::report::IdentityReport;
use leavewell_model::terms::{Family, Kind, Letter};

use crate::{near, near_share, printed};

/// Density of water at one atmosphere, g/cm3, by the equation of state IAPWS-95 (Wagner & Pruss 2002, J. Phys.
/// Chem. Ref. Data 31:387), evaluated with the Python library `iapws`. The model uses another formula.
#[test]
fn density_of_water_by_temperature() {
    for (celsius, density) in [
        (4.0, 0.999_974_9),
        (10.0, 0.999_702_5),
        (15.0, 0.999_102_6),
        (20.0, 0.998_207_2),
        (25.0, 0.997_047_6),
        (30.0, 0.995_649_5),
        (40.0, 0.992_216_4),
    ] {
        near(water_density(celsius), density, 2e-6);
    }
    // Outside 0 to 40 C the value at the nearer end applies.
    near(water_density(-5.0), water_density(0.0), 1e-15);
    near(water_density(90.0), water_density(40.0), 1e-15);
}

/// Archimedes' principle, computed by hand: 300.0 g in air and 266.7 g in water of 20 C differ by 33.3 g, so
/// the density is 0.998207 x 300.0 / 33.3 = 8.9929 g/cm3.
#[test]
fn a_weighing_matches_hand_calculation() {
    let mut w = Weighing {
        in_air_g: 300.0,
        in_water_g: 266.7,
        water_c: 20.0,
        readable_g: 0.1,
        unnoticed_cm3: 0.0,
    };
    printed(w.density().unwrap(), 8.9929, 4);
    // An error of .1 g in the weight in water changes the density by .998207 x 300 / 33.3^2 / 10 = .0270, in
    // the weight in air by .998207 x 266.7 / 33.3^2 / 10 = .0240; together .0361.
    printed(w.spread().unwrap(), 0.0361, 4);
    // .1 cm3 of trapped air in 33.36 cm3 changes it by 8.9929 x .1 / 33.36 = .0270.
    w.readable_g = 0.0;
    w.unnoticed_cm3 = 0.1;
    printed(w.spread().unwrap(), 0.0270, 4);
    // A third of the mass, three times the error.
    w.in_air_g = 100.0;
    w.in_water_g = 88.9;
    printed(w.spread().unwrap(), 0.0809, 4);
}

/// Density of an ideal mixture by mass shares: 1 / sum(w / rho).
fn by_mass(shares: &[(f64, f64)]) -> f64 {
    1.0 / shares.iter().map(|(w, rho)| w / rho).sum::<f64>()
}

/// The rule of mixtures by volume agrees with the same rule by mass. Densities: sterling 10.36 (a metals
/// supplier's data sheet), silver 10.49 and copper 8.96 (IUPAC data).
#[test]
fn layered_density_agrees_with_mass_shares() {
    for share in [0.0, 0.0244, 0.0476, 0.1111, 0.5, 1.0] {
        let by_volume = layered_density(8.96, 10.36, share);
        let silver = share * 10.36 / by_volume;
        near(
            by_volume,
            by_mass(&[(silver, 10.36), (1.0 - silver, 8.96)]),
            1e-12,
        );
    }
    // Fused sheet with a fortieth of the thickness of the copper on one side and on both.
    printed(layered_density(8.96, 10.36, 1.0 / 41.0), 8.994, 3);
    printed(layered_density(8.96, 10.36, 2.0 / 42.0), 9.027, 3);
    // Electroplate of 2.2 and 33 micrometres on both faces of .8 mm of copper.
    let plated =
        |um: f64| layered_density(8.96, 10.49, skin_share(um, 2.0, 0.8 + 2.0 * um / 1000.0));
    printed(plated(2.2), 8.97, 2);
    printed(plated(33.0), 9.08, 2);
}

fn read(fields: &[(&str, &str)], seen: &[&str]) -> (Case, Vec<Problem>) {
    let mut draft = Draft::default();
    for (field, text) in fields {
        match *text {
            "yes" => draft.set_flag(&format!("measures.{field}"), Some(true)),
            _ => draft.set(&format!("measures.{field}"), text),
        }
    }
    for id in seen {
        draft.set_answer(FindingId::parse(id).unwrap(), "seen", "");
    }
    draft.read()
}

fn posterior(fields: &[(&str, &str)], seen: &[&str]) -> Posterior {
    let (case, problems) = read(fields, seen);
    assert_eq!(problems, Vec::new());
    let ledger = Ledger::standard();
    interval_with(&Evidence::of(&case, &readings(&case, ledger)), ledger).base
}

fn identity(fields: &[(&str, &str)], seen: &[&str]) -> IdentityReport {
    let (case, problems) = read(fields, seen);
    weigh_at_once(&case, problems).identity
}

/// 300 g in air; the weights in water that give 10.36, 8.95, 8.65 and 7.28 g/cm3 at 20 C.
const SOLID: [(&str, &str); 2] = [
    ("density.in_air_g", "300"),
    ("density.in_water_g", "271.09"),
];
const PLATED: [(&str, &str); 2] = [
    ("density.in_air_g", "300"),
    ("density.in_water_g", "266.54"),
];
const NICKEL: [(&str, &str); 2] = [
    ("density.in_air_g", "300"),
    ("density.in_water_g", "265.38"),
];
const TIN: [(&str, &str); 2] = [
    ("density.in_air_g", "300"),
    ("density.in_water_g", "258.86"),
];
const STERLING_SKIN: [(&str, &str); 2] = [("xrf.silver_pct", "92.5"), ("xrf.spot", "sound")];

/// Sterling 10.36, copper 8.96, nickel silver 8.1 to 8.8 and Britannia metal 7.3 g/cm3: density separates silver
/// from plate and tin from the rest, but not one copper body from another.
#[test]
fn density_separates_silver_copper_and_tin() {
    assert_eq!(posterior(&SOLID, &[]).top_kind(), Kind::Sil);
    assert_eq!(posterior(&NICKEL, &[]).top_kind(), Kind::Ens);
    assert_eq!(posterior(&TIN, &[]).top_kind(), Kind::Ebm);
    let (before, after) = (posterior(&[], &[]), posterior(&PLATED, &[]));
    for k in [Kind::Ecu, Kind::Rfp, Kind::Fps] {
        let odds = |p: &Posterior| p.of(k) / p.of(Kind::Fpd);
        let moved = odds(&after) / odds(&before);
        assert!((0.5..2.0).contains(&moved), "{k:?}: {moved}");
    }
    assert!(after.of(Kind::Sil) < 0.01 && after.of(Kind::Ebm) < 0.01);
}

/// A reading is limited by the ladder: the odds between two kinds move by at most N against X.
#[test]
fn a_reading_moves_odds_no_further_than_the_ladder() {
    let ledger = Ledger::standard();
    let step = |l: Letter| {
        ledger
            .find(&format!("identity.ladder.base.{}", l.code()))
            .unwrap()
            .value
    };
    let most = step(Letter::N) / step(Letter::X);
    let before = posterior(&[], &[]);
    let cases: [&[(&str, &str)]; 6] = [
        &SOLID,
        &TIN,
        &[("iacs.percent", "7")],
        &[("iacs.percent", "100")],
        &[
            ("xrf.tin_pct", "93"),
            ("xrf.nickel_pct", "0"),
            ("xrf.spot", "worn"),
        ],
        &[("xrf.silver_pct", "99.9"), ("xrf.spot", "sound")],
    ];
    for fields in cases {
        let after = posterior(fields, &[]);
        for a in Kind::LADDER {
            for b in Kind::LADDER {
                let moved = after.of(a) / after.of(b) * before.of(b) / before.of(a);
                assert!(
                    moved <= most * (1.0 + 1e-9),
                    "{fields:?}: {a:?} {b:?} {moved}"
                );
            }
        }
    }
}

/// Between copper bodies, a conductivity counts as "likely against possible" at most, because it has not been
/// tested on documented pieces whether old copper conducts worse.
#[test]
fn conductivity_hardly_separates_copper_bodies() {
    let ledger = Ledger::standard();
    let most = ledger.value(FigureId::IDENTITY_LADDER_BASE_L)
        / ledger.value(FigureId::IDENTITY_LADDER_BASE_P);
    let before = posterior(&[], &[]);
    for percent in ["50", "56", "65", "80", "95", "100"] {
        let after = posterior(&[("iacs.percent", percent)], &[]);
        for k in [Kind::Ecu, Kind::Rep, Kind::Fpd] {
            for j in [Kind::Ecu, Kind::Rfp, Kind::Fps] {
                let moved = after.of(k) / after.of(j) * before.of(j) / before.of(k);
                assert!(
                    moved <= most * (1.0 + 1e-9),
                    "{percent}: {k:?} {j:?} {moved}"
                );
            }
        }
    }
    let nickel = posterior(&[("iacs.percent", "7")], &[]);
    assert_eq!(nickel.top_kind(), Kind::Ens);
}

#[test]
fn a_density_of_solid_silver_does_not_beat_a_copper_seam_alone() {
    let p = posterior(&SOLID, &["C01"]);
    let fused = p.family(Family::Fused) + p.family(Family::ReplatedFused);
    assert!(fused > p.of(Kind::Sil), "{fused} {}", p.of(Kind::Sil));
    let report = identity(&SOLID, &["C01"]);
    let clash = &report.contradictions[0];
    assert_eq!(clash.findings.map(EvidenceId::text), ["C01", "density"]);
    assert!(clash.text.contains("Look again"), "{}", clash.text);
    // Both are named, and the look that would settle it, with what each answer would support.
    let titles = [FindingId::C01.fact().title, "Density"];
    for words in titles.into_iter().chain(["The look that parts them best"]) {
        assert!(clash.text.contains(words), "{words}: {}", clash.text);
    }
    assert!(identity(&PLATED, &["C01"]).contradictions.is_empty());
}

#[test]
fn sterling_on_a_sound_surface_does_not_show_solid_silver() {
    let with_seam = posterior(&STERLING_SKIN, &["C01"]);
    assert!(with_seam.family(Family::Fused) > 10.0 * with_seam.of(Kind::Sil));
    // Even alone it does not make solid silver the answer.
    let alone = posterior(&STERLING_SKIN, &[]);
    assert!(alone.family(Family::Fused) > alone.of(Kind::Sil));
    let report = identity(&STERLING_SKIN, &[]);
    assert!(report.measures[0].text.contains("never shows solid silver"));
    // If the ratio of the lines is given, that answer counts and this number does not.
    let told = identity(&STERLING_SKIN, &["P11"]);
    assert!(!told.measures[0].counts && told.measures[0].pushes.is_empty());
    let ratio_alone = posterior(&[], &["P11"]);
    near(
        posterior(&STERLING_SKIN, &["P11"]).of(Kind::Sil),
        ratio_alone.of(Kind::Sil),
        1e-15,
    );
}

#[test]
fn a_worn_spot_shows_the_metal_below() {
    let worn = |fields: &[(&str, &str)]| {
        let mut all = vec![("xrf.spot", "worn")];
        all.extend_from_slice(fields);
        posterior(&all, &[])
    };
    // Nickel silver of 62 Cu, 15 Ni, 22 Zn (Jaluria, Design and Optimization of Thermal Systems, Table
    // B.5) and Britannia metal of 93 Sn, 5 Sb, 2 Cu (Encyclopaedia Britannica, "Britannia metal").
    let p = worn(&[
        ("xrf.copper_pct", "62"),
        ("xrf.nickel_pct", "15"),
        ("xrf.zinc_pct", "22"),
    ]);
    assert_eq!(p.top_kind(), Kind::Ens);
    let p = worn(&[
        ("xrf.tin_pct", "93"),
        ("xrf.antimony_pct", "5"),
        ("xrf.copper_pct", "2"),
    ]);
    assert_eq!(p.top_kind(), Kind::Ebm);
    let p = worn(&[
        ("xrf.iron_pct", "92"),
        ("xrf.tin_pct", "5"),
        ("xrf.nickel_pct", "0"),
    ]);
    assert_eq!(p.top_kind(), Kind::Clp);
    // Silver left on the spot makes no difference.
    let clean = worn(&[
        ("xrf.copper_pct", "60"),
        ("xrf.nickel_pct", "15"),
        ("xrf.zinc_pct", "25"),
    ]);
    let silvery = worn(&[
        ("xrf.silver_pct", "20"),
        ("xrf.copper_pct", "48"),
        ("xrf.nickel_pct", "12"),
        ("xrf.zinc_pct", "20"),
    ]);
    assert!((clean.of(Kind::Ens) - silvery.of(Kind::Ens)).abs() < 0.02);
    // Copper below separates no copper body from another.
    let p = worn(&[
        ("xrf.copper_pct", "95"),
        ("xrf.nickel_pct", "0"),
        ("xrf.zinc_pct", "4"),
    ]);
    let before = posterior(&[], &[]);
    near_share(
        p.of(Kind::Ecu) / p.of(Kind::Fpd),
        before.of(Kind::Ecu) / before.of(Kind::Fpd),
        1e-12,
    );
}

#[test]
fn the_order_of_readings_does_not_matter() {
    let all = [
        SOLID[0],
        SOLID[1],
        ("iacs.percent", "96"),
        STERLING_SKIN[0],
        STERLING_SKIN[1],
    ];
    let mut back = all;
    back.reverse();
    let (a, b) = (
        identity(&all, &["C01", "M10"]),
        identity(&back, &["M10", "C01"]),
    );
    assert_eq!(a, b);
    assert_eq!(a.measures.len(), 3);
    // Three readings of one cluster count for less than three independent ones.
    let alone: f64 = [&SOLID[..], &[("iacs.percent", "96")], &STERLING_SKIN]
        .iter()
        .map(|f| log_odds(&posterior(f, &[])) - log_odds(&posterior(&[], &[])))
        .sum();
    let together = log_odds(&posterior(&all, &[])) - log_odds(&posterior(&[], &[]));
    assert!(together < alone, "{together} {alone}");
}

#[allow(clippy::disallowed_methods)] // an oracle on the machine it runs on
fn log_odds(p: &Posterior) -> f64 {
    let p = p.family(Family::Solid);
    (p / (1.0 - p)).ln()
}

#[test]
fn each_reading_reports_how_far_it_moved_every_family() {
    let report = identity(&SOLID, &["M10"]);
    let m = &report.measures[0];
    assert!(
        m.counts && m.text.starts_with("10.36 g/cm3, plus or minus 0.05"),
        "{}",
        m.text
    );
    assert!(m.text.contains("fused plate would give 8.8"), "{}", m.text);
    assert_eq!(m.pushes.len(), 7);
    let (with, without) = (posterior(&SOLID, &["M10"]), posterior(&[], &["M10"]));
    let solid = m.pushes.iter().find(|p| p.family == Family::Solid).unwrap();
    near(solid.log_odds, log_odds(&with) - log_odds(&without), 1e-9);
    // The same reading is among the pushes of the leading family.
    let pushed = report
        .pushes
        .iter()
        .find(|p| p.finding == EvidenceId::Reading(ReadingOf::Density))
        .unwrap();
    near(pushed.log_odds, solid.log_odds, 1e-12);
    let plated = identity(&PLATED, &[]);
    let text = &plated.measures[0].text;
    assert!(text.contains("copper with a skin of silver"), "{text}");
    assert!(
        text.contains("solid silver would give 10.2 to 10.45"),
        "{text}"
    );
}

/// A band of the ladder and a number from the same instrument are one reading.
#[test]
fn a_band_ticked_in_addition_to_its_number_is_not_counted_twice() {
    let alone = posterior(&SOLID, &[]);
    let both = posterior(&SOLID, &["P02"]);
    for k in Kind::ALL {
        near(both.of(k), alone.of(k), 1e-15);
    }
    // A conflicting band is reported.
    let clash = identity(&PLATED, &["P02"]).contradictions;
    assert!(
        clash
            .iter()
            .any(|c| c.findings.map(EvidenceId::text) == ["P02", "density"]),
        "{clash:?}"
    );
    // None of its bands is offered as the next look.
    let looks = identity(&PLATED, &[]).next_looks;
    assert!(
        looks
            .iter()
            .all(|l| !["P02", "P03", "P04", "P05"].contains(&l.finding.text()))
    );
}

#[test]
fn a_reading_that_fits_every_kind_or_none_changes_nothing() {
    // 9.6 g/cm3 lies between plate and silver, where there is no kind.
    let between = [
        ("density.in_air_g", "300"),
        ("density.in_water_g", "268.81"),
    ];
    let report = identity(&between, &["C01"]);
    assert!(!report.measures[0].counts && report.measures[0].text.contains("not counted"));
    assert_eq!(report.kinds, identity(&[], &["C01"]).kinds);
    // If the user's own figures make every body equal, a density is no evidence.
    let (mut case, _) = read(&PLATED, &["C01"]);
    let mut ledger = Ledger::standard().clone();
    for body in [
        "silver",
        "copper",
        "late",
        "nickel",
        "britannia",
        "steel",
        "brass",
    ] {
        let id = format!("measure.density.{body}");
        ledger.override_with(&id, 8.95, "alike").unwrap();
    }
    ledger
        .override_with("metal.silver.density", 8.95, "alike")
        .unwrap();
    let p = interval_with(&Evidence::of(&case, &readings(&case, &ledger)), &ledger);
    case.measures.density = None;
    let without = interval_with(&Evidence::of(&case, &readings(&case, &ledger)), &ledger);
    assert_eq!(p, without);
}

/// A refused reading gives its reason, is listed among the problems and changes nothing.
#[track_caller]
fn check_refused(fields: &[(&str, &str)], seen: &[&str], field: &str, words: &str) {
    let (case, problems) = read(fields, seen);
    let said = problems
        .iter()
        .find(|p| p.field == format!("measures.{field}"));
    let said = said.unwrap_or_else(|| panic!("{fields:?}: {problems:?}"));
    assert!(
        format!("{} {}", said.message, said.remedy).contains(words),
        "{said:?}"
    );
    assert!(said.remedy.ends_with('.'), "{said:?}");
    assert_eq!(case.measures, leavewell_model::record::Measures::default());
    assert_eq!(identity(fields, seen), identity(&[], seen));
}

#[test]
fn unusable_readings_are_refused_with_a_reason() {
    let with = |more: (&'static str, &'static str)| [PLATED[0], PLATED[1], more];
    check_refused(
        &with(("density.loaded", "yes")),
        &[],
        "density.loaded",
        "filled",
    );
    check_refused(
        &with(("density.hollow_sealed", "yes")),
        &["C01"],
        "density.hollow_sealed",
        "air",
    );
    check_refused(
        &with(("density.organic", "yes")),
        &[],
        "density.organic",
        "wood",
    );
    check_refused(
        &with(("density.water_c", "90")),
        &[],
        "density.water_c",
        "0 to 40",
    );
    check_refused(
        &with(("density.readable_g", "none")),
        &[],
        "density.readable_g",
        "digits",
    );
    let weights = |air, water| [("density.in_air_g", air), ("density.in_water_g", water)];
    let water = "density.in_water_g";
    check_refused(
        &weights("300", "290"),
        &[],
        water,
        "heavier than any metal used for plate: check the two weights",
    );
    check_refused(&weights("300", "250"), &[], water, "lighter than any metal");
    check_refused(&weights("300", "300"), &[], water, "cannot weigh as much");
    check_refused(&weights("300", "310"), &[], water, "wrong way round");
    check_refused(&weights("300", ""), &[], water, "missing");
    check_refused(&weights("", "266"), &[], "density.in_air_g", "missing");
    check_refused(
        &weights("-3", "266"),
        &[],
        "density.in_air_g",
        "out of range",
    );
    check_refused(&[("iacs.percent", "140")], &[], "iacs.percent", "0 to 110");
    check_refused(
        &[("iacs.percent", "56"), ("iacs.curved", "yes")],
        &[],
        "iacs.curved",
        "curved",
    );
    check_refused(
        &[("iacs.percent", "56"), ("iacs.thin", "yes")],
        &[],
        "iacs.thin",
        "thinner",
    );
    check_refused(
        &[("iacs.percent", "56"), ("iacs.loaded", "yes")],
        &[],
        "iacs.loaded",
        "filling",
    );
    check_refused(
        &[("iacs.percent", "12")],
        &["P01"],
        "iacs.percent",
        "magnet",
    );
    let xrf = |silver, spot| [("xrf.silver_pct", silver), ("xrf.spot", spot)];
    check_refused(&xrf("101", "sound"), &[], "xrf.silver_pct", "0 to 100");
    check_refused(&xrf("92.5", ""), &[], "xrf.spot", "worn");
    check_refused(&xrf("92.5", "inside"), &[], "xrf.spot", "sound");
    check_refused(&xrf("92.5", "worn"), &[], "xrf.spot", "not worn through");
}

#[test]
fn readings_are_used_up_to_each_limit_and_refused_beyond() {
    let weights = |water| [("density.in_air_g", "300"), ("density.in_water_g", water)];
    // 11.6 and 6.5 g/cm3 are the ends: 300 x .998207 / 11.6 = 25.816 g lost, / 6.5 = 46.071 g.
    for (water, used) in [
        ("274.17", true),
        ("274.20", false),
        ("253.94", true),
        ("253.91", false),
    ] {
        let (case, problems) = read(&weights(water), &[]);
        assert_eq!(
            (case.measures.density.is_some(), problems.is_empty()),
            (used, used),
            "{water}"
        );
    }
    let sum = |copper| {
        [
            ("xrf.silver_pct", "40"),
            ("xrf.nickel_pct", "12"),
            ("xrf.copper_pct", copper),
            ("xrf.spot", "worn"),
        ]
    };
    for (copper, used) in [("50", true), ("50.1", false)] {
        let (case, problems) = read(&sum(copper), &[]);
        assert_eq!(
            (case.measures.xrf.is_some(), problems.is_empty()),
            (used, used),
            "{copper}"
        );
    }
    let bare = |silver| {
        [
            ("xrf.silver_pct", silver),
            ("xrf.nickel_pct", "12"),
            ("xrf.spot", "worn"),
        ]
    };
    for (silver, used) in [("50", true), ("50.1", false)] {
        assert_eq!(
            read(&bare(silver), &[]).0.measures.xrf.is_some(),
            used,
            "{silver}"
        );
    }
    for (percent, used) in [("110", true), ("110.1", false), ("0", true)] {
        assert_eq!(
            read(&[("iacs.percent", percent)], &[])
                .0
                .measures
                .iacs
                .is_some(),
            used,
            "{percent}"
        );
    }
    check_refused(
        &[("xrf.copper_pct", "95"), ("xrf.spot", "worn")],
        &[],
        "xrf.nickel_pct",
        "nickel, zinc, tin or iron",
    );
    check_refused(
        &[("xrf.copper_pct", "7"), ("xrf.spot", "sound")],
        &[],
        "xrf.silver_pct",
        "share of silver",
    );
    // A tick without a reading is not a fault.
    assert_eq!(read(&[("density.loaded", "yes")], &[]).1, Vec::new());
}

/// A reading never implies a date.
#[test]
fn a_reading_does_not_date_a_piece() {
    let with = identity(&PLATED, &["C01", "M04"]).dates.unwrap();
    let without = identity(&[], &["C01", "M04"]).dates.unwrap();
    assert_eq!(with.reasons, without.reasons);
}

/// Each suggested look states the effect of each answer; giving the answer results in the same posterior.
#[test]
fn a_look_predicts_the_effect_of_its_answers() {
    let ledger = Ledger::standard();
    let looks = identity(&PLATED, &["S03"]).next_looks;
    assert!(!looks.is_empty());
    for look in looks.iter().take(4) {
        let seen = identity(&PLATED, &["S03", look.finding.text()]);
        let top = &seen.family_bars[0];
        assert_eq!(look.if_seen.family, top.family, "{}", look.finding);
        near(look.if_seen.p, top.p, 1e-12);
        assert!((0.0..=1.0).contains(&look.if_absent.p));
    }
    // The absence of an instrument band changes nothing.
    let (case, _) = read(&[], &["S03"]);
    let evidence = Evidence::of(&case, &[]);
    let now = interval_with(&evidence, ledger).base;
    let gains = information_gain(&evidence, &now, ledger);
    let band = gains
        .iter()
        .find(|g| g.finding.id == FindingId::P08)
        .unwrap();
    assert_eq!(band.if_absent, now);
}

/// The numbers behind the letters, and the verbal strength of their ratios. Kass and Raftery, "Bayes
/// Factors", Journal of the American Statistical Association 90 (1995), 3.2: up to 3 hardly worth a mention,
/// to 20 positive, to 150 strong, above that very strong. European Network of Forensic Science Institutes,
/// Guideline for Evaluative Reporting, 2015: 2 to 10 weak, to 100 moderate support.
#[test]
fn ratios_of_ladder_letters_have_their_verbal_strength() {
    let ledger = Ledger::standard();
    let step = |ladder: &str, l: Letter| {
        ledger
            .find(&format!("identity.ladder.{ladder}.{}", l.code()))
            .unwrap()
            .value
    };
    let base = Letter::ALL.map(|l| step("base", l));
    for (got, want) in base.into_iter().zip([0.95, 0.70, 0.30, 0.07, 0.01]) {
        near(got, want, 1e-12);
    }
    for ladder in ["base", "blunt", "sharp"] {
        let steps = Letter::ALL.map(|l| step(ladder, l));
        assert!(steps.windows(2).all(|w| w[0] > w[1]), "{ladder}: {steps:?}");
        assert!(
            steps.iter().all(|p| *p > 0.0 && *p < 1.0),
            "never certain: {ladder}"
        );
    }
    let in_words = |ratio: f64| match ratio {
        r if r <= 3.0 => "hardly worth a mention",
        r if r <= 20.0 => "positive",
        r if r <= 150.0 => "strong",
        _ => "very strong",
    };
    let [n, l, p, u, x] = base;
    assert_eq!(in_words(n / l), "hardly worth a mention");
    assert_eq!(in_words(l / p), "hardly worth a mention");
    assert_eq!(in_words(l / u), "positive");
    assert_eq!(in_words(n / u), "positive");
    assert_eq!(in_words(l / x), "strong");
    assert_eq!(in_words(p / x), "strong");
    // No single finding reaches "very strong", or more than moderate support.
    assert_eq!(in_words(n / x), "strong");
    assert!(n / x < 100.0);
}
