//! The inputs of the rules: the case, the posterior, and the steps done so far in a course.

use super::lead::{LeadStatus, Release, lead_anywhere, lead_filled, lead_for, release};
use super::limits::near_reach;
use super::mercury::{self, Mercury};
use crate::bench::SolderReach;
use crate::identity::{Kind, Posterior};
use crate::ledger::{FigureId, FindingId, Ledger, signs};
use crate::record::{Case, Corrosion, Fill, Form, Interior, Joint, Material, Part, PartName};
use crate::terms::Treatment;

/// Everything a rule may query. Built once per case, then advanced step by step through each course.
#[allow(clippy::struct_excessive_bools)] // each answers a separate question
#[derive(Clone, Debug)]
pub struct Situation<'a> {
    /// The case.
    pub case: &'a Case,
    /// The figures.
    pub ledger: &'a Ledger,
    /// The probabilities of what it is.
    pub posterior: Posterior,
    /// Median bare share of the body.
    pub body_bleed: f64,
    /// Share of the whole piece still covered, at the low end of the bleed, 0 to 1.
    pub covered_area: f64,
    /// Chance that the silver at the worst point does not last twice the planned cleanings.
    pub worn_through: f64,
    /// The look that would do most to settle the kind, in words.
    pub next_look: &'static str,
    /// Share of the area of the piece that was looked at, 0 to 1.
    pub looked_at: f64,
    /// The largest part that was not looked at; `None` when all were.
    pub largest_unseen: Option<PartName>,
    /// How far soldering heat opens old soft solder.
    pub heat_reach: SolderReach,
    /// The result of a test for lead that is a step of this course; unknown without such a step.
    pub lead: LeadStatus,
    /// The situation of each piece if there are several; empty for one piece. A verdict on one piece applies
    /// to the record; the outer situation combines them.
    pub each: Vec<Self>,
    /// The worst joint, now.
    pub joint: Option<Joint>,
    /// Silver has been electroplated on in this course.
    pub replated: bool,
    /// A low-melt or glued repair was made in this course.
    pub low_melt: bool,
    /// Tarnish has been removed in this course.
    pub cleaned: bool,
    /// Old lacquer has been removed in this course.
    pub lacquer_off: bool,
    /// A later step of this course plates the whole piece.
    pub to_be_plated: bool,
    /// The inside was tinned in this course, and the new lining passed its own release test.
    pub lining_tested: bool,
}

