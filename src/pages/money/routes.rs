//! Ways to sell or keep the piece, what each deducts, who buys, and what to call the resulting figure.

use super::super::block::{Block, Table, Tone};
use super::{MoneyInputs, kept};
use crate::wording::money::routes as words;
use leavewell_model::counsel::WorthDraws;
use leavewell_model::ledger::{FigureId, Ledger};
use leavewell_model::maths::deciles;
use leavewell_model::record::hundredths;
use leavewell_model::record::schema::is_percentage;
use leavewell_model::terms::{Route, whole_percent};
use leavewell_model::value::{BUYERS, ConditionTable, channel};

/// A term a person may enter: field, label, unit, hint and the figure that stands in for it.
type Term = (
    &'static str,
    &'static str,
    &'static str,
    &'static str,
    FigureId,
);

/// The seller's terms.
const FEES: [Term; 12] = [
    (
        "commission_pct",
        words::COMMISSION,
        "%",
        words::OF_HAMMER,
        FigureId::FEE_COMMISSION,
    ),
    (
        "above",
        words::SECOND_RATE_FROM,
        "",
        words::SECOND_RATE_FROM_HINT,
        FigureId::FEE_ABOVE,
    ),
    (
        "above_pct",
        words::SECOND_RATE,
        "%",
        words::SECOND_RATE_HINT,
        FigureId::FEE_COMMISSION_ABOVE,
    ),
    (
        "minimum",
        words::LEAST_COMMISSION,
        "",
        "",
        FigureId::FEE_MINIMUM,
    ),
    ("vat_pct", words::TAX, "%", "", FigureId::FEE_VAT),
    (
        "lot",
        words::LOT_FEE,
        "",
        words::LOT_FEE_HINT,
        FigureId::FEE_LOT,
    ),
    (
        "insurance_pct",
        words::INSURANCE,
        "%",
        words::OF_HAMMER,
        FigureId::FEE_INSURANCE,
    ),
    (
        "transport",
        words::CARRIAGE,
        "",
        "",
        FigureId::FEE_TRANSPORT,
    ),
    (
        "sold_pct",
        words::SOLD_AT_FIRST,
        "%",
        words::SOLD_AT_FIRST_HINT,
        FigureId::FEE_SOLD,
    ),
    (
        "unsold",
        words::UNSOLD,
        "",
        words::UNSOLD_HINT,
        FigureId::FEE_UNSOLD,
    ),
    (
        "reoffer_pct",
        words::SECOND_SALE,
        "%",
        words::SECOND_SALE_HINT,
        FigureId::FEE_REOFFER,
    ),
    (
        "premium_pct",
        words::PREMIUM,
        "%",
        words::PREMIUM_HINT,
        FigureId::FEE_PREMIUM,
    ),
];

/// A dealer's terms, by rows.
const TRADE: [[Term; 3]; 2] = [
    [
        (
            "retail_over_hammer",
            words::SHOP_PRICE,
            words::TIMES,
            "",
            FigureId::VALUE_RETAIL_OVER_HAMMER,
        ),
        (
            "shop_months",
            words::UNTIL_SOLD,
            words::MONTHS,
            "",
            FigureId::VALUE_TRADE_MONTHS_SHOP,
        ),
        (
            "work_months",
            words::AWAY,
            words::MONTHS,
            words::AWAY_HINT,
            FigureId::VALUE_TRADE_MONTHS_WORK,
        ),
    ],
    [
        (
            "rate_pct",
            words::ELSEWHERE,
            words::PERCENT_A_YEAR,
            "",
            FigureId::VALUE_TRADE_RATE,
        ),
        (
            "holding_pct",
            words::HOLDING,
            words::PERCENT_A_YEAR,
            "",
            FigureId::VALUE_TRADE_HOLDING,
        ),
        (
            "auction_months",
            words::UNTIL_PAID,
            words::MONTHS,
            "",
            FigureId::VALUE_TRADE_MONTHS_AUCTION,
        ),
    ],
];

