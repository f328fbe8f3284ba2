//! Food and drink: H19 and H21, and toning on pieces in use.

use super::RuleCheck;
use crate::ledger::Ground;
use crate::ledger::RuleId;

/// H21: no lacquer on pieces in use.
pub(super) fn lacquer_in_use(a: &mut RuleCheck) {
    if a.in_use() {
        a.bar(
            RuleId::H21,
            "Lacquer does not belong on a piece in use, or anywhere food or drink goes.",
            "Keep the piece for display only.",
        );
    }
}

/// A tint is released into food.
pub(super) fn toning(a: &mut RuleCheck) {
    if a.in_use() {
        a.bar(
            Ground::Need,
            "Toning comes off in use, so it is only for pieces on display.",
            "Keep the piece for display only.",
        );
    }
}

/// H19: polish left on a surface that touches food.
pub(super) fn polish_residue(a: &mut RuleCheck) {
    if a.in_use() {
        a.condition(
            RuleId::H19,
            "Polish left on the surface gets into food.",
            "Keep it off surfaces that touch food.",
        );
    }
}

/// H19: glue.
pub(super) fn glue(a: &mut RuleCheck) {
    if a.in_use() {
        a.condition(
            RuleId::H19,
            "Glue fails when hot and must not touch food.",
            "Use no glue where the piece gets hot, carries weight or touches food.",
        );
    }
}

/// H19: castings with lead.
pub(super) fn leaded_casting(a: &mut RuleCheck) {
    if a.in_use() {
        a.condition(
            RuleId::H19,
            "Castings can contain lead.",
            "Use no casting that contains lead where food goes.",
        );
    }
}

/// H19: new silver or tin does not by itself make a piece fit for food.
pub(super) fn new_lining(a: &mut RuleCheck) {
    if a.s.case.aim.food && !a.s.triggers().is_empty() {
        a.condition(
            RuleId::H19,
            "A new lining or coat does not make it fit for food.",
            "Keep it for display until it passes a laboratory release test.",
        );
    }
}
