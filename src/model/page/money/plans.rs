//! Before and after: the hammer price, what is kept of it, and what the work costs.

use super::super::block::{Block, Table, Tone};
use super::Desk;
use super::ladder::{Rung, Told, ladder};
use crate::case::Route;
use crate::counsel::Plan;
use crate::maths::{deciles, mean};
use crate::treatment::Treatment;

/// What is kept after fees and the cost of the work, in every draw.
pub(super) fn net(desk: &Desk, plan: &Plan) -> Vec<f64> {
    plan.hammer
        .iter()
        .zip(&plan.cost)
        .enumerate()
        .map(|(i, (h, c))| desk.kept(i, *h) - c)
        .collect()
}

/// The name of a plan for a row.
pub(super) fn name(plan: &Plan) -> String {
    let name = plan.treatment.text().name;
    if plan.barred.is_empty() {
        name.to_owned()
    } else {
        format!("{name} (not advised)")
    }
}

/// The answer first: before and after, as words, a picture and its table.
pub(super) fn answer(desk: &Desk) -> Block {
    let purse = desk.purse;
    let w = desk.worth;
    let mut blocks = Vec::new();
    let kept_words = match desk.route {
        Route::Auction => "After the seller's fees",
        Route::Private => "Sold privately",
    };
    if let Some(leave) = w.plans.first() {
        blocks.push(Block::said(
            Tone::Answer,
            format!(
                "As it is, it would be knocked down for about {}. {kept_words} you would keep about {}.",
                purse.band_of(&leave.hammer),
                purse.band_of(&net(desk, leave)),
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
            blocks.push(Block::para(
                "As things stand, none of the work below may be advised; what stands there is what it \
                 would come to.",
            ));
        }
        if let Some((plan, gain)) = best {
            let words = plan.treatment.text().name;
            blocks.push(Block::para(if gain > 0.0 {
                format!(
                    "In money alone, \"{words}\" does best of what may be done: on average it would leave \
                     {} more than leaving it alone.",
                    purse.amount(gain)
                )
            } else {
                format!(
                    "In money alone, nothing that may be done beats leaving it alone; \"{words}\" comes \
                     nearest and would on average leave {} less.",
                    purse.amount(-gain)
                )
            }));
        }
    }
    blocks.push(Block::para(format!(
        "Undamaged, one like it would be knocked down for about {}.",
        purse.band_of(&w.undamaged)
    )));
    if desk.case.comparables.is_empty()
        && crate::value::guess(&desk.case.market, &w.ledger).is_none()
    {
        blocks.push(Block::said(
            Tone::Note,
            "You have given no value and no sales, so this rests on what such pieces usually fetch: our \
             judgement, and wide.",
        ));
    }
    blocks.push(Block::Picture(before_after(desk)));
    let reasons: Vec<String> = w
        .plans
        .iter()
        .filter(|p| !p.barred.is_empty())
        .map(|p| format!("{} is not advised: {}", p.treatment.text().name, p.barred))
        .collect();
    if !reasons.is_empty() {
        blocks.push(Block::List { items: reasons });
    }
    blocks.push(Block::said(
        Tone::Quiet,
        "Indicative, not an appraisal. Each pair of numbers in brackets holds 8 cases in 10. Money is \
         only one side: what is lost for good stands with the counsel.",
    ));
    Block::section("worth-answer", "What it is worth before and after", blocks)
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
        rungs.push(Rung::Band(deciles(&mut plan.hammer.clone())));
        rungs.push(Rung::Other(deciles(&mut kept.clone())));
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
            title: "The hammer price, and below it what is left after fees and the work".to_owned(),
            description: "For each thing that could be done, a band of hammer prices and under it, told \
                          apart by lines, the band of what is left after the seller's fees and the cost \
                          of the work; a stroke marks each middle."
                .to_owned(),
            ratios: false,
            label: &|v| purse.amount(v),
            table: Table {
                caption: "Before and after: middle, and where 8 in 10 would lie".to_owned(),
                columns: [
                    "What is done",
                    "Hammer price",
                    "Cost of the work",
                    "Left after fees and work",
                    "Against leaving it, on average",
                ]
                .map(str::to_owned)
                .to_vec(),
                rows,
            },
        },
        &rungs,
    )
}

/// What the work costs: what goes with a price, and what is reckoned with.
pub(super) fn costs(desk: &Desk) -> Block {
    let purse = desk.purse;
    let mut blocks = vec![Block::para(
        "This goes with the prices put in above. Without a price a usual one is taken and the range is wide. A \
         price given as one number is taken to run over at times, as jobs do.",
    )];
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
            Some(q) if q.post > 0.0 => {
                format!(
                    "{}: who asked it, deposit; post and insurance {}",
                    text.name,
                    purse.amount(q.post)
                )
            }
            _ => format!("{}: who asked it, post, deposit", text.name),
        };
        blocks.push(Block::fold(
            &format!("worth-quote-{id}"),
            &summary,
            vec![
                desk.field(&at("by"), "Who gave it", "", "", "", false),
                Block::Row {
                    blocks: vec![
                        desk.number(
                            &at("post"),
                            "Post and insurance",
                            "There and back, on top of the price.",
                        ),
                        desk.number(
                            &at("deposit"),
                            "Deposit",
                            "Paid before the work; part of the price.",
                        ),
                    ],
                },
            ],
        ));
        let deposit = crate::case::typed_number(&desk.draft.text(&at("deposit")));
        rows.push(vec![
            text.name.to_owned(),
            match (quoted, by.is_empty()) {
                (None, _) => "Usual price for such work".to_owned(),
                (Some(_), true) => "Your quote".to_owned(),
                (Some(_), false) => format!("Quote from {by}"),
            },
            purse.band_of(&plan.cost),
            deposit.map_or_else(|| "—".to_owned(), |d| purse.amount(d)),
        ]);
    }
    blocks.push(Block::Table(Table {
        caption: "What the work is reckoned to cost, post and insurance included".to_owned(),
        columns: ["Work", "Where from", "Cost", "Of which before the work"]
            .map(str::to_owned)
            .to_vec(),
        rows,
    }));
    Block::section("worth-costs", "What the work costs", blocks)
}
