//! A lidded drinking pot with a scroll handle.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{Level, Path, Ribbon, Shield, Turned, Underside};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (252.0, 98.0),
            &[
                Curve(272.0, 84.0, 330.0, 84.0, 330.0, 130.0),
                Curve(330.0, 172.0, 296.0, 190.0, 286.0, 216.0),
                Curve(282.0, 228.0, 290.0, 238.0, 302.0, 234.0),
            ],
            [15.0, 13.0, 6.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Path("M262 206L284 212L281 222L262 218Z")],
    ),
    ShapePlan(P::Body, Area, &[Turned((62.0, 90.0), &[Line(68.0, 238.0)])]),
    ShapePlan(
        P::Interior,
        Hidden,
        &[Turned((56.0, 96.0), &[Line(61.0, 232.0)])],
    ),
    ShapePlan(P::Body, Detail, &[Level(66.5, 204.0), Level(67.0, 209.0)]),
    ShapePlan(P::Shield, Area, &[Shield(200.0, 118.0, 56.0)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (68.0, 238.0),
            &[
                Line(72.0, 241.0),
                Curve(72.0, 248.0, 80.0, 248.0, 82.0, 254.0),
                Line(84.0, 264.0),
            ],
        )],
    ),
    ShapePlan(P::Foot, Detail, &[Level(71.5, 242.0), Level(81.5, 254.0)]),
    ShapePlan(P::Base, Hidden, &[Underside(78.0, 264.0)]),
    ShapePlan(
        P::Cover,
        Area,
        &[Path(
            "M258 82C262 66 258 56 250 46C262 46 274 54 276 68C277 76 276 82 272 88Z",
        )],
    ),
    ShapePlan(
        P::Cover,
        Area,
        &[Turned(
            (24.0, 46.0),
            &[
                Curve(30.0, 50.0, 34.0, 52.0, 44.0, 54.0),
                Curve(54.0, 57.0, 58.0, 66.0, 60.0, 74.0),
                Line(68.0, 77.0),
                Line(68.0, 82.0),
            ],
        )],
    ),
    ShapePlan(P::Cover, Detail, &[Level(43.0, 54.0), Level(60.0, 74.0)]),
    ShapePlan(
        P::Rim,
        Area,
        &[Turned(
            (65.0, 82.0),
            &[Curve(67.0, 84.0, 67.0, 88.0, 64.0, 90.0)],
        )],
    ),
    ShapePlan(P::Rim, Detail, &[Level(65.5, 86.0)]),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 264.0, 160.0),
    Joint(P::Rim, 200.0, 90.0),
    Joint(P::Handle, 262.0, 93.0),
    Joint(P::Foot, 200.0, 239.0),
    Joint(P::Cover, 266.0, 81.0),
    Joint(P::Shield, 200.0, 174.0),
    Joint(P::Interior, 200.0, 231.0),
    Joint(P::Base, 200.0, 264.0),
];
