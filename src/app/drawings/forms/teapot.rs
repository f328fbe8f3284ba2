//! A round-bellied pot, spout to the left, handle to the right.

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
            (148.0, 198.0),
            &[
                Curve(96.0, 204.0, 98.0, 176.0, 86.0, 150.0),
                Curve(80.0, 138.0, 72.0, 130.0, 58.0, 124.0),
            ],
            [46.0, 26.0, 14.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (262.0, 146.0),
            &[
                Curve(288.0, 112.0, 350.0, 116.0, 352.0, 160.0),
                Curve(354.0, 198.0, 318.0, 216.0, 270.0, 216.0),
            ],
            [13.0, 10.0, 13.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Path(
            "M322 127C326 116 338 113 348 118C341 121 338 127 339 135Z",
        )],
    ),
    ShapePlan(
        P::Body,
        Area,
        &[Turned(
            (46.0, 126.0),
            &[
                Curve(72.0, 132.0, 88.0, 152.0, 88.0, 178.0),
                Curve(88.0, 208.0, 66.0, 228.0, 44.0, 236.0),
            ],
        )],
    ),
    ShapePlan(
        P::Interior,
        Hidden,
        &[Turned(
            (44.0, 133.0),
            &[
                Curve(66.0, 139.0, 81.0, 156.0, 81.0, 178.0),
                Curve(81.0, 204.0, 62.0, 221.0, 42.0, 229.0),
            ],
        )],
    ),
    ShapePlan(
        P::Body,
        Detail,
        &[Level(80.0, 204.0), Lobes((80.0, 204.0), (47.0, 235.0), 18)],
    ),
    ShapePlan(P::Shield, Area, &[Shield(200.0, 152.0, 44.0)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (44.0, 236.0),
            &[
                Line(40.0, 241.0),
                Curve(42.0, 248.0, 50.0, 250.0, 56.0, 253.0),
                Line(56.0, 260.0),
            ],
        )],
    ),
    ShapePlan(P::Foot, Detail, &[Level(41.0, 241.5), Level(56.0, 253.5)]),
    ShapePlan(P::Base, Hidden, &[Underside(52.0, 260.0)]),
    ShapePlan(
        P::Cover,
        Area,
        &[Turned(
            (10.0, 90.0),
            &[Curve(18.0, 98.0, 42.0, 98.0, 45.0, 118.0)],
        )],
    ),
    ShapePlan(P::Cover, Detail, &[Level(40.0, 107.0)]),
    ShapePlan(
        P::Finial,
        Area,
        &[Turned(
            (3.0, 62.0),
            &[
                Curve(9.0, 64.0, 12.0, 69.0, 11.0, 74.0),
                Curve(10.0, 80.0, 5.0, 81.0, 4.5, 86.0),
                Line(10.0, 87.5),
                Line(10.0, 91.0),
            ],
        )],
    ),
    ShapePlan(P::Finial, Detail, &[Level(11.0, 73.0)]),
    ShapePlan(
        P::Border,
        Area,
        &[Turned(
            (47.0, 118.0),
            &[Curve(50.0, 120.0, 50.0, 124.0, 47.0, 126.0)],
        )],
    ),
    ShapePlan(P::Border, Detail, &[Strokes(47.0, 119.0, 125.0, 26)]),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 286.0, 178.0),
    Joint(P::Cover, 244.0, 117.0),
    Joint(P::Spout, 115.0, 192.0),
    Joint(P::Handle, 269.0, 138.0),
    Joint(P::Foot, 200.0, 237.0),
    Joint(P::Finial, 200.0, 91.0),
    Joint(P::Border, 200.0, 126.0),
    Joint(P::Shield, 200.0, 196.0),
    Joint(P::Interior, 200.0, 228.0),
    Joint(P::Base, 200.0, 260.0),
];
