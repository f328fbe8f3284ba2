//! The hard rules beyond those the weighing needs: for the treatments that are listed but not
//! weighed, and those that turn on what only the page of all treatments asks.
//!
//! Apart from `guards` so that the program that answers need not hold it; nothing here is asked while
//! courses are weighed. Same invariants: vetoes, never weights; a rule more never makes a verdict
//! milder; nothing a person enters lifts a rule of safety or law.

use super::circumstances::Circumstances;
use super::guards::{Outcome, Verdict, check, child_at_home, lead_unknown, on_kinds};
use super::limits::{bursts, frees_mercury, lifts_foil, opens_seams, pits};
use super::situation::{LeadStatus, Situation};
use crate::record::{Dents, Doer, Fill, Goal, Interior, Joint};
use crate::small::sort_short;
use crate::terms::Treatment;

/// What every rule says of a treatment: those of [`check`] and those that live here. The gravest
/// first.
#[must_use]
pub fn check_fully(treatment: Treatment, s: &Situation, c: &Circumstances) -> Vec<Verdict> {
    let mut rules = Rules {
        s,
        c,
        found: borrowed(treatment, s),
    };
    match treatment {
        Treatment::Leave | Treatment::Keeping | Treatment::TestLead => return Vec::new(),
        Treatment::Wash => rules.wash(),
        Treatment::Clean => rules.dark_work(),
        Treatment::Foam => rules.foam(),
        Treatment::Dip | Treatment::FoilBath => rules.immersed(),
        Treatment::Lacquer => rules.lacquer(),
        Treatment::Dents => rules.dents(),
        Treatment::RemoveFill => rules.remove_fill(),
        Treatment::Mechanical => rules.mechanical(),
        Treatment::LocalPlate => rules.local_plate(),
        Treatment::Solder
        | Treatment::LowMelt
        | Treatment::RemoveLead
        | Treatment::HardSolder
        | Treatment::RubOn => {}
        Treatment::Toning => rules.toning(),
        Treatment::Replate => rules.food_stays_barred(),
        Treatment::Overplate => rules.overplate(),
        Treatment::Tinning => rules.tinning(),
        Treatment::LacquerOff => rules.solvents(),
        Treatment::Regild => rules.lead_work(),
        Treatment::ReplacePart => rules.replace_part(),
    }
    rules.heat(treatment);
    let mut found = rules.found;
    sort_short(&mut found, |a, b| b.outcome.cmp(&a.outcome));
    found
}

/// How hot the work makes the metal, C, where it heats it at all: the least it can be.
#[must_use]
pub fn process_c(treatment: Treatment, s: &Situation) -> Option<f64> {
    match treatment {
        Treatment::Solder => Some(s.ledger.value("solder.sac")),
        Treatment::LowMelt => Some(s.ledger.value("solder.bi_sn")),
        Treatment::RemoveLead => Some(s.ledger.value("guard.heat.soft_solder")),
        Treatment::HardSolder => Some(s.ledger.value("solder.BAg-7")),
        Treatment::Tinning => Some(s.ledger.value("heat.limit.tin")),
        _ => None,
    }
}

/// Verdicts of the weighed rules: a treatment's own, or those of the one it shares its dangers with.
fn borrowed(treatment: Treatment, s: &Situation) -> Vec<Verdict> {
    match treatment {
        Treatment::Foam => check(Treatment::Clean, s),
        Treatment::LocalPlate => from_replating(s, &["H14", "H16", "H17", "H18", "H30"]),
        Treatment::Overplate => from_replating(
            s,
            &[
                "H06", "H10", "H11", "H14", "H15", "H16", "H17", "H18", "H25", "needs",
            ],
        ),
        t if Treatment::WEIGHED.contains(&t) || Treatment::NEVER.contains(&t) => check(t, s),
        _ => Vec::new(),
    }
}

fn from_replating(s: &Situation, guards: &[&str]) -> Vec<Verdict> {
    let mut found = check(Treatment::Replate, s);
    found.retain(|v| guards.contains(&v.guard));
    for v in &mut found {
        v.reason = v.reason.replace(
            "Replating polishes that away for good.",
            "New silver over it hides that for good.",
        );
    }
    found
}

struct Rules<'a, 'b> {
    s: &'a Situation<'b>,
    c: &'a Circumstances,
    found: Vec<Verdict>,
}

