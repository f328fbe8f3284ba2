//! The hard rules. Each bars a treatment, or asks for a check, an opinion or a condition first.
//!
//! Rules are vetoes, never weights. Filters only remove, so what survives does not depend on their
//! order; the order below is that in which reasons are told: people and law, the object destroying
//! itself, ethics and evidence. Invariant: nothing a person enters lifts a rule of safety or law; a
//! conservator's written opinion lifts the rule on original silver, and only to "conditional".

use super::catalogue::Treatment;
use super::situation::{LeadStatus, Situation};
use crate::case::{Doer, Joint};
use crate::identity::Kind;
use crate::maths::sort_short;

/// What a rule says of a treatment, mildest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// Nothing against it.
    Allowed,
    /// Ranked, with conditions.
    Conditional,
    /// A named check comes first.
    NeedsCheck,
    /// A conservator's written opinion comes first.
    NeedsOpinion,
    /// Not this.
    Barred,
}

impl Outcome {
    /// The id used in files.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Allowed => "allowed",
            Self::Conditional => "conditional",
            Self::NeedsCheck => "needs_check",
            Self::NeedsOpinion => "needs_opinion",
            Self::Barred => "barred",
        }
    }

    /// Whether a course holding it can be advised.
    #[must_use]
    pub fn can_be_advised(self) -> bool {
        self <= Self::Conditional
    }
}

/// What one rule says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verdict {
    /// Rule id: `H01` to `H30`, or `needs` for a plain prerequisite.
    pub guard: &'static str,
    /// What follows.
    pub outcome: Outcome,
    /// Why.
    pub reason: String,
    /// What would lift it.
    pub lifted_by: String,
}

/// The gravest outcome of a list of verdicts.
#[must_use]
pub fn worst(verdicts: &[Verdict]) -> Outcome {
    verdicts
        .iter()
        .map(|v| v.outcome)
        .max()
        .unwrap_or(Outcome::Allowed)
}

/// What every rule says of `treatment` in `situation`. Leaving alone and better keeping are never
/// barred, whatever else holds.
#[must_use]
pub fn check(treatment: Treatment, situation: &Situation) -> Vec<Verdict> {
    let mut rules = Rules {
        s: situation,
        found: Vec::new(),
    };
    match treatment {
        Treatment::Leave | Treatment::Keeping | Treatment::TestLead => {}
        Treatment::Wash => rules.wash(),
        Treatment::Clean => rules.clean(),
        Treatment::Dip | Treatment::FoilBath => rules.immersed_cleaning(),
        Treatment::Solder => rules.solder(),
        Treatment::LowMelt => rules.low_melt(),
        Treatment::RemoveLead => rules.remove_lead(),
        Treatment::HardSolder => rules.hard_solder(),
        Treatment::RubOn => rules.rub_on(),
        Treatment::Replate => rules.replate(),
        // In the catalogue, not weighed yet: nothing is advised that no rule has looked at.
        _ => rules.add(
            "needs",
            Outcome::NeedsOpinion,
            "This treatment is not weighed here.",
            "Ask a conservator.",
        ),
    }
    // The gravest first; among equals, the order of the decision.
    sort_short(&mut rules.found, |a, b| b.outcome.cmp(&a.outcome));
    rules.found
}

struct Rules<'a, 'b> {
    s: &'a Situation<'b>,
    found: Vec<Verdict>,
}

impl Rules<'_, '_> {
    fn add(&mut self, guard: &'static str, outcome: Outcome, reason: &str, lifted_by: &str) {
        self.found.push(Verdict {
            guard,
            outcome,
            reason: reason.to_owned(),
            lifted_by: lifted_by.to_owned(),
        });
    }

    fn figure(&self, id: &str) -> f64 {
        self.s.ledger.value(id)
    }

    /// A rule that holds for some kinds, judged on their probability: half or more bars, a tenth or
    /// more asks for the look that would settle it.
    fn on_kinds(&mut self, guard: &'static str, p: f64, reason: &str) {
        if p >= self.figure("guard.kind_barred") {
            self.add(
                guard,
                Outcome::Barred,
                reason,
                "Nothing, if that is what it is. A look that says otherwise would.",
            );
        } else if p >= self.figure("guard.kind_check") {
            let check = format!("Settle what it is first: {}.", self.s.next_look);
            self.add(
                guard,
                Outcome::NeedsCheck,
                &format!("It may be. {reason}"),
                &check,
            );
        }
    }

