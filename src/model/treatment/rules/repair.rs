//! Dents, low-melt repairs and cold fixes: H06, H10, H11, H13 and their prerequisites.

use super::{RuleCheck, first};
use crate::ledger::Ground;
use crate::ledger::{FigureId, Ledger, RuleId};
use crate::record::Joint;
use crate::terms::small;
use crate::treatment::lead::LeadStatus;
use crate::treatment::touched::{is_cracked, is_open, is_split};

/// H11: bending lifts silver from iron.
pub(super) fn bending_close_plate(a: &mut RuleCheck) {
    a.on_kinds(
        RuleId::H11,
        a.s.close_or_french(),
        "close plate or French plate",
        "Bending the metal lifts the silver off it.",
    );
}

/// A split grows when the metal is pushed.
pub(super) fn dents_in_split_metal(a: &mut RuleCheck) {
    if a.s.case.parts.iter().any(is_split) {
        a.bar_first(first::PUSHED_SPLIT);
    }
}

/// Silver that is nearly worn through cannot bear pushing, unless the piece is replated afterwards.
pub(super) fn dents_under_thin_silver(a: &mut RuleCheck) {
    if a.s.to_be_plated {
        return;
    }
    if a.s.worn_through >= a.figure(FigureId::GUARD_KIND_BARRED)
        || a.s.body_bleed >= a.figure(FigureId::GUARD_BLEED_NO_CLEAN)
    {
        a.bar_first(first::WORN_SKIN);
    }
}

/// H10: fatigued Britannia metal cracks.
pub(super) fn brittle_britannia(a: &mut RuleCheck) {
    if a.may_be(a.s.britannia()) {
        a.condition(
            RuleId::H10,
            "Tired Britannia metal cracks when it is pushed.",
            "Give it to someone who works with pewter.",
        );
    }
}

/// H06: dents are removed cold.
pub(super) fn cold_only(a: &mut RuleCheck) {
    let reason = if a.s.sealed_or_pitch() {
        "A closed or filled part can burst when warmed, and a filled mount can crack."
    } else {
        "Heat would open joints and spoil the bond between silver and base metal."
    };
    a.condition(RuleId::H06, reason, "Have it done cold.");
}

/// A low-melt repair is for white metal and close plate.
pub(super) fn wrong_metal_for_low_melt(a: &mut RuleCheck) {
    let soft = a.s.britannia() + a.s.close_or_french();
    // Here a lower threshold would be milder, so a person's own value does not count.
    let shipped = |id| Ledger::standard().value(id);
    if soft < shipped(FigureId::GUARD_KIND_CHECK) {
        a.bar(
            Ground::Need,
            "This repair is for white metal and close plate; ordinary soft solder does the job here.",
            "Nothing lifts this unless a closer look finds white metal or close plate.",
        );
    } else if soft < shipped(FigureId::GUARD_KIND_BARRED) {
        let next = format!("Find out what it is, starting with: {}.", a.s.next_look);
        a.check_first(
            Ground::Need,
            "This repair is for white metal and close plate, and the piece may be neither.",
            &next,
        );
    }
}

/// H11: even low heat lifts the silver of close plate.
pub(super) fn low_melt_on_close_plate(a: &mut RuleCheck) {
    if a.may_be(a.s.close_or_french()) {
        a.condition(
            RuleId::H11,
            "If it is close plate, even this heat lifts the silver.",
            "Use glue only, and a conservator to apply it.",
        );
    }
}

/// H06: a closed part.
pub(super) fn low_melt_in_closed_parts(a: &mut RuleCheck) {
    if a.s.sealed_or_pitch() {
        a.condition(
            RuleId::H06,
            "A closed or loaded part can burst when heated.",
            "Use glue only, unless it has been opened or vented.",
        );
    }
}

/// H13: lead left in the joint.
pub(super) fn low_melt_over_lead(a: &mut RuleCheck) {
    if a.s.lead_for(a.treatment) == LeadStatus::Present
        && a.s.joint != Some(Joint::NeatRepair)
        && a.s.any_joint(&[Joint::GreyRepair])
    {
        let (reason, lifted_by) = first::LEAD_LEFT;
        a.bar(RuleId::H13, reason, lifted_by);
    }
}

/// H13: no heat afterwards.
pub(super) fn low_melt_in_use(a: &mut RuleCheck) {
    a.condition(
        RuleId::H13,
        &format!(
            "The joint can carry no load and stand nothing hotter than about {:.0} °C.",
            a.figure(FigureId::GUARD_H13)
        ),
        "Keep it for display, put nothing hot in it, and never lift it by the repair.",
    );
}

/// A split in wood, ivory or the like is not a metalworker's job: solder does not hold there.
pub(super) fn split_in_no_metal(a: &mut RuleCheck) {
    let parts = &a.s.case.parts;
    let Some(what) = (parts.iter().find(|p| is_cracked(p))).and_then(|p| p.material) else {
        return;
    };
    let reason = format!(
        "The split is in {}, which solder does not mend.",
        small(what.label())
    );
    if parts.iter().any(|p| is_open(p) || is_split(p)) {
        a.condition(
            Ground::Need,
            &reason,
            "Leave that split, or take it to a conservator.",
        );
    } else {
        a.bar(
            Ground::Need,
            &reason,
            "Nothing lifts this. Ask about a pin, glue or a new part, or ask a conservator.",
        );
    }
}

/// A new hole cannot be undone.
pub(super) fn old_holes_only(a: &mut RuleCheck) {
    a.condition(
        Ground::Need,
        "A new hole is permanent.",
        "Use only the holes and seats that are already there.",
    );
}
