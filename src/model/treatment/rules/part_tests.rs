//! Rules on what is recorded of single parts: loading, hollow handles, liners, wax, gilding and materials
//! that are not metal; also a loan and a date.

use super::check;
use super::tests::{BRITANNIA, FUSED, NICKEL, NOTHING, says, silent, tested};
use crate::ledger::Ground;
use crate::ledger::RuleId;
use crate::record::{
    Case, Circumstances, Dents, Fill, Form, Gilding, Joint, Liner, Loss, Material, Part, PartName,
    Split,
};
use crate::terms::Date;
use crate::treatment::testing::{case, situation};
use crate::treatment::{Outcome, Treatment, worst};

/// A tested nickel-silver piece with one more part.
fn with(name: PartName, change: impl FnOnce(&mut Part)) -> Case {
    let mut piece = case(&NICKEL, tested);
    add(&mut piece, name, change);
    piece
}

fn add(piece: &mut Case, name: PartName, change: impl FnOnce(&mut Part)) {
    let mut part = Part::unknown(name);
    part.lead = Some(crate::record::Lead::NotFound);
    change(&mut part);
    piece.parts.push(part);
}

fn empty(part: &mut Part) {
    part.fill = Some(Fill::None);
}

#[test]
fn the_loading_of_a_branched_stick_is_answered_by_its_base_and_stem_together() {
    let t = Treatment::Solder;
    let mut stick = case(&NICKEL, tested);
    stick.piece.form = Some(Form::Candelabrum);
    add(&mut stick, PartName::Base, empty);
    says(t, &stick, NOTHING, RuleId::H06, Outcome::Barred);
    add(&mut stick, PartName::Stem, |_| ());
    says(t, &stick, NOTHING, RuleId::H06, Outcome::Barred);
    empty(stick.parts.last_mut().unwrap());
    silent(t, &stick, NOTHING, RuleId::H06);
    // The stem alone does not answer it.
    let mut stem_only = case(&NICKEL, tested);
    stem_only.piece.form = Some(Form::Candelabrum);
    add(&mut stem_only, PartName::Stem, empty);
    says(t, &stem_only, NOTHING, RuleId::H06, Outcome::Barred);
}

#[test]
fn a_stem_recorded_on_a_plain_candlestick_has_to_be_answered_too() {
    let t = Treatment::Solder;
    let mut stick = case(&NICKEL, tested);
    stick.piece.form = Some(Form::Candlestick);
    add(&mut stick, PartName::Foot, empty);
    silent(t, &stick, NOTHING, RuleId::H06);
    add(&mut stick, PartName::Stem, |_| ());
    says(t, &stick, NOTHING, RuleId::H06, Outcome::Barred);
}

#[test]
fn the_loading_of_cutlery_is_in_its_handle() {
    let t = Treatment::Solder;
    let mut knife = case(&NICKEL, tested);
    knife.piece.form = Some(Form::Cutlery);
    add(&mut knife, PartName::Base, empty);
    says(t, &knife, NOTHING, RuleId::H06, Outcome::Barred);
    add(&mut knife, PartName::Handle, empty);
    silent(t, &knife, NOTHING, RuleId::H06);
}

#[test]
fn what_fills_a_loaded_base_is_unknown_until_the_base_is_answered() {
    let t = Treatment::RemoveFill;
    let mut stick = case(&NICKEL, tested);
    stick.piece.form = Some(Form::Candlestick);
    add(&mut stick, PartName::Rim, empty);
    says(t, &stick, NOTHING, RuleId::H06, Outcome::NeedsCheck);
    add(&mut stick, PartName::Base, |p| p.fill = Some(Fill::Pitch));
    silent(t, &stick, NOTHING, RuleId::H06);
}

#[test]
fn a_handle_that_is_or_may_be_hollow_is_not_soaked() {
    for t in [Treatment::Wash, Treatment::LacquerOff] {
        // A coaster has neither soldered joints nor a handle.
        let handle = |hollow| {
            let mut piece = with(PartName::Handle, |p| p.hollow = hollow);
            piece.piece.form = Some(Form::Coaster);
            piece
        };
        says(t, &handle(None), NOTHING, RuleId::H02, Outcome::Conditional);
        says(
            t,
            &handle(Some(true)),
            NOTHING,
            RuleId::H02,
            Outcome::Conditional,
        );
        silent(t, &handle(Some(false)), NOTHING, RuleId::H02);
        // A handle that is not recorded is not known to be solid.
        let mut tray = case(&NICKEL, tested);
        tray.piece.form = Some(Form::Tray);
        says(t, &tray, NOTHING, RuleId::H02, Outcome::Conditional);
        // No handle, no condition.
        tray.piece.form = Some(Form::Coaster);
        silent(t, &tray, NOTHING, RuleId::H02);
    }
    let hollow = with(PartName::Foot, |p| p.hollow = Some(true));
    says(
        Treatment::Dip,
        &hollow,
        NOTHING,
        RuleId::H02,
        Outcome::Barred,
    );
}

