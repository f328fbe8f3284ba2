//! Break-evens: the most each treatment may cost, the undamaged value above which it pays, and the most to
//! pay for the piece.

use super::super::block::{Block, Table, Tone};
use super::routes::usual;
use super::{MoneyInputs, plans};
use crate::wording::money::break_evens as words;
use crate::wording::money::routes::buyer_words;
use leavewell_model::counsel::{Plan, WorthDraws};
use leavewell_model::ledger::FigureId;
use leavewell_model::maths::{deciles, mean, quantile_of};
use leavewell_model::terms::Treatment;
use leavewell_model::terms::capital;
use leavewell_model::terms::{Route, whole_percent};
use leavewell_model::value::{BUYERS, PaysAbove, channel, most_to_pay, pays_above};

/// Range of undamaged values searched, in the currency of the case. No plated piece lies outside it.
const LOOKED_AT: (f64, f64) = (1.0, 1_000_000.0);

/// What the treatment adds to what the seller keeps, in each draw, before its cost.
fn adds(worth: &WorthDraws, route: Route, plan: &Plan) -> Vec<f64> {
    let Some(before) = worth.plans.first() else {
        return Vec::new();
    };
    let draws = 0..plan.hammer.len();
    draws
        .map(|i| {
            let kept = |plan: &Plan| super::kept(worth, route, i, (plan, 1.0));
            most_to_pay(before, plan, &kept)
        })
        .collect()
}

/// The undamaged value above which the treatment pays on average, all else unchanged.
fn pays_from(worth: &WorthDraws, route: Route, plan: &Plan) -> PaysAbove {
    let Some(before) = worth.plans.first() else {
        return PaysAbove::Never;
    };
    // Undamaged value and cost. One draw in four is enough for a mean.
    let draws: Vec<(usize, f64, f64)> = plan
        .cost
        .iter()
        .zip(&worth.undamaged)
        .enumerate()
        .filter(|(i, (_, v))| i % 4 == 0 && **v > 0.0)
        .map(|(i, (cost, v))| (i, *v, *cost))
        .collect();
    let gain = |value: f64| {
        let each = draws.iter().map(|(i, undamaged, cost)| {
            let kept = |plan: &Plan| super::kept(worth, route, *i, (plan, value / undamaged));
            most_to_pay(before, plan, &kept) - cost
        });
        each.sum::<f64>() / draws.len().max(1) as f64
    };
    pays_above(&gain, LOOKED_AT.0, LOOKED_AT.1)
}

fn pays_words(inputs: &MoneyInputs, found: PaysAbove) -> String {
    match found {
        PaysAbove::Never => words::NEVER.to_owned(),
        PaysAbove::Value(v) => inputs.format.amount(v),
        PaysAbove::Always => words::AT_ANY_VALUE.to_owned(),
    }
}

/// The section on treatments.
pub(super) fn break_evens(inputs: &MoneyInputs) -> Block {
    let format = inputs.format;
    let w = inputs.worth;
    let treatments = || w.plans.iter().filter(|p| p.treatment != Treatment::Leave);
    let same = |other: &WorthDraws, t: Treatment| other.plans.iter().position(|p| p.treatment == t);
    let (mut usual, mut each) = (Vec::new(), Vec::new());
    for plan in treatments() {
        let added = adds(w, inputs.route, plan);
        usual.push(vec![
            plans::name(plan),
            format.amount(mean(&added).max(0.0)),
            format.band(deciles(&added)),
            format.band_of(&plan.cost),
            pays_words(inputs, pays_from(w, inputs.route, plan)),
        ]);
        let mut row = vec![plans::name(plan)];
        for seen in inputs.buyers {
            row.push(
                same(seen, plan.treatment)
                    .and_then(|i| seen.plans.get(i))
                    .map_or_else(
                        || "—".to_owned(),
                        |p| {
                            let most = mean(&adds(seen, inputs.route, p)).max(0.0);
                            let from = pays_words(inputs, pays_from(seen, inputs.route, p));
                            words::most_and_from(&format.amount(most), &from)
                        },
                    ),
            );
        }
        each.push(row);
    }
    if usual.is_empty() {
        return Block::section(
            "worth-break-evens",
            words::WHEN_WORK_PAYS,
            vec![Block::para(words::NOTHING_TO_WEIGH)],
        );
    }
    let mut by_buyer = vec![words::WORK.to_owned()];
    by_buyer.extend(BUYERS.map(|b| capital(buyer_words(b))));
    Block::section(
        "worth-break-evens",
        words::WHEN_WORK_PAYS,
        vec![
            Block::para(words::LESS_THAN_IT_ADDS),
            Block::Table(Table {
                caption: words::usual_buyers(&format.amount(deciles(&w.undamaged)[1])),
                columns: words::COLUMNS.map(str::to_owned).to_vec(),
                rows: usual,
            }),
            Block::Table(Table {
                caption: words::BY_BUYER.to_owned(),
                columns: by_buyer,
                rows: each,
            }),
            Block::said(Tone::Quiet, words::AN_AVERAGE),
        ],
    )
}

