//! Each recorded fault with the choice it leaves: leave it, or treat it at a price, and what each does.

use leavewell_model::Report;
use leavewell_model::report::{CourseReport, FaultReport, OptionReport, StepReport};
use leavewell_model::terms::{Goal, Outcome, Treatment, small};
use leavewell_model::terms::{all_of, capital, sum};
use leavewell_pages::standing::Standing;
use yew::prelude::*;

use super::options::is_by_itself;
use crate::app::pages::Page;
use crate::app::parts::element::{El, el, group};
use crate::app::parts::marks::folded_section;
use crate::app::parts::words::{count, joined, money};
use crate::app::route::Route;
use crate::app::wording::counsel::LIFTS;
use crate::app::wording::faults as text;

/// Sums and points below these are called level.
const LEAST_MONEY: f64 = 5.0;
const LEAST_POINTS: f64 = 0.5;

/// A section for each fault of the report.
pub(super) fn faults(page: Page, report: &Report) -> Html {
    let none = report.faults.is_empty();
    let link = el("a", "")
        .attr("href", Route::Condition.href())
        .text(text::TO_CONDITION);
    let body = group()
        .el(el("p", "hint").hidden(none).text(text::HINT))
        .el(el("p", "")
            .hidden(!none)
            .text(text::NONE)
            .text(" ")
            .el(link))
        .el(group().each(&report.faults, |fault| one(page, report, fault)))
        .html();
    folded_section("faults", "faults-title", text::TITLE, body)
}

fn one(page: Page, report: &Report, fault: &FaultReport) -> El {
    let parts: Vec<String> = fault.parts.iter().map(|part| small(part.label())).collect();
    let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
    let answers: Vec<&OptionReport> = fault
        .answers
        .iter()
        .filter_map(|id| report.options.iter().find(|o| o.treatment == *id))
        .collect();
    let rows = answers.iter().map(|option| {
        let standing = Standing::of(option, report);
        (
            option.name.get().to_owned(),
            told(page, report, option, standing),
        )
    });
    let rows: Vec<(String, String)> = std::iter::once((text::LEAVE.to_owned(), left(page, fault)))
        .chain(rows)
        .collect();
    el("section", "fault")
        .key(fault.fault.id())
        .el(el("h3", "").words(text::heading(&fault.name, &all_of(&parts))))
        .said("fault-choice", choice(page, report, &answers))
        .el(el("dl", "facts").each(rows, |(name, said)| {
            el("div", "")
                .el(el("dt", "").words(name))
                .el(el("dd", "").words(said))
        }))
}

/// The choice in one line: leaving, and each treatment that can be had, with its price.
fn choice(page: Page, report: &Report, answers: &[&OptionReport]) -> String {
    let open = answers.iter().filter(|option| {
        let standing = Standing::of(option, report);
        !matches!(standing, Standing::Barred | Standing::Never)
    });
    let priced: Vec<String> = open
        .map(|option| text::priced(&small(option.name.get()), &cost(page, option)))
        .collect();
    text::choice(&priced.join(text::OR))
}

fn left(page: Page, fault: &FaultReport) -> String {
    let word = if fault.left {
        text::WE_ADVISE
    } else {
        text::WE_WOULD_NOT
    };
    if is_for_sale(page) && fault.price_left < 1.0 {
        let hundredths = (100.0 * fault.price_left).round().to_string();
        joined(&[word, &text::fetches(&hundredths)])
    } else {
        word.to_owned()
    }
}

/// The word for where a treatment stands, its cost, and what it does or what keeps it out.
fn told(page: Page, report: &Report, option: &OptionReport, standing: Standing) -> String {
    let word = joined(&[standing.word(), ". "]);
    let cost = joined(&[&capital(&cost(page, option)), ". "]);
    let why = option
        .verdicts
        .first()
        .map(|v| {
            let lifts = if v.outcome == Outcome::Barred {
                LIFTS
            } else {
                ""
            };
            joined(&[&v.reason, " ", lifts, &v.lifted_by])
        })
        .unwrap_or_default();
    match standing {
        Standing::Barred | Standing::Never => joined(&[&word, &why]),
        Standing::NeedsCheck | Standing::NeedsOpinion => {
            joined(&[&word, &cost, &effect(page, report, option), " ", &why])
        }
        _ => joined(&[&word, &cost, &effect(page, report, option)]),
    }
}

/// What it costs: as it was typed where somebody quoted it, else by our estimate.
fn cost(page: Page, option: &OptionReport) -> String {
    let currency = page.open.currency();
    let quotes = &page.open.case.quotes;
    let quoted = quotes
        .iter()
        .rfind(|quote| matches!(quote.treatments[..], [one] if option.treatment == one));
    match quoted {
        Some(quote) => text::as_quoted(&sum(currency.sign(), quote.likely)),
        None if option.cost.p90 <= 0.0 => text::NO_COST.to_owned(),
        None if option.quoted => text::as_quoted(&money(option.cost.p50, currency)),
        None => text::by_estimate(&text::about(&money(option.cost.p50, currency))),
    }
}

/// What a step of the advice does is told by leaving it out, what another does by doing it alone.
fn effect(page: Page, report: &Report, option: &OptionReport) -> String {
    let find = |wanted: &dyn Fn(&&CourseReport) -> bool| report.courses.iter().find(wanted);
    let advised = find(&|c| c.steps == report.counsel.steps);
    let step = advised.and_then(|c| c.each.iter().find(|s| s.step == option.treatment));
    if let Some(step) = step {
        return without(page, step);
    }
    let alone = find(&|c| is_by_itself(c, option.treatment));
    let leave = find(&|c| c.steps == [Treatment::Leave]);
    let (Some(alone), Some(leave)) = (alone, leave) else {
        return String::new();
    };
    if is_for_sale(page) {
        let gain = alone.net.mean - leave.net.mean;
        let amount = money(gain.abs(), page.open.currency());
        return match gain {
            gain if gain.abs() < LEAST_MONEY => text::WORTH_SAME.to_owned(),
            gain if gain > 0.0 => text::worth_more(&amount),
            _ => text::worth_less(&amount),
        };
    }
    let gain = 100.0 * (alone.score - leave.score);
    match gain {
        gain if gain.abs() < LEAST_POINTS => text::SCORES_SAME.to_owned(),
        gain if gain > 0.0 => text::scores_more(&points(gain)),
        _ => text::scores_less(&points(gain)),
    }
}

/// What leaving a step out of a course does.
pub(super) fn without(page: Page, step: &StepReport) -> String {
    if is_for_sale(page) {
        let lost = -step.without;
        return if lost < LEAST_MONEY {
            text::WITHOUT_NOTHING.to_owned()
        } else {
            text::without_money(&money(lost, page.open.currency()))
        };
    }
    let lost = -100.0 * step.without;
    if lost < LEAST_POINTS {
        text::WITHOUT_NOTHING.to_owned()
    } else {
        text::without_points(&points(lost))
    }
}

fn points(points: f64) -> String {
    // A share of 1 times 100 fits.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let whole = points.abs().round() as usize;
    count(whole, text::POINT, text::POINTS)
}

fn is_for_sale(page: Page) -> bool {
    page.open.case.aim.goal_or_default() == Goal::Sell
}
