//! A pair of snuffers, lying flat: box and pan in front, two bows behind.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{Path, Ribbon};
use crate::app::drawings::shape::Style::{Area, Detail};
use crate::app::drawings::shape::To::Curve;
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[
            Ribbon(
                (196.0, 140.0),
                &[Curve(150.0, 150.0, 120.0, 170.0, 84.0, 196.0)],
                [12.0, 9.0, 12.0],
            ),
            Ribbon(
                (196.0, 156.0),
                &[Curve(150.0, 146.0, 120.0, 126.0, 84.0, 100.0)],
                [12.0, 9.0, 12.0],
            ),
        ],
    ),
    ShapePlan(
        P::Blade,
        Area,
        &[Path("M188 140L320 132L356 148L320 156L188 156Z")],
    ),
    ShapePlan(P::Body, Area, &[Path("M230 112L310 112L310 140L230 140Z")]),
    ShapePlan(P::Body, Detail, &[Path("M238 118L302 118")]),
];

/// Where the joint of each part is: mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 270.0, 138.0),
    Joint(P::Blade, 196.0, 148.0),
    Joint(P::Handle, 192.0, 142.0),
];
