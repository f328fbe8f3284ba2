//! Ways to turn it into money, what each takes off, who buys, and what to call the figure.

use super::super::block::{Block, Table, Tone};
use super::words::percent;
use super::{Desk, kept};
use crate::case::Route;
use crate::counsel::Worth;
use crate::maths::deciles;
use crate::value::{BUYERS, Shop, channel};

/// The person's own terms, each with its field, words, unit, help and the figure behind it.
const FEES: [(&str, &str, &str, &str, &str); 12] = [
    (
        "commission_pct",
        "Commission",
        "%",
        "Of the hammer price.",
        "fee.commission",
    ),
    (
        "above",
        "Second rate from",
        "",
        "If the rate changes at a price.",
        "fee.above",
    ),
    (
        "above_pct",
        "Second rate",
        "%",
        "On what lies above that price.",
        "fee.commission_above",
    ),
    ("minimum", "Least commission", "", "", "fee.minimum"),
    ("vat_pct", "Tax on the commission", "%", "", "fee.vat"),
    (
        "lot",
        "Lot fee",
        "",
        "Pictures and catalogue, tax included.",
        "fee.lot",
    ),
    (
        "insurance_pct",
        "Insurance",
        "%",
        "Of the hammer price.",
        "fee.insurance",
    ),
    ("transport", "Carriage to the sale", "", "", "fee.transport"),
    (
        "sold_pct",
        "Sells at the first sale",
        "%",
        "How often, in 100.",
        "fee.sold",
    ),
    (
        "unsold",
        "Charge if unsold",
        "",
        "On top of the lot fee.",
        "fee.unsold",
    ),
    (
        "reoffer_pct",
        "Price at a second sale",
        "%",
        "Of the first price.",
        "fee.reoffer",
    ),
    (
        "premium_pct",
        "Buyer's premium",
        "%",
        "What a buyer pays on top, before tax.",
        "fee.premium",
    ),
];

/// Fields of the shop and what they come to.
pub(super) struct ShopFields {
    pub(super) blocks: Vec<Block>,
    pub(super) shop: Shop,
    pub(super) work_months: f64,
    pub(super) auction_months: f64,
}

/// The shop's terms, as entered or as usual.
pub(super) fn shop(desk: &Desk) -> ShopFields {
    let v = |id: &str| desk.worth.ledger.value(id);
    let ask = |field: &str, label: &str, unit: &str, hint: &str, range, stand_in| {
        desk.ask(
            &format!("worth.{field}"),
            label,
            unit,
            hint,
            range,
            stand_in,
        )
    };
    let (retail, over) = ask(
        "retail_over_hammer",
        "Shop price over hammer price",
        "times",
        "",
        (0.5, 10.0),
        v("value.retail_over_hammer"),
    );
    let (months, until) = ask(
        "shop_months",
        "Months until it sells",
        "months",
        "",
        (0.0, 240.0),
        v("value.trade.months.shop"),
    );
    let (work, away) = ask(
        "work_months",
        "Months away for work",
        "months",
        "Off the shelf, earning nothing.",
        (0.0, 60.0),
        v("value.trade.months.work"),
    );
    let (auction, wait) = ask(
        "auction_months",
        "Months until an auction pays",
        "months",
        "",
        (0.0, 60.0),
        v("value.trade.months.auction"),
    );
    let (rate, yearly) = ask(
        "rate_pct",
        "What money could earn elsewhere",
        "% a year",
        "",
        (0.0, 60.0),
        100.0 * v("value.trade.rate"),
    );
    let (holding, keep) = ask(
        "holding_pct",
        "Insurance and storage",
        "% a year",
        "",
        (0.0, 30.0),
        100.0 * v("value.trade.holding"),
    );
    let tax = desk.pick(
        "worth.margin_tax",
        "Tax on the margin",
        "Information, not tax advice: under the UK margin scheme one sixth of sale less purchase; work \
         on the piece does not count as part of the purchase.",
        &[("", "Leave it out"), ("yes", "Take it off")],
    );
    let taxed = desk.draft.text("worth.margin_tax") == "yes";
    ShopFields {
        blocks: vec![
            Block::Row {
                blocks: vec![retail, months, work],
            },
            Block::Row {
                blocks: vec![rate, holding, auction],
            },
            tax,
        ],
        shop: Shop {
            retail: over,
            months: until,
            rate: yearly / 100.0,
            holding: keep / 100.0,
            margin_tax: if taxed {
                v("value.trade.margin_tax")
            } else {
                0.0
            },
        },
        work_months: away,
        auction_months: wait,
    }
}

