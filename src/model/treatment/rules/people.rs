//! People: harm other than lead (H17, H18 and H28), and a loan.

use super::RuleCheck;
use crate::ledger::Ground;
use crate::ledger::RuleId;
use crate::terms::Outcome;
use crate::terms::Treatment;

/// H18: solvents where a child or a pregnant person lives.
pub(super) fn solvents(a: &mut RuleCheck) {
    if a.child_at_home() {
        a.condition(
            RuleId::H18,
            "Solvent vapour harms children and the unborn.",
            "Use no solvent in the home.",
        );
    }
}

/// H28: ammonia on silver.
pub(super) fn ammonia(a: &mut RuleCheck) {
    if a.circumstances().ammonia == Some(true) {
        a.bar(
            RuleId::H28,
            "Silver with ammonia can form something that explodes when it dries.",
            "Keep everything with ammonia away from it, and have old bottles collected unopened.",
        );
    }
}

/// H18: what a dip or bath contains or gives off.
pub(super) fn dip_fumes(a: &mut RuleCheck) {
    if a.child_at_home() {
        a.bar(
            RuleId::H18,
            "It contains or gives off substances that harm children and the unborn.",
            "Nothing lifts this in that home.",
        );
    }
}

/// H17: thinners at home.
pub(super) fn spray_room(a: &mut RuleCheck) {
    if a.done_by_owner() {
        a.condition(
            RuleId::H17,
            "Thinners catch fire and are bad to breathe.",
            "Leave it to a workshop with a spray room.",
        );
    }
}

/// H17: solvents that remove lacquer, at home.
pub(super) fn lacquer_solvents(a: &mut RuleCheck) {
    if a.done_by_owner() {
        a.condition(
            RuleId::H17,
            "The solvents that take lacquer off catch fire and are bad to breathe.",
            "Leave it to a conservator.",
        );
    }
}

/// H17: cyanide in plating liquids.
pub(super) fn plating_liquids(a: &mut RuleCheck) {
    a.condition(
        RuleId::H17,
        "Plating liquids can contain cyanide.",
        "Leave it to a plating works with a permit.",
    );
}

/// On loan: both sides and a conservator must agree before anything is done. A test for lead is never ruled
/// out, so for a test this is only a condition.
pub(super) fn on_loan(a: &mut RuleCheck) {
    if a.s.case.aim.loan {
        let outcome = match a.treatment {
            Treatment::TestLead => Outcome::Conditional,
            _ => Outcome::NeedsOpinion,
        };
        a.add(
            Ground::Need,
            outcome,
            "It is on loan to a museum.",
            "Get the lender, the borrower and a conservator to agree in writing.",
        );
    }
}

/// H17: old pads and rings at a handle, where work leaves the handle alone.
pub(super) fn asbestos_left_alone(a: &mut RuleCheck) {
    if a.circumstances().insulator == Some(true) {
        a.condition(
            RuleId::H17,
            "Old pads, rings and cord at a handle may be asbestos.",
            "Leave them where they are, and nobody scrubs, files or drills them.",
        );
    }
}

/// H17: old pads and rings at a handle that has to come off, or that heat reaches.
pub(super) fn asbestos_pads(a: &mut RuleCheck) {
    if a.circumstances().insulator == Some(true) {
        a.check_first(
            RuleId::H17,
            "Old pads, rings and cord at a handle may be asbestos.",
            "Have a licensed analyst examine it first.",
        );
    }
}