impl Rules<'_, '_> {
    fn add(&mut self, guard: &'static str, outcome: Outcome, reason: &str, lifted_by: &str) {
        self.take(Some(Verdict::new(guard, outcome, reason, lifted_by)));
    }

    /// What is borrowed from another treatment may say the same.
    fn take(&mut self, verdict: Option<Verdict>) {
        self.found
            .extend(verdict.filter(|verdict| !self.found.contains(verdict)));
    }

    fn owner(&self) -> bool {
        self.s.case.aim.doer == Some(Doer::Owner)
    }

    fn in_use(&self) -> bool {
        self.s.case.aim.food || self.s.case.aim.goal == Some(Goal::KeepUse)
    }

    fn on_kinds(&mut self, guard: &'static str, p: f64, reason: &str) {
        self.take(on_kinds(self.s, guard, p, reason));
    }

    /// H08, H24 and H25, for everything that heats the metal, and H29 for tinning.
    fn heat(&mut self, treatment: Treatment) {
        let Some(hot) = process_c(treatment, self.s) else {
            return;
        };
        let ledger = self.s.ledger;
        if self.c.hard_repair == Some(true) {
            let (outcome, lifted_by) = if self.owner() {
                (
                    Outcome::Barred,
                    "A workshop does it, after a test that finds none.",
                )
            } else {
                (Outcome::NeedsCheck, "An analysis that finds no cadmium.")
            };
            self.add(
                "H24",
                outcome,
                "Old hard solder may hold cadmium, whose fume can kill.",
                lifted_by,
            );
        }
        if self.c.fire_gilding == Some(true) && frees_mercury(hot, ledger) {
            self.add(
                "H25",
                Outcome::Barred,
                "Heat drives mercury out of old gilding as poison.",
                "A reading that finds no mercury.",
            );
        }
        if pits(hot, self.s.lead == LeadStatus::Absent, ledger) {
            self.add(
                "H08",
                Outcome::Barred,
                "Lead or tin left in the heat eats holes through silver and copper.",
                "A test that finds none.",
            );
        }
    }

    /// H16 to H18, for work that heats or disturbs old metal.
    fn lead_work(&mut self) {
        self.take(lead_unknown(self.s));
        if self.s.lead_suspected() && self.owner() {
            self.add(
                "H17",
                Outcome::Barred,
                "Working on old solder or filling at home spreads lead.",
                "A workshop with lead controls does it.",
            );
        }
        self.take(child_at_home(self.s));
    }

    fn solvents(&mut self) {
        if self.s.case.aim.household_child_or_pregnant {
            self.add(
                "H18",
                Outcome::Conditional,
                "Solvent vapour harms children and the unborn.",
                "No solvent in the home.",
            );
        }
    }

    fn wash(&mut self) {
        self.solvents();
        if self.c.organic == Some(true) {
            self.add(
                "H02",
                Outcome::Conditional,
                "Wood, ivory, horn and shell swell and crack when wet.",
                "Keep them dry.",
            );
        }
        self.ammonia();
    }

    fn ammonia(&mut self) {
        if self.c.ammonia == Some(true) {
            self.add(
                "H28",
                Outcome::Barred,
                "Silver with ammonia can form something that explodes when it dries.",
                "Nothing with ammonia comes near it; old bottles are left shut and collected.",
            );
        }
    }

    fn dark_work(&mut self) {
        if self.c.dark_work == Some(true) {
            self.add(
                "H05",
                Outcome::Conditional,
                "Black inlay and metal darkened on purpose come off with the tarnish.",
                "Keep off them.",
            );
        }
    }

    fn foam(&mut self) {
        self.dark_work();
        self.ammonia();
        self.add(
            "H04",
            Outcome::Conditional,
            "Shop polish cuts faster than chalk.",
            "Made for silver alone, and as seldom as can be.",
        );
        if self.in_use() {
            self.add(
                "H19",
                Outcome::Conditional,
                "What is left of it gets into food.",
                "Keep it off surfaces that touch food.",
            );
        }
    }

    fn immersed(&mut self) {
        self.ammonia();
        if self.c.organic == Some(true) {
            self.add(
                "H02",
                Outcome::Barred,
                "Wood, ivory, horn and shell are spoiled by it.",
                "Nothing.",
            );
        }
        if self.c.dark_work == Some(true) {
            self.add(
                "H05",
                Outcome::Barred,
                "It destroys black inlay and metal darkened on purpose.",
                "Nothing.",
            );
        }
        if self.s.case.aim.household_child_or_pregnant {
            self.add(
                "H18",
                Outcome::Barred,
                "It holds or gives off what harms children and the unborn.",
                "Nothing, in that home.",
            );
        }
    }

