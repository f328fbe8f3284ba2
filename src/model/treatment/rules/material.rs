//! Parts that are not metal, and loose liners: the effects of water, polish, heat and solvents on them (H02,
//! H05, and prerequisites of a work).

use super::RuleCheck;
use crate::ledger::Ground;
use crate::ledger::RuleId;
use crate::record::{Liner, Material, Part, PartName};

/// Materials that are not metal, grouped by what harms them.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stuff {
    /// Wood, ivory, horn, bone and shell.
    Organic,
    /// Composition and early plastic.
    Composition,
    /// Glass that is fixed to the piece.
    Glass,
}

fn stuff_of(part: &Part) -> Option<Stuff> {
    match part.material? {
        Material::Wood | Material::Ivory | Material::Horn | Material::Bone => Some(Stuff::Organic),
        Material::Composition => Some(Stuff::Composition),
        Material::Glass if !stands_loose(part) => Some(Stuff::Glass),
        Material::Glass | Material::Metal | Material::Unknown => None,
    }
}

fn has(a: &RuleCheck, stuff: Stuff) -> bool {
    (stuff == Stuff::Organic && a.circumstances().organic == Some(true))
        || a.s.case.parts.iter().any(|p| stuff_of(p) == Some(stuff))
}

/// Liners and bottles are loose and lift out.
fn stands_loose(part: &Part) -> bool {
    matches!(part.name, PartName::Liner | PartName::Bottle)
}

/// H02: water.
pub(super) fn water(a: &mut RuleCheck) {
    if has(a, Stuff::Organic) {
        a.condition(
            RuleId::H02,
            "Wood, ivory, horn and shell swell and crack when wet.",
            "Keep them dry.",
        );
    }
    if has(a, Stuff::Composition) {
        a.condition(
            RuleId::H02,
            "Composition and early plastic cloud and soften when wet or warm.",
            "Keep them dry and cool.",
        );
    }
    if has(a, Stuff::Glass) {
        a.condition(
            RuleId::H02,
            "Glass cracks when its temperature changes suddenly.",
            "Put nothing hot or icy on it.",
        );
    }
}

/// H02: a dip or bath.
pub(super) fn immersion(a: &mut RuleCheck) {
    if has(a, Stuff::Organic) {
        a.bar(
            RuleId::H02,
            "The liquid spoils wood, ivory, horn and shell.",
            "Nothing lifts this.",
        );
    }
    if has(a, Stuff::Composition) {
        a.bar(
            RuleId::H02,
            "The liquid spoils composition and early plastic.",
            "Nothing lifts this.",
        );
    }
}

/// H05: polish.
pub(super) fn polish(a: &mut RuleCheck) {
    if has(a, Stuff::Organic) || has(a, Stuff::Composition) {
        a.condition(
            RuleId::H05,
            "Polish stains and scratches wood, ivory, horn, shell and early plastic.",
            "Keep it off them.",
        );
    }
}

/// Heat, and the baths of a plating works.
pub(super) fn heat(a: &mut RuleCheck) {
    let harmed = [
        (
            Stuff::Organic,
            "Wood, ivory, horn and shell char and crack in heat and swell in a bath.",
        ),
        (
            Stuff::Composition,
            "Composition and early plastic melt or catch fire in heat.",
        ),
        (Stuff::Glass, "Glass cracks in heat."),
    ];
    for (stuff, reason) in harmed {
        if has(a, stuff) {
            a.condition(
                Ground::Need,
                reason,
                "Have that part taken off first by someone who can put it back.",
            );
        }
    }
}

/// Solvents.
pub(super) fn solvents(a: &mut RuleCheck) {
    if has(a, Stuff::Organic) {
        a.condition(
            Ground::Need,
            "Solvent strips the finish from wood and dries out ivory, horn and shell.",
            "Keep it off them.",
        );
    }
    if has(a, Stuff::Composition) {
        a.condition(
            Ground::Need,
            "Solvent dissolves some early plastics.",
            "Keep it off them.",
        );
    }
}

/// A loose liner or bottle is taken out before any work.
pub(super) fn liner_out_first(a: &mut RuleCheck) {
    let parts = &a.s.case.parts;
    let glass = |p: &Part| {
        p.liner == Some(Liner::Glass) || (stands_loose(p) && p.material == Some(Material::Glass))
    };
    let metal = |p: &Part| {
        p.liner == Some(Liner::Metal)
            || (p.name == PartName::Liner && p.material != Some(Material::Glass))
    };
    if parts.iter().any(glass) {
        a.condition(
            Ground::Need,
            "A loose glass breaks when the piece is worked on.",
            "Take the glass out first.",
        );
    } else if parts.iter().any(metal) {
        a.condition(
            Ground::Need,
            "Water and heat get trapped behind a liner.",
            "Take the liner out first.",
        );
    }
}
