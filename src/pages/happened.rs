//! What happened to a piece in the end: its fields, and what had been said.

use super::Subject;
use super::as_typed::as_typed;
use super::ask::{NumberField, choice, number};
use super::block::{Block, EntryField, Tone};
use super::money_text::MoneyFormat;
use super::number_text::figures;
use super::wording::happened as words;
use super::wording::not_counted::not_counted;
use leavewell_model::learn::{Closing, ScoredPrediction, Topic, evidence, price, record_of};
use leavewell_model::record::{Draft, PredictedWhen, Problem, SoldAs};
use leavewell_model::terms::{BuyerSort, Currency, Ending, StockStatus, UnsoldAt};

/// The section.
pub(super) fn happened(subject: &Subject) -> Block {
    let (draft, case) = (subject.draft(), subject.case());
    let format = MoneyFormat::of(case.market.currency);
    let mut blocks = vec![Block::said(Tone::Quiet, words::PURPOSE)];
    let open = [("", words::STILL_OPEN)].into_iter();
    let endings: Vec<_> = open
        .chain(
            Ending::ALL
                .iter()
                .map(|ending| (ending.id(), ending.label())),
        )
        .collect();
    let (ended, _) = choice(draft, "closed.outcome", words::ENDED, "", &endings);
    if case.closed.outcome.is_none() {
        blocks.extend(before(subject, format));
    }
    blocks.push(ended);
    match case.closed.outcome {
        Some(Ending::Sold) => blocks.push(sale(draft, format)),
        Some(Ending::Unsold) => blocks.extend(unsold(draft, format)),
        Some(Ending::Kept | Ending::GivenBack | Ending::Stopped) | None => {}
    }
    blocks.extend(said_and_done(subject, format));
    if case.closed.outcome.is_some() {
        blocks.push(more(subject, format));
    }
    Block::section("done.happened", words::TITLE, blocks)
}

/// Where the piece stands before it is closed, and what was noted when it was offered.
fn before(subject: &Subject, format: MoneyFormat) -> Vec<Block> {
    let case = subject.case();
    let mut statuses = vec![("", words::NOT_CHOSEN)];
    statuses.extend(StockStatus::ENTERED.iter().map(|s| (s.id(), s.label())));
    let (status, _) = choice(
        subject.draft(),
        "stock.status",
        words::STATUS,
        words::STATUS_HINT,
        &statuses,
    );
    let offered = case
        .predicted
        .iter()
        .find(|p| p.event == PredictedWhen::Offered);
    let noted = offered.and_then(|p| {
        let price = format.band(p.taught_values.price.or(p.shipped.price)?);
        Some(p.on.map_or_else(
            || words::noted_undated(&price),
            |on| words::noted(&price, &on.to_string()),
        ))
    });
    [Some(status), noted.map(Block::para)]
        .into_iter()
        .flatten()
        .collect()
}

fn money(draft: &Draft, path: &str, label: &str, hint: &str, unit: &str) -> Block {
    let asked = NumberField {
        path,
        label,
        unit,
        hint,
        stand_in: None,
    };
    number(draft, asked).0
}

fn sale(draft: &Draft, format: MoneyFormat) -> Block {
    let price = money(
        draft,
        "closed.sale.price",
        words::SOLD_FOR,
        "",
        format.unit(),
    );
    let sorts = SoldAs::ALL.iter().map(|sort| (sort.id(), sort.label()));
    let sorts: Vec<_> = [("", words::NOT_SAID)].into_iter().chain(sorts).collect();
    let (sort, _) = choice(
        draft,
        "closed.sale.what",
        words::SORT_OF_PRICE,
        words::SORT_HINT,
        &sorts,
    );
    Block::Row {
        blocks: vec![price, sort],
    }
}

