//! The figures behind an instrument, folded until opened: each with its range, how it is known and its
//! source.

use super::block::{Block, Table};
use super::number_text::range;
use super::wording::sources_fold as words;
use leavewell_model::ledger::{FigureId, Ledger, meaning, source};

/// A fold with these figures of the ledger.
pub(super) fn sources_fold(id: &str, ledger: &Ledger, ids: &[FigureId]) -> Block {
    let rows = ids
        .iter()
        .map(|id| ledger.figure(*id))
        .map(|figure| {
            // As in the ledger, not rounded.
            let band = range(&figure.low.to_string(), &figure.high.to_string());
            let unit = if figure.unit == "1" { "" } else { figure.unit };
            let known = figure
                .own_reason
                .as_ref()
                .map_or_else(|| figure.tag.words().to_owned(), |_| words::OWN.to_owned());
            vec![
                meaning(figure.id).unwrap_or(figure.id).to_owned(),
                format!("{} {unit}", figure.value).trim().to_owned(),
                band,
                known,
                source(figure.source).map_or("", |s| s.citation).to_owned(),
            ]
        })
        .collect();
    Block::fold(
        id,
        words::SUMMARY,
        vec![Block::Table(Table {
            caption: words::CAPTION.to_owned(),
            columns: words::COLUMNS.map(str::to_owned).to_vec(),
            rows,
        })],
    )
}