/// Fields for a dealer's own terms, with the usual ones as defaults.
fn trade_fields(inputs: &MoneyInputs) -> Vec<Block> {
    let row = |fields: [Term; 3]| Block::Row {
        blocks: fields
            .into_iter()
            .map(|(field, label, unit, hint, id)| {
                let path = format!("worth.{field}");
                inputs.field(&path, label, unit, hint, &usual(id, &path), true)
            })
            .collect(),
    };
    let tax = inputs.pick(
        "worth.margin_tax",
        words::MARGIN_TAX,
        words::MARGIN_TAX_HINT,
        &[("", words::LEAVE_IT_OUT), ("yes", words::TAKE_IT_OFF)],
    );
    TRADE.into_iter().map(row).chain([tax]).collect()
}

/// The usual term for an empty field: a share as a percentage.
pub(super) fn usual(id: FigureId, path: &str) -> String {
    let figure = Ledger::standard().value(id);
    if is_percentage(path) {
        hundredths(100.0 * figure)
    } else {
        figure.to_string()
    }
}

/// The section: the routes compared, and the terms behind them.
pub(super) fn routes(inputs: &MoneyInputs) -> Block {
    let (paid_field, paid) = inputs.ask(
        "worth.paid",
        words::PAID,
        inputs.format.unit(),
        words::PAID_HINT,
        0.0,
    );
    let shop_mix = mix(inputs, "worth.mix_shop", words::IN_A_SHOP);
    let private_mix = mix(inputs, "worth.mix_private", words::PRIVATELY);
    let table = compared(inputs, paid);
    let who = vec![
        Block::para(words::WHO_BUYS),
        own_mix(inputs),
        private_mix,
        shop_mix,
        Block::said(Tone::Quiet, words::USUAL_SHARES),
    ];
    let first = Block::para(words::EMPTY_FIELDS);
    Block::section(
        "worth-routes",
        words::WAYS,
        vec![
            Block::Table(table),
            Block::fold(
                "worth-fees",
                words::SELLERS_TERMS,
                std::iter::once(first).chain(fee_fields(inputs)).collect(),
            ),
            Block::fold("worth-mix", words::BUYERS_SECTION, who),
            Block::fold(
                "worth-shop",
                words::DEALERS_TERMS,
                std::iter::once(paid_field)
                    .chain(trade_fields(inputs))
                    .collect(),
            ),
        ],
    )
}

/// What each route brings for the piece as it is.
fn compared(inputs: &MoneyInputs, paid: f64) -> Table {
    let w = inputs.worth;
    let selling = &w.selling;
    let here = as_it_is(w);
    let by = |route: Route, seen: &WorthDraws| -> Vec<f64> {
        let leave = seen.plans.first();
        let draws = 0..as_it_is(seen).len();
        leave.map_or_else(Vec::new, |leave| {
            draws.map(|i| kept(w, route, i, (leave, 1.0))).collect()
        })
    };
    let row = |name: &str, money: &[f64], when: &str, what: &str| {
        vec![
            name.to_owned(),
            inputs.format.band_of(money),
            when.to_owned(),
            what.to_owned(),
        ]
    };
    let when = |route: Route| match selling.months(route) {
        None => words::NOT_KNOWN.to_owned(),
        Some(months) if months > 0.0 => words::about_months(months),
        Some(_) => words::AT_ONCE.to_owned(),
    };
    let by_others: Vec<(Route, WorthDraws)> = Route::ALL
        .iter()
        .filter_map(|route| {
            let sold = WorthDraws::sold_by(inputs.case, inputs.quick, *route)?;
            Some((*route, sold))
        })
        .collect();
    let seen_in = |route: Route| {
        let others = by_others.iter().find(|(other, _)| *other == route);
        others.map_or(w, |(_, sold)| sold)
    };
    let mut rows: Vec<Vec<String>> = Route::ALL
        .iter()
        .map(|route| {
            let money = by(*route, seen_in(*route));
            row(route.label(), &money, &when(*route), words::means(*route))
        })
        .collect();
    if paid > 0.0 {
        let gain: Vec<f64> = as_it_is(seen_in(Route::Shop))
            .iter()
            .map(|h| selling.shop.profit(*h, paid, 0.0))
            .collect();
        let when = when(Route::Shop);
        rows.push(row(words::OWN_SHOP, &gain, &when, words::OWN_SHOP_GAIN));
    }
    let insured: Vec<f64> = here
        .iter()
        .map(|h| h * w.ledger.value(FigureId::VALUE_INSURE_OVER_HAMMER))
        .collect();
    rows.push(row(words::INSURE, &insured, "—", words::INSURE_MEANS));
    rows.push(row(words::KEEP, here, "—", words::KEEP_MEANS));
    Table {
        caption: words::CAPTION.to_owned(),
        columns: words::COLUMNS.map(str::to_owned).to_vec(),
        rows,
    }
}

