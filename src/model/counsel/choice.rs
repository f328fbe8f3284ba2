//! The blocks that make up a course, and the choices in each.
//!
//! A course is one choice in each block; the first choice leaves everything in the block as it is. The rules
//! judge each treatment as if the other steps of the course were done. What a treatment needs from other
//! blocks is kept as flags, so that a course can be checked without running the rules again.

use crate::ledger::FigureId;
use crate::ledger::Ground;
use std::rc::Rc;

use super::prices::answered;
use super::wording::course as words;
use super::work_block::WorkBlock;
use super::world::World;
use crate::record::{Case, Dents, Fill, Joint, Lacquer, Split, Tarnish};
use crate::treatment::{
    Fault, LeadStatus, Outcome, Situation, Treatment, Verdict, answer_to, check, work, worst,
};

/// The steps in the order in which they are done, each once.
pub(super) fn in_order(steps: &[Treatment]) -> Vec<Treatment> {
    let order = Treatment::WEIGHED.into_iter();
    order.filter(|t| steps.contains(t)).collect()
}

/// What a step needs another block to have done.
pub(super) mod needed {
    /// Splits and open joints are closed.
    pub(in crate::counsel) const JOINTS: u8 = 1;
    /// Splits are mended before the metal is pushed.
    pub(in crate::counsel) const PUSHED_SPLIT: u8 = 2;
    /// Splits are mended before it is plated.
    pub(in crate::counsel) const PLATED_SPLIT: u8 = 32;
    /// Nothing leaks.
    pub(in crate::counsel) const LEAK: u8 = 4;
    /// The old lead repair is removed.
    pub(in crate::counsel) const LEAD_OUT: u8 = 8;
    /// The whole piece is plated.
    pub(in crate::counsel) const PLATED: u8 = 16;
}

/// One choice in a block.
#[derive(Clone, Debug)]
pub(super) struct BlockChoice {
    pub(super) block: WorkBlock,
    /// Its steps, in order.
    pub(super) steps: Vec<Treatment>,
    /// What is done if no lead is found, and if lead is found; without a test, both equal the steps.
    pub(super) sides: [Vec<Treatment>; 2],
    /// Why it cannot be advised; empty when it can.
    pub(super) barred: Vec<Verdict>,
    /// Its conditions.
    pub(super) conditions: Vec<Verdict>,
    /// What it needs from other blocks, and what it gives them, for each result of the test.
    pub(super) needs: [u8; 2],
    pub(super) serves: [u8; 2],
}

/// Whether a test for lead comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Tested {
    /// The rules use what is recorded.
    AsRecorded,
    /// The steps depend on the result.
    First,
}

/// The verdicts on a treatment under one status of lead, or as recorded, kept so that the rules run once for
/// each.
type Ruling = ((Treatment, Option<LeadStatus>), Rc<Vec<Verdict>>);

pub(super) struct Rulings<'a> {
    world: &'a World<'a>,
    known: std::cell::RefCell<Vec<Ruling>>,
}

impl<'a> Rulings<'a> {
    pub(super) fn new(world: &'a World<'a>) -> Self {
        Self {
            world,
            known: std::cell::RefCell::default(),
        }
    }

    /// The verdicts on a treatment, assuming the other steps are done; `lead` is the result of a test, or
    /// `None` for lead as recorded.
    pub(super) fn granted(&self, t: Treatment, lead: Option<LeadStatus>) -> Rc<Vec<Verdict>> {
        let key = (t, lead);
        if let Some((_, known)) = self.known.borrow().iter().find(|(k, _)| *k == key) {
            return Rc::clone(known);
        }
        let verdicts = Rc::new(self.ask(t, lead));
        self.known.borrow_mut().push((key, Rc::clone(&verdicts)));
        verdicts
    }

    fn ask(&self, t: Treatment, lead: Option<LeadStatus>) -> Vec<Verdict> {
        let s = self.world.situation;
        let granted = |s: &Situation| Self::granted_case(t, s.case);
        let cases: Vec<Case> = s.each.iter().map(granted).collect();
        let case = granted(s);
        let mut next = self.granted_situation(t, lead, s, &case);
        next.each = (s.each.iter().zip(&cases))
            .map(|(s, case)| self.granted_situation(t, lead, s, case))
            .collect();
        check(t, &next)
    }

