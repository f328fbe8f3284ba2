//! The silver of each part, draw by draw: how much shows, how much is left, what a cleaning takes.

use super::column::Column;
use super::draws::tarnish_of;
use super::sample::{Dim, Sample};
use super::what_if::WhatIf;
use crate::identity::Kind;
use crate::ledger::{Ledger, signs};
use crate::maths::{at_least, at_most, probit};
use crate::record::{Case, Part, PartName, Tarnish};
use crate::silver::{BleedRange, FilmLoss, Layer, film_loss_um, held, measured, shown_share};

/// One part's silver over the sample.
#[derive(Clone)]
pub(super) struct PartDraws {
    pub(super) id: &'static str,
    pub(super) name: &'static str,
    /// Weight by area, and by area times how much it shows.
    pub(super) area: f64,
    pub(super) show: f64,
    /// Low end of the bleed, for the covered area.
    pub(super) low: f64,
    /// The part was looked at, or its silver measured. The rest is judged by the parts that were.
    pub(super) looked: bool,
    /// A high point or edge where bare metal was seen: what a patch of new silver can cover.
    pub(super) bare_high_point: bool,
    /// Bare metal was seen there, and so little on the body, that a tint can hide it.
    pub(super) tonable: bool,
    pub(super) part: PartName,
    pub(super) silver: Silver,
}

/// The silver of a part over the sample.
#[derive(Clone)]
pub(super) struct Silver {
    /// Bare share as it is.
    pub(super) bleed: Column,
    /// Bare share after one gentle cleaning.
    pub(super) bleed_cleaned: Column,
    /// Silver left, micrometres; NaN where the piece is solid silver.
    pub(super) left_um: Column,
    /// Silver left as a share; NaN likewise.
    pub(super) left_share: Column,
    /// What one gentle cleaning takes as a share of what is left, 0 to 1.
    pub(super) cleaning_dose: Column,
    /// Gentle cleanings until twice as much shows; NaN where that has no meaning.
    pub(super) to_double: Column,
    /// Share of draws in which the thinnest silver would not last the planned cleanings.
    pub(super) worn_through: f64,
    /// For every fourth draw, whether it would not; `None` where the piece is solid silver. The
    /// worst point needs one more quantile a draw; so many tell it well enough.
    short: Vec<Option<bool>>,
}

/// Every n-th draw tells whether the thinnest silver lasts.
const TELLS: usize = 4;

/// Thickness, unevenness, film and loss, drawn once for all parts.
#[derive(Clone)]
pub(super) struct LayerDraws {
    /// Thickness when new; NaN for solid silver.
    t0_um: Column,
    k: Column,
    floor: f64,
    film: Column,
    loss_sound: Column,
    loss_share: f64,
    consumed: f64,
    /// What shop polish takes of sound silver in one cleaning.
    paste_sound: Column,
    paste_share: f64,
}

