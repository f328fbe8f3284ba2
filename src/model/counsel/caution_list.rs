//! The cautions for a case: those of every treatment named, and those of the hazards in it.
//!
//! Invariant: an additional hazard never removes a caution.

use super::wording::caution_list as words;
use crate::ledger::{CautionText, FigureId, Level, caution};
use crate::record::Joint;
use crate::report::CautionReport;
use crate::terms::ShortSort;
use crate::treatment::{Mercury, Situation, Treatment};

/// Every caution for the treatments named and the hazards recorded, the most serious first.
#[must_use]
pub fn cautions_for(named: &[Treatment], situation: &Situation) -> Vec<CautionReport> {
    let mut list: Vec<CautionReport> = hazards(situation)
        .into_iter()
        .filter_map(|(id, level, about)| {
            caution(id).map(|text| report(text, level.min(text.level), about))
        })
        .collect();
    list.extend(named.iter().filter_map(|t| of_treatment(*t)));
    let child = situation.case.aim.household_child_or_pregnant;
    list.extend(for_children(named, child));
    list.order_by_key(|a| a.level);
    list
}

/// The caution of a treatment; `None` where it has none.
#[must_use]
pub fn of_treatment(treatment: Treatment) -> Option<CautionReport> {
    let text = caution(&["caution.", treatment.id()].concat())?;
    Some(report(text, text.level, treatment.name()))
}

/// The caution on children and pregnancy, where one of the treatments sets free what it warns of: as serious as
/// the ledger says, and the most serious where a child or a pregnant person lives in the household.
#[must_use]
pub fn for_children(named: &[Treatment], child: bool) -> Option<CautionReport> {
    let text = caution("caution.child")?;
    let agents = |t: &Treatment| caution(&["caution.", t.id()].concat()).map(|c| &c.agents);
    let mut agents = named.iter().filter_map(agents).flatten();
    let level = if child { Level::Stop } else { Level::Care };
    let level = level.min(text.level);
    let is_called_for = agents.any(|agent| text.agents.contains(agent));
    is_called_for.then(|| report(text, level, words::CHILDREN))
}

/// The hazards recorded, each with the id of its caution, its level here and its subject.
fn hazards(s: &Situation) -> Vec<(&'static str, Level, &'static str)> {
    let answers = &s.case.circumstances;
    let yes = |answer: Option<bool>| answer == Some(true);
    let lead_level = if s.case.aim.food && !s.release().passed() {
        Level::Stop
    } else {
        Level::Care
    };
    let cadmium_level = if yes(answers.hard_repair) {
        Level::Stop
    } else {
        Level::Care
    };
    let mercury_level = if s.mercury() >= Mercury::Likely {
        Level::Stop
    } else {
        Level::Care
    };
    let wax_level = if s.wax_on_loading() {
        Level::Stop
    } else {
        Level::Care
    };
    let neat = s.any_joint(&[Joint::NeatRepair]);
    let bare = s.body_bleed >= s.ledger.value(FigureId::SILVER_F_NONE) || any_bleed(s);
    [
        (
            s.active_corrosion(),
            "caution.corrosion",
            Level::Stop,
            words::CORROSION,
        ),
        (
            s.lead_suspected_anywhere(),
            "caution.lead",
            lead_level,
            words::LEAD,
        ),
        (
            s.sealed_or_pitch(),
            "caution.sealed",
            Level::Care,
            words::SEALED,
        ),
        (
            s.mercury() != Mercury::NoSign,
            "caution.mercury",
            mercury_level,
            words::MERCURY,
        ),
        (
            neat || yes(answers.hard_repair),
            "caution.cadmium",
            cadmium_level,
            words::SILVER_SOLDER,
        ),
        (
            yes(answers.insulator),
            "caution.asbestos",
            Level::Stop,
            words::ASBESTOS,
        ),
        (
            yes(answers.ammonia),
            "caution.ammonia",
            Level::Stop,
            words::AMMONIA,
        ),
        (bare, "caution.bare_edges", Level::Care, words::BARE_METAL),
        (
            s.case.aim.dishwasher,
            "caution.dishwasher",
            Level::Stop,
            words::DISHWASHER,
        ),
        (s.case.aim.damp, "caution.damp", Level::Care, words::DAMP),
        (s.wax(), "caution.wax", wax_level, words::WAX),
        (s.ivory(), "caution.ivory", Level::Care, words::IVORY),
    ]
    .into_iter()
    .filter(|(holds, ..)| *holds)
    .map(|(_, id, level, about)| (id, level, about))
    .collect()
}

/// Ids of the cautions of the recorded hazards that concern this treatment.
#[must_use]
pub fn hazards_of(treatment: Treatment, situation: &Situation) -> Vec<&'static str> {
    let speaks =
        |id: &str| caution(id).is_some_and(|text| text.treatments.contains(&treatment.id()));
    hazards(situation)
        .into_iter()
        .map(|(id, ..)| id)
        .filter(|id| speaks(id))
        .collect()
}

fn any_bleed(situation: &Situation) -> bool {
    let none = situation.ledger.value(FigureId::SILVER_F_NONE);
    situation.case.parts.iter().any(|p| {
        p.bleed.is_some() && crate::silver::bleed_range(p.bleed, situation.ledger).likely >= none
    })
}

fn report(text: &CautionText, level: Level, about: &str) -> CautionReport {
    CautionReport {
        id: text.id.to_owned(),
        level,
        about: about.to_owned(),
        text: text.text.to_owned(),
    }
}
