//! The cautions that go with a case: those of every treatment named, and those of the hazards in it.
//!
//! Invariant: a hazard more never takes a caution away.

use super::wording::caution_list as words;
use crate::ledger::{CautionText, Level, caution};
use crate::record::Joint;
use crate::report::CautionReport;
use crate::small::sort_short;
use crate::treatment::{LeadStatus, Situation, Treatment};

/// Agents that call for the block on children and pregnancy.
const CHILD_AGENTS: [&str; 6] = [
    "lead", "cadmium", "mercury", "thiourea", "solvent", "cyanide",
];

/// Every caution for the treatments named and the hazards of the case, the gravest first.
pub fn cautions_for(named: &[Treatment], situation: &Situation) -> Vec<CautionReport> {
    let mut list = Vec::new();
    if situation.active_corrosion() {
        add(
            &mut list,
            "caution.corrosion",
            Level::Stop,
            words::CORROSION,
        );
    }
    if situation.lead_suspected() {
        let level = if situation.case.aim.food && situation.lead != LeadStatus::Absent {
            Level::Stop
        } else {
            Level::Care
        };
        add(&mut list, "caution.lead", level, words::LEAD);
    }
    if situation.sealed_or_pitch() {
        add(&mut list, "caution.sealed", Level::Care, words::SEALED);
    }
    if situation.gilt() || situation.case.has_seen("P14") {
        add(&mut list, "caution.mercury", Level::Care, words::MERCURY);
    }
    if situation.any_joint(&[Joint::NeatRepair]) {
        add(
            &mut list,
            "caution.cadmium",
            Level::Care,
            words::SILVER_SOLDER,
        );
    }
    if situation.body_bleed >= situation.ledger.value("silver.f_none") || any_bleed(situation) {
        add(
            &mut list,
            "caution.bare_edges",
            Level::Care,
            words::BARE_METAL,
        );
    }
    for t in named {
        let id = format!("caution.{}", t.id());
        if let Some(text) = caution(&id) {
            list.push(report(text, text.level, t.name()));
        }
    }
    let agents = named
        .iter()
        .filter_map(|t| caution(&format!("caution.{}", t.id())))
        .flat_map(|c| c.agents.iter());
    if agents.into_iter().any(|a| CHILD_AGENTS.contains(a)) {
        let level = if situation.case.aim.household_child_or_pregnant {
            Level::Stop
        } else {
            Level::Care
        };
        add(&mut list, "caution.child", level, words::CHILDREN);
    }
    sort_short(&mut list, |a, b| a.level.cmp(&b.level));
    list
}

fn any_bleed(situation: &Situation) -> bool {
    let none = situation.ledger.value("silver.f_none");
    situation.case.parts.iter().any(|p| {
        p.bleed.is_some() && crate::silver::bleed_range(p.bleed, situation.ledger).likely >= none
    })
}

fn add(list: &mut Vec<CautionReport>, id: &str, level: Level, about: &str) {
    if let Some(text) = caution(id) {
        list.push(report(text, level.min(text.level), about));
    }
}

fn report(text: &CautionText, level: Level, about: &str) -> CautionReport {
    CautionReport {
        id: text.id.to_owned(),
        level,
        about: about.to_owned(),
        text: text.text.to_owned(),
    }
}
