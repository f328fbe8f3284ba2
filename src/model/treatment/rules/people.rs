//! People: harm other than lead (H17, H18 and H28), and a loan.

use super::Asked;
use crate::terms::Treatment;
use crate::treatment::verdict::Outcome;

/// H18: solvents where a child or a pregnant person lives.
pub(super) fn solvents(a: &mut Asked) {
    if a.child_at_home() {
        a.condition(
            "H18",
            "Solvent vapour harms children and the unborn.",
            "No solvent in the home.",
        );
    }
}

/// H28: silver with ammonia.
pub(super) fn ammonia(a: &mut Asked) {
    if a.circumstances().ammonia == Some(true) {
        a.bar(
            "H28",
            "Silver with ammonia can form something that explodes when it dries.",
            "Nothing with ammonia comes near it; old bottles stay shut and are collected.",
        );
    }
}

/// H18: what a dip or bath holds or gives off.
pub(super) fn dip_fumes(a: &mut Asked) {
    if a.child_at_home() {
        a.bar(
            "H18",
            "It holds or gives off what harms children and the unborn.",
            "Nothing, in that home.",
        );
    }
}

/// H17: thinners at home.
pub(super) fn spray_room(a: &mut Asked) {
    if a.done_by_owner() {
        a.condition(
            "H17",
            "Thinners catch fire and are bad to breathe.",
            "A workshop with a spray room does it.",
        );
    }
}

/// H17: solvents that take lacquer off, at home.
pub(super) fn lacquer_solvents(a: &mut Asked) {
    if a.done_by_owner() {
        a.condition(
            "H17",
            "What takes lacquer off catches fire and is bad to breathe.",
            "A conservator does it.",
        );
    }
}

/// H17: cyanide in plating liquids.
pub(super) fn plating_liquids(a: &mut Asked) {
    a.condition(
        "H17",
        "Plating liquids can hold cyanide.",
        "A permitted works does it.",
    );
}

/// On loan: both sides and a conservator agree before anything is done. A test for lead is never ruled
/// out, so for a test this is a condition.
pub(super) fn on_loan(a: &mut Asked) {
    if a.s.case.aim.loan {
        let outcome = match a.treatment {
            Treatment::TestLead => Outcome::Conditional,
            _ => Outcome::NeedsOpinion,
        };
        a.add(
            "needs",
            outcome,
            "It is on loan to a museum.",
            "The lender, the borrower and a conservator agree in writing.",
        );
    }
}

/// H17: old pads and rings at a handle.
pub(super) fn asbestos_pads(a: &mut Asked) {
    if a.circumstances().insulator == Some(true) {
        a.check_first(
            "H17",
            "Old pads, rings and cord at a handle may be asbestos.",
            "A licensed analyst has looked.",
        );
    }
}
