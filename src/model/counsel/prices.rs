//! The cost of each treatment in every draw: a quote as typed, if there is one, or else the ledger's wide
//! range for such work.

use super::column::Column;
use super::sample::{Dim, Law, Sample};
use crate::ledger::{FigureId, Ledger};
use crate::record::{Case, Covers, Doer, Form};
use crate::treatment::{Fault, Faults, Found, Price, Size, Trade, Treatment, work};

/// A price that was quoted.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct QuotedPrice {
    /// The treatments it is for, each once.
    pub(super) treatments: Vec<Treatment>,
    low: Option<f64>,
    /// The price, without carriage.
    pub(super) likely: f64,
    high: Option<f64>,
    post: f64,
    fixed: bool,
    /// Whether the price includes the cleaning that accompanies the work.
    pub(super) with_cleaning: bool,
}

impl QuotedPrice {
    /// Adds the price of the same work on other parts.
    fn with(&mut self, other: &Self) {
        let ends = |a: Option<f64>, b: Option<f64>| {
            (a.is_some() || b.is_some())
                .then(|| a.unwrap_or(self.likely) + b.unwrap_or(other.likely))
        };
        self.low = ends(self.low, other.low);
        self.high = ends(self.high, other.high);
        self.likely += other.likely;
        self.post += other.post;
        self.fixed &= other.fixed;
    }

    /// The price as typed, with carriage on top.
    pub(super) fn total(&self) -> f64 {
        self.likely + self.post
    }
}

/// Every price of a case.
pub(super) struct Prices<'a> {
    case: &'a Case,
    ledger: &'a Ledger,
    sample: &'a Sample,
    /// Factor on every cost.
    moved: f64,
    quoted: Vec<QuotedPrice>,
    /// The quotes cover the whole record, not this piece alone.
    quoted_for_all: bool,
}

impl<'a> Prices<'a> {
    /// The prices of the case's quotes.
    pub(super) fn new(case: &'a Case, ledger: &'a Ledger, sample: &'a Sample, moved: f64) -> Self {
        let quoted = case
            .quotes
            .iter()
            .map(|q| QuotedPrice {
                treatments: q.treatments.clone(),
                low: q.low,
                likely: q.likely,
                high: q.high,
                post: if q.post_included { 0.0 } else { q.post },
                fixed: q.fixed,
                with_cleaning: q.covers == Covers::WithCleaning,
            })
            .collect();
        Self {
            case,
            ledger,
            sample,
            moved,
            quoted,
            quoted_for_all: false,
        }
    }

    /// The prices of the same work on one of several pieces.
    pub(super) fn for_one_of_several(&self, case: &'a Case) -> Self {
        Self {
            case,
            quoted: self.quoted.clone(),
            quoted_for_all: true,
            ..*self
        }
    }

    /// The same prices for a case in which someone else would do the work.
    pub(super) fn of(self, case: &'a Case) -> Self {
        Self { case, ..self }
    }

    /// The prices of a proposal: prices given with its steps come before the quotes.
    pub(super) fn of_proposal(&self) -> Self {
        let mut quoted: Vec<QuotedPrice> = Vec::new();
        for step in &self.case.proposal.steps {
            let by_id = step.quote.as_ref().and_then(|id| {
                let quotes = &self.case.quotes;
                quotes.iter().position(|q| q.id.as_ref() == Some(id))
            });
            if let Some(likely) = step.likely.or(step.low).or(step.high) {
                let of_step = QuotedPrice {
                    treatments: vec![step.treatment],
                    low: step.low,
                    likely,
                    high: step.high,
                    post: 0.0,
                    fixed: step.fixed,
                    with_cleaning: false,
                };
                // The same work on several parts, with a price for each, costs the sum of the prices.
                let same = |t: &&mut QuotedPrice| t.treatments == of_step.treatments;
                match quoted.iter_mut().find(same) {
                    Some(before) => before.with(&of_step),
                    None => quoted.push(of_step),
                }
            } else if let Some(of_quote) = by_id.and_then(|at| self.quoted.get(at)) {
                quoted.push(of_quote.clone());
            }
        }
        quoted.extend(self.quoted.iter().cloned());
        Self { quoted, ..*self }
    }

    /// The price quoted for one treatment alone.
    pub(super) fn quote(&self, t: Treatment) -> Option<&QuotedPrice> {
        self.quoted.iter().find(|quoted| quoted.treatments == [t])
    }

    /// Prices that cover several treatments together, or that include the cleaning.
    pub(super) fn bundles(&self) -> impl Iterator<Item = &QuotedPrice> {
        let several = |quoted: &&QuotedPrice| quoted.treatments.len() > 1 || quoted.with_cleaning;
        self.quoted.iter().filter(several)
    }

    /// Whether a price was quoted for it, alone or with others.
    pub(super) fn is_quoted(&self, t: Treatment) -> bool {
        self.quoted
            .iter()
            .any(|quoted| quoted.treatments.contains(&t))
    }

