//! Law: H26 on protected materials and H31 on hallmarked silver.

use super::Asked;
use crate::terms::Kind;

/// H26: ivory and protected woods.
pub(super) fn ivory_and_protected_wood(a: &mut Asked) {
    if a.circumstances().protected_part == Some(true) {
        a.bar(
            "H26",
            "Ivory and protected woods may not be used, nor traded, in most places.",
            "Another material.",
        );
    }
}

/// H31: changing or adding to hallmarked silver.
pub(super) fn hallmarked_silver(a: &mut Asked) {
    if a.may_be(a.s.posterior.of_any(&[Kind::Sil, Kind::Wst])) || a.s.case.has_seen("M03") {
        a.condition(
            "H31",
            "Changing or adding to hallmarked silver may need an assay office's consent.",
            "Ask first; the law where you live decides.",
        );
    }
}