    /// The case with what other steps do first taken as done.
    fn granted_case(t: Treatment, case: &Case) -> Case {
        use Treatment as T;
        let mut case = case.clone();
        for p in &mut case.parts {
            let joints = matches!(t, T::Replate | T::Overplate | T::LocalPlate | T::Lacquer);
            if joints {
                p.mend_joints(&[Joint::Open, Joint::Leaking]);
            }
            if t == T::LowMelt {
                p.mend_joints(&[Joint::GreyRepair]);
            }
            if joints || t == T::Dents {
                if p.split == Some(Split::Through) {
                    p.split = Some(Split::Crease);
                }
                if p.dents == Some(Dents::Split) {
                    p.dents = Some(Dents::Minor);
                }
            }
        }
        case
    }

    /// The situation once other steps have done what comes first.
    fn granted_situation<'b>(
        &self,
        t: Treatment,
        lead: Option<LeadStatus>,
        s: &Situation<'b>,
        case: &'b Case,
    ) -> Situation<'b> {
        let mut next = Situation {
            case,
            joint: Situation::stated_joint(case),
            each: Vec::new(),
            ..s.clone()
        };
        if let Some(lead) = lead {
            next.lead = lead;
        }
        next.lacquer_off = true;
        next.to_be_plated |= t == Treatment::Dents && self.worn_skin();
        next
    }

    /// The skin over a dent is so worn that pushing it out only makes sense if new silver follows.
    fn worn_skin(&self) -> bool {
        let s = self.world.situation;
        s.body_bleed >= s.ledger.value(FigureId::GUARD_BLEED_NO_CLEAN)
            || s.worn_through >= s.ledger.value(FigureId::GUARD_KIND_BARRED)
    }

    /// The choice with these steps in a block.
    pub(super) fn choice(
        &self,
        block: WorkBlock,
        steps: &[Treatment],
        tested: Tested,
    ) -> BlockChoice {
        let steps = in_order(steps);
        let mut choice = BlockChoice {
            block,
            sides: [steps.clone(), steps.clone()],
            steps,
            barred: Vec::new(),
            conditions: Vec::new(),
            needs: [0; 2],
            serves: [0; 2],
        };
        match tested {
            Tested::AsRecorded => {
                for t in choice.steps.clone() {
                    for verdict in self.granted(t, None).iter() {
                        choice.note(verdict);
                    }
                }
            }
            Tested::First => {
                for (side, lead) in [LeadStatus::Absent, LeadStatus::Present]
                    .into_iter()
                    .enumerate()
                {
                    let allowed =
                        |t: &Treatment| worst(&self.granted(*t, Some(lead))).can_be_advised();
                    let kept: Vec<Treatment> =
                        choice.steps.iter().copied().filter(allowed).collect();
                    choice.sides[side] = whole(kept, self.world);
                    for t in choice.sides[side].clone() {
                        for verdict in self.granted(t, Some(lead)).iter() {
                            choice.note(verdict);
                        }
                    }
                }
                // A step that neither result allows bars the choice, because the choice would not be what was
                // named.
                for t in choice.steps.clone() {
                    if !choice.sides.iter().any(|side| side.contains(&t)) {
                        let clear = self.granted(t, Some(LeadStatus::Absent));
                        for verdict in clear.iter().filter(|v| !v.outcome.can_be_advised()) {
                            choice.note(verdict);
                        }
                        if worst(&clear).can_be_advised() {
                            choice.note(&Verdict {
                                ground: Ground::Need,
                                outcome: Outcome::Barred,
                                reason: words::NOT_BY_ITSELF.to_owned(),
                                lifted_by: words::WITH_THE_REST.to_owned(),
                            });
                        }
                    }
                }
            }
        }
        for side in 0..2 {
            let done = choice.sides[side].clone();
            let lead = match (tested, side) {
                (Tested::AsRecorded, _) => self.world.situation.lead_for(Treatment::LowMelt),
                (Tested::First, 0) => LeadStatus::Absent,
                _ => LeadStatus::Present,
            };
            choice.needs[side] = self.needs(&done, lead);
            choice.serves[side] = serves(&done, self.world);
        }
        choice
    }

    fn needs(&self, done: &[Treatment], lead: LeadStatus) -> u8 {
        use Treatment as T;
        let mut needs = 0;
        for t in done {
            needs |= match t {
                T::Replate | T::Overplate => needed::JOINTS | needed::PLATED_SPLIT,
                T::Dents if self.worn_skin() => needed::PUSHED_SPLIT | needed::PLATED,
                T::Dents => needed::PUSHED_SPLIT,
                T::Lacquer => needed::LEAK,
                T::LowMelt if lead == LeadStatus::Present => needed::LEAD_OUT,
                _ => 0,
            };
        }
        needs
    }

    /// The needs that are already met because the piece does not have the fault.
    pub(super) fn given(&self) -> u8 {
        let faults = self.world.faults;
        let leaks = self.world.case.parts.iter();
        let mut given = 0;
        // Where a part is only loose, no bath gets in once the part is taken off.
        if !faults.has(Fault::OpenJoint) {
            given |= needed::JOINTS;
        }
        if !faults.has(Fault::Split) {
            given |= needed::PUSHED_SPLIT | needed::PLATED_SPLIT;
        }
        if !leaks.into_iter().any(|p| p.has_joint(Joint::Leaking)) {
            given |= needed::LEAK;
        }
        if !faults.has(Fault::GreyRepair) {
            given |= needed::LEAD_OUT;
        }
        given
    }

    /// The choices of a block, leaving first; barred ones are left out.
    pub(super) fn choices(&self, block: WorkBlock, tested: Tested) -> Vec<BlockChoice> {
        let mut made: Vec<BlockChoice> = vec![self.choice(block, &[], tested)];
        for steps in self.offered(block) {
            let choice = self.choice(block, &steps, tested);
            let same = |c: &BlockChoice| c.sides == choice.sides;
            if choice.barred.is_empty() && !made.iter().any(same) {
                made.push(choice);
            }
        }
        made
    }

    /// Every set of steps in a block that has something to do, before the rules are applied.
    pub(super) fn offered(&self, block: WorkBlock) -> Vec<Vec<Treatment>> {
        use Treatment as T;
        let faults = self.world.faults;
        match block {
            WorkBlock::Shape if faults.has(Fault::Dents) => vec![vec![T::Dents]],
            WorkBlock::Lead if faults.has(Fault::GreyRepair) => vec![vec![T::RemoveLead]],
            WorkBlock::Part if faults.has(Fault::PartLost) => vec![vec![T::ReplacePart]],
            WorkBlock::Lining => {
                let each = [
                    (Fault::LiningGone, T::Tinning),
                    (Fault::GildingGone, T::Regild),
                ];
                let there = each.into_iter().filter(|(f, _)| faults.has(*f));
                there.map(|(_, t)| vec![t]).collect()
            }
            WorkBlock::Keep => vec![vec![T::Keeping]],
            WorkBlock::Joins => {
                let mut sets = Vec::new();
                for heat in [None, Some(T::Solder), Some(T::LowMelt)] {
                    for fix in [None, Some(T::Mechanical)] {
                        for out in [None, Some(T::RemoveFill)] {
                            let set: Vec<T> = [heat, fix, out].into_iter().flatten().collect();
                            if !set.is_empty() && self.none_idle(&set) {
                                sets.push(set);
                            }
                        }
                    }
                }
                sets
            }
            WorkBlock::Surface => self.surfaces(),
            _ => Vec::new(),
        }
    }

    /// Whether every treatment in the set is the first answer to some fault.
    fn none_idle(&self, set: &[Treatment]) -> bool {
        let found = &self.world.faults.0;
        set.iter()
            .all(|t| found.iter().any(|f| answer_to(f.fault, set) == Some(*t)))
    }

    fn surfaces(&self) -> Vec<Vec<Treatment>> {
        use Treatment as T;
        let need = |t: T| not_needed(t, self.world).is_none();
        let wanted = |t: T| self.world.wants(t);
        let broken = self.world.faults.has(Fault::BrokenLacquer);
        let chalk_barred = !worst(&self.granted(T::Clean, None)).can_be_advised();
        let mut cleans = vec![None];
        if need(T::Clean) {
            cleans.push(Some(T::Clean));
        }
        if need(T::Foam) && (wanted(T::Foam) || chalk_barred) {
            cleans.push(Some(T::Foam));
        }
        let mut plates = vec![None];
        plates.extend(
            [T::LocalPlate, T::Overplate, T::Replate]
                .into_iter()
                .filter(|t| need(*t))
                .map(Some),
        );
        let mut covers = vec![None];
        covers.extend(
            [T::Toning, T::Lacquer]
                .into_iter()
                .filter(|t| need(*t))
                .map(Some),
        );
        let mut sets = Vec::new();
        for clean in cleans {
            for plate in &plates {
                for cover in &covers {
                    let whole = matches!(plate, Some(T::Overplate | T::Replate));
                    if clean.is_some() && whole
                        || *cover == Some(T::Toning) && plate.is_some()
                        || *cover == Some(T::Lacquer)
                            && !(clean.is_some() || whole || self.world.is_bright())
                    {
                        continue;
                    }
                    let mut set: Vec<T> = [clean, *plate, *cover].into_iter().flatten().collect();
                    if set.is_empty() {
                        continue;
                    }
                    if clean.is_some() {
                        set.push(T::Wash);
                    }
                    if broken && (clean.is_some() || whole) {
                        set.push(T::LacquerOff);
                    }
                    sets.push(set);
                }
            }
        }
        sets
    }
}

