//! The stock book: the pieces on the shelf as cards or as a table, searched, sorted, and several chosen at once.

pub mod paper;
pub mod quick;
pub mod table;

use leavewell_model::terms::{StockStatus, sum};
use yew::prelude::*;

use crate::app::parts::choice::option;
use crate::app::parts::element::{self, El, button, el};
use crate::app::parts::field::typed;
use crate::app::parts::marks::press;
use crate::app::parts::words::{joined, money, number};
use crate::app::route::Route;
use crate::app::state::{Action, Effect, Likeness, ShelfLine, State};
use crate::app::stock_book::{
    BookChange, BookColumn, Layout, PAGE, StockBook, WORTH_SEARCHING, group,
};
use crate::app::wording::stock as text;

/// The id of the search field.
pub const SEARCH: &str = "book-search";

/// The book. A card is made by `card`.
pub fn book(
    state: &State,
    act: &Callback<Action>,
    effect: &Callback<Effect>,
    card: impl Fn(&ShelfLine) -> El,
) -> Html {
    let book = &*state.book;
    let found = book.found(&state.shelf);
    let pages = found.len().div_ceil(PAGE).max(1);
    let page = book.page.min(pages - 1);
    let shown = found.iter().skip(page * PAGE).take(PAGE).copied();
    let is_table = book.layout == Layout::Table;
    let is_worth_searching = is_table || state.shelf.len() >= WORTH_SEARCHING;
    let pieces = if is_table {
        rows(book, shown, act, effect)
    } else {
        el("ul", "shelf").each(shown, |line| {
            let tick = tick(book, line, act).hidden(!is_worth_searching);
            card(line).el(tick)
        })
    };
    el("div", "book")
        .el(controls(book, is_worth_searching, act))
        .el(el("p", "buttons book-found")
            .hidden(!is_worth_searching)
            .el(el("span", "hint")
                .attr("data-said", "true")
                .words(text::found(found.len(), state.shelf.len())))
            .el(button("quiet")
                .pressed(press(act, Action::Book(BookChange::ChooseFound)))
                .text(text::CHOOSE_FOUND)))
        .el(chosen(state, act, effect))
        .el(el("p", "hint")
            .hidden(!found.is_empty())
            .text(text::NOTHING_FOUND))
        .el(pieces)
        .el(turning(page, pages, act))
        .html()
}

/// Search, filter, order and layout.
fn controls(book: &StockBook, is_worth_searching: bool, act: &Callback<Action>) -> El {
    let changed = |change: fn(String) -> BookChange| {
        act.reform(move |event: Event| Action::Book(change(typed(&event))))
    };
    let search = el("input", "")
        .attr("id", SEARCH)
        .attr("type", "text")
        .attr("autocomplete", "off")
        .value(book.search.clone())
        .typed(changed(BookChange::Search).reform(|event: InputEvent| event.into()));
    let search = el("div", "field")
        .el(el("label", "").attr("for", SEARCH).text(text::SEARCH))
        .el(search);
    let mut statuses = vec![("", text::EVERY_STATUS)];
    statuses.extend(StockStatus::ALL.iter().map(|s| (s.id(), s.label())));
    statuses.push(("none", text::WITHOUT_STATUS));
    let status = pick(
        "book-status",
        text::STATUS,
        &statuses,
        &book.status,
        changed(BookChange::Filter),
    );
    let order: Vec<(&str, &str)> = orders()
        .map(|(id, column)| (id, text::column(column)))
        .collect();
    let now = orders().find(|(_, column)| *column == book.column);
    let sort = pick(
        "book-sort",
        text::SORT,
        &order,
        now.map_or("", |(id, _)| id),
        changed(|id| BookChange::Sort(column_of(&id))),
    )
    // The headings of the table sort it.
    .hidden(book.layout == Layout::Table);
    let lay = |layout: Layout, words| {
        let pressed = if book.layout == layout {
            "true"
        } else {
            "false"
        };
        button("quiet")
            .attr("aria-pressed", pressed)
            .pressed(press(act, Action::Book(BookChange::Lay(layout))))
            .text(words)
    };
    let layout = el("p", "buttons book-layout")
        .attr("role", "group")
        .attr("aria-label", text::LAYOUT)
        .el(lay(Layout::Cards, text::CARDS))
        .el(lay(Layout::Table, text::TABLE));
    el("div", "book-controls")
        .el(el("div", "book-search")
            .hidden(!is_worth_searching)
            .el(search)
            .el(status)
            .el(sort))
        .el(layout)
}