impl LayerDraws {
    pub(super) fn new(case: &Case, ledger: &Ledger, kind: &[Kind], sample: &Sample) -> Self {
        let marked = case.has_seen_any(&signs::ELECTROPLATE_MARKS);
        let columns: Vec<Option<Column>> = Kind::ALL
            .iter()
            .map(|k| {
                let present = k.has_layer() && kind.contains(k);
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
                    .map_or(f64::NAN, |c| at_least(c[i], 0.01))
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
            paste_sound: sample.draw(ledger.figure("silver.loss.paste.um"), Dim::Loss),
            paste_share: ledger.value("silver.loss.paste.share"),
        }
    }

    /// How many times as much silver shop polish takes in each draw as gentle cleaning does.
    pub(super) fn paste_over_chalk(&self) -> Column {
        let n = self.film.len();
        (0..n)
            .map(|i| {
                let paste = film_loss_um(
                    FilmLoss {
                        sound_um: self.paste_sound[i],
                        share: self.paste_share,
                    },
                    self.film[i],
                    self.consumed,
                    1.0,
                );
                let chalk = self.loss_um(i, 1.0);
                if chalk > 0.0 { paste / chalk } else { 1.0 }
            })
            .collect()
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

    /// Whether all but the thickness when new is the same.
    fn same_but_thickness(&self, other: &Self) -> bool {
        let numbers = |l: &Self| [l.floor, l.loss_share, l.consumed].map(f64::to_bits);
        self.k.is(&other.k)
            && self.film.is(&other.film)
            && self.loss_sound.is(&other.loss_sound)
            && numbers(self) == numbers(other)
    }
}

/// The silver of every part the piece has, the body first. A part that was not looked at is judged by
/// those that were.
pub(super) fn part_draws(
    case: &Case,
    ledger: &Ledger,
    layers: &LayerDraws,
    sample: &Sample,
    moved: &WhatIf,
) -> Vec<PartDraws> {
    let bleeds = crate::silver::whole_piece(case, ledger);
    let unknown = Part::unknown(PartName::Body);
    bleeds
        .into_iter()
        .map(|b| {
            let part = case.part(b.part).unwrap_or(&unknown);
            let id = b.part.id();
            let range = b.range.scaled(moved.bleed);
            let h = ledger.value(&format!("silver.high_point.{id}")).max(1.0);
            let area = ledger.value(&format!("place.area.{id}")).max(0.0);
            PartDraws {
                id,
                name: b.part.label(),
                area,
                show: area * ledger.value(&format!("place.show.{id}")).max(0.0),
                low: range.low,
                looked: b.looked,
                bare_high_point: b.looked
                    && b.part.is_high_point()
                    && range.likely >= least_shown(ledger),
                tonable: b.looked
                    && range.likely >= least_shown(ledger)
                    && (b.part.is_high_point()
                        || (b.part == PartName::Body
                            && range.likely <= ledger.value("guard.bleed_no_clean"))),
                part: b.part,
                silver: Silver::new(part, range, h, ledger, layers, sample),
            }
        })
        .collect()
}

/// The last result for a part, reused where its inputs did not change.
pub(super) struct SilverBefore {
    surface: Surface,
    layers: LayerDraws,
    silver: Silver,
}

/// How many parts' results are cached: twice as many as a piece has parts.
const HELD: usize = 24;

/// What is the same in every draw of a part.
#[derive(Clone, Copy, PartialEq)]
struct Surface {
    range: BleedRange,
    /// How much more a cleaning takes at high points.
    h: f64,
    /// The least bare share that anybody sees.
    none: f64,
    /// How many cleanings' worth of silver the thinnest place should have.
    reserve: f64,
}

impl Silver {
    fn new(
        part: &Part,
        range: BleedRange,
        h: f64,
        ledger: &Ledger,
        layers: &LayerDraws,
        sample: &Sample,
    ) -> Self {
        let surface = Surface {
            range,
            h,
            none: least_shown(ledger),
            reserve: ledger.value("guard.h04.safety") * ledger.value("guard.h04.cleanings"),
        };
        let worn = Wearing::new(range, surface.none, layers, sample);
        if !part.readings.is_empty() {
            // A reading moves every draw.
            let measured = worn.measured(part, ledger);
            return Self::drawn(surface, &worn, sample, &|i| measured[i], None);
        }
        let mut held = sample.before.borrow_mut();
        let known = held
            .parts
            .iter()
            .position(|b| b.surface == surface && b.layers.same_but_thickness(layers))
            .map(|at| held.parts.remove(at));
        let silver = Self::drawn(surface, &worn, sample, &|i| worn.layer(i), known.as_ref());
        if held.parts.len() >= HELD {
            held.parts.remove(0);
        }
        held.parts.push(SilverBefore {
            surface,
            layers: layers.clone(),
            silver: silver.clone(),
        });
        silver
    }

    /// Draw by draw. If a draw's thickness when new did not change, its cached result is reused.
    fn drawn(
        surface: Surface,
        worn: &Wearing,
        sample: &Sample,
        layer: &dyn Fn(usize) -> Option<Layer>,
        before: Option<&SilverBefore>,
    ) -> Self {
        let Surface {
            range,
            h,
            none,
            reserve,
        } = surface;
        let (layers, n) = (worn.layers, sample.len());
        let due: Vec<usize> = (0..n)
            .filter(|i| {
                before.is_none_or(|b| b.layers.t0_um[*i].to_bits() != layers.t0_um[*i].to_bits())
            })
            .collect();
        if let Some(before) = before
            && due.is_empty()
        {
            return before.silver.clone();
        }
        let points = [range.low, range.likely, range.high];
        let z_doubled = sample.quantiles(points, Dim::Bleed, none.to_bits(), &|f| {
            held(Layer::doubled(shown_share(f), none).unwrap_or(1.0))
        });
        let start = |of: fn(&Silver) -> &Column, fresh: f64| {
            before.map_or_else(|| vec![fresh; n], |b| of(&b.silver).to_vec())
        };
        let mut cleaned = start(|s| &s.bleed_cleaned, 0.0);
        let mut left = start(|s| &s.left_um, f64::NAN);
        let mut share = start(|s| &s.left_share, f64::NAN);
        let mut dose = start(|s| &s.cleaning_dose, 0.0);
        let mut to_double = start(|s| &s.to_double, f64::NAN);
        let mut short =
            before.map_or_else(|| vec![None; n.div_ceil(TELLS)], |b| b.silver.short.clone());
        for i in due {
            let f = worn.bleed[i];
            let tells = i % TELLS == 0;
            to_double[i] = f64::NAN;
            let Some(layer) = layer(i) else {
                (cleaned[i], left[i], share[i], dose[i]) = (f, f64::NAN, f64::NAN, 0.0);
                if tells {
                    short[i / TELLS] = None;
                }
                continue;
            };
            let loss = layers.loss_um(i, h);
            let left_um = if f < none {
                layer.left_um()
            } else {
                layer.left_um_at(f, worn.z[i])
            };
            left[i] = left_um;
            share[i] = left_um / layer.t0_um;
            dose[i] = if left_um > 0.0 {
                at_most(loss / left_um, 1.0)
            } else {
                1.0
            };
            let after = layer.thinned(loss).bleed();
            cleaned[i] = if f < none {
                (f + after - layer.bleed()).clamp(f, 0.999)
            } else {
                at_least(after, f)
            };
            if Layer::doubled(f, none).is_some()
                && let Some(times) = layer.times_until_quantile(z_doubled[i], loss)
            {
                to_double[i] = times;
            }
            if tells {
                short[i / TELLS] = Some(layer.worst_point_um() < reserve * loss);
            }
        }
        let asked = short.iter().flatten().count();
        let fail = short.iter().flatten().filter(|s| **s).count();
        Self {
            bleed: worn.bleed.clone(),
            bleed_cleaned: cleaned.into(),
            left_um: left.into(),
            left_share: share.into(),
            cleaning_dose: dose.into(),
            to_double: to_double.into(),
            worn_through: if asked == 0 {
                0.0
            } else {
                fail as f64 / asked as f64
            },
            short,
        }
    }
}

/// The silver of a part, draw by draw.
pub(super) struct WornLayers {
    /// Bare share.
    pub(super) bleed: Column,
    /// The layer behind it; none where the piece is solid silver.
    pub(super) layers: Vec<Option<Layer>>,
}

/// The bare share of a part and the layer behind it. Readings of its thickness are taken in.
pub(super) fn worn_layers(
    part: &Part,
    range: BleedRange,
    ledger: &Ledger,
    layers: &LayerDraws,
    sample: &Sample,
) -> WornLayers {
    let worn = Wearing::new(range, least_shown(ledger), layers, sample);
    WornLayers {
        layers: worn.measured(part, ledger),
        bleed: worn.bleed,
    }
}

/// From what shows to the layer behind it.
struct Wearing<'a> {
    layers: &'a LayerDraws,
    none: f64,
    /// Standard normal quantile of the least bare share that anybody sees.
    z_none: f64,
    bleed: Column,
    /// Standard normal quantile of the bare share.
    z: Column,
    /// Where below that share it is, when nothing shows.
    within: Column,
}

impl<'a> Wearing<'a> {
    fn new(range: BleedRange, none: f64, layers: &'a LayerDraws, sample: &Sample) -> Self {
        let points = [range.low, range.likely, range.high];
        Self {
            layers,
            none,
            z_none: probit(held(none)),
            bleed: sample.shares(points, Dim::Bleed),
            z: sample.quantiles(points, Dim::Bleed, 0, &|f| held(shown_share(f))),
            within: sample.u(Dim::Within),
        }
    }

    /// The layer in one draw; none where the piece is solid silver.
    fn layer(&self, i: usize) -> Option<Layer> {
        let (t0, k, floor) = (self.layers.t0_um[i], self.layers.k[i], self.layers.floor);
        if t0.is_nan() {
            None
        } else if self.bleed[i] < self.none {
            // Nothing shows: all one knows is that less has gone than would show.
            let edge = Layer::from_quantile(t0, k, floor, self.z_none);
            Some(Layer {
                mu_um: edge.mu_um + self.within[i] * (t0 - edge.mu_um),
                ..edge
            })
        } else {
            Some(Layer::from_quantile(t0, k, floor, self.z[i]))
        }
    }

    /// The layers of all draws, brought in line with readings on the part.
    fn measured(&self, part: &Part, ledger: &Ledger) -> Vec<Option<Layer>> {
        let mut layers: Vec<Option<Layer>> = (0..self.bleed.len()).map(|i| self.layer(i)).collect();
        measured(&mut layers, &part.readings, ledger);
        layers
    }
}

/// The least bare share that anybody sees.
fn least_shown(ledger: &Ledger) -> f64 {
    ledger.value("silver.f_none").clamp(1e-6, 0.1)
}