    fn lacquer(&mut self) {
        if self.in_use() {
            self.add(
                "H21",
                Outcome::Barred,
                "Lacquer has no place where food or drink goes, or on what is in use.",
                "It becomes a piece for display.",
            );
        }
        if self.s.any_joint(&[Joint::Leaking]) || self.s.active_corrosion() {
            self.add(
                "needs",
                Outcome::Barred,
                "Lacquer over a weeping seam or active corrosion seals the trouble in.",
                "The seam is dry and the corrosion has stopped.",
            );
        }
        if self.s.lifting_foil() {
            self.add(
                "needs",
                Outcome::Barred,
                "The silver is lifting; the pull of lacquer takes it off.",
                "A conservator has made it safe.",
            );
        }
        self.solvents();
        if self.owner() {
            self.add(
                "H17",
                Outcome::Conditional,
                "Thinners catch fire and are bad to breathe.",
                "A workshop with a spray room does it.",
            );
        }
    }

    fn dents(&mut self) {
        self.lead_work();
        self.on_kinds(
            "H11",
            self.s.close_or_french(),
            "Bending iron or steel lifts the silver off it.",
        );
        let parts = &self.s.case.parts;
        if parts.iter().any(|p| p.dents == Some(Dents::Split)) {
            self.add(
                "needs",
                Outcome::Barred,
                "Metal that has split goes on splitting when it is pushed.",
                "The split is mended first.",
            );
        }
        if self.s.worn_through >= self.s.ledger.value("guard.kind_barred")
            || self.s.body_bleed >= self.s.ledger.value("guard.bleed_no_clean")
        {
            self.add(
                "needs",
                Outcome::Barred,
                "The silver over the dent is nearly through and would not bear it.",
                "A measured thickness that says otherwise.",
            );
        }
        if self.s.britannia() >= self.s.ledger.value("guard.kind_check") {
            self.add(
                "H10",
                Outcome::Conditional,
                "Britannia metal cracks when it is tired.",
                "Somebody used to pewter does it.",
            );
        }
        let closed = self.s.sealed_or_pitch();
        self.add(
            "H06",
            Outcome::Conditional,
            if closed {
                "A closed or filled part can burst when warmed, and a filled mount can crack."
            } else {
                "Heat would open joints and spoil the bond of silver and base."
            },
            "Cold only.",
        );
    }

    fn remove_fill(&mut self) {
        self.lead_work();
        if self.c.insulator == Some(true) || self.s.case.has_seen("C12") && self.closed() {
            self.add(
                "H17",
                Outcome::NeedsCheck,
                "Some fillings and pads are asbestos.",
                "A licensed analyst has looked.",
            );
        }
        if self.closed() {
            self.add(
                "H06",
                Outcome::NeedsCheck,
                "Nobody knows what is in it, and heat can burst it.",
                "Somebody finds out what the filling is, without opening or heating it.",
            );
        }
        if self.owner() {
            self.add(
                "H23",
                Outcome::Barred,
                "Fillings are not melted or burnt out at home.",
                "A conservator or a workshop with extraction does it.",
            );
        }
        if self.c.failing_fill != Some(true) {
            self.add(
                "H22",
                Outcome::Barred,
                "A sound filling belongs to the piece, and in a stamped border it holds up thin silver.",
                "It leaks, swells, corrodes or sits loose.",
            );
        }
    }

    fn closed(&self) -> bool {
        let parts = &self.s.case.parts;
        parts.iter().any(|p| p.fill == Some(Fill::Sealed))
            || (self.s.sealed_or_pitch() && parts.iter().all(|p| p.fill.is_none()))
    }

    fn mechanical(&mut self) {
        if self.c.insulator == Some(true) {
            self.add(
                "H17",
                Outcome::NeedsCheck,
                "Old pads, rings and cord at a handle may be asbestos.",
                "A licensed analyst has looked.",
            );
        }
        self.add(
            "needs",
            Outcome::Conditional,
            "A new hole is for ever.",
            "Only holes and seats that are there already.",
        );
        if self.in_use() {
            self.add(
                "H19",
                Outcome::Conditional,
                "Glue fails when hot and must not touch food.",
                "No glue on what is hot, carries weight or touches food.",
            );
        }
    }

