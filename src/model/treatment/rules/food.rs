//! Food and drink: H19 and H21, and toning on pieces in use.

use super::Asked;

/// H21: no lacquer on what is in use.
pub(super) fn lacquer_in_use(a: &mut Asked) {
    if a.in_use() {
        a.bar(
            "H21",
            "Lacquer has no place where food or drink goes, or on a piece in use.",
            "It becomes a piece for display.",
        );
    }
}

/// A tint comes off into food.
pub(super) fn toning(a: &mut Asked) {
    if a.in_use() {
        a.bar(
            "needs",
            "Toning is for pieces on display: it comes off in use.",
            "It becomes a piece for display.",
        );
    }
}

/// H19: polish left on a surface that touches food.
pub(super) fn polish_residue(a: &mut Asked) {
    if a.in_use() {
        a.condition(
            "H19",
            "What is left of it gets into food.",
            "Keep it off surfaces that touch food.",
        );
    }
}

/// H19: glue.
pub(super) fn glue(a: &mut Asked) {
    if a.in_use() {
        a.condition(
            "H19",
            "Glue fails when hot and must not touch food.",
            "No glue on what is hot, carries weight or touches food.",
        );
    }
}

/// H19: castings with lead.
pub(super) fn leaded_casting(a: &mut Asked) {
    if a.in_use() {
        a.condition(
            "H19",
            "Castings can hold lead.",
            "No casting with lead where food goes.",
        );
    }
}

/// H19: new silver or tin does not by itself make a piece fit for food.
pub(super) fn new_lining(a: &mut Asked) {
    if a.s.case.aim.food && !a.s.triggers().is_empty() {
        a.condition(
            "H19",
            "A new lining or coat does not make it fit for food.",
            "For display until a laboratory release test passes.",
        );
    }
}
