//! What is printed of the stock: labels, and the stock list.

use leavewell_model::terms::{Currency, sum};
use yew::prelude::*;

use super::cell;
use crate::app::parts::element::{El, button, el};
use crate::app::parts::marks::press;
use crate::app::route::Route;
use crate::app::state::{Effect, ShelfLine, State};
use crate::app::stock_book::BookColumn;
use crate::app::wording::{places, stock as text};

/// The screen of the labels.
pub fn labels_page(state: &State, effect: &Callback<Effect>) -> Html {
    let pieces = state.book.chosen_or_found(&state.shelf);
    let labels = el("ul", "labels").each(&pieces, |line| label(line));
    sheet(text::LABELS_TITLE, pieces.is_empty(), labels, effect)
}

/// The screen of the stock list.
pub fn list_page(state: &State, effect: &Callback<Effect>) -> Html {
    let pieces = state.book.chosen_or_found(&state.shelf);
    let head = el("tr", "").each(&BookColumn::SHOWN, |column| {
        el("th", amount(*column))
            .attr("scope", "col")
            .text(text::column(*column))
    });
    let body = el("tbody", "").each(&pieces, |line| {
        el("tr", "")
            .key(&line.id)
            .each(&BookColumn::SHOWN, |column| {
                let tag = if *column == BookColumn::Name {
                    "th"
                } else {
                    "td"
                };
                el(tag, amount(*column))
                    .attr("scope", if tag == "th" { "row" } else { "" })
                    .words(cell(line, *column))
            })
    });
    let foot = el("tr", "").each(&BookColumn::SHOWN, |column| {
        let words = match column {
            BookColumn::Name => text::TOTAL.to_owned(),
            _ => total(&pieces, *column),
        };
        el("td", amount(*column)).words(words)
    });
    let table = el("table", "stock-list")
        .el(el("thead", "").el(head))
        .el(body)
        .el(el("tfoot", "").el(foot));
    let scroll = el("div", "table-scroll")
        .attr("role", "region")
        .attr("aria-label", text::LIST_TITLE)
        .attr("tabindex", "0")
        .el(table);
    sheet(text::LIST_TITLE, pieces.is_empty(), scroll, effect)
}

fn amount(column: BookColumn) -> &'static str {
    if column.is_amount() { "is-amount" } else { "" }
}

/// The amounts of a column together, one sum for each currency.
fn total(pieces: &[&ShelfLine], column: BookColumn) -> String {
    let of = |line: &ShelfLine| match column {
        BookColumn::Paid => line.stock.paid,
        BookColumn::Spent => line.stock.spent,
        BookColumn::Asking => line.stock.asking,
        _ => None,
    };
    let currencies = Currency::ALL
        .iter()
        .map(|currency| Some(*currency))
        .chain([None]);
    let sums = currencies.filter_map(|currency| {
        let in_it = pieces.iter().filter(|line| line.stock.currency == currency);
        let together = in_it
            .filter_map(|line| of(line))
            .reduce(|all, one| all + one)?;
        Some(sum(
            currency.map_or("", |currency| currency.sign()),
            together,
        ))
    });
    sums.collect::<Vec<String>>().join(", ")
}

/// One label: number, name, what it is, and the price.
fn label(line: &ShelfLine) -> El {
    let kind = cell(line, BookColumn::Kind);
    let price = cell(line, BookColumn::Asking);
    el("li", "stock-label")
        .key(&line.id)
        .said("label-number", line.stock.number.clone())
        .el(el("p", "label-name").words(line.name.clone()))
        .el(el("p", "")
            .hidden(kind.is_empty() || kind == line.name)
            .words(kind.clone()))
        .el(el("p", "label-price")
            .hidden(price.is_empty())
            .words(price.clone()))
        .p("label-note", text::ASK_FOR_SHEET)
}

/// A screen to print, with its buttons.
fn sheet(title: &'static str, is_empty: bool, body: El, effect: &Callback<Effect>) -> Html {
    let back = el("a", "link-alone")
        .attr("href", Route::Shelf.href())
        .text(places::BACK);
    let head = el("header", "screen-head")
        .el(el("h1", "").attr("tabindex", "-1").text(title))
        .p("purpose", text::PAPER_HINT)
        .el(el("p", "buttons")
            .el(button("main")
                .pressed(press(effect, Effect::Print))
                .text(text::PRINT))
            .el(back));
    el("div", "screen is-wide stock-paper")
        .el(head)
        .el(el("p", "").hidden(!is_empty).text(text::NOTHING_TO_PRINT))
        .el(body.hidden(is_empty))
        .html()
}
