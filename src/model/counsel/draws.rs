//! The world as it may be: for each point of the sample, what the piece is, what it is worth, how it
//! is worn, what treatments cost and whether they go wrong.

use super::column::Column;
use super::part_silver::{LayerDraws, PartDraws, Silver, SilverBefore, part_draws};
use super::sample::{Dim, Law, Sample};
use super::tweak::Tweak;
use super::wear::{Wear, WearBefore};
use crate::identity::{Kind, Posterior};
use crate::ledger::{Figure, Ledger};
use crate::record::{Case, Dents, Doer, Fill, Form, Goal, Joint, Route, Tarnish};
use crate::treatment::{LeadStatus, Treatment, lead_anywhere};
use crate::value::{Class, Comparison, Factor, Fees, guess};

/// What was last made draw by draw on a sample. The next answer goes on from it: a draw all of whose
/// inputs are to the bit what they were has what it had. That changes speed, never a result.
#[derive(Default)]
pub(super) struct Before {
    pub(super) parts: Vec<SilverBefore>,
    pub(super) wear: Option<WearBefore>,
}

/// Everything drawn for a case.
#[derive(Clone)]
pub(super) struct Draws {
    pub(super) n: usize,
    pub(super) kind: Vec<Kind>,
    pub(super) undamaged: Column,
    /// Undamaged value times the luck of the sale: what a hammer price scales with.
    pub(super) level: Column,
    pub(super) wear: Wear,
    /// ln of factors; none where nothing of the sort is seen. First those no treatment changes:
    /// dents, arms, rust.
    pub(super) ln_fixed: Option<Column>,
    pub(super) ln_tarnish: Option<Column>,
    /// ln of what an open joint costs, and of what an old repair costs.
    pub(super) ln_open: Option<Column>,
    pub(super) ln_mended: Option<Column>,
    pub(super) ln_repaired: Column,
    pub(super) ln_detail: Column,
    pub(super) fees: FeeDraws,
    /// ln(kept) where the treatment goes wrong in this draw, else 0.
    ln_mishap: Vec<(Treatment, Column)>,
    pub(super) costs: Vec<(Treatment, Column)>,
    pub(super) lead: Vec<bool>,
    /// Bare share over the parts, weighted by how much each shows.
    pub(super) shown: Column,
    pub(super) shown_cleaned: Column,
    pub(super) parts: Vec<PartDraws>,
    /// The whole piece's cleaning dose, by area.
    pub(super) cleaning_dose: Column,
    /// Share of draws in which the bleed doubles within the ledger's horizon.
    pub(super) p_doubles: f64,
    pub(super) covered_area: f64,
    /// A value was entered.
    pub(super) value_entered: bool,
    pub(super) route: Route,
    pub(super) insure_factor: f64,
    /// How much each fault counts beside the worst, 0 to 1.
    pub(super) damping: f64,
}

