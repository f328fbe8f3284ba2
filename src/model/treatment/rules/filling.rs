//! Fillings of bases, borders and handles: H06, H17 and H23.

use super::RuleCheck;
use crate::ledger::{FindingId, RuleId};
use crate::record::{Fill, FillState};
use crate::treatment::situation::Situation;

/// A part with unknown contents: closed, with a failing filling that is not identified, or assumed to be
/// loaded.
fn contents_unknown(s: &Situation) -> bool {
    let unnamed = s.case.parts.iter().all(|p| p.fill.is_none());
    s.loading_assumed()
        || (s.sealed_or_pitch() && unnamed)
        || s.case.parts.iter().any(|p| {
            p.fill == Some(Fill::Sealed)
                || (p.fill.is_none() && p.fill_state == Some(FillState::Failing))
        })
}

/// H17: asbestos in fillings and pads.
pub(super) fn asbestos(a: &mut RuleCheck) {
    let pads = a.circumstances().insulator == Some(true);
    if pads || (a.s.case.has_seen(FindingId::C12) && contents_unknown(a.s)) {
        a.check_first(
            RuleId::H17,
            "Some old fillings and pads are asbestos.",
            "Have a licensed analyst examine it first.",
        );
    }
}

/// H23: fillings are never melted out at home.
pub(super) fn not_at_home(a: &mut RuleCheck) {
    if a.done_by_owner() {
        a.bar(
            RuleId::H23,
            "Nobody should melt or burn out a filling at home.",
            "Leave it to a conservator or a workshop with extraction.",
        );
    }
}

/// H06: an unidentified filling stays closed.
pub(super) fn unknown_contents(a: &mut RuleCheck) {
    if contents_unknown(a.s) {
        a.check_first(
            RuleId::H06,
            "We do not know what is inside it, and heat can burst it.",
            "Have the filling identified, without opening or heating it.",
        );
    }
}