/// The section: routes compared, and the terms behind them.
pub(super) fn routes(desk: &Desk) -> Block {
    let fields = shop(desk);
    let (paid_field, paid) = desk.ask(
        "worth.paid",
        "What you paid for it",
        desk.purse.unit(),
        "For the shop's gain; nothing counts as not yet paid.",
        (0.0, 100_000_000.0),
        0.0,
    );
    let (shop_mix, in_shop) = mix(desk, "worth.mix_shop", "In a shop");
    let (private_mix, in_private) = mix(desk, "worth.mix_private", "Privately");
    let table = compared(desk, &fields, paid, in_shop.as_ref(), in_private.as_ref());
    let who = vec![
        Block::para(
            "Collectors, people who want it to show, and people who want to use it see wear and work \
             differently. Give each a share, in 100; what you leave empty while giving another counts as \
             none.",
        ),
        own_mix(desk),
        private_mix,
        shop_mix,
        Block::said(
            Tone::Quiet,
            "The usual shares go with what the piece is, and are our judgement.",
        ),
    ];
    let first = Block::para(
        "Empty fields hold usual terms. Yours are kept with this piece; on Figures they can be kept for new pieces too.",
    );
    Block::section(
        "worth-routes",
        "Ways to sell it, or not",
        vec![
            Block::Table(table),
            Block::fold(
                "worth-fees",
                "The seller's terms at auction: put in your own",
                std::iter::once(first).chain(fee_fields(desk)).collect(),
            ),
            Block::fold("worth-mix", "Who would buy it", who),
            Block::fold(
                "worth-shop",
                "A dealer's terms",
                std::iter::once(paid_field).chain(fields.blocks).collect(),
            ),
        ],
    )
}

/// As it is, by each route.
fn compared(
    desk: &Desk,
    fields: &ShopFields,
    paid: f64,
    in_shop: Option<&Worth>,
    in_private: Option<&Worth>,
) -> Table {
    let w = desk.worth;
    let v = |id: &str| w.ledger.value(id);
    let here = as_it_is(w);
    let auction: Vec<f64> = here
        .iter()
        .enumerate()
        .map(|(i, h)| kept(w, Route::Auction, i, *h))
        .collect();
    let shelf: Vec<f64> = as_it_is(in_shop.unwrap_or(w))
        .iter()
        .map(|h| fields.shop.profit(*h, paid, 0.0))
        .collect();
    let scaled = |times: f64| here.iter().map(|h| h * times).collect::<Vec<f64>>();
    let row = |name: &str, money: &[f64], when: &str, what: &str| {
        vec![
            name.to_owned(),
            desk.purse.band_of(money),
            when.to_owned(),
            what.to_owned(),
        ]
    };
    let months = |m: f64| format!("about {m} months");
    let rows = vec![
        row(
            "At auction",
            &auction,
            &months(fields.auction_months),
            "After commission, tax on it, lot fee, insurance, and the chance that it has to be offered \
             again",
        ),
        row(
            "Privately",
            as_it_is(in_private.unwrap_or(w)),
            "not known",
            "No fees; at the hammer price, if you find the buyer",
        ),
        row(
            "To a dealer",
            &scaled(fields.shop.retail * v("value.trade.stock_share")),
            "at once",
            "A dealer can pay about two thirds of what the shop will ask: a very broad rule",
        ),
        row(
            "From a shop of your own",
            &shelf,
            &months(fields.shop.months),
            if paid > 0.0 {
                "Gain after what you paid, holding and waiting, in today's money"
            } else {
                "Shop price after waiting, in today's money; nothing taken off for what you paid"
            },
        ),
        row(
            "Insure it for",
            &scaled(v("value.insure_over_hammer")),
            "—",
            "What replacing it would cost; not money to be had",
        ),
        row(
            "Keep it",
            here,
            "—",
            "What stays yours, at the hammer price; nothing is paid",
        ),
    ];
    Table {
        caption: "As it is: what each way would bring".to_owned(),
        columns: ["Way", "Money", "When", "What that is"]
            .map(str::to_owned)
            .to_vec(),
        rows,
    }
}

/// Hammer prices as it is.
fn as_it_is(worth: &Worth) -> &[f64] {
    worth.plans.first().map_or(&[], |p| &p.hammer)
}

