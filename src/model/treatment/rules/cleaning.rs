//! Cleaning, and coats over a clean surface: H04, H05, and the prerequisites of lacquer and toning.

use super::{RuleCheck, first};
use crate::ledger::Ground;
use crate::ledger::{FigureId, RuleId};
use crate::record::{Joint, Lacquer};
use crate::terms::Treatment;
use crate::treatment::situation::Situation;

/// Whether base metal shows on a part with edges or high points.
pub(super) fn edges_are_bare(s: &Situation) -> bool {
    let none = s.ledger.value(FigureId::SILVER_F_NONE);
    s.case.parts.iter().any(|p| {
        p.name.is_high_point()
            && p.bleed.is_some()
            && crate::silver::bleed_range(p.bleed, s.ledger).likely >= none
    })
}

/// Broken lacquer is removed before the piece is cleaned or lacquered again.
pub(super) fn lacquer_first(a: &mut RuleCheck) {
    let broken = |l: Option<Lacquer>| matches!(l, Some(Lacquer::Broken | Lacquer::Yellowed));
    if !a.s.lacquer_off && a.s.case.parts.iter().any(|p| broken(p.lacquer)) {
        let reason = if a.treatment == Treatment::Lacquer {
            "A new coat over old, broken lacquer traps the tarnish under it."
        } else {
            "Old lacquer covers the tarnish and keeps the polish off it."
        };
        a.bar(
            Ground::Need,
            reason,
            "Have the old lacquer taken off first.",
        );
    }
}

/// H04: the body is worn through in places.
pub(super) fn worn_body(a: &mut RuleCheck) {
    if a.s.body_bleed >= a.figure(FigureId::GUARD_BLEED_NO_CLEAN) {
        a.bar(
            RuleId::H04,
            "So much base metal shows on the body that the silver beside it is nearly worn through.",
            "Nothing lifts this while so much base metal shows.",
        );
    }
}

/// H04: foil that lifts, or rust under it.
pub(super) fn lifting_silver(a: &mut RuleCheck) {
    if a.s.lifting_foil() {
        a.bar(
            RuleId::H04,
            "The silver is lifting over rust, and rubbing takes it off.",
            "Have a conservator secure the silver first.",
        );
    }
}

/// H04: the thinnest silver does not last twice the planned cleanings.
pub(super) fn thin_silver(a: &mut RuleCheck) {
    if a.s.worn_through >= a.figure(FigureId::GUARD_KIND_BARRED) {
        a.bar(
            RuleId::H04,
            "The thinnest silver is unlikely to last through twice this much cleaning.",
            "Have the silver measured, to see whether it is thicker.",
        );
    }
}

/// H05: gilding.
pub(super) fn gilding(a: &mut RuleCheck) {
    if a.s.gilt() {
        a.condition(
            RuleId::H05,
            "Rubbing takes off gilding.",
            "Keep off the gilding.",
        );
    }
}

/// H05: black inlay and deliberately darkened metal.
pub(super) fn dark_work(a: &mut RuleCheck) {
    if a.circumstances().dark_work == Some(true) {
        a.condition(
            RuleId::H05,
            "Polish takes off black inlay and deliberate darkening along with the tarnish.",
            "Keep off both.",
        );
    }
}

/// H04: bare edges and high points.
pub(super) fn bare_edges(a: &mut RuleCheck) {
    if edges_are_bare(a.s) {
        a.condition(
            RuleId::H04,
            "Base metal shows at edges or high points.",
            "Keep off bare edges.",
        );
    }
}

/// H04: shop polish takes more silver than chalk.
pub(super) fn shop_polish(a: &mut RuleCheck) {
    a.condition(
        RuleId::H04,
        "Shop polish cuts faster than chalk.",
        "Use one made for silver only, as seldom as you can.",
    );
}

/// Lacquer seals problems in and pulls at lifting silver.
pub(super) fn lacquer_over_trouble(a: &mut RuleCheck) {
    if a.s.any_joint(&[Joint::Leaking]) || a.s.active_corrosion() {
        a.bar_first(first::LACQUERED_TROUBLE);
    }
    if a.s.lifting_foil() {
        a.bar(
            Ground::Need,
            "The silver is lifting, and lacquer pulls it off.",
            "Have a conservator secure it first.",
        );
    }
}

/// A tint hides active corrosion.
pub(super) fn tint_over_corrosion(a: &mut RuleCheck) {
    if a.s.active_corrosion() {
        a.check_first(
            Ground::Need,
            "Corrosion goes on unseen under a tint.",
            "Have a conservator stop the corrosion first.",
        );
    }
}