/// The orders of the list, each with the id of its option.
fn orders() -> impl Iterator<Item = (&'static str, BookColumn)> {
    const IDS: [&str; 11] = [
        "number", "name", "kind", "place", "lot", "paid", "spent", "asking", "most", "advised",
        "status",
    ];
    [("", BookColumn::Newest)]
        .into_iter()
        .chain(IDS.into_iter().zip(BookColumn::SHOWN))
}

fn column_of(id: &str) -> BookColumn {
    let known = orders().find(|(known, _)| *known == id);
    known.map_or(BookColumn::Newest, |(_, column)| column)
}

/// A short drop-down list with its label.
fn pick(
    id: &'static str,
    label: &'static str,
    choices: &[(&'static str, &'static str)],
    value: &str,
    changed: Callback<Event>,
) -> El {
    let select = el("select", "")
        .attr("id", id)
        .changed(changed)
        .each(choices, |(choice, words)| {
            option(choice, words, *choice == value)
        });
    el("div", "field")
        .el(el("label", "").attr("for", id).text(label))
        .el(select)
}

/// What can be done with the chosen pieces.
fn chosen(state: &State, act: &Callback<Action>, effect: &Callback<Effect>) -> El {
    let book = &*state.book;
    let on_shelf = state
        .shelf
        .iter()
        .filter(|line| book.chosen.contains(&line.id));
    let ids: Vec<String> = on_shelf.map(|line| line.id.clone()).collect();
    let n = ids.len();
    let one = ids.first().cloned().unwrap_or_default();
    let mut statuses = vec![("", text::LEAVE_STATUS)];
    statuses.extend(StockStatus::ALL.iter().map(|s| (s.id(), s.label())));
    statuses.push(("none", text::NO_STATUS));
    let set = {
        let ids = ids.clone();
        effect.reform(move |event: Event| {
            let id = typed(&event);
            let status = StockStatus::parse(&id).map_or("", StockStatus::id);
            // The first choice changes nothing.
            let ids = if id.is_empty() {
                Vec::new()
            } else {
                ids.clone()
            };
            Effect::SetStatus(ids, status)
        })
    };
    let does = |class, words, what: Effect| button(class).pressed(press(effect, what)).text(words);
    let remove = el("details", "confirm")
        .tag("summary", text::REMOVE)
        .p("", text::REMOVE_MEANS)
        .el(button("stop")
            .pressed(press(effect, Effect::DeleteAll(ids.clone())))
            .words(text::remove_now(n)));
    let another = |words, likeness| {
        does("quiet", words, Effect::Another(one.clone(), likeness)).hidden(n != 1)
    };
    el("div", "book-chosen")
        .hidden(n == 0)
        .el(el("p", "").attr("data-said", "true").words(text::chosen(n)))
        .el(pick(
            "book-set-status",
            text::SET_STATUS,
            &statuses,
            "",
            set,
        ))
        .el(el("div", "buttons")
            .el(another(text::DUPLICATE, Likeness::Copy))
            .el(another(text::NEXT_LIKE, Likeness::Next))
            .el(does(
                "quiet",
                text::SAVE_TOGETHER,
                Effect::SaveTogether(ids.clone()),
            ))
            .el(does("quiet", text::SAVE_TABLE, Effect::SaveTable(ids)))
            .el(button("quiet")
                .pressed(press(act, Action::Book(BookChange::ChooseNone)))
                .text(text::CHOOSE_NONE))
            .el(remove))
}

/// The box that chooses a piece.
fn tick(book: &StockBook, line: &ShelfLine, act: &Callback<Action>) -> El {
    let id = line.id.clone();
    let control = el("input", "")
        .attr("type", "checkbox")
        .set("aria-label", text::choose(&line.name))
        .ticked(book.chosen.contains(&line.id))
        .changed(act.reform(move |_: Event| Action::Book(BookChange::Choose(id.clone()))));
    el("label", "book-tick")
        .el(control)
        .tag("span", text::CHOOSE)
}

/// The table of the pieces shown.
fn rows<'a>(
    book: &StockBook,
    shown: impl Iterator<Item = &'a ShelfLine>,
    act: &Callback<Action>,
    effect: &Callback<Effect>,
) -> El {
    let heads = BookColumn::SHOWN.iter().map(|column| {
        let sorted = match (book.column == *column, book.is_reversed) {
            (false, _) => "",
            (true, false) => "ascending",
            (true, true) => "descending",
        };
        el("th", if column.is_amount() { "is-amount" } else { "" })
            .attr("scope", "col")
            .attr("aria-sort", sorted)
            .el(button("sorts")
                .pressed(press(act, Action::Book(BookChange::Sort(*column))))
                .text(text::column(*column)))
    });
    let head = el("tr", "")
        .el(el("td", "").text(""))
        .each(heads, |head| head);
    let mut before = None;
    let body = shown.fold(el("tbody", ""), |body, line| {
        let of = group(line);
        let begins = book.is_grouped() && before != Some(of);
        before = Some(of);
        let body = if begins {
            body.el(group_head(text::to_do(of)))
        } else {
            body
        };
        body.el(row(book, line, act, effect))
    });
    let table = el("table", "book-table")
        .el(el("thead", "").el(head))
        .el(body);
    el("div", "table-scroll")
        .attr("role", "region")
        .attr("aria-label", text::BOOK)
        .attr("tabindex", "0")
        .el(table)
}

