//! Likelihood in the words of one published scale, with the number beside them.
//!
//! Mastrandrea et al. 2010, Table 1: virtually certain 99 to 100 %, very likely 90 to 100 %, likely 66 to
//! 100 %, about as likely as not 33 to 66 %, unlikely 0 to 33 %, very unlikely 0 to 10 %, exceptionally
//! unlikely 0 to 1 %. Where bands overlap, the narrowest one applies.

use super::wording::scale_words as words;
use leavewell_model::ledger::{FigureId, Ledger};
use leavewell_model::terms::share;

/// The words for a probability from 0 to 1. Anything else, such as NaN, counts as even.
#[must_use]
pub fn likelihood(p: f64, ledger: &Ledger) -> &'static str {
    let at = |id| ledger.value(id);
    if p >= at(FigureId::WORDS_VIRTUALLY_CERTAIN) {
        words::VIRTUALLY_CERTAIN
    } else if p >= at(FigureId::WORDS_VERY_LIKELY) {
        words::VERY_LIKELY
    } else if p >= at(FigureId::WORDS_LIKELY) {
        words::LIKELY
    } else if p <= at(FigureId::WORDS_EXCEPTIONALLY_UNLIKELY) {
        words::EXCEPTIONALLY_UNLIKELY
    } else if p <= at(FigureId::WORDS_VERY_UNLIKELY) {
        words::VERY_UNLIKELY
    } else if p < at(FigureId::WORDS_EVEN) {
        words::UNLIKELY
    } else {
        words::ABOUT_EVEN
    }
}

/// Words and number: "very likely (93 in 100)".
#[must_use]
pub fn said(p: f64, ledger: &Ledger) -> String {
    format!("{} ({})", likelihood(p, ledger), share(p))
}

/// The scale from most to least likely: each phrase with its range of chances.
#[must_use]
pub fn scale(ledger: &Ledger) -> Vec<(String, String)> {
    let at = |id: FigureId| (100.0 * ledger.value(id)).round();
    let (certain, very, likely) = (
        at(FigureId::WORDS_VIRTUALLY_CERTAIN),
        at(FigureId::WORDS_VERY_LIKELY),
        at(FigureId::WORDS_LIKELY),
    );
    let (even, not_very, hardly) = (
        at(FigureId::WORDS_EVEN),
        at(FigureId::WORDS_VERY_UNLIKELY),
        at(FigureId::WORDS_EXCEPTIONALLY_UNLIKELY),
    );
    [
        (words::VIRTUALLY_CERTAIN, words::or_more(certain)),
        (words::VERY_LIKELY, words::from_to(very, certain)),
        (words::LIKELY, words::from_to(likely, very)),
        (words::ABOUT_EVEN, words::from_to(even, likely)),
        (words::UNLIKELY, words::from_to(not_very, even)),
        (words::VERY_UNLIKELY, words::from_to(hardly, not_very)),
        (words::EXCEPTIONALLY_UNLIKELY, words::or_less(hardly)),
    ]
    .map(|(word, range)| (word.to_owned(), range))
    .to_vec()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_change_at_the_bounds_of_the_published_scale() {
        let ledger = Ledger::standard();
        // Both sides of every bound in Table 1, and both ends.
        for (p, word) in [
            (1.0, "virtually certain"),
            (0.99, "virtually certain"),
            (0.989, "very likely"),
            (0.90, "very likely"),
            (0.899, "likely"),
            (0.66, "likely"),
            (0.659, "about as likely as not"),
            (0.5, "about as likely as not"),
            (0.33, "about as likely as not"),
            (0.329, "unlikely"),
            (0.101, "unlikely"),
            (0.10, "very unlikely"),
            (0.011, "very unlikely"),
            (0.01, "exceptionally unlikely"),
            (0.0, "exceptionally unlikely"),
        ] {
            assert_eq!(likelihood(p, ledger), word, "{p}");
        }
        assert_eq!(likelihood(f64::NAN, ledger), "about as likely as not");
    }

    #[test]
    fn the_scale_lists_each_phrase_once_in_order() {
        let ledger = Ledger::standard();
        let scale = scale(ledger);
        let by_chance: Vec<&str> = [0.995, 0.95, 0.7, 0.5, 0.2, 0.05, 0.001]
            .into_iter()
            .map(|p| likelihood(p, ledger))
            .collect();
        let named: Vec<&str> = scale.iter().map(|(word, _)| word.as_str()).collect();
        assert_eq!(named, by_chance);
        assert_eq!(said(0.93, ledger), "very likely (93 in 100)");
    }
}
