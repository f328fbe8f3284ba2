//! Lead: H16, H17, H18 and H23.

use super::RuleCheck;
use crate::ledger::{FindingId, RuleId};
use crate::record::{Fill, FillState, Joint, Lead};
use crate::terms::Treatment;
use crate::treatment::lead::{LeadStatus, lead_filled};
use crate::treatment::touched::touched;

/// Whether the work disturbs metal that may contain lead. Most work does; pushing dents out of plain sheet,
/// and fixing a part in its old seat, do not.
fn disturbs_lead(a: &RuleCheck) -> bool {
    match a.treatment {
        Treatment::Dents => {
            a.s.case.is_soldered()
                || a.s.case.aim.assume_lead
                || a.s.lead_for(Treatment::Dents) == LeadStatus::Present
                || a.s.any_joint(&[Joint::GreyRepair])
                || a.s.case.has_seen(FindingId::C10)
                || a.s.case.has_seen(FindingId::C12)
        }
        Treatment::Mechanical => touched(a.treatment, a.s.case).iter().any(|p| {
            p.has_joint(Joint::GreyRepair)
                || p.lead == Some(Lead::Present)
                || lead_filled(p)
                || p.fill == Some(Fill::Sealed)
                || (p.fill.is_none() && p.fill_state == Some(FillState::Failing))
        }),
        _ => true,
    }
}

/// H16: if it is unknown whether there is lead, the test comes first.
pub(super) fn unknown(a: &mut RuleCheck) {
    if disturbs_lead(a) && a.s.lead_for(a.treatment) == LeadStatus::Unknown {
        a.check_first(
            RuleId::H16,
            "It may contain lead, and no test has settled that yet.",
            "Test for lead first.",
        );
    }
}

/// H17: work that disturbs lead. At home, work that cannot be made safe there is barred, and the rest goes to
/// a workshop; a workshop has lead controls.
pub(super) fn at_home(a: &mut RuleCheck) {
    if !disturbs_lead(a) || !a.s.lead_suspected(a.treatment) {
        return;
    }
    if !a.done_by_owner() {
        // If it is unknown whether there is lead, the test comes first, and its result decides what follows.
        if a.s.lead_for(a.treatment) == LeadStatus::Present {
            a.condition(
                RuleId::H17,
                "It contains lead, or is assumed to.",
                "Leave it to a workshop with lead controls that wipes down and tests at the end.",
            );
        }
        return;
    }
    if matches!(
        a.treatment,
        Treatment::Dents | Treatment::RemoveFill | Treatment::Mechanical | Treatment::Tinning
    ) {
        a.bar(
            RuleId::H17,
            "Working on old solder or filling at home spreads lead.",
            "Leave it to a workshop with lead controls.",
        );
    } else {
        a.condition(
            RuleId::H17,
            "Heating or filing old solder makes lead fume and dust.",
            "Do not do it at home: leave it to a workshop with lead controls.",
        );
    }
}

/// H18: lead work where a child or a pregnant person lives.
pub(super) fn child_at_home(a: &mut RuleCheck) {
    if disturbs_lead(a) && a.s.lead_suspected(a.treatment) && a.child_at_home() {
        a.condition(
            RuleId::H18,
            "A child, or someone pregnant or breast-feeding, lives in the home.",
            "Do none of it in the home, and bring nothing unfinished back.",
        );
    }
}

/// H23: no flame on old solder at home.
pub(super) fn no_flame_at_home(a: &mut RuleCheck) {
    if a.done_by_owner() {
        a.condition(
            RuleId::H23,
            "Nobody should use a flame on it at home.",
            "Leave it to a conservator or a workshop with lead controls.",
        );
    }
}
