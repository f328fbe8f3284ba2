//! What one block of work comes to in every draw: what it does to the price, what it costs, and what
//! it leaves of originality, looks, service, soundness and later choice.
//!
//! A course is one choice in each block; its outcome is made from the blocks' columns by products,
//! sums and minima alone. That is what lets most choices be ruled out without trying every course.

use std::cell::RefCell;
use std::rc::Rc;

use super::choice::Block;
use super::column::Column;
use super::draws::{Draws, FactorRows, by_class};
use super::level::Level;
use super::outcome::Weights;
use super::part_silver::PartDraws;
use super::prices::Prices;
use super::sample::{Dim, Sample};
use super::wear::Seen;
use crate::identity::{Family, Kind};
use crate::ledger::{Ledger, catalogue_text};
use crate::maths::{at_least, at_most};
use crate::record::{Case, Goal, Joint, Tarnish};
use crate::terms::Reversibility;
use crate::treatment::{
    Dose, Fault, Faults, Found, Risk, Show, Situation, State, Treatment, Value, as_found, work,
};
use crate::value::Factor;

/// Everything a course is weighed with.
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
    known: RefCell<Vec<Known>>,
}

/// Columns made before: for which work, on how many draws.
type Known = ((Block, Vec<Treatment>, usize), Rc<Columns>);

/// What one block comes to.
#[derive(Clone)]
pub(super) struct Columns {
    /// Factor on the price: wear, faults and mishaps.
    pub(super) value: Level,
    /// With a damping of several faults: ln of wear and faults, the least of them, and mishaps.
    pub(super) damped: Option<[Level; 3]>,
    pub(super) cost: Level,
    pub(super) originality: Level,
    /// How well it shows or serves, as the goal asks; 1 where it asks for neither.
    pub(super) fitness: Level,
    /// How well it will keep; the least over the blocks counts.
    pub(super) keeps: Level,
    /// What is added to that.
    pub(super) extra: Level,
    /// How much later choice is left; the least over the blocks counts.
    pub(super) choice: Level,
}

impl Columns {
    /// A block in which there is nothing to speak of.
    pub(super) fn nothing() -> Self {
        Self {
            value: Level::Same(1.0),
            damped: None,
            cost: Level::Same(0.0),
            originality: Level::Same(1.0),
            fitness: Level::Same(1.0),
            keeps: Level::Same(1.0),
            extra: Level::Same(0.0),
            choice: Level::Same(1.0),
        }
    }

    /// One side of a test where there is no lead, the other where there is.
    pub(super) fn either(clear: &Rc<Self>, lead: &Rc<Self>, there: &[bool], n: usize) -> Rc<Self> {
        if Rc::ptr_eq(clear, lead) {
            return Rc::clone(clear);
        }
        let of = |level: fn(&Self) -> &Level| level(clear).either(level(lead), there, n);
        Rc::new(Self {
            value: of(|c| &c.value),
            damped: match (&clear.damped, &lead.damped) {
                (Some(a), Some(b)) => Some(std::array::from_fn(|k| a[k].either(&b[k], there, n))),
                _ => None,
            },
            cost: of(|c| &c.cost),
            originality: of(|c| &c.originality),
            fitness: of(|c| &c.fitness),
            keeps: of(|c| &c.keeps),
            extra: of(|c| &c.extra),
            choice: of(|c| &c.choice),
        })
    }
}

/// ln of the factors of a block, summed as they come.
struct Price {
    sum: Vec<f64>,
    least: Vec<f64>,
    mishap: Vec<f64>,
    any: bool,
}

impl Price {
    fn new(n: usize) -> Self {
        Self {
            sum: vec![0.0; n],
            least: vec![0.0; n],
            mishap: vec![0.0; n],
            any: false,
        }
    }

    fn factor(&mut self, ln: &[f64]) {
        self.any = true;
        for ((sum, least), ln) in self.sum.iter_mut().zip(&mut self.least).zip(ln) {
            *sum += ln;
            *least = at_most(*least, *ln);
        }
    }

