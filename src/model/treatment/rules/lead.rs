//! Lead: H16, H17, H18 and H23.

use super::Asked;
use crate::terms::Treatment;
use crate::treatment::situation::LeadStatus;

/// H16: where nobody knows about lead, the test comes first.
pub(super) fn unknown(a: &mut Asked) {
    if a.s.lead == LeadStatus::Unknown {
        a.check_first(
            "H16",
            "Nobody knows yet whether there is lead in it.",
            "Test for lead first.",
        );
    }
}

/// H17: lead work at home. Work that a home cannot be made safe for is barred; the rest goes to a
/// workshop.
pub(super) fn at_home(a: &mut Asked) {
    if !(a.s.lead_suspected() && a.done_by_owner()) {
        return;
    }
    if matches!(
        a.treatment,
        Treatment::Dents | Treatment::RemoveFill | Treatment::Mechanical | Treatment::Tinning
    ) {
        a.bar(
            "H17",
            "Working on old solder or filling at home spreads lead.",
            "A workshop with lead controls does it.",
        );
    } else {
        a.condition(
            "H17",
            "Heating or filing old solder makes lead fume and dust.",
            "Not at home: a workshop with lead controls does it.",
        );
    }
}

/// H18: lead work where a child or a pregnant person lives.
pub(super) fn child_at_home(a: &mut Asked) {
    if a.s.lead_suspected() && a.child_at_home() {
        a.condition(
            "H18",
            "A child, or someone pregnant or breast-feeding, lives there.",
            "Not in the home, and nothing unfinished is brought back.",
        );
    }
}

/// H23: no flame on old solder at home.
pub(super) fn no_flame_at_home(a: &mut Asked) {
    if a.done_by_owner() {
        a.condition(
            "H23",
            "Never with a flame at home.",
            "A conservator or a workshop with lead controls does it.",
        );
    }
}
