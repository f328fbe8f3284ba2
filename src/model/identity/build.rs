//! A kind split into two parts: how the body was made, and what silver is on it now.
//!
//! Signs of construction (seam, edges, mounts, shield) survive replating; signs of the surface (colour, wear,
//! how the silver lies) do not. So each part can be settled without the other, and the report says which of
//! them is settled.

use super::posterior::{Interval, Posterior};
use crate::terms::Kind;

/// How the body was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Build {
    /// Solid silver.
    Silver,
    /// Sheet to which silver was fused before anything was made from it.
    FusedSheet,
    /// Iron or steel.
    Steel,
    /// Brass, bronze or copper, for leaf.
    Brass,
    /// Copper.
    Copper,
    /// Nickel silver.
    NickelSilver,
    /// Britannia metal.
    Britannia,
    /// A silver shell over a filling.
    Filled,
    /// Something else.
    Other,
}

/// What silver is on it now.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Skin {
    /// No layer: the metal is silver.
    OwnMetal,
    /// The layer the sheet was made with.
    Fused,
    /// Foil held by tin.
    Foil,
    /// Burnished leaf.
    Leaf,
    /// Electrodeposited.
    Electroplated,
    /// No silver on it.
    None,
    /// Something else.
    Other,
}

impl Build {
    /// Every build.
    pub const ALL: [Self; 9] = [
        Self::Silver,
        Self::FusedSheet,
        Self::Steel,
        Self::Brass,
        Self::Copper,
        Self::NickelSilver,
        Self::Britannia,
        Self::Filled,
        Self::Other,
    ];

    /// In words that complete "the body is".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Silver => "silver all through",
            Self::FusedSheet => "fused sheet",
            Self::Steel => "iron or steel",
            Self::Brass => "brass or bronze",
            Self::Copper => "copper or brass",
            Self::NickelSilver => "nickel silver",
            Self::Britannia => "Britannia metal or pewter",
            Self::Filled => "a silver shell on a filling",
            Self::Other => "something else",
        }
    }

    /// Its probability under a posterior.
    #[must_use]
    pub fn probability(self, posterior: &Posterior) -> f64 {
        Kind::ALL
            .into_iter()
            .filter(|k| k.build() == self)
            .map(|k| posterior.of(k))
            .sum()
    }
}

impl Skin {
    /// Every skin.
    pub const ALL: [Self; 7] = [
        Self::OwnMetal,
        Self::Fused,
        Self::Foil,
        Self::Leaf,
        Self::Electroplated,
        Self::None,
        Self::Other,
    ];

    /// In words that complete "the silver on it is".
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::OwnMetal => "the metal itself",
            Self::Fused => "the layer the sheet was made with",
            Self::Foil => "foil held by tin",
            Self::Leaf => "burnished leaf",
            Self::Electroplated => "electroplated",
            Self::None => "none",
            Self::Other => "something else",
        }
    }

    /// Its probability under a posterior.
    #[must_use]
    pub fn probability(self, posterior: &Posterior) -> f64 {
        Kind::ALL
            .into_iter()
            .filter(|k| k.skin() == self)
            .map(|k| posterior.of(k))
            .sum()
    }
}

impl Kind {
    /// How the body of a piece of this kind is made.
    #[must_use]
    pub fn build(self) -> Build {
        match self {
            Self::Sil => Build::Silver,
            Self::Wst => Build::Filled,
            Self::Fps | Self::Fpd | Self::Fpn | Self::Rfp => Build::FusedSheet,
            Self::Clp | Self::Est => Build::Steel,
            Self::Frp => Build::Brass,
            Self::Ecu | Self::Rep | Self::Ucu => Build::Copper,
            Self::Ens | Self::Uns => Build::NickelSilver,
            Self::Ebm | Self::Ubm => Build::Britannia,
            Self::Ncp | Self::Out => Build::Other,
        }
    }

    /// The silver now on a piece of this kind.
    #[must_use]
    pub fn skin(self) -> Skin {
        match self {
            Self::Sil | Self::Wst => Skin::OwnMetal,
            Self::Fps | Self::Fpd | Self::Fpn => Skin::Fused,
            Self::Clp => Skin::Foil,
            Self::Frp => Skin::Leaf,
            Self::Ecu | Self::Ens | Self::Ebm | Self::Est | Self::Rfp | Self::Rep => {
                Skin::Electroplated
            }
            Self::Ucu | Self::Uns | Self::Ubm | Self::Ncp => Skin::None,
            Self::Out => Skin::Other,
        }
    }
}

/// The likeliest member of a set, with its probability and interval.
#[must_use]
pub fn likeliest<T: Copy>(
    all: &[T],
    probability: impl Fn(T, &Posterior) -> f64,
    interval: &Interval,
) -> (T, (f64, f64, f64)) {
    let mut top = (all[0], interval.range(|q| probability(all[0], q)));
    for x in &all[1..] {
        let range = interval.range(|q| probability(*x, q));
        if range.0 > top.1.0 {
            top = (*x, range);
        }
    }
    top
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::identity::{Evidence, interval_with};
    use crate::ledger::{FindingId, Ledger};
    use crate::record::Answer;
    use crate::terms::Seen;

    fn interval(seen: &[&'static str]) -> Interval {
        let answers: Vec<Answer> = seen
            .iter()
            .map(|id| Answer {
                id: FindingId::parse(id).unwrap(),
                seen: Seen::Yes,
                part: None,
            })
            .collect();
        let evidence = Evidence {
            answers: &answers,
            readings: &[],
            came_from: None,
        };
        interval_with(&evidence, Ledger::standard())
    }

    #[test]
    fn both_parts_of_a_kind_sum_to_one() {
        for seen in [&[][..], &["C01"], &["S08", "C13"], &["M02"]] {
            let q = interval(seen).base;
            let builds: f64 = Build::ALL.iter().map(|b| b.probability(&q)).sum();
            let skins: f64 = Skin::ALL.iter().map(|s| s.probability(&q)).sum();
            assert!((builds - 1.0).abs() < 1e-12 && (skins - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn construction_settles_the_body_and_leaves_the_silver_open() {
        // On signs of construction alone, fused plate with its original silver and replated fused plate
        // differ little: the seam survives replating (identification rule, common practice).
        let q = interval(&["C06", "C13"]);
        let (build, (p, ..)) = likeliest(&Build::ALL, Build::probability, &q);
        assert!(build == Build::FusedSheet && p > 0.95, "{build:?} {p}");
        let (_, (skin, ..)) = likeliest(&Skin::ALL, Skin::probability, &q);
        assert!(skin < 0.95, "{skin}");
        let (after, (p, ..)) = likeliest(
            &Skin::ALL,
            Skin::probability,
            &interval(&["C06", "C13", "S08"]),
        );
        assert!(after == Skin::Electroplated && p > 0.85, "{after:?} {p}");
    }
}
