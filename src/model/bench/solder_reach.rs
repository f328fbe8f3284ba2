//! How far soldering may open old soft solder, over the allowed solders and the unknown properties of the
//! metal. The rules and the bench share this one range.

use super::alloy::ALLOYS;
use super::base_metal::BaseMetal;
use super::heat_field::{HeatField, Reach, Spread, sheet_length_mm};
use crate::ledger::{FigureId, Ledger};

/// How far soldering heat reaches beyond its patch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SolderReach {
    /// With every input in the middle of its range, mm.
    pub likely_mm: f64,
    /// With the hottest joint, the thickest metal and the least heat loss, mm.
    pub most_mm: f64,
}

/// Lowest and highest temperature of a joint, C, over the allowed soft solders: from the lowest at which the
/// solder flows to the highest that a steady hand reaches.
#[must_use]
pub fn solder_joint_c(ledger: &Ledger) -> (f64, f64) {
    let above = ledger.figure(FigureId::HEAT_ABOVE_LIQUID);
    let liquid = ALLOYS
        .iter()
        .filter(|a| a.allowed())
        .map(|a| a.liquid_c(ledger));
    let (low, high) = liquid.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), c| {
        (low.min(c), high.max(c))
    });
    // An own value may be as large as a number can be; the joint is then still hotter than the air.
    (
        (low + above.low).min(f64::MAX),
        (high + above.high).min(f64::MAX),
    )
}

/// How far soldering heat opens old soft solder around a patch on this metal.
#[must_use]
pub fn solder_reach(metal: BaseMetal, ledger: &Ledger) -> SolderReach {
    let v = |id: FigureId| ledger.value(id);
    let (low_c, high_c) = solder_joint_c(ledger);
    let thickness = ledger.figure(FigureId::GUARD_HEAT_THICKNESS);
    let (quiet, windy) = (
        v(FigureId::GUARD_HEAT_H_FAR).max(0.1),
        v(FigureId::GUARD_HEAT_H_NEAR).max(0.1),
    );
    let end_mm = v(FigureId::HEAT_EXTENT).max(1.0);
    let reach = |joint_c: f64, thickness_mm: f64, loss: f64| {
        let field = HeatField {
            length_mm: sheet_length_mm(metal.conductivity(ledger), thickness_mm.max(0.01), loss)
                .min(f64::MAX),
            spread: Spread::Disk {
                patch_mm: v(FigureId::GUARD_HEAT_PATCH).max(0.1),
                end_mm,
            },
        };
        match field.reach(
            joint_c,
            v(FigureId::GUARD_HEAT_AMBIENT),
            v(FigureId::GUARD_HEAT_SOFT_SOLDER),
        ) {
            Reach::Never => 0.0,
            Reach::To(mm) => mm,
            Reach::Whole => end_mm,
        }
    };
    SolderReach {
        likely_mm: reach(
            f64::midpoint(low_c, high_c),
            thickness.value,
            (quiet * windy).sqrt(),
        ),
        most_mm: reach(high_c, thickness.high, quiet.min(windy)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_reach_covers_distances_at_which_the_bench_expects_opening() {
        let reach = solder_reach(BaseMetal::Copper, Ledger::standard());
        // The bench gives a joint 6.5 mm away about three chances in four of opening.
        assert!(reach.likely_mm > 6.5, "{reach:?}");
        assert!(reach.most_mm > reach.likely_mm, "{reach:?}");
        let nickel = solder_reach(BaseMetal::NickelSilver, Ledger::standard());
        assert!(nickel.most_mm < reach.most_mm / 2.0, "{nickel:?}");
    }

    #[test]
    fn leaded_and_low_melting_solders_do_not_count() {
        let (low, high) = solder_joint_c(Ledger::standard());
        // Tin, silver and copper at 220 C and 20 C above; tin and antimony at 240 C and 50 C above.
        assert!(
            (low - 240.0).abs() < 1e-9 && (high - 290.0).abs() < 1e-9,
            "{low} {high}"
        );
    }
}
