//! The world as it may be: for each point of the sample, what the piece is, what it is worth, how it
//! is worn, what treatments cost and whether they go wrong.

use std::rc::Rc;

use super::sample::{Dim, Sample};
use super::tweak::Tweak;
use crate::case::{Case, Dents, Doer, Fill, Form, Goal, Joint, Part, Route, Tarnish};
use crate::facts::{Figure, Ledger};
use crate::identity::{Kind, Posterior};
use crate::maths::probit;
use crate::silver::{BleedRange, FilmLoss, Layer, bleed_range, film_loss_um, held, measured};
use crate::treatment::{LeadStatus, Situation, Treatment};
use crate::value::{Class, Comparison, ConditionTable, Factor, Fees, guess};

/// One part's silver over the sample.
pub(super) struct PartDraws {
    pub(super) id: &'static str,
    pub(super) name: &'static str,
    /// Weight by area, and by area times how much it shows.
    pub(super) area: f64,
    pub(super) show: f64,
    /// Low end of the bleed, for the covered area.
    pub(super) low: f64,
    /// Bare share as it is.
    pub(super) bleed: Rc<[f64]>,
    /// Bare share after one gentle cleaning.
    pub(super) bleed_cleaned: Rc<[f64]>,
    /// Silver left, micrometres; NaN where the piece is solid silver.
    pub(super) left_um: Rc<[f64]>,
    /// Silver left as a share; NaN likewise.
    pub(super) left_share: Rc<[f64]>,
    /// What one gentle cleaning takes as a share of what is left, 0 to 1.
    pub(super) cleaning_dose: Rc<[f64]>,
    /// Gentle cleanings until twice as much shows; NaN where that has no meaning.
    pub(super) to_double: Rc<[f64]>,
    /// Share of draws in which the thinnest silver would not last the planned cleanings.
    pub(super) worn_through: f64,
}