    /// A quoted price in every draw. A fixed price and a range are used as typed; any other price may
    /// overrun.
    pub(super) fn of_quote(&self, quoted: &QuotedPrice) -> Column {
        let (law, dim, times) = if quoted.low.is_some() || quoted.high.is_some() {
            let low = quoted.low.unwrap_or(quoted.likely).min(quoted.likely);
            let high = quoted.high.unwrap_or(quoted.likely).max(quoted.likely);
            let dim = quoted
                .treatments
                .first()
                .map_or(Dim::CostRepair, |t| dim_of(*t));
            (Law::entered(low, quoted.likely, high), dim, 1.0)
        } else if quoted.fixed {
            (Law::Point(quoted.likely), Dim::Overrun, 1.0)
        } else {
            let overrun = self.ledger.figure(FigureId::COST_OVERRUN);
            (Law::of(overrun), Dim::Overrun, quoted.likely)
        };
        self.sample
            .moved(law, dim, times * self.moved, quoted.post * self.moved)
    }

    /// The cost of one treatment on the faults it serves, in every draw; `None` if it is free.
    pub(super) fn cost(&self, t: Treatment, served: &[&Found]) -> Option<Column> {
        if let Some(quoted) = self.quote(t).filter(|_| !self.quoted_for_all) {
            return Some(self.of_quote(quoted))
                .filter(|_| quoted.likely > 0.0 || quoted.post > 0.0);
        }
        let (id, times) = self.estimate(t, served)?;
        let law = Law::of(self.ledger.figure(id));
        let free = law == Law::Point(0.0);
        (!free).then(|| self.sample.moved(law, dim_of(t), times * self.moved, 0.0))
    }

    /// The figure for the cost without a quote, and its multiplier.
    fn estimate(&self, t: Treatment, served: &[&Found]) -> Option<(FigureId, f64)> {
        estimate((self.case, self.ledger), t, served)
    }
}

/// The figure for the cost without a quote, and its multiplier.
pub(super) fn estimate(
    (case, ledger): (&Case, &Ledger),
    t: Treatment,
    served: &[&Found],
) -> Option<(FigureId, f64)> {
    let work = work(t)?;
    let large_form = case.piece.form.is_some_and(Form::large);
    let large_fault = served.iter().any(|f| f.size == Size::Large);
    let on_large = |figure: FigureId| {
        if large_form {
            ledger.value(figure)
        } else {
            1.0
        }
    };
    let parts: usize = served.iter().map(|f| f.count()).sum();
    let more = parts.max(1) - 1;
    let further = served
        .iter()
        .map(|f| f.further)
        .fold(0, u32::saturating_add);
    let further = f64::from(further).min(ledger.value(FigureId::COST_MORE_PLACES_MOST));
    let by_parts = 1.0
        + ledger.value(FigureId::COST_MORE_PARTS) * more as f64
        + ledger.value(FigureId::COST_MORE_PLACES) * further;
    let mends_split = served.iter().any(|f| f.fault == Fault::Split);
    Some(match work.price {
        Price::Cleaning if case.aim.who_does(t) == Some(Doer::Workshop) => {
            (FigureId::COST_T03_PAID, on_large(FigureId::COST_LARGE_WORK))
        }
        Price::Cleaning => (FigureId::COST_T03_OWNER, 1.0),
        Price::Keeping(sound, corroding) => {
            let corrodes = served.iter().any(|f| f.fault == Fault::Corrosion);
            (if corrodes { corroding } else { sound }, 1.0)
        }
        Price::Figure(id) => match t {
            // One test, one coat, one set of baths, however many parts.
            Treatment::Wash
            | Treatment::Foam
            | Treatment::LacquerOff
            | Treatment::TestLead
            | Treatment::LocalPlate => (id, 1.0),
            _ => (id, by_parts),
        },
        Price::Large(id) => (id, on_large(FigureId::COST_LARGE_WORK)),
        Price::Large2(small, large) => (
            if large_fault { large } else { small },
            by_parts * on_large(FigureId::COST_LARGE_WORK),
        ),
        Price::BySize(small, large) => (if large_fault { large } else { small }, by_parts),
        Price::Joint(id) => (
            if mends_split && t == Treatment::Solder {
                FigureId::COST_T09_SPLIT
            } else {
                id
            },
            by_parts,
        ),
        Price::Plating(id) => (id, on_large(FigureId::COST_LARGE_FACTOR)),
    })
}

/// Costs of works of one trade are high or low together.
fn dim_of(t: Treatment) -> Dim {
    match work(t).map(|w| w.trade) {
        Some(Trade::Repair) => Dim::CostRepair,
        Some(Trade::Remove) => Dim::CostRemove,
        Some(Trade::Plate) => Dim::CostReplate,
        Some(Trade::Care) | None => Dim::CostClean,
    }
}

/// The faults a treatment answers, as found.
pub(super) fn answered(t: Treatment, faults: &Faults) -> Vec<&Found> {
    let answers = work(t).map_or(&[][..], |w| w.answers);
    let found = faults.0.iter();
    found.filter(|f| answers.contains(&f.fault)).collect()
}
