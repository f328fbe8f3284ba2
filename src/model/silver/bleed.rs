//! How much base metal shows, as a range of the bare share of a part.

use crate::ledger::{FigureId, Ledger};
use crate::record::Bleed;
use crate::terms::BleedWord;

/// 10th, 50th and 90th percentile of the bare share of a part, each 0 to 0.99.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BleedRange {
    /// 10th percentile.
    pub low: f64,
    /// Median.
    pub likely: f64,
    /// 90th percentile.
    pub high: f64,
}

/// The figure behind each word, in the order of [`BleedWord::ALL`].
const WORDS: [FigureId; BleedWord::IDS.len()] =
    FigureId::family("silver.bleed.", BleedWord::IDS, "");

/// Reads an answer as a range. Each word has its figure in the ledger. A share judged by eye is spread both
/// ways by the factor in the ledger, applied to the smaller of the bare and covered shares. A count brings
/// its own interval. No answer gives the widest range.
#[must_use]
pub fn bleed_range(bleed: Option<Bleed>, ledger: &Ledger) -> BleedRange {
    let figure = |id: FigureId| {
        let f = ledger.figure(id);
        BleedRange {
            low: f.low,
            likely: f.value,
            high: f.high,
        }
    };
    match bleed {
        None => figure(FigureId::SILVER_BLEED_UNKNOWN),
        Some(Bleed::Word(word)) => figure(WORDS[word as usize]),
        Some(Bleed::Fraction(p)) if p < ledger.value(FigureId::SILVER_F_NONE) => {
            figure(FigureId::SILVER_BLEED_NONE)
        }
        Some(Bleed::Fraction(p)) => {
            let likely = p.min(0.99);
            let spread = ledger.value(FigureId::SILVER_BLEED_JUDGED_SPREAD).max(1.0);
            // An estimate by eye errs by a factor on the smaller of the bare and covered shares.
            BleedRange {
                low: (likely / spread).max(1.0 - spread * (1.0 - likely)),
                likely,
                high: (spread * likely)
                    .min(1.0 - (1.0 - likely) / spread)
                    .min(0.99),
            }
        }
        Some(Bleed::Counted { low, likely, high }) => BleedRange {
            low: low.min(0.99),
            likely: likely.min(0.99),
            high: high.min(0.99),
        },
    }
}

impl BleedRange {
    /// The range with every share multiplied by `factor` and clamped to 0 to 0.99.
    #[must_use]
    pub fn scaled(self, factor: f64) -> Self {
        let by = |f: f64| (f * factor).clamp(0.0, 0.99);
        Self {
            low: by(self.low),
            likely: by(self.likely),
            high: by(self.high),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_answer_gives_an_ordered_range_below_one() {
        let ledger = Ledger::standard();
        let words = BleedWord::ALL.iter().map(|w| Some(Bleed::Word(*w)));
        let shares = [0.0, 0.001, 0.05, 0.7, 1.0].map(|p| Some(Bleed::Fraction(p)));
        let counted = [
            Some(Bleed::Counted {
                low: 0.0,
                likely: 1.0,
                high: 1.0,
            }),
            None,
        ];
        for bleed in words.chain(shares).chain(counted) {
            let r = bleed_range(bleed, ledger);
            assert!(
                0.0 <= r.low && r.low <= r.likely && r.likely <= r.high && r.high < 1.0,
                "{bleed:?}: {r:?}"
            );
        }
    }

    #[test]
    fn words_for_more_bare_metal_mean_a_greater_share() {
        let likely =
            |word: &BleedWord| bleed_range(Some(Bleed::Word(*word)), Ledger::standard()).likely;
        assert!(
            BleedWord::ALL
                .windows(2)
                .all(|pair| likely(&pair[0]) < likely(&pair[1]))
        );
    }
}
