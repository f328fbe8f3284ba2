//! Heat: H06 to H12, H24, H25 and H29.

use super::RuleCheck;
use crate::ledger::{FigureId, FindingId, Ledger, RuleId};
use crate::record::{Joint, PartName};
use crate::terms::Kind;
use crate::terms::Treatment;
use crate::treatment::lead::{LeadStatus, lead_filled};
use crate::treatment::limits::{
    bursts, frees_mercury, lifts_foil, opens_seams, pits, within_reach,
};
use crate::treatment::mercury::Mercury;
use crate::treatment::touched::touched;

/// The lowest temperature the work brings to the metal, C; `None` for cold work.
fn process_c(treatment: Treatment, ledger: &Ledger) -> Option<f64> {
    // Limits that a person may lower; the work gets no cooler by that.
    let shipped = |id| Some(Ledger::standard().value(id));
    match treatment {
        Treatment::Solder => Some(ledger.value(FigureId::SOLDER_SAC)),
        Treatment::LowMelt => Some(ledger.value(FigureId::SOLDER_BI_SN)),
        Treatment::RemoveLead => shipped(FigureId::GUARD_HEAT_SOFT_SOLDER),
        Treatment::HardSolder => Some(ledger.value(FigureId::SOLDER_BAG_7)),
        Treatment::Tinning => shipped(FigureId::HEAT_LIMIT_TIN),
        // The hot steps of stripping and plating come close to the boiling point of water.
        Treatment::Replate | Treatment::Overplate => shipped(FigureId::GUARD_H25),
        _ => None,
    }
}

/// H24: old hard solder that may hold cadmium.
pub(super) fn cadmium(a: &mut RuleCheck) {
    if a.circumstances().hard_repair != Some(true) {
        return;
    }
    let reason = "Old hard solder may contain cadmium, whose fume can kill.";
    if a.done_by_owner() {
        a.bar(
            RuleId::H24,
            reason,
            "Leave it to a workshop, after a test that finds no cadmium.",
        );
    } else {
        a.check_first(
            RuleId::H24,
            reason,
            "Get an analysis that finds no cadmium.",
        );
    }
}

/// H25: gilding that may hold mercury.
pub(super) fn mercury(a: &mut RuleCheck) {
    if !process_c(a.treatment, a.s.ledger).is_some_and(|hot| frees_mercury(hot, a.s.ledger)) {
        return;
    }
    match a.s.mercury() {
        Mercury::NoSign => {}
        Mercury::Unlikely => a.check_first(
            RuleId::H25,
            "Gilding may contain mercury, which heat drives off as a poison.",
            "Have the gilding tested for mercury first.",
        ),
        Mercury::Possible | Mercury::Likely => a.bar(
            RuleId::H25,
            "Old gilding may contain mercury, which heat drives off as a poison.",
            "Make sure that the gilding is newer than about 1840 and that a reading finds no mercury.",
        ),
        Mercury::Found => a.bar(
            RuleId::H25,
            "Mercury was found in the silver or gilding, and heat drives it off as a poison.",
            "Nothing lifts this.",
        ),
    }
}

/// H06: a closed or filled part can burst.
pub(super) fn closed_parts(a: &mut RuleCheck) {
    let hot = process_c(a.treatment, a.s.ledger).unwrap_or(f64::INFINITY);
    if a.s.sealed_or_pitch() && bursts(hot, a.s.ledger) {
        a.bar(
            RuleId::H06,
            "A closed part, or one filled with pitch or something unknown, can burst when heated.",
            "Have a professional open or vent it and say what is inside.",
        );
    }
}

/// H07: the bond of fused plate.
pub(super) fn fused_bond(a: &mut RuleCheck) {
    let fused = a.s.original_fused() + a.s.posterior.of(Kind::Rfp);
    let limit = a.figure(FigureId::GUARD_H07_BOND) - a.figure(FigureId::GUARD_H07_MARGIN);
    let reason = format!(
        "Above about {limit:.0} °C, silver and copper melt into each other where they meet."
    );
    a.on_kinds(RuleId::H07, fused, "fused plate", &reason);
}

/// H08: lead or tin is present during heating.
pub(super) fn pitting(a: &mut RuleCheck) {
    let absent = a.s.lead_for(a.treatment) == LeadStatus::Absent;
    if process_c(a.treatment, a.s.ledger).is_some_and(|hot| pits(hot, absent, a.s.ledger)) {
        a.bar(
            RuleId::H08,
            "Lead or tin left in the heat eats holes through silver and copper.",
            "Get a test that finds none of either.",
        );
    }
}

