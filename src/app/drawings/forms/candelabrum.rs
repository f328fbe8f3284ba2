//! What a candelabrum has beyond a candlestick: a boss, two branches with pans and nozzles.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{Ellipse, Path, Ribbon};
use crate::app::drawings::shape::Style::Area;
use crate::app::drawings::shape::To::Curve;
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Branch,
        Area,
        &[
            Ribbon(
                (194.0, 112.0),
                &[Curve(160.0, 130.0, 110.0, 130.0, 100.0, 88.0)],
                [9.0, 7.0, 7.0],
            ),
            Ribbon(
                (206.0, 112.0),
                &[Curve(240.0, 130.0, 290.0, 130.0, 300.0, 88.0)],
                [9.0, 7.0, 7.0],
            ),
        ],
    ),
    ShapePlan(P::Body, Area, &[Ellipse(200.0, 112.0, 24.0, 14.0)]),
    ShapePlan(
        P::Pan,
        Area,
        &[
            Ellipse(100.0, 86.0, 26.0, 5.0),
            Ellipse(300.0, 86.0, 26.0, 5.0),
        ],
    ),
    ShapePlan(
        P::Nozzle,
        Area,
        &[
            Path("M88 58L112 58L108 82L92 82Z"),
            Path("M288 58L312 58L308 82L292 82Z"),
        ],
    ),
];

/// Where the joint of each part is: mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 200.0, 112.0),
    Joint(P::Branch, 186.0, 116.0),
    Joint(P::Pan, 100.0, 86.0),
];
