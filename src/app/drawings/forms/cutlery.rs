//! A table knife, lying on its side.

use leavewell_model::terms::PartName as P;

use crate::app::drawings::shape::Outline::Path;
use crate::app::drawings::shape::Style::{Area, Detail};
use crate::app::drawings::shape::{Joint, ShapePlan};

pub(super) const SHAPES: &[ShapePlan] = &[
    ShapePlan(
        P::Handle,
        Area,
        &[Path("M40 136L166 132L166 164L40 160C30 156 30 140 40 136Z")],
    ),
    ShapePlan(P::Handle, Detail, &[Path("M156 134L156 162")]),
    ShapePlan(P::Body, Area, &[Path("M166 134L186 138L186 158L166 162Z")]),
    ShapePlan(
        P::Blade,
        Area,
        &[Path(
            "M186 138L340 136C356 138 362 148 356 158C350 166 336 166 320 164L186 158Z",
        )],
    ),
];

/// Where the joint of each part is: mostly where it meets its neighbour.
pub(super) const JOINTS: &[Joint] = &[
    Joint(P::Body, 176.0, 148.0),
    Joint(P::Blade, 186.0, 148.0),
    Joint(P::Handle, 166.0, 148.0),
];
