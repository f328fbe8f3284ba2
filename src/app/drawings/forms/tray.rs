//! An oval tray with two handles, seen from the front and above.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{Ellipse, Made, Path, Ribbon, Shield};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::Curve;
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Foot,
        Area,
        &[Path(
            "M116 208C112 218 108 226 100 230L126 230C122 224 126 218 132 212Z",
        )],
    ),
    ShapePlan(
        P::Foot,
        Area,
        &[Path(
            "M284 208C288 218 292 226 300 230L274 230C278 224 274 218 268 212Z",
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (66.0, 120.0),
            &[
                Curve(44.0, 104.0, 18.0, 118.0, 18.0, 144.0),
                Curve(18.0, 170.0, 44.0, 184.0, 66.0, 168.0),
            ],
            [11.0, 9.0, 11.0],
        )],
    ),
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (334.0, 120.0),
            &[
                Curve(356.0, 104.0, 382.0, 118.0, 382.0, 144.0),
                Curve(382.0, 170.0, 356.0, 184.0, 334.0, 168.0),
            ],
            [11.0, 9.0, 11.0],
        )],
    ),
    ShapePlan(P::Edge, Area, &[Ellipse(200.0, 148.0, 153.0, 84.0)]),
    ShapePlan(P::Border, Area, &[Ellipse(200.0, 144.0, 150.0, 81.0)]),
    ShapePlan(P::Border, Detail, &[Made(spokes)]),
    ShapePlan(P::Body, Area, &[Ellipse(200.0, 145.0, 126.0, 64.0)]),
    ShapePlan(P::Body, Detail, &[Ellipse(200.0, 146.0, 116.0, 57.0)]),
    ShapePlan(P::Shield, Area, &[Shield(200.0, 122.0, 44.0)]),
    ShapePlan(
        P::Base,
        Hidden,
        &[Path(
            "M134 226C170 235 230 235 266 226L262 233C228 242 172 242 138 233Z",
        )],
    ),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 200.0, 208.0),
    Joint(P::Border, 200.0, 225.0),
    Joint(P::Edge, 353.0, 148.0),
    Joint(P::Handle, 341.0, 116.0),
    Joint(P::Shield, 200.0, 166.0),
    Joint(P::Foot, 117.0, 218.0),
    Joint(P::Base, 200.0, 232.0),
];

/// Short strokes between the two ovals of the border.
fn spokes() -> String {
    // Points of a half-turn, from the rational parametrisation of the circle, which needs no sine.
    let mut path = Vec::new();
    for i in -9_i32..=9 {
        let t = f64::from(i) / 9.5;
        let (c, s) = ((1.0 - t * t) / (1.0 + t * t), 2.0 * t / (1.0 + t * t));
        for side in [-1.0, 1.0] {
            let (ax, ay) = (200.0 + side * 131.0 * c, 144.5 + 67.0 * s);
            let (bx, by) = (200.0 + side * 147.0 * c, 144.0 + 79.0 * s);
            path.push(format!("M{ax:.1} {ay:.1}L{bx:.1} {by:.1}"));
        }
    }
    path.concat()
}
