//! What condition does to value: wear by buyer, other defects, and the chance of a bad result.

use super::class::Class;
use crate::ledger::{Figure, FigureId, Ledger, Shape};
use crate::maths::{Z5, Z10, two_piece_slopes};

/// Classes that have their own tables: solid silver borrows one.
const TABLES: [&str; 7] = ["A1", "A2", "B", "C1", "C2", "C3", "C4"];

/// For each buyer, the share of buyers by class.
const MIX: [[FigureId; 7]; 3] = [
    FigureId::family("value.mix.", TABLES, ".collector"),
    FigureId::family("value.mix.", TABLES, ".decorator"),
    FigureId::family("value.mix.", TABLES, ".user"),
];

/// Bare shares at which the wear rows stand; the first is no wear.
const ANCHORS: [FigureId; 5] =
    FigureId::family("value.anchor.", ["W0", "W1", "W2", "W3", "W4"], "");

/// For each buyer and each anchor but the first, the wear factor by group of classes.
const WEAR: [[[FigureId; 3]; 4]; 3] = [
    [
        FigureId::family("value.wear.", Class::GROUPS, ".W1.collector"),
        FigureId::family("value.wear.", Class::GROUPS, ".W2.collector"),
        FigureId::family("value.wear.", Class::GROUPS, ".W3.collector"),
        FigureId::family("value.wear.", Class::GROUPS, ".W4.collector"),
    ],
    [
        FigureId::family("value.wear.", Class::GROUPS, ".W1.decorator"),
        FigureId::family("value.wear.", Class::GROUPS, ".W2.decorator"),
        FigureId::family("value.wear.", Class::GROUPS, ".W3.decorator"),
        FigureId::family("value.wear.", Class::GROUPS, ".W4.decorator"),
    ],
    [
        FigureId::family("value.wear.", Class::GROUPS, ".W1.user"),
        FigureId::family("value.wear.", Class::GROUPS, ".W2.user"),
        FigureId::family("value.wear.", Class::GROUPS, ".W3.user"),
        FigureId::family("value.wear.", Class::GROUPS, ".W4.user"),
    ],
];

/// For each buyer, the factor once replated: early fused plate first, then by group of classes.
const REPLATED: [[FigureId; 4]; 3] = [
    FigureId::family("value.replated.", REPLATED_GROUPS, ".collector"),
    FigureId::family("value.replated.", REPLATED_GROUPS, ".decorator"),
    FigureId::family("value.replated.", REPLATED_GROUPS, ".user"),
];

/// Anchors of wear, no wear among them.
pub const WEAR_ANCHORS: usize = ANCHORS.len();

/// Groups of rows for the replated state.
pub const REPLATED_GROUPS: [&str; 4] = ["A1", "A", "C1", "C2"];

/// The figure of wear at an anchor from 1 up, for a buyer and a group of [`Class::GROUPS`].
#[must_use]
pub fn wear_figure(buyer: usize, anchor: usize, group: usize) -> FigureId {
    WEAR[buyer][anchor - 1][group]
}

/// The figure of the replated state, for a buyer and a group of [`REPLATED_GROUPS`].
#[must_use]
pub fn replated_figure(buyer: usize, group: usize) -> FigureId {
    REPLATED[buyer][group]
}

/// Standard deviation of ln of a figure, from its range.
#[must_use]
pub fn ln_sd(figure: &Figure) -> f64 {
    let z = if figure.shape == Shape::P10P50P90 {
        Z10
    } else {
        Z5
    };
    libm::log(figure.high / figure.low) / (2.0 * z)
}

/// A multiplier on the log scale: ln(middle) and its slopes per unit of z below and above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factor {
    /// ln of the middle.
    pub ln: f64,
    down: f64,
    up: f64,
}

impl Factor {
    /// No effect.
    pub const ONE: Self = Self {
        ln: 0.0,
        down: 0.0,
        up: 0.0,
    };

    /// Reads a row given as 5th, 50th and 95th percentile, all > 0.
    #[must_use]
    pub fn of(figure: &Figure) -> Self {
        let least = |v: f64| v.max(1e-6);
        let (low, mid, high) = (least(figure.low), least(figure.value), least(figure.high));
        let (down, up) = two_piece_slopes(low, mid, high, Z5);
        Self {
            ln: libm::log(mid),
            down,
            up,
        }
    }

