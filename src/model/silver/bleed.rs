//! How much base metal shows, as a range.

use crate::ledger::Ledger;
use crate::record::{Bleed, BleedWord};

/// 10th, 50th and 90th percentile of the bare share of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BleedRange {
    /// 1 in 10 that it is less.
    pub low: f64,
    /// As likely more as less.
    pub likely: f64,
    /// 1 in 10 that it is more.
    pub high: f64,
}

/// Reads an answer as a range. Words have their figures in the ledger; a share judged by eye is
/// spread both ways by the ledger's factor, on the smaller of bare and covered; a count brings its own interval.
#[must_use]
pub fn bleed_range(bleed: Option<Bleed>, ledger: &Ledger) -> BleedRange {
    let figure = |word: &str| {
        let f = ledger.figure(&format!("silver.bleed.{word}"));
        BleedRange {
            low: f.low,
            likely: f.value,
            high: f.high,
        }
    };
    match bleed {
        None => figure("unknown"),
        Some(Bleed::Word(word)) => figure(match word {
            BleedWord::None => "none",
            BleedWord::Slight => "slight",
            BleedWord::Some => "some",
            BleedWord::Much => "much",
            BleedWord::Most => "most",
        }),
        Some(Bleed::Fraction(p)) if p < ledger.value("silver.f_none") => figure("none"),
        Some(Bleed::Fraction(p)) => {
            let likely = p.min(0.99);
            let spread = ledger.value("silver.bleed.judged_spread").max(1.0);
            // The eye errs by a factor on whichever is smaller, the bare or the covered share.
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
    /// The range with every share multiplied, none above 0.99.
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
    fn every_answer_gives_an_ordered_share() {
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
}
