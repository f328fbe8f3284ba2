//! What a closed piece counts as: a price, an upper limit, a bill, hours, a result; or why it does not.

use super::shift::Shift;
use super::state::PricedPieces;
use crate::counsel::{bill_figure, mishap_figures, work_hours};
use crate::ledger::{FigureId, Ledger};
use crate::record::{
    BuyerSort, Case, Date, Done, Ending, Predicted, PredictedWhen, PriceBasis, SellAs, SoldAs,
    UnsoldAt,
};
use crate::terms::ShortSort;
use crate::terms::Treatment;
use crate::value::{Class, channel};

/// A case that may teach something, under the key its shelf knows it by.
#[derive(Clone, Debug)]
pub struct Closing {
    /// The key.
    pub id: String,
    /// The case.
    pub case: Case,
}

/// What figures are about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Topic {
    /// Prices.
    Prices,
    /// Bills.
    Bills,
    /// Hours.
    Hours,
}

/// Observations that share their scatter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scatter {
    /// Prices against the person's own estimate.
    Guess,
    /// Prices against prices of like pieces.
    Comparables,
    /// Prices against the usual price of the kind.
    Class,
    /// What a piece brought against what it cost.
    Pair,
    /// Bills.
    Bill,
    /// Bills against quotes.
    Quote,
    /// Hours.
    Hours,
}

impl Scatter {
    /// Every group, in order.
    pub const ALL: [Self; 7] = [
        Self::Guess,
        Self::Comparables,
        Self::Class,
        Self::Pair,
        Self::Bill,
        Self::Quote,
        Self::Hours,
    ];
}

/// One thing that a closed piece tells.
#[derive(Clone, Debug, PartialEq)]
pub struct Observed {
    /// What it is about.
    pub topic: Topic,
    /// What it rests on.
    pub row: Vec<(Shift, f64)>,
    /// What was seen against what was expected, in ln.
    pub y: f64,
    /// Its scatter, in ln.
    pub sd: f64,
    /// The group it shares its scatter with.
    pub scatter: Scatter,
    /// How much it counts, 0 to 1.
    pub weight: f64,
    /// It is an upper limit.
    pub censored: bool,
}

/// One work whose result is recorded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WorkResult {
    /// The work.
    pub work: Treatment,
    /// The figure of its chance.
    pub chance: FigureId,
    /// It went wrong.
    pub bad: bool,
}

/// Why something recorded of a piece does not count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum NotCounted {
    /// It was left out.
    LeftOut,
    /// The price is in another currency.
    OtherCurrency,
    /// Nothing was expected beforehand.
    NothingExpected,
    /// What was expected was frozen after the sale.
    ExpectedLater,
    /// The kind was not certain enough.
    KindUnsure,
    /// The price is not recorded, or it is nothing.
    NoPrice,
    /// An asking price is no sale.
    OnlyAsked,
    /// The sale is dated before the purchase.
    SoldBeforeBought,
    /// It stood in a shop for too short a time to say that the price was too high.
    NotLongOnOffer,
    /// Too little of its value was left.
    NearlyWorthless,
    /// A bill of nothing.
    BillOfNothing,
    /// Several pieces were sold one by one, and only one price is recorded.
    SoldApart,
    /// It says the same as another closed piece in every number.
    Copy,
}

/// What one closed piece tells.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceEvidence {
    /// Its key.
    pub id: String,
    /// What its owner calls it.
    pub name: String,
    /// What it tells.
    pub seen: Vec<Observed>,
    /// Results of its works.
    pub results: Vec<WorkResult>,
    /// What does not count, and why.
    pub not_counted: Vec<(Topic, NotCounted)>,
}

/// What every closed piece tells, in order of key. Of pieces that agree in every number the first
/// counts. `today` is the day that age is counted from.
#[must_use]
pub fn evidence(closings: &[Closing], today: Option<Date>) -> Vec<PieceEvidence> {
    let mut order: Vec<&Closing> = closings.iter().collect();
    order.order_by(|a, b| a.id.cmp(&b.id));
    let mut seen_before: Vec<Vec<u64>> = Vec::new();
    let mut all: Vec<PieceEvidence> = Vec::new();
    for closing in order {
        let mut one = of_case(closing, today);
        let numbers = numbers_of(closing, &one);
        let known = seen_before.binary_search(&numbers);
        match known {
            Ok(_) if !one.seen.is_empty() || !one.results.is_empty() => {
                let mut topics: Vec<Topic> = one.seen.iter().map(|seen| seen.topic).collect();
                topics.dedup();
                one.not_counted
                    .extend(topics.into_iter().map(|topic| (topic, NotCounted::Copy)));
                one.seen.clear();
                one.results.clear();
            }
            Ok(_) => {}
            Err(place) => seen_before.insert(place, numbers),
        }
        if !one.seen.is_empty() || !one.results.is_empty() || !one.not_counted.is_empty() {
            all.push(one);
        }
    }
    all
}

