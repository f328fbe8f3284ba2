//! A tall pot on a stem foot, spout to the left, handle to the right.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{
    Level, Lobes, Path, Ribbon, Shield, Strokes, Turned, Underside,
};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Spout,
        Area,
        &[Ribbon(
            (166.0, 192.0),
            &[
                Curve(136.0, 188.0, 136.0, 160.0, 128.0, 132.0),
                Curve(124.0, 116.0, 118.0, 104.0, 104.0, 96.0),
            ],
            [40.0, 22.0, 13.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (226.0, 106.0),
            &[
                Curve(252.0, 86.0, 300.0, 96.0, 302.0, 138.0),
                Curve(304.0, 176.0, 282.0, 200.0, 246.0, 204.0),
            ],
            [12.0, 9.0, 12.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Path(
            "M281 100C286 90 296 88 304 93C298 95 295 100 296 107Z",
        )],
    ),
    ShapePlan(
        P::Body,
        Area,
        &[Turned(
            (29.0, 92.0),
            &[
                Curve(29.0, 114.0, 42.0, 130.0, 51.0, 152.0),
                Curve(61.0, 178.0, 56.0, 204.0, 38.0, 220.0),
                Curve(28.0, 229.0, 20.0, 231.0, 15.0, 236.0),
            ],
        )],
    ),
    ShapePlan(
        P::Interior,
        Hidden,
        &[Turned(
            (23.0, 97.0),
            &[
                Curve(24.0, 118.0, 36.0, 134.0, 45.0, 155.0),
                Curve(54.0, 180.0, 49.0, 200.0, 33.0, 214.0),
                Curve(24.0, 221.0, 12.0, 224.0, 4.0, 224.0),
            ],
        )],
    ),
    ShapePlan(
        P::Body,
        Detail,
        &[Level(51.5, 204.0), Lobes((51.5, 204.0), (17.0, 233.0), 12)],
    ),
    ShapePlan(P::Shield, Area, &[Shield(200.0, 150.0, 42.0)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (15.0, 236.0),
            &[
                Line(12.0, 242.0),
                Curve(14.0, 252.0, 30.0, 256.0, 44.0, 262.0),
                Line(47.0, 264.0),
                Line(47.0, 272.0),
            ],
        )],
    ),
    ShapePlan(P::Foot, Detail, &[Level(12.5, 243.0), Level(46.0, 264.0)]),
    ShapePlan(P::Base, Hidden, &[Underside(44.0, 272.0)]),
    ShapePlan(
        P::Cover,
        Area,
        &[Turned(
            (9.0, 55.0),
            &[Curve(14.0, 63.0, 28.0, 64.0, 31.0, 78.0), Line(33.0, 84.0)],
        )],
    ),
    ShapePlan(P::Cover, Detail, &[Level(30.5, 78.0)]),
    ShapePlan(
        P::Finial,
        Area,
        &[Turned(
            (1.5, 26.0),
            &[
                Curve(4.0, 31.0, 9.0, 34.0, 9.0, 40.0),
                Curve(9.0, 46.0, 4.0, 47.0, 4.0, 51.0),
                Line(9.0, 52.0),
                Line(9.0, 56.0),
            ],
        )],
    ),
    ShapePlan(P::Finial, Detail, &[Level(9.0, 39.0)]),
    ShapePlan(
        P::Border,
        Area,
        &[Turned(
            (34.0, 84.0),
            &[Curve(36.5, 86.0, 36.5, 90.0, 34.0, 92.0)],
        )],
    ),
    ShapePlan(P::Border, Detail, &[Strokes(34.0, 85.0, 91.0, 22)]),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 248.0, 152.0),
    Joint(P::Cover, 232.0, 83.0),
    Joint(P::Spout, 146.0, 186.0),
    Joint(P::Handle, 230.0, 105.0),
    Joint(P::Foot, 200.0, 236.0),
    Joint(P::Finial, 200.0, 56.0),
    Joint(P::Border, 200.0, 92.0),
    Joint(P::Shield, 200.0, 192.0),
    Joint(P::Interior, 200.0, 223.0),
    Joint(P::Base, 200.0, 272.0),
];
