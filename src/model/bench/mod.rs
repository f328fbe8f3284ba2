//! Bench figures: how far heat reaches, densities, conductivity, X-ray readings, plating arithmetic.

mod bessel;
mod density;
mod eddy;
mod heat_reach;
mod metal;
mod xrf;

pub use bessel::{bessel_k0, bessel_k1};
pub use density::{Weighing, layered_density, skin_share, water_density};
pub use eddy::{how_deep_it_sees, ms_per_m, skin_depth_mm};
pub use heat_reach::{Sheet, disk_reach_mm, strip_reach_mm};
pub use metal::{deposit_um, mixture_density, plated_mass_g, silver_in_sulphide, silver_share};
pub use xrf::{
    Layered, Path, information_depth_um, line_beside_bare_core, thickness_from_ratio_um,
    transmission, what_shows_through,
};