    fn mishap(&mut self, ln: &[f64]) {
        self.any = true;
        for (sum, ln) in self.mishap.iter_mut().zip(ln) {
            *sum += ln;
        }
    }
}

impl<'a> World<'a> {
    #[allow(clippy::too_many_arguments)] // everything a weighing rests on, named once
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
            known: RefCell::default(),
        }
    }

    fn rows(&self) -> FactorRows<'_> {
        FactorRows {
            ledger: self.ledger,
            class: &self.draws.class,
            sample: self.sample,
        }
    }

    fn figure(&self, id: &str) -> f64 {
        self.ledger.value(id)
    }

    /// The columns of this work in this block over the first `n` draws.
    pub(super) fn columns(&self, block: Block, done: &[Treatment], n: usize) -> Rc<Columns> {
        let same = |k: &&Known| k.0.0 == block && k.0.2 == n && k.0.1 == done;
        if let Some((_, known)) = self.known.borrow().iter().find(same) {
            return Rc::clone(known);
        }
        let columns = Rc::new(match block {
            Block::Surface => self.surface(done, n),
            Block::Keep => self.keep(done),
            Block::Test => self.test(done),
            _ => self.repairs(block, done, n),
        });
        let key = (block, done.to_vec(), n);
        self.known.borrow_mut().push((key, Rc::clone(&columns)));
        columns
    }

    fn keep(&self, done: &[Treatment]) -> Columns {
        let mut columns = Columns::nothing();
        if done.contains(&Treatment::Keeping) {
            columns.cost = self.cost(Treatment::Keeping, &[]);
            columns.extra = Level::Same(self.figure("attribute.stability.keeping"));
            columns.choice = Level::Same(self.choice(Treatment::Keeping, 0.0));
        }
        columns
    }

    fn test(&self, done: &[Treatment]) -> Columns {
        let mut columns = Columns::nothing();
        if done.contains(&Treatment::TestLead) {
            columns.cost = self.cost(Treatment::TestLead, &[]);
            columns.choice = Level::Same(self.choice(Treatment::TestLead, 0.0));
        }
        columns
    }

    fn cost(&self, t: Treatment, served: &[&Found]) -> Level {
        let column = self.prices.cost(t, served);
        column.map_or(Level::Same(0.0), Level::Drawn)
    }

    /// Dents, joins, old lead, lost parts, linings: faults that are left or answered.
    fn repairs(&self, block: Block, done: &[Treatment], n: usize) -> Columns {
        let mut price = Price::new(n);
        let (mut show, mut serves, mut keeps) = (1.0, 1.0, 1.0_f64);
        let mut served: Vec<(Treatment, Vec<&Found>)> =
            done.iter().map(|t| (*t, Vec::new())).collect();
        for found in self
            .faults
            .0
            .iter()
            .filter(|f| Block::of(f.fault) == Some(block))
        {
            let left = as_found(found);
            let answer = answer_to(found.fault, done);
            let state = answer.and_then(|t| work(t)?.leaves(found.fault));
            if let Some(t) = answer
                && let Some((_, list)) = served.iter_mut().find(|(s, _)| *s == t)
            {
                list.push(found);
            }
            let now = state.unwrap_or(left);
            if let Some(ln) = self.ln_value(found, left, now, n) {
                price.factor(&ln);
            }
            show *= self.shows(left, now);
            serves *= self.serves(found, now, answer);
            keeps = keeps.min(self.figure(&["attribute.stability.", now.keeps].concat()));
        }
        let mut columns = Columns::nothing();
        let (mut originality, mut choice) = (1.0, 1.0_f64);
        let mut cost = Level::Same(0.0);
        for (t, faults) in &served {
            let dose = self.dose(*t, faults);
            originality *= 1.0 - self.weight(*t) * dose;
            choice = choice.min(self.choice(*t, dose));
            cost = cost.with(&self.cost(*t, faults), n, |a, b| a + b);
            if let Some(ln) = self.ln_mishap(*t) {
                price.mishap(&ln[..n]);
            }
        }
        if done.contains(&Treatment::Tinning) && self.case.aim.food {
            // The new lining has a release test of its own.
            cost = cost.with(&self.cost(Treatment::TestLead, &[]), n, |a, b| a + b);
        }
        if done.contains(&Treatment::Solder) {
            let near = self.figure("attribute.stability.near_heat") * self.situation.near_heat();
            columns.extra = Level::Same(-near);
        }
        columns.cost = cost;
        columns.originality = Level::Same(originality);
        columns.choice = Level::Same(choice);
        columns.keeps = Level::Same(keeps);
        columns.fitness = Level::Same(match self.goal {
            Goal::Study => 1.0,
            Goal::KeepUse => serves,
            _ => show,
        });
        self.set_price(&mut columns, price, None, n);
        columns
    }

    /// The price factor from its logarithms, and wear where the block holds it.
    fn set_price(&self, columns: &mut Columns, price: Price, wear: Option<&[f64]>, n: usize) {
        if self.draws.damping < 1.0 {
            let ln_wear: Option<Vec<f64>> = wear.map(|wear| {
                let ln = |w: &f64| libm::log(at_least(*w, f64::MIN_POSITIVE));
                wear.iter().take(n).map(ln).collect()
            });
            let (mut sum, mut least) = (price.sum, price.least);
            if let Some(ln_wear) = ln_wear {
                for ((s, l), w) in sum.iter_mut().zip(&mut least).zip(&ln_wear) {
                    *s += w;
                    *l = at_most(*l, *w);
                }
            }
            columns.damped = Some([sum, least, price.mishap].map(|v| Level::Drawn(v.into())));
            return;
        }
        columns.value = match (price.any, wear) {
            (false, None) => Level::Same(1.0),
            (false, Some(wear)) => Level::Drawn(wear.iter().take(n).copied().collect()),
            (true, wear) => {
                let sums = price.sum.iter().zip(&price.mishap).enumerate();
                Level::Drawn(
                    sums.map(|(i, (ln, mishap))| {
                        let factor = libm::exp(ln + mishap);
                        wear.map_or(factor, |w| w[i] * factor)
                    })
                    .collect(),
                )
            }
        };
    }

    fn ln_value(&self, found: &Found, left: State, now: State, n: usize) -> Option<Vec<f64>> {
        let rows = self.rows();
        let column = match now.value {
            Value::Whole => return None,
            Value::Row(row) => {
                let prefix = ["value.factor.", row].concat();
                rows.row(&prefix, dim_of_fault(found.fault))
            }
            Value::One(id) => rows.one(id, dim_after(found.fault, id)),
            Value::NewPart => {
                let large = found.size == crate::treatment::Size::Large;
                let prefix = if large {
                    "value.factor.part_replaced"
                } else {
                    "value.part_new_minor"
                };
                rows.row(prefix, Dim::AfterWork)
            }
            Value::Eased(id) => {
                let before = self.ln_value(found, left, left, n)?;
                let stays = rows.one(id, Dim::AfterWork);
                let each = before.iter().zip(stays.iter());
                return Some(each.map(|(ln, s)| ln * libm::exp(*s)).collect());
            }
        };
        Some(column[..n].to_vec())
    }

    fn shows(&self, left: State, now: State) -> f64 {
        let full = |show: Show| match show {
            Show::Figure(id) => self.figure(id).clamp(0.0, 1.0),
            _ => 1.0,
        };
        match now.show {
            Show::Eased(id) => 1.0 - (1.0 - full(left.show)) * self.figure(id).clamp(0.0, 1.0),
            show => full(show),
        }
    }

    fn serves(&self, found: &Found, now: State, answer: Option<Treatment>) -> f64 {
        if found.fault == Fault::PartLost && answer.is_some() {
            // A large part made new serves as one fixed in its seat does; a small one fully.
            return match found.size {
                crate::treatment::Size::Large => self.figure("attribute.use.fixed"),
                crate::treatment::Size::Small => 1.0,
            };
        }
        if now.serves.is_empty() {
            1.0
        } else {
            self.figure(now.serves).clamp(0.0, 1.0)
        }
    }

    /// What is left of the price with this fault alone, on average.
    pub(super) fn price_with(&self, found: &Found, n: usize) -> f64 {
        let ln = match found.fault {
            Fault::Tarnish => self.ln_tarnish().map(|c| c[..n].to_vec()),
            _ => self.ln_value(found, as_found(found), as_found(found), n),
        };
        ln.map_or(1.0, |ln| {
            ln.iter().map(|x| libm::exp(*x)).sum::<f64>() / n as f64
        })
    }

    /// How well a piece shows with this fault alone.
    pub(super) fn shows_with(&self, state: State) -> f64 {
        self.shows(state, state)
    }

    /// How well a piece serves with this fault alone.
    pub(super) fn serves_with(&self, state: State) -> f64 {
        if state.serves.is_empty() {
            1.0
        } else {
            self.figure(state.serves).clamp(0.0, 1.0)
        }
    }

    /// How much of what is original a treatment takes, where it is the same in every draw.
    fn dose(&self, t: Treatment, served: &[&Found]) -> f64 {
        let large = served
            .iter()
            .any(|f| f.size == crate::treatment::Size::Large);
        let split = served.iter().any(|f| f.fault == Fault::Split);
        let id = match work(t).map(|w| w.dose) {
            Some(Dose::Figure(id)) => id,
            Some(Dose::BySize(_, id)) if large => id,
            Some(Dose::BySize(id, _)) => id,
            Some(Dose::Joint(_)) if split && t == Treatment::Solder => "attribute.dose.T09_split",
            Some(Dose::Joint(id)) => id,
            _ => return 0.0,
        };
        self.figure(id).clamp(0.0, 1.0)
    }

    /// How much a dose weighs by how far the treatment can be undone.
    fn weight(&self, t: Treatment) -> f64 {
        self.figure(&["attribute.weight.", t.reversibility().code()].concat())
    }

    /// Later choice a treatment leaves: what cannot be undone takes as much as there is of it; of the
    /// rest the code decides. Water and solvent that only take off what is not the piece leave all.
    fn choice(&self, t: Treatment, dose: f64) -> f64 {
        match (t, t.reversibility()) {
            (Treatment::Wash | Treatment::LacquerOff, _) => 1.0,
            (_, Reversibility::V0) => 1.0 - dose,
            (_, code) => self.figure(&["attribute.retreat.", code.code()].concat()),
        }
    }

    /// ln of what a bad result keeps, in the draws in which there is one; `None` where nothing can go
    /// wrong.
    pub(super) fn ln_mishap(&self, t: Treatment) -> Option<Column> {
        let dim = mishap_dim(t);
        match work(t)?.risk {
            Risk::None => None,
            Risk::Figures(id) => Some(by_class(&self.draws.class, |c| {
                let factor = |what: &str| {
                    let group = c.hazard_group();
                    Factor::of(
                        self.ledger
                            .figure(&["hazard.", id, ".", group, ".", what].concat()),
                    )
                };
                self.sample.ln_mishap(dim, factor("p"), factor("kept"))
            })),
            Risk::ByClass => {
                let risks = catalogue_text(t.id())?.risks;
                let columns = risks.map(|risk| match risk {
                    crate::ledger::Risk::Class(chance, size) => {
                        let p = format!("hazard.class.{chance}.p");
                        let kept = format!("hazard.class.{size}.kept");
                        let of = |id: &str| Factor::of(self.ledger.figure(id));
                        Some(self.sample.ln_mishap(dim, of(&p), of(&kept)))
                    }
                    _ => None,
                });
                let place = |k: Kind| match k {
                    Kind::Clp | Kind::Frp => 1,
                    Kind::Ens | Kind::Uns => 2,
                    Kind::Ebm | Kind::Ubm => 3,
                    Kind::Ecu | Kind::Rep | Kind::Est | Kind::Ucu | Kind::Ncp | Kind::Out => 4,
                    Kind::Sil | Kind::Wst | Kind::Fps | Kind::Fpd | Kind::Fpn | Kind::Rfp => 0,
                };
                let kinds = self.draws.kind.iter().enumerate();
                Some(
                    kinds
                        .map(|(i, k)| columns[place(*k)].as_ref().map_or(0.0, |c| c[i]))
                        .collect(),
                )
            }
        }
    }

    /// Cleaning, coats, plating and tints: all that meets the whole surface.
    #[allow(clippy::too_many_lines)] // one surface, read from top to bottom
    fn surface(&self, done: &[Treatment], n: usize) -> Columns {
        use Treatment as T;
        let draws = self.draws;
        let has = |t| done.contains(&t);
        let plated_over = has(T::Replate) || has(T::Overplate);
        let cleaned = has(T::Clean) || has(T::Foam);
        let mut price = Price::new(n);
        if let Some(ln) = &draws.ln_fixed {
            price.factor(&ln[..n]);
        }
        let tarnish = (!cleaned && !plated_over)
            .then(|| self.ln_tarnish())
            .flatten();
        if let Some(ln) = &tarnish {
            price.factor(&ln[..n]);
        }
        let lacquer = self.faults.get(Fault::BrokenLacquer);
        let lacquer = lacquer.filter(|_| !has(T::LacquerOff) && !plated_over);
        if let Some(found) = lacquer
            && let Some(ln) = self.ln_value(found, as_found(found), as_found(found), n)
        {
            price.factor(&ln);
        }
        if has(T::Replate) {
            let ln = self.rows().one("value.detail_after_replate", Dim::Detail);
            price.factor(&ln[..n]);
        }
        if has(T::Overplate) {
            let ln = self.rows().one("value.over_old", Dim::Patch);
            price.factor(&ln[..n]);
        }
        if has(T::Lacquer) {
            let ln = self.rows().one("value.after_lacquer", Dim::AfterWork);
            price.factor(&ln[..n]);
        }
        // What shows afterwards, and what the eye meets of it.
        let shown: Vec<f64> = if plated_over {
            vec![0.0; n]
        } else {
            self.bare_after(done, n)
        };
        let met: Vec<f64> = if has(T::Toning) {
            let hidden = self.figure("attribute.show.toned").clamp(0.0, 1.0);
            self.toned(done, n, &|_| hidden)
        } else {
            shown.clone()
        };
        let wear = self.wear_after(done, &shown, n);
        let mut cost = Level::Same(0.0);
        let mut steady = (1.0, 1.0_f64);
        for t in done {
            let served = super::prices::answered(*t, self.faults);
            cost = cost.with(&self.cost(*t, &served), n, |a, b| a + b);
            if let Some(ln) = self.ln_mishap(*t) {
                price.mishap(&ln[..n]);
            }
            let dose = self.dose(*t, &served);
            steady.0 *= 1.0 - self.weight(*t) * dose;
            if !matches!(t, T::Clean | T::Foam | T::Replate | T::Overplate) {
                steady.1 = steady.1.min(self.choice(*t, dose));
            }
        }
        let mut columns = Columns::nothing();
        columns.cost = cost;
        (columns.originality, columns.choice) = self.surface_left(done, steady, n);
        // How well it will keep.
        let of = |what: &str| self.figure(&["attribute.stability.", what].concat());
        let mut keeps = of("sound");
        if lacquer.is_some() {
            keeps = keeps.min(of("lacquer_broken"));
        }
        let any_joint = |j: Joint| self.case.parts.iter().any(|p| p.joint == Some(j));
        if any_joint(Joint::NeatRepair) {
            keeps = keeps.min(of("neat"));
        }
        if self.situation.active_corrosion() {
            keeps = keeps.min(of("corrosion"));
        }
        let mut extra = 0.0;
        if !plated_over && !has(T::Lacquer) {
            extra -= of("double") * draws.p_doubles;
        }
        if has(T::Lacquer) {
            extra += of("lacquer");
        }
        if has(T::LocalPlate) {
            extra -= of("patch");
        }
        if has(T::Overplate) {
            extra -= of("over_old");
        }
        columns.keeps = Level::Same(keeps);
        columns.extra = Level::Same(extra);
        columns.fitness = match self.goal {
            Goal::Study | Goal::KeepUse => Level::Same(1.0),
            _ => Level::Drawn(self.surface_shows(done, &met, tarnish.as_ref(), lacquer.is_some())),
        };
        self.set_price(&mut columns, price, Some(&wear), n);
        columns
    }

    fn ln_tarnish(&self) -> Option<Column> {
        let row = match super::draws::tarnish_of(self.case)? {
            Tarnish::Bright | Tarnish::FaintYellow | Tarnish::YellowGold => return None,
            Tarnish::Brown | Tarnish::Purple | Tarnish::Blue => "value.factor.tarnish_coloured",
            Tarnish::Grey | Tarnish::Black => "value.factor.tarnish_heavy",
        };
        Some(self.rows().row(row, Dim::TarnishFactor))
    }

    /// The bare share that shows after cleaning and a patch.
    fn bare_after(&self, done: &[Treatment], n: usize) -> Vec<f64> {
        use Treatment as T;
        let draws = self.draws;
        let has = |t| done.contains(&t);
        if has(T::LocalPlate) {
            let covers = self
                .sample
                .draw(self.ledger.figure("silver.patch.covers"), Dim::Patch);
            return draws.shown_where(n, &|p, i| {
                let f = self.bare_of_part(done, p, i);
                if p.bare_high_point {
                    f * (1.0 - covers[i].clamp(0.0, 1.0))
                } else {
                    f
                }
            });
        }
        if has(T::Foam) {
            draws.shown_where(n, &|p, i| self.bare_of_part(done, p, i))
        } else if has(T::Clean) {
            draws.shown_cleaned[..n].to_vec()
        } else {
            draws.shown[..n].to_vec()
        }
    }

    /// The bare share of one part in one draw after cleaning.
    fn bare_of_part(&self, done: &[Treatment], p: &PartDraws, i: usize) -> f64 {
        let before = p.silver.bleed[i];
        if done.contains(&Treatment::Foam) {
            // To first order in what is taken.
            let chalk = p.silver.bleed_cleaned[i] - before;
            at_most(before + chalk * self.draws.paste_over_chalk[i], 0.999)
        } else if done.contains(&Treatment::Clean) {
            p.silver.bleed_cleaned[i]
        } else {
            before
        }
    }

    /// The bare share that shows when a tint hides this share of it where it can.
    fn toned(&self, done: &[Treatment], n: usize, hides: &dyn Fn(usize) -> f64) -> Vec<f64> {
        self.draws.shown_where(n, &|p, i| {
            let f = self.bare_of_part(done, p, i);
            if p.tonable { f * (1.0 - hides(i)) } else { f }
        })
    }

    /// The wear factor afterwards.
    fn wear_after(&self, done: &[Treatment], shown: &[f64], n: usize) -> Vec<f64> {
        use Treatment as T;
        let (wear, has) = (&self.draws.wear, |t| done.contains(&t));
        if has(T::Replate) || has(T::Overplate) {
            return wear.replated[..n].to_vec();
        }
        let plain = !has(T::LocalPlate) && !has(T::Toning) && !has(T::Foam);
        if plain {
            let column = if has(T::Clean) {
                &wear.cleaned
            } else {
                &wear.as_it_is
            };
            return column[..n].to_vec();
        }
        let (z, z_replated) = (self.sample.z(Dim::Wear), self.sample.z(Dim::Replated));
        let hides = self.sample.draw(
            self.ledger.figure("value.toned.hides.decorator"),
            Dim::Patch,
        );
        let decorator: Vec<f64> = if has(T::Toning) {
            self.toned(done, n, &|i| hides[i].clamp(0.0, 1.0))
        } else {
            Vec::new()
        };
        let z_patch = self.sample.z(Dim::Patch);
        let patch = ["A", "C1", "C2"].map(|group| {
            crate::value::BUYERS
                .map(|b| Factor::of(self.ledger.figure(&format!("value.patch.{group}.{b}"))))
        });
        (0..n)
            .map(|i| {
                let z = (z[i], z_replated[i]);
                if has(T::LocalPlate) {
                    let group = match (self.draws.kind[i], self.draws.class[i].group()) {
                        (Kind::Rfp, _) | (_, "C2") => 2,
                        (_, "C1") => 1,
                        _ => 0,
                    };
                    let factor = patch[group].map(|f| libm::exp(f.ln_at(z_patch[i])));
                    let bare = [shown[i]; 3];
                    wear.for_buyers(i, z, Seen { bare, factor })
                } else if has(T::Toning) {
                    let f = shown[i];
                    let bare = [f, decorator[i], f];
                    let factor = [1.0; 3];
                    wear.for_buyers(i, z, Seen { bare, factor })
                } else {
                    wear.at_share(i, z, shown[i])
                }
            })
            .collect()
    }

    /// What the surface work leaves of originality and later choice in every draw.
    fn surface_left(&self, done: &[Treatment], steady: (f64, f64), n: usize) -> (Level, Level) {
        use Treatment as T;
        let draws = self.draws;
        let drawn: Vec<T> = done
            .iter()
            .copied()
            .filter(|t| {
                matches!(
                    t,
                    T::Clean | T::Foam | T::Replate | T::Overplate | T::LocalPlate
                )
            })
            .collect();
        if drawn.is_empty() {
            return (Level::Same(steady.0), Level::Same(steady.1));
        }
        let by_kind = |id: &str| {
            Kind::ALL.map(|k| {
                let group = match k.family() {
                    Family::Fused | Family::Close | Family::French | Family::Solid => "fused",
                    Family::ReplatedFused => "replated",
                    Family::Electroplate | Family::Outside => "electroplate",
                };
                let dose = self.figure(&["attribute.dose.", id, ".", group].concat());
                dose.clamp(0.0, 1.0)
            })
        };
        let mut originality = vec![steady.0; n];
        let mut choice = vec![steady.1; n];
        for t in drawn {
            let weight = self.weight(t);
            let doses = match work(t).map(|w| w.dose) {
                Some(Dose::ByKind(id)) => by_kind(id),
                _ => [0.0; Kind::COUNT],
            };
            let least = match t {
                T::Overplate => self.choice(t, 0.0),
                _ => 0.0,
            };
            for i in 0..n {
                let dose = match t {
                    T::Clean => draws.cleaning_dose[i].clamp(0.0, 1.0),
                    T::Foam => (draws.cleaning_dose[i] * draws.paste_over_chalk[i]).clamp(0.0, 1.0),
                    _ => doses[draws.kind[i].index()],
                };
                originality[i] *= 1.0 - weight * dose;
                let left = match t {
                    T::LocalPlate => continue,
                    // New silver over the old leaves what stripping would leave, or more.
                    T::Overplate => at_least(least, 1.0 - dose),
                    _ => 1.0 - dose,
                };
                choice[i] = at_most(choice[i], left);
            }
        }
        (
            Level::Drawn(originality.into()),
            Level::Drawn(choice.into()),
        )
    }

    /// How well the surface shows in each draw: bare metal and tarnish each take from 1. A little copper
    /// on fused plate is what its buyers expect to see.
    fn surface_shows(
        &self,
        done: &[Treatment],
        met: &[f64],
        tarnish: Option<&Column>,
        lacquer_broken: bool,
    ) -> Column {
        let full = self.figure("attribute.show.bleed_full").max(1e-6);
        let patina = self.figure("attribute.show.fused_patina");
        let of = |what: &str| {
            self.figure(&["attribute.show.", what].concat())
                .clamp(0.0, 1.0)
        };
        let mut steady = 1.0;
        if lacquer_broken {
            steady *= of("lacquer_broken");
        }
        if done.contains(&Treatment::LocalPlate) {
            steady *= of("patch");
        }
        if done.contains(&Treatment::Overplate) {
            steady *= of("over_old");
        }
        let fixed: f64 = self
            .faults
            .0
            .iter()
            .filter(|f| f.fault == Fault::FillingShows)
            .map(|_| of("fill_showing"))
            .product();
        met.iter()
            .enumerate()
            .map(|(i, shown)| {
                let expected = *shown <= patina && self.draws.kind[i].family() == Family::Fused;
                let bare = if expected {
                    1.0
                } else {
                    1.0 - at_most(shown / full, 1.0)
                };
                bare * tarnish.map_or(1.0, |ln| libm::exp(ln[i])) * steady * fixed
            })
            .collect()
    }
}

