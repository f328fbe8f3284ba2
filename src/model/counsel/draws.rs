//! The piece in every draw: for each point of the sample, what it is, what it is worth and how it is worn.

use super::column::Column;
use super::part_silver::{LayerDraws, PartDraws, Silver, SilverBefore, part_draws};
use super::sample::{Dim, Law, Sample};
use super::wear::{Wear, WearBefore};
use super::what_if::WhatIf;
use crate::identity::{Kind, Posterior};
use crate::ledger::{FigureId, FindingId, Ledger, signs};
use crate::record::{
    Case, Corrosion, FLAWS, Fill, Goal, Joint, Mount, Part, Relation, Route, Tarnish,
};
use crate::treatment::{LeadStatus, lead_anywhere};
use crate::value::factor_rows as rows;
use crate::value::{
    ByGroup, Class, Comparison, Factor, Fees, LEFT_OF_PAIR, Selling, guess, premium_of_pair,
};

/// The last results made draw by draw on a sample. If none of a draw's inputs changed, its cached result is
/// reused. This affects speed, never a result.
#[derive(Default)]
pub(super) struct Before {
    pub(super) parts: Vec<SilverBefore>,
    pub(super) wear: Option<WearBefore>,
}

/// Everything drawn for a case that does not depend on what is done to it.
#[derive(Clone)]
pub(super) struct Draws {
    pub(super) n: usize,
    pub(super) kind: Vec<Kind>,
    pub(super) class: Vec<Class>,
    pub(super) undamaged: Column,
    /// Undamaged value times the noise of the sale: hammer prices are proportional to it.
    pub(super) level: Column,
    pub(super) wear: Wear,
    /// The log of the factors that no treatment changes; `None` if there are none.
    pub(super) ln_fixed: Option<Column>,
    pub(super) fees: FeeDraws,
    /// The terms of every other way of selling.
    pub(super) selling: Selling,
    pub(super) lead: Vec<bool>,
    /// Bare share over the parts, weighted by how visible each part is.
    pub(super) shown: Column,
    pub(super) shown_cleaned: Column,
    pub(super) parts: Vec<PartDraws>,
    /// The cleaning dose of the whole piece, weighted by area.
    pub(super) cleaning_dose: Column,
    /// How many times as much silver shop polish takes as gentle cleaning does.
    pub(super) paste_over_chalk: Column,
    /// Share of draws in which the bleed doubles within the ledger's horizon.
    pub(super) p_doubles: f64,
    pub(super) covered_area: f64,
    /// What several pieces gain over single ones by belonging together; `None` where they do not.
    pub(super) premium: Option<Column>,
    /// A value was entered.
    pub(super) value_entered: bool,
    pub(super) route: Route,
    pub(super) insure_factor: f64,
    /// How much each fault counts in addition to the worst, 0 to 1.
    pub(super) damping: f64,
}

