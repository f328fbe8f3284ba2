//! Value classes: which table of condition factors, buyers and medians a kind falls under.

use crate::ledger::FigureId;
use crate::terms::Kind;

/// A figure for each group of value classes, in the order of [`Class::GROUPS`].
pub type ByGroup = [FigureId; 3];

/// A value class.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// Fused plate, early, marked or rare.
    A1,
    /// Ordinary fused plate.
    A2,
    /// Close plate and French plate.
    B,
    /// Documented early or designer electroplate.
    C1,
    /// Electroplate on nickel silver.
    C2,
    /// Electroplate on Britannia metal.
    C3,
    /// Electroplate on copper, reproductions, and what is outside the kinds.
    C4,
    /// Solid silver.
    Sil,
}

impl Class {
    /// Every class.
    pub const ALL: [Self; 8] = [
        Self::A1,
        Self::A2,
        Self::B,
        Self::C1,
        Self::C2,
        Self::C3,
        Self::C4,
        Self::Sil,
    ];

    /// The class of a kind. `early`: made early, marked by a registered maker, or rare.
    /// `documented`: its history is documented.
    #[must_use]
    pub fn of(kind: Kind, early: bool, documented: bool) -> Self {
        let fused = if early { Self::A1 } else { Self::A2 };
        match kind {
            Kind::Sil | Kind::Wst => Self::Sil,
            Kind::Fps | Kind::Fpd | Kind::Rfp => fused,
            Kind::Fpn => Self::A2,
            Kind::Clp | Kind::Frp => Self::B,
            Kind::Ecu | Kind::Ens | Kind::Ebm | Kind::Est if documented => Self::C1,
            Kind::Ens | Kind::Est => Self::C2,
            Kind::Ebm => Self::C3,
            Kind::Ecu | Kind::Rep | Kind::Ucu | Kind::Uns | Kind::Ubm | Kind::Ncp | Kind::Out => {
                Self::C4
            }
        }
    }

    /// The codes of [`Class::ALL`], in its order.
    pub const CODES: [&'static str; 8] = ["A1", "A2", "B", "C1", "C2", "C3", "C4", "SIL"];

    /// The figure of its usual undamaged value.
    #[must_use]
    pub fn median(self) -> FigureId {
        const MEDIANS: [FigureId; 8] = FigureId::family("value.median.", Class::CODES, "");
        MEDIANS[self as usize]
    }

    /// The figure of how far the person's own estimates of its undamaged value are from what such
    /// pieces bring: what they are multiplied by.
    #[must_use]
    pub fn guess_bias(self) -> FigureId {
        const BIASES: [FigureId; 8] = FigureId::family("value.guess_bias.", Class::CODES, "");
        BIASES[self as usize]
    }

    /// Groups of rows for wear and the other factors, in the order of [`Class::group_place`].
    pub const GROUPS: [&'static str; 3] = ["A", "C1", "C2"];

    /// The place of its group in [`Class::GROUPS`].
    #[must_use]
    pub fn group_place(self) -> usize {
        match self.tables() {
            Self::C1 => 1,
            Self::C2 | Self::C3 | Self::C4 => 2,
            _ => 0,
        }
    }

    /// The code in figure ids for buyers' shares and medians.
    #[must_use]
    pub fn code(self) -> &'static str {
        Self::CODES[self as usize]
    }

    /// The class whose condition tables it uses: solid silver borrows those of ordinary fused plate.
    #[must_use]
    pub fn tables(self) -> Self {
        if self == Self::Sil { Self::A2 } else { self }
    }

    /// Group of rows for wear and the other factors.
    #[must_use]
    pub fn group(self) -> &'static str {
        Self::GROUPS[self.group_place()]
    }

    /// Group of rows for the replated state.
    #[must_use]
    pub fn replated_group(self) -> &'static str {
        if self == Self::A1 { "A1" } else { self.group() }
    }

    /// The figures whose ids start with `before`, by group of classes. Meant for constants.
    #[must_use]
    pub const fn by_group(before: &str) -> ByGroup {
        FigureId::family(before, Self::GROUPS, "")
    }

    /// Groups of classes for what can go wrong, in the order of [`Class::hazard_place`].
    pub const HAZARD_GROUPS: [&'static str; 6] = ["A", "B", "C1", "C2", "C3", "C4"];

    /// The place of its group in [`Class::HAZARD_GROUPS`].
    #[must_use]
    pub fn hazard_place(self) -> usize {
        match self.tables() {
            Self::A1 | Self::A2 | Self::Sil => 0,
            Self::B => 1,
            Self::C1 => 2,
            Self::C2 => 3,
            Self::C3 => 4,
            Self::C4 => 5,
        }
    }

    /// Its group in [`Class::HAZARD_GROUPS`].
    #[must_use]
    pub fn hazard_group(self) -> &'static str {
        Self::HAZARD_GROUPS[self.hazard_place()]
    }
}