/// The first of the treatments done that answers a fault: an old part is fixed in its seat before it
/// is soldered, a filling taken out before it is set again.
pub(super) fn answer_to(fault: Fault, done: &[Treatment]) -> Option<Treatment> {
    use Treatment as T;
    let order: &[T] = match fault {
        Fault::Dents => &[T::Dents],
        Fault::Split | Fault::OpenJoint => &[T::Solder, T::LowMelt],
        Fault::LoosePart => &[T::Mechanical, T::Solder, T::LowMelt],
        Fault::CrackedMaterial => &[T::Mechanical],
        Fault::FailingFilling => &[T::RemoveFill, T::Mechanical],
        Fault::GreyRepair => &[T::RemoveLead],
        Fault::PartLost => &[T::ReplacePart],
        Fault::LiningGone => &[T::Tinning],
        Fault::GildingGone => &[T::Regild],
        _ => &[],
    };
    order.iter().copied().find(|t| done.contains(t))
}

fn dim_of_fault(fault: Fault) -> Dim {
    match fault {
        Fault::OpenJoint | Fault::GreyRepair => Dim::JointFactor,
        Fault::LoosePart | Fault::CrackedMaterial => Dim::LooseFactor,
        Fault::FailingFilling | Fault::FillingShows => Dim::FillingFactor,
        Fault::PartLost => Dim::MissingFactor,
        Fault::LiningGone | Fault::GildingGone => Dim::LiningFactor,
        Fault::BrokenLacquer => Dim::LacquerFactor,
        Fault::Tarnish => Dim::TarnishFactor,
        _ => Dim::DentFactor,
    }
}

fn dim_after(fault: Fault, id: &str) -> Dim {
    match fault {
        Fault::LiningGone | Fault::GildingGone => Dim::Tin,
        _ if id == "value.after_repair" => Dim::AfterRepair,
        _ => Dim::AfterWork,
    }
}

fn mishap_dim(t: Treatment) -> Dim {
    use Treatment as T;
    match t {
        T::Clean | T::Foam => Dim::HazardClean,
        T::Solder | T::LowMelt => Dim::HazardRepair,
        T::RemoveLead => Dim::HazardRemove,
        T::Replate | T::Overplate | T::LocalPlate => Dim::HazardReplate,
        T::Dents => Dim::HazardDents,
        T::RemoveFill => Dim::HazardFilling,
        T::Mechanical => Dim::HazardFix,
        T::Tinning | T::Regild => Dim::HazardTin,
        T::ReplacePart => Dim::HazardPart,
        _ => Dim::HazardCoat,
    }
}
