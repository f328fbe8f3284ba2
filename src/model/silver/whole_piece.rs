//! How much base metal shows on every part of a piece, including parts that nobody looked at.
//!
//! Parts of one piece wear alike. In probit units, the bare share of a part is the sum of the level of the
//! piece, an offset for the part's place (a rim wears before the body) and an individual deviation. The parts
//! that were looked at inform the level; the level predicts the rest. Normal theory; the figures are
//! judgement (`silver.part.*`).

use super::{BleedRange, bleed_range};
use crate::ledger::{FigureId, Ledger};
use crate::maths::{probability, probit};
use crate::record::{Bleed, Case};
use crate::terms::{Form, Interior, Loss, PartName};

/// Each part's share of the area, in the order of [`PartName::ALL`].
pub const PART_AREA: [FigureId; PartName::IDS.len()] =
    FigureId::family("place.area.", PartName::IDS, "");

/// The bare share of one part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartBleed {
    /// The part.
    pub part: PartName,
    /// Its 10th, 50th and 90th percentile.
    pub range: BleedRange,
    /// Whether it was looked at, or its silver measured.
    pub looked: bool,
}

/// Standard normal quantile of .9.
const Z90: f64 = 1.281_551_565_544_6;
/// Limits of a bare share before conversion to probit units: the eye cannot tell smaller or larger shares
/// apart.
const ENDS: (f64, f64) = (0.0005, 0.9995);

/// The bare share of every part, the body first. An interior counts only if it was looked at or is
/// known to be silvered; a part recorded as lost does not count.
#[must_use]
pub fn whole_piece(case: &Case, ledger: &Ledger) -> Vec<PartBleed> {
    let seen = |name: PartName| {
        case.part(name)
            .filter(|p| p.bleed.is_some() || !p.readings.is_empty())
    };
    let mut names = vec![PartName::Body];
    let recorded = case.parts.iter().map(|p| p.name);
    let looked_at = recorded.filter(|n| seen(*n).is_some());
    let of_form = match case.piece.form {
        None | Some(Form::Other) => &[][..],
        Some(form) => form.parts(),
    };
    for name in looked_at.chain(of_form.iter().copied()) {
        if !names.contains(&name) && (seen(name).is_some() || is_there(case, name)) {
            names.push(name);
        }
    }
    let level = WearLevel::of(case, ledger, &names);
    names
        .into_iter()
        .map(|part| {
            let known = seen(part);
            PartBleed {
                part,
                range: match known.and_then(|p| p.bleed) {
                    Some(bleed) => bleed_range(Some(bleed), ledger),
                    None => level.judged(part, ledger),
                },
                looked: known.is_some(),
            }
        })
        .collect()
}

fn is_there(case: &Case, name: PartName) -> bool {
    let part = case.part(name);
    if name == PartName::Interior {
        return part.and_then(|p| p.interior) == Some(Interior::Silvered);
    }
    part.is_none_or(|p| !matches!(p.loss, Some(Loss::Small | Loss::Large)))
}

/// The level of wear inferred from the parts looked at, in probit units.
struct WearLevel {
    mean: f64,
    variance: f64,
    unlike: f64,
}

impl WearLevel {
    fn of(case: &Case, ledger: &Ledger, names: &[PartName]) -> Self {
        let unlike = ledger.value(FigureId::SILVER_PART_UNLIKE).max(0.0);
        let total = ledger
            .value(FigureId::SILVER_PART_PRIOR_SD)
            .max(unlike + 0.01);
        let prior_weight = 1.0 / (total * total - unlike * unlike);
        let prior = probit(
            ledger
                .value(FigureId::SILVER_BLEED_UNKNOWN)
                .clamp(ENDS.0, ENDS.1),
        );
        let (mut weight, mut sum) = (prior_weight, prior_weight * prior);
        for name in names {
            let bleed: Option<Bleed> = case.part(*name).and_then(|p| p.bleed);
            let Some(bleed) = bleed else { continue };
            let range = bleed_range(Some(bleed), ledger);
            let z = |f: f64| probit(f.clamp(ENDS.0, ENDS.1));
            let sd = (z(range.high) - z(range.low)) / (2.0 * Z90);
            let w = 1.0 / (sd * sd + unlike * unlike).max(1e-6);
            weight += w;
            sum += w * (z(range.likely) - place(*name, ledger));
        }
        Self {
            mean: sum / weight,
            variance: 1.0 / weight,
            unlike,
        }
    }

