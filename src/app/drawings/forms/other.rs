//! A plain covered cup with every part a piece may have, drawn for pieces of any other form.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{
    Level, Path, Ribbon, Shield, Strokes, Turned, Underside,
};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (258.0, 128.0),
            &[
                Curve(290.0, 100.0, 330.0, 118.0, 326.0, 152.0),
                Curve(322.0, 182.0, 284.0, 194.0, 250.0, 202.0),
            ],
            [12.0, 10.0, 12.0],
        )],
    ),
    ShapePlan(
        P::Spout,
        Area,
        &[Path(
            "M142 152C124 146 112 132 98 112C114 116 128 116 146 114Z",
        )],
    ),
    ShapePlan(
        P::Spout,
        Detail,
        &[Path("M106 118C118 132 128 140 142 144")],
    ),
    ShapePlan(
        P::Body,
        Area,
        &[Turned(
            (62.0, 124.0),
            &[
                Curve(62.0, 152.0, 70.0, 170.0, 62.0, 194.0),
                Curve(54.0, 214.0, 34.0, 220.0, 20.0, 228.0),
            ],
        )],
    ),
    ShapePlan(
        P::Interior,
        Hidden,
        &[Turned(
            (55.0, 130.0),
            &[
                Curve(55.0, 154.0, 62.0, 172.0, 55.0, 191.0),
                Curve(48.0, 207.0, 30.0, 213.0, 8.0, 216.0),
            ],
        )],
    ),
    ShapePlan(P::Shield, Area, &[Shield(200.0, 144.0, 44.0)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (20.0, 228.0),
            &[
                Line(15.0, 234.0),
                Curve(16.0, 248.0, 36.0, 252.0, 54.0, 258.0),
                Line(54.0, 268.0),
            ],
        )],
    ),
    ShapePlan(P::Foot, Detail, &[Level(15.5, 234.5), Level(54.0, 258.5)]),
    ShapePlan(P::Base, Hidden, &[Underside(50.0, 268.0)]),
    ShapePlan(
        P::Rim,
        Area,
        &[Turned(
            (64.0, 110.0),
            &[Curve(67.0, 112.0, 67.0, 115.0, 64.0, 116.0)],
        )],
    ),
    ShapePlan(
        P::Border,
        Area,
        &[Turned(
            (62.0, 116.0),
            &[Curve(66.0, 118.0, 66.0, 122.0, 62.0, 124.0)],
        )],
    ),
    ShapePlan(P::Border, Detail, &[Strokes(63.0, 117.0, 123.0, 30)]),
    ShapePlan(
        P::Cover,
        Area,
        &[Turned(
            (9.0, 70.0),
            &[Curve(24.0, 78.0, 54.0, 78.0, 60.0, 102.0)],
        )],
    ),
    ShapePlan(P::Cover, Detail, &[Level(52.0, 88.0)]),
    ShapePlan(
        P::Edge,
        Area,
        &[Turned(
            (64.0, 102.0),
            &[Line(66.0, 104.0), Line(66.0, 108.0), Line(64.0, 110.0)],
        )],
    ),
    ShapePlan(
        P::Finial,
        Area,
        &[Turned(
            (2.0, 40.0),
            &[
                Curve(10.0, 42.0, 12.0, 48.0, 11.0, 53.0),
                Curve(10.0, 59.0, 5.0, 61.0, 4.0, 66.0),
                Line(10.0, 68.0),
                Line(10.0, 71.0),
            ],
        )],
    ),
    ShapePlan(P::Finial, Detail, &[Level(11.0, 52.0)]),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 262.0, 160.0),
    Joint(P::Rim, 200.0, 115.0),
    Joint(P::Foot, 200.0, 229.0),
    Joint(P::Spout, 139.0, 135.0),
    Joint(P::Handle, 262.0, 125.0),
    Joint(P::Finial, 200.0, 70.0),
    Joint(P::Cover, 200.0, 101.0),
    Joint(P::Border, 200.0, 123.0),
    Joint(P::Edge, 265.0, 106.0),
    Joint(P::Shield, 200.0, 188.0),
    Joint(P::Interior, 200.0, 215.0),
    Joint(P::Base, 200.0, 268.0),
];