/// Hammer prices of the piece as it is.
fn as_it_is(worth: &WorthDraws) -> &[f64] {
    worth.plans.first().map_or(&[], |p| &p.hammer)
}

/// Fields for the user's own terms, with the usual ones as defaults.
fn fee_fields(inputs: &MoneyInputs) -> Vec<Block> {
    FEES.iter()
        .map(|(field, label, unit, hint, id)| {
            let path = ["market.fees.", field].concat();
            let stand_in = match *id {
                FigureId::FEE_ABOVE => words::NONE.to_owned(),
                id => usual(id, &path),
            };
            let unit = if unit.is_empty() {
                inputs.format.unit()
            } else {
                unit
            };
            inputs.field(&path, label, unit, hint, &stand_in, true)
        })
        .collect()
}

/// Fields for the shares of buyers that apply everywhere.
fn own_mix(inputs: &MoneyInputs) -> Block {
    let usual = ConditionTable::of(inputs.worth.class, Ledger::standard()).mix();
    let field = |buyer: usize, label: &str| {
        inputs.field(
            &format!("market.mix.{}", BUYERS[buyer]),
            label,
            words::IN_100,
            "",
            &whole_percent(usual[buyer]).replace(" %", ""),
            true,
        )
    };
    Block::Row {
        blocks: vec![
            field(0, words::COLLECTORS),
            field(1, words::TO_SHOW),
            field(2, words::TO_USE),
        ],
    }
}

/// Shares of buyers on one route alone.
fn mix(inputs: &MoneyInputs, section: &str, label: &str) -> Block {
    let blocks = BUYERS.map(|buyer| {
        let path = format!("{section}.{buyer}");
        let label = words::share_of(label, words::buyer_words(buyer));
        // An empty field means "as above", so it must not show zero.
        inputs.field(&path, &label, words::IN_100, "", words::AS_ABOVE, true)
    });
    Block::Row {
        blocks: blocks.into(),
    }
}

/// What to call the figure, by its purpose.
pub(super) fn bases(inputs: &MoneyInputs) -> Block {
    let format = inputs.format;
    let w = inputs.worth;
    let here = w
        .plans
        .first()
        .map(|p| p.hammer.clone())
        .unwrap_or_default();
    let times = |t: f64| {
        let [a, b, c] = deciles(&here.iter().map(|h| h * t).collect::<Vec<f64>>());
        format.band([a, b, c])
    };
    let premium = channel(leavewell_model::terms::SoldAs::WithPremium, &w.ledger);
    let row =
        |name: &str, what: &str, figure: String| vec![name.to_owned(), what.to_owned(), figure];
    let rows = vec![
        row(words::AUCTION_VALUE, words::AUCTION_VALUE_MEANS, times(1.0)),
        row(words::FAIR_MARKET, words::FAIR_MARKET_MEANS, times(premium)),
        row(words::MARKET_VALUE, words::MARKET_VALUE_MEANS, times(1.0)),
        row(
            words::REPLACEMENT,
            words::REPLACEMENT_MEANS,
            times(w.ledger.value(FigureId::VALUE_INSURE_OVER_HAMMER)),
        ),
    ];
    Block::section(
        "worth-bases",
        words::BASES,
        vec![
            Block::para(words::WHICH_ONE),
            Block::Table(Table {
                caption: words::BASES_CAPTION.to_owned(),
                columns: words::BASES_COLUMNS.map(str::to_owned).to_vec(),
                rows,
            }),
            Block::said(Tone::Note, words::INDICATIVE),
        ],
    )
}
