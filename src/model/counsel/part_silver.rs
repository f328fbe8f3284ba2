//! The silver of each part, draw by draw: the bare share, the silver left, and the loss per cleaning.

use super::column::Column;
use super::draws::tarnish_of;
use super::sample::{Dim, Sample};
use super::what_if::WhatIf;
use crate::identity::Kind;
use crate::ledger::{FigureId, Ledger, signs};
use crate::maths::{at_least, at_most, probit};
use crate::record::{Case, Part, PartName, Tarnish};
use crate::silver::{
    BleedRange, FilmLoss, Layer, PART_AREA, film_loss_um, held, measured, shown_share,
};

/// Thickness of the silver when new, for the kinds that have a layer.
const THICKNESS: [Option<FigureId>; Kind::COUNT] =
    FigureId::family_if_any("silver.t0.", Kind::CODES, "");

/// The silver in a tarnish film, by its colour.
const FILM: [FigureId; Tarnish::IDS.len()] = FigureId::family("silver.film.", Tarnish::IDS, "");

/// For each part: how unevenly it wears, and how visible it is.
const HIGH_POINT: [FigureId; PartName::IDS.len()] =
    FigureId::family("silver.high_point.", PartName::IDS, "");
const SHOW: [FigureId; PartName::IDS.len()] = FigureId::family("place.show.", PartName::IDS, "");

/// One part's silver over the sample.
#[derive(Clone)]
pub(super) struct PartDraws {
    pub(super) id: &'static str,
    pub(super) name: &'static str,
    /// Weight by area, and by area times visibility.
    pub(super) area: f64,
    pub(super) show: f64,
    /// The bare share at the low end of the bleed, for the covered area.
    pub(super) low: f64,
    /// Whether the part was looked at or its silver measured. Other parts are predicted from those that were.
    pub(super) looked: bool,
    /// Whether it is a high point or edge where bare metal was seen, which a patch of new silver can cover.
    pub(super) bare_high_point: bool,
    /// Whether bare metal was seen there, and so little on the body that a tint can hide it.
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
    /// Silver left as a share; NaN for solid silver.
    pub(super) left_share: Column,
    /// The share of the remaining silver that one gentle cleaning takes, 0 to 1.
    pub(super) cleaning_dose: Column,
    /// Gentle cleanings until twice as much base metal shows; NaN where that has no meaning.
    pub(super) to_double: Column,
    /// Share of draws in which the thinnest silver would not last the planned cleanings.
    pub(super) worn_through: f64,
    /// For every fourth draw, whether it would not last; `None` where the piece is solid silver. The worst
    /// point costs one more quantile per draw, and a quarter of the draws is accurate enough.
    short: Vec<Option<bool>>,
}

/// Every n-th draw is checked for whether the thinnest silver lasts.
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
    /// Sound silver that shop polish takes in one cleaning.
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
                    Some(FigureId::SILVER_T0_ENS_MARKED)
                } else {
                    THICKNESS[k.index()]
                };
                let id = id.filter(|_| present)?;
                Some(sample.draw(ledger.figure(id), Dim::T0))
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
            ledger.figure(FILM[tarnish_of(case).unwrap_or(Tarnish::YellowGold) as usize]),
            Dim::Tarnish,
        );
        Self {
            t0_um,
            k: sample.draw(ledger.figure(FigureId::SILVER_K), Dim::Unevenness),
            floor: ledger.value(FigureId::SILVER_S_FLOOR).max(0.01),
            film,
            loss_sound: sample.draw(ledger.figure(FigureId::SILVER_LOSS_CHALK_UM), Dim::Loss),
            loss_share: ledger.value(FigureId::SILVER_LOSS_CHALK_SHARE),
            consumed: ledger.value(FigureId::SILVER_CONSUMED),
            paste_sound: sample.draw(ledger.figure(FigureId::SILVER_LOSS_PASTE_UM), Dim::Loss),
            paste_share: ledger.value(FigureId::SILVER_LOSS_PASTE_SHARE),
        }
    }

    /// How many times as much silver shop polish takes as gentle cleaning does, in each draw.
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

    /// Whether everything except the original thickness is the same.
    fn same_but_thickness(&self, other: &Self) -> bool {
        let numbers = |l: &Self| [l.floor, l.loss_share, l.consumed].map(f64::to_bits);
        self.k.is(&other.k)
            && self.film.is(&other.film)
            && self.loss_sound.is(&other.loss_sound)
            && numbers(self) == numbers(other)
    }
}

