//! A plain covered cup with every part a piece may have; it stands for pieces of no listed form.

use leavewell_model::case::PartName as P;

use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{
    Shape, area, detail, hidden, level, ribbon, shield, strokes, turned, underside,
};

pub(super) fn shapes() -> Vec<Shape> {
    vec![
        area(
            P::Handle,
            ribbon(
                (258.0, 128.0),
                &[
                    Curve(290.0, 100.0, 330.0, 118.0, 326.0, 152.0),
                    Curve(322.0, 182.0, 284.0, 194.0, 250.0, 202.0),
                ],
                [12.0, 10.0, 12.0],
            ),
        ),
        area(
            P::Spout,
            "M142 152C124 146 112 132 98 112C114 116 128 116 146 114Z",
        ),
        detail(P::Spout, "M106 118C118 132 128 140 142 144"),
        area(
            P::Body,
            turned(
                (62.0, 124.0),
                &[
                    Curve(62.0, 152.0, 70.0, 170.0, 62.0, 194.0),
                    Curve(54.0, 214.0, 34.0, 220.0, 20.0, 228.0),
                ],
            ),
        ),
        hidden(
            P::Interior,
            turned(
                (55.0, 130.0),
                &[
                    Curve(55.0, 154.0, 62.0, 172.0, 55.0, 191.0),
                    Curve(48.0, 207.0, 30.0, 213.0, 8.0, 216.0),
                ],
            ),
        ),
        area(P::Shield, shield(200.0, 144.0, 44.0)),
        area(
            P::Foot,
            turned(
                (20.0, 228.0),
                &[
                    Line(15.0, 234.0),
                    Curve(16.0, 248.0, 36.0, 252.0, 54.0, 258.0),
                    Line(54.0, 268.0),
                ],
            ),
        ),
        detail(P::Foot, level(15.5, 234.5) + &level(54.0, 258.5)),
        hidden(P::Base, underside(50.0, 268.0)),
        area(
            P::Rim,
            turned(
                (64.0, 110.0),
                &[Curve(67.0, 112.0, 67.0, 115.0, 64.0, 116.0)],
            ),
        ),
        area(
            P::Border,
            turned(
                (62.0, 116.0),
                &[Curve(66.0, 118.0, 66.0, 122.0, 62.0, 124.0)],
            ),
        ),
        detail(P::Border, strokes(63.0, 117.0, 123.0, 30)),
        area(
            P::Cover,
            turned((9.0, 70.0), &[Curve(24.0, 78.0, 54.0, 78.0, 60.0, 102.0)]),
        ),
        detail(P::Cover, level(52.0, 88.0)),
        area(
            P::Edge,
            turned(
                (64.0, 102.0),
                &[Line(66.0, 104.0), Line(66.0, 108.0), Line(64.0, 110.0)],
            ),
        ),
        area(
            P::Finial,
            turned(
                (2.0, 40.0),
                &[
                    Curve(10.0, 42.0, 12.0, 48.0, 11.0, 53.0),
                    Curve(10.0, 59.0, 5.0, 61.0, 4.0, 66.0),
                    Line(10.0, 68.0),
                    Line(10.0, 71.0),
                ],
            ),
        ),
        detail(P::Finial, level(11.0, 52.0)),
    ]
}