/// The heading of the pieces to which the same is to be done.
fn group_head(words: &'static str) -> El {
    el("tr", "book-group").key(words).el(el("th", "")
        .attr("scope", "rowgroup")
        .attr("colspan", "12")
        .text(words))
}

fn row(
    book: &StockBook,
    line: &ShelfLine,
    act: &Callback<Action>,
    effect: &Callback<Effect>,
) -> El {
    let cells = BookColumn::SHOWN.iter().map(|column| {
        let words = cell(line, *column);
        if *column == BookColumn::Name {
            let open = button("opens")
                .pressed(press(effect, Effect::Open(line.id.clone())))
                .words(words);
            return el("th", "").attr("scope", "row").el(open);
        }
        let class = match (words.is_empty(), column.is_amount()) {
            (true, _) => "is-empty",
            (false, true) => "is-amount",
            (false, false) => "",
        };
        el("td", class)
            .attr("data-head", text::column(*column))
            .words(words)
    });
    el("tr", "")
        .key(&line.id)
        .el(el("td", "").el(tick(book, line, act)))
        .each(cells, |cell| cell)
}

/// What a column says of a piece.
pub(super) fn cell(line: &ShelfLine, column: BookColumn) -> String {
    let stock = &line.stock;
    let sign = stock.currency.map_or("", |currency| currency.sign());
    let amount = |amount: Option<f64>| amount.map_or_else(String::new, |a| sum(sign, a));
    match column {
        BookColumn::Newest => String::new(),
        BookColumn::Number => stock.number.clone(),
        BookColumn::Name => line.name.clone(),
        BookColumn::Kind => match (line.form.as_str(), stock.kind.as_str()) {
            (form, "") => form.to_owned(),
            ("", kind) => kind.to_owned(),
            (form, kind) => joined(&[form, ". ", kind]),
        },
        BookColumn::Lot => stock.lot.clone(),
        BookColumn::Place => stock.place.clone(),
        BookColumn::Paid => amount(stock.paid),
        BookColumn::Spent => amount(stock.spent),
        BookColumn::Asking => amount(stock.asking),
        BookColumn::Most => match (stock.most_while_looking(), stock.currency) {
            (None, _) => String::new(),
            (Some(most), None) => number(most),
            (Some(most), Some(currency)) => money(most, currency),
        },
        BookColumn::Advised => match &line.unreadable {
            Some(why) => why.clone(),
            None => line.answer.clone(),
        },
        BookColumn::Status => stock.status.map_or("", StockStatus::label).to_owned(),
    }
}

/// The pages of a long book.
fn turning(page: usize, pages: usize, act: &Callback<Action>) -> El {
    let turn = |words, to: usize, can: bool| {
        button("quiet")
            .attr("aria-disabled", if can { "" } else { "true" })
            .pressed(press(act, Action::Book(BookChange::Turn(to))))
            .text(words)
    };
    el("nav", "book-pages")
        .attr("aria-label", text::PAGES)
        .hidden(pages < 2)
        .el(turn(text::BEFORE, page.saturating_sub(1), page > 0))
        .el(el("span", "").words(text::pages(page + 1, pages)))
        .el(turn(
            text::AFTER,
            (page + 1).min(pages - 1),
            page + 1 < pages,
        ))
}

/// The links beside the book: a table in, and what is printed.
pub fn links(state: &State, effect: &Callback<Effect>) -> Html {
    let link = |route: Route, words| el("a", "link-alone").attr("href", route.href()).text(words);
    let all = state.shelf.iter().map(|line| line.id.clone()).collect();
    let is_empty = state.shelf.is_empty();
    let save = button("quiet")
        .pressed(press(effect, Effect::SaveTable(all)))
        .text(text::SAVE_ALL_AS_TABLE);
    element::group()
        .el(el("p", "buttons book-links")
            .el(link(Route::StockTable, text::LINK_TABLE))
            .el(link(Route::Labels, text::LINK_LABELS).hidden(is_empty))
            .el(link(Route::StockList, text::LINK_LIST).hidden(is_empty))
            .el(save.hidden(is_empty)))
        .html()
}
