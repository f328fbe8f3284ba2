//! The page about money: what the piece would fetch before and after work, what sales suggest, what the
//! work costs, and where it breaks even. The estimate and the quotes are entered on the screen above it,
//! where two numbers are enough.

mod break_evens;
mod factors;
mod ladder;
mod pieces;
mod plans;
mod routes;
mod sales;
#[cfg(test)]
mod tests;

use super::Subject;
use super::block::{Block, Choice, EntryField, Tone};
use super::money_text::MoneyFormat;
use super::wording::money::{CAUTIONS, NOT_SAID};
use leavewell_model::counsel::{Plan, WorthDraws};
use leavewell_model::ledger::Level;
use leavewell_model::record::{Case, Draft, Problem};
use leavewell_model::terms::Route;
use leavewell_model::value::BUYERS;

/// The inputs that every section of the page uses.
struct MoneyInputs<'a> {
    draft: &'a Draft,
    case: &'a Case,
    problems: &'a [Problem],
    worth: &'a WorthDraws,
    /// The same on fewer draws, and as each sort of buyer alone sees it.
    quick: &'a WorthDraws,
    buyers: &'a [WorthDraws],
    format: MoneyFormat,
    route: Route,
}

/// Builds the page.
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let (draft, case, problems) = (subject.draft(), subject.case(), subject.problems());
    let worth = WorthDraws::new(subject.solved());
    let quick = WorthDraws::quick(case);
    let buyers: Vec<WorthDraws> = (0..BUYERS.len())
        .map(|b| {
            let mut only = [0.0; 3];
            only[b] = 1.0;
            WorthDraws::seen_by(case, &quick, only)
        })
        .collect();
    let inputs = MoneyInputs {
        draft,
        case,
        problems,
        worth: &worth,
        quick: &quick,
        buyers: &buyers,
        format: MoneyFormat::of(case.market.currency),
        route: case.market.route.unwrap_or(Route::Auction),
    };
    let mut blocks = vec![
        plans::answer(&inputs),
        sales::sales(&inputs),
        plans::costs(&inputs),
    ];
    blocks.extend(pieces::pieces(&inputs));
    blocks.extend([
        routes::routes(&inputs),
        break_evens::break_evens(&inputs),
        break_evens::bid(&inputs),
        routes::bases(&inputs),
        factors::factors(&inputs),
        cautions(&inputs),
    ]);
    blocks
}

fn cautions(inputs: &MoneyInputs) -> Block {
    let said = inputs
        .worth
        .cautions
        .iter()
        .map(|c| {
            let tone = match c.level {
                Level::Note => Tone::Note,
                Level::Care => Tone::Care,
                Level::Stop => Tone::Stop,
            };
            Block::said(tone, [c.about.as_str(), ": ", &c.text].concat())
        })
        .collect();
    Block::fold("worth-cautions", CAUTIONS, said)
}

/// The options, preceded by "not said".
fn with_none<'a>(options: impl Iterator<Item = (&'a str, &'a str)>) -> Vec<(&'a str, &'a str)> {
    std::iter::once(("", NOT_SAID)).chain(options).collect()
}

impl MoneyInputs<'_> {
    /// What the record's reader found wrong with a field; empty if nothing.
    fn problem(&self, path: &str) -> String {
        self.problems
            .iter()
            .filter(|p| p.field == path)
            .map(|p| [p.message.as_str(), " ", &p.remedy].concat())
            .collect::<Vec<_>>()
            .join(" ")
    }

    /// A field for an amount of money.
    fn number(&self, path: &str, label: &str, hint: &str) -> Block {
        self.field(path, label, self.format.unit(), hint, "", true)
    }

    fn field(
        &self,
        path: &str,
        label: &str,
        unit: &str,
        hint: &str,
        stand_in: &str,
        number: bool,
    ) -> Block {
        Block::Field(EntryField {
            path: path.to_owned(),
            label: label.to_owned(),
            unit: unit.to_owned(),
            hint: hint.to_owned(),
            text: self.draft.text(path),
            stand_in: stand_in.to_owned(),
            problem: self.problem(path),
            number,
        })
    }

    /// A choice of one option. A value from a file that is not among the options stays chosen, under its
    /// own text.
    fn pick(&self, path: &str, label: &str, hint: &str, options: &[(&str, &str)]) -> Block {
        let chosen = self.draft.text(path);
        let mut options: Vec<(String, String)> = options
            .iter()
            .map(|(id, label)| ((*id).to_owned(), (*label).to_owned()))
            .collect();
        if !options.iter().any(|(id, _)| *id == chosen) {
            options.push((chosen.clone(), chosen.clone()));
        }
        let hint = [hint, &self.problem(path)].join(" ").trim().to_owned();
        Block::Choice(Choice {
            path: path.to_owned(),
            label: label.to_owned(),
            hint,
            options,
            chosen,
        })
    }

    /// A field that only this page has, and its number or default.
    fn ask(&self, path: &str, label: &str, unit: &str, hint: &str, stand_in: f64) -> (Block, f64) {
        let (block, value) = super::ask::number(
            self.draft,
            super::ask::NumberField {
                path,
                label,
                unit,
                hint,
                stand_in: Some(stand_in),
            },
        );
        (block, value.unwrap_or(stand_in))
    }

    /// What the seller keeps of a plan by the chosen route, in draw `i`.
    fn kept(&self, i: usize, plan: &Plan) -> f64 {
        kept(self.worth, self.route, i, (plan, 1.0))
    }
}

/// What the seller keeps by a route, in draw `i`, where every price is so many times that of the plan: lot by lot, each
/// with its own charges.
fn kept(worth: &WorthDraws, route: Route, i: usize, (plan, times): (&Plan, f64)) -> f64 {
    let fees = worth.fees.get(i);
    plan.over_lots(i, times, &|hammer| {
        fees.map_or(hammer, |fees| worth.selling.kept(route, fees, hammer))
    })
}