/// Everything drawn for a case.
pub(super) struct Draws {
    pub(super) n: usize,
    pub(super) kind: Vec<Kind>,
    pub(super) undamaged: Vec<f64>,
    /// Undamaged value times the luck of the sale: what a hammer price scales with.
    pub(super) level: Vec<f64>,
    /// Wear factor as it is, after one cleaning, and once replated.
    pub(super) wear: Vec<f64>,
    pub(super) wear_cleaned: Vec<f64>,
    pub(super) wear_replated: Vec<f64>,
    /// ln of factors no treatment changes: dents, arms, rust.
    pub(super) ln_fixed: Vec<f64>,
    pub(super) ln_tarnish: Vec<f64>,
    /// ln of what an open joint costs, and of what an old repair costs.
    pub(super) ln_open: Vec<f64>,
    pub(super) ln_mended: Vec<f64>,
    pub(super) ln_repaired: Vec<f64>,
    pub(super) ln_detail: Vec<f64>,
    pub(super) fees: FeeDraws,
    /// ln(kept) where the treatment goes wrong in this draw, else 0.
    ln_mishap: Vec<(Treatment, Vec<f64>)>,
    pub(super) costs: Vec<(Treatment, Vec<f64>)>,
    pub(super) lead: Vec<bool>,
    /// Bare share over the parts, weighted by how much each shows.
    pub(super) shown: Vec<f64>,
    pub(super) shown_cleaned: Vec<f64>,
    pub(super) parts: Vec<PartDraws>,
    /// The whole piece's cleaning dose, by area.
    pub(super) cleaning_dose: Vec<f64>,
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
        let by_show = |f: fn(&PartDraws) -> &Rc<[f64]>| weighted(&parts, |p| p.show, f, n);
        let (shown, shown_cleaned) = (by_show(|p| &p.bleed), by_show(|p| &p.bleed_cleaned));
        let cleaning_dose = weighted(&parts, |p| p.area, |p| &p.cleaning_dose, n);
        let (undamaged, value_entered) = undamaged(case, ledger, &class, sample, tweak);
        // What is learnt from sales is what the next one fetches, its luck included.
        let sale_sd = if case.comparables.is_empty() {
            ledger.value("value.sale_sd").clamp(0.0, 3.0)
        } else {
            0.0
        };
        let level = undamaged
            .iter()
            .zip(sample.z(Dim::Sale).iter())
            .map(|(v, z)| v * libm::exp(sale_sd * z))
            .collect();
        let [wear, wear_cleaned, wear_replated] =
            wear_columns(ledger, &kind, &class, &shown, &shown_cleaned, sample);
        let conditions = Conditions {
            case,
            ledger,
            class: &class,
            sample,
        };
        let horizon =
            ledger.value("attribute.stability.years") * ledger.value("silver.polish_per_year");
        let p_doubles = parts.first().map_or(0.0, |body| {
            body.to_double.iter().filter(|t| **t <= horizon).count() as f64 / n as f64
        });
        let area: f64 = parts.iter().map(|p| p.area).sum();
        let covered_area =
            parts.iter().map(|p| p.area * (1.0 - p.low)).sum::<f64>() / area.max(f64::MIN_POSITIVE);
        Self {
            n,
            undamaged,
            level,
            wear,
            wear_cleaned,
            wear_replated,
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

    /// Cost of one treatment over the sample.
    pub(super) fn cost(&self, treatment: Treatment) -> &[f64] {
        self.costs
            .iter()
            .find(|(t, _)| *t == treatment)
            .map_or(&[], |(_, c)| c)
    }

    /// ln(kept) of one treatment over the sample; empty when nothing can go wrong.
    pub(super) fn ln_mishap(&self, treatment: Treatment) -> &[f64] {
        let treatment = if treatment == Treatment::LowMelt {
            Treatment::Solder
        } else {
            treatment
        };
        self.ln_mishap
            .iter()
            .find(|(t, _)| *t == treatment)
            .map_or(&[], |(_, m)| m)
    }

    /// The body's draws. A case always has a body, looked at or not.
    pub(super) fn body(&self) -> Option<&PartDraws> {
        self.parts.first()
    }
}

/// Kinds by the inverse of the posterior's distribution function.
pub(super) fn draw_kinds(posterior: &Posterior, u: &[f64]) -> Vec<Kind> {
    let mut ends = Vec::with_capacity(12);
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

/// Thickness, unevenness, film and loss, drawn once for all parts.
pub(super) struct LayerDraws {
    /// Thickness when new; NaN for solid silver.
    t0_um: Vec<f64>,
    k: Rc<[f64]>,
    floor: f64,
    film: Rc<[f64]>,
    loss_sound: Rc<[f64]>,
    loss_share: f64,
    consumed: f64,
}

impl LayerDraws {
    pub(super) fn new(case: &Case, ledger: &Ledger, kind: &[Kind], sample: &Sample) -> Self {
        let marked = case.has_seen("M01") || case.has_seen("M06");
        let columns: Vec<Option<Rc<[f64]>>> = Kind::ALL
            .iter()
            .map(|k| {
                let present = *k != Kind::Sil && kind.contains(k);
                let id = if *k == Kind::Ens && marked {
                    "ENS_marked"
                } else {
                    k.code()
                };
                present.then(|| sample.draw(ledger.figure(&format!("silver.t0.{id}")), Dim::T0))
            })
            .collect();
        let t0_um = kind
            .iter()
            .enumerate()
            .map(|(i, k)| {
                columns[k.index()]
                    .as_ref()
                    .map_or(f64::NAN, |c| c[i].max(0.01))
            })
            .collect();
        let film = sample.draw(
            ledger.figure(&format!(
                "silver.film.{}",
                tarnish_of(case).unwrap_or(Tarnish::YellowGold).id()
            )),
            Dim::Tarnish,
        );
        Self {
            t0_um,
            k: sample.draw(ledger.figure("silver.k"), Dim::Unevenness),
            floor: ledger.value("silver.s_floor").max(0.01),
            film,
            loss_sound: sample.draw(ledger.figure("silver.loss.chalk.um"), Dim::Loss),
            loss_share: ledger.value("silver.loss.chalk.share"),
            consumed: ledger.value("silver.consumed"),
        }
    }

    fn loss_um(&self, i: usize, h: f64) -> f64 {
        film_loss_um(
            FilmLoss {
                sound_um: self.loss_sound[i],
                share: self.loss_share,
            },
            self.film[i],
            self.consumed,
            h,
        )
    }
}

/// The darkest tarnish recorded on any part; `None` when no part's was.
pub(super) fn tarnish_of(case: &Case) -> Option<Tarnish> {
    case.parts.iter().filter_map(|p| p.tarnish).max()
}

fn part_draws(
    case: &Case,
    ledger: &Ledger,
    layers: &LayerDraws,
    sample: &Sample,
    tweak: &Tweak,
) -> Vec<PartDraws> {
    use crate::case::PartName;
    let unknown = Part::unknown(PartName::Body);
    let body = case.part(PartName::Body).unwrap_or(&unknown);
    let others = case
        .parts
        .iter()
        .filter(|p| p.name != PartName::Body && (p.bleed.is_some() || !p.readings.is_empty()));
    // Parts with the same answer on the same sort of surface share their columns.
    let mut made: Vec<((BleedRange, u64, bool), PartDraws)> = Vec::new();
    for part in std::iter::once(body).chain(others) {
        let id = part.name.id();
        let range = bleed_range(part.bleed, ledger).scaled(tweak.bleed);
        let h = ledger.value(&format!("silver.high_point.{id}")).max(1.0);
        let key = (range, h.to_bits(), part.readings.is_empty());
        let area = ledger.value(&format!("place.area.{id}")).max(0.0);
        let show = area * ledger.value(&format!("place.show.{id}")).max(0.0);
        let fresh = match made.iter().find(|(k, _)| *k == key && k.2) {
            Some((_, p)) => PartDraws {
                id,
                name: part.name.label(),
                area,
                show,
                low: range.low,
                bleed: Rc::clone(&p.bleed),
                bleed_cleaned: Rc::clone(&p.bleed_cleaned),
                left_um: Rc::clone(&p.left_um),
                left_share: Rc::clone(&p.left_share),
                cleaning_dose: Rc::clone(&p.cleaning_dose),
                to_double: Rc::clone(&p.to_double),
                worn_through: p.worn_through,
            },
            None => PartDraws {
                id,
                name: part.name.label(),
                area,
                show,
                ..one_part(part, range, h, ledger, layers, sample)
            },
        };
        made.push((key, fresh));
    }
    made.into_iter().map(|(_, p)| p).collect()
}

/// The silver of a part, draw by draw.
pub(super) struct WornLayers {
    /// Bare share.
    pub(super) bleed: Vec<f64>,
    /// The layer behind it; none where the piece is solid silver.
    pub(super) layers: Vec<Option<Layer>>,
    /// Standard normal quantile of the bare share.
    z: Rc<[f64]>,
}

/// The bare share of a part and the layer behind it. Readings of its thickness are taken in.
pub(super) fn worn_layers(
    part: &Part,
    range: BleedRange,
    ledger: &Ledger,
    layers: &LayerDraws,
    sample: &Sample,
) -> WornLayers {
    let none = least_shown(ledger);
    let points = [range.low, range.likely, range.high];
    let seen = sample.draw_entered(range.low, range.likely, range.high, Dim::Bleed);
    let bleed: Vec<f64> = seen.iter().map(|f| shown_share(*f)).collect();
    let z = sample.quantiles(points, Dim::Bleed, 0, &|f| held(shown_share(f)));
    let z_none = probit(held(none));
    let within = sample.u(Dim::Spare);
    let mut worn: Vec<Option<Layer>> = (0..bleed.len())
        .map(|i| {
            let (t0, k) = (layers.t0_um[i], layers.k[i]);
            if t0.is_nan() {
                None
            } else if bleed[i] < none {
                // Nothing shows: all one knows is that less has gone than would show.
                let edge = Layer::from_quantile(t0, k, layers.floor, z_none);
                Some(Layer {
                    mu_um: edge.mu_um + within[i] * (t0 - edge.mu_um),
                    ..edge
                })
            } else {
                Some(Layer::from_quantile(t0, k, layers.floor, z[i]))
            }
        })
        .collect();
    measured(&mut worn, &part.readings, ledger);
    WornLayers {
        bleed,
        layers: worn,
        z,
    }
}

/// The share that shows, as it is reckoned with: something is always covered.
fn shown_share(f: f64) -> f64 {
    f.clamp(0.0, 0.99)
}

/// The least bare share that anybody sees.
fn least_shown(ledger: &Ledger) -> f64 {
    ledger.value("silver.f_none").clamp(1e-6, 0.1)
}

fn one_part(
    part: &Part,
    range: BleedRange,
    h: f64,
    ledger: &Ledger,
    layers: &LayerDraws,
    sample: &Sample,
) -> PartDraws {
    let n = sample.len();
    let none = least_shown(ledger);
    let reserve = ledger.value("guard.h04.safety") * ledger.value("guard.h04.cleanings");
    let worn = worn_layers(part, range, ledger, layers, sample);
    let points = [range.low, range.likely, range.high];
    let z_doubled = sample.quantiles(points, Dim::Bleed, none.to_bits(), &|f| {
        held(Layer::doubled(shown_share(f), none).unwrap_or(1.0))
    });
    let bleed = worn.bleed;
    let mut cleaned = bleed.clone();
    let [mut left, mut share, mut to_double] = [(); 3].map(|()| vec![f64::NAN; n]);
    let mut dose = vec![0.0; n];
    let mut short = 0_usize;
    // The worst point needs one more quantile a draw; every fourth draw tells it well enough.
    let mut asked = 0_usize;
    for i in 0..n {
        let Some(layer) = worn.layers[i] else {
            continue;
        };
        let (f, t0) = (bleed[i], layer.t0_um);
        let loss = layers.loss_um(i, h);
        let left_um = if f < none {
            layer.left_um()
        } else {
            layer.left_um_at(f, worn.z[i])
        };
        left[i] = left_um;
        share[i] = left_um / t0;
        dose[i] = if left_um > 0.0 {
            (loss / left_um).min(1.0)
        } else {
            1.0
        };
        let after = layer.thinned(loss).bleed();
        cleaned[i] = if f < none {
            (f + after - layer.bleed()).clamp(f, 0.999)
        } else {
            after.max(f)
        };
        if Layer::doubled(f, none).is_some()
            && let Some(times) = layer.times_until_quantile(z_doubled[i], loss)
        {
            to_double[i] = times;
        }
        if i % 4 == 0 {
            asked += 1;
            short += usize::from(layer.worst_point_um() < reserve * loss);
        }
    }
    PartDraws {
        id: "",
        name: "",
        area: 0.0,
        show: 0.0,
        low: range.low,
        bleed: bleed.into(),
        bleed_cleaned: cleaned.into(),
        left_um: left.into(),
        left_share: share.into(),
        cleaning_dose: dose.into(),
        to_double: to_double.into(),
        worn_through: if asked == 0 {
            0.0
        } else {
            short as f64 / asked as f64
        },
    }
}

/// Mean over the parts by a weight; by area where no weighted part was looked at.
fn weighted(
    parts: &[PartDraws],
    weight: fn(&PartDraws) -> f64,
    column: fn(&PartDraws) -> &Rc<[f64]>,
    n: usize,
) -> Vec<f64> {
    let total: f64 = parts.iter().map(weight).sum();
    let mut mean = vec![0.0; n];
    for p in parts {
        let w = if total > 0.0 {
            weight(p) / total
        } else {
            1.0 / parts.len() as f64
        };
        if w > 0.0 {
            for (m, x) in mean.iter_mut().zip(column(p).iter()) {
                *m += w * x;
            }
        }
    }
    mean
}

/// The undamaged value, and whether the person gave one.
fn undamaged(
    case: &Case,
    ledger: &Ledger,
    class: &[Class],
    sample: &Sample,
    tweak: &Tweak,
) -> (Vec<f64>, bool) {
    let m = &case.market;
    let entered = guess(m, ledger);
    let values: Vec<f64> = if !case.comparables.is_empty() {
        let law = Comparison::new(case, ledger, &shares(class)).after.next();
        let column = sample.student(Dim::Value, law.df, ledger.value("value.tail"));
        column
            .into_iter()
            .map(|t| libm::exp(law.at + law.scale * t))
            .collect()
    } else if let Some(likely) = entered {
        let spread = ledger.value("value.single_guess_spread").max(1.0);
        let low = m.low.unwrap_or(likely / spread);
        let high = m.high.unwrap_or(likely * spread);
        sample.draw_entered(low, likely, high, Dim::Value).to_vec()
    } else {
        let columns: Vec<Option<Rc<[f64]>>> = Class::ALL
            .iter()
            .map(|c| {
                class.contains(c).then(|| {
                    sample.draw(
                        ledger.figure(&format!("value.median.{}", c.code())),
                        Dim::Value,
                    )
                })
            })
            .collect();
        let of = |c: Class| {
            Class::ALL
                .iter()
                .position(|k| *k == c)
                .and_then(|i| columns[i].as_ref())
        };
        class
            .iter()
            .enumerate()
            .map(|(i, c)| of(*c).map_or(0.0, |col| col[i]))
            .collect()
    };
    (
        values.into_iter().map(|v| v * tweak.value).collect(),
        entered.is_some() || !case.comparables.is_empty(),
    )
}

/// Share of the draws in each value class, in the order of [`Class::ALL`].
pub(super) fn shares(class: &[Class]) -> [f64; 8] {
    let mut shares = [0.0; 8];
    for c in class {
        shares[*c as usize] += 1.0 / class.len() as f64;
    }
    shares
}

/// Wear factors over the sample: as it is, after one cleaning, and once replated.
fn wear_columns(
    ledger: &Ledger,
    kind: &[Kind],
    class: &[Class],
    shown: &[f64],
    cleaned: &[f64],
    sample: &Sample,
) -> [Vec<f64>; 3] {
    let rows: [ConditionTable; 8] = Class::ALL.map(|c| ConditionTable::of(c, ledger));
    let table = |c: Class| &rows[c as usize];
    let (z, z_replated) = (sample.z(Dim::Wear), sample.z(Dim::Replated));
    let n = kind.len();
    let mut columns = [vec![1.0; n], vec![1.0; n], vec![1.0; n]];
    for i in 0..n {
        let own = table(class[i]);
        let replated = own.replated(z_replated[i]);
        // A fused body plated again carries the replated factor, and wears like electroplate.
        let wear = |f: f64| match kind[i] {
            Kind::Sil => 1.0,
            Kind::Rfp => replated * table(Class::C4).wear(f, z[i]),
            _ => own.wear(f, z[i]),
        };
        columns[0][i] = wear(shown[i]);
        columns[1][i] = wear(cleaned[i]);
        columns[2][i] = replated;
    }
    columns
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
    fn row(&self, row: &str, dim: Dim) -> Vec<f64> {
        let factor =
            |group: &str| Factor::of(self.ledger.figure(&format!("value.factor.{row}.{group}")));
        let (a, c1, c2) = (factor("A"), factor("C1"), factor("C2"));
        let pick = |c: &Class| match c.group() {
            "C1" => &c1,
            "C2" => &c2,
            _ => &a,
        };
        self.class
            .iter()
            .zip(self.sample.z(dim).iter())
            .map(|(c, z)| pick(c).ln_at(*z))
            .collect()
    }

    fn one(&self, id: &str, dim: Dim) -> Vec<f64> {
        let factor = Factor::of(self.ledger.figure(id));
        self.sample
            .z(dim)
            .iter()
            .map(|z| factor.ln_at(*z))
            .collect()
    }

    fn none(&self) -> Vec<f64> {
        vec![0.0; self.class.len()]
    }

    fn fixed(&self) -> Vec<f64> {
        let mut sum = self.none();
        let mut add = |row: Vec<f64>| sum.iter_mut().zip(row).for_each(|(s, r)| *s += r);
        match self.case.parts.iter().filter_map(|p| p.dents).max() {
            None | Some(Dents::None) => {}
            Some(Dents::Minor) => add(self.row("dents_minor", Dim::DentFactor)),
            Some(Dents::Moderate) => add(self.row("dents_moderate", Dim::DentFactor)),
            Some(Dents::Split) => add(self.row("split", Dim::DentFactor)),
        }
        if self.case.has_seen("C13") {
            add(self.row("arms_original", Dim::ShieldFactor));
        }
        for flaw in &self.case.flaws {
            let dim = if flaw.starts_with("part") || *flaw == "marriage" {
                Dim::DentFactor
            } else {
                Dim::ShieldFactor
            };
            add(self.row(flaw, dim));
        }
        if self.case.has_seen("S07")
            || self
                .case
                .parts
                .iter()
                .any(|p| p.corrosion == Some(crate::case::Corrosion::Rust))
        {
            let rust = Factor::of(self.ledger.figure("value.factor.rust.A"));
            let z = self.sample.z(Dim::RustFactor);
            add(self
                .class
                .iter()
                .zip(z.iter())
                .map(|(c, z)| if *c == Class::B { rust.ln_at(*z) } else { 0.0 })
                .collect());
        }
        sum
    }

    fn tarnish(&self) -> Vec<f64> {
        match tarnish_of(self.case) {
            None | Some(Tarnish::Bright | Tarnish::FaintYellow | Tarnish::YellowGold) => {
                self.none()
            }
            Some(Tarnish::Brown | Tarnish::Purple | Tarnish::Blue) => {
                self.row("tarnish_coloured", Dim::TarnishFactor)
            }
            Some(Tarnish::Grey | Tarnish::Black) => self.row("tarnish_heavy", Dim::TarnishFactor),
        }
    }

    fn has_joint(&self, joints: &[Joint]) -> bool {
        self.case
            .parts
            .iter()
            .any(|p| p.joint.is_some_and(|j| joints.contains(&j)))
    }

    fn open_joint(&self) -> Vec<f64> {
        if self.has_joint(&[Joint::Open, Joint::Leaking]) {
            self.row("leak", Dim::JointFactor)
        } else {
            self.none()
        }
    }

    fn old_repair(&self) -> Vec<f64> {
        if self.has_joint(&[Joint::GreyRepair]) {
            self.row("solder_repair", Dim::JointFactor)
        } else if self.has_joint(&[Joint::NeatRepair]) {
            self.row("neat_repair", Dim::JointFactor)
        } else {
            self.none()
        }
    }

    fn repaired(&self) -> Vec<f64> {
        self.one("value.after_repair", Dim::AfterRepair)
    }
}

/// A seller's terms over the sample.
pub(super) struct FeeDraws {
    /// What is the same in every draw.
    fixed: Fees,
    commission: Rc<[f64]>,
    lot: Rc<[f64]>,
    sold: Rc<[f64]>,
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
fn mishaps(ledger: &Ledger, class: &[Class], sample: &Sample) -> Vec<(Treatment, Vec<f64>)> {
    let rows = [
        (Treatment::Clean, Dim::HazardClean),
        (Treatment::Solder, Dim::HazardRepair),
        (Treatment::RemoveLead, Dim::HazardRemove),
        (Treatment::Replate, Dim::HazardReplate),
    ];
    let (z_p, z_kept) = (sample.z(Dim::HazardScale), sample.z(Dim::HazardKept));
    rows.into_iter()
        .map(|(treatment, dim)| {
            let by_class: Vec<(Factor, Factor)> = Class::ALL
                .iter()
                .map(|c| {
                    let figure = |what: &str| {
                        ledger.figure(&format!(
                            "hazard.{}.{}.{what}",
                            treatment.id(),
                            c.hazard_group()
                        ))
                    };
                    (Factor::of(figure("p")), Factor::of(figure("kept")))
                })
                .collect();
            let ln_u = sample.ln_u(dim);
            let column = class
                .iter()
                .enumerate()
                .map(|(i, c)| {
                    let (p, kept) = &by_class[*c as usize];
                    // Compared on the log scale: no exponential where nothing goes wrong.
                    if ln_u[i] < p.ln_at(z_p[i]) {
                        kept.ln_at(z_kept[i]).min(0.0)
                    } else {
                        0.0
                    }
                })
                .collect();
            (treatment, column)
        })
        .collect()
}

/// Cost of each weighed treatment over the sample: the quote if there is one, else the ledger's
/// wide range for such work.
fn costs(
    case: &Case,
    ledger: &Ledger,
    sample: &Sample,
    tweak: &Tweak,
) -> Vec<(Treatment, Vec<f64>)> {
    Treatment::WEIGHED
        .into_iter()
        .map(|t| {
            let dim = match t {
                Treatment::Solder | Treatment::LowMelt => Dim::CostRepair,
                Treatment::RemoveLead | Treatment::TestLead => Dim::CostRemove,
                Treatment::Replate => Dim::CostReplate,
                _ => Dim::CostClean,
            };
            let mut column = match case.quote(t) {
                Some(q) if q.low.is_some() || q.high.is_some() => {
                    let (low, high) = (q.low.unwrap_or(q.likely), q.high.unwrap_or(q.likely));
                    sample.draw_entered(low, q.likely, high, dim).to_vec()
                }
                Some(q) => sample
                    .draw(ledger.figure("cost.overrun"), Dim::Overrun)
                    .iter()
                    .map(|o| o * q.likely)
                    .collect(),
                None => {
                    let large = t == Treatment::Replate && case.piece.form.is_some_and(Form::large);
                    let times = if large {
                        ledger.value("cost.large_factor")
                    } else {
                        1.0
                    };
                    sample
                        .draw(cost_figure(case, ledger, t), dim)
                        .iter()
                        .map(|c| c * times)
                        .collect::<Vec<_>>()
                }
            };
            let post = case.quote(t).map_or(0.0, |q| q.post);
            for c in &mut column {
                *c = (*c + post) * tweak.cost;
            }
            (t, column)
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

/// Whether there is lead, in each draw: as tested, else by what it is and what shows.
fn draw_lead(case: &Case, ledger: &Ledger, kind: &[Kind], u: &[f64]) -> Vec<bool> {
    match Situation::stated_lead(case) {
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
            Kind::Ecu | Kind::Ens | Kind::Rep | Kind::Out => "lead.electroplate_soldered",
            Kind::Sil | Kind::Frp => "lead.unsoldered",
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
