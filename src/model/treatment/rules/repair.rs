//! Dents, low-melt repairs and cold fixes: H06, H10, H11, H13 and their prerequisites.

use super::Asked;
use crate::record::Joint;
use crate::treatment::lead::LeadStatus;
use crate::treatment::touched::{is_cracked, is_open, is_split};

/// H11: bending lifts the silver off iron.
pub(super) fn bending_close_plate(a: &mut Asked) {
    a.on_kinds(
        "H11",
        a.s.close_or_french(),
        "Bending iron or steel lifts the silver off it.",
    );
}

/// Split metal goes on splitting.
pub(super) fn dents_in_split_metal(a: &mut Asked) {
    if a.s.case.parts.iter().any(is_split) {
        a.bar(
            "needs",
            "Metal that has split goes on splitting when it is pushed.",
            "The split is mended first.",
        );
    }
}

/// Silver that is nearly through does not bear pushing, unless the piece is plated anew afterwards.
pub(super) fn dents_under_thin_silver(a: &mut Asked) {
    if a.s.to_be_plated {
        return;
    }
    if a.s.worn_through >= a.figure("guard.kind_barred")
        || a.s.body_bleed >= a.figure("guard.bleed_no_clean")
    {
        a.bar(
            "needs",
            "The silver over the dent is nearly through and would not bear it.",
            "A measured thickness that says otherwise.",
        );
    }
}

/// H10: tired Britannia metal cracks.
pub(super) fn brittle_britannia(a: &mut Asked) {
    if a.may_be(a.s.britannia()) {
        a.condition(
            "H10",
            "Britannia metal cracks when it is tired.",
            "Somebody used to pewter does it.",
        );
    }
}

/// H06: dents are cold work.
pub(super) fn cold_only(a: &mut Asked) {
    let reason = if a.s.sealed_or_pitch() {
        "A closed or filled part can burst when warmed, and a filled mount can crack."
    } else {
        "Heat would open joints and spoil the bond of silver and base."
    };
    a.condition("H06", reason, "Cold only.");
}

/// A low-melt repair is for white metal and close plate.
pub(super) fn wrong_metal_for_low_melt(a: &mut Asked) {
    let soft = a.s.britannia() + a.s.close_or_french();
    if soft < a.figure("guard.kind_check") {
        a.bar(
            "needs",
            "This repair is for white metal and for close plate; ordinary soft solder serves here.",
            "A look that says it is white metal or close plate.",
        );
    } else if soft < a.figure("guard.kind_barred") {
        let next = format!("Settle what it is first: {}.", a.s.next_look);
        a.check_first(
            "needs",
            "This repair is for white metal and for close plate, and it may not be either.",
            &next,
        );
    }
}

/// H11: even low heat lifts the silver of close plate.
pub(super) fn low_melt_on_close_plate(a: &mut Asked) {
    if a.may_be(a.s.close_or_french()) {
        a.condition(
            "H11",
            "If it is close plate, even this heat lifts the silver.",
            "Glue only, and a conservator's.",
        );
    }
}

/// H06: a closed part.
pub(super) fn low_melt_in_closed_parts(a: &mut Asked) {
    if a.s.sealed_or_pitch() {
        a.condition(
            "H06",
            "A closed or loaded part can burst when heated.",
            "Glue only, unless it has been opened or vented.",
        );
    }
}

/// H13: lead left in the joint.
pub(super) fn low_melt_over_lead(a: &mut Asked) {
    if a.s.lead_for(a.treatment) == LeadStatus::Present
        && a.s.joint != Some(Joint::NeatRepair)
        && a.s.any_joint(&[Joint::GreyRepair])
    {
        a.bar(
            "H13",
            "Lead left in the joint makes a repair that opens in boiling water.",
            "The old lead is taken out first.",
        );
    }
}

/// H13: nothing hot afterwards.
pub(super) fn low_melt_in_use(a: &mut Asked) {
    a.condition(
        "H13",
        &format!(
            "The joint bears no load and nothing hotter than about {:.0} C.",
            a.figure("guard.h13")
        ),
        "For display; nothing hot in it, and never lifted by the repair.",
    );
}

/// A split in wood, ivory or the like is not a metalworker's: solder does not hold it.
pub(super) fn split_in_no_metal(a: &mut Asked) {
    let parts = &a.s.case.parts;
    let Some(what) = (parts.iter().find(|p| is_cracked(p))).and_then(|p| p.material) else {
        return;
    };
    let reason = format!(
        "The split is in {}, which solder does not mend.",
        what.label().to_lowercase()
    );
    if parts.iter().any(|p| is_open(p) || is_split(p)) {
        a.condition(
            "needs",
            &reason,
            "That split is left, or goes to a conservator.",
        );
    } else {
        a.bar(
            "needs",
            &reason,
            "Nothing. A pin or glue, a new part or a conservator answers it.",
        );
    }
}

/// A new hole cannot be undone.
pub(super) fn old_holes_only(a: &mut Asked) {
    a.condition(
        "needs",
        "A new hole is for ever.",
        "Only holes and seats that are there already.",
    );
}
