//! Readings with a number: density, conductivity, X-ray.

use super::{PartName, Word};

/// What was measured. What could not be used is not here but among the problems.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Measures {
    /// By weighing in air and in water.
    pub density: Option<Density>,
    /// By an eddy-current meter.
    pub iacs: Option<Iacs>,
    /// By an X-ray analyser.
    pub xrf: Option<Xrf>,
}

/// A density with its spread, of a part that can be told by its weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Density {
    /// g/cm3.
    pub g_cm3: f64,
    /// One standard deviation, g/cm3.
    pub spread: f64,
}

/// A reading of a conductivity meter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Iacs {
    /// Per cent of annealed copper.
    pub percent: f64,
    /// Where the probe stood.
    pub part: Option<PartName>,
}

/// Where an X-ray reading was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// Where the silver is worn through.
    Worn,
    /// Where the silver is sound.
    Sound,
}

impl Word for Spot {
    fn ids() -> Vec<&'static str> {
        vec!["worn", "sound"]
    }

    fn from_id(id: &str) -> Option<Self> {
        match id {
            "worn" => Some(Self::Worn),
            "sound" => Some(Self::Sound),
            _ => None,
        }
    }
}

/// Shares by mass as an X-ray analyser gives them, per cent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Xrf {
    /// Where.
    pub spot: Spot,
    /// Silver.
    pub silver: Option<f64>,
    /// Nickel, zinc, tin and iron as shares of everything that is not silver, per cent, for a worn
    /// spot; in the order of [`Xrf::BASE`]. `None` if not given.
    pub base: [Option<f64>; 4],
}

impl Xrf {
    /// The metals of [`Xrf::base`].
    pub const BASE: [&'static str; 4] = ["nickel", "zinc", "tin", "iron"];
}
