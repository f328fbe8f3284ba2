//! Words on how much each thing counts.

pub(crate) const WEIGHTS: &str = "What counts for how much";

/// What each attribute is on screen, and its swing from worst to best, in the order of
/// [`Aim::WEIGHED`].
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
        "From a great sum for such a piece to nothing.",
    ),
    (
        "What can still be done later",
        "From nothing left to choose to every choice open.",
    ),
];

pub(crate) const ONLY_MONEY: &str = "You want to sell, so only money counts. What is original is in \
    the price already: buyers pay for it. Weighing it once more would count it twice.";
pub(crate) const SWINGS: &str = "Think of each as a swing from the worst to the best that may be. \
    Give 100 to the swing you would choose first, and to each other one points beside that. Empty \
    ones keep the usual points for your aim.";
pub(crate) const POINTS: &str = "points";

// How often each is first

pub(crate) const NEVER_FIRST: &str = "never first";

pub(crate) fn first_of_all(hundredths: &str, course: &str) -> String {
    format!(
        "Over all weights in keeping with your order, this comes first in {hundredths} of 100: {course}."
    )
}

pub(crate) const RANKS_CAPTION: &str =
    "Out of 100 sets of weights in your order, how often each course has each place";
pub(crate) const COURSE: &str = "Course";
pub(crate) const FIRST: &str = "First";
pub(crate) const SECOND: &str = "Second";
pub(crate) const THIRD: &str = "Third";
pub(crate) const LATER: &str = "Later";
pub(crate) const CONFIDENCE: &str = "How often first at its own typical weights";

// Who would choose which

pub(crate) const WHO_CHOOSES: &str =
    "Who would choose which: typical weights behind each first place";
pub(crate) const COURSE_CHOSEN: &str = "Course";
pub(crate) const MEAN_WEIGHTS: &str = "Mean of the weights, out of 100, that put each course first";
pub(crate) const WHAT_IS_BARRED: &str = "What a rule bars is not in the table: no weight can buy it. \
    A course may be a good second for nearly everybody and first for few.";