/// Drops steps that make no sense without the steps that a rule has refused.
fn whole(mut kept: Vec<Treatment>, world: &World) -> Vec<Treatment> {
    use Treatment as T;
    let has = |kept: &[T], t: T| kept.contains(&t);
    if world.faults.has(Fault::BrokenLacquer) && !has(&kept, T::LacquerOff) {
        kept.retain(|t| !matches!(t, T::Clean | T::Foam | T::Overplate | T::Replate));
    }
    if !has(&kept, T::Clean) && !has(&kept, T::Foam) {
        kept.retain(|t| *t != T::Wash);
    }
    let bare = [T::Clean, T::Foam, T::Overplate, T::Replate];
    if !bare.iter().any(|t| has(&kept, *t)) && !world.is_bright() {
        kept.retain(|t| *t != T::Lacquer);
    }
    kept
}

fn serves(done: &[Treatment], world: &World) -> u8 {
    use Treatment as T;
    let mut serves = 0;
    let has = |t| done.contains(&t);
    if has(T::Solder) || has(T::LowMelt) {
        serves |= needed::JOINTS | needed::LEAK;
        serves |= needed::PUSHED_SPLIT | needed::PLATED_SPLIT;
    }
    if has(T::RemoveLead) {
        serves |= needed::LEAD_OUT;
    }
    if has(T::Replate) || has(T::Overplate) {
        serves |= needed::PLATED;
    }
    let _ = world;
    serves
}

