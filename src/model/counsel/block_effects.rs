//! What a block of work does in every draw: to the price and the cost, and to originality, looks, service,
//! soundness and later choice.

use std::rc::Rc;

use super::column::Column;
use super::columns::{Columns, PriceFactors};
use super::draws::{FactorRows, FactorScale, by_class};
use super::part_silver::PartDraws;
use super::per_draw::PerDraw;
use super::sample::Dim;
use super::wear::Seen;
use super::work_block::WorkBlock;
use super::world::{FactorKey, World};
use crate::identity::{Family, Kind};
use crate::ledger::{FigureId, catalogue_text};
use crate::maths::{at_least, at_most, mean};
use crate::record::{Goal, Joint, Tarnish};
use crate::terms::{Reversibility, TreatmentSet};
use crate::treatment::{
    Dose, Fault, FaultState, Found, MishapRisk, Show, Treatment, Value, answer_to, as_found, work,
};
use crate::value::factor_rows as rows;
use crate::value::{BUYERS, Belonging, ByGroup, Factor, Unit};

/// The effect of a patch of new silver on each buyer, by group of classes.
const PATCH: [[FigureId; 3]; 3] = [
    FigureId::family("value.patch.A.", BUYERS, ""),
    FigureId::family("value.patch.C1.", BUYERS, ""),
    FigureId::family("value.patch.C2.", BUYERS, ""),
];

/// The weight of a dose, by how far the treatment can be undone.
const WEIGHT: [FigureId; 5] =
    FigureId::family("attribute.weight.", ["V0", "V1", "V2", "V3", "V4"], "");

/// Chance and size of a bad result by the classes of the catalogue.
const MISHAP_CHANCE: [FigureId; 4] = FigureId::family("hazard.class.", ["1", "2", "3", "4"], ".p");

const MISHAP_KEPT: [FigureId; 3] = FigureId::family("hazard.class.", ["a", "b", "c"], ".kept");