    fn local_plate(&mut self) {
        if self.s.lead == LeadStatus::Present {
            self.add(
                "needs",
                Outcome::Barred,
                "Silver does not hold over lead.",
                "The lead is taken out, or the patch keeps clear of it.",
            );
        }
        self.add(
            "H17",
            Outcome::Conditional,
            "Plating liquids can hold cyanide.",
            "A permitted works does it.",
        );
        self.disclosed();
    }

    fn overplate(&mut self) {
        if self.s.lifting_foil() {
            self.add(
                "needs",
                Outcome::Barred,
                "The old silver is lifting, and the new would lift with it.",
                "Nothing while it lifts.",
            );
        }
        if self.s.lead == LeadStatus::Present {
            self.add(
                "needs",
                Outcome::Barred,
                "Silver does not hold over bare lead or solder.",
                "The lead is taken out or sealed first.",
            );
        }
        self.add(
            "H17",
            Outcome::Conditional,
            "Plating uses cyanide.",
            "A permitted works does it.",
        );
        self.disclosed();
        self.food_stays_barred();
    }

    fn disclosed(&mut self) {
        if !self.s.case.consents.disclose {
            self.add(
                "H15",
                Outcome::Conditional,
                "New silver misleads a later buyer.",
                "It is photographed first, and sold as re-plated.",
            );
        }
    }

    /// H19: new silver or tin does not make a piece fit for food by itself.
    fn food_stays_barred(&mut self) {
        if self.s.case.aim.food && !self.s.triggers().is_empty() {
            self.add(
                "H19",
                Outcome::Conditional,
                "A new lining or coat does not make it fit for food.",
                "For display until a laboratory release test passes.",
            );
        }
    }

    fn toning(&mut self) {
        if self.s.case.aim.food {
            self.add(
                "needs",
                Outcome::Barred,
                "Toning is for pieces on display: it comes off into food.",
                "It becomes a piece for display.",
            );
        }
        if self.s.active_corrosion() {
            self.add(
                "needs",
                Outcome::NeedsCheck,
                "Corrosion under a tint goes on unseen.",
                "A conservator has stopped it.",
            );
        }
    }

    fn tinning(&mut self) {
        self.lead_work();
        let hot = self.s.ledger.value("heat.limit.tin");
        if self.s.sealed_or_pitch() && bursts(hot, self.s.ledger) {
            self.add(
                "H06",
                Outcome::Barred,
                "A closed or filled part can burst when heated.",
                "A professional has opened or vented it and told what is inside.",
            );
        }
        if opens_seams(hot, self.s.ledger) {
            if self.s.lead == LeadStatus::Present
                || self.s.lead_filled()
                || self.s.any_joint(&[Joint::GreyRepair])
            {
                self.add(
                    "H29",
                    Outcome::Barred,
                    "Tin runs hotter than old tin-lead solder bears, so its joints open.",
                    "Nothing while old solder is in the part.",
                );
            } else if self.s.case.is_soldered() && self.s.lead != LeadStatus::Absent {
                self.add(
                    "H29",
                    Outcome::NeedsCheck,
                    "Tin runs hotter than old tin-lead solder bears, and its seams may be that.",
                    "A test that finds no lead in the seams.",
                );
            }
        }
        self.on_kinds(
            "H10",
            self.s.britannia(),
            "Britannia metal melts at about the heat of the tin.",
        );
        if lifts_foil(hot, self.s.ledger) {
            self.on_kinds(
                "H11",
                self.s.close_or_french(),
                "The heat lifts the silver, which is held on by tin.",
            );
        }
        match self.s.interior() {
            Some(Interior::Silvered | Interior::Gilt) => self.add(
                "needs",
                Outcome::Barred,
                "The lining is silver or gold, and tin would spoil it.",
                "Nothing while that lining is whole.",
            ),
            Some(Interior::Tinned | Interior::Bare) => {}
            Some(Interior::Lacquered) | None => self.add(
                "needs",
                Outcome::NeedsCheck,
                "Only what was tinned before is tinned again.",
                "Look what lines the inside.",
            ),
        }
        if self.s.gilt() {
            self.add(
                "H25",
                Outcome::NeedsCheck,
                "Old gilding may hold mercury, which heat drives off as poison.",
                "Have the gilding read for mercury first.",
            );
        }
        self.food_stays_barred();
    }

