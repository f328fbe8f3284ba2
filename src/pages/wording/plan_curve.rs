//! Wording of the curve of what money brings.

pub(crate) const HEADING: &str = "What more money would bring";

pub(crate) fn rises(most: &str) -> String {
    format!("The more money, the more the work brings, up to {most}")
}

pub(crate) fn rises_until(most: &str, from: &str) -> String {
    format!("Beyond {from}, more money still brings no more than {most}")
}

pub(crate) fn description(most: &str, gain: &str) -> String {
    format!(
        "A line rising from nothing to {gain}: what the best plan brings as money goes from nothing to \
         {most}, with the hours unchanged."
    )
}

pub(crate) const CAPTION: &str =
    "The best plan for each sum of money at which it changes, with the hours unchanged";
pub(crate) const MONEY: &str = "Money, from";
pub(crate) const BRINGS: &str = "Brings about";
pub(crate) const YOURS: &str = "your limit";
pub(crate) const SPENT: &str = "money";