impl Draws {
    pub(super) fn new(
        case: &Case,
        ledger: &Ledger,
        posterior: &Posterior,
        early: bool,
        sample: &Sample,
        tweak: &Tweak,
    ) -> Self {
        let n = sample.len();
        let kind = draw_kinds(posterior, &sample.u(Dim::Kind));
        let class: Vec<Class> = kind
            .iter()
            .map(|k| Class::of(*k, early, case.piece.documented))
            .collect();
        let layers = LayerDraws::new(case, ledger, &kind, sample);
        let parts = part_draws(case, ledger, &layers, sample, tweak);
        let by_show = |of: fn(&Silver) -> &Column| weighted(&parts, |p| p.show, of);
        let (shown, shown_cleaned) = (by_show(|s| &s.bleed), by_show(|s| &s.bleed_cleaned));
        let cleaning_dose = weighted(&parts, |p| p.area, |s| &s.cleaning_dose);
        let (undamaged, value_entered) = undamaged(case, ledger, &class, sample, tweak);
        // What is learnt from sales is what the next one fetches, its luck included.
        let level = if case.comparables.is_empty() {
            let luck = sample.luck(Dim::Sale, ledger.value("value.sale_sd").clamp(0.0, 3.0));
            undamaged
                .iter()
                .zip(luck.iter())
                .map(|(v, l)| v * l)
                .collect()
        } else {
            undamaged.clone()
        };
        let wear = Wear::new(ledger, &kind, &class, (&shown, &shown_cleaned), sample);
        let conditions = Conditions {
            case,
            ledger,
            class: &class,
            sample,
        };
        let horizon =
            ledger.value("attribute.stability.years") * ledger.value("silver.polish_per_year");
        let p_doubles = parts.first().map_or(0.0, |body| {
            let times = body.silver.to_double.iter();
            times.filter(|t| **t <= horizon).count() as f64 / n as f64
        });
        let area: f64 = parts.iter().map(|p| p.area).sum();
        let covered_area =
            parts.iter().map(|p| p.area * (1.0 - p.low)).sum::<f64>() / area.max(f64::MIN_POSITIVE);
        Self {
            n,
            undamaged,
            level,
            wear,
            ln_fixed: conditions.fixed(),
            ln_tarnish: conditions.tarnish(),
            ln_open: conditions.open_joint(),
            ln_mended: conditions.old_repair(),
            ln_repaired: conditions.repaired(),
            ln_detail: conditions.one("value.detail_after_replate", Dim::Detail),
            fees: FeeDraws::new(ledger, sample),
            ln_mishap: mishaps(ledger, &class, sample),
            costs: costs(case, ledger, sample, tweak),
            lead: draw_lead(case, ledger, &kind, &sample.u(Dim::Lead)),
            shown,
            shown_cleaned,
            cleaning_dose,
            p_doubles,
            covered_area,
            parts,
            kind,
            value_entered,
            damping: ledger.value("value.damping").clamp(0.0, 1.0),
            route: case.market.route.unwrap_or(Route::Auction),
            insure_factor: if case.aim.goal == Some(Goal::Insure) {
                ledger.value("value.insure_over_hammer")
            } else {
                1.0
            },
        }
    }

    /// Cost of one treatment over the sample; none when it costs nothing.
    pub(super) fn cost(&self, treatment: Treatment) -> Option<&Column> {
        let found = self.costs.iter().find(|(t, _)| *t == treatment);
        found.map(|(_, column)| column)
    }

    /// ln(kept) of one treatment over the sample; none when nothing can go wrong.
    pub(super) fn ln_mishap(&self, treatment: Treatment) -> Option<&Column> {
        let treatment = if treatment == Treatment::LowMelt {
            Treatment::Solder
        } else {
            treatment
        };
        let found = self.ln_mishap.iter().find(|(t, _)| *t == treatment);
        found.map(|(_, column)| column)
    }

    /// The body's draws. A case always has a body, looked at or not.
    pub(super) fn body(&self) -> Option<&PartDraws> {
        self.parts.first()
    }
}

/// Kinds by the inverse of the posterior's distribution function.
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

/// The darkest tarnish recorded on any part; `None` when no part's was.
pub(super) fn tarnish_of(case: &Case) -> Option<Tarnish> {
    case.parts.iter().filter_map(|p| p.tarnish).max()
}

/// Mean over the parts by a weight; by number where no weighted part was looked at.
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

/// The undamaged value, and whether the person gave one.
fn undamaged(
    case: &Case,
    ledger: &Ledger,
    class: &[Class],
    sample: &Sample,
    tweak: &Tweak,
) -> (Column, bool) {
    let m = &case.market;
    let entered = guess(m, ledger);
    let values: Column = if !case.comparables.is_empty() {
        let law = Comparison::new(case, ledger, &shares(class)).after.next();
        let column = sample.student(Dim::Value, law.df, ledger.value("value.tail"));
        column
            .iter()
            .map(|t| libm::exp(law.at + law.scale * t))
            .collect()
    } else if let Some(likely) = entered {
        let spread = ledger.value("value.single_guess_spread").max(1.0);
        let low = m.low.unwrap_or(likely / spread);
        let high = m.high.unwrap_or(likely * spread);
        sample.by_law(Law::entered(low, likely, high), Dim::Value)
    } else {
        by_class(class, |c| {
            let figure = ledger.figure(&format!("value.median.{}", c.code()));
            sample.draw(figure, Dim::Value)
        })
    };
    #[allow(clippy::float_cmp)] // exactly this leaves it as it is
    let moved = if tweak.value == 1.0 {
        values
    } else {
        values.iter().map(|v| v * tweak.value).collect()
    };
    (moved, entered.is_some() || !case.comparables.is_empty())
}

/// Each draw from the column of its class. Only the columns of classes that were drawn are made.
fn by_class(class: &[Class], column: impl Fn(Class) -> Column) -> Column {
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

/// Factor rows that depend on the class of each draw.
struct Conditions<'a> {
    case: &'a Case,
    ledger: &'a Ledger,
    class: &'a [Class],
    sample: &'a Sample,
}