/// Everything that tells one piece from another: name, day and every number recorded.
fn numbers_of(closing: &Closing, one: &PieceEvidence) -> Vec<u64> {
    let mut numbers: Vec<u64> = one.name.bytes().map(u64::from).collect();
    let day = |on: Option<Date>| {
        on.map_or(0, |on| {
            u64::from(on.year) * 400 + u64::from(on.month) * 31 + u64::from(on.day)
        })
    };
    numbers.push(day(sold_on(&closing.case)));
    for done in &closing.case.done {
        numbers.extend(done.on.bytes().map(u64::from));
    }
    for seen in &one.seen {
        numbers.push(seen.y.to_bits());
        numbers.extend(seen.row.iter().map(|(_, x)| x.to_bits()));
    }
    numbers.extend(one.results.iter().map(|r| u64::from(r.bad)));
    numbers
}

/// The day of the sale, else that of the ending.
pub(super) fn sold_on(case: &Case) -> Option<Date> {
    case.closed.sale.on.or(case.closed.on)
}

fn of_case(closing: &Closing, today: Option<Date>) -> PieceEvidence {
    let case = &closing.case;
    let mut one = PieceEvidence {
        id: closing.id.clone(),
        name: case.piece.name.clone(),
        seen: Vec::new(),
        results: Vec::new(),
        not_counted: Vec::new(),
    };
    let left_out = case.closed.left_out;
    match case.closed.outcome {
        Some(Ending::Sold | Ending::Unsold) if left_out => {
            one.not_counted.push((Topic::Prices, NotCounted::LeftOut));
        }
        Some(Ending::Sold | Ending::Unsold) => match price(case, today) {
            Ok(seen) => one.seen.extend(seen),
            Err(why) => one.not_counted.push((Topic::Prices, why)),
        },
        _ => {}
    }
    if left_out {
        return one;
    }
    bills(case, today, &mut one);
    for done in &case.done {
        hours(done, today, &mut one);
        if let (Some(work), Some(bad), Some(class)) =
            (done.treatment, done.went_wrong, class_of(case))
            && let Some((chance, _)) = mishap_figures(work, class)
        {
            one.results.push(WorkResult { work, chance, bad });
        }
    }
    one
}

/// What was expected of the piece as it was sold: frozen when it was offered, else when work was agreed,
/// if none was done.
pub(super) fn expected_as_sold(case: &Case) -> Option<&Predicted> {
    let of = |event| case.predicted.iter().find(|p| p.event == event);
    let untouched = || of(PredictedWhen::Agreed).filter(|_| case.done.is_empty());
    of(PredictedWhen::Offered).or_else(untouched)
}

/// The class of value of the piece, as it was frozen.
fn class_of(case: &Case) -> Option<Class> {
    let mut frozen = case.predicted.iter();
    frozen.find_map(|p| PricedPieces::parse(&p.state)?.class())
}

/// How much something counts by its age: half after every so many years.
fn weight(on: Option<Date>, today: Option<Date>) -> f64 {
    let (Some(on), Some(today)) = (on, today) else {
        return 1.0;
    };
    let years = f64::from(on.days_until(today).max(0)) / 365.25;
    let half = Ledger::standard().value(FigureId::LEARN_FORGET_YEARS);
    libm::exp2(-years / half)
}

/// Whether a sale is in another currency than the piece. Nothing is converted.
pub(super) fn in_another_currency(case: &Case) -> bool {
    let (sale, piece) = (case.closed.sale.currency, case.market.currency);
    sale.is_some() && piece.is_some() && sale != piece
}