#[test]
fn a_liner_is_taken_out_before_any_work() {
    let works = [
        Treatment::Wash,
        Treatment::LacquerOff,
        Treatment::Lacquer,
        Treatment::Solder,
        Treatment::Overplate,
        Treatment::Tinning,
    ];
    let said = |piece: &Case, t| -> Vec<String> {
        let verdicts = check(t, &situation(piece));
        verdicts.into_iter().map(|v| v.lifted_by).collect()
    };
    let plain = case(&NICKEL, tested);
    let glass = with(PartName::Body, |p| p.liner = Some(Liner::Glass));
    let glass_part = with(PartName::Liner, |p| p.material = Some(Material::Glass));
    let metal = with(PartName::Interior, |p| p.liner = Some(Liner::Metal));
    for t in works {
        let glass_out = "Take the glass out first.".to_owned();
        let liner_out = "Take the liner out first.".to_owned();
        assert!(said(&glass, t).contains(&glass_out), "{}", t.id());
        assert!(said(&glass_part, t).contains(&glass_out), "{}", t.id());
        assert!(said(&metal, t).contains(&liner_out), "{}", t.id());
        let none = said(&plain, t);
        assert!(
            !none.contains(&glass_out) && !none.contains(&liner_out),
            "{}",
            t.id()
        );
    }
}

#[test]
fn a_material_that_is_not_metal_has_conditions_of_use() {
    let plain = case(&NICKEL, tested);
    for material in [
        Material::Wood,
        Material::Ivory,
        Material::Horn,
        Material::Bone,
        Material::Composition,
    ] {
        let handle = with(PartName::Handle, |p| p.material = Some(material));
        says(
            Treatment::Wash,
            &handle,
            NOTHING,
            RuleId::H02,
            Outcome::Conditional,
        );
        says(
            Treatment::Dip,
            &handle,
            NOTHING,
            RuleId::H02,
            Outcome::Barred,
        );
        for t in [Treatment::Clean, Treatment::Foam] {
            says(t, &handle, NOTHING, RuleId::H05, Outcome::Conditional);
        }
        for t in [
            Treatment::Solder,
            Treatment::Replate,
            Treatment::Lacquer,
            Treatment::LacquerOff,
        ] {
            says(t, &handle, NOTHING, Ground::Need, Outcome::Conditional);
        }
    }
    for t in [Treatment::Solder, Treatment::Lacquer, Treatment::LacquerOff] {
        silent(t, &plain, NOTHING, Ground::Need);
    }
    // The answer for the whole piece has the same effect as the answer for the part.
    let organic = Circumstances {
        organic: Some(true),
        ..NOTHING
    };
    let wood = with(PartName::Body, |p| p.material = Some(Material::Wood));
    let answered = Case {
        circumstances: organic,
        ..with(PartName::Body, |_| ())
    };
    for t in Treatment::ALL {
        assert_eq!(
            check(t, &situation(&wood)),
            check(t, &situation(&answered)),
            "{}",
            t.id()
        );
    }
}

#[test]
fn a_split_in_wood_or_ivory_is_never_soldered() {
    let split = |material: Option<Material>| {
        with(PartName::Handle, |p| {
            p.split = Some(Split::Through);
            p.material = material;
        })
    };
    for t in [Treatment::Solder, Treatment::LowMelt] {
        says(
            t,
            &split(Some(Material::Wood)),
            NOTHING,
            Ground::Need,
            Outcome::Barred,
        );
    }
    let said = check(Treatment::Solder, &situation(&split(Some(Material::Ivory))));
    assert!(said.iter().any(|v| v.reason.contains("ivory")), "{said:?}");
    silent(Treatment::Solder, &split(None), NOTHING, Ground::Need);
    // Another joint on the piece may be soldered; the split in the wood is not.
    let mut both = split(Some(Material::Wood));
    both.parts[0].joint = Some(Joint::Leaking);
    says(
        Treatment::Solder,
        &both,
        NOTHING,
        Ground::Need,
        Outcome::Conditional,
    );
    assert!(worst(&check(Treatment::Solder, &situation(&both))).can_be_advised());
    // A pin or glue answers it, and dents elsewhere can still be pushed out.
    let wood = split(Some(Material::Wood));
    assert!(worst(&check(Treatment::Mechanical, &situation(&wood))).can_be_advised());
    let mut dented = wood;
    dented.parts[0].dents = Some(Dents::Minor);
    silent(Treatment::Dents, &dented, NOTHING, Ground::Need);
}

