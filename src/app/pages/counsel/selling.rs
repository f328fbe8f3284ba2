//! Where to sell it, and the most to pay for who buys it to sell on.

use leavewell_model::Report;
use leavewell_model::report::{CourseReport, SellingReport};
use leavewell_model::terms::{Currency, Treatment};
use yew::prelude::*;

use crate::app::parts::element::{El, el, group};
use crate::app::parts::marks::{fold, table};
use crate::app::parts::words::{money, money_band};
use crate::app::route::Route;
use crate::app::wording::selling as text;

/// The section; empty unless the piece is to be sold.
pub(super) fn selling(report: &Report, currency: Currency) -> Html {
    let Some(selling) = &report.counsel.selling else {
        return group().html();
    };
    let sum = |amount: f64| money(amount, currency);
    let priced = [
        selling.reserve.map(|reserve| text::reserve(&sum(reserve))),
        selling.ticket.map(|ticket| text::ticket(&sum(ticket))),
    ];
    let terms = el("p", "").el(el("a", "link-alone")
        .attr("href", Route::Money.href())
        .text(text::TERMS));
    let besides = [Some(selling.besides.clone()).filter(|said| !said.is_empty())];
    let more = group()
        .each(priced.into_iter().chain(besides).flatten(), |said| {
            el("p", "").words(said)
        })
        .el(bids(report, currency))
        .put(ways(selling, currency))
        .el(terms)
        .html();
    el("div", "selling")
        .put(fold("selling-ways", selling.sentence.clone(), more))
        .html()
}

/// What each way leaves.
fn ways(selling: &SellingReport, currency: Currency) -> Html {
    let rows = selling.routes.iter().map(|way| {
        let name = way.name.get();
        let name = if way.route == selling.best {
            text::best(name)
        } else {
            name.to_owned()
        };
        let when = match way.months {
            None => text::NOT_KNOWN.to_owned(),
            Some(months) if months > 0.0 => text::months(months),
            Some(_) => text::AT_ONCE.to_owned(),
        };
        vec![name, money_band(way.kept, currency), when]
    });
    table(
        text::TITLE.to_owned(),
        text::CAPTION.into(),
        &text::COLUMNS,
        rows.collect(),
    )
}

/// The most to pay: as it is, and with what is advised.
fn bids(report: &Report, currency: Currency) -> El {
    let most = |course: Option<&CourseReport>| course.and_then(|c| c.most_to_pay);
    let of = |steps: &[Treatment]| report.courses.iter().find(|c| c.steps == steps);
    let as_it_is = most(of(&[Treatment::Leave]));
    let advised = report
        .courses
        .iter()
        .find(|c| c.steps == report.counsel.steps);
    let said = match (as_it_is, most(advised)) {
        (Some(now), Some(then)) if report.counsel.steps != [Treatment::Leave] => {
            text::most_to_pay_with(&money(now, currency), &money(then, currency))
        }
        (Some(now), _) => text::most_to_pay(&money(now, currency)),
        _ => String::new(),
    };
    el("p", "").hidden(said.is_empty()).words(said)
}
