//! Wording on how much each thing counts.

pub(crate) const WEIGHTS: &str = "What matters most to you";

/// Label and swing from worst to best of each attribute, in the order of [`Aim::WEIGHED`].
pub(crate) const SAID: [(&str, &str); 5] = [
    (
        "Keeping what is original",
        "From all of it lost to all of it kept.",
    ),
    (
        "How well it serves your purpose",
        "From not at all to as well as such a piece can.",
    ),
    (
        "How well it will last",
        "From still getting worse to sound for good.",
    ),
    (
        "What it costs",
        "From very costly for such a piece to free.",
    ),
    (
        "What can still be done later",
        "From no choice left to every choice open.",
    ),
];

pub(crate) const ONLY_MONEY: &str = "You want to sell, so only money counts. Buyers already pay \
    for originality, so weighing it again would count it twice.";
pub(crate) const SWINGS: &str = "Think of each as a change from the worst possible to the best. \
    Give 100 points to the change you want most, and fewer to the others in proportion. Empty \
    fields keep the usual points for your aim.";
pub(crate) const POINTS: &str = "points";

// How often each is first

pub(crate) const NEVER_FIRST: &str = "never first";

pub(crate) fn first_of_all(hundredths: &str, course: &str) -> String {
    format!(
        "Over all weights that keep your order, this comes first in {hundredths} of 100: {course}."
    )
}

pub(crate) const RANKS_CAPTION: &str =
    "Out of 100 sets of weights in your order, how often each course has each place";
pub(crate) const COURSE: &str = "Course";
pub(crate) const FIRST: &str = "First";
pub(crate) const SECOND: &str = "Second";
pub(crate) const THIRD: &str = "Third";
pub(crate) const LATER: &str = "Later";
pub(crate) const CONFIDENCE: &str = "How often first at these weights";

// Who would choose which

pub(crate) const WHO_CHOOSES: &str =
    "Who would choose which: typical weights behind each first place";
pub(crate) const COURSE_CHOSEN: &str = "Course";
pub(crate) const MEAN_WEIGHTS: &str = "Mean weights, out of 100, that put each course first";
pub(crate) const WHAT_IS_BARRED: &str = "Courses that a rule bars are not in the table: no weight \
    can buy them back. A course may be a good second choice for nearly everyone and first for \
    few.";
