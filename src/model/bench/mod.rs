//! Bench figures: how far heat reaches, densities, conductivity, X-ray readings, plating arithmetic.

mod alloy;
mod bessel;
mod density;
mod eddy;
mod heat_field;
mod heat_reach;
mod letting_go;
mod metal;
mod solder_reach;
mod surface;
mod xrf;

pub use alloy::{ALLOYS, Alloy};
pub use bessel::{bessel_i0, bessel_i1, bessel_k0, bessel_k1};
pub use density::{layered_density, skin_share};
pub use eddy::{how_deep_it_sees, ms_per_m, skin_depth_mm};
pub use heat_field::{Field, Reach, Spread, rod_length_mm};
pub use heat_reach::{Sheet, disk_reach_mm, sheet_length_mm, strip_reach_mm};
pub use letting_go::{HeatBands, chance_lets_go};
pub use metal::{coat_g, deposit_um, mixture_density, silver_in_sulphide, silver_share};
pub use solder_reach::{SolderReach, solder_joint_c, solder_reach};
pub use surface::{box_cm2, oval_cm2, rectangle_cm2, turned_cm2};
pub use xrf::{
    Layered, Path, information_depth_um, line_beside_bare_core, thickness_from_ratio_um,
    transmission, what_shows_through,
};
