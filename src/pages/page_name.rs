//! The list of pages.

use serde::{Deserialize, Serialize};

use super::subject::Sheet;
use super::{
    Block, Subject, bench, bleed, care, catalogue, ledger, ledger_trace, measures, money, placing,
    record, sheet_buyer, sheet_client, sheet_conservation, sheet_done, sheet_file, why,
    worth_knowing,
};

/// A page about one record.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum PageName {
    /// Heat, plating and food: small calculators.
    Bench,
    /// How to measure the bare share: a point count and charts.
    Bleed,
    /// How long the silver lasts under two habits of care.
    Care,
    /// Every treatment, with the rules' verdict on it.
    Catalogue,
    /// The weighing in more depth: what knowing more is worth, attitude to risk, weights.
    Closer,
    /// The work done so far.
    Done,
    /// Every figure, including the user's own.
    Ledger,
    /// Density, conductivity and X-ray readings.
    Measures,
    /// Where faults are, on the drawing or on photographs.
    Places,
    /// The condition record, and earlier ones.
    Record,
    /// The sheet for a buyer.
    SheetForBuyer,
    /// The sheet for a client.
    SheetForClient,
    /// The sheet for the file.
    SheetForFile,
    /// The condition and treatment record, as conservators keep it.
    SheetForConservation,
    /// How the main numbers are worked out.
    Trace,
    /// How each answer moved the odds of the leading family.
    Why,
    /// What the piece is worth, by treatment, route and buyer.
    Worth,
}

impl PageName {
    /// Every page.
    pub const ALL: [Self; 17] = [
        Self::Bench,
        Self::Bleed,
        Self::Care,
        Self::Catalogue,
        Self::Closer,
        Self::Done,
        Self::Ledger,
        Self::Measures,
        Self::Places,
        Self::Record,
        Self::SheetForBuyer,
        Self::SheetForClient,
        Self::SheetForFile,
        Self::SheetForConservation,
        Self::Trace,
        Self::Why,
        Self::Worth,
    ];

    /// Does one slice of the long work that this page needs and returns the share done, between 0 and 1.
    /// Returns `None` once only the blocks are left to make. Skipping this gives the same blocks, later.
    #[must_use]
    pub fn prepare(self, subject: &Subject) -> Option<f64> {
        match self {
            Self::Closer => subject.draw_next_sample(),
            Self::SheetForBuyer | Self::SheetForConservation => {
                subject.solve_next(Sheet::WithoutChanges)
            }
            Self::SheetForClient | Self::SheetForFile => subject.solve_next(Sheet::WithChanges),
            _ => None,
        }
    }

    /// Builds the page as blocks.
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
            Self::Places => placing::page(subject),
            Self::Record => record::page(subject),
            Self::SheetForBuyer => sheet_buyer::page(subject),
            Self::SheetForClient => sheet_client::page(subject),
            Self::SheetForFile => sheet_file::page(subject),
            Self::SheetForConservation => sheet_conservation::page(subject),
            Self::Trace => ledger_trace::page(subject),
            Self::Why => why::page(subject),
            Self::Worth => money::page(subject),
        }
    }
}
