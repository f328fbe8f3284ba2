//! Wording of the point count for base metal.

pub(crate) const COUNT: &str = "Count it";
pub(crate) const CHARTS: &str = "Or judge it by eye";

// Counting

pub(crate) const POINTS: &str = "Points in each field";
pub(crate) const POINTS_HINT: &str = "All grid points that fall on this part.";
pub(crate) const BARE: &str = "Points on bare metal";
pub(crate) const BARE_HINT: &str = "One number for each field, separated by spaces: 6 4 9.";
pub(crate) const HOW_TO_COUNT: &str = "Lay a grid over the part: a sheet of clear film marked with \
    crosses, or an imagined grid. Count the crosses on bare metal. Then shift the grid without \
    looking where it lands, and count again.";
pub(crate) const METHOD: &str = "How the range is worked out";
pub(crate) const FORMULAS: &str = "Two fields or more: the mean of the fields, with a range from \
    how much they differ, by Student's t (ASTM E562). One field, or fields that all agree: all \
    points together, with the exact range for a counted share (Clopper and Pearson, 1934).";
pub(crate) const EDGE: &str =
    "A point right on the edge of the bare metal counts as half: count every second one.";

// The answer

pub(crate) const NOTHING_COUNTED: &str =
    "Nothing is counted yet. Until then, your judgement on Condition is used.";

pub(crate) fn answer(share: &str, part: &str, low: &str, high: &str) -> String {
    format!(
        "Base metal shows on {share} of the {part}; the count fits anything from {low} to {high}."
    )
}

pub(crate) const TAKES_THE_PLACE: &str = "This replaces your judgement by eye for this part.";
pub(crate) const MORE_FIELDS: &str = "Counting a few more fields narrows the range most.";

pub(crate) fn half_range(hundredths: f64) -> String {
    format!(
        "Half the range is {hundredths:.0} % of the share itself; the standard calls this relative \
         accuracy."
    )
}

pub(crate) const NONE: &str = "none";
pub(crate) const UNDER_1_PERCENT: &str = "under 1 %";

// Charts for the eye

pub(crate) const THE_EYE: &str = "The eye overrates wear in specks and underrates wear in one \
    patch. Find the pattern nearest to yours, then the share.";

pub(crate) fn picture_title(grain: &str) -> String {
    format!("Known shares of bare metal, shown as {grain}")
}

pub(crate) fn description(grain: &str) -> String {
    format!(
        "Seven rectangles of silver with base metal showing as {grain}, from 1 % to 50 % of the area."
    )
}

pub(crate) const CAPTION: &str = "Cells that are bare in each chart";
pub(crate) const COLUMNS: [&str; 3] = ["Share", "Bare cells", "All cells"];