impl Draws {
    pub(super) fn new(
        case: &Case,
        ledger: &Ledger,
        posterior: &Posterior,
        early: bool,
        sample: &Sample,
        moved: &WhatIf,
    ) -> Self {
        let n = sample.len();
        let kind = draw_kinds(posterior, &sample.u(Dim::Kind));
        let class: Vec<Class> = kind
            .iter()
            .map(|k| Class::of(*k, early, case.piece.documented))
            .collect();
        let layers = LayerDraws::new(case, ledger, &kind, sample);
        let parts = part_draws(case, ledger, &layers, sample, moved);
        let by_show = |of: fn(&Silver) -> &Column| weighted(&parts, |p| p.show, of);
        let (shown, shown_cleaned) = (by_show(|s| &s.bleed), by_show(|s| &s.bleed_cleaned));
        let cleaning_dose = weighted(&parts, |p| p.area, |s| &s.cleaning_dose);
        let premium = premium(case, ledger, &class, sample);
        let (undamaged, value_entered) =
            undamaged(case, ledger, (&class, premium.as_ref()), sample, moved);
        // Sales of like pieces already include the noise of a sale, and so does a range whose ends were said:
        // it is of what such pieces fetch.
        let said = case.market.low.is_some() && case.market.high.is_some();
        let level = if case.comparables.is_empty() && !said {
            let sd = ledger.value(FigureId::VALUE_SALE_SD).clamp(0.0, 3.0);
            let noise = sample.multiplier(Dim::Sale, sd);
            undamaged
                .iter()
                .zip(noise.iter())
                .map(|(v, l)| v * l)
                .collect()
        } else {
            undamaged.clone()
        };
        let wear = Wear::new(ledger, &kind, &class, (&shown, &shown_cleaned), sample);
        let ln_fixed = FactorRows {
            ledger,
            class: &class,
            sample,
            scale: FactorScale::Ln,
        }
        .fixed(case);
        let horizon = ledger.value(FigureId::ATTRIBUTE_STABILITY_YEARS)
            * ledger.value(FigureId::SILVER_POLISH_PER_YEAR);
        let p_doubles = parts.first().map_or(0.0, |body| {
            let times = body.silver.to_double.iter();
            times.filter(|t| **t <= horizon).count() as f64 / n as f64
        });
        let area: f64 = parts.iter().map(|p| p.area).sum();
        let covered = parts.iter().map(|p| p.area * (1.0 - p.low)).sum::<f64>();
        let covered_area = covered / area.max(f64::MIN_POSITIVE);
        Self {
            n,
            undamaged,
            level,
            wear,
            ln_fixed,
            fees: FeeDraws::new(ledger, sample),
            selling: Selling::of(ledger, case.market.margin_taxed),
            lead: draw_lead(case, ledger, &kind, &sample.u(Dim::Lead)),
            shown,
            shown_cleaned,
            cleaning_dose,
            paste_over_chalk: layers.paste_over_chalk(),
            p_doubles,
            covered_area,
            parts,
            kind,
            class,
            premium,
            value_entered,
            damping: ledger.value(FigureId::VALUE_DAMPING).clamp(0.0, 1.0),
            route: case.market.route.unwrap_or(Route::Auction),
            insure_factor: if case.aim.goal == Some(Goal::Insure) {
                ledger.value(FigureId::VALUE_INSURE_OVER_HAMMER)
            } else {
                1.0
            },
        }
    }

    /// The body's draws. A case always has a body, looked at or not.
    pub(super) fn body(&self) -> Option<&PartDraws> {
        self.parts.first()
    }

    /// What a seller keeps of a hammer price on the chosen route, in draw `i`.
    #[inline]
    pub(super) fn kept(&self, i: usize, hammer: f64) -> f64 {
        self.selling.kept(self.route, &self.fees.at(i), hammer)
    }

    /// The visible bare share when `of` gives the share of each part.
    pub(super) fn shown_where(&self, n: usize, of: &dyn Fn(&PartDraws, usize) -> f64) -> Vec<f64> {
        let total: f64 = self.parts.iter().map(|p| p.show).sum();
        let mut sum = vec![0.0; n];
        for p in &self.parts {
            let w = if total > 0.0 {
                p.show / total
            } else {
                1.0 / self.parts.len() as f64
            };
            if w > 0.0 {
                for (i, s) in sum.iter_mut().enumerate() {
                    *s += w * of(p, i);
                }
            }
        }
        sum
    }
}

/// Draws kinds by the inverse of the posterior's distribution function.
pub(super) fn draw_kinds(posterior: &Posterior, u: &[f64]) -> Vec<Kind> {
    let mut ends = Vec::with_capacity(Kind::COUNT);
    let mut sum = 0.0;
    for k in Kind::ALL {
        sum += posterior.of(k);
        ends.push((sum, k));
    }
    u.iter()
        .map(|u| {
            ends.iter()
                .find(|(end, _)| u < end)
                .map_or(Kind::Out, |(_, k)| *k)
        })
        .collect()
}

