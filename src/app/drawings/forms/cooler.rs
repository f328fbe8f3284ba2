//! An urn-shaped wine cooler with two handles.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{
    Gadroons, Level, Lobes, Ribbon, Shield, Strokes, Turned, Underside,
};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (124.0, 166.0),
            &[
                Curve(90.0, 152.0, 84.0, 186.0, 96.0, 202.0),
                Curve(104.0, 212.0, 122.0, 210.0, 140.0, 204.0),
            ],
            [10.0, 11.0, 10.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (276.0, 166.0),
            &[
                Curve(310.0, 152.0, 316.0, 186.0, 304.0, 202.0),
                Curve(296.0, 212.0, 278.0, 210.0, 260.0, 204.0),
            ],
            [10.0, 11.0, 10.0],
        )],
    ),
    ShapePlan(
        P::Body,
        Area,
        &[Turned(
            (86.0, 58.0),
            &[
                Curve(74.0, 84.0, 70.0, 116.0, 70.0, 148.0),
                Curve(84.0, 154.0, 84.0, 176.0, 76.0, 194.0),
                Curve(66.0, 214.0, 36.0, 214.0, 24.0, 224.0),
            ],
        )],
    ),
    ShapePlan(
        P::Interior,
        Hidden,
        &[Turned(
            (77.0, 62.0),
            &[
                Curve(67.0, 86.0, 63.0, 120.0, 63.0, 150.0),
                Curve(63.0, 180.0, 61.0, 196.0, 50.0, 200.0),
                Line(4.0, 200.0),
            ],
        )],
    ),
    ShapePlan(
        P::Body,
        Detail,
        &[Level(78.0, 190.0), Lobes((78.0, 190.0), (27.0, 222.0), 20)],
    ),
    ShapePlan(P::Shield, Area, &[Shield(200.0, 84.0, 48.0)]),
    ShapePlan(
        P::Border,
        Area,
        &[Turned(
            (73.0, 144.0),
            &[Curve(79.0, 147.0, 79.0, 153.0, 75.0, 156.0)],
        )],
    ),
    ShapePlan(P::Border, Detail, &[Strokes(74.0, 145.0, 155.0, 32)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (24.0, 224.0),
            &[
                Line(20.0, 229.0),
                Curve(20.0, 246.0, 46.0, 250.0, 60.0, 258.0),
                Line(62.0, 260.0),
                Line(62.0, 270.0),
            ],
        )],
    ),
    ShapePlan(P::Foot, Detail, &[Level(20.5, 230.0), Level(60.5, 259.5)]),
    ShapePlan(P::Base, Hidden, &[Underside(58.0, 270.0)]),
    ShapePlan(
        P::Rim,
        Area,
        &[Turned(
            (88.0, 44.0),
            &[Curve(98.0, 45.0, 98.0, 53.0, 91.0, 56.0), Line(86.0, 58.0)],
        )],
    ),
    ShapePlan(P::Rim, Detail, &[Gadroons(92.0, 46.0, 56.0, 40)]),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 270.0, 110.0),
    Joint(P::Rim, 200.0, 57.0),
    Joint(P::Border, 200.0, 155.0),
    Joint(P::Handle, 281.0, 164.0),
    Joint(P::Foot, 200.0, 225.0),
    Joint(P::Shield, 200.0, 132.0),
    Joint(P::Interior, 200.0, 199.0),
    Joint(P::Base, 200.0, 270.0),
];