/// H09: the next joint or filling is within the reach of the heat.
pub(super) fn next_joint(a: &mut RuleCheck) {
    let reach = a.s.heat_reach;
    let most = reach.most_mm;
    let in_the_heat = touched(a.treatment, a.s.case);
    let faulty = |name: PartName| in_the_heat.iter().any(|p| p.name == name);
    let filled: Vec<PartName> =
        a.s.case
            .parts
            .iter()
            .filter(|p| lead_filled(p))
            .map(|p| p.name)
            .collect();
    if filled.iter().any(|name| faulty(*name)) {
        a.bar(
            RuleId::H09,
            "The part to be heated is filled with lead, which melts before the joint is made.",
            "Get a workshop's plan for keeping the heat away.",
        );
        return;
    }
    match a.s.nearest_joint_mm() {
        Some(distance) if within_reach(distance, reach.likely_mm) => {
            let reason = format!(
                "Soldering here can carry {} °C past the next joint or filled border, {distance} mm away.",
                a.figure(FigureId::GUARD_HEAT_SOFT_SOLDER)
            );
            a.bar(
                RuleId::H09,
                &reason,
                "Get a workshop's plan for keeping the heat away.",
            );
        }
        None if !filled.is_empty() => {
            let reason = format!("A lead filling within about {most:.0} mm of the work can melt.");
            a.check_first(
                RuleId::H09,
                &reason,
                "Measure how far it is from the joint.",
            );
        }
        Some(distance) if within_reach(distance, most) => {
            let reason = format!(
                "The next joint or filled border is {distance} mm away, and the work at its hottest can open it."
            );
            a.condition(RuleId::H09, &reason, "Ask how it will be kept cool.");
        }
        None if a.s.case.has_seen(FindingId::C10) || a.s.case.is_soldered() => {
            let reason = format!(
                "Other old joints or fillings within about {most:.0} mm of the work can open."
            );
            a.condition(
                RuleId::H09,
                &reason,
                "Ask how they will be kept cool, and measure the distance.",
            );
        }
        _ => {}
    }
}

/// H10: Britannia metal.
pub(super) fn britannia(a: &mut RuleCheck) {
    let reason = match a.treatment {
        Treatment::HardSolder => "Britannia metal melts long before hard solder flows.",
        Treatment::Tinning => "Britannia metal melts at about the same heat as the tin.",
        _ => "Britannia metal melts at about the same heat as the solder.",
    };
    a.on_kinds(RuleId::H10, a.s.britannia(), "Britannia metal", reason);
}

/// H11: close plate and French plate.
pub(super) fn close_plate(a: &mut RuleCheck) {
    let reason = match a.treatment {
        Treatment::Solder => "Tin holds the silver on, and soldering heat lifts it off.",
        Treatment::RemoveLead => "Making the joint good takes heat, which lifts the silver off.",
        Treatment::HardSolder => "Tin holds the silver on, and this heat takes it off.",
        Treatment::Tinning => {
            if !process_c(a.treatment, a.s.ledger).is_some_and(|hot| lifts_foil(hot, a.s.ledger)) {
                return;
            }
            "Tin holds the silver on, and this heat lifts it off."
        }
        _ => "The baths and the heat lift the silver off iron or steel.",
    };
    a.on_kinds(
        RuleId::H11,
        a.s.close_or_french(),
        "close plate or French plate",
        reason,
    );
}

/// H12: hard solder burns the plating off.
pub(super) fn plating_burns(a: &mut RuleCheck) {
    a.bar(
        RuleId::H12,
        "Hard soldering burns the plating off all round the joint.",
        "Nothing lifts this if you want to keep the plating.",
    );
}

/// H29: tinning is hotter than old solder can bear.
pub(super) fn tin_opens_seams(a: &mut RuleCheck) {
    if !process_c(a.treatment, a.s.ledger).is_some_and(|hot| opens_seams(hot, a.s.ledger)) {
        return;
    }
    if a.s.lead_for(a.treatment) == LeadStatus::Present
        || a.s.lead_filled()
        || a.s.any_joint(&[Joint::GreyRepair])
    {
        a.bar(
            RuleId::H29,
            "Tinning is hotter than old tin-lead solder can stand, so the joints open.",
            "Nothing lifts this while old solder is in the part.",
        );
    } else if a.s.case.is_soldered() && a.s.lead_for(a.treatment) != LeadStatus::Absent {
        a.check_first(
            RuleId::H29,
            "Tinning is hotter than old tin-lead solder can stand, and the seams may contain it.",
            "Get a test that finds no lead in the seams.",
        );
    }
}
