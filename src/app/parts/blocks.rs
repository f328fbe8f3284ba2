//! Pages of the second program: blocks in, markup out. Nothing is worked out here.

use leavewell_model::record::{Form, PartName};
use leavewell_model::terms::decimal;
use serde_json::Value;
use yew::prelude::*;

use super::element::{El, el};
use super::field::{described, hint, typed};
use crate::app::drawings::HeatDrawing;
use crate::app::pages::{Page, not_worked_out};
use crate::app::parts::marks::fold;
use crate::app::parts::words::joined;
use crate::app::state::Action;
use crate::app::wording::{answer, charts, controls as say};

/// A page of this name: its blocks, that it is being worked out, or why it is not there.
pub fn leaf(page: Page, name: &'static str) -> Html {
    let leaf = page.state.leaves.iter().find(|leaf| leaf.name == name);
    let waits = leaf.is_none_or(|leaf| leaf.generation != page.open.generation);
    let holder = el("div", "leaf").attr("aria-busy", if waits { "true" } else { "false" });
    let holder = match leaf.map(|leaf| &leaf.blocks) {
        None => holder.p("hint", answer::ON_ITS_WAY),
        Some(Ok(blocks)) => each(holder, Some(page), blocks, "h2"),
        Some(Err(why)) => holder.el(not_worked_out(why)),
    };
    holder.html()
}

/// Blocks of a page that is about no one piece, and so has no fields.
pub fn laid(blocks: Option<&Value>) -> El {
    each(
        el("div", "leaf"),
        None,
        blocks.unwrap_or(&Value::Null),
        "h2",
    )
}

/// Every block has a key, so that no field is drawn anew when something above it comes or goes.
fn each(holder: El, page: Option<Page>, blocks: &Value, heading: &'static str) -> El {
    let numbered = items(blocks).iter().enumerate();
    holder.each(numbered, |(place, block)| {
        let key = match (text(block, "path"), text(block, "id")) {
            ("", "") => joined(&[text(block, "block"), &place.to_string()]),
            ("", id) => id.to_owned(),
            (path, _) => path.to_owned(),
        };
        el("div", "").key(&key).put(one(page, block, heading))
    })
}

fn one(page: Option<Page>, block: &Value, heading: &'static str) -> Html {
    let made = match text(block, "block") {
        "section" => section(page, block, heading),
        "para" => para(block),
        "list" => el("ul", "").each(items(&block["items"]), |item| {
            el("li", "").words(string(item).to_owned())
        }),
        "facts" => facts(&block["rows"]),
        "table" => table(block),
        "picture" => picture(block),
        "heat_on_piece" => heat_on_piece(block),
        "field" if let Some(page) = page => field(page, block),
        "choice" if let Some(page) = page => choice(page, block),
        "fold" => {
            let inner = each(el("div", ""), page, &block["blocks"], heading).html();
            return fold("", owned(block, "summary"), inner);
        }
        "lines" => lines(block),
        "row" => each(el("div", "side-by-side"), page, &block["blocks"], heading),
        // A block of a newer program: better nothing than something wrong.
        _ => el("p", "hint"),
    };
    made.html()
}

/// A section inside another has the next smaller heading.
fn section(page: Option<Page>, block: &Value, heading: &'static str) -> El {
    let id = owned(block, "id");
    let title = el(heading, "").set("id", id.clone());
    let smaller = if heading == "h2" { "h3" } else { "h4" };
    let section = el("section", "")
        .set("aria-labelledby", id)
        .el(title.words(owned(block, "title")));
    let inner = each(el("div", ""), page, &block["blocks"], smaller);
    section.el(inner)
}

/// Room to write by hand: what goes there, and a rule for each line.
fn lines(block: &Value) -> El {
    let count = numbered(&block["count"]);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    // clamped to a page's worth of lines
    let count = count.unwrap_or(1.0).clamp(1.0, 20.0) as usize;
    el("div", "write")
        .said("", owned(block, "label"))
        .each(0..count, |_| el("div", "write-line"))
}

fn para(block: &Value) -> El {
    let tone = match text(block, "tone") {
        "quiet" => "hint",
        "answer" => "leaf-answer",
        "note" => "said-note",
        "care" => "said-care",
        "stop" => "said-stop",
        _ => "",
    };
    el("p", tone).words(owned(block, "text"))
}

fn facts(rows: &Value) -> El {
    el("dl", "facts").each(items(rows), |row| {
        el("div", "")
            .el(el("dt", "").words(string(&row[0]).to_owned()))
            .el(el("dd", "").words(string(&row[1]).to_owned()))
    })
}

fn table(block: &Value) -> El {
    let caption = owned(block, "caption");
    let cell = |tag, scope, words: &Value| {
        el(tag, "")
            .attr("scope", scope)
            .words(string(words).to_owned())
    };
    let columns = items(&block["columns"]);
    let head = el("tr", "").each(columns, |words| cell("th", "col", words));
    let body = el("tbody", "").each(items(&block["rows"]), |row| {
        let named = items(row).iter().zip(columns).enumerate();
        el("tr", "").each(named, |(at, (words, column))| match at {
            0 => cell("th", "row", words),
            // For a narrow screen, where the head of a column is too far off.
            _ => cell("td", "", words).set("data-head", string(column).to_owned()),
        })
    });
    el("div", "table-scroll")
        .attr("role", "region")
        .attr("tabindex", "0")
        .set("aria-label", charts::table_of(&caption))
        .el(el("table", "")
            .el(el("caption", "").words(caption))
            .el(el("thead", "").el(head))
            .el(body))
}

