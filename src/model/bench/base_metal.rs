//! The metals that may lie under the silver, with the properties that govern how heat spreads in them.

use crate::ledger::{FigureId, Ledger};
use crate::terms::Kind;

/// A metal under the silver.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BaseMetal {
    /// Copper, alone or in fused sheet.
    Copper,
    /// Brass.
    Brass,
    /// Nickel silver.
    NickelSilver,
    /// Britannia metal.
    Britannia,
    /// Iron or steel.
    Steel,
    /// Solid silver.
    Silver,
}

impl BaseMetal {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Copper,
        Self::Brass,
        Self::NickelSilver,
        Self::Britannia,
        Self::Steel,
        Self::Silver,
    ];

    /// The metal that a kind of piece is made of.
    #[must_use]
    pub fn of(kind: Kind) -> Self {
        match kind {
            Kind::Ens | Kind::Uns => Self::NickelSilver,
            Kind::Ebm | Kind::Ubm => Self::Britannia,
            Kind::Clp | Kind::Est => Self::Steel,
            Kind::Frp => Self::Brass,
            Kind::Sil | Kind::Wst => Self::Silver,
            _ => Self::Copper,
        }
    }

    /// Its id in files.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Copper => "copper",
            Self::Brass => "brass",
            Self::NickelSilver => "nickel_silver",
            Self::Britannia => "britannia",
            Self::Steel => "steel",
            Self::Silver => "silver",
        }
    }

    /// The metal with this id.
    #[must_use]
    pub fn parse(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|metal| metal.id() == id)
    }

    /// Thermal conductivity, W/(m K); at least 0.1, so that a decay length can always be computed.
    #[must_use]
    pub fn conductivity(self, ledger: &Ledger) -> f64 {
        let id = match self {
            Self::Copper => FigureId::GUARD_HEAT_COPPER_K,
            Self::Brass => FigureId::HEAT_K_BRASS,
            Self::NickelSilver => FigureId::HEAT_K_NICKEL_SILVER,
            Self::Britannia => FigureId::HEAT_K_BRITANNIA,
            Self::Steel => FigureId::HEAT_K_STEEL,
            Self::Silver => FigureId::HEAT_K_SILVER,
        };
        ledger.value(id).max(0.1)
    }

    /// Thermal diffusivity, mm²/s.
    #[must_use]
    pub fn diffusivity(self, ledger: &Ledger) -> f64 {
        let id = match self {
            Self::Copper => FigureId::HEAT_ALPHA_COPPER,
            Self::Brass => FigureId::HEAT_ALPHA_BRASS,
            Self::NickelSilver => FigureId::HEAT_ALPHA_NICKEL_SILVER,
            Self::Britannia => FigureId::HEAT_ALPHA_BRITANNIA,
            Self::Steel => FigureId::HEAT_ALPHA_STEEL,
            Self::Silver => FigureId::HEAT_ALPHA_SILVER,
        };
        ledger.value(id).max(0.0)
    }

    /// The best conductor among the metals the piece may be made of: those at least as probable as the
    /// threshold at which a rule asks about a kind (`guard.kind_check`).
    #[must_use]
    pub fn best_conductor(p_of: impl Fn(Kind) -> f64, ledger: &Ledger) -> Self {
        let asked_about = ledger.value(FigureId::GUARD_KIND_CHECK);
        let likely = |metal: Self| {
            let of_it = Kind::ALL.into_iter().filter(|k| Self::of(*k) == metal);
            of_it.map(&p_of).sum::<f64>() >= asked_about
        };
        let conducts = |metal: &Self| metal.conductivity(ledger);
        Self::ALL
            .into_iter()
            .filter(|metal| likely(*metal))
            .max_by(|a, b| conducts(a).total_cmp(&conducts(b)))
            .unwrap_or(Self::Copper)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_best_conductor_among_the_probable_metals_decides() {
        let ledger = Ledger::standard();
        let best = |chances: &[(Kind, f64)]| {
            let p_of = |kind| {
                let known = chances.iter().find(|(k, _)| *k == kind);
                known.map_or(0.0, |(_, p)| *p)
            };
            BaseMetal::best_conductor(p_of, ledger)
        };
        assert_eq!(
            best(&[(Kind::Ens, 0.95), (Kind::Ecu, 0.05)]),
            BaseMetal::NickelSilver
        );
        assert_eq!(
            best(&[(Kind::Ens, 0.85), (Kind::Ecu, 0.15)]),
            BaseMetal::Copper
        );
        assert_eq!(best(&[]), BaseMetal::Copper, "nothing known: copper");
    }

    #[test]
    fn every_id_round_trips() {
        for metal in BaseMetal::ALL {
            assert_eq!(BaseMetal::parse(metal.id()), Some(metal));
        }
    }
}
