//! A cruet: a dish with a ring frame, bottles standing in it, and a handle over them. Its bottles also
//! stand on an inkstand.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{Level, Path, Ribbon, Turned, Underside};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (200.0, 222.0),
            &[
                Line(200.0, 60.0),
                Curve(200.0, 40.0, 214.0, 40.0, 214.0, 52.0),
            ],
            [8.0, 8.0, 8.0],
        )],
    ),
    ShapePlan(
        P::Bottle,
        Area,
        &[
            Path("M140 100L156 100L156 130L172 146L172 222L124 222L124 146L140 130Z"),
            Path("M244 100L260 100L260 130L276 146L276 222L228 222L228 146L244 130Z"),
        ],
    ),
    ShapePlan(
        P::Frame,
        Area,
        &[Turned((84.0, 170.0), &[Line(84.0, 178.0)])],
    ),
    ShapePlan(P::Frame, Detail, &[Level(84.0, 174.0)]),
    ShapePlan(
        P::Body,
        Area,
        &[Turned((96.0, 222.0), &[Line(92.0, 246.0)])],
    ),
    ShapePlan(
        P::Foot,
        Area,
        &[
            Path("M110 246L128 246L124 262L112 262Z"),
            Path("M272 246L290 246L288 262L276 262Z"),
        ],
    ),
    ShapePlan(P::Base, Hidden, &[Underside(90.0, 246.0)]),
];

/// Where the joint of each part is: mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 200.0, 234.0),
    Joint(P::Frame, 284.0, 174.0),
    Joint(P::Bottle, 148.0, 220.0),
    Joint(P::Handle, 200.0, 220.0),
    Joint(P::Foot, 280.0, 248.0),
    Joint(P::Base, 200.0, 246.0),
];

/// Two ink pots, as they stand on the tray of an inkstand.
pub(super) const POTS_ON_A_TRAY: &[ShapePlan] = &[ShapePlan(
    P::Bottle,
    Area,
    &[
        Path("M120 96L156 96L156 134L120 134Z"),
        Path("M244 96L280 96L280 134L244 134Z"),
    ],
)];

pub(super) const POT_JOINTS: &[Joint] = &[Joint(P::Bottle, 138.0, 132.0)];
