//! A table from a spreadsheet: what each column is, and what would be added, before anything is.

use leavewell_pages::stock_table::{TablePreview, fields};
use yew::prelude::*;

use crate::app::parts::choice::option;
use crate::app::parts::chosen_file::file_of;
use crate::app::parts::element::{El, button, el, group};
use crate::app::parts::field::typed;
use crate::app::parts::marks::press;
use crate::app::parts::screen::shelf_head;
use crate::app::parts::words::joined;
use crate::app::state::{Action, Effect, State, TableIn};
use crate::app::wording::stock as text;

/// Notes that are shown one by one.
const MOST_NOTES: usize = 40;

/// The screen of a table.
pub fn table_page(state: &State, act: &Callback<Action>, effect: &Callback<Effect>) -> Html {
    let head = shelf_head(text::TABLE_TITLE, text::TABLE_PURPOSE);
    let chosen = file_of(
        "table-file",
        text::FILE,
        ".csv,.tsv,.txt,text/csv",
        effect.reform(Effect::ReadTable),
    );
    let mut work = el("div", "work").el(chosen);
    if let Some(table) = &state.table {
        work = work.el(contents(state, table, act, effect));
    }
    el("div", "screen is-wide table-in")
        .el(head)
        .el(work)
        .html()
}

fn contents(
    state: &State,
    table: &TableIn,
    act: &Callback<Action>,
    effect: &Callback<Effect>,
) -> El {
    let said = match (&table.failure, &table.preview) {
        (Some(why), _) => why.clone(),
        (None, None) => text::READING.to_owned(),
        (None, Some(preview)) => preview.refused.join(" "),
    };
    let mut all = el("div", "")
        .el(el("h2", "").words(table.name.clone()))
        .el(el("p", "problem")
            .attr("data-said", "true")
            .hidden(said.is_empty())
            .words(said.clone()));
    if let Some(preview) = &table.preview
        && preview.refused.is_empty()
    {
        all = all
            .el(list(&preview.notes))
            .el(columns(preview, act))
            .el(pieces(state, preview, act, effect));
    }
    all
}

fn list(notes: &[String]) -> El {
    let shown = notes.iter().take(MOST_NOTES);
    let more = notes.len().saturating_sub(MOST_NOTES);
    let mut list = el("ul", "table-notes")
        .hidden(notes.is_empty())
        .each(shown, |note| el("li", "").words(note.clone()));
    if more > 0 {
        list = list.el(el("li", "").words(text::more_notes(more)));
    }
    list
}

/// What each column becomes.
fn columns(preview: &TablePreview, act: &Callback<Action>) -> El {
    let head = [text::HEADING, text::BECOMES, text::FIRST_ROWS];
    let head = el("tr", "").each(head, |words| el("th", "").attr("scope", "col").text(words));
    let body = el("tbody", "").each(preview.headings.iter().enumerate(), |(at, heading)| {
        let first = preview.first_rows.iter().filter_map(|row| row.get(at));
        let first: Vec<&str> = first
            .map(String::as_str)
            .filter(|cell| !cell.is_empty())
            .collect();
        let now = preview.columns.get(at).map_or("", String::as_str);
        let matched = act.reform(move |event: Event| Action::MatchColumn(at, typed(&event)));
        let shown = if heading.is_empty() {
            text::NO_HEADING
        } else {
            heading
        };
        let select = el("select", "")
            .set("id", joined(&["column-", &at.to_string()]))
            .set("aria-label", text::becomes(shown))
            .changed(matched)
            .each(
                [("", text::LEFT_OUT)].into_iter().chain(fields()),
                |(path, label)| option(path, label, path == now),
            );
        el("tr", "")
            .el(el("th", "").attr("scope", "row").words(shown.to_owned()))
            .el(el("td", "").el(select))
            .el(el("td", "").words(first.join("; ")))
    });
    let table = el("table", "table-columns")
        .el(el("thead", "").el(head))
        .el(body);
    let scroll = el("div", "table-scroll")
        .attr("role", "region")
        .attr("aria-label", text::COLUMNS_TITLE)
        .attr("tabindex", "0")
        .el(table);
    el("section", "")
        .attr("aria-labelledby", "columns-title")
        .el(el("h3", "")
            .attr("id", "columns-title")
            .text(text::COLUMNS_TITLE))
        .el(scroll)
}

/// What would be added.
fn pieces(
    state: &State,
    preview: &TablePreview,
    act: &Callback<Action>,
    effect: &Callback<Effect>,
) -> El {
    let all = &preview.pieces;
    let with_notes = all.iter().filter(|piece| !piece.notes.is_empty()).count();
    let mut notes: Vec<String> = all
        .iter()
        .flat_map(|piece| piece.notes.iter().cloned())
        .collect();
    for piece in all.iter().filter(|piece| !piece.number.is_empty()) {
        let taken = state
            .shelf
            .iter()
            .find(|line| line.stock.number == piece.number);
        notes.extend(taken.map(|line| text::on_the_shelf(&piece.number, &line.name)));
    }
    let names = el("ol", "table-pieces").each(all.iter().take(MOST_NOTES), |piece| {
        let name = if piece.name.is_empty() {
            text::UNNAMED
        } else {
            &piece.name
        };
        let words = match piece.number.as_str() {
            "" => name.to_owned(),
            number => joined(&[number, ", ", name]),
        };
        el("li", "").words(words)
    });
    let more = all.len().saturating_sub(MOST_NOTES);
    let buttons = el("p", "buttons")
        .el(button("main")
            .pressed(press(effect, Effect::TakeTable))
            .text(text::TAKE)
            .hidden(all.is_empty()))
        .el(button("quiet")
            .pressed(press(act, Action::LeaveTable))
            .text(text::LEAVE));
    let more_words = if more > 0 {
        text::more_pieces(more)
    } else {
        String::new()
    };
    el("section", "")
        .attr("aria-labelledby", "preview-title")
        .el(el("h3", "")
            .attr("id", "preview-title")
            .text(text::PREVIEW_TITLE))
        .el(group()
            .el(el("p", "").words(text::preview(all.len(), with_notes)))
            .el(list(&notes))
            .el(names)
            .el(el("p", "hint").hidden(more == 0).words(more_words)))
        .el(buttons)
}