    fn wash(&mut self) {
        if self.s.case.is_soldered() || self.s.sealed_or_pitch() {
            self.add(
                "H02",
                Outcome::Conditional,
                "Water gets into hollow parts and old seams and stays there.",
                "Never soak it; wipe, then dry at once.",
            );
        }
        if self.s.sealed_or_pitch() {
            self.add(
                "H06",
                Outcome::Conditional,
                "A closed or loaded part can burst or shift when warm.",
                "Keep it cool.",
            );
        }
        if self.s.close_or_french() >= self.figure("guard.kind_check") {
            self.add(
                "H11",
                Outcome::Conditional,
                "If it is iron or steel underneath, water lifts the silver.",
                "A barely damp cloth only; dry at once.",
            );
        }
    }

    fn clean(&mut self) {
        if self.s.body_bleed >= self.figure("guard.bleed_no_clean") {
            self.add(
                "H04",
                Outcome::Barred,
                "So much base metal shows on the body that the silver beside it is nearly through.",
                "Nothing while that much shows.",
            );
        }
        if self.s.lifting_foil() {
            self.add(
                "H04",
                Outcome::Barred,
                "The silver is lifting over rust; rubbing takes it off.",
                "A conservator has made the foil safe.",
            );
        }
        let thin = self.s.worn_through;
        if thin >= self.figure("guard.kind_barred") {
            self.add(
                "H04",
                Outcome::Barred,
                "By what shows, the thinnest silver would not last this cleaning twice over.",
                "A measured thickness that says otherwise.",
            );
        }
        if self.s.gilt() {
            self.add(
                "H05",
                Outcome::Conditional,
                "Rubbing takes gilding off.",
                "Keep off the gilding.",
            );
        }
        if bleeding_edges(self.s) {
            self.add(
                "H04",
                Outcome::Conditional,
                "Copper shows at edges or high points.",
                "Keep off bare edges.",
            );
        }
    }

    fn immersed_cleaning(&mut self) {
        if self.s.case.is_soldered() || self.s.sealed_or_pitch() {
            self.add(
                "H02",
                Outcome::Barred,
                "It has soldered joints or hollow parts; the liquid stays in them.",
                "Nothing.",
            );
        }
        if self.s.body_bleed > 0.0 || bleeding_edges(self.s) {
            self.add(
                "H03",
                Outcome::Barred,
                "It eats base metal wherever that shows.",
                "Nothing while base metal shows.",
            );
        }
        if self.s.sealed_or_pitch() {
            self.add(
                "H06",
                Outcome::Barred,
                "Hot liquid and a closed or loaded part can burst.",
                "Nothing.",
            );
        }
        if self.s.gilt() {
            self.add("H05", Outcome::Barred, "It strips gilding.", "Nothing.");
        }
        self.add(
            "needs",
            Outcome::Barred,
            "Dips and foil baths are not for old plated pieces at home.",
            "A conservator may use a swab on one small place.",
        );
    }

    /// Rules common to every repair that heats metal or disturbs old solder.
    fn lead_work(&mut self) {
        if self.s.lead == LeadStatus::Unknown {
            self.add(
                "H16",
                Outcome::NeedsCheck,
                "Nobody knows yet whether there is lead in it.",
                "Test for lead first.",
            );
        }
        if self.s.lead_suspected() && self.s.case.aim.doer == Some(Doer::Owner) {
            self.add(
                "H17",
                Outcome::Conditional,
                "Heating or filing old solder makes lead fume and dust.",
                "Not at home: a workshop with lead controls does it.",
            );
        }
        if self.s.lead_suspected() && self.s.case.aim.household_child_or_pregnant {
            self.add(
                "H18",
                Outcome::Conditional,
                "A child, or someone pregnant or breast-feeding, lives there.",
                "Not in the home, and nothing unfinished is brought back.",
            );
        }
    }

    fn hot(&mut self) {
        if self.s.sealed_or_pitch() {
            self.add(
                "H06",
                Outcome::Barred,
                "A closed part, or one filled with pitch or something unknown, can burst when heated.",
                "A professional has opened or vented it and told what is inside.",
            );
        }
    }