/// The price or the limit that a sale, or an offer without a buyer, tells.
fn price(case: &Case, today: Option<Date>) -> Result<Vec<Observed>, NotCounted> {
    let ledger = Ledger::standard();
    let sale = &case.closed.sale;
    if in_another_currency(case) {
        return Err(NotCounted::OtherCurrency);
    }
    let expected = expected_as_sold(case).ok_or(NotCounted::NothingExpected)?;
    let sold = case.closed.outcome == Some(Ending::Sold);
    let on = sold_on(case);
    if let (Some(on), Some(frozen)) = (on, expected.on)
        && on.days_until(frozen) > 0
    {
        return Err(NotCounted::ExpectedLater);
    }
    if let (Some(on), Some(bought)) = (on, case.stock.bought_on)
        && on.days_until(bought) > 0
    {
        return Err(NotCounted::SoldBeforeBought);
    }
    if expected
        .p
        .is_none_or(|p| p < ledger.value(FigureId::LEARN_CERTAIN_KIND))
    {
        return Err(NotCounted::KindUnsure);
    }
    let (Some(level), Some(sd), Some(basis)) = (expected.ln_level, expected.sd, expected.basis)
    else {
        return Err(NotCounted::NothingExpected);
    };
    let mut pieces = PricedPieces::parse(&expected.state).ok_or(NotCounted::NothingExpected)?;
    if pieces.several && case.pieces.sell == Some(SellAs::Apart) {
        return Err(NotCounted::SoldApart);
    }
    let class = pieces.class().ok_or(NotCounted::NothingExpected)?;
    for (_, state) in &mut pieces.each {
        state.kept = case
            .done
            .iter()
            .filter(|done| done.went_wrong == Some(true))
            .filter_map(|done| mishap_figures(done.treatment?, state.class))
            .map(|(_, kept)| kept)
            .collect();
        state.kept.order_by(Ord::cmp);
        state.kept.dedup();
    }
    let (price, sold_as) = if sold {
        (sale.price, sale.sold_as.unwrap_or(SoldAs::Hammer))
    } else {
        unsold_limit(case)?
    };
    let price = price.filter(|p| *p > 0.0).ok_or(NotCounted::NoPrice)?;
    if sold_as == SoldAs::Asking {
        return Err(NotCounted::OnlyAsked);
    }
    let buyer = match sale.buyer {
        Some(BuyerSort::Collector) => Some(0),
        Some(BuyerSort::Decorator) => Some(1),
        Some(BuyerSort::User) => Some(2),
        Some(BuyerSort::Trade | BuyerSort::Unknown) | None => None,
    };
    let (ln, mut row, spread) = pieces.multiplier(buyer.filter(|_| sold));
    if libm::exp(ln) <= ledger.value(FigureId::VALUE_FLOOR) {
        return Err(NotCounted::NearlyWorthless);
    }
    if sold_as == SoldAs::Retail {
        row.push((Shift::Shop, 1.0));
    }
    let (level_shift, scatter) = match basis {
        PriceBasis::Guess => (Shift::Guess(class), Scatter::Guess),
        PriceBasis::Comparables => (Shift::Comparables, Scatter::Comparables),
        PriceBasis::Class => (Shift::ClassLevel, Scatter::Class),
    };
    let class_set = expected.edition().filter(|_| basis == PriceBasis::Class);
    let level_at = |on| level_row(level_shift, class_set, on);
    row.extend(level_at(on));
    let y = libm::log(price / channel(sold_as, ledger)) - level - ln;
    let noise = ledger.value(FigureId::VALUE_SALE_SD);
    let single = Observed {
        topic: Topic::Prices,
        row,
        y,
        sd: (sd * sd * spread + noise * noise).sqrt(),
        scatter,
        weight: weight(on, today),
        censored: !sold,
    };
    let sd = sd * spread.sqrt();
    Ok(
        match bought(case, level, level_at(case.stock.bought_on)).filter(|_| sold) {
            Some(before) => pair(&before, &single, (sd, noise)),
            None => vec![single],
        },
    )
}

/// What the undamaged level of a price rests on. `class_set`: when the usual price of the kind was set, if the level is
/// that price.
fn level_row(level: Shift, class_set: Option<Date>, on: Option<Date>) -> Vec<(Shift, f64)> {
    let years = class_set
        .zip(on)
        .map(|(set, on)| (Shift::Drift, f64::from(set.days_until(on)) / 365.25));
    [(level, 1.0)].into_iter().chain(years).collect()
}

/// What an offer without a buyer says the price is below.
fn unsold_limit(case: &Case) -> Result<(Option<f64>, SoldAs), NotCounted> {
    let ledger = Ledger::standard();
    let unsold = &case.closed.unsold;
    match unsold.at {
        Some(UnsoldAt::Asking) => {
            let months = unsold.months.unwrap_or(0.0);
            if months < ledger.value(FigureId::LEARN_SHOP_MONTHS) {
                return Err(NotCounted::NotLongOnOffer);
            }
            let bargained = ledger.value(FigureId::VALUE_COMPARABLE_BARGAIN);
            Ok((unsold.price.map(|p| p * bargained), SoldAs::Retail))
        }
        Some(UnsoldAt::Reserve | UnsoldAt::TopBid) | None => Ok((unsold.price, SoldAs::Hammer)),
    }
}

/// What was paid for it, against the undamaged level and its state at the time.
fn bought(
    case: &Case,
    level: f64,
    level_row: Vec<(Shift, f64)>,
) -> Option<(f64, Vec<(Shift, f64)>)> {
    // What a piece of a lot cost is a reckoning, not a price.
    let lone = case.lot.id.is_empty();
    let paid = case.stock.paid.filter(|paid| *paid > 0.0 && lone)?;
    // The state before work is the one frozen when work was agreed.
    let agreed = case
        .predicted
        .iter()
        .find(|p| p.event == PredictedWhen::Agreed)?;
    let (ln, mut row, _) = PricedPieces::parse(&agreed.state)?.multiplier(None);
    row.extend(level_row);
    row.push((Shift::Bought, 1.0));
    Some((libm::log(paid) - level - ln, row))
}

