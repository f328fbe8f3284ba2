//! Sales of like pieces, each brought to what an undamaged one would have been knocked down for.

use super::class::Class;
use super::condition::ConditionTable;
use super::factor_rows as rows;
use super::posterior::PriceLaw;
use crate::ledger::{FigureId, Ledger};
use crate::record::{Case, Comparable, Market, Similar};
use crate::silver::bleed_range;
use crate::terms::Kind;
use crate::terms::{Dents, Joint, SoldAs, Tarnish};

/// A comparable after adjustment. Factors are what the price was divided by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adjusted {
    /// Its place in the list of the file.
    pub place: usize,
    /// Its own condition against an undamaged one.
    pub condition: f64,
    /// What its sort of price is against a hammer price.
    pub channel: f64,
    /// Change of prices since.
    pub drift: f64,
    /// ln of the adjusted price.
    pub ln: f64,
    /// How much it counts, 0 to 1.
    pub weight: f64,
}

/// What the sales of a case tell: the law before them, after them, and each sale adjusted.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparison {
    /// From the guess, or from the usual value of such pieces.
    pub before: PriceLaw,
    /// With the sales.
    pub after: PriceLaw,
    /// The sales that count, in the order entered.
    pub sales: Vec<Adjusted>,
}

impl Comparison {
    /// `classes`: the chance of each value class, in the order of [`Class::ALL`]; they sum to 1.
    #[must_use]
    pub fn new(case: &Case, ledger: &Ledger, classes: &[f64; 8]) -> Self {
        let before = prior(&case.market, ledger, classes);
        let mut class = Class::A2;
        let mut most = 0.0;
        for (c, p) in Class::ALL.into_iter().zip(classes) {
            if *p > most {
                (class, most) = (c, *p);
            }
        }
        let sales: Vec<Adjusted> = case
            .comparables
            .iter()
            .map(|c| adjusted(c, class, ledger))
            .collect();
        let data: Vec<(f64, f64)> = sales.iter().map(|s| (s.ln, s.weight)).collect();
        Self {
            before,
            after: before.after(&data),
            sales,
        }
    }

    /// What is known without the sale at this place among those that count.
    #[must_use]
    pub fn without(&self, i: usize) -> PriceLaw {
        let data: Vec<(f64, f64)> = self
            .sales
            .iter()
            .enumerate()
            .filter(|(j, _)| *j != i)
            .map(|(_, s)| (s.ln, s.weight))
            .collect();
        self.before.after(&data)
    }

    /// How far a sale moves the middle: the ratio of the median price with it to that without it.
    #[must_use]
    pub fn pull(&self, i: usize) -> f64 {
        libm::exp(self.after.mu - self.without(i).mu)
    }

    /// The chance of a price at least as far out as this sale, were it the next one after the others:
    /// two tails of the predictive t law. Small means that it does not fit.
    #[must_use]
    pub fn fit(&self, i: usize) -> f64 {
        let law = self.without(i).next();
        self.sales.get(i).map_or(1.0, |s| {
            let below = law.cdf(s.ln);
            2.0 * below.min(1.0 - below)
        })
    }
}

/// The middle of what a person thinks of the price: their likely value, else from the ends they gave.
#[must_use]
pub fn guess(market: &Market, ledger: &Ledger) -> Option<f64> {
    let spread = ledger.value(FigureId::VALUE_SINGLE_GUESS_SPREAD).max(1.0);
    market.likely.or(match (market.low, market.high) {
        (Some(low), Some(high)) => Some((low * high).sqrt()),
        (Some(low), None) => Some(low * spread),
        (None, Some(high)) => Some(high / spread),
        (None, None) => None,
    })
}

/// How many sales a guess counts as: as the ledger says where only one number was given; with both ends, by
/// the square of how wide the usual range is against theirs, within the ledger's range. The number of
/// equal sales that tell a mean as well is in proportion to one over the square of its spread.
fn sales_of_guess(market: &Market, ledger: &Ledger) -> f64 {
    let usual = ledger.figure(FigureId::VALUE_PRIOR_SALES);
    let (Some(low), Some(high)) = (market.low, market.high) else {
        return usual.value;
    };
    let spread = ledger.value(FigureId::VALUE_SINGLE_GUESS_SPREAD).max(1.0);
    let width = libm::log(high / low);
    // Ends that are the same, or no ends: as sure as one can be.
    if !(width > 0.0 && width.is_finite()) {
        return usual.high;
    }
    let times = 2.0 * libm::log(spread) / width;
    (usual.value * times * times).clamp(usual.low, usual.high)
}

/// The law before any sale: about the guess, counted as so many sales, else about the usual values of the
/// classes it may be, counted as less.
fn prior(market: &Market, ledger: &Ledger, classes: &[f64; 8]) -> PriceLaw {
    let (mu, sales) = match guess(market, ledger) {
        Some(guess) => {
            let taught = Class::ALL
                .into_iter()
                .zip(classes)
                .map(|(c, p)| p * libm::log(ledger.value(c.guess_bias()).max(1e-6)));
            let level = libm::log(guess) + taught.sum::<f64>();
            (level, sales_of_guess(market, ledger))
        }
        None => (
            Class::ALL
                .into_iter()
                .zip(classes)
                .map(|(c, p)| {
                    let median = ledger.value(c.median());
                    p * libm::log(median.max(1e-6))
                })
                .sum(),
            ledger.value(FigureId::VALUE_PRIOR_SALES_VAGUE),
        ),
    };
    let least = |id: FigureId, least: f64| ledger.value(id).max(least);
    PriceLaw {
        mu,
        kappa: sales.max(0.01),
        alpha: least(FigureId::VALUE_PRIOR_ALPHA, 1.0),
        beta: least(FigureId::VALUE_PRIOR_BETA, 1e-4),
    }
}

