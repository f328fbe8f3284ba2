//! Everything needed to weigh a course.

use std::cell::RefCell;
use std::rc::Rc;

use super::column::Column;
use super::columns::Columns;
use super::draws::{Draws, FactorScale};
use super::member::Member;
use super::prices::Prices;
use super::sample::{Dim, Sample};
use super::weights::Weights;
use super::work_block::WorkBlock;
use crate::ledger::Ledger;
use crate::record::{Case, Goal, PartName};
use crate::terms::TreatmentSet;
use crate::treatment::{Faults, Situation, Treatment};
use crate::value::ByGroup;

/// Everything needed to weigh a course.
pub(super) struct World<'a> {
    pub(super) case: &'a Case,
    pub(super) ledger: &'a Ledger,
    pub(super) sample: &'a Sample,
    pub(super) draws: &'a Draws,
    pub(super) situation: &'a Situation<'a>,
    pub(super) faults: &'a Faults,
    pub(super) prices: Prices<'a>,
    pub(super) goal: Goal,
    pub(super) weights: Option<Weights>,
    /// The cost at which the cost attribute is used up.
    pub(super) cost_scale: f64,
    /// The parts that a work is for, where a proposal names them; on other parts the fault is left.
    pub(super) only_on: Vec<(Treatment, Vec<PartName>)>,
    /// The pieces of a record of several; empty for one.
    pub(super) members: Vec<MemberWorld<'a>>,
    /// The place of the piece among several; 0 for one.
    pub(super) place: usize,
    pub(super) known: RefCell<Vec<Known>>,
    /// Factors of faults and mishaps, which many blocks of work ask for.
    pub(super) factors: RefCell<Vec<(FactorKey, Option<Column>)>>,
}

/// Identifies a cached factor.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum FactorKey {
    /// A factor that differs by group of classes.
    Row(ByGroup, Dim, FactorScale),
    /// The bad results of a treatment.
    Mishap(Treatment, FactorScale),
}

/// Cached columns: the work and the number of draws, with the result.
type Known = ((WorkBlock, TreatmentSet, usize), Rc<Columns>);

/// A member in the world it is weighed in.
pub(super) struct MemberWorld<'a> {
    pub(super) member: &'a Member,
    pub(super) world: World<'a>,
}

impl<'a> World<'a> {
    #[allow(clippy::too_many_arguments)] // all inputs of a weighing, named once
    pub(super) fn new(
        case: &'a Case,
        ledger: &'a Ledger,
        sample: &'a Sample,
        draws: &'a Draws,
        situation: &'a Situation<'a>,
        faults: &'a Faults,
        prices: Prices<'a>,
        weights: Option<Weights>,
        cost_scale: f64,
    ) -> Self {
        Self {
            case,
            ledger,
            sample,
            draws,
            situation,
            faults,
            prices,
            goal: case.aim.goal_or_default(),
            weights,
            cost_scale,
            only_on: Vec::new(),
            members: Vec::new(),
            place: 0,
            known: RefCell::default(),
            factors: RefCell::default(),
        }
    }
}