    /// The predicted range of a part that nobody looked at.
    fn judged(&self, part: PartName, ledger: &Ledger) -> BleedRange {
        let middle = self.mean + place(part, ledger);
        let spread = Z90 * (self.variance + self.unlike * self.unlike).sqrt();
        BleedRange {
            low: probability(middle - spread),
            likely: probability(middle),
            high: probability(middle + spread).min(0.99),
        }
    }
}

/// The offset in wear for the place of a part, in probit units.
fn place(part: PartName, ledger: &Ledger) -> f64 {
    ledger.value(match part {
        PartName::Body | PartName::Cover | PartName::Shield => FigureId::SILVER_PART_FROM_BODY_FLAT,
        PartName::Interior => FigureId::SILVER_PART_FROM_BODY_INTERIOR,
        PartName::Base => FigureId::SILVER_PART_FROM_BODY_BASE,
        PartName::Border | PartName::Edge => FigureId::SILVER_PART_FROM_BODY_EDGE,
        _ => FigureId::SILVER_PART_FROM_BODY_HIGH,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Part;

    fn tray(parts: &[(PartName, f64)]) -> Case {
        let mut case = Case::default();
        case.piece.form = Some(Form::Tray);
        case.parts = parts
            .iter()
            .map(|(name, f)| Part {
                bleed: Some(Bleed::Fraction(*f)),
                ..Part::unknown(*name)
            })
            .collect();
        case
    }

    /// Share of the area still covered, with all parts at their low end at once.
    fn covered(case: &Case) -> f64 {
        let ledger = Ledger::standard();
        let area = |p: PartName| ledger.value(PART_AREA[p as usize]);
        let parts = whole_piece(case, ledger);
        let all: f64 = parts.iter().map(|p| area(p.part)).sum();
        let kept: f64 = parts
            .iter()
            .map(|p| area(p.part) * (1.0 - p.range.low))
            .sum();
        kept / all
    }

    #[test]
    fn covered_area_of_a_worn_tray_depends_on_how_much_was_inspected() {
        use PartName as P;
        let all = [
            P::Body,
            P::Border,
            P::Edge,
            P::Handle,
            P::Shield,
            P::Foot,
            P::Base,
        ];
        let of = |parts: &[P]| {
            let parts: Vec<(P, f64)> = parts.iter().map(|p| (*p, 0.95)).collect();
            covered(&tray(&parts))
        };
        // Computed with the prototype: .08, .20, .23, .57, and 1.00 where nobody looked.
        for (share, expected) in [
            (of(&all), 0.08),
            (of(&[P::Body, P::Border, P::Edge]), 0.20),
            (of(&[P::Body]), 0.23),
            (of(&[P::Border, P::Edge]), 0.57),
            (of(&[]), 1.0),
        ] {
            assert!((share - expected).abs() < 0.012, "{share} for {expected}");
        }
    }

    #[test]
    fn more_bare_metal_on_inspected_parts_predicts_more_on_the_others() {
        let ledger = Ledger::standard();
        let foot = |f: f64| {
            let parts = whole_piece(&tray(&[(PartName::Body, f)]), ledger);
            parts
                .iter()
                .find(|p| p.part == PartName::Foot)
                .map_or(0.0, |p| p.range.likely)
        };
        let shares = [0.001, 0.02, 0.05, 0.3, 0.8].map(foot);
        assert!(shares.windows(2).all(|w| w[0] < w[1]), "{shares:?}");
    }
}