/// One sale adjusted: ln P - ln M - ln k + g (years since), with M its condition, k its channel, g the
/// yearly growth of such prices; its weight is its similarity, times less for another kind and for an
/// asking price, which nobody has paid, halved with each half-life.
fn adjusted(sale: &Comparable, class: Class, ledger: &Ledger) -> Adjusted {
    // Of another kind it has that kind's factors; an early piece is compared with early ones.
    let (own, elsewhere) = match sale.kind {
        None => (class, false),
        Some(kind) => {
            let own = Class::of(kind, class == Class::A1, class == Class::C1);
            (own, own != class)
        }
    };
    let years = sale.age_years.unwrap_or(0.0);
    let condition = condition(sale, own, ledger);
    let channel = channel(sale.sold_as, ledger);
    // What the price would be a year later, over what it was.
    let drift = libm::exp(-ledger.value(FigureId::VALUE_DRIFT) * years);
    let similar = match sale.similar {
        Similar::Share(share) => share,
        Similar::Close => ledger.value(FigureId::VALUE_COMPARABLE_SIMILAR_CLOSE),
        Similar::Fair => ledger.value(FigureId::VALUE_COMPARABLE_SIMILAR_FAIR),
        Similar::Loose => ledger.value(FigureId::VALUE_COMPARABLE_SIMILAR_LOOSE),
    };
    let other = if elsewhere {
        ledger.value(FigureId::VALUE_COMPARABLE_OTHER_KIND)
    } else {
        1.0
    };
    let asked = if sale.sold_as == SoldAs::Asking {
        ledger
            .value(FigureId::VALUE_COMPARABLE_ASKING)
            .clamp(0.0, 1.0)
    } else {
        1.0
    };
    let half_life = ledger.value(FigureId::VALUE_COMPARABLE_HALF_LIFE).max(0.01);
    Adjusted {
        place: sale.place,
        condition,
        channel,
        drift,
        ln: libm::log(sale.price / (condition * channel * drift)),
        weight: similar * other * asked * libm::exp2(-years / half_life),
    }
}

/// What a sort of price is against a hammer price. With premium: 1 + premium (1 + tax on it).
#[must_use]
pub fn channel(sold_as: SoldAs, ledger: &Ledger) -> f64 {
    let retail = ledger.value(FigureId::VALUE_RETAIL_OVER_HAMMER).max(0.01);
    match sold_as {
        SoldAs::Hammer => 1.0,
        SoldAs::WithPremium => {
            1.0 + ledger.value(FigureId::FEE_PREMIUM) * (1.0 + ledger.value(FigureId::FEE_VAT))
        }
        SoldAs::Retail => retail,
        SoldAs::Asking => retail / ledger.value(FigureId::VALUE_COMPARABLE_BARGAIN).max(0.01),
    }
}

/// Condition of a comparable at the middles of the factors and the usual buyers: what is not said is
/// taken as sound.
fn condition(sale: &Comparable, class: Class, ledger: &Ledger) -> f64 {
    let bare = sale
        .bleed
        .map_or(0.0, |b| bleed_range(Some(b), ledger).likely);
    let table = ConditionTable::of(class, ledger);
    let wear = match sale.kind {
        Some(Kind::Sil) => 1.0,
        // Replated and worn again: it wears like electroplate on copper.
        Some(Kind::Rfp) => {
            table.replated(0.0) * ConditionTable::of(Class::C4, ledger).wear(bare, 0.0)
        }
        _ => table.wear(bare, 0.0),
    };
    let tarnish = match sale.tarnish {
        Some(Tarnish::Brown | Tarnish::Purple | Tarnish::Blue) => Some(rows::TARNISH_COLOURED),
        Some(Tarnish::Grey | Tarnish::Black) => Some(rows::TARNISH_HEAVY),
        _ => None,
    };
    let dents = match sale.dents {
        Some(Dents::Minor) => Some(rows::DENTS_MINOR),
        Some(Dents::Moderate) => Some(rows::DENTS_MODERATE),
        Some(Dents::Split) => Some(rows::SPLIT),
        _ => None,
    };
    let joint = match sale.joint {
        Some(Joint::Open | Joint::Leaking) => Some(rows::LEAK),
        Some(Joint::GreyRepair) => Some(rows::SOLDER_REPAIR),
        Some(Joint::NeatRepair) => Some(rows::NEAT_REPAIR),
        _ => None,
    };
    let factors = [tarnish, dents, joint]
        .map(|row| row.map_or(1.0, |by_group| ledger.value(by_group[class.group_place()])));
    let [a, b, c] = factors;
    (wear * a * b * c).max(ledger.value(FigureId::VALUE_FLOOR).max(1e-3))
}