impl Conditions<'_> {
    /// ln of one row of factors over the sample, each draw by its class.
    fn row(&self, row: &str, dim: Dim) -> Column {
        by_class(self.class, |class| {
            let group = match class.group() {
                "C1" => "C1",
                "C2" => "C2",
                _ => "A",
            };
            let figure = self.ledger.figure(&format!("value.factor.{row}.{group}"));
            self.sample.ln_factor(dim, Factor::of(figure))
        })
    }

    /// ln of a factor that is the same for all classes.
    fn one(&self, id: &str, dim: Dim) -> Column {
        let factor = Factor::of(self.ledger.figure(id));
        self.sample.ln_factor(dim, factor)
    }

    fn fixed(&self) -> Option<Column> {
        let mut rows: Vec<Column> = Vec::new();
        match self.case.parts.iter().filter_map(|p| p.dents).max() {
            None | Some(Dents::None) => {}
            Some(Dents::Minor) => rows.push(self.row("dents_minor", Dim::DentFactor)),
            Some(Dents::Moderate) => rows.push(self.row("dents_moderate", Dim::DentFactor)),
            Some(Dents::Split) => rows.push(self.row("split", Dim::DentFactor)),
        }
        if self.case.has_seen("C13") {
            rows.push(self.row("arms_original", Dim::ShieldFactor));
        }
        for flaw in &self.case.flaws {
            let dim = if flaw.starts_with("part") || *flaw == "marriage" {
                Dim::DentFactor
            } else {
                Dim::ShieldFactor
            };
            rows.push(self.row(flaw, dim));
        }
        if self.case.has_seen("S07")
            || self
                .case
                .parts
                .iter()
                .any(|p| p.corrosion == Some(crate::record::Corrosion::Rust))
        {
            let rust = self.one("value.factor.rust.A", Dim::RustFactor);
            let of_iron = |(c, ln): (&Class, &f64)| if *c == Class::B { *ln } else { 0.0 };
            rows.push(self.class.iter().zip(rust.iter()).map(of_iron).collect());
        }
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

    fn tarnish(&self) -> Option<Column> {
        let row = match tarnish_of(self.case)? {
            Tarnish::Bright | Tarnish::FaintYellow | Tarnish::YellowGold => return None,
            Tarnish::Brown | Tarnish::Purple | Tarnish::Blue => "tarnish_coloured",
            Tarnish::Grey | Tarnish::Black => "tarnish_heavy",
        };
        Some(self.row(row, Dim::TarnishFactor))
    }

    fn has_joint(&self, joints: &[Joint]) -> bool {
        self.case
            .parts
            .iter()
            .any(|p| p.joint.is_some_and(|j| joints.contains(&j)))
    }

    fn open_joint(&self) -> Option<Column> {
        self.has_joint(&[Joint::Open, Joint::Leaking])
            .then(|| self.row("leak", Dim::JointFactor))
    }

    fn old_repair(&self) -> Option<Column> {
        if self.has_joint(&[Joint::GreyRepair]) {
            Some(self.row("solder_repair", Dim::JointFactor))
        } else if self.has_joint(&[Joint::NeatRepair]) {
            Some(self.row("neat_repair", Dim::JointFactor))
        } else {
            None
        }
    }

    fn repaired(&self) -> Column {
        self.one("value.after_repair", Dim::AfterRepair)
    }
}

/// A seller's terms over the sample.
#[derive(Clone)]
pub(super) struct FeeDraws {
    /// What is the same in every draw.
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
                above: ledger.value("fee.above"),
                commission_above: ledger.value("fee.commission_above").clamp(0.0, 0.9),
                minimum: ledger.value("fee.minimum"),
                vat: ledger.value("fee.vat"),
                lot: 0.0,
                insurance: ledger.value("fee.insurance"),
                transport: ledger.value("fee.transport"),
                sold: 0.0,
                reoffer: ledger.value("fee.reoffer").clamp(0.0, 1.0),
                unsold: ledger.value("fee.unsold"),
            },
            commission: sample.draw(ledger.figure("fee.commission"), Dim::Fees),
            lot: sample.draw(ledger.figure("fee.lot"), Dim::Fees),
            sold: sample.draw(ledger.figure("fee.sold"), Dim::Sold),
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

