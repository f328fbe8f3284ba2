//! An oval basket with a swing handle and pierced sides.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{
    Ellipse, Level, Lobes, Made, Path, Ribbon, Shield, Turned, Underside,
};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (82.0, 150.0),
            &[
                Curve(84.0, 82.0, 140.0, 42.0, 200.0, 42.0),
                Curve(260.0, 42.0, 316.0, 82.0, 318.0, 150.0),
            ],
            [8.0, 15.0, 8.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Detail,
        &[Path("M86 132C93 78 144 42 200 42C256 42 307 78 314 132")],
    ),
    ShapePlan(
        P::Body,
        Area,
        &[Path(
            "M58 142C110 160 290 160 342 142C334 176 300 206 262 224L138 224C100 206 66 176 58 142Z",
        )],
    ),
    ShapePlan(P::Body, Detail, &[Made(piercing)]),
    ShapePlan(P::Body, Detail, &[Path("M88 188C140 201 260 201 312 188")]),
    ShapePlan(
        P::Border,
        Area,
        &[Path(
            "M54 134C110 154 290 154 346 134L342 144C290 163 110 163 58 144Z",
        )],
    ),
    ShapePlan(P::Border, Detail, &[Made(notches)]),
    ShapePlan(
        P::Edge,
        Area,
        &[Path(
            "M50 126C110 148 290 148 350 126C352 130 350 134 346 135C290 155 110 155 54 135C50 134 48 130 50 126Z",
        )],
    ),
    ShapePlan(P::Shield, Area, &[Ellipse(200.0, 176.0, 19.0, 16.0)]),
    ShapePlan(P::Shield, Detail, &[Shield(200.0, 165.0, 22.0)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (60.0, 224.0),
            &[
                Line(56.0, 229.0),
                Curve(60.0, 240.0, 72.0, 242.0, 82.0, 246.0),
                Line(82.0, 254.0),
            ],
        )],
    ),
    ShapePlan(
        P::Foot,
        Detail,
        &[
            Level(57.0, 229.5),
            Level(81.0, 246.5),
            Lobes((56.0, 230.0), (79.0, 246.0), 26),
        ],
    ),
    ShapePlan(P::Base, Hidden, &[Underside(78.0, 254.0)]),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 200.0, 157.0),
    Joint(P::Edge, 348.0, 130.0),
    Joint(P::Border, 200.0, 150.0),
    Joint(P::Handle, 317.0, 138.0),
    Joint(P::Foot, 200.0, 225.0),
    Joint(P::Shield, 200.0, 192.0),
    Joint(P::Base, 200.0, 254.0),
];

/// Upright slits in two groups, left and right of the coat of arms.
fn piercing() -> String {
    let mut path = Vec::new();
    for i in 0..10_u32 {
        let out = 30.0 + f64::from(i) * 9.4;
        let lean = out * 0.07;
        let top = 165.0 - out * 0.045;
        let bottom = 190.0 - out * 0.04;
        for side in [-1.0, 1.0] {
            path.push(format!(
                "M{:.1} {:.1}L{:.1} {:.1}",
                200.0 + side * out,
                top,
                200.0 + side * (out - lean),
                bottom
            ));
        }
    }
    path.concat()
}

/// Small strokes along the curved border.
fn notches() -> String {
    (-16_i32..=16)
        .map(|i| {
            let t = f64::from(i) / 17.0;
            let x = 200.0 + 144.0 * t;
            let y = 149.5 - 13.5 * t * t;
            format!("M{x:.1} {y:.1}L{:.1} {:.1}", x - 2.0 * t, y + 8.0)
        })
        .collect::<Vec<_>>()
        .concat()
}
