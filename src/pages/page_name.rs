//! The pages there are.

use serde::{Deserialize, Serialize};

use super::subject::Sheet;
use super::{
    Block, Subject, bench, bleed, care, catalogue, ledger, ledger_trace, measures, money, record,
    sheet_buyer, sheet_client, sheet_done, sheet_file, why, worth_knowing,
};

/// A page about a record.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum PageName {
    /// Heat, plating and food: small instruments.
    Bench,
    /// How to judge the bare share: a count and charts.
    Bleed,
    /// How long the silver lasts, by how the piece is kept.
    Care,
    /// Every treatment with what the rules say of it.
    Catalogue,
    /// The weighing looked at closer: what knowing is worth, risk, weights.
    Closer,
    /// The work done.
    Done,
    /// Every figure, and those of one's own.
    Ledger,
    /// Density, conductivity and X-ray readings.
    Measures,
    /// The record of condition, and the earlier ones.
    Record,
    /// The sheet for a buyer.
    SheetForBuyer,
    /// The sheet for a client.
    SheetForClient,
    /// The sheet for the file.
    SheetForFile,
    /// Where the main numbers come from.
    Trace,
    /// What each answer did to the odds of the leading family.
    Why,
    /// What the piece is worth, by treatment, route and buyer.
    Worth,
}

impl PageName {
    /// Every page.
    pub const ALL: [Self; 15] = [
        Self::Bench,
        Self::Bleed,
        Self::Care,
        Self::Catalogue,
        Self::Closer,
        Self::Done,
        Self::Ledger,
        Self::Measures,
        Self::Record,
        Self::SheetForBuyer,
        Self::SheetForClient,
        Self::SheetForFile,
        Self::Trace,
        Self::Why,
        Self::Worth,
    ];

    /// Does one slice of the long work that the page needs, and says which share of it is done; `None` when
    /// nothing is left but to make the blocks. Whoever does not ask gets the same blocks, later.
    #[must_use]
    pub fn prepare(self, subject: &Subject) -> Option<f64> {
        match self {
            Self::Closer => subject.draw_next_sample(),
            Self::SheetForBuyer => subject.solve_next(Sheet::WithoutChanges),
            Self::SheetForClient | Self::SheetForFile => subject.solve_next(Sheet::WithChanges),
            _ => None,
        }
    }

    /// The page as blocks.
    #[must_use]
    pub fn blocks(self, subject: &Subject) -> Vec<Block> {
        match self {
            Self::Bench => bench::page(subject),
            Self::Bleed => bleed::page(subject),
            Self::Care => care::page(subject),
            Self::Catalogue => catalogue::page(subject),
            Self::Closer => worth_knowing::page(subject),
            Self::Done => sheet_done::page(subject),
            Self::Ledger => ledger::page(subject),
            Self::Measures => measures::page(subject),
            Self::Record => record::page(subject),
            Self::SheetForBuyer => sheet_buyer::page(subject),
            Self::SheetForClient => sheet_client::page(subject),
            Self::SheetForFile => sheet_file::page(subject),
            Self::Trace => ledger_trace::page(subject),
            Self::Why => why::page(subject),
            Self::Worth => money::page(subject),
        }
    }
}
