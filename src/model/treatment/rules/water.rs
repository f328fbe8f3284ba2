//! Water and immersion: H02, H03, H05, H06 and H11 for washing, dips and baths.

use super::RuleCheck;
use super::cleaning::edges_are_bare;
use crate::ledger::Ground;
use crate::ledger::{FigureId, RuleId};

/// H02: seams and hollow parts hold water.
pub(super) fn seams_and_hollows(a: &mut RuleCheck) {
    if a.s.case.is_soldered() || a.s.sealed_or_pitch() || a.s.may_be_hollow() {
        a.condition(
            RuleId::H02,
            "Water gets into hollow parts and old seams and stays there.",
            "Never soak it; wipe it, then dry it at once.",
        );
    }
}

/// H06: warmth bursts or shifts a closed or loaded part.
pub(super) fn closed_parts(a: &mut RuleCheck) {
    if a.s.sealed_or_pitch() {
        a.condition(
            RuleId::H06,
            "A closed or loaded part can burst or shift when warm.",
            "Keep it cool.",
        );
    }
}

/// H06: candle wax on a loaded stick.
pub(super) fn wax(a: &mut RuleCheck) {
    if a.s.wax_on_loading() {
        a.condition(
            RuleId::H06,
            "It has candle wax on it, and warmth shifts or bursts the filling.",
            "Remove the wax without heat.",
        );
    }
}

/// H11: rust under the silver.
pub(super) fn close_plate(a: &mut RuleCheck) {
    if a.may_be(a.s.close_or_french()) {
        a.condition(
            RuleId::H11,
            "If it is iron or steel underneath, water lifts the silver.",
            "Use only a barely damp cloth, and dry it at once.",
        );
    }
}

/// H02: nothing soldered or hollow is immersed.
pub(super) fn immersion(a: &mut RuleCheck) {
    if a.s.case.is_soldered() || a.s.sealed_or_pitch() || a.s.hollow() {
        a.bar(
            RuleId::H02,
            "It has soldered joints or hollow parts, and liquid stays in them.",
            "Nothing lifts this.",
        );
    }
}

/// H03: a dip or bath eats bare base metal.
pub(super) fn immersed_bare_metal(a: &mut RuleCheck) {
    if a.s.body_bleed >= a.figure(FigureId::SILVER_F_NONE) || edges_are_bare(a.s) {
        a.bar(
            RuleId::H03,
            "The liquid eats base metal wherever it shows.",
            "Nothing lifts this while base metal shows.",
        );
    }
}

/// H06: hot liquid on a closed or loaded part.
pub(super) fn hot_immersion(a: &mut RuleCheck) {
    if a.s.sealed_or_pitch() {
        a.bar(
            RuleId::H06,
            "A closed or loaded part can burst in hot liquid.",
            "Nothing lifts this.",
        );
    }
}

/// H05: gilding.
pub(super) fn immersed_gilding(a: &mut RuleCheck) {
    if a.s.gilt() {
        a.bar(
            RuleId::H05,
            "The liquid strips gilding.",
            "Nothing lifts this.",
        );
    }
}

/// H05: black inlay and deliberately darkened metal.
pub(super) fn immersed_dark_work(a: &mut RuleCheck) {
    if a.circumstances().dark_work == Some(true) {
        a.bar(
            RuleId::H05,
            "The liquid destroys black inlay and metal darkened on purpose.",
            "Nothing lifts this.",
        );
    }
}

/// Dips and baths are never for these pieces.
pub(super) fn never_at_home(a: &mut RuleCheck) {
    a.bar(
        Ground::Need,
        "Dips and foil baths are not for old plated pieces at home.",
        "A conservator may use a swab on one small place.",
    );
}
