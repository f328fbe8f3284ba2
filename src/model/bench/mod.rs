//! Figures for the workbench: how far heat reaches, densities, surfaces, and the silver in a coat.

mod alloy;
mod base_metal;
mod bessel;
mod coat;
mod density;
mod heat_field;
mod letting_go;
mod solder_reach;
mod surface;

pub use alloy::{ALLOYS, Alloy};
pub use base_metal::BaseMetal;
pub use bessel::{bessel_i0, bessel_i1, bessel_k0, bessel_k1};
pub use coat::coat_g;
pub use density::{layered_density, skin_share};
pub use heat_field::{HeatField, Reach, Spread, rod_length_mm, sheet_length_mm};
pub use letting_go::{HeatBands, chance_lets_go};
pub use solder_reach::{SolderReach, solder_joint_c, solder_reach};
pub use surface::{box_cm2, oval_cm2, rectangle_cm2, turned_cm2};