/// A piece bought and sold is two observations: the mean of both prices, and their difference, in which
/// the undamaged value drops out.
fn pair(
    (y, row): &(f64, Vec<(Shift, f64)>),
    sold: &Observed,
    (sd, noise): (f64, f64),
) -> Vec<Observed> {
    let combined = |a: f64, b: f64| {
        let mut sum: Vec<(Shift, f64)> = Vec::new();
        for (times, row) in [(a, row), (b, &sold.row)] {
            for (shift, x) in row {
                match sum.iter_mut().find(|(known, _)| known == shift) {
                    Some((_, held)) => *held += times * x,
                    None => sum.push((*shift, times * x)),
                }
            }
        }
        sum.retain(|(_, x)| *x != 0.0);
        sum
    };
    vec![
        Observed {
            row: combined(0.5, 0.5),
            y: 0.5 * (y + sold.y),
            sd: (sd * sd + 0.5 * noise * noise).sqrt(),
            ..sold.clone()
        },
        Observed {
            row: combined(-1.0, 1.0),
            y: sold.y - y,
            sd: core::f64::consts::SQRT_2 * noise,
            scatter: Scatter::Pair,
            ..sold.clone()
        },
    ]
}

/// Whether two entries of work share one bill.
fn same_bill(a: &Done, b: &Done) -> bool {
    a.place == b.place || (!a.bill_no.is_empty() && a.bill_no == b.bill_no)
}

fn bills(case: &Case, today: Option<Date>, one: &mut PieceEvidence) {
    let ledger = Ledger::standard();
    for (at, done) in case.done.iter().enumerate() {
        let Some(bill) = done.bill else { continue };
        if case.done[..at].iter().any(|before| same_bill(before, done)) {
            continue;
        }
        if bill <= 0.0 {
            one.not_counted
                .push((Topic::Bills, NotCounted::BillOfNothing));
            continue;
        }
        let together: Vec<&Done> = case.done.iter().filter(|d| same_bill(d, done)).collect();
        let parts: Option<Vec<(FigureId, f64)>> = together
            .iter()
            .map(|d| {
                let (id, times) = bill_figure(case, ledger, d.treatment?)?;
                Some((id, ledger.value(id) * times))
            })
            .collect();
        // A bill for something the figures do not price, or price at nothing, says nothing of them.
        let Some(parts) =
            parts.filter(|parts| parts.iter().all(|(id, _)| ledger.figure(*id).low > 0.0))
        else {
            continue;
        };
        let sum: f64 = parts.iter().map(|(_, m)| m).sum();
        let mut row: Vec<(Shift, f64)> = Vec::new();
        for (id, m) in &parts {
            let shift = Shift::Cost(*id);
            match row.iter_mut().find(|(known, _)| *known == shift) {
                Some((_, x)) => *x += m / sum,
                None => row.push((shift, m / sum)),
            }
        }
        let sd = row
            .iter()
            .map(|(shift, x)| x * shift.job_sd() * shift.job_sd())
            .sum::<f64>()
            .sqrt();
        let on = Date::parse_about(&done.on);
        one.seen.push(Observed {
            topic: Topic::Bills,
            row,
            y: libm::log(bill / sum),
            sd,
            scatter: Scatter::Bill,
            weight: weight(on, today),
            censored: false,
        });
        let quoted = match together.as_slice() {
            [only] => only.treatment.and_then(|t| case.quote(t)),
            _ => None,
        };
        if let Some(quote) = quoted.filter(|quote| quote.likely > 0.0 && !quote.fixed) {
            one.seen.push(Observed {
                topic: Topic::Bills,
                row: vec![(Shift::Overrun, 1.0)],
                y: libm::log(bill / quote.likely),
                sd: Shift::Overrun.job_sd(),
                scatter: Scatter::Quote,
                weight: weight(on, today),
                censored: false,
            });
        }
    }
}

fn hours(done: &Done, today: Option<Date>, one: &mut PieceEvidence) {
    let (Some(hours), Some(id)) = (done.hours, done.treatment.and_then(work_hours)) else {
        return;
    };
    if hours <= 0.0 {
        one.not_counted
            .push((Topic::Hours, NotCounted::BillOfNothing));
        return;
    }
    let shift = Shift::Hours(id);
    one.seen.push(Observed {
        topic: Topic::Hours,
        row: vec![(shift, 1.0)],
        y: libm::log(hours / Ledger::standard().value(id)),
        sd: shift.job_sd(),
        scatter: Scatter::Hours,
        weight: weight(Date::parse_about(&done.on), today),
        censored: false,
    });
}