fn picture(block: &Value) -> El {
    let id = text(block, "id");
    let (title_id, desc_id) = (joined(&[id, "-title"]), joined(&[id, "-desc"]));
    let size = |name: &str| block[name].to_string();
    let svg = el("svg", "leaf-drawing")
        .attr("role", "img")
        .set(
            "viewBox",
            joined(&["0 0 ", &size("width"), " ", &size("height")]),
        )
        .set("aria-labelledby", joined(&[&title_id, " ", &desc_id]))
        .el(el("title", "")
            .set("id", title_id)
            .words(owned(block, "title")))
        .el(el("desc", "")
            .set("id", desc_id)
            .words(owned(block, "description")))
        .each(items(&block["marks"]), mark);
    figure(block, svg.html())
}

/// A drawing under what it shows, with its table twin.
fn figure(block: &Value, drawing: Html) -> El {
    el("figure", "leaf-picture")
        .el(el("figcaption", "").words(owned(block, "title")))
        .put(drawing)
        .put(fold(
            "chart-table",
            charts::AS_A_TABLE,
            table(&block["table"]).html(),
        ))
}

/// How far heat gets, on the drawing of the piece.
fn heat_on_piece(block: &Value) -> El {
    let zones = items(&block["zones"]).iter().map(|zone| {
        let most = numbered(&zone["most_mm"]);
        (owned(zone, "at"), owned(zone, "reach"), most)
    });
    let drawing = HeatDrawing {
        id: owned(block, "id"),
        title: owned(block, "title"),
        description: owned(block, "description"),
        form: Form::parse(text(block, "form")),
        part: PartName::parse(text(block, "part")),
        size_mm: numbered(&block["size_mm"]).unwrap_or_default(),
        assumed: block["assumed"] == true,
        hot_mm: numbered(&block["hot_mm"]).unwrap_or_default(),
        zones: zones.collect(),
    };
    figure(block, drawing.html())
}

fn mark(mark: &Value) -> El {
    let ink = joined(&["ink-", text(mark, "ink")]);
    if text(mark, "mark") == "path" {
        return el("path", "").set("class", ink).set("d", owned(mark, "d"));
    }
    el("text", "")
        .set("class", ink)
        .set("x", mark["x"].to_string())
        .set("y", mark["y"].to_string())
        .set("text-anchor", owned(mark, "anchor"))
        .words(owned(mark, "text"))
}

/// The text shown is the text of the record now: the page may be older than the last letter typed.
fn field(page: Page, block: &Value) -> El {
    let id = text(block, "path");
    let unit = match text(block, "stand_in") {
        "" => owned(block, "unit"),
        stand_in => say::stands_in(text(block, "unit"), stand_in),
    };
    let (class, inputmode) = if block["number"] == true {
        ("is-number", "decimal")
    } else {
        ("", "text")
    };
    let wrong = !text(block, "problem").is_empty();
    let heard = heard(page, id);
    let input = el("input", class)
        .attr("type", "text")
        .attr("inputmode", inputmode)
        .attr("autocomplete", "off")
        .attr("aria-invalid", if wrong { "true" } else { "" })
        .set("id", id.to_owned())
        .set("aria-describedby", described(id))
        .value(page.open.draft.text(id))
        .typed(heard.reform(|event: InputEvent| event.into()));
    let line = el("div", "field-line")
        .el(input)
        .el(el("span", "unit").words(unit));
    control(id, block, line)
}

fn choice(page: Page, block: &Value) -> El {
    let id = text(block, "path");
    let chosen = text(block, "chosen");
    let select = el("select", "")
        .set("id", id.to_owned())
        .set("aria-describedby", described(id))
        .changed(heard(page, id))
        .each(items(&block["options"]), |option| {
            let id = string(&option[0]);
            el("option", "")
                .key(id)
                .attr("selected", if id == chosen { "selected" } else { "" })
                .set("value", id.to_owned())
                .words(string(&option[1]).to_owned())
        });
    control(id, block, select)
}

/// What stands round every control: label, hint, and what is wrong.
fn control(id: &str, block: &Value, inner: El) -> El {
    let problem = owned(block, "problem");
    el("div", "field")
        .el(el("label", "")
            .set("for", id.to_owned())
            .words(owned(block, "label")))
        .put(hint(id, text(block, "hint")))
        .el(inner)
        .el(el("p", "problem")
            .set("id", joined(&[id, "-problem"]))
            .hidden(problem.is_empty())
            .words(problem))
}

fn heard(page: Page, path: &str) -> Callback<Event> {
    let path = path.to_owned();
    page.act
        .reform(move |event: Event| Action::Put(path.clone(), typed(&event)))
}

fn items(list: &Value) -> &[Value] {
    list.as_array().map_or(&[], Vec::as_slice)
}

fn owned(block: &Value, field: &str) -> String {
    text(block, field).to_owned()
}

fn text<'a>(block: &'a Value, field: &str) -> &'a str {
    string(&block[field])
}

/// The number there; none for anything else.
fn numbered(value: &Value) -> Option<f64> {
    value.as_number().and_then(|n| decimal(n.as_str()))
}

fn string(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}