impl BlockChoice {
    pub(super) fn note(&mut self, verdict: &Verdict) {
        let list = if verdict.outcome.can_be_advised() {
            &mut self.conditions
        } else {
            &mut self.barred
        };
        if !list.contains(verdict) {
            list.push(verdict.clone());
        }
    }

    pub(super) fn leaves(&self) -> bool {
        self.steps.is_empty()
    }
}

impl World<'_> {
    /// Whether the treatment was asked about, quoted, or is in the proposal.
    pub(super) fn wants(&self, t: Treatment) -> bool {
        self.asked().contains(&t) || self.prices.is_quoted(t)
    }

    /// The treatments that the user asked about by name.
    pub(super) fn asked(&self) -> Vec<Treatment> {
        match &self.case.aim.asked {
            Some(crate::record::Asked::Treatments(list)) => list.clone(),
            Some(crate::record::Asked::Proposal) => self
                .case
                .proposal
                .steps
                .iter()
                .map(|s| s.treatment)
                .collect(),
            None => Vec::new(),
        }
    }

    /// Whether it is recorded as bright all over, without lacquer in the way.
    pub(super) fn is_bright(&self) -> bool {
        super::draws::tarnish_of(self.case) == Some(Tarnish::Bright)
            && !self.faults.has(Fault::BrokenLacquer)
    }

    fn sound_lacquer(&self) -> bool {
        let has = |l: Lacquer| self.case.parts.iter().any(|p| p.lacquer == Some(l));
        has(Lacquer::Sound) && !has(Lacquer::Broken) && !has(Lacquer::Yellowed)
    }
}

/// Why a treatment has nothing to do; `None` when it has. If the user asks about work on a surface that
/// hardly needs it, the work is still weighed.
pub(super) fn not_needed(t: Treatment, world: &World) -> Option<&'static str> {
    use Treatment as T;
    let idle = work(t)?.idle?;
    let there = !answered(t, world.faults).is_empty();
    match t {
        T::TestLead => (!world.situation.lead_test_would_tell()).then_some(idle),
        T::Clean | T::Foam if world.sound_lacquer() => Some(words::UNDER_LACQUER),
        T::Clean | T::Foam if world.faults.has(Fault::BrokenLacquer) => None,
        T::Clean | T::Foam => match super::draws::tarnish_of(world.case) {
            None => Some(words::NO_TARNISH),
            Some(Tarnish::Bright) => Some(words::BRIGHT),
            Some(_) => None,
        },
        T::Lacquer => world.sound_lacquer().then_some(idle),
        T::LocalPlate => {
            let patchable = world.draws.parts.iter().any(|p| p.bare_high_point);
            (!patchable).then_some(idle)
        }
        T::Toning => {
            let tonable = world.draws.parts.iter().any(|p| p.tonable);
            (!tonable).then_some(idle)
        }
        T::RemoveFill => {
            let filled = |f: Option<Fill>| f.is_some_and(|f| f != Fill::None);
            let asked = world.wants(t) && world.case.parts.iter().any(|p| filled(p.fill));
            (!there && !asked).then_some(idle)
        }
        T::Replate | T::Overplate => (!there && !world.wants(t)).then_some(idle),
        _ => (!there).then_some(idle),
    }
}
