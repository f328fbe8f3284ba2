//! Words in marks and descriptions, and the findings they suggest.

use crate::terms::ShortSort;
use std::sync::OnceLock;

use super::finding_id::FindingId;
use super::{embedded, table::rows};

/// Where words occur.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WordsIn {
    /// Struck on the piece.
    Mark,
    /// In a description of the piece.
    Description,
}

/// Words that suggest a finding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SuggestedBy {
    /// Where they occur.
    pub place: WordsIn,
    /// The words, upper case, one token each.
    pub words: Vec<&'static str>,
    /// The finding.
    pub finding: FindingId,
}

/// Every row, the longest words first.
#[must_use]
pub fn suggestions() -> &'static [SuggestedBy] {
    static ROWS: OnceLock<Vec<SuggestedBy>> = OnceLock::new();
    ROWS.get_or_init(|| embedded(read(include_str!("data/proposals.psv"))))
}

fn read(text: &'static str) -> Result<Vec<SuggestedBy>, String> {
    let mut all = rows("proposals.psv", text, &["where", "words", "finding"])?
        .into_iter()
        .map(|r| {
            let fault = |what: &str| format!("proposals.psv: {}: {what}", r[1]);
            Ok(SuggestedBy {
                place: match r[0] {
                    "mark" => WordsIn::Mark,
                    "description" => WordsIn::Description,
                    _ => return Err(fault("where is mark or description")),
                },
                words: r[1].split(' ').collect(),
                finding: FindingId::parse(r[2]).ok_or_else(|| fault("unknown finding"))?,
            })
        })
        .collect::<Result<Vec<_>, _>>()?;
    all.order_by_key(|row| std::cmp::Reverse(row.words.len()));
    Ok(all)
}
