//! Cleaning and what is laid over a clean surface: H04, H05, and the prerequisites of lacquer and
//! toning.

use super::Asked;
use crate::record::{Joint, Lacquer};
use crate::terms::Treatment;
use crate::treatment::situation::Situation;

/// Whether base metal shows on a part that stands out.
pub(super) fn edges_are_bare(s: &Situation) -> bool {
    let none = s.ledger.value("silver.f_none");
    s.case.parts.iter().any(|p| {
        p.name.is_high_point()
            && p.bleed.is_some()
            && crate::silver::bleed_range(p.bleed, s.ledger).likely >= none
    })
}

/// Broken lacquer comes off before anything is cleaned or lacquered again.
pub(super) fn lacquer_first(a: &mut Asked) {
    let broken = |l: Option<Lacquer>| matches!(l, Some(Lacquer::Broken | Lacquer::Yellowed));
    if !a.s.lacquer_off && a.s.case.parts.iter().any(|p| broken(p.lacquer)) {
        let reason = if a.treatment == Treatment::Lacquer {
            "A new coat over old, broken lacquer traps the tarnish under it."
        } else {
            "Old lacquer lies over the tarnish and keeps the cleaning off it."
        };
        a.bar("needs", reason, "The old lacquer is taken off first.");
    }
}

/// H04: the body is worn through in places.
pub(super) fn worn_body(a: &mut Asked) {
    if a.s.body_bleed >= a.figure("guard.bleed_no_clean") {
        a.bar(
            "H04",
            "So much base metal shows on the body that the silver beside it is nearly through.",
            "Nothing while that much shows.",
        );
    }
}

/// H04: foil that lifts, or rust under it.
pub(super) fn lifting_silver(a: &mut Asked) {
    if a.s.lifting_foil() {
        a.bar(
            "H04",
            "The silver is lifting over rust; rubbing takes it off.",
            "A conservator has made the foil safe.",
        );
    }
}

/// H04: the thinnest silver does not last the planned cleanings twice over.
pub(super) fn thin_silver(a: &mut Asked) {
    if a.s.worn_through >= a.figure("guard.kind_barred") {
        a.bar(
            "H04",
            "By what shows, the thinnest silver would not last this cleaning twice over.",
            "A measured thickness that says otherwise.",
        );
    }
}

/// H05: gilding.
pub(super) fn gilding(a: &mut Asked) {
    if a.s.gilt() {
        a.condition("H05", "Rubbing takes gilding off.", "Keep off the gilding.");
    }
}

/// H05: black inlay and metal darkened on purpose.
pub(super) fn dark_work(a: &mut Asked) {
    if a.circumstances().dark_work == Some(true) {
        a.condition(
            "H05",
            "Black inlay and metal darkened on purpose come off with the tarnish.",
            "Keep off them.",
        );
    }
}

/// H04: bare edges and high points.
pub(super) fn bare_edges(a: &mut Asked) {
    if edges_are_bare(a.s) {
        a.condition(
            "H04",
            "Copper shows at edges or high points.",
            "Keep off bare edges.",
        );
    }
}

/// H04: shop polish takes more silver than chalk.
pub(super) fn shop_polish(a: &mut Asked) {
    a.condition(
        "H04",
        "Shop polish cuts faster than chalk.",
        "Use one made for silver alone, and as seldom as can be.",
    );
}

/// Lacquer seals trouble in, and pulls at silver that lifts.
pub(super) fn lacquer_over_trouble(a: &mut Asked) {
    if a.s.any_joint(&[Joint::Leaking]) || a.s.active_corrosion() {
        a.bar(
            "needs",
            "Lacquer over a weeping seam or active corrosion seals the trouble in.",
            "The seam is dry and the corrosion has stopped.",
        );
    }
    if a.s.lifting_foil() {
        a.bar(
            "needs",
            "The silver is lifting; the pull of lacquer takes it off.",
            "A conservator has made it safe.",
        );
    }
}

/// A tint hides corrosion that goes on.
pub(super) fn tint_over_corrosion(a: &mut Asked) {
    if a.s.active_corrosion() {
        a.check_first(
            "needs",
            "Corrosion goes on unseen under a tint.",
            "A conservator has stopped it.",
        );
    }
}