    fn solder(&mut self) {
        self.lead_work();
        self.hot();
        self.on_kinds(
            "H10",
            self.s.britannia(),
            "Britannia metal melts at about the heat of the solder.",
        );
        self.on_kinds(
            "H11",
            self.s.close_or_french(),
            "Soldering heat lifts the silver, which is held on by tin.",
        );
        let reach = self.s.heat_reach_mm;
        match self.s.nearest_joint_mm() {
            Some(distance) if distance < reach => self.add(
                "H09",
                Outcome::Barred,
                &format!(
                    "Soldering here would carry {} C past the next joint or filled border, {distance} mm away.",
                    self.figure("guard.heat.soft_solder")
                ),
                "A workshop's plan for keeping the heat away.",
            ),
            None if self.s.case.has_seen("C10") || self.s.case.is_soldered() => self.add(
                "H09",
                Outcome::Conditional,
                &format!("Other old joints or fillings within about {reach:.0} mm of the work can open."),
                "Ask how they will be kept cool, and measure the distance.",
            ),
            _ => {}
        }
    }

    fn low_melt(&mut self) {
        self.lead_work();
        let soft = self.s.britannia() + self.s.close_or_french();
        if soft < self.figure("guard.kind_check") {
            self.add("needs", Outcome::Barred, "This repair is for white metal and for close plate; ordinary soft solder serves here.", "A look that says it is white metal or close plate.");
        } else if soft < self.figure("guard.kind_barred") {
            self.add(
                "needs",
                Outcome::NeedsCheck,
                "This repair is for white metal and for close plate, and it may not be either.",
                &format!("Settle what it is first: {}.", self.s.next_look),
            );
        }
        if self.s.close_or_french() >= self.figure("guard.kind_check") {
            self.add(
                "H11",
                Outcome::Conditional,
                "If it is close plate, even this heat lifts the silver.",
                "Glue only, and a conservator's.",
            );
        }
        if self.s.sealed_or_pitch() {
            self.add(
                "H06",
                Outcome::Conditional,
                "A closed or loaded part can burst when heated.",
                "Glue only, unless it has been opened or vented.",
            );
        }
        if self.s.lead == LeadStatus::Present
            && self.s.joint != Some(Joint::NeatRepair)
            && self.s.any_joint(&[Joint::GreyRepair])
        {
            self.add(
                "H13",
                Outcome::Barred,
                "Lead left in the joint makes a repair that opens in boiling water.",
                "The old lead is taken out first.",
            );
        }
        self.add(
            "H13",
            Outcome::Conditional,
            "The joint softens in hot liquid and does not bear load.",
            "For display; nothing hot in it, and never lifted by the repair.",
        );
    }

    fn remove_lead(&mut self) {
        self.lead_work();
        if self.s.case.aim.doer == Some(Doer::Owner) {
            self.add(
                "H23",
                Outcome::Conditional,
                "Never with a flame at home.",
                "A conservator or a workshop with lead controls does it.",
            );
        }
        self.on_kinds(
            "H11",
            self.s.close_or_french(),
            "Making the joint good again takes heat, which lifts the silver.",
        );
        let reason = self.s.any_joint(&[Joint::Open, Joint::Leaking])
            || self.s.case.aim.food
            || self.s.active_corrosion();
        if !reason {
            self.add(
                "H22",
                Outcome::Barred,
                "The old repair is stable and part of the piece's history.",
                "It fails, corrodes, or food has to touch it.",
            );
        }
    }

    fn hard_solder(&mut self) {
        let fused = self.s.original_fused() + self.s.posterior.of(Kind::Rfp);
        let limit = self.figure("guard.h07.bond") - self.figure("guard.h07.margin");
        self.on_kinds(
            "H07",
            fused,
            &format!(
                "Above about {limit:.0} C silver and copper melt into each other where they meet."
            ),
        );
        self.on_kinds(
            "H10",
            self.s.britannia(),
            "Britannia metal melts long before hard solder flows.",
        );
        self.on_kinds(
            "H11",
            self.s.close_or_french(),
            "The silver is held on by tin and comes off.",
        );
        if self.s.lead != LeadStatus::Absent {
            self.add(
                "H08",
                Outcome::Barred,
                "Lead or tin left in the heat eats holes through silver and copper.",
                "A test that finds none.",
            );
        }
        self.hot();
        self.add(
            "H12",
            Outcome::Barred,
            "It burns the plating off all round the joint.",
            "Nothing, where the plating is to be kept.",
        );
    }

