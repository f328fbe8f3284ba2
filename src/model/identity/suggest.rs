//! What a mark or a description as typed may mean: findings for the user to confirm.
//!
//! Nothing is recorded without confirmation, and no maker is named: initials stay initials.

use crate::ledger::{FindingId, WordsIn, suggestions};
use crate::terms::ShortSort;

/// A finding that words suggest.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Suggestion {
    /// The finding.
    pub finding: FindingId,
    /// The words that suggest it, upper case.
    pub words: String,
}

/// The findings that the words of a mark or a description suggest, each once, in the order of the words.
/// Words already matched by a longer entry suggest nothing more; in a description, words after "no", "not" or
/// "without" suggest nothing.
#[must_use]
pub fn suggested_findings(place: WordsIn, text: &str) -> Vec<Suggestion> {
    let tokens = tokens(text);
    let mut used = vec![false; tokens.len()];
    let mut found: Vec<(usize, Suggestion)> = Vec::new();
    for row in suggestions().iter().filter(|row| row.place == place) {
        let long = row.words.len();
        let Some(last) = tokens.len().checked_sub(long) else {
            continue;
        };
        for at in 0..=last {
            let here = at..at + long;
            let fits = tokens[here.clone()]
                .iter()
                .zip(&row.words)
                .all(|(a, b)| a == b);
            if !fits || used[here.clone()].contains(&true) {
                continue;
            }
            used[here.clone()].fill(true);
            if place == WordsIn::Description && is_denied(&tokens[..at]) {
                continue;
            }
            found.push((at, proposal(row.finding, &tokens[here])));
        }
    }
    if place == WordsIn::Mark {
        found.extend(figures_and_initials(&tokens, &used));
    }
    found.order_by_key(|(at, _)| *at);
    let mut each: Vec<Suggestion> = Vec::new();
    for (_, proposal) in found {
        if each.iter().all(|p| p.finding != proposal.finding) {
            each.push(proposal);
        }
    }
    each
}

fn proposal(finding: FindingId, words: &[String]) -> Suggestion {
    Suggestion {
        finding,
        words: words.join(" "),
    }
}

/// A number of three to five digits is a pattern number; a few letters alone are initials.
fn figures_and_initials(tokens: &[String], used: &[bool]) -> Vec<(usize, Suggestion)> {
    let mut found = Vec::new();
    for (at, token) in tokens.iter().enumerate().filter(|(at, _)| !used[*at]) {
        let figures = token.chars().all(|c| c.is_ascii_digit());
        let after_a_design = at > 0 && matches!(&*tokens[at - 1], "RD" | "NO" | "REGD");
        if figures && (3..=5).contains(&token.len()) && !after_a_design {
            found.push((at, proposal(FindingId::M20, &tokens[at..=at])));
        }
    }
    let letters: usize = tokens.iter().map(|t| t.chars().count()).sum();
    let only_letters = tokens
        .iter()
        .flat_map(|t| t.chars())
        .all(char::is_alphabetic);
    if found.is_empty() && !used.contains(&true) && only_letters && (1..=4).contains(&letters) {
        found.push((0, proposal(FindingId::M23, tokens)));
    }
    found
}

/// Whether the words just before it are a denial.
fn is_denied(before: &[String]) -> bool {
    let near = before.iter().rev().take(2);
    near.into_iter().any(|w| {
        matches!(
            &**w,
            "NO" | "NOT" | "WITHOUT" | "NEVER" | "NON" | "NEITHER" | "NOR"
        )
    })
}

/// The words of a text in upper case, without points and accents. Consecutive single letters form one word,
/// so that "E P N S" and "E.P.N.S." read as "EPNS".
fn tokens(text: &str) -> Vec<String> {
    let plain: String = text
        .to_ascii_uppercase()
        .chars()
        .filter(|c| !matches!(c, '\'' | '’'))
        .map(|c| match c {
            'É' | 'È' | 'Ê' => 'E',
            c if c.is_alphanumeric() => c,
            _ => ' ',
        })
        .collect();
    let mut tokens: Vec<String> = Vec::new();
    let mut spelled = false;
    for word in plain.split_whitespace() {
        let single = word.chars().count() == 1 && word.chars().all(char::is_alphabetic);
        match tokens.last_mut() {
            Some(last) if single && spelled => last.push_str(word),
            _ => tokens.push(word.to_owned()),
        }
        spelled = single;
    }
    tokens
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mark(text: &str) -> Vec<&'static str> {
        let found = suggested_findings(WordsIn::Mark, text);
        found.iter().map(|p| p.finding.text()).collect()
    }

    fn description(text: &str) -> Vec<&'static str> {
        let found = suggested_findings(WordsIn::Description, text);
        found.iter().map(|p| p.finding.text()).collect()
    }

    #[test]
    fn marks_are_read_as_typed() {
        assert_eq!(mark("E P N S"), ["M01"]);
        assert_eq!(mark("E.P.N.S. A1"), ["M01", "M01b"]);
        assert_eq!(mark("Sterling weighted"), ["M14", "M15"]);
        assert_eq!(mark("QUADRUPLE PLATE 1234"), ["M16", "M20"]);
        assert_eq!(mark("silver plate"), ["M17"]);
        assert_eq!(mark("COPPER"), ["M18"]);
        assert_eq!(mark("2745"), ["M20"]);
        assert_eq!(mark("Britannia Metal"), ["M30"]);
        assert_eq!(mark("E.P. Britannia Metal"), ["M02"]);
        assert_eq!(mark("Rd. No. 123456"), ["M08"]);
        assert_eq!(mark("N & Sons Ltd"), ["M21"]);
        assert_eq!(mark("silver edg'd"), ["M07"]);
    }

    #[test]
    fn initials_stay_initials() {
        assert_eq!(mark("I H"), ["M23"]);
        assert_eq!(mark("AB & Co"), ["M21"]);
        assert_eq!(mark(""), Vec::<&str>::new());
        assert_eq!(mark("?"), Vec::<&str>::new());
    }

    #[test]
    fn descriptions_in_trade_words_suggest_findings() {
        assert_eq!(description("rolled edge, shield let in"), ["C06", "C26"]);
        assert_eq!(description("re-silvered"), ["S18"]);
        assert_eq!(description("some copper showing"), ["S03"]);
        assert_eq!(
            description("gadrooned, die-stamped and loaded"),
            ["F03", "C21", "C32"]
        );
        assert_eq!(description("unmarked"), ["M10"]);
    }

    #[test]
    fn a_denied_feature_is_not_suggested() {
        assert_eq!(description("not magnetic"), Vec::<&str>::new());
        assert_eq!(description("no copper showing"), Vec::<&str>::new());
        assert_eq!(description("no engraving"), ["C34"]);
    }
}