    fn replace_part(&mut self) {
        if self.c.protected_part == Some(true) {
            self.add(
                "H26",
                Outcome::Barred,
                "Ivory and protected woods may not be used, nor traded, in most places.",
                "Another material.",
            );
        }
        if self.c.insulator == Some(true) {
            self.add(
                "H17",
                Outcome::NeedsCheck,
                "Old pads, rings and cord at a handle may be asbestos.",
                "A licensed analyst has looked.",
            );
        }
        self.add(
            "H15",
            Outcome::Conditional,
            "A new part can pass for old.",
            "It is marked as new, and no mark is copied.",
        );
        if self.in_use() {
            self.add(
                "H19",
                Outcome::Conditional,
                "Castings can hold lead.",
                "No casting with lead where food goes.",
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::testing::{case, situation};
    use super::*;
    use crate::record::{Case, Corrosion, Lead, Part};
    use crate::treatment::worst;

    const NICKEL: [&str; 2] = ["M01", "S04"];
    const FUSED: [&str; 3] = ["C01", "C07", "C08"];
    const BRITANNIA: [&str; 2] = ["M02", "S05"];
    const CLOSE: [&str; 2] = ["P01", "P13"];
    const NOTHING: Circumstances = Circumstances {
        hard_repair: None,
        insulator: None,
        fire_gilding: None,
        organic: None,
        dark_work: None,
        ammonia: None,
        failing_fill: None,
        protected_part: None,
    };

    #[track_caller]
    fn says(t: Treatment, case: &Case, c: Circumstances, guard: &str, outcome: Outcome) {
        let found = check_fully(t, &situation(case), &c);
        assert!(
            found
                .iter()
                .any(|v| v.guard == guard && v.outcome == outcome),
            "{} {guard} {outcome:?}: {found:?}",
            t.id()
        );
        assert!(
            found
                .iter()
                .all(|v| v.reason.ends_with('.') && v.lifted_by.ends_with('.')),
            "{found:?}"
        );
    }

    #[track_caller]
    fn silent(t: Treatment, case: &Case, c: Circumstances, guard: &str) {
        let found = check_fully(t, &situation(case), &c);
        assert!(
            found.iter().all(|v| v.guard != guard),
            "{} {guard}: {found:?}",
            t.id()
        );
    }

    fn tested(part: &mut Part) {
        part.lead = Some(Lead::Absent);
    }

    #[test]
    fn leaving_keeping_and_testing_are_always_open() {
        let mut bad = case(&["S07", "P14", "C10"], |p| p.fill = Some(Fill::Sealed));
        bad.aim.food = true;
        bad.aim.household_child_or_pregnant = true;
        let all = Circumstances {
            hard_repair: Some(true),
            insulator: Some(true),
            fire_gilding: Some(true),
            organic: Some(true),
            dark_work: Some(true),
            ammonia: Some(true),
            failing_fill: Some(true),
            protected_part: Some(true),
        };
        for t in [Treatment::Leave, Treatment::Keeping, Treatment::TestLead] {
            assert_eq!(check_fully(t, &situation(&bad), &all), []);
        }
    }

    #[test]
    fn cadmium_waits_for_an_analysis_and_is_barred_at_home() {
        let mut piece = case(&NICKEL, tested);
        let suspect = Circumstances {
            hard_repair: Some(true),
            ..NOTHING
        };
        for t in [Treatment::Solder, Treatment::Tinning, Treatment::RemoveLead] {
            says(t, &piece, suspect, "H24", Outcome::NeedsCheck);
            silent(t, &piece, NOTHING, "H24");
        }
        piece.aim.doer = Some(Doer::Owner);
        says(Treatment::Solder, &piece, suspect, "H24", Outcome::Barred);
        // Cold work leaves it alone.
        silent(Treatment::Mechanical, &piece, suspect, "H24");
    }

    #[test]
    fn gilding_with_mercury_sees_no_heat_at_all() {
        let piece = case(&NICKEL, tested);
        let gilt = Circumstances {
            fire_gilding: Some(true),
            ..NOTHING
        };
        for t in [
            Treatment::LowMelt,
            Treatment::Solder,
            Treatment::HardSolder,
            Treatment::Tinning,
        ] {
            says(t, &piece, gilt, "H25", Outcome::Barred);
            silent(t, &piece, NOTHING, "H25");
        }
        silent(Treatment::Toning, &piece, gilt, "H25");
    }

    #[test]
    fn tin_and_old_solder_do_not_go_together() {
        let tinned = |lead: Option<Lead>, joint: Option<Joint>| {
            let mut c = case(&NICKEL, |p| {
                p.lead = lead;
                p.joint = joint;
            });
            let mut inside = Part::unknown(crate::record::PartName::Interior);
            inside.interior = Some(Interior::Tinned);
            c.parts.push(inside);
            c
        };
        let t = Treatment::Tinning;
        says(
            t,
            &tinned(Some(Lead::Present), None),
            NOTHING,
            "H29",
            Outcome::Barred,
        );
        says(
            t,
            &tinned(None, Some(Joint::GreyRepair)),
            NOTHING,
            "H29",
            Outcome::Barred,
        );
        says(t, &tinned(None, None), NOTHING, "H29", Outcome::NeedsCheck);
        silent(t, &tinned(Some(Lead::Absent), None), NOTHING, "H29");
        // Nothing hotter than tin is near the lead limit of H08.
        silent(t, &tinned(None, None), NOTHING, "H08");
    }

    #[test]
    fn tinning_needs_a_lining_that_was_tin() {
        let with = |lining: Option<Interior>| {
            let mut c = case(&NICKEL, tested);
            let mut inside = Part::unknown(crate::record::PartName::Interior);
            inside.interior = lining;
            c.parts.push(inside);
            c
        };
        let t = Treatment::Tinning;
        says(
            t,
            &with(Some(Interior::Silvered)),
            NOTHING,
            "needs",
            Outcome::Barred,
        );
        says(t, &with(None), NOTHING, "needs", Outcome::NeedsCheck);
        silent(t, &with(Some(Interior::Tinned)), NOTHING, "needs");
        says(
            t,
            &with(Some(Interior::Gilt)),
            NOTHING,
            "H25",
            Outcome::NeedsCheck,
        );
    }

    #[test]
    fn kinds_that_heat_or_bending_spoil_are_kept_from_it() {
        let soft = case(&BRITANNIA, tested);
        says(Treatment::Tinning, &soft, NOTHING, "H10", Outcome::Barred);
        let close = case(&CLOSE, tested);
        says(Treatment::Tinning, &close, NOTHING, "H11", Outcome::Barred);
        says(Treatment::Dents, &close, NOTHING, "H11", Outcome::Barred);
        says(
            Treatment::Overplate,
            &close,
            NOTHING,
            "H11",
            Outcome::Barred,
        );
        let plain = case(&NICKEL, tested);
        for t in [Treatment::Tinning, Treatment::Dents, Treatment::Overplate] {
            silent(t, &plain, NOTHING, "H11");
        }
        silent(Treatment::Tinning, &plain, NOTHING, "H10");
    }

    #[test]
    fn closed_parts_see_no_tinning_and_dents_are_cold_work() {
        let closed = case(&NICKEL, |p| p.fill = Some(Fill::Sealed));
        says(Treatment::Tinning, &closed, NOTHING, "H06", Outcome::Barred);
        says(
            Treatment::Dents,
            &closed,
            NOTHING,
            "H06",
            Outcome::Conditional,
        );
        let open = case(&NICKEL, |p| p.fill = Some(Fill::None));
        silent(Treatment::Tinning, &open, NOTHING, "H06");
    }

    #[test]
    fn lacquer_is_for_display() {
        let mut piece = case(&NICKEL, tested);
        silent(Treatment::Lacquer, &piece, NOTHING, "H21");
        assert_eq!(
            worst(&check_fully(
                Treatment::Lacquer,
                &situation(&piece),
                &NOTHING
            )),
            Outcome::Allowed
        );
        piece.aim.food = true;
        says(Treatment::Lacquer, &piece, NOTHING, "H21", Outcome::Barred);
        says(Treatment::Toning, &piece, NOTHING, "needs", Outcome::Barred);
        piece.aim.food = false;
        silent(Treatment::Toning, &piece, NOTHING, "needs");
        let weeping = case(&NICKEL, |p| p.joint = Some(Joint::Leaking));
        says(
            Treatment::Lacquer,
            &weeping,
            NOTHING,
            "needs",
            Outcome::Barred,
        );
        let rusting = case(&CLOSE, |p| p.corrosion = Some(Corrosion::Rust));
        says(
            Treatment::Lacquer,
            &rusting,
            NOTHING,
            "needs",
            Outcome::Barred,
        );
    }

    #[test]
    fn children_and_solvent_are_kept_apart() {
        let mut piece = case(&NICKEL, tested);
        for t in [Treatment::Wash, Treatment::Lacquer] {
            silent(t, &piece, NOTHING, "H18");
        }
        silent(Treatment::Dip, &piece, NOTHING, "H18");
        piece.aim.household_child_or_pregnant = true;
        for t in [Treatment::Wash, Treatment::Lacquer] {
            says(t, &piece, NOTHING, "H18", Outcome::Conditional);
        }
        says(Treatment::Dip, &piece, NOTHING, "H18", Outcome::Barred);
    }

    #[test]
    fn silver_and_ammonia_are_kept_apart() {
        let piece = case(&NICKEL, tested);
        let about = Circumstances {
            ammonia: Some(true),
            ..NOTHING
        };
        for t in [Treatment::Wash, Treatment::Foam, Treatment::Dip] {
            says(t, &piece, about, "H28", Outcome::Barred);
            silent(t, &piece, NOTHING, "H28");
        }
    }

    #[test]
    fn dark_work_and_organic_parts_are_spared() {
        let piece = case(&NICKEL, tested);
        let c = Circumstances {
            dark_work: Some(true),
            organic: Some(true),
            ..NOTHING
        };
        for t in [Treatment::Clean, Treatment::Foam] {
            says(t, &piece, c, "H05", Outcome::Conditional);
            silent(t, &piece, NOTHING, "H05");
        }
        says(Treatment::Dip, &piece, c, "H05", Outcome::Barred);
        says(Treatment::FoilBath, &piece, c, "H02", Outcome::Barred);
        says(Treatment::Wash, &piece, c, "H02", Outcome::Conditional);
    }

    #[test]
    fn dips_keep_off_bare_metal_and_soldered_joints() {
        let mut tray = case(&NICKEL, tested);
        tray.piece.form = Some(crate::record::Form::Tray);
        tray.parts[0].bleed = Some(crate::record::Bleed::Fraction(0.0));
        silent(Treatment::Dip, &tray, NOTHING, "H02");
        silent(Treatment::Dip, &tray, NOTHING, "H03");
        let mut pot = tray.clone();
        pot.piece.form = Some(crate::record::Form::Teapot);
        says(Treatment::Dip, &pot, NOTHING, "H02", Outcome::Barred);
        tray.parts[0].bleed = Some(crate::record::Bleed::Fraction(0.1));
        says(Treatment::FoilBath, &tray, NOTHING, "H03", Outcome::Barred);
    }

    #[test]
    fn a_sound_filling_stays_and_an_unknown_one_is_identified() {
        let t = Treatment::RemoveFill;
        let failing = Circumstances {
            failing_fill: Some(true),
            ..NOTHING
        };
        let lead = case(&NICKEL, |p| {
            p.fill = Some(Fill::Lead);
            p.lead = Some(Lead::Present);
        });
        says(t, &lead, NOTHING, "H22", Outcome::Barred);
        silent(t, &lead, failing, "H22");
        silent(t, &lead, failing, "H06");
        let unknown = case(&NICKEL, |p| p.fill = Some(Fill::Sealed));
        says(t, &unknown, failing, "H06", Outcome::NeedsCheck);
        says(t, &unknown, failing, "H16", Outcome::NeedsCheck);
        silent(t, &lead, failing, "H16");
        let mut home = lead.clone();
        silent(t, &home, failing, "H23");
        home.aim.doer = Some(Doer::Owner);
        says(t, &home, failing, "H23", Outcome::Barred);
        says(t, &home, failing, "H17", Outcome::Barred);
        let pads = Circumstances {
            insulator: Some(true),
            ..failing
        };
        says(t, &lead, pads, "H17", Outcome::NeedsCheck);
        silent(t, &lead, failing, "H17");
    }

    #[test]
    fn asbestos_pads_wait_for_an_analyst() {
        let piece = case(&NICKEL, tested);
        let pads = Circumstances {
            insulator: Some(true),
            ..NOTHING
        };
        for t in [Treatment::Mechanical, Treatment::ReplacePart] {
            says(t, &piece, pads, "H17", Outcome::NeedsCheck);
            silent(t, &piece, NOTHING, "H17");
        }
    }

    #[test]
    fn no_ivory() {
        let piece = case(&NICKEL, tested);
        let ivory = Circumstances {
            protected_part: Some(true),
            ..NOTHING
        };
        says(
            Treatment::ReplacePart,
            &piece,
            ivory,
            "H26",
            Outcome::Barred,
        );
        silent(Treatment::ReplacePart, &piece, NOTHING, "H26");
    }

    #[test]
    fn plating_of_any_sort_spares_fused_silver_unless_an_opinion_is_written() {
        let mut fused = case(&FUSED, tested);
        for t in [Treatment::LocalPlate, Treatment::Overplate] {
            says(t, &fused, NOTHING, "H14", Outcome::Barred);
        }
        fused.consents.conservator_opinion = true;
        for t in [Treatment::LocalPlate, Treatment::Overplate] {
            says(t, &fused, NOTHING, "H14", Outcome::Conditional);
        }
        let nickel = case(&NICKEL, tested);
        for t in [Treatment::LocalPlate, Treatment::Overplate] {
            silent(t, &nickel, NOTHING, "H14");
        }
    }

    #[test]
    fn what_is_entered_lifts_no_rule_of_safety() {
        let mut piece = case(&FUSED, |p| {
            p.fill = Some(Fill::Sealed);
            p.joint = Some(Joint::GreyRepair);
        });
        let before: Vec<Outcome> = Treatment::ALL
            .iter()
            .map(|t| worst(&check_fully(*t, &situation(&piece), &NOTHING)))
            .collect();
        piece.consents.loss = true;
        piece.consents.photo = true;
        piece.consents.disclose = true;
        piece.consents.conservator_opinion = true;
        for (t, was) in Treatment::ALL.iter().zip(before) {
            let found = check_fully(*t, &situation(&piece), &NOTHING);
            // Only H14, H15 and H30 may have changed; this piece has a bar of safety wherever it had one.
            let others = found
                .iter()
                .filter(|v| !["H14", "H15", "H30"].contains(&v.guard))
                .map(|v| v.outcome)
                .max()
                .unwrap_or(Outcome::Allowed);
            assert!(others <= was, "{}", t.id());
            if *t == Treatment::Replate || *t == Treatment::Overplate {
                assert_eq!(worst(&found), Outcome::Barred, "{}", t.id());
            }
        }
    }

    #[test]
    fn food_is_not_given_back_by_new_metal() {
        let mut pot = case(&NICKEL, |_| ());
        silent(Treatment::Replate, &pot, NOTHING, "H19");
        pot.aim.food = true;
        for t in [Treatment::Replate, Treatment::Overplate, Treatment::Tinning] {
            says(t, &pot, NOTHING, "H19", Outcome::Conditional);
        }
        pot.parts[0].lead = Some(Lead::Absent);
        silent(Treatment::Replate, &pot, NOTHING, "H19");
    }

    #[test]
    fn splits_and_thin_silver_bear_no_pushing() {
        let sound = case(&NICKEL, |p| {
            tested(p);
            p.dents = Some(Dents::Moderate);
        });
        silent(Treatment::Dents, &sound, NOTHING, "needs");
        let split = case(&NICKEL, |p| {
            tested(p);
            p.dents = Some(Dents::Split);
        });
        says(Treatment::Dents, &split, NOTHING, "needs", Outcome::Barred);
        let mut s = situation(&sound);
        s.worn_through = 0.5;
        assert!(
            check_fully(Treatment::Dents, &s, &NOTHING)
                .iter()
                .any(|v| v.guard == "needs")
        );
        s.worn_through = 0.49;
        assert!(
            check_fully(Treatment::Dents, &s, &NOTHING)
                .iter()
                .all(|v| v.guard != "needs")
        );
    }

    #[test]
    fn every_rule_that_speaks_is_in_the_list_of_rules() {
        for t in Treatment::ALL {
            for seen in [&FUSED[..], &NICKEL, &BRITANNIA, &CLOSE, &["P14", "S07"]] {
                let mut piece = case(seen, |p| p.fill = Some(Fill::Sealed));
                piece.aim.food = true;
                for v in check_fully(t, &situation(&piece), &NOTHING) {
                    assert!(
                        v.guard == "needs" || crate::ledger::guard_text(v.guard).is_some(),
                        "{}",
                        v.guard
                    );
                }
            }
        }
    }
}