    fn rub_on(&mut self) {
        self.add(
            "H27",
            Outcome::Barred,
            "Rub-on silvering is never advised on an old piece; it changes the surface for good.",
            "Nothing. Ask about a removable tint instead.",
        );
    }

    fn replate(&mut self) {
        self.lead_work();
        self.hot();
        self.on_kinds(
            "H11",
            self.s.close_or_french(),
            "The baths and the heat lift the silver off iron or steel.",
        );
        self.on_kinds(
            "H14",
            self.s.posterior.of(Kind::Sil),
            "Solid silver is never plated.",
        );
        let opinion = self.s.case.consents.conservator_opinion;
        let lift = |outcome| {
            if opinion {
                Outcome::Conditional
            } else {
                outcome
            }
        };
        let p = self.s.original_fused();
        let covered = self.s.covered_area;
        if p >= self.figure("guard.h14.p") && covered > self.figure("guard.h14.area") {
            self.add(
                "H14",
                lift(Outcome::Barred),
                &format!(
                    "It is {} fused plate with its own silver on about {:.0} % of it. Replating polishes that away for good.",
                    if p >= 0.5 { "probably" } else { "possibly" },
                    100.0 * covered
                ),
                "A conservator's written opinion.",
            );
        }
        let fused = p + if self.s.replated {
            0.0
        } else {
            self.s.posterior.of(Kind::Rfp)
        };
        let marked = ["M04", "M05", "C13"]
            .iter()
            .any(|id| self.s.case.has_seen(id));
        if (marked && fused >= self.figure("guard.h14.p")) || self.s.case.piece.rare {
            self.add(
                "H14",
                lift(Outcome::NeedsOpinion),
                "It is rare, early, armorial or carries a maker's mark.",
                "A conservator's written opinion.",
            );
        }
        if engraved_in_the_way(self.s) {
            self.add(
                "H30",
                lift(Outcome::NeedsOpinion),
                "Polishing before plating takes engraving and marks with it.",
                "They are masked, and a conservator agrees in writing.",
            );
        }
        if matches!(self.s.joint, Some(Joint::Open | Joint::Leaking)) {
            self.add(
                "needs",
                Outcome::Barred,
                "An open joint takes plating liquid in and never gives it all back.",
                "The joint is repaired first.",
            );
        }
        if self.s.britannia() >= self.figure("guard.kind_check") {
            self.add(
                "H10",
                Outcome::Conditional,
                "Britannia metal is plated by few.",
                "A plater who says they do it, in writing.",
            );
        }
        let c = &self.s.case.consents;
        if !(c.loss && c.photo && c.disclose) {
            self.add(
                "H15",
                Outcome::Conditional,
                "What it takes away does not come back.",
                "You accept the loss, it is photographed first, and it is sold as re-plated.",
            );
        }
    }
}

/// Copper at edges or high points, recorded on a part that stands out.
fn bleeding_edges(s: &Situation) -> bool {
    let none = s.ledger.value("silver.f_none");
    s.case.parts.iter().any(|p| {
        p.name.is_high_point()
            && p.bleed.is_some()
            && crate::silver::bleed_range(p.bleed, s.ledger).likely >= none
    })
}

/// Engraving, arms or marks where the buff would go. Marks sit on the underside unless said.
fn engraved_in_the_way(s: &Situation) -> bool {
    use crate::case::{PartName, Seen};
    use crate::facts::{Place, finding};
    s.case
        .findings
        .iter()
        .filter(|a| a.seen == Seen::Yes)
        .any(|a| {
            let place = finding(a.id).map(|f| f.place);
            match place {
                Some(Place::Shield) => a.part != Some(PartName::Base),
                Some(Place::Marks) if a.id != "M10" => a
                    .part
                    .is_some_and(|p| !matches!(p, PartName::Base | PartName::Interior)),
                _ => false,
            }
        })
}
