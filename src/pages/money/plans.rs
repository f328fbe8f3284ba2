//! Before and after: the hammer price, what the seller keeps of it, and what the work costs.

use super::super::block::{Block, Table, Tone};
use super::MoneyInputs;
use super::ladder::{LadderText, Rung, ladder};
use crate::wording::money::plans as words;
use leavewell_model::counsel::Plan;
use leavewell_model::maths::{deciles, mean};
use leavewell_model::terms::Treatment;

/// What the seller keeps after fees and the cost of the work, in every draw.
pub(super) fn net(inputs: &MoneyInputs, plan: &Plan) -> Vec<f64> {
    let each = plan.cost.iter().enumerate();
    each.map(|(i, cost)| inputs.kept(i, plan) - cost).collect()
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
pub(super) fn answer(inputs: &MoneyInputs) -> Block {
    let format = inputs.format;
    let w = inputs.worth;
    let mut blocks = Vec::new();
    let kept_words = words::sold_by(inputs.route);
    if let Some(leave) = w.plans.first() {
        blocks.push(Block::said(
            Tone::Answer,
            words::as_it_is(
                &format.band_of(&leave.hammer),
                kept_words,
                &format.band_of(&net(inputs, leave)),
            ),
        ));
        let mut best: Option<(&Plan, f64)> = None;
        let base = mean(&net(inputs, leave));
        for plan in w.plans.iter().skip(1).filter(|p| p.barred.is_empty()) {
            let gain = mean(&net(inputs, plan)) - base;
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
                words::best(words, &format.amount(gain))
            } else {
                words::nothing_beats_leaving(words, &format.amount(-gain))
            }));
        }
    }
    blocks.push(Block::para(words::undamaged(&format.band_of(&w.undamaged))));
    if inputs.case.comparables.is_empty()
        && leavewell_model::value::guess(&inputs.case.market, &w.ledger).is_none()
    {
        blocks.push(Block::said(Tone::Note, words::NOTHING_GIVEN));
    }
    blocks.push(Block::Picture(before_after(inputs)));
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

fn before_after(inputs: &MoneyInputs) -> super::super::picture::Picture {
    let format = inputs.format;
    let w = inputs.worth;
    let mut rungs = Vec::new();
    let mut rows = Vec::new();
    let base = w.plans.first().map(|p| net(inputs, p)).unwrap_or_default();
    for plan in &w.plans {
        let kept = net(inputs, plan);
        let gain: Vec<f64> = kept.iter().zip(&base).map(|(a, b)| a - b).collect();
        rungs.push(Rung::Name(name(plan)));
        rungs.push(Rung::Band(deciles(&plan.hammer)));
        rungs.push(Rung::Other(deciles(&kept)));
        rows.push(vec![
            name(plan),
            format.band_of(&plan.hammer),
            format.band_of(&plan.cost),
            format.band_of(&kept),
            if plan.treatment == Treatment::Leave {
                "—".to_owned()
            } else {
                format.change(mean(&gain))
            },
        ]);
    }
    ladder(
        LadderText {
            id: "worth-before-after",
            title: words::PICTURE_TITLE.to_owned(),
            description: words::PICTURE.to_owned(),
            ratios: false,
            label: &|v| format.amount(v),
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
pub(super) fn costs(inputs: &MoneyInputs) -> Block {
    let format = inputs.format;
    let mut blocks = vec![Block::para(words::WHERE_COSTS_COME_FROM)];
    let mut rows = Vec::new();
    for plan in inputs
        .worth
        .plans
        .iter()
        .filter(|p| p.treatment != Treatment::Leave)
    {
        let id = plan.treatment.id();
        let text = plan.treatment.text();
        let at = |field: &str| format!("quotes[treatment={id}].{field}");
        let quoted = inputs.case.quote(plan.treatment);
        let by = quoted.map_or("", |quote| quote.by.as_str());
        let summary = match quoted {
            Some(q) if q.post > 0.0 => words::quote_with(text.name, &format.amount(q.post)),
            _ => words::quote(text.name),
        };
        blocks.push(Block::fold(
            &format!("worth-quote-{id}"),
            &summary,
            vec![
                inputs.field(&at("by"), words::WHO_GAVE_IT, "", "", "", false),
                Block::Row {
                    blocks: vec![
                        inputs.number(&at("post"), words::POST, words::POST_HINT),
                        inputs.number(&at("deposit"), words::DEPOSIT, words::DEPOSIT_HINT),
                    ],
                },
            ],
        ));
        let deposit = quoted.and_then(|quote| quote.deposit);
        rows.push(vec![
            text.name.to_owned(),
            match (quoted, by.is_empty()) {
                (None, _) => words::USUAL_PRICE.to_owned(),
                (Some(_), true) => words::YOUR_QUOTE.to_owned(),
                (Some(_), false) => words::quote_from(by),
            },
            format.band_of(&plan.cost),
            deposit.map_or_else(|| "—".to_owned(), |d| format.amount(d)),
        ]);
    }
    blocks.push(Block::Table(Table {
        caption: words::COSTS_CAPTION.to_owned(),
        columns: words::COSTS_COLUMNS.map(str::to_owned).to_vec(),
        rows,
    }));
    Block::section("worth-costs", words::COSTS, blocks)
}