impl Situation<'_> {
    /// The situations that rules are asked in: its own for one piece, else that of each
    /// piece in a different state.
    #[must_use]
    pub fn pieces(&self) -> Vec<&Self> {
        if self.each.is_empty() {
            return vec![self];
        }
        let mut all: Vec<&Self> = Vec::new();
        for piece in &self.each {
            let same = |known: &&Self| known.case.is_like(piece.case);
            if !all.iter().any(same) {
                all.push(piece);
            }
        }
        all
    }

    /// The triggers of all pieces together, each once and in the order of their numbers; of one number in the
    /// order of their words, so that it does not matter which piece is the first.
    pub(crate) fn triggers_of_each(
        &self,
        of: &dyn Fn(&Self) -> Vec<(u8, &'static str)>,
    ) -> Vec<(u8, &'static str)> {
        let each: Vec<_> = self.pieces().into_iter().map(of).collect();
        let mut all: Vec<(u8, &'static str)> = Vec::new();
        for number in 1..=6 {
            for trigger in each.iter().flatten().filter(|(of, _)| *of == number) {
                if !all.contains(trigger) {
                    let at = all.iter().position(|known| known > trigger);
                    all.insert(at.unwrap_or(all.len()), *trigger);
                }
            }
        }
        all
    }

    /// Makes the same change to the situation of all and of each piece.
    pub fn change_all(&mut self, change: &dyn Fn(&mut Self)) {
        change(self);
        for piece in &mut self.each {
            change(piece);
        }
    }

    /// Probability of fused plate that still carries its original surface, now.
    #[must_use]
    pub fn original_fused(&self) -> f64 {
        if self.replated {
            0.0
        } else {
            self.posterior.original_fused()
        }
    }

    /// Probability of Britannia metal or pewter, plated or not.
    #[must_use]
    pub fn britannia(&self) -> f64 {
        self.posterior.of_any(&[Kind::Ebm, Kind::Ubm])
    }

    /// Probability that heat or water lifts the silver: silver held by tin, only burnished on, or plated on
    /// iron or steel that rusts.
    #[must_use]
    pub fn close_or_french(&self) -> f64 {
        self.posterior.of_any(&[Kind::Clp, Kind::Frp, Kind::Est])
    }

    /// Probability that it never had any silver.
    #[must_use]
    pub fn never_silvered(&self) -> f64 {
        self.posterior
            .of_any(&[Kind::Ucu, Kind::Uns, Kind::Ubm, Kind::Ncp])
    }

    /// Whether there is lead in the parts that `treatment` touches: as recorded, or else as the test in this
    /// course found.
    #[must_use]
    pub fn lead_for(&self, treatment: Treatment) -> LeadStatus {
        self.or_tested(lead_for(treatment, self.case))
    }

    /// Whether there is lead anywhere in the piece: as recorded, or else as the test in this course found.
    #[must_use]
    pub fn lead_anywhere(&self) -> LeadStatus {
        self.or_tested(lead_anywhere(self.case))
    }

    /// A test result overrides lead that is only assumed.
    fn or_tested(&self, recorded: LeadStatus) -> LeadStatus {
        let assumed = recorded == LeadStatus::Present
            && self.case.aim.assume_lead
            && !super::lead::recorded(self.case);
        match recorded {
            LeadStatus::Unknown => self.lead,
            LeadStatus::Present if assumed && self.lead == LeadStatus::Absent => self.lead,
            known => known,
        }
    }

    /// Whether lead is released into food: as the test in this course found, or else as recorded. A recorded failure
    /// stands whatever the test finds.
    #[must_use]
    pub fn release(&self) -> Release {
        match (release(self.case), self.lead) {
            (Release::Failed, _) | (Release::Untested, LeadStatus::Present) => Release::Failed,
            (_, LeadStatus::Absent) => Release::PassedByLaboratory,
            (recorded, _) => recorded,
        }
    }

    /// Whether a test for lead would add anything to the record.
    #[must_use]
    pub fn lead_test_would_tell(&self) -> bool {
        self.lead == LeadStatus::Unknown
            && (self.lead_anywhere() == LeadStatus::Unknown
                || (self.case.aim.food && self.release() == Release::Untested))
    }

    /// Whether lead is likely in the parts that `treatment` touches: something is grey, filled or soldered,
    /// and no analysis rules lead out there.
    #[must_use]
    pub fn lead_suspected(&self, treatment: Treatment) -> bool {
        self.suspected(self.lead_for(treatment))
    }

    /// Whether lead is likely anywhere in the piece.
    #[must_use]
    pub fn lead_suspected_anywhere(&self) -> bool {
        self.suspected(self.lead_anywhere())
    }

    fn suspected(&self, lead: LeadStatus) -> bool {
        lead != LeadStatus::Absent
            && (lead == LeadStatus::Present
                || self.case.has_seen(FindingId::C10)
                || self.case.has_seen(FindingId::C12)
                || self.posterior.of(Kind::Ubm) >= self.ledger.value(FigureId::GUARD_KIND_CHECK)
                || self.any_joint(&[Joint::GreyRepair])
                || self.lead_filled()
                || self.case.is_soldered())
    }

    /// Whether a part is filled with lead or solder, as recorded or as a worn mount shows.
    #[must_use]
    pub fn lead_filled(&self) -> bool {
        self.case.parts.iter().any(lead_filled)
    }

    /// Whether any part has one of these joints, as found.
    #[must_use]
    pub fn any_joint(&self, joints: &[Joint]) -> bool {
        self.case.parts.iter().any(|p| p.has_any_joint(joints))
    }

    /// Whether a hollow part is closed or filled, stated or seen, with something that bursts or moves when
    /// hot. A form that is usually loaded counts until its base or foot is answered for.
    #[must_use]
    pub fn sealed_or_pitch(&self) -> bool {
        let bursts = |f: Option<Fill>| matches!(f, Some(Fill::Pitch | Fill::Sealed));
        self.case.parts.iter().any(|p| bursts(p.fill))
            || self.case.circumstances.closed == Some(true)
            || self.case.has_seen_any(&signs::LOADED)
            || self.loading_assumed()
    }

    /// Whether loading is assumed: the form usually has it, or the piece is probably weighted sterling, and
    /// the record does not say what is in the parts that hold it. These are the base or foot together with
    /// the stem, if there is one; on cutlery, the handle. An answer for another part says nothing about the
    /// loading.
    #[must_use]
    pub fn loading_assumed(&self) -> bool {
        let form = self.case.piece.form;
        let usual = form.is_some_and(Form::usually_loaded)
            || self.posterior.of(Kind::Wst) >= self.ledger.value(FigureId::GUARD_KIND_BARRED);
        if !usual {
            return false;
        }
        let answered = |part| self.case.part(part).is_some_and(|p| p.fill.is_some());
        let has_stem = form.is_some_and(|form| form.parts().contains(&PartName::Stem))
            || self.case.part(PartName::Stem).is_some();
        if let Some(Form::Cutlery) = form {
            !answered(PartName::Handle)
        } else {
            let stands = answered(PartName::Base) || answered(PartName::Foot);
            !(stands && (!has_stem || answered(PartName::Stem)))
        }
    }

    /// Whether a part is hollow, or a metal handle may be: it was not examined, or the form has a handle that
    /// is not recorded.
    #[must_use]
    pub fn may_be_hollow(&self) -> bool {
        let handle = PartName::Handle;
        let unseen_handle = self.case.part(handle).is_none()
            && (self.case.piece.form).is_some_and(|form| form.parts().contains(&handle));
        let unsure = |p: &Part| p.name == handle && p.is_metal() && p.hollow.is_none();
        self.hollow() || unseen_handle || self.case.parts.iter().any(unsure)
    }

    /// Whether a part is recorded as hollow.
    #[must_use]
    pub fn hollow(&self) -> bool {
        self.case.parts.iter().any(|p| p.hollow == Some(true))
    }

    /// Candle wax on a piece with a part that is loaded, filled or closed.
    #[must_use]
    pub fn wax_on_loading(&self) -> bool {
        let loaded = |p: &Part| p.fill.is_some_and(|f| f != Fill::None);
        self.wax() && (self.sealed_or_pitch() || self.case.parts.iter().any(loaded))
    }

    /// Candle wax anywhere.
    #[must_use]
    pub fn wax(&self) -> bool {
        self.case.parts.iter().any(|p| p.wax == Some(true))
    }

    /// Ivory anywhere.
    #[must_use]
    pub fn ivory(&self) -> bool {
        (self.case.parts.iter()).any(|p| p.material == Some(Material::Ivory))
    }

    /// Active corrosion.
    #[must_use]
    pub fn active_corrosion(&self) -> bool {
        self.case.corrodes()
    }

    /// Foil that lifts, or rust under it.
    #[must_use]
    pub fn lifting_foil(&self) -> bool {
        self.case.has_seen_any(&signs::LIFTING)
            || self
                .case
                .parts
                .iter()
                .any(|p| p.corrosion == Some(Corrosion::Rust))
    }

    /// The lining as found.
    #[must_use]
    pub fn interior(&self) -> Option<Interior> {
        self.case.part(PartName::Interior).and_then(|p| p.interior)
    }

    /// Gilding that is still there, whole or worn.
    #[must_use]
    pub fn gilt(&self) -> bool {
        mercury::gilt(self.case)
    }

    /// Gilding that is there or once was. Traces of old gilding may still contain mercury.
    #[must_use]
    pub fn was_gilt(&self) -> bool {
        mercury::was_gilt(self.case)
    }

    /// What is known of mercury in it.
    #[must_use]
    pub fn mercury(&self) -> Mercury {
        mercury::mercury(self.case)
    }

    /// The shortest stated distance from a faulty joint to the next soft joint or filling, mm.
    #[must_use]
    pub fn nearest_joint_mm(&self) -> Option<f64> {
        self.case
            .parts
            .iter()
            .filter_map(|p| p.joint_distance_mm)
            .min_by(f64::total_cmp)
    }

    /// The display-only triggers that apply now, each in words.
    #[must_use]
    pub fn display_only(&self) -> Vec<String> {
        self.triggers()
            .into_iter()
            .map(|(_, why)| why.to_owned())
            .collect()
    }

    /// The display-only triggers that apply now: the number of each, 1 to 6, and why. A release test of the
    /// inside that passed lifts those on lead (1) and, if recorded, on bare metal inside (2); only a
    /// laboratory's test lifts the one on who would use it (5); nothing lifts the others.
    #[must_use]
    pub fn triggers(&self) -> Vec<(u8, &'static str)> {
        if !self.each.is_empty() {
            return self.triggers_of_each(&Self::triggers);
        }
        let mut why = Vec::new();
        let release = self.release();
        let passed = release.passed() || self.lining_tested;
        if release == Release::Failed {
            why.push((1, "A release test failed."));
        } else if !passed {
            if self.lead_anywhere() == LeadStatus::Present
                || self.case.has_seen(FindingId::C10)
                || self.any_joint(&[Joint::GreyRepair])
                || self.lead_filled()
            {
                why.push((
                    1,
                    "Lead was found or is assumed, or grey solder or filling shows.",
                ));
            } else if self.case.is_soldered() && self.before_lead_free() {
                why.push((
                    1,
                    "It has not been tested, and old soldered pieces may release lead. Almost all of them are for \
                     display until a test clears them.",
                ));
            }
        }
        // A test for lead alone says nothing about copper: only a pass for the inside, or for a new lining,
        // covers bare metal.
        if !(super::lead::release(self.case).passed() || self.lining_tested) {
            let inside = self.case.part(PartName::Interior);
            let worn = inside.is_some_and(|p| p.bleed.is_some_and(shows_metal));
            if worn || self.interior() == Some(Interior::Bare) {
                why.push((
                    2,
                    "Bare copper, brass, nickel silver or Britannia metal shows on the inside, where sour food \
                     dissolves it.",
                ));
            }
        }
        if self.interior() == Some(Interior::Lacquered) {
            why.push((3, "The inside is lacquered, waxed or glued."));
        }
        if self.low_melt {
            why.push((3, "The repair uses low-melting metal or glue."));
        }
        if self.replated {
            why.push((
                3,
                "New plating has to be washed and checked before food touches it.",
            ));
        }
        let answers = &self.case.circumstances;
        if self.mercury() != Mercury::NoSign {
            why.push((4, "Old gilding or silvering may contain mercury."));
        }
        if answers.hard_repair == Some(true) {
            why.push((4, "An old repair in hard solder may contain cadmium."));
        }
        if answers.insulator == Some(true) {
            why.push((4, "An old pad or ring at a handle may be asbestos."));
        }
        if self.case.piece.form == Some(Form::Cooler) && self.any_joint(&[Joint::Leaking]) {
            why.push((
                4,
                "A leaking double wall holds dirt that nobody can wash out.",
            ));
        }
        if release != Release::PassedByLaboratory
            && self.case.aim.household_child_or_pregnant
            && (self.case.aim.food || self.case.is_soldered() && self.before_lead_free())
        {
            why.push((
                5,
                "A child, or someone pregnant or breast-feeding, lives with it or would use it: never use it for food, unless it passes a \
                 laboratory release test.",
            ));
        }
        if self.case.aim.store_food {
            why.push((6, "Food or drink would stay in it for hours."));
        }
        if self.sealed_or_pitch() && self.case.aim.food {
            why.push((
                6,
                "Something hot would go into a piece with a loaded or closed part.",
            ));
        }
        why
    }

    /// How much the next joint counts against a soldered repair, 0 to 1: in full within the heat's reach,
    /// less and less beyond it (S06). 0 where no distance is stated.
    #[must_use]
    pub fn near_heat(&self) -> f64 {
        self.nearest_joint_mm().map_or(0.0, |d| {
            near_reach(d, self.heat_reach.likely_mm, self.ledger)
        })
    }

    /// Made, or possibly made, before lead-free solder was common.
    fn before_lead_free(&self) -> bool {
        let year = self.ledger.value(FigureId::GUARD_FOOD_YEAR);
        self.case
            .piece
            .from_year
            .is_none_or(|from| f64::from(from) < year)
    }

    /// The worst joint that a case states, in the order leaking, open, grey, neat, sound.
    #[must_use]
    pub fn stated_joint(case: &Case) -> Option<Joint> {
        [
            Joint::Leaking,
            Joint::Open,
            Joint::GreyRepair,
            Joint::NeatRepair,
            Joint::Sound,
        ]
        .into_iter()
        .find(|j| case.parts.iter().any(|p| p.has_joint(*j)))
    }
}

fn shows_metal(bleed: crate::record::Bleed) -> bool {
    match bleed {
        crate::record::Bleed::Word(word) => word != crate::record::BleedWord::None,
        crate::record::Bleed::Fraction(f) => f > 0.0,
        crate::record::Bleed::Counted { likely, .. } => likely > 0.0,
    }
}
