//! A straight-sided box with a hinged lid.

use leavewell_model::case::PartName as P;

use crate::app::drawings::shape::To::{Curve, Line};
use crate::app::drawings::shape::{
    Shape, area, detail, hidden, level, shield, strokes, turned, underside,
};

pub(super) fn shapes() -> Vec<Shape> {
    vec![
        area(P::Body, turned((108.0, 124.0), &[Line(108.0, 240.0)])),
        hidden(P::Interior, turned((101.0, 130.0), &[Line(101.0, 234.0)])),
        detail(
            P::Body,
            "M104 138L296 138M104 228L296 228M104 138L104 228M296 138L296 228",
        ),
        area(P::Shield, shield(200.0, 158.0, 52.0)),
        detail(
            P::Body,
            "M200 140C197 140 196 143 197 146L199 148L198 153L202 153L201 148L203 146C204 143 203 140 200 140Z",
        ),
        area(
            P::Border,
            turned(
                (110.0, 240.0),
                &[Curve(116.0, 242.0, 116.0, 250.0, 112.0, 252.0)],
            ),
        ),
        detail(P::Border, strokes(111.0, 241.0, 251.0, 46)),
        hidden(P::Base, underside(108.0, 252.0)),
        area(P::Edge, turned((112.0, 114.0), &[Line(112.0, 124.0)])),
        detail(P::Edge, level(112.0, 119.0)),
        area(
            P::Cover,
            turned(
                (40.0, 62.0),
                &[
                    Curve(70.0, 64.0, 84.0, 72.0, 92.0, 86.0),
                    Curve(96.0, 94.0, 104.0, 96.0, 112.0, 100.0),
                    Line(112.0, 114.0),
                ],
            ),
        ),
        detail(P::Cover, level(91.0, 86.0) + &level(111.0, 101.0)),
        area(
            P::Cover,
            turned(
                (16.0, 44.0),
                &[Curve(26.0, 46.0, 26.0, 54.0, 12.0, 56.0), Line(14.0, 62.0)],
            ),
        ),
    ]
}
