//! The shifts: what evidence may move. Each is a distance in ln from a shipped middle.

use crate::ledger::{FigureId, Ledger, Shape};
use crate::maths::{SquareMatrix, Z10};
use crate::terms::ShortSort;
use crate::terms::Treatment;
use crate::treatment::{MishapRisk, work};
use crate::value::{
    BUYERS, Class, REPLATED_GROUPS, WEAR_ANCHORS, ln_sd, replated_figure, wear_figure,
};

/// One shift.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shift {
    /// The person's estimates of undamaged pieces of a class.
    Guess(Class),
    /// Levels from prices of like pieces.
    Comparables,
    /// Levels from the usual price of a kind.
    ClassLevel,
    /// Purchases against sales.
    Bought,
    /// Shop prices over hammer prices.
    Shop,
    /// Wear: the group of classes and the anchor, from 1.
    Wear(usize, usize),
    /// Once replated: the group and the buyer.
    Replated(usize, usize),
    /// Softened detail after replating.
    Detail,
    /// What is left after a repair.
    AfterRepair,
    /// A row of condition factors.
    Row(FigureId),
    /// The value kept after a bad result. It is fitted beside the rest and never taught.
    Kept(FigureId),
    /// What a work costs.
    Cost(FigureId),
    /// Hours by effort.
    Hours(FigureId),
    /// Bills over quotes.
    Overrun,
    /// Several pieces sold as one, over the sum of their values.
    Lot,
    /// Prices against the usual price of a kind, for each year since that was set. It is fitted beside the rest, so
    /// that a rise of the market is not taken for a level, and never taught.
    Drift,
}

/// Shifts whose evidence is about one thing, left out as a whole while there is none.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum ShiftFamily {
    Guess,
    Comparables,
    ClassLevel,
    Bought,
    Shop,
    Wear,
    Replated,
    Detail,
    AfterRepair,
    Row(&'static str),
    Kept,
    Cost,
    Hours,
    Overrun,
    Lot,
    Drift,
}

/// The row's name and its group of classes, of an id such as `value.factor.leak.C2`.
fn row_and_group(id: FigureId) -> (&'static str, &'static str) {
    let text = id.text();
    let row = text.strip_prefix("value.factor.").unwrap_or(text);
    row.rsplit_once('.').unwrap_or((row, ""))
}

impl Shift {
    /// Every shift, in order.
    #[must_use]
    pub fn all() -> Vec<Self> {
        let mut all: Vec<Self> = Class::ALL.into_iter().map(Self::Guess).collect();
        all.extend([
            Self::Comparables,
            Self::ClassLevel,
            Self::Bought,
            Self::Shop,
        ]);
        all.extend([Self::Detail, Self::AfterRepair, Self::Overrun]);
        all.extend([Self::Lot, Self::Drift]);
        for group in 0..Class::GROUPS.len() {
            all.extend((1..WEAR_ANCHORS).map(|anchor| Self::Wear(group, anchor)));
        }
        for group in 0..REPLATED_GROUPS.len() {
            all.extend((0..BUYERS.len()).map(|buyer| Self::Replated(group, buyer)));
        }
        let ledger = Ledger::standard();
        for id in FigureId::all() {
            let text = id.text();
            let figure = ledger.figure(id);
            if text.starts_with("value.factor.") {
                all.push(Self::Row(id));
            } else if text.starts_with("cost.")
                && id != FigureId::COST_OVERRUN
                && figure.shape != Shape::Point
                && figure.low > 0.0
            {
                all.push(Self::Cost(id));
            } else if text.starts_with("work.hours.") {
                all.push(Self::Hours(id));
            }
        }
        for work in Treatment::ALL.into_iter().filter_map(work) {
            if let MishapRisk::Figures(mishaps) = work.risk {
                all.extend(mishaps.kept.map(Self::Kept));
            }
        }
        all.order_by(Ord::cmp);
        all.dedup();
        all
    }

    pub(super) fn family(self) -> ShiftFamily {
        match self {
            Self::Guess(_) => ShiftFamily::Guess,
            Self::Comparables => ShiftFamily::Comparables,
            Self::ClassLevel => ShiftFamily::ClassLevel,
            Self::Bought => ShiftFamily::Bought,
            Self::Shop => ShiftFamily::Shop,
            Self::Wear(..) => ShiftFamily::Wear,
            Self::Replated(..) => ShiftFamily::Replated,
            Self::Detail => ShiftFamily::Detail,
            Self::AfterRepair => ShiftFamily::AfterRepair,
            Self::Row(id) => ShiftFamily::Row(row_and_group(id).0),
            Self::Kept(_) => ShiftFamily::Kept,
            Self::Cost(_) => ShiftFamily::Cost,
            Self::Hours(_) => ShiftFamily::Hours,
            Self::Overrun => ShiftFamily::Overrun,
            Self::Lot => ShiftFamily::Lot,
            Self::Drift => ShiftFamily::Drift,
        }
    }

