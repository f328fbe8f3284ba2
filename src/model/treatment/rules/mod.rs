//! The rule book: the verdict of every hard rule on a treatment in a situation.
//!
//! [`check`] is the single entry point for every treatment and every caller: the weighing, the list of
//! treatments, the sheets, the food page and the plan. Each subject has a separate file; the table below says
//! which rules apply to a treatment. Thresholds are figures of the ledger.
//!
//! Invariants:
//! - Rules are vetoes, never weights. They only take away, so their order changes which reason comes
//!   first, not what is left.
//! - A recorded hazard never makes a verdict milder. Two answers are also reasons for work: a failing
//!   filling or corrosion answers H22, and lead found or assumed answers H16.
//! - Nothing a person enters lifts a rule of safety or law. A conservator's written opinion lifts H14
//!   and H30, and only to a condition.

mod cleaning;
mod deadline;
mod evidence;
mod filling;
pub(crate) mod first;
mod food;
mod heat;
mod law;
mod lead;
mod material;
mod people;
mod plating;
mod repair;
mod rule_check;
mod water;

use self::rule_check::RuleCheck;
use super::situation::Situation;
use super::verdict::Verdict;
use crate::terms::Treatment;

/// A rule looks at the treatment and the situation, and adds a verdict if it applies.
type Rule = fn(&mut RuleCheck);

/// What every rule says of `treatment` in `situation`, the gravest first; among equals, in the order
/// of the decision: people and law, what destroys the object, evidence, food. Leaving alone, better
/// keeping and a test for lead are never barred. Of several pieces every one is asked about, and what is
/// barred for one is barred for the record.
#[must_use]
pub fn check(treatment: Treatment, situation: &Situation) -> Vec<Verdict> {
    if situation.each.is_empty() {
        return check_piece(treatment, situation);
    }
    let mut together = RuleCheck::new(treatment, situation);
    for piece in situation.pieces() {
        for v in check_piece(treatment, piece) {
            together.add(v.ground, v.outcome, &v.reason, &v.lifted_by);
        }
    }
    if matches!(treatment, Treatment::Replate | Treatment::Overplate) {
        plating::one_of_several(&mut together);
    }
    together.verdicts()
}

/// What every rule says of `treatment` on one piece.
fn check_piece(treatment: Treatment, situation: &Situation) -> Vec<Verdict> {
    let mut asked = RuleCheck::new(treatment, situation);
    if !matches!(treatment, Treatment::Leave | Treatment::Keeping) {
        people::on_loan(&mut asked);
        deadline::wanted_back(&mut asked);
    }
    if treatment.alters() {
        law::hallmarked_silver(&mut asked);
    }
    for rule in rules_for(treatment) {
        rule(&mut asked);
    }
    asked.verdicts()
}

