//! Wording on how the main numbers are worked out.

// The value

pub(crate) const VALUE: &str = "What it is worth as it is";
pub(crate) const VALUE_FORMULA: &str = "The undamaged value, times the share that wear leaves for \
    the likely buyers, times a factor for each other fault found (tarnish, joints, dents, \
    corrosion and the like); never less than the least share that is always left. It is worked out \
    for each draw of what the piece may be; the lowest tenth, the middle and the highest tenth are \
    shown.";
pub(crate) const VALUE_ENTERED: &str =
    "Your low, likely and high value, the form, the years, the condition of each part.";

// What the advised course leaves

pub(crate) const NET: &str = "What the advised course leaves";
pub(crate) const NET_FORMULA: &str = "The value after the work, for each way the work may turn \
    out, less selling fees if it is to be sold, less the cost of the work. A seller's figure \
    includes the chance that it does not sell.";
pub(crate) const NET_ENTERED: &str = "Your quotes, the way it would be sold, the aim.";

// Silver left

pub(crate) const SILVER: &str = "How much silver is left on the body";
pub(crate) const SILVER_FORMULA: &str = "Silver wears unevenly, so its thickness varies around a \
    mean. The bare share is the share of points worn to nothing, and shows how far the mean has \
    fallen. What is left is the mean of the points that still have silver; a cleaning takes its \
    loss from all of them.";
pub(crate) const SILVER_ENTERED: &str = "The bare share of each part, or a count of points.";

// How likely the advice is the best

pub(crate) const BEST: &str = "How often it does as well as any option";
pub(crate) const BEST_FORMULA: &str = "The share of draws in which no other group of courses beats \
    the advised one by more than the noise. The noise is the smallest difference that counts.";
pub(crate) const BEST_ENTERED: &str = "Everything that goes into the other numbers.";

// What is original

pub(crate) const ORIGINALITY: &str = "How much original material it keeps";
pub(crate) const ORIGINALITY_FORMULA: &str = "What is original now, less what each step of the \
    course takes, by its dose and by how far it can be undone, averaged over everything the piece \
    may be.";
pub(crate) const ORIGINALITY_ENTERED: &str = "The findings, and the condition of each part.";

// A number and its inputs

pub(crate) fn from_you(entered: &str) -> String {
    format!("From you: {entered}")
}

pub(crate) fn figures(count: usize) -> String {
    format!("Figures that go into it: {count}")
}

pub(crate) fn figure(what: &str, value: &str, band: &str, known: &str, id: &str) -> String {
    format!("{what}: {value} (band {band}; {known}; figure \"{id}\")")
}

pub(crate) const SOURCES: &str = "Sources:";

pub(crate) fn range(low: &str, high: &str, middle: &str) -> String {
    format!("{low} to {high}, middle {middle}.")
}

pub(crate) fn silver(low: &str, high: &str, middle: &str, share: &str) -> String {
    format!("{low} to {high} um, middle {middle} um; {share} of the first.")
}

pub(crate) const NO_PART: &str = "No part is recorded.";
pub(crate) const NO_COURSE: &str = "There is no course to show.";
