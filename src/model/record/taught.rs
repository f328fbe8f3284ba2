//! Figures taught by closed pieces: a layer between the shipped figures and the person's own.
//!
//! The shell hands them in beside the record; no file holds them. Invariant: only figures of the closed
//! list in [`is_teachable`] are among them, so nothing learnt ever moves a rule of safety.

use crate::ledger::FigureId;
use crate::terms::ShortSort;

/// One taught figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TaughtFigure {
    /// Which.
    pub figure: FigureId,
    /// Lower end.
    pub low: f64,
    /// Middle.
    pub value: f64,
    /// Upper end.
    pub high: f64,
}

/// The taught layer. Empty when nothing is taught.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TaughtFigures {
    figures: Vec<TaughtFigure>,
    /// How many closed pieces taught them.
    pub pieces: usize,
}

/// Beginnings of the ids that may be taught.
const TEACHABLE: [&str; 7] = [
    "value.wear.",
    "value.replated.",
    "value.factor.",
    "value.median.",
    "value.guess_bias.",
    "cost.",
    "work.hours.",
];
/// Single figures that may be taught.
const TEACHABLE_ONE: [FigureId; 11] = [
    FigureId::VALUE_AFTER_REPAIR,
    FigureId::VALUE_DETAIL_AFTER_REPLATE,
    FigureId::VALUE_SALE_SD,
    FigureId::VALUE_SINGLE_GUESS_SPREAD,
    FigureId::VALUE_PRIOR_BETA,
    FigureId::VALUE_RETAIL_OVER_HAMMER,
    FigureId::FEE_COMMISSION,
    FigureId::FEE_LOT,
    FigureId::FEE_VAT,
    FigureId::FEE_INSURANCE,
    FigureId::FEE_SOLD,
];

/// Whether closed pieces may move a figure: prices, bills, hours and fees only.
#[must_use]
pub fn is_teachable(figure: FigureId) -> bool {
    TEACHABLE_ONE.contains(&figure)
        || TEACHABLE
            .iter()
            .any(|beginning| figure.text().starts_with(beginning))
}

impl TaughtFigures {
    /// A layer. Figures that may not be taught, and ranges that are no ranges, are left out; of two
    /// entries for one figure the first stays.
    #[must_use]
    pub fn new(figures: Vec<TaughtFigure>, pieces: usize) -> Self {
        let mut kept: Vec<TaughtFigure> = Vec::new();
        for taught in figures {
            let range = [taught.low, taught.value, taught.high];
            let sound = range.iter().all(|x| x.is_finite() && *x >= 0.0)
                && range.windows(2).all(|w| w[0] <= w[1]);
            let known = kept.iter().any(|other| other.figure == taught.figure);
            if sound && !known && is_teachable(taught.figure) {
                kept.push(taught);
            }
        }
        kept.order_by_key(|taught| taught.figure);
        let pieces = if kept.is_empty() { 0 } else { pieces };
        Self {
            figures: kept,
            pieces,
        }
    }

    /// The taught figures, in order.
    #[must_use]
    pub fn figures(&self) -> &[TaughtFigure] {
        &self.figures
    }

    /// What a figure is taught, by its id.
    #[must_use]
    pub fn of(&self, figure: &str) -> Option<&TaughtFigure> {
        let id = FigureId::parse(figure)?;
        self.figures.iter().find(|taught| taught.figure == id)
    }

    /// Whether nothing is taught.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.figures.is_empty()
    }

    /// A short name that tells this layer from others: 64 bits of the FNV-1a hash of its text; empty for
    /// the empty layer.
    #[must_use]
    pub fn digest(&self) -> String {
        if self.is_empty() {
            return String::new();
        }
        let mut hash = 0xcbf2_9ce4_8422_2325_u64;
        for byte in self.to_text().bytes() {
            hash = (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
        format!("{hash:016x}")
    }

    /// The layer as text, to be kept by the shell: the number of pieces, then `id=low/value/high` for
    /// each figure, each on a line of its own. Empty for the empty layer.
    #[must_use]
    pub fn to_text(&self) -> String {
        if self.is_empty() {
            return String::new();
        }
        let mut text = self.pieces.to_string();
        for taught in &self.figures {
            let TaughtFigure {
                low, value, high, ..
            } = taught;
            let range = [low, value, high].map(f64::to_string).join("/");
            text = [&text, "\n", taught.figure.text(), "=", &range].concat();
        }
        text
    }

    /// A layer from its text. Lines that cannot be used are left out.
    #[must_use]
    pub fn parse(text: &str) -> Self {
        let mut lines = text.lines();
        let pieces = lines
            .next()
            .and_then(|n| n.trim().parse().ok())
            .unwrap_or(0);
        let figures = lines.filter_map(|line| {
            let (id, range) = line.trim().split_once('=')?;
            let mut numbers = range.split('/').map(|n| n.parse::<f64>().ok());
            Some(TaughtFigure {
                figure: FigureId::parse(id)?,
                low: numbers.next()??,
                value: numbers.next()??,
                high: numbers.next()??,
            })
        });
        Self::new(figures.collect(), pieces)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::Ledger;

    /// Beginnings of the ids of what is never taught.
    const NEVER: [&str; 13] = [
        "guard.",
        "heat.",
        "food.",
        "solder.",
        "lead.",
        "identity.",
        "silver.",
        "bench.",
        "hazard.",
        "attribute.",
        "counsel.",
        "measure.",
        "learn.",
    ];

    #[test]
    fn nothing_but_money_can_be_taught() {
        let mut teachable = 0;
        for id in FigureId::all() {
            let never = NEVER
                .iter()
                .any(|beginning| id.text().starts_with(beginning));
            assert!(!(never && is_teachable(id)), "{id}");
            teachable += usize::from(is_teachable(id));
        }
        assert!(teachable > 150 && teachable < 250, "{teachable}");
        // Neither as a layer made in code nor as text.
        let all: Vec<TaughtFigure> = FigureId::all()
            .map(|figure| TaughtFigure {
                figure,
                low: 0.0,
                value: 0.5,
                high: 1.0,
            })
            .collect();
        let layer = TaughtFigures::new(all.clone(), 9);
        assert_eq!(layer.figures().len(), teachable);
        let lines: Vec<String> = all
            .iter()
            .map(|t| format!("\n{}=0/0.5/1", t.figure))
            .collect();
        let text = lines.concat();
        assert_eq!(TaughtFigures::parse(&["9", &text].concat()), layer);
    }

    #[test]
    fn a_layer_survives_as_text_and_broken_text_gives_what_can_be_used() {
        let commission = Ledger::standard().figure(FigureId::FEE_COMMISSION);
        let one = TaughtFigure {
            figure: FigureId::FEE_COMMISSION,
            low: commission.low,
            value: 0.1 + 0.02,
            high: 0.3,
        };
        let layer = TaughtFigures::new(vec![one], 4);
        assert_eq!(TaughtFigures::parse(&layer.to_text()), layer);
        assert_eq!(layer.digest().len(), 16);
        for broken in [
            "",
            "x",
            "3\nfee.lot",
            "3\nfee.lot=1/2",
            "3\nfee.lot=3/2/1",
            "3\nfee.lot=a/b/c",
        ] {
            let read = TaughtFigures::parse(broken);
            assert!(read.is_empty() && read.digest().is_empty(), "{broken}");
            assert_eq!(read, TaughtFigures::default());
        }
        assert_eq!(
            TaughtFigures::parse("3\nfee.lot=1/2/NaN\nfee.vat=0.1/0.2/0.2")
                .figures()
                .len(),
            1
        );
    }
}
