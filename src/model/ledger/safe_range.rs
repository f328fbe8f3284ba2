//! How far a person's own value may move a figure on which a rule of safety rests.

use super::{Figure, FigureId, Ledger};

/// The values a person may give a figure of safety, in the figure's unit. An end without a limit is `None`;
/// both ends are inclusive. Where both are the same value, the figure cannot be changed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SafeRange {
    /// The least that is safe.
    pub least: Option<f64>,
    /// The most that is safe.
    pub most: Option<f64>,
}

impl SafeRange {
    /// Whether this value is outside the range.
    #[must_use]
    pub fn refuses(self, value: f64) -> bool {
        self.least.is_some_and(|least| value < least) || self.most.is_some_and(|most| value > most)
    }
}

/// The range for a figure of safety; `None` for a figure on which no rule of safety rests.
///
/// A limit is a value as shipped. It is an end of the shipped range where a rule reads that end: a person's
/// own value replaces the whole range.
#[must_use]
pub fn safe_range(id: FigureId) -> Option<SafeRange> {
    let shipped: &Figure = &Ledger::standard().figures[id.place()];
    let range = |least, most| Some(SafeRange { least, most });
    let may_rise = || range(Some(shipped.value), None);
    let may_fall = || range(None, Some(shipped.value));
    let stays = || range(Some(shipped.value), Some(shipped.value));
    match id {
        // Probabilities, shares and temperatures at which a rule begins to apply: a lower one is stricter.
        FigureId::GUARD_KIND_BARRED
        | FigureId::GUARD_KIND_CHECK
        | FigureId::GUARD_BLEED_NO_CLEAN
        | FigureId::GUARD_H06
        | FigureId::GUARD_H07_BOND
        | FigureId::GUARD_H11
        | FigureId::GUARD_H13
        | FigureId::GUARD_H14_AREA
        | FigureId::GUARD_H14_P
        | FigureId::GUARD_H25
        | FigureId::GUARD_HEAT_SOFT_SOLDER
        // Heat that the air takes away, and the reach at which a joint begins to count: less is stricter.
        | FigureId::GUARD_HEAT_H_FAR
        | FigureId::GUARD_HEAT_H_NEAR
        | FigureId::GUARD_HEAT_RAMP => may_fall(),
        // Margins, reserves, how much to look at, until when lead was used: more is stricter.
        FigureId::GUARD_H04_SAFETY
        | FigureId::GUARD_H04_CLEANINGS
        | FigureId::GUARD_H07_MARGIN
        | FigureId::GUARD_H14_LOOKED
        | FigureId::GUARD_FOOD_YEAR
        // Heat travels further in a better conductor.
        | FigureId::GUARD_HEAT_COPPER_K
        | FigureId::HEAT_K_BRASS
        | FigureId::HEAT_K_NICKEL_SILVER
        | FigureId::HEAT_K_BRITANNIA
        | FigureId::HEAT_K_SILVER
        | FigureId::HEAT_K_STEEL => may_rise(),
        // The reach is computed with the thickest sheet and the hottest joint.
        FigureId::GUARD_HEAT_THICKNESS | FigureId::HEAT_ABOVE_LIQUID => {
            range(Some(shipped.high), None)
        }
        // What nobody looked at: more bare metal is stricter for baths; the shipped range is as far as it may
        // go, because less is stricter for plating.
        FigureId::SILVER_BLEED_UNKNOWN => range(Some(shipped.value), Some(shipped.high)),
        // The reach neither only grows nor only shrinks with these.
        FigureId::GUARD_HEAT_PATCH | FigureId::GUARD_HEAT_AMBIENT | FigureId::HEAT_EXTENT => {
            stays()
        }
        _ => {
            let is_of = |family: &str| id.text().starts_with(family);
            if is_of("heat.limit.") || is_of("food.limit.") {
                may_fall()
            } else if is_of("solder.") {
                may_rise()
            } else if JUDGED.iter().any(|family| is_of(family)) {
                range(Some(shipped.low), Some(shipped.high))
            } else {
                None
            }
        }
    }
}

/// The families from which rules infer how much silver is left, and where. They are judgement, so a person
/// may move them within the shipped range and no further.
const JUDGED: [&str; 9] = [
    "place.area.",
    "silver.bleed.",
    "silver.f_none",
    "silver.high_point.",
    "silver.k",
    "silver.loss.",
    "silver.part.",
    "silver.s_floor",
    "silver.t0.",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_figure_of_a_guard_has_a_safe_range() {
        for id in FigureId::all() {
            let family = [
                "guard.",
                "silver.part.",
                "silver.bleed.",
                "place.area.",
                "heat.limit.",
            ];
            let of_safety = ["food.limit.", "solder.", "heat.k."];
            let guarded = family.iter().chain(&of_safety);
            if guarded
                .into_iter()
                .any(|family| id.text().starts_with(family))
            {
                let range = safe_range(id).unwrap_or_else(|| panic!("{id} has no safe range"));
                let shipped = Ledger::standard().figure(id);
                assert!(range.least.is_some() || range.most.is_some(), "{id}");
                assert!(
                    !range.refuses(shipped.high) || !range.refuses(shipped.value),
                    "{id}"
                );
            }
        }
    }
}
