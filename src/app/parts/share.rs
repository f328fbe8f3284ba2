//! The share of a part where base metal shows: recorded as a word, as a percentage, or by counting points.

use leavewell_model::record::schema::bare_share;

use crate::app::parts::words::joined;
use leavewell_model::terms::BleedWord;

/// The recorded word, empty if there is none. Any other value is `own`, which presses no button.
#[must_use]
pub fn word(stored: String) -> String {
    if stored.is_empty() || BleedWord::parse(&stored).is_some() {
        stored
    } else {
        "own".to_owned()
    }
}

/// The percentage as typed; empty if there is none.
#[must_use]
pub fn typed(stored: &str) -> String {
    if is_counted(stored) || BleedWord::parse(stored).is_some() {
        String::new()
    } else {
        hundredths(stored)
    }
}

/// The value to record for this typed text.
#[must_use]
pub fn stored(typed: &str) -> String {
    let typed = typed.trim().trim_end_matches('%').trim_end();
    if typed.is_empty() {
        String::new()
    } else {
        joined(&[typed, " %"])
    }
}

/// Whether a point count is recorded.
#[must_use]
pub fn is_counted(stored: &str) -> bool {
    stored.starts_with('{')
}

/// A share as a person types it: a percentage without the sign. A file may store it as a fraction of 1.
#[must_use]
pub fn hundredths(stored: &str) -> String {
    if let Some(hundredths) = stored.trim().strip_suffix('%') {
        return hundredths.trim().to_owned();
    }
    match bare_share(stored) {
        Some(share) => ((share * 100_000.0).round() / 1_000.0).to_string(),
        None => stored.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_is_shown_as_a_percentage() {
        for (stored, shown) in [
            ("5 %", "5"),
            ("0.07", "7"),
            ("0.125", "12.5"),
            ("140", "140"),
            ("ab %", "ab"),
        ] {
            assert_eq!(hundredths(stored), shown);
        }
    }

    #[test]
    fn a_word_and_a_percentage_replace_each_other() {
        assert_eq!(word("some".to_owned()), "some");
        assert_eq!(word("5 %".to_owned()), "own");
        assert_eq!(typed("some"), "");
        assert_eq!(typed("{\"hits\":1}"), "");
        assert_eq!(stored(" 5% "), "5 %");
        assert_eq!(stored("%"), "");
    }
}
