//! Words of counting how much base metal shows.

pub(crate) const COUNT: &str = "Count it";
pub(crate) const CHARTS: &str = "Or judge it by eye";

// Counting

pub(crate) const POINTS: &str = "Points in each field";
pub(crate) const POINTS_HINT: &str = "All points of the grid that lie on this part.";
pub(crate) const BARE: &str = "Points on bare metal";
pub(crate) const BARE_HINT: &str = "One number for each field, with a space between: 6 4 9.";
pub(crate) const HOW_TO_COUNT: &str = "Lay a grid over the part: a sheet of clear film with crosses, \
    or lines in your mind. Count the crosses that lie on bare metal. Then shift the grid, without \
    looking where it falls, and count again.";
pub(crate) const METHOD: &str = "How the range is worked out";
pub(crate) const FORMULAS: &str = "Two fields or more: the mean over the fields, and a range from \
    how much they differ, by Student's t (ASTM E562). One field, or fields that all agree: all \
    points together, with the exact range for a share that was counted (Clopper and Pearson, 1934).";
pub(crate) const EDGE: &str =
    "A point on the very edge of the bare metal counts as half: count every other one.";

// The answer

pub(crate) const NOTHING_COUNTED: &str =
    "Nothing is counted here yet. Until it is, what you judged on Condition is used.";

pub(crate) fn answer(share: &str, part: &str, low: &str, high: &str) -> String {
    format!(
        "Base metal shows on {share} of the {part}; the count fits anything from {low} to {high}."
    )
}

pub(crate) const TAKES_THE_PLACE: &str =
    "This takes the place of what you judged by eye for this part.";
pub(crate) const MORE_FIELDS: &str =
    "A few more fields narrow the range more than anything else does.";

pub(crate) fn half_range(hundredths: f64) -> String {
    format!(
        "Half the range is {hundredths:.0} % of the share itself: what the standard calls relative accuracy."
    )
}

pub(crate) const NONE: &str = "none";
pub(crate) const UNDER_1_PERCENT: &str = "under 1 %";

// Charts for the eye

pub(crate) const THE_EYE: &str = "The eye sees too much where wear is in specks and too little where \
    it is in one place. Find the sort of wear that is nearest to yours, then the share.";

pub(crate) fn picture_title(grain: &str) -> String {
    format!("Known shares of bare metal, as {grain}")
}

pub(crate) fn description(grain: &str) -> String {
    format!(
        "Seven rectangles of silver with base metal showing as {grain}, from 1 % to 50 % of the area."
    )
}

pub(crate) const CAPTION: &str = "Cells that are bare in each chart";
pub(crate) const COLUMNS: [&str; 3] = ["Share", "Bare cells", "All cells"];