/// The darkest tarnish recorded on any part; `None` if none is recorded.
pub(super) fn tarnish_of(case: &Case) -> Option<Tarnish> {
    case.parts.iter().filter_map(|p| p.tarnish).max()
}

/// Mean over the parts by weight; unweighted if no part with a weight was looked at.
fn weighted(
    parts: &[PartDraws],
    weight: fn(&PartDraws) -> f64,
    column: fn(&Silver) -> &Column,
) -> Column {
    if let [only] = parts {
        return column(&only.silver).clone();
    }
    let total: f64 = parts.iter().map(weight).sum();
    let n = parts.first().map_or(0, |p| column(&p.silver).len());
    let mut mean = vec![0.0; n];
    for p in parts {
        let w = if total > 0.0 {
            weight(p) / total
        } else {
            1.0 / parts.len() as f64
        };
        if w > 0.0 {
            for (m, x) in mean.iter_mut().zip(column(&p.silver).iter()) {
                *m += w * x;
            }
        }
    }
    mean.into()
}

/// Whether a factor has no effect.
fn is_one(factor: f64) -> bool {
    factor.to_bits() == 1.0_f64.to_bits()
}

/// The undamaged value, and whether the user gave one.
fn undamaged(
    case: &Case,
    ledger: &Ledger,
    (class, premium): (&[Class], Option<&Column>),
    sample: &Sample,
    moved_by: &WhatIf,
) -> (Column, bool) {
    let m = &case.market;
    let entered = guess(m, ledger);
    let values: Column = if !case.comparables.is_empty() {
        let law = Comparison::new(case, ledger, &shares(class)).after.next();
        let column = sample.student(Dim::Value, law.df, ledger.value(FigureId::VALUE_TAIL));
        column
            .iter()
            .map(|t| libm::exp(law.at + law.scale * t))
            .collect()
    } else if let Some(likely) = entered {
        let spread = ledger.value(FigureId::VALUE_SINGLE_GUESS_SPREAD).max(1.0);
        let low = m.low.unwrap_or(likely / spread);
        let high = m.high.unwrap_or(likely * spread);
        let as_entered = sample.by_law(Law::entered(low, likely, high), Dim::Value);
        let taught = |c: &Class| ledger.value(c.guess_bias());
        if class.iter().all(|c| is_one(taught(c))) {
            as_entered
        } else {
            let each = class.iter().zip(as_entered.iter());
            each.map(|(c, value)| taught(c) * value).collect()
        }
    } else {
        let single = by_class(class, |c| {
            let figure = ledger.figure(c.median());
            sample.draw(figure, Dim::Value)
        });
        // The usual value is that of one piece.
        match (f64::from(case.pieces.count), premium) {
            (count, None) if count > 1.0 => single.iter().map(|v| count * v).collect(),
            (count, Some(premium)) => {
                let each = single.iter().zip(premium.iter());
                each.map(|(v, gains)| count * gains * v).collect()
            }
            _ => single,
        }
    };
    let moved = if is_one(moved_by.value) {
        values
    } else {
        values.iter().map(|v| v * moved_by.value).collect()
    };
    (moved, entered.is_some() || !case.comparables.is_empty())
}

/// What the pieces of a pair or set gain over single ones; `None` where they do not belong together.
fn premium(case: &Case, ledger: &Ledger, class: &[Class], sample: &Sample) -> Option<Column> {
    let rows = FactorRows {
        ledger,
        class,
        sample,
        scale: FactorScale::Factor,
    };
    match case.pieces.relation {
        Relation::Pair => {
            let left = rows.row(LEFT_OF_PAIR, Dim::Premium);
            Some(left.iter().map(|left| premium_of_pair(*left)).collect())
        }
        Relation::Set => {
            let gains = rows.one(FigureId::VALUE_SET_PREMIUM, Dim::Premium);
            Some(gains.iter().map(|gains| gains.max(1.0)).collect())
        }
        Relation::Single | Relation::OneOfPair | Relation::Alike => None,
    }
}