impl World<'_> {
    /// The factor from the cache, or else made by `make`.
    fn factor(&self, asked: FactorKey, make: &dyn Fn() -> Option<Column>) -> Option<Column> {
        if let Some((_, known)) = self.factors.borrow().iter().find(|(a, _)| *a == asked) {
            return known.clone();
        }
        let made = make();
        self.factors.borrow_mut().push((asked, made.clone()));
        made
    }

    /// A factor that differs by group of classes.
    fn row(&self, row: ByGroup, dim: Dim, scale: FactorScale) -> Option<Column> {
        let make = || Some(self.rows(scale).row(row, dim));
        self.factor(FactorKey::Row(row, dim, scale), &make)
    }

    fn rows(&self, scale: FactorScale) -> FactorRows<'_> {
        FactorRows {
            ledger: self.ledger,
            class: &self.draws.class,
            sample: self.sample,
            scale,
        }
    }

    /// The form in which the factors on a price are accumulated.
    fn scale(&self) -> FactorScale {
        if self.draws.damping < 1.0 {
            FactorScale::Ln
        } else {
            FactorScale::Factor
        }
    }

    fn price(&self, n: usize) -> PriceFactors {
        PriceFactors::new(self.scale() == FactorScale::Ln, n)
    }

    fn figure(&self, id: FigureId) -> f64 {
        self.ledger.value(id)
    }

    /// The columns of this work in this block over the first `n` draws.
    pub(super) fn columns(&self, block: WorkBlock, done: &[Treatment], n: usize) -> Rc<Columns> {
        let key = (block, TreatmentSet::of(done), n);
        if let Some((_, known)) = self.known.borrow().iter().find(|(k, _)| *k == key) {
            return Rc::clone(known);
        }
        let columns = Rc::new(match block {
            _ if !self.members.is_empty() => self.of_members(block, done, n),
            WorkBlock::Surface => self.surface(done, n),
            WorkBlock::Keep => self.keep(done),
            WorkBlock::Test => self.test(done),
            _ => self.repairs(block, done, n),
        });
        self.known.borrow_mut().push((key, Rc::clone(&columns)));
        columns
    }

    fn keep(&self, done: &[Treatment]) -> Columns {
        let mut columns = Columns::nothing();
        let kept = done.contains(&Treatment::Keeping);
        if self.situation.active_corrosion() {
            columns.keeps = PerDraw::Same(self.figure(if kept {
                FigureId::ATTRIBUTE_STABILITY_CORROSION_DRY
            } else {
                FigureId::ATTRIBUTE_STABILITY_CORROSION
            }));
        }
        if kept {
            let served = super::prices::answered(Treatment::Keeping, self.faults);
            columns.cost = self.cost(Treatment::Keeping, &served);
            columns.extra = PerDraw::Same(self.figure(FigureId::ATTRIBUTE_STABILITY_KEEPING));
            columns.choice = PerDraw::Same(self.choice(Treatment::Keeping, 0.0));
        }
        columns
    }

    fn test(&self, done: &[Treatment]) -> Columns {
        let mut columns = Columns::nothing();
        if done.contains(&Treatment::TestLead) {
            columns.cost = self.cost(Treatment::TestLead, &[]);
            columns.choice = PerDraw::Same(self.choice(Treatment::TestLead, 0.0));
        }
        columns
    }

    fn cost(&self, t: Treatment, served: &[&Found]) -> PerDraw {
        let column = self.prices.cost(t, served);
        column.map_or(PerDraw::Same(0.0), PerDraw::Drawn)
    }

    /// The part of a fault that this work answers, and the part that is left because a proposal names other
    /// parts for the work.
    pub(super) fn met_by(&self, t: Treatment, found: &Found) -> [Option<Found>; 2] {
        match self.only_on.iter().find(|(named, _)| *named == t) {
            Some((_, parts)) => found.divided(parts, self.case, self.ledger),
            None => [Some(found.clone()), None],
        }
    }

    /// Dents, joins, old lead, lost parts, linings: faults that are left or answered.
    fn repairs(&self, block: WorkBlock, done: &[Treatment], n: usize) -> Columns {
        let mut price = self.price(n);
        let (mut show, mut serves, mut keeps) = (1.0, 1.0, 1.0_f64);
        let mut served: Vec<(Treatment, Vec<Found>)> =
            done.iter().map(|t| (*t, Vec::new())).collect();
        for found in self
            .faults
            .0
            .iter()
            .filter(|f| WorkBlock::of(f.fault) == Some(block))
        {
            let left = as_found(found);
            let mut answer = answer_to(found.fault, done);
            let mut now = answer
                .and_then(|t| work(t)?.leaves(found.fault))
                .unwrap_or(left);
            if let Some(t) = answer {
                let [met, missed] = self.met_by(t, found);
                if let Some((_, list)) = served.iter_mut().find(|(s, _)| *s == t) {
                    list.extend(met);
                }
                if let Some(missed) = missed {
                    now = as_found(&missed);
                    answer = None;
                }
            }
            if let Some(factor) = self.of_fault(found, left, now, self.scale()) {
                price.fault(&factor, n);
            }
            show *= self.shows(left, now);
            serves *= self.serves(found, now, answer);
            keeps = keeps.min(self.figure(now.keeps));
        }
        let mut columns = Columns::nothing();
        let (mut originality, mut choice) = (1.0, 1.0_f64);
        let mut cost = PerDraw::Same(0.0);
        for (t, faults) in &served {
            let faults: Vec<&Found> = faults.iter().collect();
            let dose = self.dose(*t, &faults);
            originality *= 1.0 - self.weight(*t) * dose;
            choice = choice.min(self.choice(*t, dose));
            cost = cost.with(&self.cost(*t, &faults), n, |a, b| a + b);
            if let Some(factor) = self.mishap(*t, self.scale()) {
                price.mishap(&factor, n);
            }
        }
        if done.contains(&Treatment::Tinning) && self.case.aim.food {
            // The new lining needs a separate release test.
            cost = cost.with(&self.cost(Treatment::TestLead, &[]), n, |a, b| a + b);
        }
        if done.contains(&Treatment::Solder) {
            let near =
                self.figure(FigureId::ATTRIBUTE_STABILITY_NEAR_HEAT) * self.situation.near_heat();
            columns.extra = PerDraw::Same(-near);
        }
        columns.cost = cost;
        columns.originality = PerDraw::Same(originality);
        columns.choice = PerDraw::Same(choice);
        columns.keeps = PerDraw::Same(keeps);
        columns.fitness = PerDraw::Same(match self.goal {
            Goal::Study => 1.0,
            Goal::KeepUse => serves,
            _ => show,
        });
        Self::set_price(&mut columns, price, None, n);
        columns
    }

    /// Sets the price factor of a block, including wear if the block accounts for it.
    fn set_price(columns: &mut Columns, price: PriceFactors, wear: Option<&Column>, n: usize) {
        match price {
            PriceFactors::Damped([mut sum, mut least, mishap]) => {
                if let Some(wear) = wear {
                    for ((s, l), w) in sum.iter_mut().zip(&mut least).zip(wear.iter()) {
                        let ln = libm::log(at_least(*w, f64::MIN_POSITIVE));
                        *s += ln;
                        *l = at_most(*l, ln);
                    }
                }
                columns.damped = Some([sum, least, mishap].map(|v| PerDraw::Drawn(v.into())));
            }
            PriceFactors::Whole(product) => {
                columns.value = match wear {
                    None => product,
                    Some(wear) => product.times(wear, n),
                };
            }
        }
    }

    /// The factor of a fault on the price, left or answered.
    fn of_fault(
        &self,
        found: &Found,
        left: FaultState,
        now: FaultState,
        scale: FactorScale,
    ) -> Option<Column> {
        Some(match now.value {
            Value::Whole => return None,
            Value::Row(row) => return self.row(row, dim_of_fault(found.fault), scale),
            Value::One(id) => self.rows(scale).one(id, dim_after(found.fault, id)),
            Value::NewPart => {
                let large = found.size == crate::treatment::Size::Large;
                let row = if large {
                    rows::PART_REPLACED
                } else {
                    rows::PART_NEW_MINOR
                };
                return self.row(row, Dim::AfterWork, scale);
            }
            Value::Eased(id) => {
                let before = self.of_fault(found, left, left, FactorScale::Ln)?;
                let stays = self.rows(FactorScale::Factor).one(id, Dim::AfterWork);
                let ln = before.iter().zip(stays.iter()).map(|(ln, s)| ln * s);
                match scale {
                    FactorScale::Ln => ln.collect(),
                    FactorScale::Factor => ln.map(libm::exp).collect(),
                }
            }
        })
    }

    fn shows(&self, left: FaultState, now: FaultState) -> f64 {
        let full = |show: Show| match show {
            Show::Figure(id) => self.figure(id).clamp(0.0, 1.0),
            _ => 1.0,
        };
        match now.show {
            Show::Eased(id) => 1.0 - (1.0 - full(left.show)) * self.figure(id).clamp(0.0, 1.0),
            show => full(show),
        }
    }

    fn serves(&self, found: &Found, now: FaultState, answer: Option<Treatment>) -> f64 {
        if found.fault == Fault::PartLost && answer.is_some() {
            // A large part made new serves as well as one fixed in its seat; a small one serves fully.
            return match found.size {
                crate::treatment::Size::Large => self.figure(FigureId::ATTRIBUTE_USE_FIXED),
                crate::treatment::Size::Small => 1.0,
            };
        }
        self.serves_with(now)
    }

    /// The mean factor on the price with this fault alone.
    pub(super) fn price_with(&self, found: &Found, n: usize) -> f64 {
        if !self.members.is_empty() {
            let units: Vec<Unit> = self
                .members
                .iter()
                .map(|m| {
                    let own = m.world.faults.get(found.fault);
                    m.member
                        .unit(own.map_or(1.0, |own| m.world.price_with(own, n)))
                })
                .collect();
            let premium = self.draws.premium.as_ref().map_or(1.0, Column::median);
            return Belonging::of(&self.case.pieces, premium, self.ledger).lot(&units);
        }
        let factor = match found.fault {
            Fault::Tarnish => self.tarnish(FactorScale::Factor),
            _ => self.of_fault(found, as_found(found), as_found(found), FactorScale::Factor),
        };
        factor.map_or(1.0, |factor| mean(&factor[..n]))
    }

    /// How well a piece displays with this fault alone.
    pub(super) fn shows_with(&self, state: FaultState) -> f64 {
        self.shows(state, state)
    }

    /// How well a piece serves with this fault alone.
    pub(super) fn serves_with(&self, state: FaultState) -> f64 {
        state
            .serves
            .map_or(1.0, |id| self.figure(id).clamp(0.0, 1.0))
    }

    /// How much original material a treatment takes, where it is the same in every draw.
    fn dose(&self, t: Treatment, served: &[&Found]) -> f64 {
        let large = served
            .iter()
            .any(|f| f.size == crate::treatment::Size::Large);
        let split = served.iter().any(|f| f.fault == Fault::Split);
        let id = match work(t).map(|w| w.dose) {
            Some(Dose::BySize(small, big)) => {
                if large {
                    big
                } else {
                    small
                }
            }
            Some(Dose::Joint(_)) if split && t == Treatment::Solder => {
                FigureId::ATTRIBUTE_DOSE_T09_SPLIT
            }
            Some(Dose::Figure(id) | Dose::Joint(id)) => id,
            _ => return 0.0,
        };
        self.figure(id).clamp(0.0, 1.0)
    }

    /// The weight of a dose, by how far the treatment can be undone.
    fn weight(&self, t: Treatment) -> f64 {
        self.figure(WEIGHT[t.reversibility() as usize])
    }

    /// The later choice that a treatment leaves. What cannot be undone removes the share it takes; for other
    /// treatments the reversibility code decides. Water and solvent that only remove what is not part of the
    /// piece leave all choice.
    fn choice(&self, t: Treatment, dose: f64) -> f64 {
        match (t, t.reversibility()) {
            (Treatment::Wash | Treatment::LacquerOff, _) => 1.0,
            (_, Reversibility::V0) => 1.0 - dose,
            (_, Reversibility::V1) => self.figure(FigureId::ATTRIBUTE_RETREAT_V1),
            (_, Reversibility::V2) => self.figure(FigureId::ATTRIBUTE_RETREAT_V2),
            (_, Reversibility::V3) => self.figure(FigureId::ATTRIBUTE_RETREAT_V3),
            (_, Reversibility::V4) => self.figure(FigureId::ATTRIBUTE_RETREAT_V4),
        }
    }

    /// The factor that a bad result leaves, in the draws with a bad result; `None` if nothing can go wrong.
    pub(super) fn mishap(&self, t: Treatment, scale: FactorScale) -> Option<Column> {
        self.factor(FactorKey::Mishap(t, scale), &|| self.drawn_mishap(t, scale))
    }

    fn drawn_mishap(&self, t: Treatment, scale: FactorScale) -> Option<Column> {
        let dim = mishap_dim(t);
        match work(t)?.risk {
            MishapRisk::None => None,
            MishapRisk::Figures(mishaps) => Some(by_class(&self.draws.class, |c| {
                let place = c.hazard_place();
                let of = |id| Factor::of(self.ledger.figure(id));
                let (chance, kept) = (of(mishaps.chance[place]), of(mishaps.kept[place]));
                self.sample.mishap((dim, self.place), chance, kept, scale)
            })),
            MishapRisk::ByClass => {
                let risks = catalogue_text(t.id())?.risks;
                let columns = risks.map(|risk| match risk {
                    crate::ledger::Risk::Class(chance, size) => {
                        let of = |id| Factor::of(self.ledger.figure(id));
                        let chance = of(MISHAP_CHANCE[usize::from(chance) - 1]);
                        let kept = of(MISHAP_KEPT[size as usize - 'a' as usize]);
                        Some(self.sample.mishap((dim, self.place), chance, kept, scale))
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
                let none = match scale {
                    FactorScale::Ln => 0.0,
                    FactorScale::Factor => 1.0,
                };
                Some(
                    kinds
                        .map(|(i, k)| columns[place(*k)].as_ref().map_or(none, |c| c[i]))
                        .collect(),
                )
            }
        }
    }

    /// Cleaning, coats, plating and tints: everything that affects the whole surface.
    #[allow(clippy::too_many_lines)] // one surface, read from top to bottom
    fn surface(&self, done: &[Treatment], n: usize) -> Columns {
        use Treatment as T;
        let draws = self.draws;
        let has = |t| done.contains(&t);
        let plated_over = has(T::Replate) || has(T::Overplate);
        let cleaned = has(T::Clean) || has(T::Foam);
        let mut price = self.price(n);
        let rows = self.rows(self.scale());
        if let Some(ln) = &draws.ln_fixed {
            match rows.scale {
                FactorScale::Ln => price.fault(ln, n),
                FactorScale::Factor => price.fault(&ln.exp(), n),
            }
        }
        let is_tarnished = !cleaned && !plated_over;
        if let Some(factor) = self.tarnish(rows.scale).filter(|_| is_tarnished) {
            price.fault(&factor, n);
        }
        let lacquer = self.faults.get(Fault::BrokenLacquer);
        let lacquer = lacquer.filter(|_| !has(T::LacquerOff) && !plated_over);
        if let Some(found) = lacquer
            && let Some(factor) = self.of_fault(found, as_found(found), as_found(found), rows.scale)
        {
            price.fault(&factor, n);
        }
        let after = [
            (
                T::Replate,
                FigureId::VALUE_DETAIL_AFTER_REPLATE,
                Dim::Detail,
            ),
            (T::Overplate, FigureId::VALUE_OVER_OLD, Dim::Patch),
            (T::Lacquer, FigureId::VALUE_AFTER_LACQUER, Dim::AfterWork),
        ];
        for (_, id, dim) in after.into_iter().filter(|(t, _, _)| has(*t)) {
            price.fault(&rows.one(id, dim), n);
        }
        // The bare share afterwards, and how much of it the eye sees.
        let shown: Vec<f64> = if plated_over {
            vec![0.0; n]
        } else {
            self.bare_after(done, n)
        };
        let met: Vec<f64> = if has(T::Toning) {
            let hidden = self.figure(FigureId::ATTRIBUTE_SHOW_TONED).clamp(0.0, 1.0);
            self.toned(done, n, &|_| hidden)
        } else {
            shown.clone()
        };
        let wear = self.wear_after(done, &shown, n);
        let mut cost = PerDraw::Same(0.0);
        let mut steady = (1.0, 1.0_f64);
        for t in done {
            let served = super::prices::answered(*t, self.faults);
            cost = cost.with(&self.cost(*t, &served), n, |a, b| a + b);
            if let Some(factor) = self.mishap(*t, self.scale()) {
                price.mishap(&factor, n);
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
        let of = |id| self.figure(id);
        let mut keeps = of(FigureId::ATTRIBUTE_STABILITY_SOUND);
        if lacquer.is_some() {
            keeps = keeps.min(of(FigureId::ATTRIBUTE_STABILITY_LACQUER_BROKEN));
        }
        let any_joint = |j: Joint| self.case.parts.iter().any(|p| p.has_joint(j));
        if any_joint(Joint::NeatRepair) {
            keeps = keeps.min(of(FigureId::ATTRIBUTE_STABILITY_NEAT));
        }
        let mut extra = 0.0;
        if !plated_over && !has(T::Lacquer) {
            extra -= of(FigureId::ATTRIBUTE_STABILITY_DOUBLE) * draws.p_doubles;
        }
        if has(T::Lacquer) {
            extra += of(FigureId::ATTRIBUTE_STABILITY_LACQUER);
        }
        if has(T::LocalPlate) {
            extra -= of(FigureId::ATTRIBUTE_STABILITY_PATCH);
        }
        if has(T::Overplate) {
            extra -= of(FigureId::ATTRIBUTE_STABILITY_OVER_OLD);
        }
        columns.keeps = PerDraw::Same(keeps);
        columns.extra = PerDraw::Same(extra);
        columns.fitness = match self.goal {
            Goal::Study | Goal::KeepUse => PerDraw::Same(1.0),
            _ => {
                let tarnish = self.tarnish(FactorScale::Factor).filter(|_| is_tarnished);
                PerDraw::Drawn(self.surface_shows(done, &met, tarnish.as_ref(), lacquer.is_some()))
            }
        };
        Self::set_price(&mut columns, price, Some(&wear), n);
        columns
    }

    fn tarnish(&self, scale: FactorScale) -> Option<Column> {
        let row = match super::draws::tarnish_of(self.case)? {
            Tarnish::Bright | Tarnish::FaintYellow | Tarnish::YellowGold => return None,
            Tarnish::Brown | Tarnish::Purple | Tarnish::Blue => rows::TARNISH_COLOURED,
            Tarnish::Grey | Tarnish::Black => rows::TARNISH_HEAVY,
        };
        self.row(row, Dim::TarnishFactor, scale)
    }

    /// The visible bare share after cleaning and a patch.
    fn bare_after(&self, done: &[Treatment], n: usize) -> Vec<f64> {
        let draws = self.draws;
        let cleaned = Cleaned::by(done);
        if done.contains(&Treatment::LocalPlate) {
            let covers = self.sample.draw(
                self.ledger.figure(FigureId::SILVER_PATCH_COVERS),
                Dim::Patch,
            );
            return draws.shown_where(n, &|p, i| {
                let f = self.bare_of_part(cleaned, p, i);
                if p.bare_high_point {
                    f * (1.0 - covers[i].clamp(0.0, 1.0))
                } else {
                    f
                }
            });
        }
        match cleaned {
            Cleaned::WithFoam => draws.shown_where(n, &|p, i| self.bare_of_part(cleaned, p, i)),
            Cleaned::Gently => draws.shown_cleaned[..n].to_vec(),
            Cleaned::Not => draws.shown[..n].to_vec(),
        }
    }

    /// The bare share of one part in one draw after cleaning.
    fn bare_of_part(&self, cleaned: Cleaned, p: &PartDraws, i: usize) -> f64 {
        let before = p.silver.bleed[i];
        match cleaned {
            Cleaned::Not => before,
            Cleaned::Gently => p.silver.bleed_cleaned[i],
            Cleaned::WithFoam => {
                // To first order in the amount taken.
                let chalk = p.silver.bleed_cleaned[i] - before;
                at_most(before + chalk * self.draws.paste_over_chalk[i], 0.999)
            }
        }
    }

    /// The visible bare share when a tint hides the share `hides` of it wherever a tint can.
    fn toned(&self, done: &[Treatment], n: usize, hides: &dyn Fn(usize) -> f64) -> Vec<f64> {
        let cleaned = Cleaned::by(done);
        self.draws.shown_where(n, &|p, i| {
            let f = self.bare_of_part(cleaned, p, i);
            if p.tonable { f * (1.0 - hides(i)) } else { f }
        })
    }

    /// The wear factor after the work.
    fn wear_after(&self, done: &[Treatment], shown: &[f64], n: usize) -> Column {
        use Treatment as T;
        let (wear, has) = (&self.draws.wear, |t| done.contains(&t));
        if has(T::Replate) || has(T::Overplate) {
            return wear.replated.clone();
        }
        let plain = !has(T::LocalPlate) && !has(T::Toning) && !has(T::Foam);
        if plain {
            let column = if has(T::Clean) {
                &wear.cleaned
            } else {
                &wear.as_it_is
            };
            return column.clone();
        }
        let (z, z_replated) = (self.sample.z(Dim::Wear), self.sample.z(Dim::Replated));
        let hides = self.sample.draw(
            self.ledger.figure(FigureId::VALUE_TONED_HIDES_DECORATOR),
            Dim::Patch,
        );
        let decorator: Vec<f64> = if has(T::Toning) {
            self.toned(done, n, &|i| hides[i].clamp(0.0, 1.0))
        } else {
            Vec::new()
        };
        let patch = if has(T::LocalPlate) {
            PATCH.map(|by_buyer| {
                by_buyer.map(|id| Some(self.rows(FactorScale::Factor).one(id, Dim::Patch)))
            })
        } else {
            [const { [const { None }; 3] }; 3]
        };
        (0..n)
            .map(|i| {
                let z = (z[i], z_replated[i]);
                if has(T::LocalPlate) {
                    let group = match self.draws.kind[i] {
                        // Buyers treat new silver on a fused body as electroplate.
                        Kind::Rfp => 2,
                        _ => self.draws.class[i].group_place(),
                    };
                    let of = |buyer: usize| patch[group][buyer].as_ref().map_or(1.0, |f| f[i]);
                    let factor = [of(0), of(1), of(2)];
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

    /// The originality and later choice that the surface work leaves in every draw.
    fn surface_left(&self, done: &[Treatment], steady: (f64, f64), n: usize) -> (PerDraw, PerDraw) {
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
            return (PerDraw::Same(steady.0), PerDraw::Same(steady.1));
        }
        let by_kind = |ids: [FigureId; 3]| {
            let doses = ids.map(|id| self.figure(id).clamp(0.0, 1.0));
            Kind::ALL.map(|k| match k.family() {
                Family::Fused | Family::Close | Family::French | Family::Solid => doses[0],
                Family::ReplatedFused => doses[1],
                Family::Electroplate | Family::Outside => doses[2],
            })
        };
        let mut originality = vec![steady.0; n];
        let mut choice = vec![steady.1; n];
        for t in drawn {
            let weight = self.weight(t);
            let doses = match work(t).map(|w| w.dose) {
                Some(Dose::ByKind(ids)) => by_kind(ids),
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
                    // New silver over the old leaves at least as much as stripping would.
                    T::Overplate => at_least(least, 1.0 - dose),
                    _ => 1.0 - dose,
                };
                choice[i] = at_most(choice[i], left);
            }
        }
        (
            PerDraw::Drawn(originality.into()),
            PerDraw::Drawn(choice.into()),
        )
    }

    /// How well the surface displays in each draw: bare metal and tarnish each reduce it from 1. A little
    /// copper on fused plate is what its buyers expect to see.
    fn surface_shows(
        &self,
        done: &[Treatment],
        met: &[f64],
        tarnish: Option<&Column>,
        lacquer_broken: bool,
    ) -> Column {
        let full = self.figure(FigureId::ATTRIBUTE_SHOW_BLEED_FULL).max(1e-6);
        let patina = self.figure(FigureId::ATTRIBUTE_SHOW_FUSED_PATINA);
        let of = |id| self.figure(id).clamp(0.0, 1.0);
        let mut steady = 1.0;
        if lacquer_broken {
            steady *= of(FigureId::ATTRIBUTE_SHOW_LACQUER_BROKEN);
        }
        if done.contains(&Treatment::LocalPlate) {
            steady *= of(FigureId::ATTRIBUTE_SHOW_PATCH);
        }
        if done.contains(&Treatment::Overplate) {
            steady *= of(FigureId::ATTRIBUTE_SHOW_OVER_OLD);
        }
        let fixed: f64 = self
            .faults
            .0
            .iter()
            .filter(|f| f.fault == Fault::FillingShows)
            .map(|_| of(FigureId::ATTRIBUTE_SHOW_FILL_SHOWING))
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
                bare * tarnish.map_or(1.0, |factor| factor[i]) * steady * fixed
            })
            .collect()
    }
}

/// How the surface was cleaned.
#[derive(Clone, Copy)]
enum Cleaned {
    Not,
    Gently,
    WithFoam,
}

impl Cleaned {
    fn by(done: &[Treatment]) -> Self {
        if done.contains(&Treatment::Foam) {
            Self::WithFoam
        } else if done.contains(&Treatment::Clean) {
            Self::Gently
        } else {
            Self::Not
        }
    }
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

fn dim_after(fault: Fault, id: FigureId) -> Dim {
    match fault {
        Fault::LiningGone | Fault::GildingGone => Dim::Tin,
        _ if id == FigureId::VALUE_AFTER_REPAIR => Dim::AfterRepair,
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
