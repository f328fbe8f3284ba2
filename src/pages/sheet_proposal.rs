//! The proposal on a sheet: its steps as typed, and what they come to.

use super::block::{Block, Table};
use super::part_words::named;
use super::sheet::{Paper, listed};
use super::wording::sheet_proposal as words;
use leavewell_model::record::Currency;
use leavewell_model::record::ProposalStep;
use leavewell_model::report::ProposalReport;
use leavewell_model::terms::{Doer, Treatment, percent, sum};

/// The section; `None` where nothing is proposed.
pub(super) fn proposed(paper: &Paper, id: &str) -> Option<Block> {
    let report = paper.report.proposal.as_ref()?;
    let steps = &paper.case.proposal.steps;
    let table = Table {
        caption: words::STEPS.to_owned(),
        columns: words::COLUMNS.map(str::to_owned).to_vec(),
        rows: steps.iter().map(|step| row(paper, step)).collect(),
    };
    let mut blocks = vec![Block::Table(table)];
    blocks.extend(comes_to(paper, report));
    blocks.extend(listed(words::PROBLEMS, &report.problems));
    Some(Block::section(id, words::PROPOSED, blocks))
}

fn row(paper: &Paper, step: &ProposalStep) -> Vec<String> {
    let mut name = step.treatment.name().to_owned();
    if !step.note.is_empty() {
        name = words::with_note(&name, &step.note);
    }
    if step.agreed {
        name = words::agreed(&name);
    }
    let parts: Vec<String> = step.parts.iter().map(|part| named(*part)).collect();
    let parts = if parts.is_empty() {
        words::EVERY_PART.to_owned()
    } else {
        parts.join(", ")
    };
    let hours = step
        .hours
        .map_or_else(|| words::NOT_SAID.to_owned(), |hours| sum("", hours));
    let who = match step.who {
        Some(Doer::Owner) => words::THE_OWNER,
        Some(Doer::Workshop) => words::A_WORKSHOP,
        None => words::NOT_SAID,
    };
    vec![name, parts, price(paper, step), hours, who.to_owned()]
}

fn price(paper: &Paper, step: &ProposalStep) -> String {
    let currency = paper.case.market.currency.unwrap_or(Currency::Other);
    let sum = |x: f64| sum(currency.sign(), x);
    let text = match (step.low, step.likely, step.high) {
        (Some(low), _, Some(high)) => words::range(&sum(low), &sum(high)),
        (low, likely, high) => match likely.or(low).or(high) {
            Some(one) => sum(one),
            None => return words::OUR_ESTIMATE.to_owned(),
        },
    };
    if step.fixed {
        words::fixed(&text)
    } else {
        text
    }
}

fn comes_to(paper: &Paper, report: &ProposalReport) -> Vec<Block> {
    let course = &report.course;
    if course.steps.iter().all(|step| *step == Treatment::Leave) {
        return vec![Block::para(words::NOTHING_LEFT)];
    }
    let lost: Vec<&str> = course.lost.iter().map(|l| l.get()).collect();
    let fact = |name: &str, text: String| (name.to_owned(), text);
    let mut rows = vec![
        fact(words::WEIGHED, course.name.clone()),
        fact(words::COST, paper.money_band(course.cost)),
        fact(
            words::COMPARED,
            words::on_average(&paper.money(course.net_gain.mean)),
        ),
        fact(words::KEPT, percent(course.originality)),
    ];
    if !lost.is_empty() {
        rows.push(fact(words::LOST, lost.join("; ")));
    }
    vec![Block::Facts { rows }]
}

#[cfg(test)]
mod tests {
    use crate::Subject;
    use crate::markdown::markdown;

    #[test]
    fn a_proposal_is_printed_on_the_clients_sheet_with_what_it_comes_to() {
        let case = include_str!("../../tests/cases/dented_tray.json");
        let case = case.trim_end().trim_end_matches('}').trim_end().to_owned()
            + r#","proposal":{"steps":[
                {"id":"1","treatment":"T08","parts":"body","likely":125,"fixed":true,"hours":2.5,"who":"workshop"},
                {"id":"2","treatment":"T05"}]}}"#;
        let subject = Subject::parse(&case.replace("\"version\": 1", "\"version\": 2")).unwrap();
        let text = markdown("", &crate::sheet_client::page(&subject));
        for expected in [
            "The work proposed",
            "£125, fixed",
            "2.5",
            "a workshop",
            "Money, compared with leaving it as it is",
            "Silver dip is left out",
        ] {
            assert!(text.contains(expected), "{expected}: {text}");
        }
    }
}