/// Fields for the person's own terms; the usual ones stand in.
fn fee_fields(desk: &Desk) -> Vec<Block> {
    FEES.iter()
        .map(|(field, label, unit, hint, id)| {
            let figure = crate::facts::Ledger::standard().value(id);
            let stand_in = match (*field, *unit) {
                ("above", _) => "none".to_owned(),
                (_, "%") => format!("{}", (figure * 10_000.0).round() / 100.0),
                _ => format!("{figure}"),
            };
            let unit = if unit.is_empty() {
                desk.purse.unit()
            } else {
                unit
            };
            desk.field(
                &format!("market.fees.{field}"),
                label,
                unit,
                hint,
                &stand_in,
                true,
            )
        })
        .collect()
}

/// The shares of buyers that hold for everything, as fields.
fn own_mix(desk: &Desk) -> Block {
    let class = desk.worth.class.tables().code();
    let share = |buyer: &str| {
        percent(crate::facts::Ledger::standard().value(&format!("value.mix.{class}.{buyer}")))
            .replace(" %", "")
    };
    let field = |buyer: &str, label: &str| {
        desk.field(
            &format!("market.mix.{buyer}"),
            label,
            "in 100",
            "",
            &share(buyer),
            true,
        )
    };
    Block::Row {
        blocks: vec![
            field("collector", "Collectors"),
            field("decorator", "To show it"),
            field("user", "To use it"),
        ],
    }
}

/// Shares of buyers for one way alone, and the piece as they see it; `None` while none is given.
fn mix(desk: &Desk, section: &str, label: &str) -> (Block, Option<Worth>) {
    let asked = BUYERS.map(|buyer| {
        desk.ask(
            &format!("{section}.{buyer}"),
            &format!("{label}: {}", buyer_words(buyer)),
            "in 100",
            "",
            (0.0, 100.0),
            0.0,
        )
    });
    let shares = [asked[0].1, asked[1].1, asked[2].1];
    let seen = (shares.iter().sum::<f64>() > 0.0)
        .then(|| Worth::seen_by(desk.case, desk.quick, shares.map(|s| s / 100.0)));
    let mut blocks: Vec<Block> = asked.into_iter().map(|(block, _)| block).collect();
    // Empty, it is as above: no zero stands for it.
    for block in &mut blocks {
        if let Block::Field(field) = block {
            "as above".clone_into(&mut field.stand_in);
        }
    }
    (Block::Row { blocks }, seen)
}

/// A sort of buyer in words.
pub(super) fn buyer_words(buyer: &str) -> &'static str {
    match buyer {
        "collector" => "collectors",
        "decorator" => "to show it",
        _ => "to use it",
    }
}

/// What the figure is called, by what it is for.
pub(super) fn bases(desk: &Desk) -> Block {
    let purse = desk.purse;
    let w = desk.worth;
    let here = w
        .plans
        .first()
        .map(|p| p.hammer.clone())
        .unwrap_or_default();
    let times = |t: f64| {
        let [a, b, c] = deciles(&mut here.iter().map(|h| h * t).collect::<Vec<f64>>());
        purse.band([a, b, c])
    };
    let premium = channel(crate::case::SoldAs::WithPremium, &w.ledger);
    let row =
        |name: &str, what: &str, figure: String| vec![name.to_owned(), what.to_owned(), figure];
    let rows = vec![
        row(
            "Auction value",
            "What it would be knocked down for.",
            times(1.0),
        ),
        row(
            "Fair market value (US tax)",
            "What a willing buyer would pay a willing seller, neither forced and both knowing the facts, \
             where such things are most often sold to the public. Here: at auction, the buyer's premium \
             included; ask whether your purpose wants it in.",
            times(premium),
        ),
        row(
            "Market value (valuation standards)",
            "What it should change hands for on the day, between willing parties at arm's length, after \
             proper marketing, each acting with knowledge, prudence and without pressure. Here: the \
             hammer price.",
            times(1.0),
        ),
        row(
            "Replacement value, comparable",
            "What it would cost to find one of like age, quality, origin and condition within a \
             reasonable time. Used for insurance. The cost of a new one, or of a copy, is something \
             else and is not worked out here.",
            times(w.ledger.value("value.insure_over_hammer")),
        ),
    ];
    Block::section(
        "worth-bases",
        "What the figure is called",
        vec![
            Block::para(
                "The right figure depends on what it is for. Say which one is meant when you pass it on.",
            ),
            Block::Table(Table {
                caption: "As it is, by what the figure is for".to_owned(),
                columns: ["Name", "Meaning", "Figure"].map(str::to_owned).to_vec(),
                rows,
            }),
            Block::said(
                Tone::Note,
                "Indicative, not an appraisal. For tax, court or insurance ask a qualified valuer.",
            ),
        ],
    )
}