fn unsold(draft: &Draft, format: MoneyFormat) -> Vec<Block> {
    let price = money(
        draft,
        "closed.unsold.price",
        words::UNSOLD_AT,
        "",
        format.unit(),
    );
    let sorts = UnsoldAt::ALL.iter().map(|sort| (sort.id(), sort.label()));
    let sorts: Vec<_> = [("", words::NOT_SAID)].into_iter().chain(sorts).collect();
    let (sort, _) = choice(
        draft,
        "closed.unsold.what",
        words::UNSOLD_WHAT,
        words::UNSOLD_WHAT_HINT,
        &sorts,
    );
    let months = money(
        draft,
        "closed.unsold.months",
        words::MONTHS,
        words::MONTHS_HINT,
        words::MONTHS_UNIT,
    );
    vec![
        Block::Row {
            blocks: vec![price, sort],
        },
        months,
    ]
}

fn said_and_done(subject: &Subject, format: MoneyFormat) -> Vec<Block> {
    let case = subject.case();
    let closing = [Closing {
        id: String::new(),
        case: case.clone(),
    }];
    let mut blocks = Vec::new();
    let sold = case.closed.outcome == Some(Ending::Sold) && case.closed.sale.price.is_some();
    if let Some(said) = price(&closing[0]) {
        let [low, likely, high] = said.predicted.map(|x| format.amount(x));
        let fetched = format.exact(said.happened);
        blocks.push(Block::said(
            Tone::Answer,
            words::price_said(&likely, &low, &high, &fetched),
        ));
        if !matches!(case.closed.sale.sold_as, None | Some(SoldAs::Hammer)) {
            blocks.push(Block::said(Tone::Quiet, words::AS_HAMMER));
        }
    } else if sold && case.predicted.is_empty() {
        blocks.push(Block::said(Tone::Quiet, words::NOTHING_NOTED));
    }
    let name = |said: &ScoredPrediction| {
        said.work
            .map_or("", leavewell_model::terms::Treatment::name)
    };
    for said in record_of(Topic::Bills, &closing).predictions {
        let [low, likely, high] = said.predicted.map(|x| format.amount(x));
        let bill = format.exact(said.happened);
        let text = words::bill_said(name(&said), &likely, &low, &high, &bill);
        blocks.push(Block::para(text));
    }
    for said in record_of(Topic::Hours, &closing).predictions {
        let [low, likely, high] = said.predicted.map(figures);
        let hours = figures(said.happened);
        let text = words::hours_said(name(&said), &likely, &low, &high, &hours);
        blocks.push(Block::para(text));
    }
    let told = evidence(&closing, case.asked_on);
    let mut why: Vec<String> = told
        .iter()
        .flat_map(|one| {
            one.not_counted
                .iter()
                .map(|(_, why)| not_counted(*why).to_owned())
        })
        .collect();
    why.dedup();
    if !why.is_empty() {
        blocks.push(Block::said(Tone::Note, words::TEACHES_NOTHING));
        blocks.push(Block::List { items: why });
    }
    blocks
}

pub(super) fn problem_at(problems: &[Problem], path: &str) -> String {
    let found = problems.iter().find(|problem| problem.field == path);
    found.map_or_else(String::new, |p| [&p.message, " ", &p.remedy].concat())
}

fn text(subject: &Subject, path: &str, label: &str, hint: &str) -> Block {
    Block::Field(EntryField {
        path: path.to_owned(),
        label: label.to_owned(),
        unit: String::new(),
        hint: hint.to_owned(),
        text: as_typed(&subject.draft().text(path)),
        stand_in: String::new(),
        problem: problem_at(subject.problems(), path),
        number: false,
    })
}

