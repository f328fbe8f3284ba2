//! An oval covered bowl on a foot, with a handle at each end.

use leavewell_model::case::PartName as P;

use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{
    Shape, area, detail, gadroons, hidden, level, lobes, ribbon, shield, turned, underside,
};

pub(super) fn shapes() -> Vec<Shape> {
    let mut shapes = handles();
    shapes.extend([
        area(
            P::Body,
            turned(
                (116.0, 152.0),
                &[
                    Curve(116.0, 186.0, 92.0, 212.0, 54.0, 224.0),
                    Curve(40.0, 228.0, 26.0, 229.0, 20.0, 234.0),
                ],
            ),
        ),
        hidden(
            P::Interior,
            turned(
                (109.0, 156.0),
                &[
                    Curve(108.0, 184.0, 86.0, 206.0, 50.0, 217.0),
                    Curve(36.0, 221.0, 20.0, 222.0, 6.0, 222.0),
                ],
            ),
        ),
        detail(
            P::Body,
            level(95.0, 200.0) + &lobes((95.0, 200.0), (30.0, 229.0), 24),
        ),
        area(P::Shield, shield(200.0, 162.0, 36.0)),
        area(
            P::Foot,
            turned(
                (20.0, 234.0),
                &[
                    Line(17.0, 239.0),
                    Curve(20.0, 250.0, 46.0, 252.0, 66.0, 258.0),
                    Line(66.0, 267.0),
                ],
            ),
        ),
        detail(P::Foot, level(17.5, 239.5) + &level(66.0, 258.5)),
        hidden(P::Base, underside(62.0, 267.0)),
        area(
            P::Cover,
            turned(
                (11.0, 80.0),
                &[
                    Curve(30.0, 90.0, 66.0, 88.0, 88.0, 104.0),
                    Curve(102.0, 114.0, 108.0, 122.0, 111.0, 134.0),
                ],
            ),
        ),
        detail(P::Cover, level(87.0, 103.5) + &level(104.0, 119.0)),
        area(
            P::Finial,
            turned(
                (3.0, 48.0),
                &[
                    Curve(11.0, 50.0, 14.0, 56.0, 13.0, 62.0),
                    Curve(12.0, 69.0, 6.0, 70.0, 5.0, 75.0),
                    Line(12.0, 77.0),
                    Line(12.0, 81.0),
                ],
            ),
        ),
        detail(P::Finial, level(13.0, 61.0)),
        area(
            P::Border,
            turned(
                (113.0, 134.0),
                &[Curve(119.0, 136.0, 119.0, 142.0, 116.0, 144.0)],
            ),
        ),
        detail(P::Border, gadroons(115.0, 135.0, 143.5, 50)),
        area(
            P::Rim,
            turned(
                (119.0, 144.0),
                &[Line(121.0, 146.0), Line(121.0, 150.0), Line(116.0, 152.0)],
            ),
        ),
    ]);
    shapes
}

fn handles() -> Vec<Shape> {
    vec![
        area(
            P::Handle,
            ribbon(
                (92.0, 158.0),
                &[
                    Curve(62.0, 112.0, 26.0, 116.0, 28.0, 146.0),
                    Curve(30.0, 170.0, 68.0, 184.0, 102.0, 192.0),
                ],
                [11.0, 9.0, 11.0],
            ),
        ),
        area(
            P::Handle,
            ribbon(
                (308.0, 158.0),
                &[
                    Curve(338.0, 112.0, 374.0, 116.0, 372.0, 146.0),
                    Curve(370.0, 170.0, 332.0, 184.0, 298.0, 192.0),
                ],
                [11.0, 9.0, 11.0],
            ),
        ),
    ]
}
