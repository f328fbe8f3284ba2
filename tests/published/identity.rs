//! What a piece is. The ladder, the prior and the windows are judgement, so these checks hold the
//! arithmetic to its definition: each posterior was worked out apart from the program, from the
//! letters and the prior of the ledger (computed from the figures of the ledger), for the named kinds
//! alone. The program keeps room for pieces outside the kinds; that share is taken out again here.

use leavewell_model::counsel::weigh_at_once;
use leavewell_model::identity::{
    CopperRule, Family, Kind, Ladder, Posterior, contradictions, posterior, with_interval,
};
use leavewell_model::ledger::{FindingFact, Ledger, finding, windows};
use leavewell_model::record::{Answer, Case, PartName, Seen};

use crate::{near, printed};

fn answers(seen: &[&'static str], absent: &[&'static str]) -> Vec<Answer> {
    let with = |ids: &[&'static str], seen| {
        ids.iter()
            .map(move |id| Answer {
                id,
                seen,
                part: None,
            })
            .collect::<Vec<_>>()
    };
    [with(seen, Seen::Yes), with(absent, Seen::No)].concat()
}

fn on_bare_ladder(answers: &[Answer]) -> Posterior {
    let ledger = Ledger::standard();
    posterior(
        answers,
        ledger,
        &Ladder::of(ledger, "base"),
        CopperRule::Bare,
    )
}

fn among_named(p: &Posterior, kind: Kind) -> f64 {
    p.of(kind) / (1.0 - p.of(Kind::Out))
}