#[test]
fn ivory_is_not_renewed_and_the_law_decides_on_a_piece_with_ivory() {
    let t = Treatment::ReplacePart;
    let ivory = with(PartName::Handle, |p| p.material = Some(Material::Ivory));
    says(t, &ivory, NOTHING, RuleId::H26, Outcome::Conditional);
    let lost = with(PartName::Finial, |p| {
        p.material = Some(Material::Ivory);
        p.loss = Some(Loss::Small);
    });
    says(t, &lost, NOTHING, RuleId::H26, Outcome::Barred);
    let bone = with(PartName::Handle, |p| p.material = Some(Material::Bone));
    silent(t, &bone, NOTHING, RuleId::H26);
}

#[test]
fn gilding_recorded_on_a_part_is_protected_while_it_is_there() {
    let gilt = |state| with(PartName::Border, |p| p.gilding = Some(state));
    for t in [Treatment::Clean, Treatment::Foam] {
        for state in [Gilding::Whole, Gilding::Worn] {
            says(t, &gilt(state), NOTHING, RuleId::H05, Outcome::Conditional);
        }
        silent(t, &gilt(Gilding::Gone), NOTHING, RuleId::H05);
    }
    // Traces of old gilding may still contain mercury.
    for state in [Gilding::Whole, Gilding::Gone] {
        says(
            Treatment::Solder,
            &gilt(state),
            NOTHING,
            RuleId::H25,
            Outcome::Barred,
        );
    }
}

#[test]
fn wax_on_a_loaded_stick_is_removed_without_heat() {
    let mut stick = with(PartName::Nozzle, |p| p.wax = Some(true));
    let said = |piece: &Case| {
        let verdicts = check(Treatment::Wash, &situation(piece));
        verdicts
            .iter()
            .any(|v| v.lifted_by == "Remove the wax without heat.")
    };
    assert!(!said(&stick));
    stick.piece.form = Some(Form::Candlestick);
    assert!(said(&stick));
    // Lead does not burst, but it is a filling.
    add(&mut stick, PartName::Base, |p| p.fill = Some(Fill::Lead));
    assert!(said(&stick));
    for part in &mut stick.parts {
        part.wax = None;
    }
    assert!(!said(&stick));
}

#[test]
fn on_loan_everything_except_keeping_needs_both_sides_and_a_conservator() {
    let mut lent = case(&NICKEL, tested);
    lent.aim.loan = true;
    lent.consents.conservator_opinion = true;
    for t in Treatment::ALL {
        let outcome = worst(&check(t, &situation(&lent)));
        match t {
            Treatment::Leave | Treatment::Keeping => assert_eq!(outcome, Outcome::Allowed),
            Treatment::TestLead => assert_eq!(outcome, Outcome::Conditional),
            _ => assert!(outcome >= Outcome::NeedsOpinion, "{}", t.id()),
        }
    }
}

#[test]
fn a_date_too_soon_for_the_work_needs_a_promised_date_first() {
    let said = |until: &str, t: Treatment| {
        let mut dated = case(&NICKEL, tested);
        dated.asked_on = Date::parse("2026-11-30");
        dated.aim.until = Date::parse(until);
        let verdicts = check(t, &situation(&dated));
        let late = verdicts.iter().find(|v| v.reason.contains("wanted by"));
        late.map(|v| v.outcome)
    };
    // Sooner than any workshop, sooner than some, in good time, and past.
    for (until, outcome) in [
        ("2026-12-04", Some(Outcome::NeedsCheck)),
        ("2026-12-20", Some(Outcome::Conditional)),
        ("2027-06-01", None),
        ("2026-11-01", None),
    ] {
        assert_eq!(said(until, Treatment::Dents), outcome, "{until}");
    }
    // Work that the owner does needs no workshop, and a test is never ruled out.
    assert_eq!(said("2026-12-04", Treatment::Clean), None);
    assert_eq!(
        said("2026-12-01", Treatment::TestLead),
        Some(Outcome::Conditional)
    );
    assert_eq!(said("2026-12-01", Treatment::Leave), None);
}

#[test]
fn every_work_that_adds_silver_checks_the_origin_of_the_existing_silver() {
    let fused = case(&FUSED, tested);
    let solid = case(&["M03"], tested);
    for t in [
        Treatment::LocalPlate,
        Treatment::RubOn,
        Treatment::Replate,
        Treatment::Overplate,
    ] {
        says(t, &fused, NOTHING, RuleId::H14, Outcome::Barred);
        says(t, &solid, NOTHING, RuleId::H14, Outcome::Barred);
        silent(t, &case(&NICKEL, tested), NOTHING, RuleId::H14);
    }
}

#[test]
fn a_low_melt_joint_states_the_heat_it_can_bear() {
    let soft = case(&BRITANNIA, tested);
    let said = check(Treatment::LowMelt, &situation(&soft));
    assert!(
        said.iter()
            .any(|v| v.ground == RuleId::H13 && v.reason.contains("90 °C")),
        "{said:?}"
    );
}
