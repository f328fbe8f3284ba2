//! A boat with a broad lip to the left and a rising handle to the right.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::{Level, Made, Path, Ribbon, Shield, Turned, Underside};
use crate::app::drawings::shape::Style::{Area, Detail, Hidden};
use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[Ribbon(
            (268.0, 196.0),
            &[
                Curve(326.0, 186.0, 346.0, 152.0, 338.0, 112.0),
                Curve(333.0, 82.0, 302.0, 72.0, 288.0, 90.0),
                Curve(280.0, 102.0, 290.0, 112.0, 299.0, 105.0),
            ],
            [15.0, 11.0, 6.0],
        )],
    ),
    ShapePlan(
        P::Spout,
        Area,
        &[Path(
            "M44 104C66 124 92 134 124 139C124 164 130 182 146 198C112 188 84 164 66 138C58 126 48 116 44 104Z",
        )],
    ),
    ShapePlan(P::Spout, Detail, &[Path("M60 120C78 142 100 164 126 178")]),
    ShapePlan(
        P::Body,
        Area,
        &[Path(
            "M112 138C160 146 210 152 292 138C300 160 292 190 262 206C240 218 222 220 200 220C168 220 140 208 124 184C116 172 112 156 112 138Z",
        )],
    ),
    ShapePlan(
        P::Interior,
        Hidden,
        &[Path(
            "M120 147C164 154 214 159 286 147C290 164 282 186 257 200C238 211 222 213 200 213C172 213 147 203 131 180C125 171 121 160 120 147Z",
        )],
    ),
    ShapePlan(
        P::Rim,
        Area,
        &[Path(
            "M40 98C70 124 110 131 150 136C200 142 250 142 296 128L299 137C250 151 198 150 148 145C108 140 68 133 37 105C36 102 37 99 40 98Z",
        )],
    ),
    ShapePlan(P::Rim, Detail, &[Made(rim_marks)]),
    ShapePlan(P::Shield, Area, &[Shield(204.0, 160.0, 38.0)]),
    ShapePlan(
        P::Foot,
        Area,
        &[Turned(
            (30.0, 219.0),
            &[
                Line(22.0, 226.0),
                Line(22.0, 232.0),
                Curve(26.0, 244.0, 44.0, 244.0, 58.0, 250.0),
                Line(58.0, 258.0),
            ],
        )],
    ),
    ShapePlan(P::Foot, Detail, &[Level(22.0, 229.0), Level(57.0, 250.5)]),
    ShapePlan(P::Base, Hidden, &[Underside(54.0, 258.0)]),
];

/// The joint of each part, mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 270.0, 200.0),
    Joint(P::Rim, 202.0, 146.0),
    Joint(P::Spout, 124.0, 162.0),
    Joint(P::Handle, 280.0, 193.0),
    Joint(P::Foot, 200.0, 221.0),
    Joint(P::Shield, 204.0, 198.0),
    Joint(P::Interior, 200.0, 212.0),
    Joint(P::Base, 200.0, 258.0),
];

/// Small strokes along the rim.
fn rim_marks() -> String {
    (0..27_u32)
        .map(|i| {
            let t = f64::from(i) / 26.0;
            let x = 62.0 + 224.0 * t;
            // The rim falls from the lip and rises a little towards the handle.
            let y = 118.0 + 62.0 * t - 52.0 * t * t - 8.0 * t * t * t * (1.0 - t) + 1.0;
            let y = y.min(139.0 + 4.0 * t - 9.0 * t * t);
            format!("M{x:.1} {:.1}L{:.1} {:.1}", y + 0.5, x - 1.0, y + 6.0)
        })
        .collect::<Vec<_>>()
        .concat()
}