/// The posterior after these were seen, to the four decimals it was worked out to.
#[track_caller]
fn check_seen(seen: &[&'static str], expected: &[(Kind, f64)]) {
    let p = on_bare_ladder(&answers(seen, &[]));
    for (kind, want) in expected {
        near(among_named(&p, *kind), *want, 0.0005);
    }
}

#[test]
fn the_prior_of_the_named_kinds_sums_to_one() {
    let ledger = Ledger::standard();
    let sum: f64 = Kind::LADDER
        .iter()
        .map(|k| ledger.value(&format!("identity.prior.{}", k.code())))
        .sum();
    near(sum, 1.0, 1e-9);
}

#[test]
fn no_answer_or_only_not_sure_leaves_the_prior() {
    let ledger = Ledger::standard();
    let unsure: Vec<Answer> = ["C01", "M03", "P01"]
        .map(|id| Answer {
            id,
            seen: Seen::Unsure,
            part: None,
        })
        .to_vec();
    for p in [on_bare_ladder(&[]), on_bare_ladder(&unsure)] {
        for kind in Kind::LADDER {
            let prior = ledger.value(&format!("identity.prior.{}", kind.code()));
            near(among_named(&p, kind), prior, 1e-9);
        }
        near(p.of(Kind::Out), ledger.value("identity.prior.OUT"), 1e-9);
    }
}

#[test]
fn posteriors_worked_out_by_hand() {
    use Kind::{Clp, Ebm, Ecu, Ens, Fpd, Fps, Rep, Rfp, Sil};
    check_seen(&["M03"], &[(Sil, 0.8861), (Fpd, 0.0253), (Ens, 0.0253)]);
    check_seen(&["P05"], &[(Ebm, 0.7037), (Clp, 0.1481), (Rep, 0.0432)]);
    check_seen(&["S07", "P01"], &[(Clp, 0.9915)]);
    // Two clusters multiply.
    check_seen(
        &["C01", "C08"],
        &[(Fpd, 0.7771), (Fps, 0.1166), (Rfp, 0.0999)],
    );
    // Two findings of one cluster count 1/sqrt(2) each.
    check_seen(
        &["C01", "C04"],
        &[(Fpd, 0.5027), (Rfp, 0.1933), (Ecu, 0.0898), (Fps, 0.0629)],
    );
    check_seen(&["C01", "C07", "C13"], &[(Fpd, 0.7433), (Rfp, 0.2230)]);
    check_seen(
        &["C01", "C07", "C13", "S08"],
        &[(Rfp, 0.9639), (Fpd, 0.0338)],
    );
    check_seen(&["S03"], &[(Fpd, 0.5613), (Fps, 0.1965), (Rfp, 0.0393)]);
    check_seen(&["M01b"], &[(Ens, 0.5049), (Ecu, 0.2524), (Rep, 0.1262)]);
    check_seen(&["M12"], &[(Ens, 0.4167), (Clp, 0.3571)]);
    check_seen(&["M12", "P01"], &[(Clp, 0.9682)]);
}

#[test]
fn the_order_of_answers_does_not_matter() {
    let forth = answers(&["C01", "C07", "C13", "S08", "M10"], &["P01", "C09"]);
    let mut back = forth.clone();
    back.reverse();
    for kind in Kind::ALL {
        near(
            on_bare_ladder(&back).of(kind),
            on_bare_ladder(&forth).of(kind),
            1e-12,
        );
    }
}

/// CONSTRUCTED: one sign of copper and twenty looks in passing, as a hurried person answers.
#[test]
fn copper_survives_twenty_casual_absences() {
    let absent = [
        "C01", "C03", "C05", "C07", "C08", "C10", "C13", "C14", "C15", "C16", "C17", "C19", "S01",
        "S02", "S08", "S09", "S10", "S07", "P01", "M03",
    ];
    let p = with_interval(&answers(&["S03"], &absent), Ledger::standard()).base;
    let fused = p.family(Family::Fused);
    assert!(fused > 0.3, "the fused family is left with {fused}");
}

/// CONSTRUCTED: the one mark there is was read, and the person says honestly that no other is there.
#[test]
fn one_mark_read_is_not_undone_by_the_marks_that_are_not_there() {
    let others = [
        "M01b", "M02", "M03", "M04", "M05", "M06", "M07", "M08", "M09", "M10", "M11", "M12", "M13",
    ];
    let p = with_interval(&answers(&["M01"], &others), Ledger::standard()).base;
    assert_eq!(p.top_kind(), Kind::Ens);
    let alone = with_interval(&answers(&["M01"], &[]), Ledger::standard()).base;
    near(p.of(Kind::Ens), alone.of(Kind::Ens), 1e-12);
}

/// About .63 for everything made as fused plate: computed from the figures of the ledger, with
/// copper wear read as likely for electroplate on copper and for reproductions too.
#[test]
fn copper_alone_is_no_verdict() {
    let p = with_interval(&answers(&["S03"], &[]), Ledger::standard()).base;
    near(
        p.family(Family::Fused) + p.family(Family::ReplatedFused),
        0.63,
        0.015,
    );
    let sentence = sentence_for(answers(&["S03"], &[]));
    assert!(!sentence.contains("Sheffield"), "{sentence}");
    assert!(!sentence.contains("robably"), "{sentence}");
    // A seam with copper in it settles the construction, and then the verdict may be spoken.
    let sentence = sentence_for(answers(&["S03", "C01", "C08"], &[]));
    assert!(sentence.contains("fused plate"), "{sentence}");
}

fn sentence_for(findings: Vec<Answer>) -> String {
    let case = Case {
        findings,
        ..Case::default()
    };
    weigh_at_once(&case, Vec::new()).identity.sentence
}

/// "EP" without letters for the base metal is not nickel silver: the letters of electroplate on
/// copper and on nickel silver are the same, so only the prior parts them.
#[test]
fn a_mark_that_names_no_base_metal_gives_none() {
    let sentence = sentence_for(answers(&["M01b"], &[]));
    assert!(
        sentence.contains("electroplate") && !sentence.contains("nickel"),
        "{sentence}"
    );
}

/// The mark alone does not outweigh the prior for nickel silver; the magnet, which anybody can try,
/// does (computed from the figures of the ledger). It has to stand among the first looks offered.
#[test]
fn a_close_platers_mark_asks_for_the_magnet() {
    let case = Case {
        findings: answers(&["M12"], &[]),
        ..Case::default()
    };
    let looks = weigh_at_once(&case, Vec::new()).identity.next_looks;
    let magnet = looks.iter().position(|look| look.finding == "P01");
    assert!(
        magnet.is_some_and(|place| place < 3),
        "the magnet comes in place {magnet:?}"
    );
}

/// max over kinds of p1 p2, divided by (max p1)(max p2), from the letters and the base ladder.
fn support(a: &FindingFact, b: &FindingFact) -> f64 {
    let ledger = Ledger::standard();
    let p = |f: &FindingFact, i: usize| {
        ledger.value(&format!("identity.ladder.base.{}", f.letters[i].code()))
    };
    let most = |of: &dyn Fn(usize) -> f64| (0..11).map(of).fold(0.0, f64::max);
    most(&|i| p(a, i) * p(b, i)) / (most(&|i| p(a, i)) * most(&|i| p(b, i)))
}

fn contradictions_of(findings: Vec<Answer>) -> Vec<[&'static str; 2]> {
    let case = Case {
        findings,
        ..Case::default()
    };
    contradictions(&case, Ledger::standard())
        .iter()
        .map(|c| c.findings.map(|f| f.id))
        .collect()
}

#[test]
fn full_hallmarks_and_a_copper_seam_contradict_each_other() {
    let (hallmarks, seam) = (finding("M03").unwrap(), finding("C01").unwrap());
    printed(support(hallmarks, seam), 0.014, 3);
    assert_eq!(
        contradictions_of(answers(&["M03", "C01"], &[])),
        [["C01", "M03"]]
    );
    // A seam and a sandwich at the edge go together.
    assert!(contradictions_of(answers(&["C01", "C08"], &[])).is_empty());
}

#[test]
fn on_different_parts_a_contradiction_is_offered_as_a_married_piece() {
    let on = |id, part| Answer {
        id,
        seen: Seen::Yes,
        part: Some(part),
    };
    let case = Case {
        findings: vec![on("M03", PartName::Cover), on("C01", PartName::Body)],
        ..Case::default()
    };
    let found = contradictions(&case, Ledger::standard());
    assert!(
        found.len() == 1 && found[0].different_parts && found[0].text.contains("married"),
        "{found:?}"
    );
}

/// The electroplating patent is of 1840 (Victoria and Albert Museum): what only electroplate shows
/// cannot stand beside a mark that had ended before it (1784-1836: Sheffield Assay Office; 1750-1773:
/// Victoria and Albert Museum).
#[test]
fn electroplate_before_1840_is_a_contradiction() {
    for electroplate in ["M01", "M01b", "M02", "M06", "M08", "C19"] {
        for early in ["M04", "M05"] {
            let found = contradictions_of(answers(&[electroplate, early], &[]));
            assert_eq!(found.len(), 1, "{electroplate} with {early}");
        }
    }
}

/// The same bound against what is told of the piece: said to be no later than 1800, and marked EPNS.
/// The report has to say that the two do not fit.
#[test]
fn electroplate_told_to_be_older_than_1840_is_a_contradiction() {
    let mut case = Case {
        findings: answers(&["M01", "C09"], &[]),
        ..Case::default()
    };
    case.piece.to_year = Some(1800);
    let report = weigh_at_once(&case, Vec::new());
    let said = serde_json::to_string(&report).unwrap();
    assert!(
        !report.identity.contradictions.is_empty() || said.contains("1800"),
        "nothing is said of the year told"
    );
}

/// The date span that is reported for these findings, seen on a piece asked about in 2026.
#[track_caller]
fn check_dates(seen: &[&'static str], from: std::ops::RangeInclusive<u16>, to: u16) {
    let case = Case {
        findings: answers(seen, &[]),
        ..Case::default()
    };
    let dates = weigh_at_once(&case, Vec::new()).identity.dates.unwrap();
    assert!(
        from.contains(&dates.from) && dates.to <= to,
        "{seen:?}: {} to {}",
        dates.from,
        dates.to
    );
}

/// Bounds from the dated events named; each end may run over by the soft tail of ten years
/// (judgement).
#[test]
fn dates_keep_to_the_dated_events() {
    // Electroplate not before the patent of 1840 (Victoria and Albert Museum).
    check_dates(&["M01", "S04", "C09"], 1830..=2026, 2026);
    check_dates(&["M02", "S05"], 1835..=2026, 2026);
    check_dates(&["C19", "C09"], 1830..=2026, 2026);
    // Fusion from 1742 or 1743 (Victoria and Albert Museum); ordinary making over by about 1860.
    check_dates(&["C01", "C08", "C06"], 1740..=1860, 1870);
    // Registered makers' marks 1784 to 1836 (Sheffield Assay Office).
    check_dates(&["C01", "C08", "M04"], 1774..=1836, 1846);
    // Punches like hallmarks, about 1750 to 1773 (Victoria and Albert Museum).
    check_dates(&["C01", "C06", "M05"], 1740..=1773, 1783);
}

/// Ten copies of one finding are one finding; and several findings of one cause count for less than
/// their product (the product, untempered, is worked out here).
#[test]
fn repeated_and_kindred_evidence_never_becomes_certainty() {
    let once = on_bare_ladder(&answers(&["C01"], &[]));
    let ten = on_bare_ladder(&answers(&["C01"; 10], &[]));
    for kind in Kind::ALL {
        near(ten.of(kind), once.of(kind), 1e-12);
    }
    let kindred = ["C01", "C03", "C05"];
    let ledger = Ledger::standard();
    let product = Kind::LADDER.map(|k| {
        let prior = ledger.value(&format!("identity.prior.{}", k.code()));
        kindred.iter().fold(prior, |p, id| {
            let letter = finding(id).unwrap().letter(k).unwrap();
            p * ledger.value(&format!("identity.ladder.base.{}", letter.code()))
        })
    });
    let untempered = product[2] / product.iter().sum::<f64>();
    let tempered = among_named(&on_bare_ladder(&answers(&kindred, &[])), Kind::Fpd);
    assert!(tempered < untempered - 0.05, "{tempered} {untempered}");
}

/// The piece is of the expected family, the expected kind is among the first two, and the kinds that
/// the description allows hold at least the share `least` together.
#[track_caller]
fn check_piece(seen: &[&'static str], absent: &[&'static str], kinds: &[Kind], least: f64) {
    let p = with_interval(&answers(seen, absent), Ledger::standard()).base;
    let mut order = Kind::ALL;
    order.sort_by(|a, b| p.of(*b).total_cmp(&p.of(*a)));
    let expected = kinds[0];
    assert!(
        order[..2].contains(&expected),
        "first are {:?}",
        &order[..2]
    );
    assert_eq!(p.top_family().0, expected.family(), "{seen:?}");
    assert!(
        p.of_any(kinds) >= least,
        "{} for {kinds:?}",
        p.of_any(kinds)
    );
}

/// CONSTRUCTED: descriptions of typical pieces, put together from the signs that the book or
/// encyclopaedia beside each gives for the kind; no one piece is meant. A sign that the book does not
/// give, or that we know from a weaker source, is named with its source in the ledger.
#[test]
fn typical_pieces_are_told_apart() {
    use Kind::{Clp, Ebm, Ecu, Ens, Fpd, Fpn, Fps, Frp, Rep, Rfp, Sil};
    // A coffee pot of the 1780s with its first silver. Bradbury, History of Old Sheffield Plate, 1912
    // (the bluish cast of the old alloy); Hayden, Chats on Old Sheffield Plate, 1920, marks (seams that
    // show joins are the far better test). Wire edge, let-in shield: ledger, dealers' articles only.
    check_piece(
        &["C01", "C07", "C13", "S01", "S03"],
        &["S08", "C09"],
        &[Fpd],
        0.9,
    );
    // A mug of the 1760s, tinned inside, edges turned over. Encyclopaedia Britannica, 11th ed., 1911,
    // "Plated Ware" (silver on one side, tinned inside; bare copper shows red). Turned edge: ledger.
    check_piece(&["C01", "C06", "C17", "S03"], &["C18"], &[Fps], 0.85);
    // A cake basket: copper at the pierced edges and in the engraving. Hebert, The Engineer's and
    // Mechanic's Encyclopaedia, 1836, "Plating" (baskets and trays pierced from plated sheet);
    // Encyclopaedia Britannica, 1911, "Sheffield Plate" (the layers). Copper in engraved lines: ledger.
    check_piece(&["C06", "C08", "C14", "S03"], &["C09"], &[Fpd, Fps], 0.9);
    // Early punches that imitate hallmarks. Watson, Old Silver Platers and Their Marks, 1908
    // (introduction: the report to Parliament before the Act of 1773).
    check_piece(&["M05", "C06", "C01"], &["M03"], &[Fpd, Fps, Rfp], 0.9);
    // Late fused plate over nickel silver. Encyclopaedia Britannica, 11th ed., 1911, "Plated Ware" (the
    // ingot generally copper or German silver). Wire edge and shield: ledger, as above.
    check_piece(&["C07", "C13", "S04"], &[], &[Fpn], 0.7);
    // An old pot plated again. Bradbury, History of Old Sheffield Plate, 1912 (replating advertised in
    // 1849 and 1852; pure silver is white, the old alloy bluish). Silver over the seam follows from it.
    check_piece(&["C01", "C13", "S08", "S10", "S02"], &[], &[Rfp], 0.95);
    // Full hallmarks and warm colour. Chaffers, Hall Marks on Gold and Silver Plate (the standard mark
    // and its companions); the density of sterling is the rule of mixtures.
    check_piece(&["M03", "C18", "S01", "P02"], &["P01"], &[Sil], 0.95);
    // A nickel-silver teapot with its mark. Chaffers, as above, Sheffield (wholly made of German or
    // nickel silver first, then covered by electricity); Knight, The English Cyclopaedia, "Plate"
    // (where worn, the white metal shows no copper or brass tint).
    check_piece(&["M01", "S04", "C09", "C11"], &["S03"], &[Ens], 0.95);
    // A Britannia-metal teapot. Encyclopaedia Britannica, "Britannia metal" (tin, antimony and copper;
    // spun; from about 1846 a base for silver by electrolysis). The letters of the mark: ledger.
    check_piece(&["M02", "S05", "C04"], &["P01"], &[Ebm], 0.95);
    // Snuffers of plated steel. Hayden, Chats on Old Sheffield Plate, 1920, chapter 9, "Close Plating"
    // (snuffers and knives of iron or steel under silver sheet). Rust under the foil: ledger.
    check_piece(&["P01", "S07", "M12"], &[], &[Clp], 0.95);
    // Silvered brass of the 1740s. Hebert, The Engineer's and Mechanic's Encyclopaedia, 1836, "Plating"
    // (French plating: leaf rubbed on finished brass); Ure, A Dictionary of Arts, Manufactures and
    // Mines, 1839, "Silvering". For the crowned C no handbook was found: ledger, a dealer's page.
    check_piece(&["M13", "S06"], &["P01"], &[Frp], 0.8);
    // An electrotype. Knight's Cyclopaedia of the Industry of All Nations, 1851, "Electrotype" (copper
    // grown in a mould, rough on the outer side).
    check_piece(&["C19", "C09", "P12", "P08"], &[], &[Ecu], 0.8);
    // A later tureen in the old style. Bradbury, History of Old Sheffield Plate, 1912, "Reproductions or
    // fakes" (a large trade from factories in London, Birmingham and abroad). For white-metal castings
    // and the country's name no handbook was found: ledger.
    check_piece(
        &["M09", "C12", "C09", "P12"],
        &["C08", "C13"],
        &[Rep, Ecu],
        0.6,
    );
    // The word ELECTROPLATE and silver down to the bottom of the lines. Chaffers, as above, Sheffield
    // (electroplate is finished first and covered after). The letters of the mark: ledger.
    check_piece(&["M01b", "C09", "C15"], &[], &[Ens, Ecu, Rep, Ebm], 0.9);
}

/// Windows against dated events in print. Electroplate: the patent of 1840 (Victoria and Albert Museum,
/// pages on electroplate). Fusion: 1742 (Encyclopaedia Britannica, 11th ed., 1911, "Sheffield Plate";
/// others 1743). The Act of 1773 against letters on plate, and the register of 1784 (Watson, Old Silver
/// Platers and Their Marks, 1908). Candlesticks in trade by 1760 (Walpole's letter, in Chaffers, Hall
/// Marks on Gold and Silver Plate). Britannia metal as a base from about 1846 (Encyclopaedia
/// Britannica, "Britannia metal"). Replating advertised in 1849 (Bradbury). Design lozenge 1842 to
/// 1883 (UK designs registers). British patent 5963 of 1830 for German silver in plate.
#[test]
fn windows_hold_the_dated_events() {
    let window = |id: &str| windows().iter().find(|w| w.id == id).unwrap();
    for (id, from) in [
        ("ECU", 1840),
        ("ENS", 1840),
        ("M01", 1840),
        ("M06", 1840),
        ("FPS", 1743),
        ("RFP", 1743),
        ("FPD", 1760),
        ("FPN", 1830),
        ("S04", 1830),
        ("M04", 1784),
        ("EBM", 1845),
        ("M02", 1845),
        ("S10", 1845),
        ("M08", 1842),
        ("M09", 1891),
    ] {
        assert_eq!(window(id).from, from, "{id}");
    }
    for (id, to) in [("M05", 1773), ("M04", 1836), ("FPD", 1860), ("M13", 1749)] {
        assert_eq!(window(id).to, Some(to), "{id}");
    }
    // What came of electricity is never open before it.
    for id in [
        "ECU", "ENS", "EBM", "C09", "C15", "C19", "S08", "M01", "M01b", "M02", "M06",
    ] {
        assert!(window(id).from >= 1840, "{id}");
    }
}

/// Two findings of which one spot can show only one are named as a pair, with what to do; told on
/// parts of their own they are none.
#[test]
fn findings_that_exclude_each_other_are_named() {
    for pair in [
        ["S01", "S02"],
        ["C01", "C02"],
        ["C17", "C18"],
        ["M04", "M10"],
        ["P03", "P08"],
    ] {
        let found = contradictions_of(answers(&pair, &[]));
        let excluded = pair != ["P03", "P08"];
        assert_eq!(found.contains(&pair), excluded, "{pair:?}");
    }
    let on = |id, part| Answer {
        id,
        seen: Seen::Yes,
        part: Some(part),
    };
    let said = |a: PartName, b: PartName| {
        let case = Case {
            findings: vec![on("S01", a), on("S02", b)],
            ..Case::default()
        };
        contradictions(&case, Ledger::standard())
    };
    let same = said(PartName::Body, PartName::Body);
    assert!(
        same[0].text.contains("only one of the two") && same[0].text.contains("keep the one"),
        "{same:?}"
    );
    assert!(said(PartName::Body, PartName::Foot).is_empty());
}