/// The rules that apply to a treatment.
#[allow(clippy::too_many_lines)] // the table of the rule book
fn rules_for(treatment: Treatment) -> &'static [Rule] {
    match treatment {
        Treatment::Leave | Treatment::Keeping | Treatment::TestLead => &[],
        Treatment::Wash => &[
            people::ammonia,
            people::solvents,
            people::asbestos_left_alone,
            water::seams_and_hollows,
            water::closed_parts,
            water::close_plate,
            material::water,
            material::liner_out_first,
            water::wax,
        ],
        Treatment::LacquerOff => &[
            people::ammonia,
            people::lacquer_solvents,
            people::solvents,
            material::solvents,
            water::seams_and_hollows,
            water::closed_parts,
            water::close_plate,
            material::water,
            material::liner_out_first,
            water::wax,
        ],
        Treatment::Clean => &[
            cleaning::lacquer_first,
            cleaning::worn_body,
            cleaning::lifting_silver,
            cleaning::thin_silver,
            cleaning::gilding,
            cleaning::dark_work,
            material::polish,
            cleaning::bare_edges,
            water::wax,
        ],
        Treatment::Foam => &[
            people::ammonia,
            cleaning::lacquer_first,
            cleaning::worn_body,
            cleaning::lifting_silver,
            cleaning::thin_silver,
            cleaning::gilding,
            cleaning::dark_work,
            material::polish,
            cleaning::bare_edges,
            water::wax,
            cleaning::shop_polish,
            food::polish_residue,
        ],
        Treatment::Dip | Treatment::FoilBath => &[
            people::ammonia,
            people::dip_fumes,
            water::immersion,
            water::immersed_bare_metal,
            water::hot_immersion,
            water::immersed_gilding,
            material::immersion,
            water::immersed_dark_work,
            water::never_at_home,
        ],
        Treatment::Lacquer => &[
            people::spray_room,
            people::solvents,
            material::solvents,
            material::liner_out_first,
            food::lacquer_in_use,
            cleaning::lacquer_first,
            cleaning::lacquer_over_trouble,
        ],
        Treatment::Dents => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::asbestos_left_alone,
            repair::bending_close_plate,
            repair::dents_in_split_metal,
            repair::dents_under_thin_silver,
            repair::brittle_britannia,
            repair::cold_only,
            material::liner_out_first,
        ],
        Treatment::Solder => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::asbestos_pads,
            heat::cadmium,
            heat::mercury,
            heat::closed_parts,
            heat::britannia,
            heat::close_plate,
            heat::next_joint,
            heat::pitting,
            repair::split_in_no_metal,
            material::heat,
            material::liner_out_first,
        ],
        Treatment::LowMelt => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::asbestos_pads,
            heat::cadmium,
            heat::mercury,
            repair::wrong_metal_for_low_melt,
            repair::low_melt_on_close_plate,
            repair::low_melt_in_closed_parts,
            repair::low_melt_over_lead,
            repair::low_melt_in_use,
            heat::pitting,
            repair::split_in_no_metal,
            material::heat,
            material::liner_out_first,
        ],
        Treatment::RemoveLead => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            lead::no_flame_at_home,
            people::asbestos_pads,
            heat::cadmium,
            heat::mercury,
            heat::closed_parts,
            heat::britannia,
            heat::close_plate,
            heat::next_joint,
            heat::pitting,
            material::heat,
            material::liner_out_first,
            evidence::stable_repair,
        ],
        Treatment::RemoveFill => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            filling::asbestos,
            filling::not_at_home,
            filling::unknown_contents,
            material::heat,
            material::liner_out_first,
            evidence::sound_filling,
        ],
        Treatment::HardSolder => &[
            people::asbestos_pads,
            heat::cadmium,
            heat::mercury,
            heat::fused_bond,
            heat::closed_parts,
            heat::pitting,
            heat::britannia,
            heat::close_plate,
            heat::plating_burns,
            repair::split_in_no_metal,
            material::heat,
        ],
        Treatment::Mechanical => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::asbestos_pads,
            repair::old_holes_only,
            food::glue,
        ],
        Treatment::LocalPlate => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::plating_liquids,
            plating::over_lead,
            plating::flaking_silver,
            material::liner_out_first,
            heat::close_plate,
            evidence::solid_silver,
            evidence::never_silvered,
            evidence::original_silver,
            evidence::rare_or_marked,
            evidence::engraving,
            evidence::new_metal_misleads,
        ],
        Treatment::RubOn => &[
            evidence::rub_on,
            evidence::solid_silver,
            evidence::original_silver,
            evidence::rare_or_marked,
        ],
        Treatment::Toning => &[food::toning, cleaning::tint_over_corrosion],
        Treatment::Replate => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::asbestos_pads,
            people::plating_liquids,
            heat::mercury,
            heat::closed_parts,
            heat::close_plate,
            material::heat,
            material::liner_out_first,
            plating::open_joint,
            plating::open_split,
            plating::britannia,
            evidence::solid_silver,
            evidence::never_silvered,
            evidence::original_silver,
            evidence::rare_or_marked,
            evidence::engraving,
            evidence::what_is_lost,
            food::new_lining,
        ],
        Treatment::Overplate => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::asbestos_pads,
            people::plating_liquids,
            heat::mercury,
            heat::closed_parts,
            heat::close_plate,
            material::heat,
            material::liner_out_first,
            plating::open_joint,
            plating::open_split,
            plating::over_lead,
            plating::lifting_silver,
            plating::flaking_silver,
            plating::britannia,
            evidence::solid_silver,
            evidence::never_silvered,
            evidence::original_silver,
            evidence::rare_or_marked,
            evidence::what_is_lost,
            evidence::new_metal_misleads,
            food::new_lining,
        ],
        Treatment::Tinning => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::asbestos_pads,
            heat::cadmium,
            heat::mercury,
            heat::closed_parts,
            heat::tin_opens_seams,
            heat::britannia,
            heat::close_plate,
            heat::pitting,
            material::heat,
            material::liner_out_first,
            plating::only_over_tin,
            food::new_lining,
        ],
        Treatment::Regild => &[
            lead::unknown,
            lead::at_home,
            lead::child_at_home,
            people::asbestos_pads,
            people::plating_liquids,
            plating::over_mercury_gilding,
            heat::close_plate,
            material::heat,
            material::liner_out_first,
            plating::open_joint,
            plating::open_split,
            plating::only_over_gilding,
            plating::britannia,
            evidence::new_metal_misleads,
            food::new_lining,
        ],
        Treatment::ReplacePart => &[
            law::ivory_and_protected_wood,
            law::ivory_on_the_piece,
            people::asbestos_pads,
            evidence::new_part_passes_for_old,
            food::leaded_casting,
        ],
    }
}

#[cfg(test)]
mod part_tests;
#[cfg(test)]
mod tests;