/// Each draw from the column of its class. Only the columns of classes that were drawn are made.
pub(super) fn by_class(class: &[Class], column: impl Fn(Class) -> Column) -> Column {
    let columns = Class::ALL.map(|c| class.contains(&c).then(|| column(c)));
    let mut all = columns.iter().flatten();
    if let (Some(only), None) = (all.next(), all.next()) {
        return only.clone();
    }
    class
        .iter()
        .enumerate()
        .map(|(i, c)| {
            columns[*c as usize]
                .as_ref()
                .map_or(0.0, |column| column[i])
        })
        .collect()
}

/// Share of the draws in each value class, in the order of [`Class::ALL`].
pub(super) fn shares(class: &[Class]) -> [f64; 8] {
    let mut shares = [0.0; 8];
    for c in class {
        shares[*c as usize] += 1.0 / class.len() as f64;
    }
    shares
}

/// For each group of classes, the effect of each of [`FLAWS`] on the price.
const FLAW: [[FigureId; FLAWS.len()]; 3] = [
    FigureId::family("value.factor.", FLAWS, ".A"),
    FigureId::family("value.factor.", FLAWS, ".C1"),
    FigureId::family("value.factor.", FLAWS, ".C2"),
];

/// The form in which a factor is needed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum FactorScale {
    /// As the multiplier of the price.
    Factor,
    /// As its natural logarithm.
    Ln,
}

/// Factor rows over the sample, with each draw's row chosen by its class.
#[derive(Clone, Copy)]
pub(super) struct FactorRows<'a> {
    pub(super) ledger: &'a Ledger,
    pub(super) class: &'a [Class],
    pub(super) sample: &'a Sample,
    pub(super) scale: FactorScale,
}

impl FactorRows<'_> {
    /// A factor that differs by group of classes.
    pub(super) fn row(&self, row: ByGroup, dim: Dim) -> Column {
        by_class(self.class, |class| {
            let figure = self.ledger.figure(row[class.group_place()]);
            self.sample.factor(dim, Factor::of(figure), self.scale)
        })
    }

    /// A factor that is the same for all classes.
    pub(super) fn one(&self, id: FigureId, dim: Dim) -> Column {
        let factor = Factor::of(self.ledger.figure(id));
        self.sample.factor(dim, factor, self.scale)
    }

    /// The log of all factors that no treatment changes: arms, flaws of the whole piece, an old neat repair,
    /// a filling that shows, rust.
    fn fixed(&self, case: &Case) -> Option<Column> {
        let mut rows: Vec<Column> = Vec::new();
        if case.has_seen_any(&signs::LET_IN) {
            rows.push(self.row(rows::ARMS_ORIGINAL, Dim::ShieldFactor));
        }
        for (place, flaw) in FLAWS.iter().enumerate() {
            // A lost part is a fault that a new part answers.
            if !case.flaws.contains(flaw) || flaw.starts_with("part_missing") {
                continue;
            }
            let dim = if flaw.starts_with("part") || *flaw == "marriage" {
                Dim::DentFactor
            } else {
                Dim::ShieldFactor
            };
            rows.push(self.row(FLAW.map(|by_flaw| by_flaw[place]), dim));
        }
        let any = |of: &dyn Fn(&Part) -> bool| case.parts.iter().any(of);
        let joint = |j: Joint| any(&|p| p.has_joint(j));
        if joint(Joint::NeatRepair) && !joint(Joint::GreyRepair) {
            rows.push(self.row(rows::NEAT_REPAIR, Dim::JointFactor));
        }
        if any(&|p| p.mount == Some(Mount::FillShowing)) {
            rows.push(self.row(rows::FILL_SHOWING, Dim::FillingFactor));
        }
        if case.has_seen_any(&signs::RUST) || any(&|p| p.corrosion == Some(Corrosion::Rust)) {
            let rust = self.one(FigureId::VALUE_FACTOR_RUST_A, Dim::RustFactor);
            let of_iron = |(c, ln): (&Class, &f64)| if *c == Class::B { *ln } else { 0.0 };
            rows.push(self.class.iter().zip(rust.iter()).map(of_iron).collect());
        }
        sum_of(&rows)
    }
}