/// The silver of every part of the piece, the body first. A part that was not looked at is predicted from
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
            let h = ledger.value(HIGH_POINT[b.part as usize]).max(1.0);
            let area = ledger.value(PART_AREA[b.part as usize]).max(0.0);
            PartDraws {
                id,
                name: b.part.label(),
                area,
                show: area * ledger.value(SHOW[b.part as usize]).max(0.0),
                low: range.low,
                looked: b.looked,
                bare_high_point: b.looked
                    && b.part.is_high_point()
                    && range.likely >= least_shown(ledger),
                tonable: b.looked
                    && range.likely >= least_shown(ledger)
                    && (b.part.is_high_point()
                        || (b.part == PartName::Body
                            && range.likely <= ledger.value(FigureId::GUARD_BLEED_NO_CLEAN))),
                part: b.part,
                silver: Silver::new(part, range, h, ledger, layers, sample),
            }
        })
        .collect()
}

/// The last result for a part, reused if its inputs did not change.
pub(super) struct SilverBefore {
    surface: PartSurface,
    layers: LayerDraws,
    silver: Silver,
}

/// How many parts' results are cached: twice as many as a piece has parts.
const HELD: usize = 24;

/// The inputs that are the same in every draw of a part.
#[derive(Clone, Copy, PartialEq)]
struct PartSurface {
    range: BleedRange,
    /// The factor by which a cleaning takes more at high points.
    h: f64,
    /// The least bare share that is visible.
    none: f64,
    /// How many cleanings' worth of silver the thinnest spot should have.
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
        let surface = PartSurface {
            range,
            h,
            none: least_shown(ledger),
            reserve: ledger.value(FigureId::GUARD_H04_SAFETY)
                * ledger.value(FigureId::GUARD_H04_CLEANINGS),
        };
        let worn = Wearing::new(range, surface.none, layers, sample);
        if !part.readings.is_empty() {
            // A reading shifts every draw.
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

    /// Computes the part draw by draw. If the original thickness of a draw did not change, its cached result
    /// is reused.
    fn drawn(
        surface: PartSurface,
        worn: &Wearing,
        sample: &Sample,
        layer: &dyn Fn(usize) -> Option<Layer>,
        before: Option<&SilverBefore>,
    ) -> Self {
        let PartSurface {
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

/// The bare share of a part and the layer behind it, updated with the readings of its thickness.
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

/// Derives the layer from the visible bare share.
struct Wearing<'a> {
    layers: &'a LayerDraws,
    none: f64,
    /// Standard normal quantile of the least bare share that is visible.
    z_none: f64,
    bleed: Column,
    /// Standard normal quantile of the bare share.
    z: Column,
    /// Where the share lies below the least visible one, when nothing shows.
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
            // Nothing shows, so it is only known that less silver is gone than would show.
            let edge = Layer::from_quantile(t0, k, floor, self.z_none);
            Some(Layer {
                mu_um: edge.mu_um + self.within[i] * (t0 - edge.mu_um),
                ..edge
            })
        } else {
            Some(Layer::from_quantile(t0, k, floor, self.z[i]))
        }
    }

    /// The layers of all draws, updated with the readings on the part.
    fn measured(&self, part: &Part, ledger: &Ledger) -> Vec<Option<Layer>> {
        let mut layers: Vec<Option<Layer>> = (0..self.bleed.len()).map(|i| self.layer(i)).collect();
        measured(&mut layers, &part.readings, ledger);
        layers
    }
}

/// The least bare share that is visible.
fn least_shown(ledger: &Ledger) -> f64 {
    ledger.value(FigureId::SILVER_F_NONE).clamp(1e-6, 0.1)
}
