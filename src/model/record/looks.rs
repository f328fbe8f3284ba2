//! Looks typed as a line of letters and numbers, for a person who knows them.

use super::Draft;
use crate::ledger::FindingId;
use crate::terms::{PartName, Seen};

/// Writes the looks of a line such as `C01 -M02 ?C05 S06@foot`: seen, looked for and not there, not sure, and
/// seen on a part. Returns the words of the line that are no such look; the others are written.
#[must_use]
pub fn put_looks(draft: &mut Draft, line: &str) -> Vec<String> {
    let mut unknown = Vec::new();
    for word in line.split(|c: char| c.is_whitespace() || c == ',' || c == ';') {
        if word.is_empty() {
            continue;
        }
        let (seen, rest) = match word.chars().next() {
            Some('-' | '\u{2212}') => (Seen::No, word.trim_start_matches(['-', '\u{2212}'])),
            Some('?') => (Seen::Unsure, word.trim_start_matches('?')),
            _ => (Seen::Yes, word),
        };
        let (id, part) = rest.split_once('@').unwrap_or((rest, ""));
        let part = part.to_ascii_lowercase();
        // Ids are a capital letter and a number, and a few have a small letter at the end.
        let capital = id.to_ascii_uppercase();
        let small_end = capital
            .split_at_checked(capital.len().saturating_sub(1))
            .map(|(most, last)| [most, &last.to_ascii_lowercase()].concat());
        let finding = FindingId::parse(&capital).or_else(|| FindingId::parse(&small_end?));
        match finding {
            Some(id) if part.is_empty() || PartName::parse(&part).is_some() => {
                let part = if seen == Seen::Yes { part.as_str() } else { "" };
                draft.set_answer(id, seen.id(), part);
            }
            _ => unknown.push(word.to_owned()),
        }
    }
    unknown
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_of_looks_is_written_and_what_is_none_comes_back() {
        let mut draft = Draft::default();
        let unknown = put_looks(&mut draft, " c01, -S08 ?C05 S06@foot m01b Z99 S06@nose ");
        assert_eq!(unknown, ["Z99", "S06@nose"]);
        let (case, problems) = draft.read();
        assert_eq!(problems, []);
        let found: Vec<_> = case
            .findings
            .iter()
            .map(|a| (a.id, a.seen, a.part))
            .collect();
        assert_eq!(
            found,
            [
                (FindingId::C01, Seen::Yes, None),
                (FindingId::S08, Seen::No, None),
                (FindingId::C05, Seen::Unsure, None),
                (FindingId::S06, Seen::Yes, Some(PartName::Foot)),
                (FindingId::M01B, Seen::Yes, None),
            ]
        );
    }
}