/// Bad results: an event in the draws where the treatment goes wrong, which keeps only part of the
/// value.
fn mishaps(ledger: &Ledger, class: &[Class], sample: &Sample) -> Vec<(Treatment, Column)> {
    let rows = [
        (Treatment::Clean, Dim::HazardClean),
        (Treatment::Solder, Dim::HazardRepair),
        (Treatment::RemoveLead, Dim::HazardRemove),
        (Treatment::Replate, Dim::HazardReplate),
    ];
    rows.into_iter()
        .map(|(treatment, dim)| {
            let column = by_class(class, |c| {
                let factor = |what: &str| {
                    let (id, group) = (treatment.id(), c.hazard_group());
                    Factor::of(ledger.figure(&format!("hazard.{id}.{group}.{what}")))
                };
                sample.ln_mishap(dim, factor("p"), factor("kept"))
            });
            (treatment, column)
        })
        .collect()
}

/// Cost over the sample of each weighed treatment that costs something: the quote if there is one,
/// else the ledger's wide range for such work.
fn costs(case: &Case, ledger: &Ledger, sample: &Sample, tweak: &Tweak) -> Vec<(Treatment, Column)> {
    Treatment::WEIGHED
        .into_iter()
        .filter_map(|t| {
            let dim = match t {
                Treatment::Solder | Treatment::LowMelt => Dim::CostRepair,
                Treatment::RemoveLead | Treatment::TestLead => Dim::CostRemove,
                Treatment::Replate => Dim::CostReplate,
                _ => Dim::CostClean,
            };
            let (law, dim, times) = match case.quote(t) {
                Some(q) if q.low.is_some() || q.high.is_some() => {
                    let (low, high) = (q.low.unwrap_or(q.likely), q.high.unwrap_or(q.likely));
                    (Law::entered(low, q.likely, high), dim, 1.0)
                }
                Some(q) => {
                    let overrun = ledger.figure("cost.overrun");
                    (Law::of(overrun), Dim::Overrun, q.likely)
                }
                None => {
                    let large = t == Treatment::Replate && case.piece.form.is_some_and(Form::large);
                    let times = if large {
                        ledger.value("cost.large_factor")
                    } else {
                        1.0
                    };
                    (Law::of(cost_figure(case, ledger, t)), dim, times)
                }
            };
            let post = case.quote(t).map_or(0.0, |q| q.post);
            let free = law == Law::Point(0.0) && post == 0.0;
            let moved = || sample.moved(law, dim, times * tweak.cost, post * tweak.cost);
            (!free).then(|| (t, moved()))
        })
        .collect()
}

/// The ledger's range for a treatment without a quote.
pub(super) fn cost_figure<'a>(case: &Case, ledger: &'a Ledger, treatment: Treatment) -> &'a Figure {
    let id = match treatment {
        Treatment::Clean if case.aim.doer == Some(Doer::Workshop) => "cost.T03_paid".to_owned(),
        Treatment::Clean => "cost.T03_owner".to_owned(),
        other => format!("cost.{}", other.id()),
    };
    ledger.figure(&id)
}

/// Whether there is lead, in each draw: as recorded, else by what it is and what shows.
fn draw_lead(case: &Case, ledger: &Ledger, kind: &[Kind], u: &[f64]) -> Vec<bool> {
    match lead_anywhere(case) {
        LeadStatus::Present => return vec![true; kind.len()],
        LeadStatus::Absent => return vec![false; kind.len()],
        LeadStatus::Unknown => {}
    }
    let grey = case.has_seen("C10")
        || case
            .parts
            .iter()
            .any(|p| p.joint == Some(Joint::GreyRepair) || p.fill == Some(Fill::Lead));
    let soldered = case.is_soldered();
    let chance = |k: Kind| {
        let id = match k {
            _ if grey => "lead.filled_or_grey",
            _ if !soldered => "lead.unsoldered",
            Kind::Ecu | Kind::Ens | Kind::Est | Kind::Rep | Kind::Ncp | Kind::Out => {
                "lead.electroplate_soldered"
            }
            Kind::Sil | Kind::Wst | Kind::Frp => "lead.unsoldered",
            _ => "lead.soldered",
        };
        ledger.value(id)
    };
    let by_kind = Kind::ALL.map(chance);
    kind.iter()
        .zip(u)
        .map(|(k, u)| *u < by_kind[k.index()])
        .collect()
}