/// What is worth knowing and need not be told.
fn more(subject: &Subject, format: MoneyFormat) -> Block {
    let (draft, case) = (subject.draft(), subject.case());
    let on = if case.closed.outcome == Some(Ending::Sold) {
        "closed.sale.on"
    } else {
        "closed.on"
    };
    let mut blocks = vec![text(subject, on, words::WHEN, words::WHEN_HINT)];
    if case.closed.outcome == Some(Ending::Sold) {
        let not_said = || [("", words::NOT_SAID)].into_iter();
        let buyers: Vec<_> = not_said()
            .chain(BuyerSort::ALL.iter().map(|b| (b.id(), b.label())))
            .collect();
        let same = [("", words::SAME_CURRENCY)].into_iter();
        let currencies: Vec<_> = same
            .chain(Currency::ALL.iter().map(|c| (c.id(), c.label())))
            .collect();
        let (buyer, _) = choice(draft, "closed.sale.buyer", words::BUYER, "", &buyers);
        let (currency, _) = choice(
            draft,
            "closed.sale.currency",
            words::CURRENCY,
            "",
            &currencies,
        );
        let unit = format.unit();
        let of = |path: &str, label: &str, unit: &str| money(draft, path, label, "", unit);
        let pct = words::PERCENT;
        blocks.extend([
            Block::Row {
                blocks: vec![buyer, text(subject, "closed.sale.where", words::WHERE, "")],
            },
            Block::Row {
                blocks: vec![of("closed.sale.reserve", words::RESERVE, unit), currency],
            },
            Block::said(Tone::Quiet, words::STATEMENT),
            Block::Row {
                blocks: vec![
                    of(
                        "closed.sale.statement.commission_pct",
                        words::COMMISSION,
                        pct,
                    ),
                    of("closed.sale.statement.lot", words::LOT_FEE, unit),
                ],
            },
            Block::Row {
                blocks: vec![
                    of("closed.sale.statement.vat_pct", words::TAX, pct),
                    of("closed.sale.statement.insurance_pct", words::INSURANCE, pct),
                ],
            },
        ]);
    }
    let teaches = [("", words::TEACHES), ("yes", words::TEACHES_NOT)];
    let (left_out, _) = choice(draft, "closed.left_out", words::LEFT_OUT, "", &teaches);
    blocks.push(left_out);
    blocks.push(text(subject, "closed.why", words::WHY, ""));
    Block::fold("done.happened.more", words::MORE, blocks)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(fields: &[(&str, &str)]) -> String {
        let mut draft = Draft::default();
        draft.set("market.currency", "GBP");
        for (path, text) in fields {
            draft.set(path, text);
        }
        serde_json::to_string(&happened(&Subject::new(draft))).unwrap()
    }

    const NOTED: (&str, &str) = ("predicted[event=offered].shipped.price", "120/210/380");

    #[test]
    fn a_sale_is_held_against_what_was_noted_before_it() {
        let sold = [
            NOTED,
            ("closed.outcome", "sold"),
            ("closed.sale.price", "263"),
        ];
        let page = shown(&sold);
        assert!(
            page.contains("We said £210 (£120 to £380). It fetched £263."),
            "{page}"
        );
        assert!(!page.contains("closed.unsold"));
        let unnoted = shown(&sold[1..]);
        assert!(unnoted.contains(words::NOTHING_NOTED), "{unnoted}");
        let open = shown(&[NOTED]);
        assert!(
            open.contains("stock.status") && open.contains("£210"),
            "{open}"
        );
        assert!(!open.contains("closed.sale.price"));
    }

    #[test]
    fn an_offer_without_a_buyer_asks_for_its_limit_and_bad_input_is_named() {
        let page = shown(&[
            ("closed.outcome", "unsold"),
            ("closed.unsold.price", "a lot"),
        ]);
        assert!(page.contains("closed.unsold.months"));
        assert!(page.contains("is not a number"), "{page}");
        let page = shown(&[
            NOTED,
            ("closed.outcome", "sold"),
            ("closed.sale.price", "263"),
            ("closed.sale.currency", "EUR"),
        ]);
        assert!(page.contains(not_counted(
            leavewell_model::learn::NotCounted::OtherCurrency
        )));
    }
}
