//! A table candlestick: nozzle, column, spreading foot.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{Level, Lobes, Path, Strokes, Turned, Underside};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Rim,
        Area,
        &[Turned(
            (17.0, 22.0),
            &[Line(33.0, 25.0), Line(33.0, 30.0), Line(18.0, 34.0)],
        )],
    ),
    ShapePlan(P::Rim, Detail, &[Level(33.0, 27.5)]),
    ShapePlan(
        P::Body,
        Area,
        &[Turned(
            (15.0, 34.0),
            &[
                Curve(16.0, 46.0, 25.0, 52.0, 24.0, 60.0),
                Curve(23.0, 68.0, 12.0, 70.0, 10.0, 76.0),
                Line(18.0, 79.0),
                Line(18.0, 85.0),
                Line(10.0, 88.0),
                Curve(9.0, 94.0, 20.0, 98.0, 20.0, 110.0),
                Curve(20.0, 136.0, 13.0, 166.0, 10.0, 186.0),
                Line(16.0, 190.0),
                Line(16.0, 196.0),
                Line(10.0, 199.0),
                Line(10.0, 206.0),
            ],
        )],
    ),
    ShapePlan(
        P::Body,
        Detail,
        &[
            Level(17.0, 82.0),
            Level(10.0, 88.0),
            Level(10.0, 187.0),
            Level(15.0, 193.0),
            Level(9.5, 199.0),
        ],
    ),
    ShapePlan(P::Body, Detail, &[Level(24.0, 60.0)]),
    ShapePlan(
        P::Body,
        Detail,
        &[Path(
            "M200 104L200 184M192 104L195 184M208 104L205 184M186 106L191 180M214 106L209 180",
        )],
    ),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (10.0, 206.0),
            &[
                Curve(12.0, 220.0, 24.0, 222.0, 34.0, 226.0),
                Curve(42.0, 230.0, 44.0, 240.0, 58.0, 246.0),
            ],
        )],
    ),
    ShapePlan(
        P::Foot,
        Detail,
        &[Level(33.0, 226.0), Lobes((34.5, 227.0), (56.0, 245.5), 16)],
    ),
    ShapePlan(
        P::Border,
        Area,
        &[Turned(
            (60.0, 246.0),
            &[Curve(65.0, 248.0, 66.0, 254.0, 63.0, 256.0)],
        )],
    ),
    ShapePlan(P::Border, Detail, &[Strokes(62.0, 247.0, 255.0, 30)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (63.0, 256.0),
            &[Line(66.0, 260.0), Line(66.0, 270.0)],
        )],
    ),
    ShapePlan(P::Base, Hidden, &[Underside(62.0, 270.0)]),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 200.0, 188.0),
    Joint(P::Rim, 200.0, 34.0),
    Joint(P::Border, 200.0, 247.0),
    Joint(P::Foot, 200.0, 207.0),
    Joint(P::Base, 200.0, 270.0),
];