/// The sum of columns in every draw; `None` if there are none.
pub(super) fn sum_of(rows: &[Column]) -> Option<Column> {
    let (first, rest) = rows.split_first()?;
    if rest.is_empty() {
        return Some(first.clone());
    }
    let mut sum = first.to_vec();
    for row in rest {
        sum.iter_mut().zip(row.iter()).for_each(|(s, r)| *s += r);
    }
    Some(sum.into())
}

/// A seller's terms over the sample.
#[derive(Clone)]
pub(super) struct FeeDraws {
    /// The terms that are the same in every draw.
    fixed: Fees,
    commission: Column,
    lot: Column,
    sold: Column,
}

impl FeeDraws {
    fn new(ledger: &Ledger, sample: &Sample) -> Self {
        Self {
            fixed: Fees {
                commission: 0.0,
                above: ledger.value(FigureId::FEE_ABOVE),
                commission_above: ledger.value(FigureId::FEE_COMMISSION_ABOVE).clamp(0.0, 0.9),
                minimum: ledger.value(FigureId::FEE_MINIMUM),
                vat: ledger.value(FigureId::FEE_VAT),
                lot: 0.0,
                insurance: ledger.value(FigureId::FEE_INSURANCE),
                transport: ledger.value(FigureId::FEE_TRANSPORT),
                sold: 0.0,
                reoffer: ledger.value(FigureId::FEE_REOFFER).clamp(0.0, 1.0),
                unsold: ledger.value(FigureId::FEE_UNSOLD),
            },
            commission: sample.draw(ledger.figure(FigureId::FEE_COMMISSION), Dim::Fees),
            lot: sample.draw(ledger.figure(FigureId::FEE_LOT), Dim::Fees),
            sold: sample.draw(ledger.figure(FigureId::FEE_SOLD), Dim::Sold),
        }
    }

    /// The terms with each at its middle value.
    pub(super) fn middle(&self) -> Fees {
        Fees {
            commission: self.commission.median().clamp(0.0, 0.9),
            lot: self.lot.median(),
            sold: self.sold.median().clamp(0.0, 1.0),
            ..self.fixed
        }
    }

    /// The terms of one draw.
    #[inline]
    pub(super) fn at(&self, i: usize) -> Fees {
        Fees {
            commission: self.commission[i].clamp(0.0, 0.9),
            lot: self.lot[i],
            sold: self.sold[i].clamp(0.0, 1.0),
            ..self.fixed
        }
    }
}

/// Whether there is lead, in each draw: as recorded, or else by the kind and by what shows.
fn draw_lead(case: &Case, ledger: &Ledger, kind: &[Kind], u: &[f64]) -> Vec<bool> {
    match lead_anywhere(case) {
        LeadStatus::Present => return vec![true; kind.len()],
        LeadStatus::Absent => return vec![false; kind.len()],
        LeadStatus::Unknown => {}
    }
    let grey = case.has_seen(FindingId::C10)
        || case
            .parts
            .iter()
            .any(|p| p.has_joint(Joint::GreyRepair) || p.fill == Some(Fill::Lead));
    let soldered = case.is_soldered();
    let chance = |k: Kind| {
        let id = match k {
            _ if grey => FigureId::LEAD_FILLED_OR_GREY,
            _ if !soldered => FigureId::LEAD_UNSOLDERED,
            Kind::Ecu | Kind::Ens | Kind::Est | Kind::Rep | Kind::Ncp | Kind::Out => {
                FigureId::LEAD_ELECTROPLATE_SOLDERED
            }
            Kind::Sil | Kind::Wst | Kind::Frp => FigureId::LEAD_UNSOLDERED,
            _ => FigureId::LEAD_SOLDERED,
        };
        ledger.value(id)
    };
    let by_kind = Kind::ALL.map(chance);
    kind.iter()
        .zip(u)
        .map(|(k, u)| *u < by_kind[k.index()])
        .collect()
}
