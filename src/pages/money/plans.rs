//! Before and after: the hammer price, what the seller keeps of it, and what the work costs.

use super::super::block::{Block, Table, Tone};
use super::Desk;
use super::ladder::{Rung, Told, ladder};
use crate::wording::money::plans as words;
use leavewell_model::counsel::Plan;
use leavewell_model::maths::{deciles, mean};
use leavewell_model::terms::Route;
use leavewell_model::terms::Treatment;

/// What the seller keeps after fees and the cost of the work, in every draw.
pub(super) fn net(desk: &Desk, plan: &Plan) -> Vec<f64> {
    plan.hammer
        .iter()
        .zip(&plan.cost)
        .enumerate()
        .map(|(i, (h, c))| desk.kept(i, *h) - c)
        .collect()
}

/// The name of a plan in a table row.
pub(super) fn name(plan: &Plan) -> String {
    let name = plan.treatment.text().name;
    if plan.barred.is_empty() {
        name.to_owned()
    } else {
        words::not_advised(name)
    }
}

/// The answer first: before and after in words, as a picture and as its table.
pub(super) fn answer(desk: &Desk) -> Block {
    let purse = desk.purse;
    let w = desk.worth;
    let mut blocks = Vec::new();
    let kept_words = match desk.route {
        Route::Auction => words::AFTER_FEES,
        Route::Private => words::SOLD_PRIVATELY,
    };
    if let Some(leave) = w.plans.first() {
        blocks.push(Block::said(
            Tone::Answer,
            words::as_it_is(
                &purse.band_of(&leave.hammer),
                kept_words,
                &purse.band_of(&net(desk, leave)),
            ),
        ));
        let mut best: Option<(&Plan, f64)> = None;
        let base = mean(&net(desk, leave));
        for plan in w.plans.iter().skip(1).filter(|p| p.barred.is_empty()) {
            let gain = mean(&net(desk, plan)) - base;
            if best.is_none_or(|(_, so_far)| gain > so_far) {
                best = Some((plan, gain));
            }
        }
        if best.is_none() && w.plans.len() > 1 {
            blocks.push(Block::para(words::NONE_MAY_BE_ADVISED));
        }
        if let Some((plan, gain)) = best {
            let words = plan.treatment.text().name;
            blocks.push(Block::para(if gain > 0.0 {
                words::best(words, &purse.amount(gain))
            } else {
                words::nothing_beats_leaving(words, &purse.amount(-gain))
            }));
        }
    }
    blocks.push(Block::para(words::undamaged(&purse.band_of(&w.undamaged))));
    if desk.case.comparables.is_empty()
        && leavewell_model::value::guess(&desk.case.market, &w.ledger).is_none()
    {
        blocks.push(Block::said(Tone::Note, words::NOTHING_GIVEN));
    }
    blocks.push(Block::Picture(before_after(desk)));
    let reasons: Vec<String> = w
        .plans
        .iter()
        .filter(|p| !p.barred.is_empty())
        .map(|p| words::barred(p.treatment.text().name, &p.barred))
        .collect();
    if !reasons.is_empty() {
        blocks.push(Block::List { items: reasons });
    }
    blocks.push(Block::said(Tone::Quiet, words::INDICATIVE));
    Block::section("worth-answer", words::BEFORE_AND_AFTER, blocks)
}

fn before_after(desk: &Desk) -> super::super::picture::Picture {
    let purse = desk.purse;
    let w = desk.worth;
    let mut rungs = Vec::new();
    let mut rows = Vec::new();
    let base = w.plans.first().map(|p| net(desk, p)).unwrap_or_default();
    for plan in &w.plans {
        let kept = net(desk, plan);
        let gain: Vec<f64> = kept.iter().zip(&base).map(|(a, b)| a - b).collect();
        rungs.push(Rung::Name(name(plan)));
        rungs.push(Rung::Band(deciles(&plan.hammer)));
        rungs.push(Rung::Other(deciles(&kept)));
        rows.push(vec![
            name(plan),
            purse.band_of(&plan.hammer),
            purse.band_of(&plan.cost),
            purse.band_of(&kept),
            if plan.treatment == Treatment::Leave {
                "—".to_owned()
            } else {
                purse.change(mean(&gain))
            },
        ]);
    }
    ladder(
        Told {
            id: "worth-before-after",
            title: words::PICTURE_TITLE.to_owned(),
            description: words::PICTURE.to_owned(),
            ratios: false,
            label: &|v| purse.amount(v),
            table: Table {
                caption: words::CAPTION.to_owned(),
                columns: words::COLUMNS.map(str::to_owned).to_vec(),
                rows,
            },
        },
        &rungs,
    )
}

/// What the work costs: what belongs to a quote, and the cost used.
pub(super) fn costs(desk: &Desk) -> Block {
    let purse = desk.purse;
    let mut blocks = vec![Block::para(words::WHERE_COSTS_COME_FROM)];
    let mut rows = Vec::new();
    for plan in desk
        .worth
        .plans
        .iter()
        .filter(|p| p.treatment != Treatment::Leave)
    {
        let id = plan.treatment.id();
        let text = plan.treatment.text();
        let at = |field: &str| format!("quotes[treatment={id}].{field}");
        let quoted = desk.case.quote(plan.treatment);
        let by = desk.draft.text(&at("by"));
        let summary = match quoted {
            Some(q) if q.post > 0.0 => words::quote_with(text.name, &purse.amount(q.post)),
            _ => words::quote(text.name),
        };
        blocks.push(Block::fold(
            &format!("worth-quote-{id}"),
            &summary,
            vec![
                desk.field(&at("by"), words::WHO_GAVE_IT, "", "", "", false),
                Block::Row {
                    blocks: vec![
                        desk.number(&at("post"), words::POST, words::POST_HINT),
                        desk.number(&at("deposit"), words::DEPOSIT, words::DEPOSIT_HINT),
                    ],
                },
            ],
        ));
        let deposit = desk.draft.number(&at("deposit")).ok().flatten();
        rows.push(vec![
            text.name.to_owned(),
            match (quoted, by.is_empty()) {
                (None, _) => words::USUAL_PRICE.to_owned(),
                (Some(_), true) => words::YOUR_QUOTE.to_owned(),
                (Some(_), false) => words::quote_from(&by),
            },
            purse.band_of(&plan.cost),
            deposit.map_or_else(|| "—".to_owned(), |d| purse.amount(d)),
        ]);
    }
    blocks.push(Block::Table(Table {
        caption: words::COSTS_CAPTION.to_owned(),
        columns: words::COSTS_COLUMNS.map(str::to_owned).to_vec(),
        rows,
    }));
    Block::section("worth-costs", words::COSTS, blocks)
}
