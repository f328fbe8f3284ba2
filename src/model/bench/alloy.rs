//! Solders and fillers by stable id; their melting points are in the ledger (`solder.*`).

use crate::ledger::Ledger;

/// A solder or filler.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Alloy {
    /// Stable id; the ledger's `solder.<id>` is the temperature at which it is all liquid.
    pub id: &'static str,
    /// In trade or standard words.
    pub name: &'static str,
    /// Above about 450 C: a hard solder.
    pub hard: bool,
    /// Holds cadmium: never used again, whatever its melting point.
    pub cadmium: bool,
}

const fn soft(id: &'static str, name: &'static str) -> Alloy {
    Alloy {
        id,
        name,
        hard: false,
        cadmium: false,
    }
}

const fn hard(id: &'static str, name: &'static str) -> Alloy {
    Alloy {
        id,
        name,
        hard: true,
        cadmium: false,
    }
}

const fn with_cadmium(id: &'static str, name: &'static str) -> Alloy {
    Alloy {
        id,
        name,
        hard: true,
        cadmium: true,
    }
}

/// Every alloy known here: soft ones first, then the American welding society's silver classes.
pub const ALLOYS: [Alloy; 25] = [
    soft("sn_ag", "Tin and silver, lead-free"),
    soft("sac", "Tin, silver and copper, lead-free"),
    soft("tin", "Pure tin"),
    soft("sn_sb", "Tin and antimony, lead-free"),
    soft("bi_sn", "Bismuth and tin, low-melting"),
    soft("sn_pb_60", "Old tin-lead, 60 to 40"),
    soft("sn_pb_50", "Old tin-lead, half and half"),
    soft("sn_pb_40", "Old tin-lead, 40 to 60"),
    hard("BAg-7", "Silver class BAg-7"),
    hard("BAg-22", "Silver class BAg-22"),
    hard("BAg-24", "Silver class BAg-24"),
    hard("BAg-28", "Silver class BAg-28"),
    hard("BAg-18", "Silver class BAg-18"),
    hard("BAg-5", "Silver class BAg-5"),
    hard("BAg-20", "Silver class BAg-20"),
    hard("BAg-6", "Silver class BAg-6"),
    hard("BAg-4", "Silver class BAg-4"),
    hard("BAg-8", "Silver class BAg-8"),
    hard("BAg-25", "Silver class BAg-25"),
    hard("BAg-21", "Silver class BAg-21"),
    hard("BAg-13", "Silver class BAg-13"),
    hard("BAg-19", "Silver class BAg-19"),
    hard("BAg-13a", "Silver class BAg-13a"),
    with_cadmium("BAg-3", "Silver class BAg-3, with cadmium"),
    with_cadmium("BAg-2a", "Silver class BAg-2a, with cadmium"),
];

impl Alloy {
    /// The alloy with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        ALLOYS.into_iter().find(|a| a.id == id)
    }

    /// Whether a repair of an old piece may use it as soft solder: no lead, and not low-melting.
    #[must_use]
    pub fn allowed(self) -> bool {
        !self.hard && !self.cadmium && self.id != "bi_sn" && !self.id.starts_with("sn_pb")
    }

    /// The temperature at which it is all liquid, C.
    #[must_use]
    pub fn liquid_c(self, ledger: &Ledger) -> f64 {
        ledger.value(&format!("solder.{}", self.id))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_round_trip_and_every_alloy_has_its_figure() {
        for alloy in ALLOYS {
            assert_eq!(Alloy::parse(alloy.id), Some(alloy));
            let liquid = alloy.liquid_c(Ledger::standard());
            // Brazing begins at 450 C (HSE, EIS31 rev 1).
            assert_eq!(liquid > 450.0, alloy.hard, "{}", alloy.id);
        }
        assert_eq!(Alloy::parse("BAg-1"), None);
    }
}
