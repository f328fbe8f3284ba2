//! The factors behind the prices, with fields for the user's own.

use super::super::block::{Block, Tone};
use super::{MoneyInputs, with_none};
use crate::wording::money::factors as words;
use leavewell_model::ledger::{Ledger, meaning};
use leavewell_model::record::{FLAWS, schema};
use leavewell_model::treatment::factors_in_play;
use leavewell_model::value::BUYERS;

/// The section: what else a buyer would notice, and the factors that apply.
pub(super) fn factors(inputs: &MoneyInputs) -> Block {
    let mut flaws = vec![Block::para(words::WHATEVER_IS_DONE)];
    for flaw in FLAWS {
        let path = ["flaws.", flaw].concat();
        let label = schema::field(&path).map_or(flaw, |field| field.label);
        flaws.push(inputs.pick(
            &path,
            label,
            "",
            &with_none(std::iter::once(("yes", words::YES))),
        ));
    }
    flaws.push(inputs.field(
        "market.damping_pct",
        words::DAMPING,
        "%",
        words::DAMPING_HINT,
        "100",
        true,
    ));
    let mut own = vec![Block::para(words::WHAT_EACH_IS)];
    for id in in_play(inputs) {
        if let Some(figure) = Ledger::standard().find(&id) {
            own.push(inputs.field(
                &format!("overrides.{id}"),
                meaning(&id).unwrap_or(""),
                "",
                &words::usual_range(figure.low, figure.high, &id),
                &figure.value.to_string(),
                true,
            ));
        }
    }
    own.push(Block::said(Tone::Quiet, words::OUR_JUDGEMENT));
    Block::section(
        "worth-factors",
        words::FACTORS,
        vec![
            Block::fold("worth-flaws", words::FLAWS, flaws),
            Block::fold("worth-own-factors", words::OWN, own),
        ],
    )
}

/// Ids of the factors that affect the price of this piece, before or after work.
fn in_play(inputs: &MoneyInputs) -> Vec<String> {
    let class = inputs.worth.class;
    let (group, replated) = (class.group(), class.replated_group());
    let mut ids = Vec::new();
    for state in ["W1", "W2", "W3", "W4"] {
        for buyer in BUYERS {
            ids.push(format!("value.wear.{group}.{state}.{buyer}"));
        }
    }
    for buyer in BUYERS {
        ids.push(format!("value.replated.{replated}.{buyer}"));
    }
    let of_record = factors_in_play(inputs.case, class, Ledger::standard());
    ids.extend(of_record.into_iter().map(|id| id.text().to_owned()));
    ids.push("value.after_repair".to_owned());
    ids.push("value.detail_after_replate".to_owned());
    for plan in &inputs.worth.plans {
        for what in ["p", "kept"] {
            ids.push(format!(
                "hazard.{}.{}.{what}",
                plan.treatment.id(),
                class.hazard_group()
            ));
        }
    }
    ids
}
