//! A straight-sided box with a hinged lid.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{Level, Path, Shield, Strokes, Turned, Underside};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Body,
        Area,
        &[Turned((108.0, 124.0), &[Line(108.0, 240.0)])],
    ),
    ShapePlan(
        P::Interior,
        Hidden,
        &[Turned((101.0, 130.0), &[Line(101.0, 234.0)])],
    ),
    ShapePlan(
        P::Body,
        Detail,
        &[Path(
            "M104 138L296 138M104 228L296 228M104 138L104 228M296 138L296 228",
        )],
    ),
    ShapePlan(P::Shield, Area, &[Shield(200.0, 158.0, 52.0)]),
    ShapePlan(
        P::Body,
        Detail,
        &[Path(
            "M200 140C197 140 196 143 197 146L199 148L198 153L202 153L201 148L203 146C204 143 203 140 200 140Z",
        )],
    ),
    ShapePlan(
        P::Border,
        Area,
        &[Turned(
            (110.0, 240.0),
            &[Curve(116.0, 242.0, 116.0, 250.0, 112.0, 252.0)],
        )],
    ),
    ShapePlan(P::Border, Detail, &[Strokes(111.0, 241.0, 251.0, 46)]),
    ShapePlan(P::Base, Hidden, &[Underside(108.0, 252.0)]),
    ShapePlan(
        P::Edge,
        Area,
        &[Turned((112.0, 114.0), &[Line(112.0, 124.0)])],
    ),
    ShapePlan(P::Edge, Detail, &[Level(112.0, 119.0)]),
    ShapePlan(
        P::Cover,
        Area,
        &[Turned(
            (40.0, 62.0),
            &[
                Curve(70.0, 64.0, 84.0, 72.0, 92.0, 86.0),
                Curve(96.0, 94.0, 104.0, 96.0, 112.0, 100.0),
                Line(112.0, 114.0),
            ],
        )],
    ),
    ShapePlan(P::Cover, Detail, &[Level(91.0, 86.0), Level(111.0, 101.0)]),
    ShapePlan(
        P::Cover,
        Area,
        &[Turned(
            (16.0, 44.0),
            &[Curve(26.0, 46.0, 26.0, 54.0, 12.0, 56.0), Line(14.0, 62.0)],
        )],
    ),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 307.0, 180.0),
    Joint(P::Cover, 200.0, 113.0),
    Joint(P::Edge, 200.0, 123.0),
    Joint(P::Border, 200.0, 241.0),
    Joint(P::Shield, 200.0, 210.0),
    Joint(P::Interior, 200.0, 233.0),
    Joint(P::Base, 200.0, 252.0),
];