/// The fields for the wanted gain and the risk of missing it.
fn wanted(inputs: &MoneyInputs) -> Block {
    let field = |name: &str, label: &str, unit: &str, hint: &str, id: FigureId| {
        let path = format!("worth.{name}");
        inputs.field(&path, label, unit, hint, &usual(id, &path), true)
    };
    Block::Row {
        blocks: vec![
            field(
                "margin_pct",
                words::GAIN,
                "%",
                words::GAIN_HINT,
                FigureId::VALUE_TRADE_MARGIN,
            ),
            field(
                "risk_pct",
                words::HOW_OFTEN_LESS,
                words::IN_100,
                "",
                FigureId::VALUE_TRADE_RISK,
            ),
        ],
    }
}

/// The section on buying: the most to pay for the piece.
pub(super) fn bid(inputs: &MoneyInputs) -> Block {
    let format = inputs.format;
    let w = inputs.worth;
    let asked = wanted(inputs);
    let bids = Bids {
        margin: w.ledger.value(FigureId::VALUE_TRADE_MARGIN).max(0.0),
        risk: w.ledger.value(FigureId::VALUE_TRADE_RISK).clamp(0.01, 0.99),
        route: inputs.route,
    };
    let premium = channel(leavewell_model::terms::SoldAs::WithPremium, &w.ledger);
    let words = |most: f64| {
        if most < 0.5 {
            words::DO_NOT_BUY.to_owned()
        } else {
            words::most_and_bid(&format.amount(most), &format.amount(most / premium))
        }
    };
    let ways = bids.ways();
    let columns = |first: &str| {
        let ways = ways.iter().map(|way| words::sold_by(*way).to_owned());
        std::iter::once(first.to_owned()).chain(ways).collect()
    };
    let row = |name: String, worth: &WorthDraws, plan: &Plan| {
        let most = ways.iter().map(|way| words(bids.most(*way, worth, plan)));
        std::iter::once(name).chain(most).collect()
    };
    let rows = w
        .plans
        .iter()
        .filter(|p| p.barred.is_empty())
        .map(|p| row(plans::name(p), w, p))
        .collect();
    let by_buyer = BUYERS
        .iter()
        .zip(inputs.buyers)
        .filter_map(|(buyer, seen)| {
            let leave = seen.plans.first()?;
            Some(row(capital(buyer_words(buyer)), seen, leave))
        })
        .collect();
    Block::section(
        "worth-bid",
        words::BID,
        vec![
            Block::para(words::IF_BUYING),
            asked,
            Block::Table(Table {
                caption: words::most_in_all(
                    &whole_percent(bids.margin),
                    (100.0 * bids.risk).round(),
                ),
                columns: columns(words::WHAT_YOU_WOULD_DO),
                rows,
            }),
            Block::Table(Table {
                caption: words::LEFT_AS_IT_IS.to_owned(),
                columns: columns(words::BUYER),
                rows: by_buyer,
            }),
            what_comes_off(),
        ],
    )
}

fn what_comes_off() -> Block {
    Block::said(Tone::Quiet, words::WHAT_COMES_OFF)
}

/// The inputs of a bid.
struct Bids {
    /// Wanted gain, as a share of the price paid.
    margin: f64,
    /// Accepted chance of missing it.
    risk: f64,
    route: Route,
}

impl Bids {
    /// The chosen way to sell, then a shop unless that is it.
    fn ways(&self) -> Vec<Route> {
        let mut ways = vec![self.route];
        if self.route != Route::Shop {
            ways.push(Route::Shop);
        }
        ways
    }

    /// The most to pay if the piece is sold on this way: the price that leaves the wanted gain in all draws
    /// except the share `risk`.
    fn most(&self, way: Route, worth: &WorthDraws, plan: &Plan) -> f64 {
        let selling = &worth.selling;
        // A gentle cleaning takes an afternoon.
        let away = match plan.treatment {
            Treatment::Leave | Treatment::Clean => 0.0,
            _ => selling.work_months,
        };
        let bid = selling.bid(way, self.margin, away);
        let each = plan.cost.iter().zip(&worth.fees).enumerate();
        let most: Vec<f64> = each
            .map(|(i, (cost, fees))| {
                let sale = plan.over_lots(i, 1.0, &|hammer| bid.sale(fees, hammer));
                bid.most_for(sale, *cost)
            })
            .collect();
        quantile_of(&most, self.risk)
    }
}
