//! Wording of the picture of heat reach.

// Reach

pub(crate) fn as_far_as(at_c: f64, reach: &str) -> String {
    format!("{at_c} °C as far as {reach}")
}

pub(crate) fn everywhere(at_c: f64) -> String {
    format!("{at_c} °C everywhere")
}

pub(crate) const OPENS_NOTHING: &str = "The heat of this joint opens nothing on the list.";

pub(crate) fn at_most(reached: &str) -> String {
    format!("At most: {reached}.")
}

// Descriptions

pub(crate) const FROM_ABOVE: &str = "The metal seen from above, with the hot patch in the middle. \
    Each ring is the farthest that a temperature reaches; the banded ring runs from the least to \
    the most for old soft solder.";
pub(crate) const FROM_THE_SIDE: &str = "The metal seen from the side, with the hot end on the \
    left. Each line is the farthest that a temperature reaches; the banded stretch runs from the \
    least to the most for old soft solder.";
pub(crate) const HOT_PATCH: &str = "hot patch";
pub(crate) const HOT_END: &str = "hot end";
pub(crate) const NEXT_JOINT: &str = "next joint";
