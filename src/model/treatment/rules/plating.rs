//! Prerequisites of new silver or tin.

use super::{RuleCheck, first};
use crate::ledger::Ground;
use crate::ledger::{FindingId, RuleId};
use crate::record::{Interior, Joint, Relation};
use crate::terms::Outcome;
use crate::terms::Treatment;
use crate::treatment::lead::LeadStatus;
use crate::treatment::mercury::Mercury;
use crate::treatment::touched::is_split;
use crate::treatment::{Fault, Faults, Situation};

/// An open joint lets plating liquid in.
pub(super) fn open_joint(a: &mut RuleCheck) {
    if matches!(a.s.joint, Some(Joint::Open | Joint::Leaking)) {
        a.bar_first(first::OPEN_JOINT);
    }
}

/// A split in metal lets plating liquid in, as an open joint does.
pub(super) fn open_split(a: &mut RuleCheck) {
    if a.s.case.parts.iter().any(is_split) {
        a.bar_first(first::PLATED_SPLIT);
    }
}

/// A pair or set of which some pieces would be plated and others not.
pub(super) fn one_of_several(a: &mut RuleCheck) {
    let bare = |s: &&Situation| Faults::of(s.case, s.ledger).has(Fault::BareMetal);
    let worn = a.s.each.iter().filter(bare).count();
    let belong = matches!(a.s.case.pieces.relation, Relation::Pair | Relation::Set);
    if belong && worn > 0 && worn < a.s.each.len() {
        a.condition(
            Ground::Need,
            "Base metal shows on some of the pieces only. Plated by themselves they will not match the others.",
            "Have all of them plated, or none.",
        );
    }
}

/// Silver does not hold over lead.
pub(super) fn over_lead(a: &mut RuleCheck) {
    if a.s.lead_for(a.treatment) == LeadStatus::Present {
        let lifted_by = match a.treatment {
            Treatment::LocalPlate => "Have the lead taken out, or the patch kept clear of it.",
            _ => "Have the lead taken out or sealed first.",
        };
        a.bar(
            Ground::Need,
            "Silver does not stick to lead or solder.",
            lifted_by,
        );
    }
}

/// New silver lifts together with the old.
pub(super) fn lifting_silver(a: &mut RuleCheck) {
    if a.s.lifting_foil() {
        a.bar(
            Ground::Need,
            "The old silver is lifting, and new silver would lift with it.",
            "Nothing lifts this while the silver is loose.",
        );
    }
}

/// New silver does not adhere to plate that flakes or is pitted.
pub(super) fn flaking_silver(a: &mut RuleCheck) {
    if a.s.case.has_seen(FindingId::S09) {
        a.bar(
            Ground::Need,
            "The old plate does not hold, so new silver over it would not hold either.",
            "Nothing lifts this while the plate flakes.",
        );
    }
}

/// H10: Britannia metal in a plating works.
pub(super) fn britannia(a: &mut RuleCheck) {
    if a.may_be(a.s.britannia()) {
        a.condition(
            RuleId::H10,
            "Few platers take on Britannia metal.",
            "Find a plater who says in writing that they do.",
        );
    }
}

/// H25: gilding that was probably applied with mercury needs a conservator.
pub(super) fn over_mercury_gilding(a: &mut RuleCheck) {
    if a.s.mercury() == Mercury::Found {
        a.bar(
            RuleId::H25,
            "Mercury was found in the silver or gilding.",
            "Nothing lifts this.",
        );
    } else if a.circumstances().fire_gilding != Some(false) {
        let outcome = if a.s.case.consents.conservator_opinion {
            Outcome::Conditional
        } else {
            Outcome::NeedsOpinion
        };
        a.add(
            RuleId::H25,
            outcome,
            "Old gilding may contain mercury.",
            "Have a conservator examine it and agree in writing.",
        );
    }
}

/// Only a piece that was gilt before should be gilded again.
pub(super) fn only_over_gilding(a: &mut RuleCheck) {
    if !a.s.was_gilt() {
        a.check_first(
            Ground::Need,
            "Only a piece that was gilt before should be gilded again.",
            "Check what lines the inside.",
        );
    }
}

/// Only a piece that was tinned before should be tinned again.
pub(super) fn only_over_tin(a: &mut RuleCheck) {
    match a.s.interior() {
        Some(Interior::Silvered | Interior::Gilt) => a.bar(
            Ground::Need,
            "The lining is silver or gold, and tin would spoil it.",
            "Nothing lifts this while that lining is whole.",
        ),
        Some(Interior::Tinned | Interior::Bare) => {}
        Some(Interior::Lacquered) | None => a.check_first(
            Ground::Need,
            "Only a piece that was tinned before should be tinned again.",
            "Check what lines the inside.",
        ),
    }
}
