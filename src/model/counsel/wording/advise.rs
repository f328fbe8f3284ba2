//! What keeps an answer from being firmer.

pub(crate) fn another_does_better(measure: &str) -> String {
    format!("Judged by {measure}, another course does better.")
}

pub(crate) const THE_MIDDLE: &str = "the middle outcome";
pub(crate) const THE_WORST_TENTH: &str = "the worst tenth of outcomes";
pub(crate) const THE_GREATEST_REGRET: &str = "the greatest regret";
pub(crate) const KIND_NOT_SETTLED: &str =
    "We cannot yet say what it is, and this work would alter it.";
pub(crate) const OTHER_CURRENCY: &str = "Usual costs and fees are held in pounds, euros or dollars; \
    in another currency, put in quotes.";
pub(crate) const NO_VALUE: &str = "You gave no value, so we used a wide range for such pieces.";

pub(crate) fn no_quote(treatment: &str) -> String {
    format!("There is no quote for {treatment} yet, so we used a wide range.")
}

pub(crate) const NOT_EVERY_COURSE: &str = "There are too many courses to compare every one; the best choices for each fault were compared.";