    /// ln of the multiplier at the standard normal deviate `z`.
    #[must_use]
    pub fn ln_at(&self, z: f64) -> f64 {
        self.ln + z * if z < 0.0 { self.down } else { self.up }
    }
}

/// Wear, replated state and buyers of one class.
#[derive(Clone, Debug, PartialEq)]
pub struct ConditionTable {
    /// Bare shares at which the wear rows stand.
    anchors: [f64; 5],
    /// For each buyer, the factor at each anchor.
    wear: [[Factor; 5]; 3],
    /// For each buyer, the factor once replated.
    replated: [Factor; 3],
    /// Share of each buyer; sums to 1.
    mix: [f64; 3],
}

impl ConditionTable {
    /// The table of a class.
    #[must_use]
    pub fn of(class: Class, ledger: &Ledger) -> Self {
        let (group, table) = (class.group_place(), class.tables() as usize);
        let mix = MIX.map(|by_class| ledger.value(by_class[table]));
        let total: f64 = mix.iter().sum();
        let replated = if class == Class::A1 { 0 } else { group + 1 };
        Self {
            anchors: ANCHORS.map(|anchor| ledger.value(anchor)),
            wear: WEAR.map(|rows| {
                let mut factors = [Factor::ONE; 5];
                for (factor, by_group) in factors[1..].iter_mut().zip(rows) {
                    *factor = Factor::of(ledger.figure(by_group[group]));
                }
                factors
            }),
            replated: REPLATED.map(|by_group| Factor::of(ledger.figure(by_group[replated]))),
            mix: mix.map(|m| m / total.max(f64::MIN_POSITIVE)),
        }
    }

    /// The buyers' shares: collector, decorator, user.
    #[must_use]
    pub fn mix(&self) -> [f64; 3] {
        self.mix
    }

    /// Wear factor of one buyer at bare share `f` and deviate `z`: straight lines in ln M between the
    /// anchors, flat above the last.
    #[must_use]
    pub fn wear_for(&self, buyer: usize, f: f64, z: f64) -> f64 {
        libm::exp(self.ln_wear(buyer, self.segment(f), z))
    }

    /// Wear factor over the buyers' mix at bare share `f` and deviate `z`.
    #[must_use]
    pub fn wear(&self, f: f64, z: f64) -> f64 {
        let segment = self.segment(f);
        (0..3)
            .map(|b| self.mix[b] * libm::exp(self.ln_wear(b, segment, z)))
            .sum()
    }

    /// Factor of one buyer once replated.
    #[must_use]
    pub fn replated_for(&self, buyer: usize, z: f64) -> f64 {
        libm::exp(self.replated[buyer].ln_at(z))
    }

    /// Factor over the buyers' mix once replated.
    #[must_use]
    pub fn replated(&self, z: f64) -> f64 {
        (0..3).map(|b| self.mix[b] * self.replated_for(b, z)).sum()
    }

    /// The anchors a bare share rests on, from 1 up, and how much of each.
    #[must_use]
    pub fn anchors_at(&self, f: f64) -> Vec<(usize, f64)> {
        let (i, t) = self.segment(f);
        let ends = [(i, 1.0 - t), (i + 1, t)];
        ends.into_iter()
            .filter(|(i, t)| *i > 0 && *t > 0.0)
            .collect()
    }

    /// Which pair of anchors `f` lies between, and how far along.
    fn segment(&self, f: f64) -> (usize, f64) {
        let i = (1..5).find(|i| f < self.anchors[*i]).unwrap_or(4);
        let (a, b) = (self.anchors[i - 1], self.anchors[i]);
        (
            i - 1,
            if b > a {
                ((f - a) / (b - a)).clamp(0.0, 1.0)
            } else {
                1.0
            },
        )
    }

    fn ln_wear(&self, buyer: usize, (i, t): (usize, f64), z: f64) -> f64 {
        let (a, b) = (
            self.wear[buyer][i].ln_at(z),
            self.wear[buyer][i + 1].ln_at(z),
        );
        a + t * (b - a)
    }
}
