//! Solders and filler metals by stable id. Their melting points are figures of the ledger (`solder.*`).

use crate::ledger::{FigureId, Ledger};

/// A solder or filler.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Alloy {
    /// Stable id, as used in files.
    pub id: &'static str,
    /// The figure with the temperature at which it is fully liquid.
    liquid: FigureId,
    /// Name in the trade or in its standard.
    pub name: &'static str,
    /// A hard solder: it melts above about 450 C.
    pub hard: bool,
    /// Contains cadmium: never to be used, whatever its melting point.
    pub cadmium: bool,
}

const fn soft(id: &'static str, liquid: FigureId, name: &'static str) -> Alloy {
    Alloy {
        id,
        liquid,
        name,
        hard: false,
        cadmium: false,
    }
}

const fn hard(id: &'static str, liquid: FigureId, name: &'static str) -> Alloy {
    Alloy {
        id,
        liquid,
        name,
        hard: true,
        cadmium: false,
    }
}

const fn with_cadmium(id: &'static str, liquid: FigureId, name: &'static str) -> Alloy {
    Alloy {
        id,
        liquid,
        name,
        hard: true,
        cadmium: true,
    }
}

/// Every known alloy: soft ones first, then the silver classes of AWS A5.8.
pub const ALLOYS: [Alloy; 25] = [
    soft("sn_ag", FigureId::SOLDER_SN_AG, "Tin and silver, lead-free"),
    soft(
        "sac",
        FigureId::SOLDER_SAC,
        "Tin, silver and copper, lead-free",
    ),
    soft("tin", FigureId::SOLDER_TIN, "Pure tin"),
    soft(
        "sn_sb",
        FigureId::SOLDER_SN_SB,
        "Tin and antimony, lead-free",
    ),
    soft(
        "bi_sn",
        FigureId::SOLDER_BI_SN,
        "Bismuth and tin, low-melting",
    ),
    soft(
        "sn_pb_60",
        FigureId::SOLDER_SN_PB_60,
        "Old tin-lead, 60 to 40",
    ),
    soft(
        "sn_pb_50",
        FigureId::SOLDER_SN_PB_50,
        "Old tin-lead, half and half",
    ),
    soft(
        "sn_pb_40",
        FigureId::SOLDER_SN_PB_40,
        "Old tin-lead, 40 to 60",
    ),
    hard("BAg-7", FigureId::SOLDER_BAG_7, "Silver class BAg-7"),
    hard("BAg-22", FigureId::SOLDER_BAG_22, "Silver class BAg-22"),
    hard("BAg-24", FigureId::SOLDER_BAG_24, "Silver class BAg-24"),
    hard("BAg-28", FigureId::SOLDER_BAG_28, "Silver class BAg-28"),
    hard("BAg-18", FigureId::SOLDER_BAG_18, "Silver class BAg-18"),
    hard("BAg-5", FigureId::SOLDER_BAG_5, "Silver class BAg-5"),
    hard("BAg-20", FigureId::SOLDER_BAG_20, "Silver class BAg-20"),
    hard("BAg-6", FigureId::SOLDER_BAG_6, "Silver class BAg-6"),
    hard("BAg-4", FigureId::SOLDER_BAG_4, "Silver class BAg-4"),
    hard("BAg-8", FigureId::SOLDER_BAG_8, "Silver class BAg-8"),
    hard("BAg-25", FigureId::SOLDER_BAG_25, "Silver class BAg-25"),
    hard("BAg-21", FigureId::SOLDER_BAG_21, "Silver class BAg-21"),
    hard("BAg-13", FigureId::SOLDER_BAG_13, "Silver class BAg-13"),
    hard("BAg-19", FigureId::SOLDER_BAG_19, "Silver class BAg-19"),
    hard("BAg-13a", FigureId::SOLDER_BAG_13A, "Silver class BAg-13a"),
    with_cadmium(
        "BAg-3",
        FigureId::SOLDER_BAG_3,
        "Silver class BAg-3, with cadmium",
    ),
    with_cadmium(
        "BAg-2a",
        FigureId::SOLDER_BAG_2A,
        "Silver class BAg-2a, with cadmium",
    ),
];

impl Alloy {
    /// The alloy with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        ALLOYS.into_iter().find(|a| a.id == id)
    }

    /// Whether it may be used as soft solder on an old piece: neither lead nor a low-melting alloy.
    #[must_use]
    pub fn allowed(self) -> bool {
        !self.hard && !self.cadmium && self.id != "bi_sn" && !self.id.starts_with("sn_pb")
    }

    /// The temperature at which it is fully liquid, C.
    #[must_use]
    pub fn liquid_c(self, ledger: &Ledger) -> f64 {
        ledger.value(self.liquid)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_alloy_reads_the_figure_with_its_id() {
        for alloy in ALLOYS {
            assert_eq!(alloy.liquid.text(), format!("solder.{}", alloy.id));
        }
    }

    #[test]
    fn ids_round_trip_and_hard_alloys_melt_above_450_c() {
        for alloy in ALLOYS {
            assert_eq!(Alloy::parse(alloy.id), Some(alloy));
            let liquid = alloy.liquid_c(Ledger::standard());
            // Brazing starts at 450 C (HSE, EIS31 rev 1).
            assert_eq!(liquid > 450.0, alloy.hard, "{}", alloy.id);
        }
        assert_eq!(Alloy::parse("BAg-1"), None);
    }
}
