//! Law: H26 on protected materials and H31 on hallmarked silver.

use super::RuleCheck;
use crate::ledger::{RuleId, signs};
use crate::record::{Loss, Material};
use crate::terms::Kind;

/// H26: a new part of ivory or a protected wood.
pub(super) fn ivory_and_protected_wood(a: &mut RuleCheck) {
    let lost_ivory = a.s.case.parts.iter().any(|p| {
        p.material == Some(Material::Ivory) && matches!(p.loss, Some(Loss::Small | Loss::Large))
    });
    if a.circumstances().protected_part == Some(true) || lost_ivory {
        a.bar(
            RuleId::H26,
            "Most places forbid using or trading ivory and protected woods.",
            "Use another material.",
        );
    }
}

/// H26: ivory already on the piece.
pub(super) fn ivory_on_the_piece(a: &mut RuleCheck) {
    if a.s.ivory() {
        a.condition(
            RuleId::H26,
            "It has ivory on it, and many countries restrict or ban dealing in ivory, old or new.",
            "Ask before you sell it or send it abroad; the law where you live decides.",
        );
    }
}

/// H31: changing or adding to hallmarked silver. Asked of every treatment that [alters](crate::terms::Treatment::alters).
pub(super) fn hallmarked_silver(a: &mut RuleCheck) {
    if a.may_be(a.s.posterior.of_any(&[Kind::Sil, Kind::Wst]))
        || a.s.case.has_seen_any(&signs::HALLMARKS)
    {
        a.condition(
            RuleId::H31,
            "Changing or adding to hallmarked silver may need an assay office's consent.",
            "Ask first; the law where you live decides.",
        );
    }
}
