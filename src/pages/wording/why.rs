//! Wording on how each answer moved the odds.

pub(crate) const NOTHING_ANSWERED: &str =
    "Nothing is answered yet, so the odds have not moved. Each answer will add a step here.";
pub(crate) const HOW_TO_READ: &str = "Steps of equal length multiply the odds equally. Findings of \
    one sort, such as several marks, share their weight, so each counts for less when others of \
    its sort are present. The strongest steps come first.";

// Odds along the top

pub(crate) const ONE_IN_1000: &str = "1 in 1,000";
pub(crate) const ONE_IN_50: &str = "1 in 50";
pub(crate) const EVEN: &str = "even";
pub(crate) const ALL_BUT_ONE_IN_50: &str = "49 in 50";
pub(crate) const ALL_BUT_ONE_IN_1000: &str = "999 in 1,000";

// The picture

pub(crate) const BEFORE: &str = "Before looking";
pub(crate) const NOW: &str = "Now";

pub(crate) fn picture_title(before: &str, now: &str, family: &str) -> String {
    format!("From {before} to {now} that it is {family}")
}

pub(crate) const DESCRIPTION: &str = "Each line is one answer. Its arrow starts at the odds left \
    by the answers above and ends at the odds after this one: further right is likelier.";
pub(crate) const CAPTION: &str = "What each answer did";
pub(crate) const COLUMNS: [&str; 3] = ["Answer", "Odds", "Then"];

pub(crate) fn not_there(finding: &str) -> String {
    format!("Not present: {finding}")
}

// Odds

pub(crate) const HARDLY: &str = "fewer than 1 in 200";
pub(crate) const ALL_BUT: &str = "more than 199 in 200";

pub(crate) fn in_100(hundredths: f64) -> String {
    format!("about {hundredths} in 100")
}

pub(crate) const AS_THEY_WERE: &str = "unchanged";

pub(crate) fn times(factor: &str) -> String {
    format!("times {factor}")
}

pub(crate) fn divided_by(factor: &str) -> String {
    format!("divided by {factor}")
}
