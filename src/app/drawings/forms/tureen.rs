//! An oval covered bowl on a foot, with a handle at each end.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{
    Gadroons, Level, Lobes, Ribbon, Shield, Turned, Underside,
};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (92.0, 158.0),
            &[
                Curve(62.0, 112.0, 26.0, 116.0, 28.0, 146.0),
                Curve(30.0, 170.0, 68.0, 184.0, 102.0, 192.0),
            ],
            [11.0, 9.0, 11.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (308.0, 158.0),
            &[
                Curve(338.0, 112.0, 374.0, 116.0, 372.0, 146.0),
                Curve(370.0, 170.0, 332.0, 184.0, 298.0, 192.0),
            ],
            [11.0, 9.0, 11.0],
        )],
    ),
    ShapePlan(
        P::Body,
        Area,
        &[Turned(
            (116.0, 152.0),
            &[
                Curve(116.0, 186.0, 92.0, 212.0, 54.0, 224.0),
                Curve(40.0, 228.0, 26.0, 229.0, 20.0, 234.0),
            ],
        )],
    ),
    ShapePlan(
        P::Interior,
        Hidden,
        &[Turned(
            (109.0, 156.0),
            &[
                Curve(108.0, 184.0, 86.0, 206.0, 50.0, 217.0),
                Curve(36.0, 221.0, 20.0, 222.0, 6.0, 222.0),
            ],
        )],
    ),
    ShapePlan(
        P::Body,
        Detail,
        &[Level(95.0, 200.0), Lobes((95.0, 200.0), (30.0, 229.0), 24)],
    ),
    ShapePlan(P::Shield, Area, &[Shield(200.0, 162.0, 36.0)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (20.0, 234.0),
            &[
                Line(17.0, 239.0),
                Curve(20.0, 250.0, 46.0, 252.0, 66.0, 258.0),
                Line(66.0, 267.0),
            ],
        )],
    ),
    ShapePlan(P::Foot, Detail, &[Level(17.5, 239.5), Level(66.0, 258.5)]),
    ShapePlan(P::Base, Hidden, &[Underside(62.0, 267.0)]),
    ShapePlan(
        P::Cover,
        Area,
        &[Turned(
            (11.0, 80.0),
            &[
                Curve(30.0, 90.0, 66.0, 88.0, 88.0, 104.0),
                Curve(102.0, 114.0, 108.0, 122.0, 111.0, 134.0),
            ],
        )],
    ),
    ShapePlan(P::Cover, Detail, &[Level(87.0, 103.5), Level(104.0, 119.0)]),
    ShapePlan(
        P::Finial,
        Area,
        &[Turned(
            (3.0, 48.0),
            &[
                Curve(11.0, 50.0, 14.0, 56.0, 13.0, 62.0),
                Curve(12.0, 69.0, 6.0, 70.0, 5.0, 75.0),
                Line(12.0, 77.0),
                Line(12.0, 81.0),
            ],
        )],
    ),
    ShapePlan(P::Finial, Detail, &[Level(13.0, 61.0)]),
    ShapePlan(
        P::Border,
        Area,
        &[Turned(
            (113.0, 134.0),
            &[Curve(119.0, 136.0, 119.0, 142.0, 116.0, 144.0)],
        )],
    ),
    ShapePlan(P::Border, Detail, &[Gadroons(115.0, 135.0, 143.5, 50)]),
    ShapePlan(
        P::Rim,
        Area,
        &[Turned(
            (119.0, 144.0),
            &[Line(121.0, 146.0), Line(121.0, 150.0), Line(116.0, 152.0)],
        )],
    ),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 288.0, 196.0),
    Joint(P::Cover, 200.0, 133.0),
    Joint(P::Rim, 200.0, 151.0),
    Joint(P::Border, 200.0, 143.0),
    Joint(P::Handle, 317.0, 146.0),
    Joint(P::Foot, 200.0, 235.0),
    Joint(P::Finial, 200.0, 80.0),
    Joint(P::Shield, 200.0, 198.0),
    Joint(P::Interior, 200.0, 221.0),
    Joint(P::Base, 200.0, 267.0),
];