    /// The figures it moves; none for a shift that only stands beside the others.
    #[must_use]
    pub fn figures(self) -> Vec<FigureId> {
        match self {
            Self::Guess(class) => vec![class.guess_bias()],
            Self::ClassLevel => Class::ALL.map(Class::median).to_vec(),
            Self::Shop => vec![FigureId::VALUE_RETAIL_OVER_HAMMER],
            Self::Wear(group, anchor) => (0..BUYERS.len())
                .map(|buyer| wear_figure(buyer, anchor, group))
                .collect(),
            Self::Replated(group, buyer) => vec![replated_figure(buyer, group)],
            Self::Detail => vec![FigureId::VALUE_DETAIL_AFTER_REPLATE],
            Self::AfterRepair => vec![FigureId::VALUE_AFTER_REPAIR],
            Self::Row(id) | Self::Cost(id) | Self::Hours(id) => vec![id],
            Self::Overrun => vec![FigureId::COST_OVERRUN],
            Self::Comparables | Self::Bought | Self::Kept(_) | Self::Lot | Self::Drift => {
                Vec::new()
            }
        }
    }

    /// Whether it is about bills and hours, of which half the range is from job to job.
    #[must_use]
    pub fn is_of_work(self) -> bool {
        matches!(self, Self::Cost(_) | Self::Hours(_) | Self::Overrun)
    }

    /// How far off the shipped middle may be, as a standard deviation in ln (of a drift: in ln a year).
    #[must_use]
    pub fn prior_sd(self) -> f64 {
        let ledger = Ledger::standard();
        let of = |id: FigureId| ln_sd(ledger.figure(id));
        let share = ledger.value(FigureId::LEARN_MIDDLE_SHARE).sqrt();
        match self {
            Self::Guess(_) => ledger.value(FigureId::LEARN_LEVEL_GUESS),
            Self::Comparables => ledger.value(FigureId::LEARN_LEVEL_COMPS),
            Self::ClassLevel => ledger.value(FigureId::LEARN_LEVEL_CLASS),
            Self::Bought => ledger.value(FigureId::LEARN_LEVEL_BUY),
            Self::Lot => ledger.value(FigureId::LEARN_LEVEL_LOT),
            Self::Drift => {
                let drift = ledger.figure(FigureId::VALUE_DRIFT);
                (drift.high - drift.low) / (2.0 * Z10)
            }
            Self::Shop => of(FigureId::VALUE_RETAIL_OVER_HAMMER),
            Self::Wear(group, anchor) => {
                let buyers = BUYERS.len();
                let sum: f64 = (0..buyers).map(|b| of(wear_figure(b, anchor, group))).sum();
                sum / buyers as f64
            }
            Self::Replated(group, buyer) => of(replated_figure(buyer, group)),
            Self::Detail => of(FigureId::VALUE_DETAIL_AFTER_REPLATE),
            Self::AfterRepair => of(FigureId::VALUE_AFTER_REPAIR),
            Self::Row(id) | Self::Kept(id) => of(id),
            Self::Cost(id) | Self::Hours(id) => share * of(id),
            Self::Overrun => share * of(FigureId::COST_OVERRUN),
        }
    }

    /// Job to job scatter of a work's bill or hours around its middle, in ln.
    #[must_use]
    pub fn job_sd(self) -> f64 {
        let share = Ledger::standard().value(FigureId::LEARN_MIDDLE_SHARE);
        self.prior_sd() * ((1.0 - share) / share).sqrt()
    }

    /// Correlation of two shifts before any evidence.
    fn correlation(self, other: Self) -> f64 {
        if self == other {
            return 1.0;
        }
        let value = |id: FigureId| Ledger::standard().value(id);
        let unless = |same: bool, id: FigureId| if same { 1.0 } else { value(id) };
        let group = FigureId::LEARN_TOGETHER_GROUP;
        match (self, other) {
            (Self::Guess(_), Self::Guess(_)) => value(FigureId::LEARN_TOGETHER_LEVEL),
            (Self::Wear(g, a), Self::Wear(h, b)) => {
                unless(g == h, group) * unless(a == b, FigureId::LEARN_TOGETHER_WEAR)
            }
            (Self::Replated(g, a), Self::Replated(h, b)) => {
                unless(g == h, group) * unless(a == b, FigureId::LEARN_TOGETHER_BUYER)
            }
            (Self::Row(a), Self::Row(b)) if row_and_group(a).0 == row_and_group(b).0 => {
                value(group)
            }
            (Self::Kept(_), Self::Kept(_))
            | (Self::Cost(_), Self::Cost(_))
            | (Self::Hours(_), Self::Hours(_)) => value(FigureId::LEARN_TOGETHER_WORK),
            _ => 0.0,
        }
    }
}

/// The precision of these shifts before any evidence.
pub(super) fn precision(shifts: &[Shift]) -> SquareMatrix {
    let sd: Vec<f64> = shifts.iter().map(|shift| shift.prior_sd()).collect();
    SquareMatrix::from_cells(shifts.len(), |i, j| {
        shifts[i].correlation(shifts[j]) * sd[i] * sd[j]
    })
    .cholesky()
    .inverse()
}
