//! Evidence and honesty: H14, H15, H22, H27 and H30.

use super::RuleCheck;
use crate::ledger::Ground;
use crate::ledger::{FigureId, FindingId, Place, RuleId, signs};
use crate::record::{FillState, Joint, Part, PartName, Repair, Seen};
use crate::terms::Kind;
use crate::terms::Outcome;
use crate::terms::Treatment;
use crate::terms::{at_most, small};
use crate::treatment::limits::own_silver;
use crate::treatment::situation::Situation;

/// A conservator's written opinion turns any verdict into a condition.
fn unless_opinion(a: &RuleCheck, outcome: Outcome) -> Outcome {
    if a.s.case.consents.conservator_opinion {
        Outcome::Conditional
    } else {
        outcome
    }
}

/// H14: solid silver is never plated.
pub(super) fn solid_silver(a: &mut RuleCheck) {
    let p = a.s.posterior.of_any(&[Kind::Sil, Kind::Wst]);
    a.on_kinds(
        RuleId::H14,
        p,
        "solid silver",
        "Solid silver should never be plated.",
    );
}

/// New silver makes no sense on metal that was never silvered.
pub(super) fn never_silvered(a: &mut RuleCheck) {
    a.on_kinds(
        Ground::Need,
        a.s.never_silvered(),
        "plain metal that was never plated",
        "Metal that never carried silver has none to renew.",
    );
}

/// H14, first limb: fused plate that still carries its own silver. The rule is silent only if enough of the
/// piece was looked at.
pub(super) fn original_silver(a: &mut RuleCheck) {
    let p = a.s.original_fused();
    let covered = a.s.covered_area;
    if own_silver(p, covered, a.s.ledger) {
        let harm = match a.treatment {
            Treatment::Replate => "Replating polishes that away for good.",
            _ => "New silver hides that for good.",
        };
        let likely = if p >= 0.5 { "probably" } else { "possibly" };
        a.add(
            RuleId::H14,
            unless_opinion(a, Outcome::Barred),
            &format!(
                "It is {likely} fused plate, with its own silver on {} of it. {harm}",
                at_most(covered)
            ),
            "Get a conservator's written opinion.",
        );
    } else if p >= a.figure(FigureId::GUARD_H14_P)
        && a.s.looked_at < a.figure(FigureId::GUARD_H14_LOOKED)
    {
        let part = a.s.largest_unseen.map_or_else(
            || "the rest of it".to_owned(),
            |part| format!("the {}", small(part.label())),
        );
        a.add(
            RuleId::H14,
            unless_opinion(a, Outcome::NeedsCheck),
            "It may be fused plate, and you have looked at too little of it to say that its silver is gone.",
            &format!("Look at {part}."),
        );
    }
}

/// H14, second limb: rare, early, armorial or marked, whatever the area.
pub(super) fn rare_or_marked(a: &mut RuleCheck) {
    let replated = if a.s.replated {
        0.0
    } else {
        a.s.posterior.of(Kind::Rfp)
    };
    let fused = a.s.original_fused() + replated;
    let marked = a.s.case.has_seen_any(&signs::KEEP_AS_IT_IS);
    if (marked && fused >= a.figure(FigureId::GUARD_H14_P)) || a.s.case.piece.rare {
        a.add(
            RuleId::H14,
            unless_opinion(a, Outcome::NeedsOpinion),
            "It is rare or early, bears arms, or carries a maker's mark.",
            "Get a conservator's written opinion.",
        );
    }
}

/// H30: engraving, arms and marks in the path of the buff.
pub(super) fn engraving(a: &mut RuleCheck) {
    if engraved_in_the_way(a.s) {
        a.add(
            RuleId::H30,
            unless_opinion(a, Outcome::NeedsOpinion),
            "Polishing before plating wears away engraving and marks.",
            "Have them masked, and get a conservator's agreement in writing.",
        );
    }
}

/// Marks are on the underside unless the answer names a part.
fn engraved_in_the_way(s: &Situation) -> bool {
    s.case
        .findings
        .iter()
        .filter(|answer| answer.seen == Seen::Yes)
        .any(|answer| match answer.id.fact().place {
            Place::Shield => answer.part != Some(PartName::Base),
            Place::Marks if answer.id != FindingId::M10 => answer
                .part
                .is_some_and(|p| !matches!(p, PartName::Base | PartName::Interior)),
            _ => false,
        })
}

/// H15: removing material needs consent, photographs and disclosure at sale.
pub(super) fn what_is_lost(a: &mut RuleCheck) {
    let c = &a.s.case.consents;
    if !(c.loss && c.photo && c.disclose) {
        a.condition(
            RuleId::H15,
            "What this takes away cannot be put back.",
            "Accept the loss, have it photographed first, and sell it as re-plated.",
        );
    }
}

/// H15: new silver or gold is disclosed.
pub(super) fn new_metal_misleads(a: &mut RuleCheck) {
    if a.s.case.consents.disclose {
        return;
    }
    let (reason, lifted_by) = match a.treatment {
        Treatment::Regild => (
            "New gilding can mislead a later buyer.",
            "Have it photographed first, and sell it as re-gilt.",
        ),
        _ => (
            "New silver can mislead a later buyer.",
            "Have it photographed first, and sell it as re-plated.",
        ),
    };
    a.condition(RuleId::H15, reason, lifted_by);
}

/// H15: a new part is marked as new.
pub(super) fn new_part_passes_for_old(a: &mut RuleCheck) {
    a.condition(
        RuleId::H15,
        "A new part can pass for old.",
        "Have it marked as new, with no mark copied.",
    );
}

/// H22: a stable old repair stays unless it fails, corrodes, or food has to touch it.
pub(super) fn stable_repair(a: &mut RuleCheck) {
    let reason = a.s.any_joint(&[Joint::Open, Joint::Leaking])
        || a.s.case.aim.food
        || a.s.active_corrosion()
        || a.s
            .case
            .parts
            .iter()
            .any(|p| p.repair == Some(Repair::Failing));
    if !reason {
        a.bar(
            RuleId::H22,
            "The old repair is stable and part of the piece's history.",
            "It may come off only if it fails, corrodes or has to touch food.",
        );
    }
}

/// H22: a sound filling stays.
pub(super) fn sound_filling(a: &mut RuleCheck) {
    let failing = |p: &Part| p.fill_state == Some(FillState::Failing);
    let failing = a.s.case.parts.iter().any(failing);
    if !failing {
        a.bar(
            RuleId::H22,
            "A sound filling belongs to the piece, and in a stamped border it supports thin silver.",
            "It may come out only if it leaks, swells, corrodes or works loose.",
        );
    }
}

/// H27: rub-on silvering.
pub(super) fn rub_on(a: &mut RuleCheck) {
    a.bar(
        RuleId::H27,
        "We never advise rub-on silver on an old piece, because it changes the surface for good.",
        "Nothing lifts this. Ask about a removable tint instead.",
    );
}
