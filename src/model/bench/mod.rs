//! Bench figures: how far heat reaches, densities, plating arithmetic.

mod bessel;
mod heat_reach;
mod metal;

pub use bessel::{bessel_k0, bessel_k1};
pub use heat_reach::{Sheet, disk_reach_mm, strip_reach_mm};
pub use metal::{deposit_um, mixture_density, plated_mass_g, silver_in_sulphide, silver_share};
